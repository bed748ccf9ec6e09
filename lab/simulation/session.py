"""A session: one bench in use, from its first state on. Everything that happens to it happens here."""

from __future__ import annotations

from typing import TYPE_CHECKING

from lab.simulation.clock import Clock
from lab.simulation.command_table import carried_out
from lab.simulation.commands import Command, Edit, Redo, Undo, dragged
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

    __slots__ = ("_clock", "_drags", "_future", "_past", "_tape", "previous", "state", "ticks")

    def __init__(self, state: BenchState, *, tape: Tape | None = None) -> None:
        """state: the first one.  tape: where everything is recorded; None records nothing."""
        self.state = state
        self.previous = state
        self.ticks = 0
        self._clock = Clock()
        self._past: list[BenchState] = []
        self._future: list[BenchState] = []
        # What hands may still be dragging: how the bench was before, and how many steps lay behind it then.
        self._drags: dict[tuple[object, ...], tuple[BenchState, int]] = {}
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
        kept, origin = after.stilled(), self._origin_of(command)
        if kept != origin:
            self._past.append(origin)
            self._future.clear()
        # Equal is not yet the same to the last bit: 0.0 equals −0.0.
        self._show(origin if after.held and kept == origin else after)
        return None

    def _origin_of(self, command: Edit) -> BenchState:
        """The bench as one undo shall bring it back: before the drag that the command belongs to, if it does to one.

        What other hands dragged meanwhile is one step with it, since neither was before the other.
        """
        thing = dragged(command)
        now = self.state.stilled(), len(self._past)
        if thing is None:
            self._drags.clear()
            return now[0]
        origin, steps = self._drags.get(thing, now) if getattr(command, "joins", False) else now
        del self._past[steps:]
        self._drags[thing] = origin, steps
        self._drags = {each: (origin, steps) if was[1] > steps else was for each, was in self._drags.items()}
        return origin

    def _undo(self) -> Refused | None:
        if not self.state.held:
            self._show(self.state.stilled())
            return None
        if not self._past:
            return NOTHING_TO_UNDO
        self._drags.clear()
        self._future.append(self.state)
        self._show(self._past.pop())
        return None

    def _redo(self) -> Refused | None:
        if not self._future:
            return NOTHING_TO_REDO
        self._drags.clear()
        self._past.append(self.state.stilled())
        self._show(self._future.pop())
        return None

    def _show(self, state: BenchState) -> None:
        """A command changes the bench at a stroke: nothing is drawn between before and after."""
        self.previous = self.state = state
