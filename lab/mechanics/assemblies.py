"""Moment sums of many builds at once, in numpy: the same sums as `moments`, without names."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from lab.mechanics.checks import MechanicsError
from lab.mechanics.moments import checked_arrays, weighted_sum

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class AssemblySums:
    """mass_kg: (...,).  moment_kg_m: (..., 3), from the reference.  balance_point_m: (..., 3), in the places'
    own coordinates.  inertia_kg_m2: (..., 3, 3), about each balance point."""

    mass_kg: Floats
    moment_kg_m: Floats
    balance_point_m: Floats
    inertia_kg_m2: Floats


def assembly_sums(
    mass_kg: ArrayLike,
    at_m: ArrayLike,
    own_inertia_kg_m2: ArrayLike | None = None,
    *,
    reference_m: ArrayLike = (0.0, 0.0, 0.0),
) -> AssemblySums:
    """Mass, moment, balance point and inertia of one build of n parts, or of k builds of n parts each.

    mass_kg: (n,) or (k, n), each above 0.  at_m: (n, 3) or (k, n, 3).  own_inertia_kg_m2: each part's about
    its own centre, (..., n, 3, 3); None for points.  reference_m: (3,).
    Raises MechanicsError.  Source: S-03, S-04.
    """
    mass, at = checked_arrays(mass_kg, at_m)
    total = mass.sum(axis=-1)
    moment = weighted_sum(mass, at)
    balance = moment / total[..., np.newaxis]
    # About the balance point and not about zero: far from it, the difference of two large sums is noise.
    away = at - balance[..., np.newaxis, :]
    second = np.swapaxes(away, -1, -2) @ (mass[..., np.newaxis] * away)
    inertia = np.trace(second, axis1=-2, axis2=-1)[..., np.newaxis, np.newaxis] * np.eye(3) - second
    if own_inertia_kg_m2 is not None:
        own = np.asarray(own_inertia_kg_m2, dtype=np.float64)
        if own.shape[-3:] != (mass.shape[-1], 3, 3):
            raise MechanicsError(f"own inertias have shape {own.shape}; they must be (..., n, 3, 3)")
        inertia = inertia + np.einsum("...nij->...ij", own)  # a quarter of the time of sum(axis=-3)
    reference = np.asarray(reference_m, dtype=np.float64)
    return AssemblySums(
        mass_kg=total,
        moment_kg_m=moment - total[..., np.newaxis] * reference,
        balance_point_m=balance,
        inertia_kg_m2=inertia,
    )
