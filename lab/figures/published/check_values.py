"""One published check value: an id, its source, and numbers to be met."""

from collections.abc import Callable, Sequence
from dataclasses import KW_ONLY, dataclass
from typing import Literal

Mark = Literal["seen", "part", "memory", "ours"]
"""How well a source is known: inputs and answer read in a stored copy; partly read; from memory; no printed
answer, worked out by us in another way."""

ROUND_OFF = 1e-9
"""A printed 5 in the next digit may have been rounded either way; this share of a tolerance keeps our own
round-off out of that."""


@dataclass(frozen=True, slots=True)
class Number:
    """ours; printed; tolerance, half a unit in the last digit of what is held.

    right: what the book's own inputs give, where it is wrong in print; then that is held, and not the print.
    """

    ours: float
    printed: float
    tolerance: float
    _: KW_ONLY
    right: float | None = None

    @property
    def held(self) -> float:
        """What ours has to be."""
        return self.printed if self.right is None else self.right

    @property
    def off(self) -> float:
        """How far ours is from it, as a share of the tolerance."""
        return abs(self.ours - self.held) / self.tolerance

    @property
    def met(self) -> bool:
        """Whether ours is what it has to be, and, where print is wrong, not what is printed."""
        trapped = self.right is not None and abs(self.ours - self.printed) <= self.tolerance
        return self.off <= 1.0 + ROUND_OFF and not trapped


@dataclass(frozen=True, slots=True)
class CheckValue:
    """One row.  id: in the list of published values.  source: in the register of sources.  numbers: worked out
    when asked for, so that a table of rows costs nothing."""

    id: str
    source: str
    mark: Mark
    numbers: Callable[[], Sequence[Number]]
