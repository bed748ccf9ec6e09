"""Sums in the numbers of a file: parts fed to the mechanics in its units, and results without their round-off.

The sums are linear in weight and length, so the mechanics may be fed the file's own numbers: 120 stays 120.0 and
120 × 20 is 2400.0. Only forces know gravity, and it is divided out again.
"""

from __future__ import annotations

import math
import sys
from collections.abc import Iterable, Iterator
from dataclasses import replace

from lab.files import Build, UnitSystem
from lab.mechanics import Group, Part, Point, Vector

# Sums of a few dozen terms are off by a few units in the last place of their largest term.
ROUND_OFF = 4 * sys.float_info.epsilon
# Of the numbers within that round-off, one with this many digits or fewer is what was meant: 5.3, and
# not 5.300000000000001 for 15.3 - 10.
_DIGITS = 13


def settled(value: float, scale: float) -> float:
    """The value without its round-off: the short decimal that lies within the round-off of a sum of this scale."""
    if scale <= 0.0:
        return value + 0.0
    short = round(value, _DIGITS - 1 - math.floor(math.log10(scale)))
    # Adding 0.0 turns -0.0, which no reader of a table would expect, into 0.0.
    return (short if abs(short - value) <= ROUND_OFF * scale else value) + 0.0


def converted(place_m: Vector, system: UnitSystem) -> Vector:
    """A place in the units of a system."""
    return (system.from_m(place_m[0]), system.from_m(place_m[1]), system.from_m(place_m[2]))


def in_units(part: Part, system: UnitSystem) -> Part:
    """The part with the file's numbers in place of SI; a point, since no shape enters a moment sum."""
    return replace(
        part,
        mass_kg=system.from_kg(part.mass_kg),
        at_m=converted(part.at_m, system),
        mass_doubt_kg=system.from_kg(part.mass_doubt_kg),
        at_doubt_m=converted(part.at_doubt_m, system),
        shape=Point(),
        inertia_kg_m2=None,
    )


def body_in_units(part: Part, system: UnitSystem) -> Part:
    """As `in_units`, with the part's own inertia in the file's numbers too."""
    sign = -1.0 if part.cut else 1.0
    first, second, third = (
        (system.from_kg_m2(sign * a), system.from_kg_m2(sign * b), system.from_kg_m2(sign * c))
        for a, b, c in part.own_inertia_kg_m2
    )
    return replace(in_units(part, system), inertia_kg_m2=(first, second, third))


def group_reaches(build: Build, system: UnitSystem) -> list[float]:
    """For each of the build's parts, in their order: the lengths that its group's turning adds and takes away.

    0 for a part in no group. A turn by a right angle leaves 1e-17 of a length where 0 is meant.
    """
    lone = len(build.parts) + (build.bar is not None)
    grouped = [system.from_m(reach_m) for group in build.groups for reach_m in _reaches_m(group, 0.0)]
    tanks = [0.0 for tank in build.tanks if tank.mass_kg > 0.0]
    return [0.0] * lone + grouped + tanks


def _reaches_m(group: Group, outer_m: float) -> Iterator[float]:
    reach_m = outer_m + math.hypot(*group.at_m)
    for member in group.members:
        if isinstance(member, Part):
            # Three turns of three products each: a few times the round-off of one sum.
            yield 4.0 * (reach_m + math.hypot(*member.at_m))
        else:
            yield from _reaches_m(member, reach_m)


def total_scale(parts: Iterable[Part], reaches: Iterable[float]) -> float:
    """The size of the terms of a moment sum."""
    return sum(part.mass_kg * reach for part, reach in zip(parts, reaches, strict=True))
