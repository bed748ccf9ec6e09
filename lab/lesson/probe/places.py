"""The probe with numbers: where does a bar with some weights on it balance?  Two or three answers name the idea.

One number tells as much as several sides, since ideas land in different places.  The bars are those, of many random
ones, on which they lie farthest apart; on most random bars some idea lands right beside the truth.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from random import Random

import numpy as np
from numpy.typing import NDArray

from lab.lesson.probe.model import Floats, shares
from lab.lesson.situation import Load, Situation
from lab.lesson.ways.place import PLACE_WAYS

LENGTH = 100.0
WEIGHTS = tuple(range(10, 100, 10))
PLACES = tuple(range(5, 100, 5))
BAR_WEIGHTS = (20, 40, 60, 80)
MOST_WEIGHTS = 3

DRAWN = 3000
"""Random bars that are looked through."""

DRAW_SEED = 7
"""Fixes the bars, so that every learner is asked from the same ones."""

HAND = 0.02
"""How far off an answer is meant, one standard deviation, as a share of the length."""

SLIP = 0.075
"""How likely an answer lies anywhere on the bar, whatever the idea."""

IDEA_NAMES: tuple[str, ...] = tuple(way.name for way in PLACE_WAYS)


@dataclass(frozen=True, slots=True, kw_only=True)
class PlaceItem:
    """A bar from 0 to `LENGTH` with two or three weights on it: (weight, place) each, in numerals."""

    bar_weight: int
    loads: tuple[tuple[int, int], ...]

    @property
    def situation(self) -> Situation:
        """The item as ways of thinking see it."""
        return Situation(
            loads=tuple(
                Load(name=f"weight {number}", weight=weight, place=place)
                for number, (weight, place) in enumerate(self.loads, start=1)
            ),
            bar=Load(name="bar", weight=self.bar_weight, place=LENGTH / 2, half=LENGTH / 2),
            left=0.0,
            right=LENGTH,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacePool:
    """The bars that may be asked.

    places: (items, ideas), where each idea would put the balance point, on the bar.
    alike: (items, ideas, ideas), how hard two ideas are to tell apart by one answer: 1 where they are one place.
    """

    items: tuple[PlaceItem, ...]
    places: Floats
    alike: Floats


@lru_cache(maxsize=1)
def place_pool() -> PlacePool:
    """Return the pool, worked out once; every idea has an answer on each of its bars."""
    draw = Random(DRAW_SEED)
    items: list[PlaceItem] = []
    rows = []
    while len(items) < DRAWN:
        item = _drawn(draw)
        row = [way.predict(item.situation) for way in PLACE_WAYS]
        if all(place is not None for place in row):
            items.append(item)
            rows.append(row)
    # A marker stops at the end of the bar.
    places = np.clip(np.array(rows, dtype=np.float64), 0.0, LENGTH)
    apart = (places[:, :, np.newaxis] - places[:, np.newaxis, :]) / (HAND * LENGTH)
    return PlacePool(items=tuple(items), places=places, alike=np.exp(-(apart**2) / 8.0))


def no_idea(learners: int) -> Floats:
    """Return the ideas' chances before any answer, all alike: (learners, ideas)."""
    return np.full((learners, len(IDEA_NAMES)), 1.0 / len(IDEA_NAMES))


def next_bars(chances: Floats, used: NDArray[np.bool_] | None = None) -> NDArray[np.intp]:
    """Return the bar to ask about next, for each learner: where likely ideas lie farthest apart.

    chances: (learners, ideas).  used: (learners, items), bars that were asked about already.
    """
    pool = place_pool()
    flat = pool.alike.reshape(len(pool.items), -1)
    pairs = chances[:, :, np.newaxis] * chances[:, np.newaxis, :]
    confused = pairs.reshape(len(chances), -1) @ flat.T
    if used is not None:
        confused = np.where(used, np.inf, confused)
    chosen: NDArray[np.intp] = confused.argmin(axis=1)
    return chosen


def after_place(chances: Floats, bars: NDArray[np.intp], place: Floats) -> Floats:
    """Return the ideas' chances after another answer each: (learners, ideas).

    bars: (learners,), which bar was asked about.  place: (learners,), the answer, from 0 to `LENGTH`.
    """
    spread = HAND * LENGTH
    off = (place[:, np.newaxis] - place_pool().places[bars]) / spread
    near = np.exp(-(off**2) / 2.0) / (spread * np.sqrt(2.0 * np.pi))
    likely = (1.0 - SLIP) * near + SLIP / LENGTH
    return shares(np.log(chances) + np.log(likely))


def _drawn(draw: Random) -> PlaceItem:
    count = draw.randint(2, MOST_WEIGHTS)
    # Equal weights have no heaviest one, and that idea would have no answer.
    weights = draw.sample(WEIGHTS, count)
    places = sorted(draw.sample(PLACES, count))
    return PlaceItem(bar_weight=draw.choice(BAR_WEIGHTS), loads=tuple(zip(weights, places, strict=True)))
