"""Where closed outlines meet themselves or one another: exact, whatever the round-off."""

from fractions import Fraction

import numpy as np
from numpy.typing import NDArray

Corner = tuple[float, float]
Ring = tuple[Corner, ...]
Floats = NDArray[np.float64]

# Twice the rounding error of a 2 × 2 determinant of differences, as a share of its two products.
CROSS_SLACK = 1e-15


def meeting_sides(first: Ring, second: Ring | None = None) -> tuple[int, int] | None:
    """The first two sides that meet, by number from 0: of two rings, or of one with itself; None if none do.

    Sides of one ring that share a corner do not meet there, unless one runs back along the other.
    """
    own = second is None
    other = first if second is None else second
    a, b = _sides(first)
    c, d = _sides(other)
    near: NDArray[np.bool_] = _boxes_touch(a, b, c, d)
    if own:
        count = len(first)
        near = np.triu(near, 1)
        for side in range(count):
            after = (side + 1) % count
            near[min(side, after), max(side, after)] = False
            if _turns_back(first[side], first[after], first[(after + 1) % count]):
                return side, after
    one, two = np.nonzero(near)
    certain_apart = _certainly_apart(a[one], b[one], c[two], d[two])
    for i, j in zip(one[~certain_apart].tolist(), two[~certain_apart].tolist(), strict=True):
        if _meet(first[i], first[(i + 1) % len(first)], other[j], other[(j + 1) % len(other)]):
            return i, j
    return None


def holds_place(ring: Ring, place: Corner) -> bool:
    """Whether a place that is not on the ring lies inside it."""
    inside = False
    for start, end in zip(ring, (*ring[1:], ring[0]), strict=True):
        if (start[1] > place[1]) != (end[1] > place[1]):
            rising = end[1] > start[1]
            if (_cross(start, end, place) > 0) == rising:
                inside = not inside
    return inside


def _sides(ring: Ring) -> tuple[Floats, Floats]:
    starts = np.array(ring)
    return starts, np.roll(starts, -1, axis=0)


def _boxes_touch(a: Floats, b: Floats, c: Floats, d: Floats) -> NDArray[np.bool_]:
    """(n, m): which sides' bounding boxes touch."""
    low_ab, high_ab = np.minimum(a, b)[:, np.newaxis], np.maximum(a, b)[:, np.newaxis]
    low_cd, high_cd = np.minimum(c, d)[np.newaxis], np.maximum(c, d)[np.newaxis]
    overlap = (low_ab <= high_cd) & (low_cd <= high_ab)
    touch: NDArray[np.bool_] = overlap[..., 0] & overlap[..., 1]
    return touch


def _certainly_apart(a: Floats, b: Floats, c: Floats, d: Floats) -> NDArray[np.bool_]:
    """(k,): both ends of one side lie on one side of the other, by more than round-off."""
    apart: NDArray[np.bool_] = _both_beside(a, b, c, d) | _both_beside(c, d, a, b)
    return apart


def _both_beside(a: Floats, b: Floats, c: Floats, d: Floats) -> NDArray[np.bool_]:
    first, second = _certain_sign(a, b, c), _certain_sign(a, b, d)
    beside: NDArray[np.bool_] = (first == second) & (first != 0)
    return beside


def _certain_sign(a: Floats, b: Floats, p: Floats) -> Floats:
    """+1 left of a–b, −1 right of it, 0 where round-off could decide."""
    one = (b[:, 0] - a[:, 0]) * (p[:, 1] - a[:, 1])
    two = (b[:, 1] - a[:, 1]) * (p[:, 0] - a[:, 0])
    cross = one - two
    certain: Floats = np.where(np.abs(cross) > CROSS_SLACK * (np.abs(one) + np.abs(two)), np.sign(cross), 0.0)
    return certain


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
