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


@dataclass(frozen=True, slots=True)
class FitOn:
    """Put on something of the tray: `ballast`, `battery`, `camera`, `motor` or `tank`."""

    kind: str
    along_m: float
    across_m: float = 0.0
    up_m: float = 0.0


@dataclass(frozen=True, slots=True)
class PlacePart:
    """Move a part, what is tied to it, and the surface that is called the same.  joins: as in HangBy."""

    id: int
    along_m: float
    across_m: float
    up_m: float
    _: KW_ONLY
    joins: bool = False


@dataclass(frozen=True, slots=True)
class PlaceTank:
    """Move a tank with what is in it.  joins: as in HangBy."""

    name: str
    along_m: float
    across_m: float
    up_m: float
    _: KW_ONLY
    joins: bool = False


@dataclass(frozen=True, slots=True)
class RemoveTank:
    """Take a tank off with what is in it."""

    name: str


@dataclass(frozen=True, slots=True)
class ShowAxis:
    """Whose moments are shown: those of arms along, across or up."""

    axis: Literal["along", "across", "up"]


@dataclass(frozen=True, slots=True)
class MeasureFrom:
    """Measure the arms of one axis from another place.  joins: as in HangBy."""

    axis: Literal["along", "across", "up"]
    at_m: float
    _: KW_ONLY
    joins: bool = False
