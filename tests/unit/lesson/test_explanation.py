"""What a learner is told about an answer."""

import re

import pytest

from lab.app.paths import find_paths
from lab.lesson import ask, explain, read_lesson, render
from lab.lesson.matching import truth_of
from lab.lesson.task import Task
from lab.mechanics import moment_sum
from lab.outline.words import Words

WORDS = Words()


def said(asked, message):
    return render(message, WORDS, asked.units)


def every_sentence(asked, told):
    messages = [told.headline, told.going, told.happened, told.said, told.quotient, told.why]
    messages += [told.idea] if told.idea else []
    messages += [told.contrast.label, told.contrast.happened] if told.contrast else []
    return " ".join(said(asked, message) for message in messages)


def test_the_boat_hook_held_too_far_right_is_explained_as_in_the_picture(boat_hook):
    told = explain(boat_hook, 0.096)
    assert not told.right
    assert told.goes == "left"
    assert said(boat_hook, told.headline) == "Too far right by 4.0 cm"
    assert said(boat_hook, told.happened) == "The hook end dropped. The moment sum puts it at 5.6 cm."
    assert said(boat_hook, told.idea) == (
        "9.6 is where it would balance if the pole's weight sat at its far end; it sits at its middle."
    )
    assert told.deciding == "pole"
    assert told.ways == ("far_end",)


def test_the_contrast_takes_the_poles_weight_away_and_computes_what_follows(boat_hook):
    contrast = explain(boat_hook, 0.096).contrast
    assert said(boat_hook, contrast.label) == "What if the pole had no weight?"
    # A nanogram of pole left on 480 g of hook moves the balance point by less than a nanometre.
    assert contrast.balance_point_m == pytest.approx(0.02, abs=1e-9)
    assert said(boat_hook, contrast.happened) == "Then it would balance at 2.0 cm."
    assert contrast.goes == "left"
    assert [part.name for part in contrast.build.all_parts] == ["hook", "pole"]


def test_a_right_answer_is_told_why(boat_hook):
    told = explain(boat_hook, 0.056)
    assert told.right
    assert told.goes == "level"
    assert said(boat_hook, told.headline) == "It stays level at 5.6 cm"
    # 480 × 3.6 and 120 × 14.4.
    assert "1\u202f728 on the left and 1\u202f728 on the right" in said(boat_hook, told.idea)
    assert told.ways == ()


@pytest.mark.parametrize(("place_m", "right"), [(0.0530, True), (0.0590, True), (0.0591, False), (0.0529, False)])
def test_what_counts_as_right_is_what_stays_on_the_fingers_pad(boat_hook, place_m, right):
    told = explain(boat_hook, place_m)
    assert told.right is right
    assert (told.goes == "level") is right


def test_an_answer_that_fits_several_ways_names_none_and_keeps_all(boat_hook):
    told = explain(boat_hook, 0.11)
    assert told.idea is None
    assert set(told.ways) == {"plain_mean", "outer_middle", "half_way_to_heaviest"}
    assert told.why.template


def test_a_place_past_the_end_falls_off(boat_hook):
    told = explain(boat_hook, 0.5)
    assert "past the end" in said(boat_hook, told.going)
    assert not told.right


def test_a_side_is_explained_by_the_moments_on_both_sides(two_leads):
    told = explain(two_leads, "left")
    assert not told.right
    assert told.goes == "right"
    # 300 × 20 against 100 × 60 + 200 × 10.
    assert said(two_leads, told.quotient) == "left 6\u202f000, right 8\u202f000"
    assert told.deciding == "far"
    assert said(two_leads, told.headline) == "This time the right end went down"
    assert told.sum.reference_m[0] == pytest.approx(0.4)


def test_the_contrast_of_a_side_comes_out_another_way(two_leads):
    told = explain(two_leads, "right")
    assert told.right
    assert told.contrast.goes != "right"


def test_a_way_that_leaves_the_bar_out_is_contrasted_with_a_heavier_bar(write):
    lesson = read_lesson(write(BAR_AND_LEADS))
    asked = ask(lesson, 0, seed=1)
    # The leads alone: (100 × 25 + 400 × 95) / 500 = 81 cm.
    told = explain(asked, 0.81)
    assert told.ways == ("bar_left_out",)
    assert told.deciding == "bar"
    assert said(asked, told.contrast.label) == "What if the bar weighed twice as much?"
    # (40 500 + 800 × 50) / 1300.
    assert told.contrast.balance_point_m == pytest.approx(0.80500 / 1.3, rel=1e-9)


def test_the_sum_starts_at_the_scenes_own_reference_line(write):
    lesson = read_lesson(write(BAR_AND_LEADS.replace("[question.scene]\n", "[question.scene]\nreference = 50\n")))
    asked = ask(lesson, 0, seed=1)
    told = explain(asked, 0.81)
    # Arms -25, 45 and 0: -2500 + 18 000 = 15 500, by 900 is 17.2 from the line.
    assert said(asked, told.quotient) == "15\u202f500 / 900 = 17.2 cm from the line: at 67.2 cm"


