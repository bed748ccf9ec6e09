"""Real time cut into whole ticks, in integers of nanoseconds: nothing is ever rounded away."""

from __future__ import annotations

from dataclasses import dataclass, replace

TICK_NS = 5_000_000
"""One tick, ns. Mechanics and tapes count on it; changing it changes every recorded motion."""

TICK_S = TICK_NS / 1_000_000_000
"""One tick, s: the step of every motion."""

TICKS_A_FRAME = 8
"""At most this many ticks in one frame (40 ms). More, and a slow machine spends ever longer catching
up; fewer, and anything under 30 frames a second would run slow."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Clock:
    """How far real time has come since the last whole tick.

    remainder_ns: 0 ≤ remainder < TICK_NS.  dropped_ticks: how many were left out so far.
    """

    remainder_ns: int = 0
    dropped_ticks: int = 0

    def after(self, elapsed_ns: int) -> tuple[Clock, int]:
        """The clock when elapsed_ns more have passed, and how many ticks to do now.

        elapsed_ns: of a monotonic clock; less than 0 counts as 0.  Returns 0 … TICKS_A_FRAME ticks.
        """
        whole, remainder_ns = divmod(self.remainder_ns + max(elapsed_ns, 0), TICK_NS)
        ticks = min(whole, TICKS_A_FRAME)
        dropped = self.dropped_ticks + whole - ticks
        return replace(self, remainder_ns=remainder_ns, dropped_ticks=dropped), ticks

    @property
    def fraction(self) -> float:
        """How much of the next tick has passed, 0 … 1, for drawing between two states."""
        return self.remainder_ns / TICK_NS
