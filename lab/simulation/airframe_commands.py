"""What can be done to an airframe, besides what every bench understands.

All lengths in metres in the airframe's own coordinates, along, across and up; angles in radians.
"""

from __future__ import annotations

from dataclasses import KW_ONLY, dataclass
from typing import Literal

Nose = Literal["down", "level", "up"]
"""Which way a nose hangs."""


@dataclass(frozen=True, slots=True)
class DoWith:
    """Begin, or go on, doing something else with it: it is held first."""

    doing: Literal["build", "hang", "weigh", "burn"]


@dataclass(frozen=True, slots=True)
class HangBy:
    """Hang it by another place. joins: one more place of the same drag, so that one undo takes it back."""

    along_m: float
    across_m: float
    up_m: float
    _: KW_ONLY
    joins: bool = False


@dataclass(frozen=True, slots=True)
class GuessAttitude:
    """Say how it will hang: its nose, and which wing lower; None takes either back."""

    nose: Nose | None
    wing: Literal["left", "level", "right"] | None


@dataclass(frozen=True, slots=True)
class RaiseNose:
    """Raise the nose of what stands on its scales to an angle, for the second weighing; 0 lowers it again."""

    angle_rad: float


@dataclass(frozen=True, slots=True)
class SetFlightTime:
    """Stop the flight at an instant since take-off. joins: one more place of the same drag of the timeline."""

    at_s: float
    _: KW_ONLY
    joins: bool = False


@dataclass(frozen=True, slots=True)
class BurnFrom:
    """Burn so much a second from now on, from all tanks together, or one first.

    rate_m3_s: 0 or above; None keeps the rate.  first: the tank that is emptied first; None for together.
    """

    rate_m3_s: float | None = None
    first: str | None = None


@dataclass(frozen=True, slots=True)
class PumpAcross:
    """Pump from one tank to another from now on. rate_m3_s: above 0; None switches off what runs between them."""

    source: str
    target: str
    rate_m3_s: float | None


@dataclass(frozen=True, slots=True)
class FillTank:
    """Land, fill one tank to so much, and take off again with what is in the others."""

    name: str
    contents_m3: float
