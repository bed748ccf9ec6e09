"""Something that is shown as it was and, once let go, as it comes out: a part that is moved, scales that settle.

It is not the mechanics that move here: what it comes to is computed, and the way there is only eased.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from lab.simulation.clock import TICK_S

LASTS_TICKS = round(1.6 / TICK_S)
"""How long the way takes: slow enough to see what goes where, over before anybody waits."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Showing:
    """The whole state.  held: not let go.  ticks: how long it has been going since."""

    held: bool = True
    ticks: int = 0

    @property
    def moving(self) -> bool:
        """Whether the next tick changes anything."""
        return not self.held and self.ticks < LASTS_TICKS

    @property
    def share(self) -> float:
        """How much of the way is done, 0 … 1: slowly off and slowly in."""
        done = self.ticks / LASTS_TICKS
        return done * done * (3.0 - 2.0 * done)

    def stilled(self) -> Showing:
        """As it was, held."""
        return self if self.held else Showing()

    def released(self) -> Showing:
        """Just let go."""
        return Showing(held=False) if self.held else self

    def ticked(self) -> Showing:
        """One tick later."""
        return replace(self, ticks=self.ticks + 1) if self.moving else self

    def at_end(self) -> Showing:
        """As it comes out."""
        return replace(self, ticks=LASTS_TICKS) if self.moving else self
