"""The probe taken in the whole lab, by pointer and by keys."""

from typing import Any

from lab.lesson.probe.items import item_named, situation_of_item
from lab.lesson.ways.side import weight_only


def answer_by_weight(pilot: Any) -> None:
    """Answer what is asked as somebody does who looks at the weights alone."""
    item = pilot.lab._room._probe.item
    pilot.press(f"side.{weight_only(situation_of_item(item))}")
    pilot.press("next")


def test_it_is_reached_from_the_lessons_and_tells_nothing_before_the_end(pilot: Any):
    pilot.press("to-lessons")
    pilot.press("offer")
    asked = 0
    while pilot.has("next"):
        asked += 1
        assert pilot.says(f"question {asked} of 24 at most")
        assert not pilot.says("Your answers fit")
        answer_by_weight(pilot)
    assert pilot.says("Your answers fit:")
    assert pilot.says("the side with more weight goes down.")
    assert pilot.says("Next nearest")
    kept = pilot.attempts()
    assert len(kept) == asked
    assert {row.kind for row in kept} == {"probe"}
    assert kept[-1].ways[0].startswith("weight_only:")
    assert [row.round for row in kept] == list(range(asked))
    assert all(item_named(row.question) for row in kept)
    pilot.press("to-lessons")
    assert pilot.has("probe")


def test_more_questions_may_be_asked_for(pilot: Any):
    pilot.lab.open_probe()
    while pilot.has("next"):
        answer_by_weight(pilot)
    before = len(pilot.attempts())
    pilot.press("more")
    answer_by_weight(pilot)
    assert len(pilot.attempts()) == before + 1
    assert not pilot.says("Your answers fit")


def test_nothing_is_given_before_an_end_is_chosen_and_a_choice_may_be_changed(pilot: Any):
    pilot.lab.open_probe()
    pilot.press("next")
    assert pilot.attempts() == ()
    pilot.press("side.left")
    pilot.press("side.level")
    pilot.press("next")
    (kept,) = pilot.attempts()
    assert kept.understood == "level"
    assert kept.seconds > 0


def test_it_is_taken_by_keys_alone(pilot: Any):
    pilot.lab.open_probe()
    pilot.tab_to("side.left")
    pilot.key("enter")
    pilot.tab_to("next")
    pilot.key("enter")
    assert len(pilot.attempts()) == 1
    assert pilot.says("question 2 of 24 at most")
    pilot.key("escape")
    assert pilot.has("probe")


def test_an_answer_that_cannot_be_saved_says_so_and_the_next_bar_comes(pilot: Any):
    home = pilot.paths.home
    home.rmdir()
    home.write_text("a file where the folder should be")
    pilot.lab.open_probe()
    answer_by_weight(pilot)
    assert pilot.says("not saved yet")
    assert pilot.says("question 2 of 24 at most")


def test_its_numbers_stay_those_of_the_items_whatever_units_are_chosen(pilot: Any):
    # Adding weight and distance gives another answer in other units; what is measured is what is seen.
    pilot.lab._change("units", "lb-in")
    pilot.lab.open_probe()
    assert pilot.says(" g hangs ")
