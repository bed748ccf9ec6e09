"""Ways of thinking about what scales under a body read.

Each is a small function from the supports and what lies on them to one weight a scale, as numerals.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot

from lab.lesson.messages import msg
from lab.lesson.situation import SAME
from lab.lesson.ways.way import Way

Spot = tuple[float, float]
"""Along and across."""
Readings = tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Lying:
    """A weight that lies on the supports.  at: along and across.  is_bar: whether it is the bar itself."""

    weight: float
    at: Spot
    is_bar: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class OnScales:
    """loads: everything that weighs something.  scales: where each stands."""

    loads: tuple[Lying, ...]
    scales: tuple[Spot, ...]

    @property
    def weight(self) -> float:
        """All the weight."""
        return sum(load.weight for load in self.loads)


def moment(seen: OnScales) -> Readings | None:
    """Each weight shared out by its distances: the truth."""
    return _read(seen, seen.loads)


def half_each(seen: OnScales) -> Readings:
    """Every scale reads the same share of all the weight."""
    return tuple(seen.weight / len(seen.scales) for _ in seen.scales)


def wrong_way_round(seen: OnScales) -> Readings | None:
    """By the distances, but the nearer scale carries the smaller share: two scales swapped."""
    readings = moment(seen)
    return None if readings is None or len(readings) != 2 else (readings[1], readings[0])


def nearest_carries(seen: OnScales) -> Readings | None:
    """Each weight rests on its nearest scale alone; one half-way between leaves it nothing to choose."""
    readings = [0.0 for _ in seen.scales]
    for load in seen.loads:
        far = [hypot(load.at[0] - along, load.at[1] - across) for along, across in seen.scales]
        if len(seen.scales) == 2:
            far = [abs(load.at[0] - along) for along, _ in seen.scales]
        nearest = min(far)
        if sum(each - nearest <= SAME * max(far) for each in far) > 1:
            return None
        readings[far.index(nearest)] += load.weight
    return tuple(readings)


def bar_left_out(seen: OnScales) -> Readings | None:
    """The bar weighs nothing."""
    rest = [load for load in seen.loads if not load.is_bar]
    return None if len(rest) == len(seen.loads) or not rest else _read(seen, rest)


def _read(seen: OnScales, loads: Sequence[Lying]) -> Readings | None:
    """Return what each scale reads of these loads; None where one would have to pull."""
    totals = [0.0 for _ in seen.scales]
    for load in loads:
        for index, share in enumerate(_shares(seen.scales, load.at)):
            totals[index] += share * load.weight
    slack = SAME * sum(abs(load.weight) for load in loads)
    return None if min(totals) < -slack else tuple(max(0.0, total) for total in totals)


def _shares(scales: Sequence[Spot], at: Spot) -> Readings:
    """How a weight at a spot is shared out: by distance along between two, by areas among three."""
    if len(scales) == 2:
        (first, _), (second, _) = scales
        share = (at[0] - first) / (second - first)
        return (1 - share, share)
    a, b, c = scales
    whole = _area(a, b, c)
    return _area(at, b, c) / whole, _area(a, at, c) / whole, _area(a, b, at) / whole


def _area(a: Spot, b: Spot, c: Spot) -> float:
    """Twice the area of a triangle, with its sense."""
    return (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])


READING_WAYS: tuple[Way[OnScales, Readings], ...] = (
    Way(name="moment", predict=moment, sentence=msg("Each scale carries more of what lies nearer to it.")),
    Way(
        name="half_each",
        predict=half_each,
        sentence=msg("{given} is the same share each. The scale nearer to the heavy part carries more."),
    ),
    Way(
        name="wrong_way_round",
        predict=wrong_way_round,
        sentence=msg("{given} is right the other way round. The nearer scale carries more."),
    ),
    Way(
        name="nearest_carries",
        predict=nearest_carries,
        sentence=msg("{given} puts each weight on its nearest scale alone. Every scale has a share in it."),
    ),
    Way(
        name="bar_left_out",
        predict=bar_left_out,
        sentence=msg("{given} would do if the {beam} had no weight. The scales carry it too."),
    ),
)
"""Every way of thinking about scales; the first one is the truth."""
