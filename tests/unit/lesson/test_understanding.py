"""What a learner may type."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lab.lesson import Understood, ask, read_lesson, render, understand
from lab.lesson.understanding import Unclear as NotUnderstood
from lab.outline.words import Words


@pytest.mark.parametrize(
    ("typed", "cm"),
    [
        ("5.6", 5.6), ("5,6", 5.6), ("5.6 cm", 5.6), ("5.6cm", 5.6), ("56 mm", 5.6), ("0.056 m", 5.6),
        ("  5.6 CM ", 5.6), ("at 5.6", 5.6), (".5", 0.5), ("+5", 5.0), ("-5", -5.0), ("−5", -5.0), ("2 in", 5.08),
        ("0", 0.0), ("40", 40.0), ("5.", 5.0), ("5.6 cm from the left end", 5.6), ("5,6 from left", 5.6), ("~5.6", 5.6),
    ],
)  # fmt: skip
def test_a_place_is_read_with_point_or_comma_and_with_or_without_a_unit(boat_hook, typed, cm):
    heard = understand(boat_hook, typed)
    assert isinstance(heard, Understood)
    # Places are kept to a nanometre.
    assert heard.value == pytest.approx(cm / 100, abs=1e-9)


@pytest.fixture
def anchor():
    return _shipped("weight-times-arm", "weigh-the-anchor")


@pytest.fixture
def three_scales():
    return _shipped("two-scales", "three-scales")


def _shipped(name, question_name):
    lesson = read_lesson(Path(__file__).parents[3] / "lessons" / "middle" / f"{name}.toml")
    (index,) = (i for i, question in enumerate(lesson.questions) if question.name == question_name)
    return ask(lesson, index, seed=1)


@pytest.mark.parametrize("typed", ["3620", "3 620", "3 620 g", "3\u202f620 g", "3\u00a0620", "3 620,0 g", "3.62 kg"])
def test_thousands_may_be_parted_as_a_screen_shows_them(anchor, typed):
    heard = understand(anchor, typed)
    assert isinstance(heard, Understood)
    assert heard.value == pytest.approx(3.62, abs=1e-9)


@pytest.mark.parametrize("typed", ["36 20", "3 6200", "3.6 200", "3620 250", "3 62"])
def test_figures_that_are_not_parted_in_threes_are_asked_again(anchor, typed):
    assert isinstance(understand(anchor, typed), NotUnderstood)


@pytest.mark.parametrize("typed", ["3,620", "3.620", "3,620 g", "about 3.620 g."])
def test_figures_that_may_be_thousands_or_not_are_asked_again(anchor, typed):
    heard = understand(anchor, typed)
    assert isinstance(heard, NotUnderstood)
    said = render(heard.message, Words(), anchor.units)
    assert "3\u202f620 g" in said
    assert "3.62 g" in said


@pytest.mark.parametrize(("typed", "kg"), [("3,620 kg", 3.62), ("3,62 kg", 3.62), ("0,362", 0.000362)])
def test_figures_that_can_only_be_meant_one_way_are_not_asked_again(anchor, typed, kg):
    heard = understand(anchor, typed)
    assert isinstance(heard, Understood)
    assert heard.value == pytest.approx(kg, abs=1e-9)


def test_thousands_among_several_numbers_are_asked_again(three_scales):
    heard = understand(three_scales, "1,020 390 390")
    assert isinstance(heard, NotUnderstood)
    assert "1\u202f020 g" in render(heard.message, Words(), three_scales.units)
    assert isinstance(understand(three_scales, "1020 390 390"), Understood)


def test_a_unit_changes_nothing_to_the_last_bit(boat_hook):
    values = {understand(boat_hook, typed).value for typed in ("5.6", "56 mm", "0.056 m", "5,6 cm")}
    assert len(values) == 1


@pytest.mark.parametrize(
    "typed", ["five", "", "-", "1e999", "1e3", "😀", "5 6", "5.6.7", "nan", "inf", "٣", "5 kg", "9" * 400, "left"]
)
def test_what_is_no_place_is_asked_again_with_an_example(boat_hook, typed):
    heard = understand(boat_hook, typed)
    assert isinstance(heard, NotUnderstood)
    assert "40 cm" in render(heard.message, Words(), boat_hook.units)


def test_the_example_is_never_the_answer(boat_hook):
    said = render(understand(boat_hook, "?!").message, Words(), boat_hook.units)
    assert "5.6" not in said


@pytest.mark.parametrize("typed", ["81", "-41", "500", "5.6 m"])
def test_a_place_more_than_a_length_past_an_end_is_asked_again(boat_hook, typed):
    heard = understand(boat_hook, typed)
    assert isinstance(heard, NotUnderstood)
    assert "0 cm" in render(heard.message, Words(), boat_hook.units)


@pytest.mark.parametrize(
    ("typed", "side"),
    [
        ("l", "left"), ("left", "left"), ("LEFT", "left"), ("lef", "left"), ("The left end goes down.", "left"),
        ("r", "right"), ("ri", "right"), ("right side", "right"),
        ("lev", "level"), ("level", "level"), ("it stays level", "level"), ("stays", "level"), ("neither", "level"),
        ("stay", "level"), ("left?", "left"), ("same", "level"), ("Right!", "right"),
    ],
)  # fmt: skip
def test_a_side_is_read_whole_or_shortened(two_leads, typed, side):
    heard = understand(two_leads, typed)
    assert isinstance(heard, Understood)
    assert heard.value == side


@pytest.mark.parametrize("typed", ["", "-", "le", "not left", "left or right", "5", "😀", "x", "l" * 1000])
def test_what_is_no_side_or_two_is_asked_again(two_leads, typed):
    heard = understand(two_leads, typed)
    assert isinstance(heard, NotUnderstood)
    assert "left" in render(heard.message, Words(), two_leads.units)


@given(st.text(max_size=80))
def test_nothing_typed_makes_it_raise(typed):
    # The fixtures are made once a test, not once an example, so the question is made here.
    for asked in _both():
        assert isinstance(understand(asked, typed), Understood | NotUnderstood)


def _both():
    lesson = read_lesson(Path(__file__).parents[3] / "lessons" / "early" / "lopsided-tool.toml")
    return ask(lesson, 0, seed=1), ask(lesson, 1, seed=1)
