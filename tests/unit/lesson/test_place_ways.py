"""The ways of thinking about a place, held to numbers worked out apart from this code and to sums done by hand."""

import pytest

from lab.lesson.situation import Load, Situation
from lab.lesson.ways.part import PART_WAYS
from lab.lesson.ways.place import PLACE_WAYS

# The item that separates the ways best among three thousand: w = 10, 40 at x = 25, 95, bar W = 40, L = 100.
BEST = Situation(
    loads=(Load(name="small", weight=10, place=25), Load(name="large", weight=40, place=95)),
    bar=Load(name="bar", weight=40, place=50, half=50),
    left=0.0,
    right=100.0,
)
WORKED_OUT = {
    "moment": 67.22,
    "bar_left_out": 81.00,
    "plain_mean": 60.00,
    "equal_weight": 87.50,
    "middle": 50.00,
    "swapped": 39.00,
    "adds": 3.40,
    "reference_slip": 17.22,
    "all_arms_positive": 72.78,
    "bar_on_top_only": 121.00,
    "bar_below_only": 45.00,
    "at_heaviest": 95.00,
    "half_way_to_heaviest": 72.50,
    "outer_middle": 60.00,
}
WHOLE = {way.name: way.predict for way in PLACE_WAYS}
BY_PART = {way.name: way.predict for way in PART_WAYS}

POLE = Load(name="pole", weight=120, place=20, half=20)
HOOK = Load(name="hook", weight=480, place=2)
BOAT_HOOK = Situation(loads=(HOOK, POLE), bar=None, left=0.0, right=40.0)


def tool(*loads, reference=0.0):
    return Situation(
        loads=loads,
        bar=None,
        left=min(load.place - load.half for load in loads),
        right=max(load.place + load.half for load in loads),
        reference=reference,
    )


@pytest.mark.parametrize("name", WORKED_OUT)
def test_each_way_gives_its_number(name):
    # Half of the last figure.
    assert WHOLE[name](BEST) == pytest.approx(WORKED_OUT[name], abs=0.005)


def test_no_way_is_without_a_number():
    assert set(WHOLE) == set(WORKED_OUT)


# By hand: the hook's moment is 960, the pole's 2400, the weight 600; 0, 20 and 40 are the pole's ends and middle.
@pytest.mark.parametrize(
    ("name", "part", "place"),
    [
        ("far_end", POLE, (960 + 120 * 40) / 600),
        ("near_end", POLE, 960 / 600),
        ("not_all_weight", POLE, 3360 / 480),
        ("not_all_weight", HOOK, 3360 / 120),
    ],
)
def test_a_way_about_one_part_gives_the_sum_done_by_hand(name, part, place):
    assert BY_PART[name](BOAT_HOOK, part) == pytest.approx(place, rel=1e-12)


def test_leaving_out_one_part_of_three_sums_the_other_two():
    ring = Load(name="ring", weight=240, place=38)
    three = tool(HOOK, POLE, ring)
    assert BY_PART["part_left_out"](three, ring) == pytest.approx(5.6, rel=1e-12)
    assert BY_PART["part_left_out"](BOAT_HOOK, POLE) is None


def test_a_part_at_the_line_is_left_out_or_counts_but_never_half():
    ring = Load(name="ring", weight=240, place=38)
    at_hook = tool(HOOK, POLE, ring, reference=2.0)
    # Its moment is nothing, so leaving its weight out as well is leaving out all of it: (2400 + 9120) / 360.
    assert BY_PART["part_left_out"](at_hook, HOOK) == pytest.approx(32.0, rel=1e-12)
    assert BY_PART["not_all_weight"](at_hook, HOOK) is None
    assert BY_PART["not_all_weight"](at_hook, POLE) is not None


def test_an_arm_not_moved_counts_from_the_old_line():
    moved = tool(HOOK, POLE, reference=10.0)
    # Arms 2 - 10 and, not moved, 20: (480 × -8 + 120 × 20) / 600 = -2.4 from the line at 10.
    assert BY_PART["arm_not_moved"](moved, POLE) == pytest.approx(7.6, rel=1e-12)
    assert BY_PART["arm_not_moved"](BOAT_HOOK, POLE) is None


def test_a_dropped_sign_counts_an_arm_to_the_right():
    moved = tool(HOOK, POLE, reference=10.0)
    # (480 × 8 + 120 × 10) / 600 = 8.4 from the line at 10.
    assert BY_PART["sign_dropped"](moved, HOOK) == pytest.approx(18.4, rel=1e-12)
    assert BY_PART["sign_dropped"](moved, POLE) is None


def test_a_point_has_no_ends():
    assert BY_PART["far_end"](BOAT_HOOK, HOOK) is None
    assert BY_PART["near_end"](BOAT_HOOK, HOOK) is None


def test_a_bar_that_starts_at_the_line_leaves_its_near_end_to_the_bar_below_only():
    assert BY_PART["near_end"](BEST, BEST.bar) is None
    assert BY_PART["far_end"](BEST, BEST.bar) == pytest.approx((250 + 3800 + 4000) / 90, rel=1e-12)


def test_two_as_heavy_have_no_heaviest():
    twins = tool(POLE, Load(name="a", weight=200, place=5), Load(name="b", weight=200, place=30))
    assert WHOLE["at_heaviest"](twins) is None
    assert WHOLE["half_way_to_heaviest"](twins) is None


def test_one_weight_alone_leaves_nothing_to_choose_from():
    alone = Situation(
        loads=(Load(name="lead", weight=100, place=90),),
        bar=Load(name="bar", weight=400, place=50, half=50),
        left=0.0,
        right=100.0,
    )
    for name in ("plain_mean", "outer_middle", "at_heaviest", "swapped"):
        assert WHOLE[name](alone) is None
    assert WHOLE["bar_left_out"](alone) == 90


def test_half_the_weight_on_each_side_of_a_gap_is_no_one_place():
    apart = tool(Load(name="a", weight=100, place=5), Load(name="b", weight=100, place=30))
    assert WHOLE["equal_weight"](apart) is None


def test_half_the_weight_may_lie_inside_a_long_part():
    # 300 of 600 lie left of 2.5: the box of 480 runs from 0 to 4, and 4 % of the pole's 120 lie there too.
    box = Load(name="hook", weight=480, place=2, half=2)
    assert WHOLE["equal_weight"](tool(box, POLE)) == pytest.approx(300 / (480 / 4 + 120 / 40), rel=1e-12)


def test_with_weight_taken_away_no_point_has_equal_weight_on_both_sides():
    hole = Load(name="hole", weight=-20, place=30, half=5)
    assert WHOLE["equal_weight"](tool(POLE, hole)) is None


def test_half_the_weight_may_be_reached_on_one_spot():
    # By hand: 100 g at 10, 300 g at 30, 100 g at 90; the 250th of 500 g sits at 30.
    spots = [Load(name=f"{place}", weight=weight, place=place) for weight, place in ((100, 10), (300, 30), (100, 90))]
    assert WHOLE["equal_weight"](tool(*spots)) == 30


def test_what_weighs_nothing_in_all_has_no_place():
    none = tool(Load(name="lead", weight=30, place=10), Load(name="hole", weight=-30, place=20))
    for name in ("moment", "reference_slip", "all_arms_positive", "adds"):
        assert WHOLE[name](none) is None


def test_the_longest_part_is_the_beam_unless_two_are_as_long():
    assert tool(POLE, HOOK).beam is POLE
    twin = Load(name="twin", weight=90, place=20, half=20)
    assert tool(POLE, twin).beam is None
    assert tool(POLE, twin).riders == (POLE, twin)
