"""Times taken in turn, so that a busy machine slows what is measured and its reference alike."""

from __future__ import annotations

from collections.abc import Callable
from statistics import median
from time import perf_counter

Work = Callable[[], object]


def medians_s(works: tuple[Work, ...], *, rounds: int) -> tuple[float, ...]:
    """The median time of each, s: what it costs as a rule."""
    return tuple(median(times) for times in _times(works, rounds))


def best_s(works: tuple[Work, ...], *, rounds: int) -> tuple[float, ...]:
    """The shortest time of each, s: what it costs where nothing else disturbs."""
    return tuple(min(times) for times in _times(works, rounds))


def _times(works: tuple[Work, ...], rounds: int) -> list[list[float]]:
    times: list[list[float]] = [[] for _ in works]
    for _ in range(rounds):
        for work, taken in zip(works, times, strict=True):
            started = perf_counter()
            work()
            taken.append(perf_counter() - started)
    return times
