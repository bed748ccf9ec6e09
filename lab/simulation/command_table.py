"""The one table of commands: what each is called on a tape; and what each does to whichever bench.

A command that is not in it does not exist: sessions, tapes, replay and tests all read this table.  What it does to a
bench stands with that bench's edits, which are loaded with the first command that the bench is given.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib import import_module
from types import MappingProxyType
from typing import TYPE_CHECKING

from lab.simulation import (
    airframe_commands,
    commands,
    mobile_commands,
    part_commands,
    plate_commands,
    scales_commands,
    tool_commands,
    two_finger_commands,
)
from lab.simulation.commands import Command, Edit
from lab.simulation.refused import Refused, msg

if TYPE_CHECKING:
    from lab.simulation.benches import BenchState
    from lab.simulation.benches.shared_edits import Does

NOT_ON_THIS_BENCH = Refused(template=msg("That can't be done on this bench."))


@dataclass(frozen=True, slots=True, kw_only=True)
class CommandRow:
    """One command.  name: on tapes.  kind: its class."""

    name: str
    kind: type[Command]


def _row(name: str, kind: type[Command]) -> CommandRow:
    return CommandRow(name=name, kind=kind)


_ROWS = (
    _row("hang", commands.Hang),
    _row("move", commands.Move),
    _row("remove", commands.Remove),
    _row("set-hold", commands.SetHold),
    _row("move-pivot", commands.MovePivot),
    _row("move-finger", commands.MoveFinger),
    _row("move-reference", commands.MoveReference),
    _row("measure", commands.Measure),
    _row("guess", commands.Guess),
    _row("let-go", commands.LetGo),
    _row("hold-still", commands.HoldStill),
    _row("set-view", commands.SetView),
    _row("set-units", commands.SetUnits),
    _row("open-build", commands.OpenBuild),
    _row("hang-on", mobile_commands.HangOn),
    _row("hang-bar", mobile_commands.HangBar),
    _row("rehang", mobile_commands.Rehang),
    _row("slide-bar", mobile_commands.SlideBar),
    _row("fit-part", tool_commands.FitPart),
    _row("set-length", tool_commands.SetLength),
    _row("reweigh", part_commands.Reweigh),
    _row("rename", part_commands.Rename),
    _row("copy", part_commands.Copy),
    _row("tie", part_commands.Tie),
    _row("untie", part_commands.Untie),
    _row("put-on", scales_commands.PutOn),
    _row("put-part", scales_commands.PutPart),
    _row("shift", scales_commands.Shift),
    _row("move-scale", scales_commands.MoveScale),
    _row("stand-on", scales_commands.StandOn),
    _row("guess-reading", scales_commands.GuessReading),
    _row("take-blank", plate_commands.TakeBlank),
    _row("move-pin", plate_commands.MovePin),
    _row("add-corner", plate_commands.AddCorner),
    _row("move-corner", plate_commands.MoveCorner),
    _row("remove-corner", plate_commands.RemoveCorner),
    _row("cut-hole", plate_commands.CutHole),
    _row("move-hole", plate_commands.MoveHole),
    _row("fill-hole", plate_commands.FillHole),
    _row("set-area-weight", plate_commands.SetAreaWeight),
    _row("clip-on", plate_commands.ClipOn),
    _row("move-clip", plate_commands.MoveClip),
    _row("draw-plumb-line", plate_commands.DrawPlumbLine),
    _row("rub-out-lines", plate_commands.RubOutLines),
    _row("move-fingers", two_finger_commands.MoveFingers),
    _row("set-friction", two_finger_commands.SetFriction),
    _row("guess-meeting", two_finger_commands.GuessMeeting),
    _row("stop-fingers", two_finger_commands.StopFingers),
    _row("do-with", airframe_commands.DoWith),
    _row("hang-by", airframe_commands.HangBy),
    _row("guess-attitude", airframe_commands.GuessAttitude),
    _row("raise-nose", airframe_commands.RaiseNose),
    _row("set-flight-time", airframe_commands.SetFlightTime),
    _row("burn-from", airframe_commands.BurnFrom),
    _row("pump-across", airframe_commands.PumpAcross),
    _row("fill-tank", airframe_commands.FillTank),
    _row("fit-on", airframe_commands.FitOn),
    _row("place-part", airframe_commands.PlacePart),
    _row("place-tank", airframe_commands.PlaceTank),
    _row("remove-tank", airframe_commands.RemoveTank),
    _row("show-axis", airframe_commands.ShowAxis),
    _row("measure-from", airframe_commands.MeasureFrom),
    # The session itself carries these out, from the states it has kept.
    _row("undo", commands.Undo),
    _row("redo", commands.Redo),
)

COMMANDS: Mapping[str, CommandRow] = MappingProxyType({row.name: row for row in _ROWS})
"""Every command by its name on a tape."""

EDITS_OF: Mapping[str, str] = MappingProxyType(
    {
        "HangingBar": "bar_edits.EDITS",
        "FingerTool": "finger_edits.EDITS",
        "BuiltTool": "tool_edits.EDITS",
        "Mobile": "mobile_edits.EDITS",
        "HungPlate": "plate_edits.EDITS",
        "ScalesBench": "scales_edits.EDITS",
        "TwoFingers": "two_fingers_edits.EDITS",
        "AirframeBench": "airframe_edits.EDITS",
        "Showing": "shared_edits.HELD_OR_NOT",
        "HungScene": "shared_edits.HELD_OR_NOT",
        "WeighedScene": "shared_edits.HELD_OR_NOT",
    }
)
"""Where it stands what commands do to a bench, by the class of the bench's state: the module, and the table in it."""

_ROW_OF: Mapping[type, CommandRow] = MappingProxyType({row.kind: row for row in _ROWS})


def row_of(command: Command) -> CommandRow:
    """The row of a command."""
    return _ROW_OF[type(command)]


@cache
def edits_of(bench: str) -> Mapping[type, Does]:
    """What commands do to a bench, by the class of the command.  bench: the class of its state."""
    module, table = EDITS_OF[bench].split(".")
    edits: Mapping[type, Does] = getattr(import_module(f"lab.simulation.benches.{module}"), table)
    return edits


def carried_out(state: BenchState, command: Edit) -> BenchState | Refused:
    """The bench after a command, or why it stays as it is. Pure."""
    does = edits_of(type(state).__name__).get(type(command))
    after: BenchState | Refused = NOT_ON_THIS_BENCH if does is None else does(state, command)
    return after
