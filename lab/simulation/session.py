"""A session: one bench in use, from its first state on. Everything that happens to it happens here."""

from __future__ import annotations

from typing import TYPE_CHECKING

from lab.simulation.clock import Clock
from lab.simulation.command_table import carried_out
from lab.simulation.commands import Command, Edit, Redo, Undo, same_drag
from lab.simulation.refused import Refused, msg

if TYPE_CHECKING:
    from lab.simulation.benches import BenchState
    from lab.simulation.tape import Tape  # not loaded where nothing is recorded

NOTHING_TO_UNDO = Refused(template=msg("There is nothing to take back."))
NOTHING_TO_REDO = Refused(template=msg("There is nothing to make again."))


class Session:
    """The bench as it is, how it came to be so, and how far its clock has come.

    Attributes, for reading: ``state`` as it is now; ``previous`` as it was one tick before (the same
    object when a command has just changed it); ``ticks`` done so far.
    """

    __slots__ = ("_clock", "_future", "_last_command", "_origin", "_past", "_tape", "previous", "state", "ticks")

    def __init__(self, state: BenchState, *, tape: Tape | None = None) -> None:
        """state: the first one.  tape: where everything is recorded; None records nothing."""
        self.state = state
        self.previous = state
        self.ticks = 0
        self._clock = Clock()
        self._past: list[BenchState] = []
        self._future: list[BenchState] = []
        self._last_command: Command | None = None
        self._origin: BenchState | None = None
        self._tape = tape
        if tape is not None:
            tape.begin(state)

    @property
    def fraction(self) -> float:
        """How far between ``previous`` and ``state`` to draw, 0 … 1; 1 where nothing moves any more."""
        return self._clock.fraction if self.state.moving else 1.0

    @property
    def dropped_ticks(self) -> int:
        """Ticks left out because frames came too seldom."""
        return self._clock.dropped_ticks

    @property
    def moving(self) -> bool:
        """Whether time changes anything now."""
        return self.state.moving

    @property
    def can_undo(self) -> bool:
        """Whether Undo would change anything."""
        return bool(self._past) or not self.state.held

    @property
    def can_redo(self) -> bool:
        """Whether Redo would change anything."""
        return bool(self._future)

    def do(self, command: Command) -> Refused | None:
        """Carry out a command. Returns None when done; else why not, and nothing has changed."""
        if isinstance(command, Undo):
            why = self._undo()
        elif isinstance(command, Redo):
            why = self._redo()
        else:
            why = self._edit(command)
        if why is None:
            self._last_command = command
        if self._tape is not None:
            self._tape.commanded(self.ticks, command, why, self.state)
        return why

    def advance(self, elapsed_ns: int) -> int:
        """Let real time pass. elapsed_ns: of a monotonic clock.  Returns how many ticks were done, ≤ 8."""
        self._clock, ticks = self._clock.after(elapsed_ns)
        for _ in range(ticks):
            self.previous = self.state
            self.state = self.state.ticked()
            self.ticks += 1
            if self._tape is not None:
                self._tape.ticked(self.ticks, self.state)
        return ticks

    def _edit(self, command: Edit) -> Refused | None:
        after = carried_out(self.state, command)
        if isinstance(after, Refused):
            return after
        # Steps are kept with the bench held: undoing one must not start an old motion again.
        origin, kept = self.state.stilled(), after.stilled()
        if self._origin is not None and same_drag(self._last_command, command):
            origin = self._origin
            if self._past and self._past[-1] is origin:
                self._past.pop()
        self._origin = origin
        if kept != origin:
            self._past.append(origin)
            self._future.clear()
        # Equal is not yet the same to the last bit: 0.0 equals −0.0.
        self._show(origin if after.held and kept == origin else after)
        return None

    def _undo(self) -> Refused | None:
        if not self.state.held:
            self._show(self.state.stilled())
            return None
        if not self._past:
            return NOTHING_TO_UNDO
        self._future.append(self.state)
        self._show(self._past.pop())
        return None

    def _redo(self) -> Refused | None:
        if not self._future:
            return NOTHING_TO_REDO
        self._past.append(self.state.stilled())
        self._show(self._future.pop())
        return None

    def _show(self, state: BenchState) -> None:
        """A command changes the bench at a stroke: nothing is drawn between before and after."""
        self.previous = self.state = state
