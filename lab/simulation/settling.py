"""The end of a motion without watching it: for text, for tests, and where motion is to be kept down."""

from __future__ import annotations

from typing import Protocol, Self, TypeVar

from lab.simulation.clock import TICK_S

SETTLING_TICKS = round(60.0 / TICK_S)
"""A minute. A bar that creeps for longer than anyone watches is put where it would come to rest."""


B = TypeVar("B", bound="Moving")


class Moving(Protocol):
    """What a bench must be able to do for its motion to be followed to the end."""

    @property
    def moving(self) -> bool:
        """Whether the next tick changes anything."""
        ...

    def ticked(self) -> Self:
        """One tick later."""
        ...

    def at_end(self) -> Self:
        """Where it comes to rest."""
        ...


def settle(state: B) -> B:
    """The bench when it has come to rest: at most a minute of ticks, then the end itself.

    A bench that is held does not move, and is returned as it is; let it go first.
    """
    for _ in range(SETTLING_TICKS):
        if not state.moving:
            return state
        state = state.ticked()
    return state.at_end()
