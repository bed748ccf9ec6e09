"""Moment sums: weight times arm, added up, and the point where it all balances."""

from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from lab.mechanics.checks import MechanicsError, Vector, vector
from lab.mechanics.parts import Part, added, checked, inertia_array_kg_m2

Floats = NDArray[np.float64]
ORIGIN: Vector = (0.0, 0.0, 0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class MomentRow:
    """One line of the table.  mass_kg: negative for a cut-out.  arm_m: from the reference line, per axis.
    moment_kg_m: mass times arm, per axis."""

    name: str
    mass_kg: float
    arm_m: Vector
    moment_kg_m: Vector


@dataclass(frozen=True, slots=True, kw_only=True)
class MomentSum:
    """The table and its totals.  balance_point_m: in the build's own coordinates, whatever the reference."""

    rows: tuple[MomentRow, ...]
    mass_kg: float
    moment_kg_m: Vector
    balance_point_m: Vector
    reference_m: Vector


def moment_sum(parts: Iterable[Part], reference_m: Vector = ORIGIN) -> MomentSum:
    """The moment table of a build, and where it balances.

    parts: at least one, names all different.  reference_m: where arms are measured from.
    Raises MechanicsError.  Source: S-03.
    """
    build = checked(parts)
    reference = vector("reference", reference_m, "m")
    rows = tuple(_row(part, reference) for part in build)
    mass = added(row.mass_kg for row in rows)
    along, across, up = (added(row.moment_kg_m[axis] for row in rows) for axis in range(3))
    return MomentSum(
        rows=rows,
        mass_kg=mass,
        moment_kg_m=(along, across, up),
        balance_point_m=balance_of(build),
        reference_m=reference,
    )


def _row(part: Part, reference: Vector) -> MomentRow:
    mass = part.signed_mass_kg
    along, across, up = (part.at_m[axis] - reference[axis] for axis in range(3))
    return MomentRow(
        name=part.name,
        mass_kg=mass,
        arm_m=(along, across, up),
        moment_kg_m=(mass * along, mass * across, mass * up),
    )


def balance_of(parts: Iterable[Part]) -> Vector:
    """Where the parts balance, in the build's own coordinates, m: cut-outs taken away.

    The sum is over the build's own coordinates, so the answer is the same to the last bit whatever line the
    table uses, and in whatever order the parts come.  Raises MechanicsError.  Source: S-03.
    """
    build = checked(parts)
    mass = added(part.signed_mass_kg for part in build)
    along, across, up = (added(part.signed_mass_kg * part.at_m[axis] for part in build) / mass for axis in range(3))
    return along, across, up


def balance_point_m(mass_kg: ArrayLike, at_m: ArrayLike) -> Floats:
    """Where the parts balance, for many builds at once: the mean of their places, weighted.

    mass_kg: (n,) for one list of masses, or (k, n), each above 0.  at_m: (..., n, 3).  Returns (..., 3), m.
    Raises MechanicsError if n is 0, a mass is not positive, or a number is not finite.  Source: S-03.
    """
    mass, at = checked_arrays(mass_kg, at_m)
    balance: Floats = weighted_sum(mass, at) / mass.sum(axis=-1)[..., np.newaxis]
    return balance


def checked_arrays(mass_kg: ArrayLike, at_m: ArrayLike) -> tuple[Floats, Floats]:
    """Masses (n,) or (k, n) and places (..., n, 3) as float arrays.  Raises MechanicsError."""
    mass = np.asarray(mass_kg, dtype=np.float64)
    at = np.asarray(at_m, dtype=np.float64)
    if mass.ndim not in (1, 2) or at.ndim < 2 or at.shape[-1] != 3 or mass.shape[-1] != at.shape[-2]:
        raise MechanicsError(
            f"masses have shape {mass.shape} and places {at.shape}; they must be (n,) or (k, n), and (..., n, 3)"
        )
    if mass.size == 0 or at.size == 0:
        raise MechanicsError("there is no part; a sum needs at least one")
    # min() is nan where any mass is, and no nan is above 0.
    if not (mass.min() > 0.0 and np.isfinite(mass.max())):
        raise MechanicsError("a mass is not a finite number of kg above 0; each must be")
    if not (np.isfinite(at.min()) and np.isfinite(at.max())):
        raise MechanicsError("a place is not a finite number of m; each must be")
    return mass, at


def weighted_sum(mass: Floats, at: Floats) -> Floats:
    """Mass times place, added over the parts: (..., 3), kg m.  Source: S-03."""
    moments: Floats = (mass[..., np.newaxis, :] @ at)[..., 0, :]
    return moments


def inertia_about_kg_m2(parts: Iterable[Part], point_m: Vector) -> Floats:
    """Inertia of the whole about a point, by the parallel-axis theorem: (3, 3), kg m².

    A hung part counts as a point at its hook only on a pivot (`pivoted`); here each part keeps its shape.
    Raises MechanicsError.  Source: S-04.
    """
    point = np.array(vector("point", point_m, "m"))
    total = np.zeros((3, 3))
    for part in checked(parts):
        away = np.array(part.at_m) - point
        total += inertia_array_kg_m2(part)
        total += part.signed_mass_kg * (away @ away * np.eye(3) - np.outer(away, away))
    return total
