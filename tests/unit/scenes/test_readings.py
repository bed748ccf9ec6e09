"""Quantities as they are written in a picture."""

import pytest

from lab.files import UNITS
from lab.outline.words import NARROW_SPACE, Words
from lab.scenes.readings import Readings


def readings(units: str) -> Readings:
    return Readings(words=Words(), units=UNITS[units])


@pytest.mark.parametrize(
    ("units", "weight", "length", "moment"),
    [
        ("g-cm", "200", "15.0", f"3{NARROW_SPACE}000"),
        ("kg-m", "0.200", "0.150", "0.0300"),
        # 0.2 kg weighs 1.96133 N; with 0.15 m that is 0.2942 N·m.
        ("N-m", "1.961", "0.150", "0.294"),
        # 0.2 kg is 0.440925 lb, 15 cm are 5.905512 in, the moment 2.60388 lb·in.
        ("lb-in", "0.441", "5.91", "2.60"),
    ],
)
def test_each_unit_system_shows_as_much_as_its_rulers_and_scales(units: str, weight: str, length: str, moment: str):
    shown = readings(units)
    assert (shown.weight(0.2), shown.length(0.15), shown.moment(0.03)) == (weight, length, moment)


def test_a_length_is_no_longer_than_it_needs_to_be():
    shown = readings("g-cm")
    assert [shown.short_length(length) for length in (0.25, 0.325, 1.0)] == ["25", "32.5", "100"]


def test_brass_is_stamped_in_grams_whatever_units_are_shown():
    assert {readings(units).stamp(0.2) for units in UNITS} == {"200"}


def test_a_weight_that_is_no_whole_number_of_grams_is_stamped_in_the_shown_units():
    assert readings("lb-in").stamp(0.45359237) == "1"


def test_a_weight_between_two_grams_shows_its_decimals():
    assert readings("g-cm").weight(0.0125) == "12.5"
