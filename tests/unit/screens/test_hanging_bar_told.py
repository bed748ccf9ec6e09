"""Guess, let go, be told: and what is never given away before."""

from typing import Any

import pytest

from lab.outline.node import spoken_lines, walk


@pytest.fixture
def at_bar(pilot: Any) -> Any:
    pilot.press("to-build")
    return pilot


def test_the_bar_drops_and_it_is_said_which_end_beside_the_guess(at_bar: Any):
    at_bar.press("guess.level")
    at_bar.press("let-go")
    assert at_bar.says("Let go. Watch it move.")
    at_bar.wait(8.0)
    assert at_bar.node("happened").name == "The right end dropped."
    assert at_bar.node("compared").name == "You said level."
    # 150 x 10 + 100 x 32 + 50 x 50 against 200 x 25, about 40 cm.
    at_bar.press("view.all")
    assert at_bar.says("Right of the pivot 7\u202f200 g·cm, left of it 5\u202f000 g·cm: the right is more.")
    assert at_bar.says("The balance point lies 4.4 cm right of the pivot.")


def test_a_guess_that_fits_is_said_to_fit(at_bar: Any):
    at_bar.press("guess.right")
    at_bar.press("let-go")
    at_bar.wait(8.0)
    assert at_bar.node("compared").name == "You said right, and right it was."


def test_no_guess_is_needed(at_bar: Any):
    at_bar.press("let-go")
    at_bar.press("show-end")
    assert at_bar.node("happened").name == "The right end dropped."
    assert not at_bar.has("compared")


def test_a_pivot_at_the_balance_point_stays_level(at_bar: Any):
    at_bar.press("pivot")
    at_bar.press("picked-place")
    for figure in ("4", "4", ".", "4"):
        at_bar.press(f"keypad.{figure}")
    at_bar.press("keypad.done")
    at_bar.press("guess.level")
    at_bar.press("let-go")
    assert at_bar.node("happened").name == "It stays level."
    assert at_bar.node("compared").name == "You said level, and level it is."


@pytest.mark.parametrize("view", ["plain", "numbers"])
def test_before_it_is_let_go_nothing_gives_the_outcome_away(at_bar: Any, view: str):
    at_bar.press(f"view.{view}")
    said = " ".join([*spoken_lines(at_bar.outline), *at_bar.draw().text_lines()])
    for telling in ("44.4", "balance", "22\u202f200", "7\u202f200", "clockwise", "dropped"):
        assert telling not in said


def test_plain_shows_no_numbers_of_the_sum_even_afterwards(at_bar: Any):
    at_bar.press("let-go")
    at_bar.press("show-end")
    assert not at_bar.has("moments")
    assert at_bar.says("What hangs right of the pivot has the bigger moment")


def test_numbers_shows_table_and_areas_after_letting_go(at_bar: Any):
    at_bar.press("view.numbers")
    assert not at_bar.has("moments")
    at_bar.press("let-go")
    at_bar.press("show-end")
    assert at_bar.has("moments")
    assert at_bar.node("areas").value == "anticlockwise 5\u202f000 g·cm, clockwise 7\u202f200 g·cm"
    at_bar.press("hold")
    assert not at_bar.has("moments")


def test_no_word_judges_a_guess(at_bar: Any):
    at_bar.press("guess.left")
    at_bar.press("let-go")
    at_bar.press("show-end")
    said = " ".join(spoken_lines(at_bar.outline)).lower()
    assert not any(word in said for word in ("wrong", "mistake", "incorrect", "sorry"))


def test_changing_the_bar_after_letting_go_holds_it_again(at_bar: Any):
    at_bar.press("let-go")
    at_bar.press("show-end")
    at_bar.tab_to("weight-1")
    at_bar.key("right")
    assert at_bar.has("let-go")


def test_weights_are_read_out_with_weight_place_and_how_they_hang(at_bar: Any):
    node = at_bar.node("weight-1")
    assert (node.name, node.value) == ("brass 200", "200 g at 15.0 cm, hung")
    assert at_bar.node("picture").value == "bar, 100.0 cm, 150 g, held level; pivot at 40.0 cm; 3 weights on it."


def test_the_picked_row_of_the_table_is_marked(at_bar: Any):
    at_bar.press("view.all")
    at_bar.press("weight-2")
    assert [node.key for node in walk(at_bar.outline) if node.role == "row" and "selected" in node.state] == [
        "row-weight-2"
    ]


def test_units_change_all_numbers_and_nothing_else(at_bar: Any):
    at_bar.press("view.all")
    seen = []
    for _ in range(4):
        at_bar.press("units")
        seen.append(at_bar.node("balances").name)
    # 44.4 cm are 0.444 m and, by the inch of 2.54 cm, 17.48 in.
    assert seen == [
        "balances at 0.444 m",
        "balances at 0.444 m",
        "balances at 17.48 in",
        "balances at 44.4 cm",
    ]


def test_the_caution_about_toes_stands_in_the_help(at_bar: Any):
    at_bar.press("help")
    assert at_bar.says("keep toes and fingers out from under them")


def test_everything_is_done_by_keys_alone(at_bar: Any):
    at_bar.tab_to("guess.left")
    at_bar.key("left")
    assert "selected" in at_bar.node("guess.right").state
    at_bar.tab_to("let-go")
    at_bar.key("enter")
    assert "focused" in at_bar.node("hold").state
    at_bar.wait(8.0)
    assert at_bar.node("compared").name == "You said right, and right it was."
    at_bar.key("enter")
    assert "focused" in at_bar.node("let-go").state
