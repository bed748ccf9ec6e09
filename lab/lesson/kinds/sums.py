"""What several kinds say of a moment sum: both sides' pulls, and how many figures a moment needs."""

from __future__ import annotations

from collections.abc import Iterable

from lab.files import UnitSystem
from lab.lesson.messages import Amount, moment
from lab.mechanics import MomentRow, MomentSum

FROM_ORIGIN_M = 1e-9
"""A reference line nearer to the zero of the rule than this lies on it, and the sum needs no second step."""


def turning(row: MomentRow) -> float:
    """Return a row's moment about the pivot, anticlockwise positive: what pulls the left end down."""
    return -row.moment_kg_m[0]


def pulls(summed: MomentSum) -> tuple[float, float]:
    """Return what pulls the left end down and what pulls the right one, of a sum about the pivot."""
    return both_sides(turning(row) for row in summed.rows)


def both_sides(moments: Iterable[float]) -> tuple[float, float]:
    """Return the sum of the moments above 0, and that of those below, both as positive numbers."""
    turns = list(moments)
    return sum(turn for turn in turns if turn > 0), -sum(turn for turn in turns if turn < 0)


def moment_decimals(units: UnitSystem) -> int:
    """Return how many figures after the point a moment needs: none in grams and centimetres, three in kilograms."""
    return 0 if units.name == "g-cm" else 3


def short_moment(value_kg_m: float, units: UnitSystem) -> Amount:
    """Return a moment with no more figures than a reader wants."""
    return moment(value_kg_m, decimals=moment_decimals(units))
