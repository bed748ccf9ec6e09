"""The amounts of a scene that a lesson's text may name, such as {pole.weight}."""

from __future__ import annotations

from collections.abc import Mapping

from lab.files import Build
from lab.lesson.messages import Amount, length, mass
from lab.mechanics import extent_m


def amounts_of(build: Build) -> Mapping[str, Amount]:
    """Return every amount of a build by the name that a text has for it.

    `bar.weight`, `bar.length`; for each part `NAME.weight`, `NAME.at`, and `NAME.length` where it has one; `pivot.at`.
    """
    named: dict[str, Amount] = {}
    if build.bar is not None:
        for name in ("bar", build.bar.name):
            named[f"{name}.weight"] = mass(build.bar.mass_kg)
            named[f"{name}.length"] = length(build.bar.length_m)
    for part in build.parts:
        named[f"{part.name}.weight"] = mass(part.mass_kg)
        named[f"{part.name}.at"] = length(part.at_m[0])
        if extent_m(part.shape)[0] > 0:
            named[f"{part.name}.length"] = length(extent_m(part.shape)[0])
    if build.pivot is not None:
        named["pivot.at"] = length(build.pivot.at_m)
    return named
