"""Lessons of one question, written by the test that needs them."""

from collections.abc import Callable
from pathlib import Path

import pytest

from lab.lesson import Asked, Lesson, ask, read_lesson

TOP = """format = 1
title = "A lesson"
level = "early"
aim = "To see."
"""

BOAT_HOOK = """
[[question]]
name = "boat-hook"
ask = "place"
title = "Where will it balance?"
say = "Pole {pole.weight}, {pole.length} long; hook {hook.weight} at {hook.at}."
tolerance = 0.3
hints = ["Which end is heavy?", "Every part pulls from its middle."]
[question.scene]
[[question.scene.part]]
name = "hook"
weight = 480
at = 2
shape = { kind = "box", size = [4, 2, 5] }
[[question.scene.part]]
name = "pole"
weight = 120
at = 20
shape = { kind = "rod", length = 40 }
"""

ON_A_PIN = """
[[question]]
name = "two-leads"
ask = "side"
title = "Which end drops?"
say = "Leads of {near.weight} and {far.weight}."
[question.scene.bar]
length = 100
weight = 200
[[question.scene.part]]
name = "near"
weight = 300
at = 20
hold = "hung"
[[question.scene.part]]
name = "far"
weight = 100
at = 100
hold = "hung"
[question.scene.pivot]
at = 40
up = 1
"""


@pytest.fixture
def write(tmp_path: Path) -> Callable[..., Path]:
    """Write a lesson of these questions into a folder of its own."""

    def written(*questions: str, top: str = TOP) -> Path:
        path = tmp_path / "a-lesson.toml"
        path.write_text(top + "".join(questions), encoding="utf-8")
        return path

    return written


@pytest.fixture
def lesson(write: Callable[..., Path]) -> Lesson:
    """A boat hook on a finger, then two leads on a bar."""
    return read_lesson(write(BOAT_HOOK, ON_A_PIN))


@pytest.fixture
def boat_hook(lesson: Lesson) -> Asked:
    """Where a boat hook balances: at 5.6 cm."""
    return ask(lesson, 0, seed=1)


@pytest.fixture
def two_leads(lesson: Lesson) -> Asked:
    """Which end of a bar with two leads drops: the right one, by the bar's own weight."""
    return ask(lesson, 1, seed=1)
