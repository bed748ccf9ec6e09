"""Every shipped lesson played through by pointer alone, by keys alone and as text: three ways, one record.

The same seed asks the same questions, so what is kept may differ in nothing but the id, the clock and the seconds.
"""

import io
from dataclasses import replace
from typing import Any

import pytest

import lab
from lab.app.main import main
from lab.attempts import Attempt
from lab.files import UNITS
from lab.lesson import Asked, ask, read_lesson
from lab.outline.node import walk

LESSONS = ("one-finger", "lopsided-tool", "bar-weighs-too")
SEED = 4711
SURE = ("guess", "fairly", "certain")
SIDES = ("left", "right", "level")


def told_apart(attempt: Attempt) -> Attempt:
    """The attempt without what must differ: whose sitting it was, when, and how long it took."""
    return replace(attempt, id="", learner="", made_at="", seconds=0.0)


def plan(pilot: Any, lesson: str) -> list[tuple[Asked, str, str]]:
    """For each question what to answer and how sure: the truth and other answers in turn."""
    read = read_lesson(next(pilot.paths.shipped_lessons.rglob(f"{lesson}.toml")))
    played = []
    for index in range(len(read.questions)):
        asked = ask(read, index, seed=SEED)
        if asked.kind == "side":
            answer = str(asked.truth) if index % 2 else SIDES[index % 3]
        else:
            length = UNITS[asked.build.units].from_m(float(asked.truth)) + (0.0 if index % 2 else 1.7)
            answer = f"{round(length, asked.decimals):.{asked.decimals}f} {asked.units.length_word}"
        played.append((asked, answer, SURE[index % 3]))
    return played


def by_pointer(pilot: Any, lesson: str) -> tuple[Attempt, ...]:
    pilot.press("to-lessons")
    pilot.press(f"lesson-{lesson}")
    for asked, answer, sure in plan(pilot, lesson):
        if asked.kind == "side":
            pilot.press(f"side.{answer}")
        else:
            pilot.press("place")
            for figure in answer.split()[0]:
                pilot.press(f"keypad.{figure}")
            pilot.press("keypad.done")
        pilot.press(f"sure.{sure}")
        pilot.press("lock")
        pilot.wait(12.0)
        pilot.press("next")
    assert pilot.has("to-lessons")
    return pilot.attempts()


def by_keys(pilot: Any, lesson: str) -> tuple[Attempt, ...]:
    def go(key: str) -> None:
        pilot.tab_to(key)
        pilot.key("enter")

    def choose(group: str, value: str) -> None:
        """Into the row of choices with Tab, along it with the arrow, and Enter."""
        for _ in range(80):
            focused = next((each.key for each in walk(pilot.outline) if "focused" in each.state), "")
            if focused.startswith(f"{group}."):
                break
            pilot.key("tab")
        for _ in range(3):
            if "focused" in pilot.node(f"{group}.{value}").state:
                break
            pilot.key("right")
        pilot.key("enter")
        assert "selected" in pilot.node(f"{group}.{value}").state

    go("to-lessons")
    go(f"lesson-{lesson}")
    for asked, answer, sure in plan(pilot, lesson):
        if asked.kind == "side":
            choose("side", answer)
        else:
            pilot.tab_to("finger")
            # The finger starts somewhere that gives nothing away; the arrows bring it to the answer.
            pilot.key("right")
            for _ in range(3000):
                shown = pilot.node("finger").value
                if shown == answer:
                    break
                short = float(shown.split()[0]) < float(answer.split()[0])
                pilot.key("right" if short else "left")
            assert pilot.node("finger").value == answer
        choose("sure", sure)
        go("lock")
        pilot.wait(12.0)
        go("next")
    return pilot.attempts()


def by_text(pilot: Any, lesson: str, monkeypatch: pytest.MonkeyPatch) -> tuple[Attempt, ...]:
    lines = [line for _, answer, sure in plan(pilot, lesson) for line in (answer, sure, "next")]
    monkeypatch.setattr("sys.stdin", io.StringIO("\n".join(lines) + "\n"))
    assert main(["lesson", lesson, "--text", "--seed", str(SEED)]) == 0
    return pilot.attempts()


@pytest.mark.parametrize("lesson", LESSONS)
def test_pointer_keys_and_text_leave_the_same_record(
    lesson: str, make_pilot: Any, monkeypatch: pytest.MonkeyPatch, tmp_path: Any
):
    records = []
    for way in ("pointer", "keys", "text"):
        home = tmp_path / way
        monkeypatch.setenv("TILTBENCH_HOME", str(home))
        pilot = make_pilot()
        if way == "pointer":
            records.append(by_pointer(pilot, lesson))
        elif way == "keys":
            records.append(by_keys(pilot, lesson))
        else:
            records.append(by_text(pilot, lesson, monkeypatch))
    pointer, keys, text = ([told_apart(each) for each in record] for record in records)
    questions = len(plan(pilot, lesson))
    assert len(pointer) == questions
    assert pointer == keys
    assert pointer == text
    assert {attempt.right for attempt in pointer} == {True, False}, "the plan must hold both kinds of answer"
    assert all(attempt.locked and attempt.version == lab.__version__ for attempt in pointer)
