"""What holds a build up, as keys of the sum's JSON object: a pivot, or two supports, or three."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

from lab.files import Build, UnitSystem
from lab.mechanics import STANDARD_GRAVITY_M_S2, Part, Pivot, Vector, support_reactions_n, turn_about
from lab.terminal.sum_settling import converted, settled


def pivot_keys(parts: list[Part], pivot: Pivot, system: UnitSystem, *, scale: float) -> dict[str, Any]:
    """Where the pivot is, the moment about it, which end drops and how far it tilts.

    parts: in the file's numbers.  scale: of their moment sum.
    """
    placed = replace(
        pivot,
        at_m=system.from_m(pivot.at_m),
        up_m=system.from_m(pivot.up_m),
        pad_m=system.from_m(pivot.pad_m),
    )
    turn = turn_about(parts, placed)
    tilt = None if turn.tilt_rad is None else math.degrees(turn.tilt_rad)
    reach = sum(part.mass_kg * max(abs(part.at_m[0]), abs(placed.at_m)) for part in parts)
    return {
        "at": placed.at_m,
        "moment": settled(turn.moment_kg_m, max(reach, scale)),
        "goes": turn.goes,
        "tilt": None if tilt is None else settled(tilt, abs(tilt)),
    }


def support_keys(parts: list[Part], build: Build, system: UnitSystem, *, scale: float) -> dict[str, Any]:
    """What each support carries, in the file's weight unit; null where the build tips."""
    places = [converted(support.at_m, system) for support in build.supports]
    forces = support_reactions_n(parts, places)
    if forces is None:
        return {"reactions": None, "tips": True}
    farthest = max(abs(each) for place in (*places, *(part.at_m for part in parts)) for each in place[:2])
    terms = max(sum(part.mass_kg for part in parts) * farthest, scale) / _gap(places)
    return {
        "reactions": [
            {"name": support.name, "force": settled(force / STANDARD_GRAVITY_M_S2, terms)}
            for support, force in zip(build.supports, forces, strict=True)
        ],
        "tips": False,
    }


def _gap(places: list[Vector]) -> float:
    """How far apart two supports are along; of three, how far the nearest is from the line of the others."""
    if len(places) == 2:
        return abs(places[1][0] - places[0][0])
    first, second, third = places
    sides = [math.dist(one[:2], other[:2]) for one, other in ((first, second), (second, third), (third, first))]
    along, across = (second[axis] - first[axis] for axis in (0, 1))
    area = abs(along * (third[1] - first[1]) - across * (third[0] - first[0]))
    return area / max(sides)
