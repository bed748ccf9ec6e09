"""Fresh seeds for lessons that were opened without one."""

from __future__ import annotations

from random import SystemRandom

#: Four figures: a learner can copy one to ask for the same numbers again.
SMALLEST, LARGEST = 1000, 9999


def drawn_seed() -> int:
    """A seed that nobody could foresee."""
    return SystemRandom().randint(SMALLEST, LARGEST)
