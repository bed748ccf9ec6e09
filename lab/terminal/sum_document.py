"""The moment sum of a build as the JSON object that `sum --json` prints."""

from __future__ import annotations

from typing import Any

from lab.files import UNITS, Build, UnitSystem
from lab.mechanics import MechanicsError, MomentSum, Part, Vector, balance_point_doubt_m, moment_sum
from lab.outline.cautions import LEARNING_ONLY
from lab.terminal.sum_airframe import limit_keys, pitch_keys, tank_keys
from lab.terminal.sum_bodies import body_keys
from lab.terminal.sum_holds import pivot_keys, support_keys
from lab.terminal.sum_settling import converted, group_reaches, in_units, settled, total_scale

# As in files: far enough for anything on a bench, near enough that no moment overflows.
_FARTHEST = 1e9


def sum_document(build: Build, *, reference: Vector | None = None, units: str | None = None) -> dict[str, Any]:
    """The moment sum as a JSON object, at full precision, every number in the chosen units.

    Always: title, units, reference, parts (name, weight, arm, moment), weight, moment, balance_point, doubt;
    inertia (about, tensor, principal, axes; weight × length²) and symmetry (planes: normal, at, saves, exact,
    miss, miss_share, odd, odd_share), both null where there is no answer.
    With a pivot: pivot.  With supports: reactions, tips.  With tanks: tanks (name, contents, capacity, share,
    density, weight), tanks_empty and tanks_full (weight, balance_point, inside).  With limits: limits (inside,
    along, along_out, along_margin, weight_out, across, across_out, across_margin).  With surfaces: mean_chord
    (surface, length, at, balance_point_percent), neutral_point (at, percent, by_short_formula), margin (a share of
    the mean chord), pitch (goes, margin_doubt, sureness, chance; or why there is none).  With surfaces or limits:
    caution.

    reference: where arms are measured from, in those units; the build's own where None.
    units: a key of UNITS; the build's own where None.
    Raises ValueError for unknown units, MechanicsError where the build has no sum or the reference is no place
    within ± 1e9.
    """
    system = _system(units or build.units)
    parts = [in_units(part, system) for part in build.all_parts]
    if reference is None:
        reference = converted(build.reference_m, system)
    reference = _checked(reference)
    total = moment_sum(parts, reference)
    turned = group_reaches(build, system)
    reaches = _reaches(parts, reference, turned)
    # Not from the reference: the balance point must come out the same from any, to the last digit.
    own_reaches = _reaches(parts, (0.0, 0.0, 0.0), turned)
    weight = settled(total.mass_kg, sum(part.mass_kg for part in parts))
    along, across, up = (
        settled(total.balance_point_m[axis], total_scale(parts, own_reaches[axis]) / total.mass_kg) for axis in range(3)
    )
    document: dict[str, Any] = {
        "title": build.title,
        "units": system.name,
        "reference": list(reference),
        "parts": _rows(total, reaches),
        "weight": weight,
        "moment": [settled(total.moment_kg_m[axis], total_scale(parts, reaches[axis])) for axis in range(3)],
        "balance_point": [along, across, up],
        "doubt": _doubt(parts),
    }
    document["parts"] += _empty_tanks(build, system, reference)
    scale = total_scale(parts, own_reaches[0])
    if build.pivot is not None:
        document["pivot"] = pivot_keys(parts, build.pivot, system, scale=scale)
    if build.supports:
        document |= support_keys(parts, build, system, scale=scale)
    return document | _further_keys(build, system, parts, document)


def _further_keys(build: Build, system: UnitSystem, parts: list[Part], document: dict[str, Any]) -> dict[str, Any]:
    """What is known beside the moment sum itself."""
    along, across, up = document["balance_point"]
    keys = body_keys(build, system, (along, across, up))
    if build.tanks:
        keys |= tank_keys(build, system, parts)
    if build.limits is not None:
        keys["limits"] = limit_keys(build.limits, system, (along, across, up), document["weight"])
    if build.surfaces:
        keys |= pitch_keys(build, system, along, (document["doubt"] or [0.0])[0])
    if build.is_airframe:
        keys["caution"] = LEARNING_ONLY
    return keys


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


def _reaches(parts: list[Part], reference: Vector, turned: list[float]) -> list[list[float]]:
    """By axis and part: the larger of the numbers whose difference is the arm."""
    return [
        [max(abs(part.at_m[axis]), abs(reference[axis]), reach) for part, reach in zip(parts, turned, strict=True)]
        for axis in range(3)
    ]


def _rows(total: MomentSum, reaches: list[list[float]]) -> list[dict[str, Any]]:
    return [
        {
            "name": row.name,
            "weight": settled(row.mass_kg, abs(row.mass_kg)),
            "arm": [settled(row.arm_m[axis], reaches[axis][index]) for axis in range(3)],
            "moment": [settled(row.moment_kg_m[axis], abs(row.mass_kg) * reaches[axis][index]) for axis in range(3)],
        }
        for index, row in enumerate(total.rows)
    ]


def _empty_tanks(build: Build, system: UnitSystem, reference: Vector) -> list[dict[str, Any]]:
    """Rows of tanks that weigh nothing: whoever reads the sum looks for them."""
    rows = []
    for tank in build.tanks:
        if tank.mass_kg == 0.0:
            at = converted(tank.at_m, system)
            arm = [settled(at[axis] - reference[axis], max(abs(at[axis]), abs(reference[axis]))) for axis in range(3)]
            rows.append({"name": tank.name, "weight": 0.0, "arm": arm, "moment": [0.0, 0.0, 0.0]})
    return rows


def _doubt(parts: list[Part]) -> list[float] | None:
    doubt = balance_point_doubt_m(parts)
    return None if doubt is None else [settled(each, max(doubt)) for each in doubt]
