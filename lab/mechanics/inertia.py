"""Principal inertia: the three axes about which a build turns without wobble, and how hard about each."""

from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from lab.mechanics.axes import Tensor, as_tensor, as_vector
from lab.mechanics.checks import MechanicsError, Vector
from lab.mechanics.moments import balance_of, inertia_about_kg_m2
from lab.mechanics.parts import Part, checked

ROUND_OFF_SHARE = 1e-9
"""A principal moment this share of the largest below 0 is round-off of a thin build; more is no body."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PrincipalInertia:
    """moments_kg_m2: least first.  axes: three rows, each the unit direction of its moment in the build's own
    axes, right-handed; each row's largest number is positive, but for the last's where the hand decides.
    about_m: the place that they go through.  Where two moments are alike, so are all directions between."""

    moments_kg_m2: Vector
    axes: Tensor
    about_m: Vector


def principal_inertia(parts: Iterable[Part], point_m: Vector | None = None) -> PrincipalInertia:
    """The principal moments and axes of a build.

    point_m: what they go through; the balance point unless said.  Hung parts keep their shape.
    Raises MechanicsError, also where cut-outs take away more than is there to turn.  Source: S-43.
    """
    build = checked(parts)
    about = balance_of(build) if point_m is None else point_m
    moments, directions = np.linalg.eigh(inertia_about_kg_m2(build, about))
    largest = float(np.abs(moments).max())
    if moments[0] < -ROUND_OFF_SHARE * largest:
        raise MechanicsError(
            f"the least principal inertia is {moments[0]:.6g} kg m²; it must be 0 or above: "
            "the cut-outs take away what is not there"
        )
    return PrincipalInertia(
        moments_kg_m2=as_vector(np.maximum(moments, 0.0)),
        axes=as_tensor(_right_handed(directions.T)),
        about_m=as_vector(np.asarray(about, dtype=np.float64)),
    )


def _right_handed(rows: NDArray[np.float64]) -> NDArray[np.float64]:
    """The same axes with settled signs, so that one build always gives the same three rows."""
    largest = np.argmax(np.abs(rows) > np.abs(rows).max(axis=1, keepdims=True) * (1.0 - 1e-9), axis=1)
    settled: NDArray[np.float64] = rows * np.sign(rows[np.arange(3), largest])[:, np.newaxis]
    if np.linalg.det(settled) < 0.0:
        settled[2] = -settled[2]
    settled += 0.0  # no −0.0
    return settled
