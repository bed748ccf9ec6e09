"""The amounts of a scene that a lesson's text may name, such as {pole.weight}."""

from __future__ import annotations

from collections.abc import Mapping

from lab.files import Build
from lab.lesson.kinds import kind_of
from lab.lesson.messages import Amount, length, mass, volume
from lab.lesson.task import Task
from lab.mechanics import extent_m


def amounts_of(task: Task) -> Mapping[str, Amount]:
    """Return every amount of a question by the name that a text has for it: those of its scene, and of its detail.

    `bar.weight`, `bar.length`; for each part `NAME.weight`, `NAME.at`, and `NAME.length` where it has one; for each
    tank `NAME.contents`, `NAME.capacity` and `NAME.at`; for each support `NAME.at`; for each of these that lies
    beside the middle `NAME.across`, how far from it without a sign; `pivot.at`, `reference.at`; and `whole.weight`,
    of all of it.
    """
    return {**_of_scene(task.build), **kind_of(task).amounts(task)}


def _of_scene(build: Build) -> dict[str, Amount]:
    named: dict[str, Amount] = {"whole.weight": mass(sum(part.signed_mass_kg for part in build.all_parts))}
    if build.bar is not None:
        for name in ("bar", build.bar.name):
            named[f"{name}.weight"] = mass(build.bar.mass_kg)
            named[f"{name}.length"] = length(build.bar.length_m)
    for part in build.loads:
        named[f"{part.name}.weight"] = mass(part.mass_kg)
        named[f"{part.name}.at"] = length(part.at_m[0])
        if extent_m(part.shape)[0] > 0:
            named[f"{part.name}.length"] = length(extent_m(part.shape)[0])
    places = [(thing.name, thing.at_m) for thing in build.loads]
    places += [(support.name, support.at_m) for support in build.supports]
    named |= {f"{name}.across": length(abs(at_m[1])) for name, at_m in places if at_m[1]}
    for tank in build.tanks:
        named[f"{tank.name}.contents"] = volume(tank.contents_m3)
        named[f"{tank.name}.capacity"] = volume(tank.capacity_m3)
        named[f"{tank.name}.at"] = length(tank.at_m[0])
    for support in build.supports:
        named[f"{support.name}.at"] = length(support.at_m[0])
    if build.pivot is not None:
        named["pivot.at"] = length(build.pivot.at_m)
    named["reference.at"] = length(build.reference_m[0])
    return named
