"""Sentences as values, worded when they are shown."""

import pytest

from lab.files import UNITS
from lab.lesson.messages import (
    decimals_needed,
    length,
    mass,
    message,
    moment,
    number,
    placeholders,
    render,
    written,
)
from lab.outline.words import Words


@pytest.mark.parametrize(("units", "shown"), [("g-cm", "480 g at 5.6 cm"), ("kg-m", "0.48 kg at 0.056 m")])
def test_amounts_are_shown_in_the_units_that_are_asked_for(units, shown):
    sentence = message("{weight} at {place}", weight=mass(0.48), place=length(0.056))
    assert render(sentence, Words(), UNITS[units]) == shown


def test_a_writers_text_keeps_a_place_that_names_nothing():
    assert render(written("{a.weight} and {b}", {"a.weight": mass(0.1)}), Words(), UNITS["g-cm"]) == "100 g and {b}"


def test_a_number_shows_no_more_figures_than_it_needs():
    assert [decimals_needed(value) for value in (480.0, 5.6, 0.05, 1 / 3, 5.6000000001)] == [0, 1, 2, 3, 0 + 1]


def test_a_moment_stands_without_its_unit_unless_asked():
    sentence = message(
        "{plain}, {full}, {count}", plain=moment(0.0336), full=moment(0.0336, unit=True), count=number(3)
    )
    assert render(sentence, Words(), UNITS["g-cm"]) == "3\u202f360, 3\u202f360 g·cm, 3"


def test_a_pseudo_language_dresses_every_part_of_a_sentence():
    words = Words("xx")
    shown = render(message("Let go: the {part} end drops.", part="hook"), words, UNITS["g-cm"])
    assert "hook" not in shown
    assert "Let go" not in shown


def test_places_in_a_text_are_found_in_order():
    assert placeholders("{a b.weight} and {}") == ("a b.weight", "")
