"""Where scales can stand, so that they hold a body at all: apart, and three of them not in one line."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import combinations
from math import dist

from lab.mechanics import Vector

APART_SHARE = 0.02
"""Two scales nearer than this share of the body's length would stand in each other; three flatter than this share of
their longest side would hold it on a knife's edge."""


def apart(places_m: Iterable[Vector]) -> bool:
    """Whether two scales are at two places along, or three make a triangle that is no sliver."""
    places = [place[:2] for place in places_m]
    if len(places) == 2:
        return places[0][0] < places[1][0]
    longest = max(dist(first, second) for first, second in combinations(places, 2))
    (x0, y0), (x1, y1), (x2, y2) = places
    doubled = abs((x1 - x0) * (y2 - y0) - (y1 - y0) * (x2 - x0))
    return longest > 0.0 and doubled >= APART_SHARE * longest * longest


def between_m(at_m: float, places_m: Sequence[float], number: int, ends_m: tuple[float, float]) -> float:
    """The nearest place for one of two scales: it stays on its side of the other, and on the body.

    places_m: of both, from left to right.  number: which of them moves, 0 or 1.
    """
    gap_m = min(APART_SHARE * (ends_m[1] - ends_m[0]), places_m[1] - places_m[0])
    low_m, high_m = ends_m
    if number == 0:
        high_m = max(low_m, places_m[1] - gap_m)
    else:
        low_m = min(high_m, places_m[0] + gap_m)
    return min(max(at_m, low_m), high_m) + 0.0
