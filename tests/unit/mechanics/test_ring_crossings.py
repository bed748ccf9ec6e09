"""Outlines that meet, and those that lie in one another."""

from math import nextafter

import pytest

from lab.mechanics.ring_crossings import holders, meeting_sides

Ring = tuple[tuple[float, float], ...]
SQUARE: Ring = ((0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0))


def square(low: float, high: float) -> Ring:
    return ((low, low), (high, low), (high, high), (low, high))


def test_rings_inside_one_another_do_not_meet_and_each_names_those_around_it() -> None:
    rings = [square(0.0, 1.0), square(0.1, 0.9), square(0.2, 0.3), square(0.5, 0.6)]
    assert meeting_sides(rings) is None
    assert holders(rings) == ((), (0,), (0, 1), (0, 1))


def test_the_first_pair_of_sides_that_meets_is_named_by_ring_and_side() -> None:
    assert meeting_sides([SQUARE, square(0.5, 1.5)]) == ((0, 1), (1, 0))
    assert meeting_sides([square(5.0, 6.0), ((0.0, 0.0), (1.0, 1.0), (1.0, 0.0), (0.0, 1.0))]) == ((1, 0), (1, 2))


@pytest.mark.parametrize("steps", [-1, 0, 1])
def test_a_corner_one_float_from_a_slanting_side_is_on_the_side_that_it_is_on(steps: int) -> None:
    # The side up x = z passes through (0.3, 0.3) exactly; one float to the right of it is inside.
    triangle: Ring = ((0.0, 0.0), (1.0, 0.0), (1.0, 1.0))
    along = 0.3 if steps == 0 else nextafter(0.3, steps * 1.0)
    small: Ring = ((along, 0.3), (0.5, 0.1), (0.6, 0.2))
    assert (meeting_sides([triangle, small]) is None) == (steps > 0)


def test_a_side_may_go_on_straight_but_not_back() -> None:
    straight: Ring = ((0.0, 0.0), (0.1, 0.1), (0.3, 0.3), (0.0, 1.0))
    back: Ring = ((0.0, 0.0), (0.3, 0.3), (0.1, 0.1), (0.0, 1.0))
    assert meeting_sides([straight]) is None
    assert meeting_sides([back]) == ((0, 0), (0, 1))


def test_a_place_level_with_corners_is_told_inside_from_outside() -> None:
    diamond: Ring = ((0.0, -1.0), (1.0, 0.0), (0.0, 1.0), (-1.0, 0.0))
    level: Ring = ((0.0, 0.0), (0.1, 0.0), (0.05, 0.1))
    beside: Ring = ((2.0, 0.0), (2.1, 0.0), (2.05, 0.1))
    ahead: Ring = ((-2.1, 0.0), (-2.0, 0.0), (-2.05, 0.1))
    assert holders([diamond, level, beside, ahead]) == ((), (0,), (), ())
