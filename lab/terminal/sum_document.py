"""The moment sum of a build as the JSON object that `sum --json` prints."""

from __future__ import annotations

import math
import sys
from dataclasses import replace
from typing import Any

from lab.files import UNITS, Build, UnitSystem
from lab.mechanics import (
    STANDARD_GRAVITY_M_S2,
    MechanicsError,
    MomentSum,
    Part,
    Pivot,
    Point,
    Vector,
    balance_point_doubt_m,
    moment_sum,
    turn_about,
    two_support_reactions_n,
)

# Sums of a few dozen terms are off by a few units in the last place of their largest term.
_ROUND_OFF = 4 * sys.float_info.epsilon
# Of the numbers within that round-off, one with this many digits or fewer is what was meant: 5.3, and
# not 5.300000000000001 for 15.3 - 10.
_DIGITS = 13
# As in files: far enough for anything on a bench, near enough that no moment overflows.
_FARTHEST = 1e9


def sum_document(build: Build, *, reference: Vector | None = None, units: str | None = None) -> dict[str, Any]:
    """The moment sum as a JSON object, at full precision, every number in the chosen units.

    reference: where arms are measured from, in those units; the build's own where None.
    units: a key of UNITS; the build's own where None.
    Raises ValueError for unknown units, MechanicsError where the build has no sum or the reference is no place
    within ± 1e9.
    """
    system = _system(units or build.units)
    # The sums are linear in weight and length, so the mechanics may be fed the file's own numbers: 120 stays
    # 120.0 and 120 × 20 is 2400.0. Only forces know gravity, and it is divided out again.
    parts = [_in_units(part, system) for part in build.all_parts]
    if reference is None:
        reference = _converted(build.reference_m, system)
    reference = _checked(reference)
    total = moment_sum(parts, reference)
    reaches = _reaches(parts, reference)
    # Not from the reference: the balance point must come out the same from any, to the last digit.
    own_reaches = _reaches(parts, (0.0, 0.0, 0.0))
    document: dict[str, Any] = {
        "title": build.title,
        "units": system.name,
        "reference": list(reference),
        "parts": _rows(total, reaches),
        "weight": _settled(total.mass_kg, sum(part.mass_kg for part in parts)),
        "moment": [_settled(total.moment_kg_m[axis], _scale(parts, reaches[axis])) for axis in range(3)],
        "balance_point": [
            _settled(total.balance_point_m[axis], _scale(parts, own_reaches[axis]) / total.mass_kg) for axis in range(3)
        ],
        "doubt": _doubt(parts),
    }
    if build.pivot is not None:
        document["pivot"] = _pivot(parts, build.pivot, system)
    if build.supports:
        document |= _reactions(parts, build, system)
    return document


def _system(name: str) -> UnitSystem:
    if name not in UNITS:
        raise ValueError(f"units {name!r} are unknown; use one of {', '.join(UNITS)}")
    return UNITS[name]


def _checked(reference: Vector) -> Vector:
    """The reference as plain numbers."""
    for place in reference:
        # A nan is not within any bounds either.
        if not abs(place) <= _FARTHEST:
            raise MechanicsError(f"the reference is at {place}; write a place within ± 1e9")
    # Adding 0.0 turns -0.0 into 0.0.
    along, across, up = (place + 0.0 for place in reference)
    return along, across, up


def _converted(place_m: Vector, system: UnitSystem) -> Vector:
    return (system.from_m(place_m[0]), system.from_m(place_m[1]), system.from_m(place_m[2]))


def _in_units(part: Part, system: UnitSystem) -> Part:
    """The part with the file's numbers in place of SI; a point, since no shape enters a moment sum."""
    return replace(
        part,
        mass_kg=system.from_kg(part.mass_kg),
        at_m=_converted(part.at_m, system),
        mass_doubt_kg=system.from_kg(part.mass_doubt_kg),
        at_doubt_m=_converted(part.at_doubt_m, system),
        shape=Point(),
        inertia_kg_m2=None,
    )


def _reaches(parts: list[Part], reference: Vector) -> list[list[float]]:
    """By axis and part: the larger of the two numbers whose difference is the arm."""
    return [[max(abs(part.at_m[axis]), abs(reference[axis])) for part in parts] for axis in range(3)]


def _scale(parts: list[Part], reaches: list[float]) -> float:
    return sum(part.mass_kg * reach for part, reach in zip(parts, reaches, strict=True))


def _settled(value: float, scale: float) -> float:
    """The value without its round-off: the short decimal that lies within the round-off of a sum of this scale."""
    if scale <= 0.0:
        return value + 0.0
    short = round(value, _DIGITS - 1 - math.floor(math.log10(scale)))
    # Adding 0.0 turns -0.0, which no reader of a table would expect, into 0.0.
    return (short if abs(short - value) <= _ROUND_OFF * scale else value) + 0.0


def _rows(total: MomentSum, reaches: list[list[float]]) -> list[dict[str, Any]]:
    return [
        {
            "name": row.name,
            "weight": _settled(row.mass_kg, abs(row.mass_kg)),
            "arm": [_settled(row.arm_m[axis], reaches[axis][index]) for axis in range(3)],
            "moment": [_settled(row.moment_kg_m[axis], abs(row.mass_kg) * reaches[axis][index]) for axis in range(3)],
        }
        for index, row in enumerate(total.rows)
    ]


def _doubt(parts: list[Part]) -> list[float] | None:
    doubt = balance_point_doubt_m(parts)
    return None if doubt is None else [_settled(each, each) for each in doubt]


def _pivot(parts: list[Part], pivot: Pivot, system: UnitSystem) -> dict[str, Any]:
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
        "moment": _settled(turn.moment_kg_m, reach),
        "goes": turn.goes,
        "tilt": None if tilt is None else _settled(tilt, abs(tilt)),
    }


def _reactions(parts: list[Part], build: Build, system: UnitSystem) -> dict[str, Any]:
    first, second = build.supports
    places = (system.from_m(first.at_m[0]), system.from_m(second.at_m[0]))
    forces = two_support_reactions_n(parts, *places)
    if forces is None:
        return {"reactions": None, "tips": True}
    farthest = max(abs(place) for place in (*places, *(part.at_m[0] for part in parts)))
    scale = sum(part.mass_kg for part in parts) * farthest / abs(places[1] - places[0])
    return {
        "reactions": [
            {"name": support.name, "force": _settled(force / STANDARD_GRAVITY_M_S2, scale)}
            for support, force in zip(build.supports, forces, strict=True)
        ],
        "tips": False,
    }
