"""Doubt: how far the balance point may be out, from the doubts of weights and arms."""

from collections import defaultdict
from collections.abc import Iterable
from math import hypot

from lab.mechanics.checks import Vector
from lab.mechanics.moments import balance_of
from lab.mechanics.parts import Part, added, checked


def balance_point_doubt_m(parts: Iterable[Part]) -> Vector | None:
    """One standard uncertainty of the balance point, per axis, m; None where no part states any.

    A weight's doubt counts by its distance from the balance point, a place's doubt by its share of the
    weight.  Doubts of one kind inside a `set_name` are fully correlated and add before squaring; all others,
    weights and places of one set among them, are independent.  Raises MechanicsError.  Source: S-02.
    """
    build = checked(parts)
    if not any(part.mass_doubt_kg or any(part.at_doubt_m) for part in build):
        return None
    balance = balance_of(build)
    mass = added(part.signed_mass_kg for part in build)
    along, across, up = (_axis_doubt(build, balance[axis], mass, axis) for axis in range(3))
    return along, across, up


def _axis_doubt(parts: tuple[Part, ...], balance: float, mass: float, axis: int) -> float:
    """Quadrature over independent groups; a part in no set is a group of its own."""
    by_mass: dict[object, float] = defaultdict(float)
    by_place: dict[object, float] = defaultdict(float)
    for number, part in enumerate(parts):
        group: object = number if part.set_name is None else part.set_name
        # A cut-out weighed too heavy takes too much away: the sign goes with the doubt inside a set.
        sign = -1.0 if part.cut else 1.0
        by_mass[group] += sign * (part.at_m[axis] - balance) / mass * part.mass_doubt_kg
        by_place[group] += part.signed_mass_kg / mass * part.at_doubt_m[axis]
    return hypot(*by_mass.values(), *by_place.values())
