"""A tool or a plate that hangs by one point: it has ends, and neither a nose nor wings."""

from math import atan2, degrees
from pathlib import Path

import pytest

from lab.lesson import ask, check_lesson, explain, read_lesson, render, understand
from lab.outline.words import Words

LESSON = Path(__file__).parent / "kinds" / "hung-tool.toml"


@pytest.fixture
def asked():
    return ask(read_lesson(LESSON), 0, seed=1)


def test_it_is_asked_by_its_ends(asked):
    words = Words()
    assert render(asked.prompt, words, asked.units).endswith("Which end is low, or does it hang level?")
    assert [option.key for option in asked.form.options] == ["left end low", "level", "right end low"]


@pytest.mark.parametrize(
    ("said", "heard"),
    [
        ("left", "left end low"),
        ("the left end", "left end low"),
        ("l", "left end low"),
        ("right end down", "right end low"),
        ("it hangs level", "level"),
        ("stays", "level"),
    ],
)
def test_an_end_is_heard_in_many_words(asked, said, heard):
    assert understand(asked, said).value == heard


def test_its_heavy_end_comes_down_and_the_sentence_says_where_it_balances(asked):
    told, words = explain(asked, "level"), Words()
    # 480 × 2 + 120 × 20 = 3360; / 600 = 5.6, which is 4.4 left of the loop and 3 below it.
    assert asked.truth == "left end low"
    assert "4.4 cm left of the hook" in render(told.why, words, asked.units)
    assert f"{degrees(atan2(4.4, 3)):.0f} degrees" in render(told.happened, words, asked.units)
    assert told.ways == ("as_carried", "counts_pieces")


def test_only_what_there_is_to_find_can_be_asked_for(tmp_path):
    wrong = tmp_path / "wrong.toml"
    wrong.write_text(LESSON.read_text(encoding="utf-8").replace('"ends"', '"tips"'), encoding="utf-8")
    faults, _ = check_lesson(wrong)
    assert [(fault.what, fault.cure) for fault in faults] == [
        ('"tips" is nothing to find here', 'write "pitch", "roll" or "ends"')
    ]