def test_no_sentence_ever_calls_an_answer_wrong(boat_hook, two_leads):
    for asked, values in (
        (boat_hook, (0.0, 0.02, 0.056, 0.096, 0.11, 0.2, 0.7)),
        (two_leads, ("left", "right", "level")),
    ):
        for value in values:
            text = every_sentence(asked, explain(asked, value))
            assert not re.search(r"\b(wrong|incorrect|mistake|false|error)\b", text, re.IGNORECASE)


def test_the_sum_is_the_mechanics_own(boat_hook):
    assert explain(boat_hook, 0.2).sum == moment_sum(boat_hook.build.all_parts)


BAR_AND_LEADS = """
[[question]]
name = "leads"
ask = "place"
title = "Where will it balance?"
say = "A bar of {bar.weight}."
tolerance = 0.5
[question.scene]
[question.scene.bar]
length = 100
weight = 400
[[question.scene.part]]
name = "small lead"
weight = 100
at = 25
[[question.scene.part]]
name = "large lead"
weight = 400
at = 95
"""


def test_a_reversed_side_does_not_keep_the_one_other_idea_from_being_named():
    lesson = read_lesson(next(find_paths().shipped_lessons.rglob("lopsided-tool.toml")))
    (index,) = (i for i, question in enumerate(lesson.questions) if question.name == "camera-pole")
    asked = ask(lesson, index, seed=4711)
    told = explain(asked, "right")
    # Any wrong turn is the right one reversed, so "swapped" is kept in the record and says nothing here.
    assert told.ways == ("longer_side_down", "swapped")
    assert "longer" in said(asked, told.idea)


def test_leads_that_balance_without_the_bar_stay_level_once_it_has_no_weight():
    lesson = read_lesson(next(find_paths().shipped_lessons.rglob("bar-weighs-too.toml")))
    (index,) = (i for i, question in enumerate(lesson.questions) if question.name == "even-without-bar")
    asked = ask(lesson, index, seed=4711)
    contrast = explain(asked, "level").contrast
    # 40 × 50 and 100 × 10 on the left, 75 × 40 on the right.
    assert said(asked, contrast.label) == "What if the bar had no weight?"
    assert said(asked, contrast.happened) == "Then it would stay level."


ONE_FLOAT = """
[[question]]
name = "one-float"
ask = "place"
title = "Where will it balance?"
say = "A bar and a float."
tolerance = 0.5
[question.scene.bar]
length = 60
weight = 400
[[question.scene.part]]
name = "float"
weight = 200
at = 54
hold = "hung"
"""


def test_the_heaviest_part_beside_a_heavier_bar_is_called_by_its_name(write):
    # By hand: half-way from the middle at 30 to the float at 54 is 42; it balances at (400·30 + 200·54) / 600 = 38.
    asked = ask(read_lesson(write(ONE_FLOAT)), 0, seed=1)
    told = explain(asked, 0.42)
    assert told.ways == ("half_way_to_heaviest",)
    assert said(asked, told.idea).startswith("42.0 is half-way from the middle to the float.")


def test_the_middle_is_never_said_to_be_amiss_because_of_weights_that_are_alike(write):
    # 400 g on each side of the middle: what differs is how far out it sits.
    other = '[[question.scene.part]]\nname = "other"\nweight = 200\nat = 20\nhold = "hung"\n'
    alike = ONE_FLOAT.replace("weight = 400", "weight = 1") + other
    asked = ask(read_lesson(write(alike)), 0, seed=1)
    told = explain(asked, 0.30)
    assert "middle" in told.ways
    assert "weighs more" not in every_sentence(asked, told)


def test_on_a_wide_finger_what_is_not_quite_even_is_held_by_the_finger(write):
    # By hand: it balances at 31.2 (300 g at 30 and 20 g at 49.2); the finger reaches from 30 to 32.
    held = """
[[question]]
name = "held"
ask = "side"
title = "Which end drops?"
say = "A bar."
[question.scene.bar]
length = 60
weight = 300
[[question.scene.part]]
name = "lead"
weight = 20
at = 49.2
hold = "hung"
[question.scene.pivot]
at = 31
pad = 1
"""
    asked = ask(read_lesson(write(held)), 0, seed=1)
    assert asked.truth == "level"
    assert said(asked, explain(asked, "left").why) == "Its balance point lies over the finger, so the finger holds it."


def test_a_side_question_about_no_pivot_is_a_programming_mistake(boat_hook):
    with pytest.raises(ValueError, match="pivot"):
        truth_of(Task(kind="side", build=boat_hook.build))
