"""A session: one bench in use, from its first state on. Everything that happens to it happens here."""

from __future__ import annotations

from lab.simulation.benches import BenchState
from lab.simulation.clock import Clock
from lab.simulation.commands import Command
from lab.simulation.refused import Refused
from lab.simulation.tape import Tape


class Session:
    """The bench as it is, how it came to be so, and how far its clock has come.

    Attributes, for reading: ``state`` as it is now; ``previous`` as it was one tick before (the same
    object when a command has just changed it); ``ticks`` done so far.
    """

    __slots__ = ("_clock", "_future", "_past", "_tape", "previous", "state", "ticks")

    def __init__(self, state: BenchState, *, tape: Tape | None = None) -> None:
        """state: the first one.  tape: where everything is recorded; None records nothing."""
        self.state = state
        self.previous = state
        self.ticks = 0
        self._clock = Clock()
        self._past: list[BenchState] = []
        self._future: list[BenchState] = []
        self._tape = tape

    @property
    def fraction(self) -> float:
        """How far between ``previous`` and ``state`` to draw, 0 … 1."""
        return self._clock.fraction

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
        raise NotImplementedError

    def advance(self, elapsed_ns: int) -> int:
        """Let real time pass. elapsed_ns: of a monotonic clock.  Returns how many ticks were done, ≤ 8."""
        raise NotImplementedError
