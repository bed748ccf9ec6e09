"""What can be done to a body on two fingers, besides what every bench understands.

All lengths in metres along the body, in its own coordinates.
"""

from __future__ import annotations

from dataclasses import KW_ONLY, dataclass
from typing import Literal

Finger = Literal["left", "right"]


@dataclass(frozen=True, slots=True)
class MoveFingers:
    """Put both fingers somewhere under the body, the left one left of the right one.

    joins: one more place of the same drag, by one hand or by both, so that one undo takes it back.
    """

    left_at_m: float
    right_at_m: float
    _: KW_ONLY
    joins: bool = False


@dataclass(frozen=True, slots=True)
class SetFriction:
    """Dry a finger, or soap it. static, kinetic: its coefficients, the kinetic no more than the static."""

    finger: Finger
    static: float
    kinetic: float


@dataclass(frozen=True, slots=True)
class GuessMeeting:
    """Say where the fingers will meet; None takes that back. joins: as in MoveFingers."""

    at_m: float | None
    _: KW_ONLY
    joins: bool = False


@dataclass(frozen=True, slots=True)
class StopFingers:
    """Stop the hands where they are, to look. Sliding them in once more begins from rest."""


TwoFingerEdit = MoveFingers | SetFriction | GuessMeeting | StopFingers
"""Everything that only two fingers are asked."""
