"""Which ways of thinking an answer fits."""

from dataclasses import replace

from lab.lesson.matching import Blur, blurs, fits, predictions


def test_the_far_end_of_the_pole_alone_fits_nine_point_six(boat_hook):
    found = fits(boat_hook, 0.096)
    assert [(fit.way, fit.part) for fit in found] == [("far_end", "pole")]


def test_an_answer_within_the_tolerance_of_a_way_fits_it(boat_hook):
    assert [fit.way for fit in fits(boat_hook, 0.093)] == ["far_end"]
    assert fits(boat_hook, 0.0925) == ()


def test_a_right_answer_fits_no_way(boat_hook, two_leads):
    assert fits(boat_hook, 0.0585) == ()
    assert fits(two_leads, "right") == ()


def test_several_ways_may_fit_one_answer(boat_hook):
    # The mean of two places is also the middle of the outer two, and here half-way to the heaviest: 11 cm.
    assert {fit.way for fit in fits(boat_hook, 0.11)} == {"plain_mean", "outer_middle", "half_way_to_heaviest"}


def test_a_way_that_is_also_right_is_never_named(boat_hook):
    close = [fit for fit in predictions(boat_hook.task) if abs(fit.answer - 0.056) <= 0.003]
    assert all(fit not in fits(boat_hook, 0.0595) for fit in close)


def test_a_side_fits_every_way_that_says_it(two_leads):
    # Without the bar the leads are even: 300 × 20 against 100 × 60; weight says left, distance right, one piece each.
    assert {fit.way for fit in fits(two_leads, "level")} == {"no_bar", "compensates", "counts_pieces"}
    assert "weight_only" in {fit.way for fit in fits(two_leads, "left")}


def test_a_claimed_way_near_the_truth_is_a_blur(boat_hook):
    # The near end of the hook would be 4.0 cm: 1.6 from the truth, but less than 3 % of 80 cm away with 1 cm allowed.
    found = blurs(replace(boat_hook.task, tolerance=0.01), ("near_end:hook",))
    assert Blur(claim="near_end:hook", other="truth") in found


def test_a_claimed_way_with_the_answer_of_another_is_a_blur(boat_hook):
    found = blurs(boat_hook.task, ("plain_mean",))
    assert {blur.other for blur in found} == {"outer_middle", "half_way_to_heaviest"}


def test_a_claimed_way_without_an_answer_is_a_blur(boat_hook):
    assert blurs(boat_hook.task, ("bar_left_out",)) == (Blur(claim="bar_left_out", other=""),)


def test_claimed_sides_must_differ_from_the_truth_and_from_each_other(two_leads):
    assert blurs(two_leads.task, ("no_bar", "weight_only")) == ()
    assert Blur(claim="distance_only", other="truth") in blurs(two_leads.task, ("distance_only",))
    assert Blur(claim="no_bar", other="compensates") in blurs(two_leads.task, ("no_bar", "compensates"))
