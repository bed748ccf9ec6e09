"""Every change of a bench, as values. The union is closed; ``command_table`` says what each one does.

All lengths in metres along the bench from its origin, masses in kg. A command carries all that it
needs: doing it reads no clock, file or random number.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import KW_ONLY, dataclass
from types import MappingProxyType
from typing import Literal

from lab.files import View
from lab.simulation.airframe_commands import (
    BurnFrom,
    DoWith,
    FillTank,
    FitOn,
    GuessAttitude,
    HangBy,
    MeasureFrom,
    PlacePart,
    PlaceTank,
    PumpAcross,
    RaiseNose,
    RemoveTank,
    SetFlightTime,
    ShowAxis,
)
from lab.simulation.mobile_commands import HangBar, HangOn, Rehang, SlideBar
from lab.simulation.part_commands import Copy, Rename, Reweigh, Tie, Untie
from lab.simulation.plate_commands import MoveClip, MoveCorner, MoveHole, MovePin, PlateEdit
from lab.simulation.scales_commands import GuessReading, MoveScale, PutOn, PutPart, Shift, StandOn
from lab.simulation.tool_commands import FitPart, SetLength
from lab.simulation.two_finger_commands import GuessMeeting, MoveFingers, SetFriction, StopFingers

Side = Literal["left", "level", "right"]
Hold = Literal["clamped", "hung"]


@dataclass(frozen=True, slots=True)
class Hang:
    """Hang a new weight on the bar, or clamp it.

    mass_kg: > 0.  at_m: on the bar.  name: left out, a name of its own is made (``brass 100 b``).
    """

    mass_kg: float
    at_m: float
    hold: Hold = "hung"
    name: str | None = None


@dataclass(frozen=True, slots=True)
class Move:
    """Move a weight along the bar.

    id: the weight's.  joins: one more place of the same drag, so that one undo takes the drag back whole.
    """

    id: int
    at_m: float
    _: KW_ONLY
    joins: bool = False


@dataclass(frozen=True, slots=True)
class Remove:
    """Take a weight off the bar."""

    id: int


@dataclass(frozen=True, slots=True)
class SetHold:
    """Hang a weight by its cord or clamp it to the bar."""

    id: int
    hold: Hold


@dataclass(frozen=True, slots=True)
class MovePivot:
    """Slide the pivot's carriage. It stops at the ends of the bar. joins: as in Move."""

    at_m: float
    _: KW_ONLY
    joins: bool = False


@dataclass(frozen=True, slots=True)
class MoveReference:
    """Drag the line that arms are measured from. It stops at the ends of the rail. joins: as in Move."""

    at_m: float
    _: KW_ONLY
    joins: bool = False


@dataclass(frozen=True, slots=True)
class MoveFinger:
    """Slide the finger under the tool. It stops at the tool's ends. joins: as in Move."""

    at_m: float
    _: KW_ONLY
    joins: bool = False


@dataclass(frozen=True, slots=True)
class Guess:
    """Say which end will drop, or ``level``; None takes the guess back."""

    side: Side | None


@dataclass(frozen=True, slots=True)
class LetGo:
    """Let go of what is held. at_once: show the end straight away (reduced motion, or *show the end*)."""

    _: KW_ONLY
    at_once: bool = False


@dataclass(frozen=True, slots=True)
class HoldStill:
    """Hold the bar level again."""


@dataclass(frozen=True, slots=True)
class SetView:
    """How many of the numbers are shown."""

    view: View


@dataclass(frozen=True, slots=True)
class SetUnits:
    """The unit system that numbers are shown in: a key of ``lab.files.UNITS``."""

    units: str


@dataclass(frozen=True, slots=True)
class OpenBuild:
    """Put a saved build on the bench. text: the build file's TOML."""

    text: str


@dataclass(frozen=True, slots=True)
class Measure:
    """Say how well the parts were weighed and where they sit was measured: one standard uncertainty each.

    mass_kg, at_m: ≥ 0; both 0 forgets every doubt.
    """

    mass_kg: float
    at_m: float


@dataclass(frozen=True, slots=True)
class Undo:
    """Take back the last change; while something is let go, hold it still."""


@dataclass(frozen=True, slots=True)
class Redo:
    """Make the change again that was taken back last."""


Edit = (
    Hang | Move | Remove | SetHold | MovePivot | MoveReference | MoveFinger
    | Measure | Guess | LetGo | HoldStill | SetView | SetUnits | OpenBuild
    | Reweigh | Rename | Copy | Tie | Untie | HangOn | HangBar | Rehang | SlideBar | FitPart | SetLength
    | PlateEdit | PutOn | PutPart | Shift | MoveScale | StandOn | GuessReading
    | MoveFingers | SetFriction | GuessMeeting | StopFingers
    | DoWith | HangBy | GuessAttitude | RaiseNose
    | SetFlightTime | BurnFrom | PumpAcross | FillTank
    | FitOn | PlacePart | PlaceTank | RemoveTank | ShowAxis | MeasureFrom
)  # fmt: skip
"""What a bench carries out."""

Command = Edit | Undo | Redo
"""Everything that can be asked of a session."""

DRAGS: Mapping[type, tuple[str, ...]] = MappingProxyType(
    {
        MovePin: (),
        MoveCorner: ("ring", "corner"),
        MoveHole: ("ring",),
        MoveClip: ("id",),
        Move: ("id",),
        MovePivot: (),
        MoveReference: (),
        MoveFinger: (),
        Rehang: ("id",),
        SlideBar: ("bar",),
        Shift: ("id",),
        MoveScale: ("id",),
        MoveFingers: (),
        GuessMeeting: (),
        HangBy: (),
        SetFlightTime: (),
        PlacePart: ("id",),
        PlaceTank: ("name",),
        MeasureFrom: ("axis",),
    }
)
"""What a pointer does in many small steps, and the fields of it that say what is dragged."""


def dragged(command: Command) -> tuple[object, ...] | None:
    """What a command drags, unlike anything else that can be dragged; None where it is no such command."""
    thing = DRAGS.get(type(command))
    return None if thing is None else (type(command), *(getattr(command, field) for field in thing))
