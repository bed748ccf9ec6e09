"""The one table of commands: what each is called on a tape, and what it does to each kind of bench.

A command that is not in it does not exist: sessions, tapes, replay and tests all read this table.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any, TypeVar

from lab.simulation import commands
from lab.simulation.benches import BenchState, FingerTool, HangingBar, Showing, bar_edits, finger_edits, shared_edits
from lab.simulation.commands import Command, Edit
from lab.simulation.refused import Refused, msg

NOT_ON_THIS_BENCH = Refused(template=msg("That can't be done on this bench."))

C = TypeVar("C")
OnBar = Callable[[HangingBar, C], HangingBar | Refused]
OnTool = Callable[[FingerTool, C], FingerTool | Refused]
OnShowing = Callable[[Showing, C], Showing | Refused]


@dataclass(frozen=True, slots=True, kw_only=True)
class CommandRow:
    """One command.

    name: on tapes.  kind: its class.  on_bar, on_tool, on_showing: what it does to each bench, a pure function of
    the state and the command; None where that bench has nothing of the kind.
    """

    name: str
    kind: type[Command]
    on_bar: OnBar[Any] | None = None
    on_tool: OnTool[Any] | None = None
    on_showing: OnShowing[Any] | None = None


def _row(
    name: str,
    kind: type[C],
    *,
    on_bar: OnBar[C] | None = None,
    on_tool: OnTool[C] | None = None,
    on_showing: OnShowing[C] | None = None,
) -> CommandRow:
    """A row whose functions take the command that they stand beside; the type checker holds it."""
    return CommandRow(name=name, kind=kind, on_bar=on_bar, on_tool=on_tool, on_showing=on_showing)  # type: ignore[arg-type]


_ROWS = (
    _row("hang", commands.Hang, on_bar=bar_edits.hang),
    _row("move", commands.Move, on_bar=bar_edits.move),
    _row("remove", commands.Remove, on_bar=bar_edits.remove),
    _row("set-hold", commands.SetHold, on_bar=bar_edits.set_hold),
    _row("move-pivot", commands.MovePivot, on_bar=bar_edits.move_pivot),
    _row("move-finger", commands.MoveFinger, on_tool=finger_edits.move_finger),
    _row(
        "move-reference",
        commands.MoveReference,
        on_bar=shared_edits.move_reference,
        on_tool=shared_edits.move_reference,
    ),
    _row("guess", commands.Guess, on_bar=shared_edits.guess, on_tool=shared_edits.guess),
    _row(
        "let-go",
        commands.LetGo,
        on_bar=shared_edits.let_go,
        on_tool=shared_edits.let_go,
        on_showing=shared_edits.let_go,
    ),
    _row(
        "hold-still",
        commands.HoldStill,
        on_bar=shared_edits.hold_still,
        on_tool=shared_edits.hold_still,
        on_showing=shared_edits.hold_still,
    ),
    _row("set-view", commands.SetView, on_bar=shared_edits.set_view, on_tool=shared_edits.set_view),
    _row("set-units", commands.SetUnits, on_bar=shared_edits.set_units, on_tool=shared_edits.set_units),
    _row("open-build", commands.OpenBuild, on_bar=bar_edits.open_build, on_tool=finger_edits.open_tool),
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
    row = row_of(command)
    if isinstance(state, HangingBar):
        return NOT_ON_THIS_BENCH if row.on_bar is None else row.on_bar(state, command)
    if isinstance(state, Showing):
        return NOT_ON_THIS_BENCH if row.on_showing is None else row.on_showing(state, command)
    return NOT_ON_THIS_BENCH if row.on_tool is None else row.on_tool(state, command)
