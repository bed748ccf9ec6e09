"""Ways of thinking about numbers other than places, held to values worked out apart from this code."""

from math import sqrt

import pytest

from lab.lesson.ways.arm import ARM_WAYS
from lab.lesson.ways.doubt import DOUBT_WAYS, Doubts
from lab.lesson.ways.lever import Lever, Weighed
from lab.lesson.ways.reading import READING_WAYS, Lying, OnScales
from lab.lesson.ways.shift import SHIFT_WAYS, Change
from lab.lesson.ways.weight import WEIGHT_WAYS

# A load of 6 with an arm of 4; a bar of 2 with its middle 0.5 on the load's side; the left end 6 from the pivot, so
# that the load is 2 from that end and the bar's middle 5.5.
LOAD = Weighed(weight=6.0, arm=4.0, from_end=2.0)
BAR = Weighed(weight=2.0, arm=0.5, from_end=5.5)


def lever(**asked):
    return Lever(loads=(LOAD,), bar=BAR, right_of_pivot=True, pivot_from_end=6.0, **asked)


def predicted(ways, seen):
    return {way.name: way.predict(seen) for way in ways}


def agree(said, worked_out, *, within=0.005):
    # Half of the last of the figures that were worked out.
    assert set(said) == set(worked_out)
    for name, value in worked_out.items():
        assert said[name] == pytest.approx(value, abs=within), name


def test_weights_are_as_worked_out():
    agree(
        predicted(WEIGHT_WAYS, lever(arm=3.0)),
        {
            "moment": 8.33,
            "equal_weights": 6,
            "adds": 7,
            "upside_down": 4.5,
            "bar_left_out": 8,
            "bar_on_wrong_side": 7.67,
            "bar_at_load": 10.67,
            "equal_weights_and_bar": 6.29,
            # From the left end: 6 x 2 + 2 x 5.5 = 23, shared by 6 + 3.
            "from_end": 23 / 9,
        },
    )


def test_arms_are_as_worked_out():
    agree(
        predicted(ARM_WAYS, lever(weight=8.0)),
        {
            "moment": 3.125,
            "equal_arms": 4,
            "adds": 2,
            "upside_down": 5.33,
            "bar_left_out": 3,
            "bar_on_wrong_side": 2.875,
            # 3.125 from the left end is 2.875 to the left of the pivot.
            "from_end": -2.875,
        },
    )


def test_shifts_are_as_worked_out():
    agree(
        predicted(SHIFT_WAYS, Change(weight=20, by=1.5, whole=600, not_whole=580)),
        {
            "moment": 0.05,
            "whole_way": 1.5,
            "half_way": 0.75,
            "stays": 0,
            "wrong_total": 0.0517,
            "wrong_way": -0.05,
            "adds": 0.0358,
            "with_the_line": None,
            "against_the_line": None,
        },
        within=5e-5,
    )


def test_what_is_added_is_left_out_of_the_new_weight():
    # 200 added 40 from the balance point of 600: 8000 / 800 = 10, and by the old weight 13.33.
    said = predicted(SHIFT_WAYS, Change(weight=200, by=40, whole=800, not_whole=600))
    assert said["moment"] == 10
    assert said["wrong_total"] == pytest.approx(13.333, abs=5e-4)


def test_a_line_that_moves_takes_nothing_along():
    said = predicted(SHIFT_WAYS, Change(weight=0, by=12, whole=600, not_whole=600))
    assert (said["moment"], said["with_the_line"], said["against_the_line"]) == (0, 12, -12)
    assert said["whole_way"] is said["stays"] is None


def test_readings_are_as_worked_out():
    # By hand: 30 at 20 and a bar of 40 at 50, scales at 0 and 80: (600 + 2000) / 80 = 32.5, and 70 - 32.5 = 37.5.
    bar = Lying(weight=40, at=(50, 0), is_bar=True)
    seen = OnScales(loads=(Lying(weight=30, at=(20, 0)), bar), scales=((0, 0), (80, 0)))
    said = predicted(READING_WAYS, seen)
    assert said["moment"] == pytest.approx((37.5, 32.5))
    assert said["half_each"] == (35, 35)
    assert said["wrong_way_round"] == pytest.approx((32.5, 37.5))
    assert said["nearest_carries"] == (30, 40)
    assert said["bar_left_out"] == pytest.approx((22.5, 7.5))


def test_three_scales_share_by_areas():
    # By hand: scales at (0, 0), (40, -30), (40, 30); 12 at (30, 10): along it lies 3/4 of the way, so 9 are behind;
    # across, 10 of 30: 9 x 1/2 + 12 x 10 / 60 = 6.5 on the third and 2.5 on the second.
    seen = OnScales(loads=(Lying(weight=12, at=(30, 10)),), scales=((0, 0), (40, -30), (40, 30)))
    said = predicted(READING_WAYS, seen)
    assert said["moment"] == pytest.approx((3, 2.5, 6.5))
    assert said["half_each"] == (4, 4, 4)
    assert said["wrong_way_round"] is None
    assert said["nearest_carries"] == (0, 0, 12)


def test_a_weight_half_way_between_two_scales_has_no_nearest():
    seen = OnScales(loads=(Lying(weight=12, at=(20, 0)),), scales=((0, 0), (40, 0)))
    assert predicted(READING_WAYS, seen)["nearest_carries"] is None


def test_doubts_are_as_worked_out():
    # By hand: 3 and 4 from the weights, 12 from a place whose ruler is 30 off.
    said = predicted(DOUBT_WAYS, Doubts(weights=(3, -4), places=(12,), rulers=(30,)))
    agree(
        said,
        {
            "quadrature": 13,
            "adds_up": 19,
            "largest_only": 12,
            "weights_left_out": 12,
            "places_left_out": 5,
            "not_shared": sqrt(25 + 900),
        },
    )


def test_an_idea_with_nothing_to_go_by_says_nothing():
    two = Lever(
        loads=(LOAD, Weighed(weight=1, arm=-2, from_end=8)), bar=None, right_of_pivot=True, pivot_from_end=6, arm=3
    )
    said = predicted(WEIGHT_WAYS, two)
    assert said["equal_weights"] == 5
    for name in (
        "upside_down",
        "bar_left_out",
        "bar_on_wrong_side",
        "bar_at_load",
        "equal_weights_and_bar",
        "from_end",
    ):
        assert said[name] is None
