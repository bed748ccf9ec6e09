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
    assert render(asked.prompt, words, asked.units) == "Which end hangs low, or does it hang level?"
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
    assert "4.4 cm left of the cord" in render(told.why, words, asked.units)
    assert f"{degrees(atan2(4.4, 3)):.0f} degrees" in render(told.happened, words, asked.units)
    assert told.ways == ("as_carried", "counts_pieces")


def test_only_what_there_is_to_find_can_be_asked_for(tmp_path):
    wrong = tmp_path / "wrong.toml"
    wrong.write_text(LESSON.read_text(encoding="utf-8").replace('"ends"', '"tips"'), encoding="utf-8")
    faults, _ = check_lesson(wrong)
    assert [(fault.what, fault.cure) for fault in faults] == [
        ('"tips" is nothing to find here', 'write "pitch", "roll" or "ends"')
    ]


@pytest.fixture
def board(tmp_path):
    """Ask about a board with a hole, as an attitude or as a place."""

    def asked_as(keys):
        path = tmp_path / "board.toml"
        path.write_text(BOARD.replace("KEYS", keys), encoding="utf-8")
        return ask(read_lesson(path), 0, seed=1)

    return asked_as


BOARD = """format = 1
title = "Board"
level = "middle"
aim = "A hole is weight taken away."
[[question]]
name = "board"
title = "How does it hang?"
say = "A board with a hole."
ways = []
KEYS
[question.scene]
title = "Board"
[[question.scene.part]]
name = "board"
weight = 1200
at = [30, 0, 20]
shape = { kind = "rectangle", length = 60, width = 40 }
[[question.scene.part]]
name = "hole"
weight = 300
at = [45, 0, 20]
cut = true
shape = { kind = "disc", radius = 10 }
"""


@pytest.mark.parametrize(
    ("keys", "truth", "happened"),
    [
        ('ask = "attitude"\nfind = "ends"\nhung_at = [30, 0, 39]', "left end low", "Then it would hang level."),
        # (1200 × 30 − 300 × 45) / 900 = 25 cm; whole, 30.
        ('ask = "place"\ntolerance = 1', 0.25, "Then it would balance at 30.0 cm."),
    ],
)
def test_what_is_undone_of_a_plate_with_a_hole_is_the_hole(board, keys, truth, happened):
    asked, words = board(keys), Words()
    contrast = explain(asked, asked.truth).contrast
    assert asked.truth == (truth if isinstance(truth, str) else pytest.approx(truth, rel=1e-12))
    assert render(contrast.label, words, asked.units) == "What if the hole had not been cut out?"
    assert render(contrast.happened, words, asked.units) == happened


def test_what_hangs_level_is_not_said_to_tilt(board):
    asked = board('ask = "attitude"\nfind = "ends"\nhung_at = [25, 0, 39]')
    assert render(explain(asked, "level").happened, Words(), asked.units) == "It hangs level."
