"""Varied numbers: tidy, solvable, fixed by the seed."""

from itertools import pairwise

import pytest

from lab.lesson import ask, check_lesson, read_lesson
from lab.lesson.lesson import Range

VARIED = """
[[question]]
name = "one-lead"
ask = "place"
title = "Where will it balance?"
say = "A bar of {bar.weight}, a lead of {lead.weight} at {lead.at}."
tolerance = 0.5
ways = ["bar_left_out"]
vary = { "lead.weight" = { from = 100, to = 300, step = 20 }, "lead.at" = { from = 70, to = 95, step = 2.5 } }
[question.scene]
[question.scene.bar]
length = 100
weight = 400
[[question.scene.part]]
name = "lead"
weight = 200
at = 90
"""
TWO_LOADS = """
[[question]]
name = "two"
ask = "side"
title = "Which end drops?"
say = "A bar."
vary = { "a.weight, b.weight" = { from = 100, to = 300, step = 100 }, "a.at" = { from = 10, to = 50, step = 10 } }
[question.scene]
[question.scene.bar]
length = 100
weight = 200
[[question.scene.part]]
name = "a"
weight = 100
at = 20
[[question.scene.part]]
name = "b"
weight = 100
at = 90
[question.scene.pivot]
at = 50
"""


def numbers(asked):
    part = asked.build.parts[0]
    return round(part.mass_kg * 1000, 6), round(part.at_m[0] * 100, 6)


def test_a_range_holds_tidy_numbers():
    drawn = Range(keys=("x",), low=0.1, high=0.7, step=0.1)
    assert [drawn.value(index) for index in range(drawn.count)] == [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7]


def test_the_same_seed_gives_the_same_numbers_and_others_give_others(write):
    lesson = read_lesson(write(VARIED))
    assert ask(lesson, 0, seed=5) == ask(lesson, 0, seed=5)
    assert len({numbers(ask(lesson, 0, seed=seed)) for seed in range(40)}) > 10


def test_the_numbers_of_a_seed_never_change_from_one_version_to_the_next(write):
    # A record names a seed; its question must come back as it was asked.
    lesson = read_lesson(write(VARIED))
    assert [numbers(ask(lesson, 0, seed=seed)) for seed in (0, 1, 2, 4711)] == PINNED


def test_drawn_numbers_lie_on_the_steps(write):
    lesson = read_lesson(write(VARIED))
    for seed in range(40):
        weight, at = numbers(ask(lesson, 0, seed=seed))
        assert weight in range(100, 301, 20)
        assert at in [70 + 2.5 * index for index in range(11)]


def test_again_always_brings_other_numbers(write):
    lesson = read_lesson(write(VARIED))
    for seed in range(20):
        rounds = [numbers(ask(lesson, 0, seed=seed, round=round_)) for round_ in range(6)]
        assert all(first != second for first, second in pairwise(rounds))


def test_claimed_ways_stay_away_from_the_truth(write):
    lesson = read_lesson(write(VARIED))
    for seed in range(60):
        asked = ask(lesson, 0, seed=seed)
        # The bar left out puts it at the lead: 3 % of 100 cm away from the truth, and twice the tolerance.
        assert asked.build.parts[0].at_m[0] - asked.truth > 0.03


def test_values_named_together_are_drawn_together(write):
    lesson = read_lesson(write(TWO_LOADS))
    for seed in range(30):
        first, second = ask(lesson, 0, seed=seed).build.parts
        assert first.mass_kg == second.mass_kg


def test_a_side_is_never_level_by_accident(write):
    # With the weight at 10 it would be level: 40 to the left against 40 to the right.
    lesson = read_lesson(write(TWO_LOADS))
    assert {ask(lesson, 0, seed=seed).truth for seed in range(60)} == {"right"}


def test_a_side_that_is_level_as_written_stays_level(write):
    lesson = read_lesson(
        write(TWO_LOADS.replace("at = 20", "at = 10").replace(', "a.at" = { from = 10, to = 50, step = 10 }', ""))
    )
    assert {ask(lesson, 0, seed=seed).truth for seed in range(20)} == {"level"}


def test_numbers_as_written_come_first_where_the_writer_says_so(write):
    lesson = read_lesson(write(VARIED.replace("vary =", "as_written_first = true\nvary =")))
    for seed in range(20):
        assert numbers(ask(lesson, 0, seed=seed)) == (200, 90)
        assert numbers(ask(lesson, 0, seed=seed, round=1)) != (200, 90)


def test_ranges_that_no_seed_can_use_are_a_fault(write):
    faults, _ = check_lesson(write(VARIED.replace("from = 70, to = 95, step = 2.5", "from = 49, to = 51, step = 1")))
    assert [fault.key for fault in faults] == ["question[1].vary"]
    assert "claim fewer" in faults[0].cure


def test_ranges_that_leave_the_bar_are_never_drawn_there(write):
    lesson = read_lesson(write(VARIED.replace("to = 95", "to = 200")))
    assert max(numbers(ask(lesson, 0, seed=seed))[1] for seed in range(60)) <= 100


def test_an_index_that_is_no_question_raises(write):
    with pytest.raises(IndexError):
        ask(read_lesson(write(VARIED)), 3, seed=1)


PINNED = [(100.0, 80.0), (240.0, 92.5), (140.0, 80.0), (140.0, 75.0)]


def test_a_length_and_a_place_in_three_numbers_may_vary_too(write):
    asked = [
        ask(read_lesson(write(POLE_AND_HOOK)), 0, seed=seed, round=round_) for seed in range(10) for round_ in (0, 1)
    ]
    poles = [each.build.parts[0] for each in asked]
    hooks = [each.build.parts[1].at_m for each in asked]
    assert {round(100 * pole.shape.length_m) for pole in poles} == {36, 38, 40}
    assert {round(100 * along) for along, _, _ in hooks} == {2, 3, 4}
    # Across and up stay as they were written.
    assert {(across, up) for _, across, up in hooks} == {(0.01, 0.02)}


POLE_AND_HOOK = """
[[question]]
name = "boat-hook"
ask = "place"
title = "Where will it balance?"
say = "A boat hook."
tolerance = 0.3
vary = { "pole.length" = { from = 36, to = 40, step = 2 }, "hook.at" = { from = 2, to = 4, step = 1 } }
[question.scene]
[[question.scene.part]]
name = "pole"
weight = 120
at = 20
shape = { kind = "rod", length = 40 }
[[question.scene.part]]
name = "hook"
weight = 480
at = [2, 1, 2]
"""
