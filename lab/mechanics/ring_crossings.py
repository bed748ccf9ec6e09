"""Where closed outlines meet themselves or one another, and which lies in which: exact, whatever the round-off.

What floats can tell for certain is told by numpy, for all sides at once; the few cases that round-off could
decide are worked out in whole fractions.
"""

from collections.abc import Iterator, Sequence
from fractions import Fraction

import numpy as np
from numpy.typing import NDArray

Corner = tuple[float, float]
Ring = tuple[Corner, ...]
Side = tuple[int, int]
"""A ring's number and a side's number in it, both from 0; a side starts at the corner of its own number."""

Floats = NDArray[np.float64]
Numbers = NDArray[np.intp]

# Twice the rounding error of a 2 × 2 determinant of differences, as a share of its two products.
CROSS_SLACK = 1e-15


def meeting_sides(rings: Sequence[Ring]) -> tuple[Side, Side] | None:
    """The first two sides that meet, of one ring or of two; None if none do.

    Sides of one ring that share a corner do not meet there, unless one runs back along the other.
    """
    starts, ends = _sides(rings)
    names = [(number, side) for number, ring in enumerate(rings) for side in range(len(ring))]
    for first, second in sorted({*_turning_back(rings, names), *_meeting(rings, names, starts, ends)}):
        return names[first], names[second]
    return None


def holders(rings: Sequence[Ring]) -> tuple[tuple[int, ...], ...]:
    """For each ring the numbers of the others that it lies in, where no two of them meet."""
    starts, ends = _sides(rings)
    places = np.array([ring[0] for ring in rings])[:, np.newaxis]
    straddles = (starts[:, 1] > places[..., 1]) != (ends[:, 1] > places[..., 1])
    place, side = np.nonzero(straddles)
    sign = _certain_sign(starts[side], ends[side], places[place, 0])
    for at in np.nonzero(sign == 0.0)[0].tolist():
        start, end = _corner(starts[side[at]]), _corner(ends[side[at]])
        exact = _cross(start, end, _corner(places[place[at], 0]))
        sign[at] = (exact > 0) - (exact < 0)
    # A rising side with the place on its left, or a falling one on its right, lies to the right of the place.
    crossed = np.zeros(straddles.shape, dtype=np.intp)
    crossed[place, side] = (sign > 0.0) == (ends[side, 1] > starts[side, 1])
    firsts = np.cumsum([0, *(len(ring) for ring in rings[:-1])])
    inside = np.add.reduceat(crossed, firsts, axis=1) % 2 == 1
    return tuple(
        tuple(other for other in np.nonzero(row)[0].tolist() if other != number) for number, row in enumerate(inside)
    )


def _sides(rings: Sequence[Ring]) -> tuple[Floats, Floats]:
    """Where each side starts and ends, ring after ring: (n, 2) both."""
    corners = [np.array(ring) for ring in rings]
    return np.concatenate(corners), np.concatenate([np.roll(ring, -1, axis=0) for ring in corners])


def _turning_back(rings: Sequence[Ring], names: list[Side]) -> Iterator[tuple[int, int]]:
    """Sides, by place in `names`, that run back along the one before."""
    starts, ends = _sides(rings)
    zero = 0
    for ring in rings:
        here = np.arange(zero, zero + len(ring))
        after = np.roll(here, -1)
        for side in here[_certain_sign(starts[here], ends[here], ends[after]) == 0.0].tolist():
            number = names[side][1]
            before, corner, beyond = (ring[(number + step) % len(ring)] for step in range(3))
            if _turns_back(before, corner, beyond):
                yield side, zero + (number + 1) % len(ring)
        zero += len(ring)


def _meeting(rings: Sequence[Ring], names: list[Side], starts: Floats, ends: Floats) -> Iterator[tuple[int, int]]:
    """Pairs of sides, by place in `names`, that have a place in common; neighbours left out."""
    one, two = _near_pairs(np.minimum(starts, ends), np.maximum(starts, ends))
    a, b, c, d = starts[one], ends[one], starts[two], ends[two]
    uncertain = ~(_both_beside(a, b, c, d) | _both_beside(c, d, a, b))
    for first, second in zip(one[uncertain].tolist(), two[uncertain].tolist(), strict=True):
        (ring, side), (other, across) = names[first], names[second]
        if ring == other and (side - across) % len(rings[ring]) in (1, len(rings[ring]) - 1):
            continue
        if _meet(*(_corner(place) for place in (starts[first], ends[first], starts[second], ends[second]))):
            yield first, second
            return  # one is enough, and a tangle has a great many


def _near_pairs(low: Floats, high: Floats) -> tuple[Numbers, Numbers]:
    """Pairs of boxes that touch, the lower number first, in order of the two."""
    order = np.argsort(low[:, 0], kind="stable")
    sorted_low = low[order, 0]
    # From each box on, those that start before it ends along.
    count = np.searchsorted(sorted_low, high[order, 0], side="right") - np.arange(len(order)) - 1
    first = np.repeat(np.arange(len(order)), count)
    second = first + 1 + np.arange(len(first)) - np.repeat(np.cumsum(count) - count, count)
    one, two = order[first], order[second]
    touch = (low[one, 1] <= high[two, 1]) & (low[two, 1] <= high[one, 1])
    one, two = np.minimum(one, two)[touch], np.maximum(one, two)[touch]
    by_number = np.lexsort((two, one))
    return one[by_number], two[by_number]


def _both_beside(a: Floats, b: Floats, c: Floats, d: Floats) -> NDArray[np.bool_]:
    """Whether c and d lie on one side of a–b, by more than round-off."""
    first, second = _certain_sign(a, b, c), _certain_sign(a, b, d)
    beside: NDArray[np.bool_] = (first == second) & (first != 0.0)
    return beside


def _certain_sign(a: Floats, b: Floats, p: Floats) -> Floats:
    """+1 left of a–b, −1 right of it, 0 where round-off could decide."""
    one = (b[:, 0] - a[:, 0]) * (p[:, 1] - a[:, 1])
    two = (b[:, 1] - a[:, 1]) * (p[:, 0] - a[:, 0])
    cross = one - two
    certain: Floats = np.where(np.abs(cross) > CROSS_SLACK * (np.abs(one) + np.abs(two)), np.sign(cross), 0.0)
    return certain


def _corner(place: Floats) -> Corner:
    return float(place[0]), float(place[1])


def _cross(a: Corner, b: Corner, p: Corner) -> Fraction:
    """Twice the area of a–b–p, anticlockwise positive, without round-off."""
    ax, az = Fraction(a[0]), Fraction(a[1])
    return (Fraction(b[0]) - ax) * (Fraction(p[1]) - az) - (Fraction(b[1]) - az) * (Fraction(p[0]) - ax)


def _turns_back(before: Corner, corner: Corner, after: Corner) -> bool:
    """Whether the side after a corner runs back along the one before it."""
    if _cross(before, corner, after) != 0:
        return False
    ahead = zip(before, corner, after, strict=True)
    return sum((Fraction(c) - Fraction(b)) * (Fraction(a) - Fraction(c)) for b, c, a in ahead) < 0


def _meet(a: Corner, b: Corner, c: Corner, d: Corner) -> bool:
    """Whether two sides have a place in common, given that their boxes touch."""
    one, two = _cross(a, b, c), _cross(a, b, d)
    if (one > 0 and two > 0) or (one < 0 and two < 0):
        return False
    one, two = _cross(c, d, a), _cross(c, d, b)
    return not ((one > 0 and two > 0) or (one < 0 and two < 0))
