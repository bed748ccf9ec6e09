"""Which pole of a tool becomes the bar when it is hung."""

from __future__ import annotations

from dataclasses import replace

from lab.files import Bar, Build
from lab.mechanics import Part, extent_m

POLE_DEPTH = 0.02
"""A pole's thickness as drawn where its file states none, as a share of its length."""


def hangable(build: Build) -> Build:
    """A build for the hanging bar, which takes the place of supports.

    A tool without a bar hangs by its longest pole, which becomes the bar, if all its other parts lie on it. An
    airframe is no tool.
    """
    build = build.loose()
    standing_on_nothing = replace(build, supports=())
    if build.bar is not None or build.is_airframe:
        return standing_on_nothing
    poles = [part for part in build.parts if is_pole(part)]
    if not poles:
        return standing_on_nothing
    pole = max(poles, key=_length_m)
    length_m = _length_m(pole)
    left_m = pole.at_m[0] - length_m / 2
    others = tuple(part for part in build.parts if part is not pole)
    if not all(left_m <= part.at_m[0] <= left_m + length_m for part in others):
        return standing_on_nothing
    bar = Bar(name=pole.name, length_m=length_m, mass_kg=pole.mass_kg, left_m=left_m, depth_m=POLE_DEPTH * length_m)
    return replace(standing_on_nothing, bar=bar, parts=others)


def is_pole(part: Part) -> bool:
    """Whether a part is slender along: then a rod of its length turns as it does, to a few parts in a thousand."""
    along_m, across_m, up_m = extent_m(part.shape)
    return along_m > 0 and not part.cut and max(across_m, up_m) < along_m / 10


def _length_m(pole: Part) -> float:
    return extent_m(pole.shape)[0]
