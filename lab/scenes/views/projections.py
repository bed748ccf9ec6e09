"""Three ways to look at a body, and which of its axes then lie to the right and up."""

from __future__ import annotations

from typing import Literal

from lab.mechanics import Axis, Vector

Face = Literal["side", "top", "front"]
"""side: from the left, the nose at the left.  top: from above, the right wing upwards.  front: from ahead of the
nose, so the right wing is at the left."""

FACES: tuple[Face, ...] = ("side", "top", "front")
Flat = tuple[float, float]
"""A place in a face, in metres: to the right, and up."""

_RIGHT: dict[Face, tuple[Axis, float]] = {"side": ("along", 1.0), "top": ("along", 1.0), "front": ("across", -1.0)}
_UP: dict[Face, tuple[Axis, float]] = {"side": ("up", 1.0), "top": ("across", 1.0), "front": ("up", 1.0)}
_INDEX: dict[Axis, int] = {"along": 0, "across": 1, "up": 2}


def flat_m(face: Face, place_m: Vector) -> Flat:
    """Where a place of a body lies in a face: metres to the right and up."""
    (right, sense), (up, upright) = _RIGHT[face], _UP[face]
    return sense * place_m[_INDEX[right]], upright * place_m[_INDEX[up]]


def right_axis(face: Face) -> tuple[Axis, float]:
    """The axis that lies level in a face, and +1 where it grows to the right, −1 to the left."""
    return _RIGHT[face]


def up_axis(face: Face) -> tuple[Axis, float]:
    """The axis that stands upright in a face, and +1: it always grows upwards."""
    return _UP[face]


def faces_away_m(face: Face, place_m: Vector) -> float:
    """How far off a place is from whoever looks, in metres: what is farther is drawn first."""
    return {"side": place_m[1], "top": -place_m[2], "front": place_m[0]}[face]
