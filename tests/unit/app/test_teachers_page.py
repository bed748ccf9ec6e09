"""The teacher's page as it is met: printed by the command, and as a place of the lab."""

from pathlib import Path
from typing import Any

import pytest

from lab.app.main import main
from lab.lesson import read_lesson
from lab.lesson.teaching import teaching_sheet
from lab.outline import Words
from lab.screens.intents import Go
from lab.terminal.teachers_page import WIDTH, page_lines

LESSON = """format = 1
title = "Broom and tin"
level = "early"
aim = "It balances nearer to the tin."

[teacher]
minutes = 15
have = ["A broom.", "A tin of paint."]
do = ["Lay the broom on a finger.", "Hang the tin on its end."]
expect = ["Many say the middle, since it was the middle before, and since nothing about the broom has changed at all."]
cautions = ["Mind the toes."]

[[question]]
name = "broom"
ask = "place"
title = "Where will it balance?"
say = "A broom of {broom.weight}, {broom.length} long, with a tin of {tin.weight} at {tin.at}."
tolerance = 2
ways = ["middle"]
[question.scene.bar]
name = "broom"
length = 120
weight = 400
[[question.scene.part]]
name = "tin"
weight = 600
at = 120
"""


@pytest.fixture
def broom(_own_home: Path) -> Path:
    """A lesson of a teacher's own, in the data folder."""
    folder = _own_home / "lessons"
    folder.mkdir(parents=True)
    path = folder / "broom-and-tin.toml"
    path.write_text(LESSON, encoding="utf-8")
    return path


def test_the_page_is_printed_with_its_sections_and_every_answer(broom, capsys: pytest.CaptureFixture[str]):
    assert main(["lesson", "broom-and-tin", "--page"]) == 0
    said = capsys.readouterr()
    assert said.err == ""
    lines = said.out.splitlines()
    order = ["Broom and tin", "Aim", "Time", "What to have on the table", "Do it with real things",
             "The questions and their answers", "What learners commonly say", "Cautions"]  # fmt: skip
    assert [line for line in lines if line in order] == order
    assert "2. Hang the tin on its end." in lines
    # By hand: (400 × 60 + 600 × 120) / 1 000 = 96.
    assert any("The sum says 96 cm." in line or "The sum says 96.0 cm." in line for line in lines)
    assert any(line.strip().startswith("- 60") and "(middle)" in line for line in lines)


def test_no_line_is_longer_than_a_page_is_wide(broom):
    for seed in (0, 1):
        for line in page_lines(teaching_sheet(read_lesson(broom), seed=seed), Words("xx")):
            assert len(line) <= WIDTH


def test_an_unknown_lesson_is_named_with_the_nearest(broom, capsys: pytest.CaptureFixture[str]):
    assert main(["lesson", "broom-and-tim", "--page"]) == 1
    said = capsys.readouterr()
    assert said.out == ""
    assert "there is no lesson broom-and-tim; the nearest is broom-and-tin" in said.err


def test_a_page_of_nothing_is_refused(capsys: pytest.CaptureFixture[str]):
    assert main(["lesson", "--page"]) == 1
    assert "--page needs a lesson" in capsys.readouterr().err


def test_the_page_is_read_and_left_by_keys_and_the_lesson_begun_from_it(broom, pilot: Any):
    pilot.lab._go(Go(place="page", name="broom-and-tin"))
    pilot.lab._refresh()
    assert pilot.says("A tin of paint.")
    assert pilot.says("Who says 60")
    pilot.key("escape")
    assert pilot.has("lesson-broom-and-tin")
    pilot.lab._go(Go(place="page", name="broom-and-tin"))
    pilot.press("begin")
    assert pilot.has("lock") or pilot.says("Where will it balance?")


def test_a_page_that_cannot_be_read_says_why_and_stays(pilot: Any):
    pilot.press("to-lessons")
    pilot.lab._perform(Go(place="page", name="no-such-lesson"))
    pilot.lab._refresh()
    assert pilot.has("lesson-one-finger")
    assert pilot.says("There is no lesson no-such-lesson.")
