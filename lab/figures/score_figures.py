"""Counts and coefficients with known values, worked out here beside them."""

from __future__ import annotations

import itertools
from collections import Counter

import numpy as np
from numpy.typing import ArrayLike

from lab.lesson.asked import Side
from lab.lesson.probe.items import Item
from lab.lesson.probe.items import truth_of_item as goes

TEACHING_SCORES = (
    "1111110110", "1011011101", "1111011001", "0010001000", "0000010010",
    "1110111111", "1101110111", "1111111101", "0101111101", "1101101110",
)  # fmt: skip
"""Ten people by ten items, right 1 or not 0.  Source: Wuensch, KR-20 teaching data."""


def sides_of_small_items(most: int = 5) -> Counter[Side]:
    """Return how often each end drops over all items with weights and arms from 1 to `most`, by the mechanics."""
    numbers = range(1, most + 1)
    return Counter(
        goes(Item(left_weight=a, left_arm=b, right_weight=c, right_arm=d))
        for a, b, c, d in itertools.product(numbers, repeat=4)
    )


def kr_20(scores: ArrayLike) -> float | None:
    """Return the reliability of a test of right-or-not items; None where all people score alike.

    scores: (people, items) of 0 and 1, at least 2 items.  The variance of the totals divides by the number of people,
    as that of an item (p q) does.  Source: Kuder and Richardson 1937, formula 20.
    """
    return _reliability(scores, lost=0)


def kr_20_of_mixed_variances(scores: ArrayLike) -> float | None:
    """Return what comes out when the totals' variance alone divides by one less: a trap, kept to be told from."""
    return _reliability(scores, lost=1)


def teaching_scores() -> list[list[int]]:
    """Return the worked example as numbers."""
    return [[int(mark) for mark in row] for row in TEACHING_SCORES]


def _reliability(scores: ArrayLike, *, lost: int) -> float | None:
    table = np.asarray(scores, dtype=np.float64)
    items = int(table.shape[1])
    right = table.mean(axis=0)
    total = float(table.sum(axis=1).var(ddof=lost))
    if total == 0.0:
        return None
    return float(items / (items - 1) * (1.0 - (right * (1.0 - right)).sum() / total))
