"""The one table of commands: what each is called on a tape, and what it does to each kind of bench.

A command that is not in it does not exist: sessions, tapes, replay and tests all read this table.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any

from lab.simulation import commands, mobile_commands, part_commands, scales_commands, tool_commands, two_finger_commands
from lab.simulation.benches import (
    BenchState,
    BuiltTool,
    FingerTool,
    HangingBar,
    HungPlate,
    Mobile,
    ScalesBench,
    Showing,
    TwoFingers,
    bar_edits,
    finger_edits,
    mobile_edits,
    plate_edits,
    scales_edits,
    shared_edits,
    tool_edits,
    two_fingers_edits,
)
from lab.simulation.commands import Command, Edit
from lab.simulation.refused import Refused, msg

NOT_ON_THIS_BENCH = Refused(template=msg("That can't be done on this bench."))

Does = Callable[[Any, Any], Any]
"""What a command does to one bench: a pure function of the state and the command; the next state, or a Refused."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CommandRow:
    """One command.

    name: on tapes.  kind: its class.  does: what it does, by the class of the bench's state; a bench that is not there
    has nothing of the kind.
    """

    name: str
    kind: type[Command]
    does: Mapping[type, Does]


def _row(name: str, kind: type[Command], does: Mapping[type, Does] | None = None) -> CommandRow:
    return CommandRow(name=name, kind=kind, does=MappingProxyType(dict(does or {})))


def _all(does: Does) -> Mapping[type, Does]:
    """The same for every bench that is built on."""
    return dict.fromkeys(BUILT_ON, does)


BUILT_ON = (HungPlate, HangingBar, FingerTool, BuiltTool, Mobile, ScalesBench, TwoFingers)
"""The benches of free build."""

ON_A_FINGER = (FingerTool, BuiltTool)

_ROWS = (
    _row(
        "hang",
        commands.Hang,
        {TwoFingers: two_fingers_edits.add_weight, HangingBar: bar_edits.hang, BuiltTool: tool_edits.hang},
    ),
    _row(
        "move",
        commands.Move,
        {TwoFingers: two_fingers_edits.move, HangingBar: bar_edits.move, BuiltTool: tool_edits.move},
    ),
    _row(
        "remove",
        commands.Remove,
        {
            TwoFingers: two_fingers_edits.remove,
            HangingBar: bar_edits.remove,
            BuiltTool: tool_edits.remove,
            Mobile: mobile_edits.remove,
            HungPlate: plate_edits.remove,
            ScalesBench: scales_edits.remove,
        },
    ),
    _row("set-hold", commands.SetHold, {HangingBar: bar_edits.set_hold, BuiltTool: tool_edits.set_hold}),
    _row("move-pivot", commands.MovePivot, {HangingBar: bar_edits.move_pivot}),
    _row("move-finger", commands.MoveFinger, dict.fromkeys(ON_A_FINGER, finger_edits.move_finger)),
    _row("move-reference", commands.MoveReference, _all(shared_edits.move_reference)),
    _row(
        "measure",
        commands.Measure,
        {
            TwoFingers: two_fingers_edits.measure,
            HangingBar: bar_edits.measure,
            **dict.fromkeys(ON_A_FINGER, finger_edits.measure),
            Mobile: mobile_edits.measure,
            HungPlate: plate_edits.measure,
            ScalesBench: scales_edits.measure,
        },
    ),
    _row("guess", commands.Guess, _all(shared_edits.guess)),
    _row("let-go", commands.LetGo, {**_all(shared_edits.let_go), Showing: shared_edits.let_go}),
    _row("hold-still", commands.HoldStill, {**_all(shared_edits.hold_still), Showing: shared_edits.hold_still}),
    _row("set-view", commands.SetView, _all(shared_edits.set_view)),
    _row("set-units", commands.SetUnits, _all(shared_edits.set_units)),
    _row(
        "open-build",
        commands.OpenBuild,
        {
            TwoFingers: two_fingers_edits.open_build,
            HangingBar: bar_edits.open_build,
            FingerTool: finger_edits.open_tool,
            BuiltTool: tool_edits.open_build,
            Mobile: mobile_edits.open_mobile,
            HungPlate: plate_edits.open_plate,
            ScalesBench: scales_edits.open_build,
        },
    ),
    _row("hang-on", mobile_commands.HangOn, {Mobile: mobile_edits.hang_on}),
    _row("hang-bar", mobile_commands.HangBar, {Mobile: mobile_edits.hang_bar}),
    _row("rehang", mobile_commands.Rehang, {Mobile: mobile_edits.rehang}),
    _row("slide-bar", mobile_commands.SlideBar, {Mobile: mobile_edits.slide_bar}),
    _row("fit-part", tool_commands.FitPart, {BuiltTool: tool_edits.fit}),
    _row("set-length", tool_commands.SetLength, {BuiltTool: tool_edits.set_length}),
    _row(
        "reweigh",
        part_commands.Reweigh,
        {
            TwoFingers: two_fingers_edits.reweigh,
            HungPlate: plate_edits.reweigh,
            BuiltTool: tool_edits.reweigh,
            Mobile: mobile_edits.reweigh,
            ScalesBench: scales_edits.reweigh,
        },
    ),
    _row(
        "rename",
        part_commands.Rename,
        {
            TwoFingers: two_fingers_edits.rename,
            HungPlate: plate_edits.rename,
            BuiltTool: tool_edits.rename,
            ScalesBench: scales_edits.rename,
        },
    ),
    _row("put-on", scales_commands.PutOn, {ScalesBench: scales_edits.put_on}),
    _row("shift", scales_commands.Shift, {ScalesBench: scales_edits.shift}),
    _row("move-scale", scales_commands.MoveScale, {ScalesBench: scales_edits.move_scale}),
    _row("stand-on", scales_commands.StandOn, {ScalesBench: scales_edits.stand_on}),
    _row("guess-reading", scales_commands.GuessReading, {ScalesBench: scales_edits.guess_reading}),
    *(_row(name, kind, {HungPlate: does}) for name, kind, does in plate_edits.PLATE_EDITS),
    _row("move-fingers", two_finger_commands.MoveFingers, {TwoFingers: two_fingers_edits.move_fingers}),
    _row("set-friction", two_finger_commands.SetFriction, {TwoFingers: two_fingers_edits.set_friction}),
    _row("guess-meeting", two_finger_commands.GuessMeeting, {TwoFingers: two_fingers_edits.guess_meeting}),
    _row("stop-fingers", two_finger_commands.StopFingers, {TwoFingers: two_fingers_edits.stop_fingers}),
    # The session itself carries these out, from the states it has kept.
    _row("undo", commands.Undo),
    _row("redo", commands.Redo),
)

COMMANDS: Mapping[str, CommandRow] = MappingProxyType({row.name: row for row in _ROWS})
"""Every command by its name on a tape."""

_ROW_OF: Mapping[type, CommandRow] = MappingProxyType({row.kind: row for row in _ROWS})


def row_of(command: Command) -> CommandRow:
    """The row of a command."""
    return _ROW_OF[type(command)]


def carried_out(state: BenchState, command: Edit) -> BenchState | Refused:
    """The bench after a command, or why it stays as it is. Pure."""
    does = row_of(command).does.get(type(state))
    after: BenchState | Refused = NOT_ON_THIS_BENCH if does is None else does(state, command)
    return after
