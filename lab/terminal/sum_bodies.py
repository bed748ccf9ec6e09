"""How a build turns and what is alike in it, as keys of the sum's JSON object."""

from __future__ import annotations

from typing import Any

from lab.files import Build, UnitSystem
from lab.mechanics import (
    MechanicsError,
    Part,
    Vector,
    inertia_about_kg_m2,
    principal_inertia,
    symmetry_planes,
)
from lab.terminal.sum_settling import body_in_units, settled

MOST_MIRRORED = 120
"""Most parts among which twins are sought: each is held against every other."""


def body_keys(build: Build, system: UnitSystem, balance: Vector) -> dict[str, Any]:
    """`inertia` about the balance point, and the planes of `symmetry`; null where there is no answer.

    balance: the balance point in the file's numbers.
    """
    parts = [body_in_units(part, system) for part in build.all_parts]
    return {"inertia": _inertia(parts, balance), "symmetry": _symmetry(parts)}


def _inertia(parts: list[Part], balance: Vector) -> dict[str, Any] | None:
    try:
        principal = principal_inertia(parts, balance)
    except MechanicsError:
        # Cut-outs that take away what isn't there leave a weight to sum, but nothing that could turn.
        return None
    tensor = inertia_about_kg_m2(parts, balance).tolist()
    scale = sum(
        part.mass_kg * sum(each * each for each in (*part.at_m, *balance))
        + sum(abs(part.own_inertia_kg_m2[axis][axis]) for axis in range(3))
        for part in parts
    )
    return {
        "about": list(balance),
        "tensor": [[settled(each, scale) for each in row] for row in tensor],
        "principal": [settled(each, scale) for each in principal.moments_kg_m2],
        "axes": [[settled(each, 1.0) for each in row] for row in principal.axes],
    }


def _symmetry(parts: list[Part]) -> list[dict[str, Any]] | None:
    if len(parts) > MOST_MIRRORED:
        return None
    size = max(abs(each) for part in parts for each in part.at_m)
    return [
        {
            "normal": [settled(each, 1.0) for each in plane.normal],
            "at": settled(plane.offset_m, size),
            "saves": plane.saves,
            "exact": plane.exact,
            "miss": settled(plane.miss_m, size),
            "miss_share": plane.miss_share,
            "odd": list(plane.odd),
            "odd_share": plane.odd_share,
        }
        for plane in symmetry_planes(parts)
    ]
