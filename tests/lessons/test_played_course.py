"""A course played to its end by somebody who looks at weights alone: told, tried again, spaced, compared."""

from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest

from lab.lesson.probe.items import situation_of_item, truth_of_item
from lab.lesson.situation import situation_of
from lab.lesson.ways.side import weight_only

LESSON = "heavy-near-light-far"
#: Longer than any fall or swing takes to come to rest.
REST_S = 30.0


class Calendar:
    """The day that everybody in the test goes by."""

    def __init__(self) -> None:
        self.now = datetime(2026, 3, 2, 10, 0, tzinfo=UTC)

    def sleep(self, days: float) -> None:
        self.now += timedelta(days=days)

    def written(self) -> str:
        self.now += timedelta(milliseconds=1)  # no two answers at once
        return self.now.isoformat(timespec="milliseconds")


@pytest.fixture
def calendar(monkeypatch: pytest.MonkeyPatch) -> Calendar:
    calendar = Calendar()
    monkeypatch.setattr("lab.attempts.attempt.time_now", calendar.written)
    return calendar


@pytest.fixture
def learner(pilot: Any, calendar: Calendar) -> Any:
    pilot.lab.house.calendar_s = lambda: calendar.now.timestamp()
    return pilot


def take_probe(pilot: Any, rule: Callable[..., str]) -> None:
    pilot.press("offer")
    while pilot.has("side"):
        pilot.press(f"side.{rule(pilot.lab._room._probe.item)}")
        pilot.press("next")
    pilot.press("to-lessons")


def by_weight(item: Any) -> str:
    return weight_only(situation_of_item(item))


def run_of(pilot: Any) -> Any:
    return pilot.lab._room._sitting.run


def answer_side(pilot: Any, side: str, sure: str) -> None:
    pilot.press(f"side.{side}")
    pilot.press(f"sure.{sure}")
    pilot.press("lock")
    pilot.wait(REST_S)


def answer_anything(pilot: Any) -> None:
    """Answer whatever is asked, rightly where that is one press, and go on."""
    asked = run_of(pilot).asked
    if asked.kind == "side":
        answer_side(pilot, asked.truth, "fairly")
        pilot.press("next")
    else:
        pilot.press("skip")


def test_weight_only_is_told_so_tries_the_changed_bar_and_comes_back_after_two_days(learner: Any, calendar: Calendar):
    learner.press("to-lessons")
    take_probe(learner, by_weight)

    # The lesson: the first bar on which weight alone is wrong and the idea is named.
    learner.lab.open_lesson(LESSON, seed=4711)
    told = []
    while run_of(learner).phase != "finished":
        asked = run_of(learner).asked
        said = weight_only(situation_of(asked.build)) if asked.kind == "side" else None
        if said is None or told:
            answer_anything(learner)
            continue
        answer_side(learner, said, "certain")
        if learner.says("That is what the weights alone would say."):
            told.append(asked.question_name)
            learner.press(f"foretell.{run_of(learner).foretold.truth}")
            learner.wait(REST_S)
            assert learner.says("You said:")
        learner.press("next")
    assert told, "no bar of the lesson names the idea"
    learner.press("to-lessons")

    kept = {row.question: row for row in learner.attempts() if row.lesson == LESSON and row.locked}
    wrong, tried = kept[told[0]], kept[f"{told[0]}+contrast"]
    assert (wrong.right, wrong.sure) == (False, "certain")
    assert wrong.ways == ("weight_only",)
    assert (tried.kind, tried.right, tried.seed, tried.round) == ("contrast", True, wrong.seed, wrong.round)
    assert tried.scene != wrong.scene

    # The same day nothing comes back; two days later it does, what was sure and wrong first.
    assert not learner.says("from before")
    calendar.sleep(2)
    learner.press("back")
    learner.press("to-lessons")
    assert learner.says("questions from before")
    learner.press("offer")
    assert run_of(learner).lesson.name == "mixed"
    assert run_of(learner).asked.question_name == told[0]
    while run_of(learner).phase != "finished":
        answer_anything(learner)
    again = [row for row in learner.attempts() if row.lesson == LESSON and row.question == told[0]]
    assert [row.right for row in again] == [False, True]
    learner.press("to-lessons")
    assert not learner.says("questions from before")

    # The probe once more: the gain, and how sure it is.
    learner.lab.open_probe(seed=4712)
    while learner.has("side"):
        learner.press(f"side.{truth_of_item(learner.lab._room._probe.item)}")
        learner.press("next")
    assert learner.says("What has changed")
    learner.press("to-lessons")
    assert learner.says("At first your answers fitted: the side with more weight goes down.")
    assert learner.says("Now they fit: weight times distance, and the larger product goes down.")
    assert learner.says("How sure it is that these are two rules: 9")
    assert learner.says("Too few of them changed to be sure of a gain.")
