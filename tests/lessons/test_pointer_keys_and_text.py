"""Each shipped lesson played to its end three times: by pointer alone, by keys alone, and as text.

The three records agree in everything but their ids, the clock and the seconds taken.
"""

import io
from collections.abc import Callable
from dataclasses import asdict, dataclass, replace
from typing import Any

import pytest

import lab
from lab.app.paths import find_paths
from lab.app.shelf import shelf_of
from lab.attempts import Attempt, attempt_of
from lab.lesson import Answered, read_lesson
from lab.outline.words import Words
from lab.terminal.lesson_text import play

SEED = 4711
SHELF = shelf_of(find_paths())
NAMES = [path.stem for path in SHELF.files()]
#: Which answer, as a share of the body's length from its left end; which end; how sure.  By question, in turn.
PLACES = (0.3, 0.62, 0.75)
SIDES = ("left", "level", "right")
SURE = ("guess", "fairly", "certain")
#: Longer than any fall or swing takes to come to rest.
REST_S = 30.0


@dataclass(frozen=True)
class Said:
    """What one question is answered with: a side, or the place as the screen showed it."""

    kind: str
    given: str
    sure: str
    hints: int


def _asked(pilot: Any) -> Any:
    return pilot.lab._room._sitting.run.asked


def _sitting_done(pilot: Any) -> bool:
    return bool(pilot.lab._room._sitting.run.phase == "finished")


def _by_pointer(pilot: Any) -> list[Said]:
    """Play with taps and drags; returns what was said, for the other two to say again."""
    said = []
    for number in range(len(read_lesson(SHELF.file(_asked(pilot).lesson)).questions)):
        asked = _asked(pilot)
        hints = number % 2 if asked.hints else 0
        if hints:
            pilot.press("hint")
        if asked.kind == "side":
            given = SIDES[number % 3]
            pilot.press(f"side.{given}")
        else:
            x, _, width, _ = pilot.node("picture").bounds
            start = pilot.middle("finger")
            pilot.drag(start, (x + PLACES[number % 3] * width, start[1]))
            given = pilot.node("place").value
        pilot.press(f"sure.{SURE[number % 3]}")
        pilot.press("lock")
        pilot.wait(REST_S)
        pilot.press("next")
        said.append(Said(asked.kind, given, SURE[number % 3], hints))
    assert _sitting_done(pilot)
    return said


def _by_keys(pilot: Any, said: list[Said]) -> None:
    for answer in said:
        asked = _asked(pilot)
        for _ in range(answer.hints):
            pilot.tab_to("hint")
            pilot.key("enter")
        if answer.kind == "side":
            _choose(pilot, f"side.{answer.given}")
        else:
            pilot.tab_to("finger")
            wanted = float(answer.given.split()[0].replace("\N{MINUS SIGN}", "-"))
            for _ in range(2000):
                now = pilot.node("place").value
                at = _number(now) if now[0] != "?" else asked.units.from_m((asked.left_m + asked.right_m) / 2)
                if now == answer.given:
                    break
                far = abs(wanted - at) > 6
                pilot.key("right" if wanted > at else "left", shift=far)
            assert pilot.node("place").value == answer.given
        _choose(pilot, f"sure.{answer.sure}")
        pilot.tab_to("lock")
        pilot.key("enter")
        pilot.wait(REST_S)
        pilot.tab_to("next")
        pilot.key("enter")
    assert _sitting_done(pilot)


def _number(shown: str) -> float:
    return float(shown.split()[0].replace("\N{MINUS SIGN}", "-"))


def _choose(pilot: Any, option: str) -> None:
    """Go to a row of choices by Tab and along it by arrows; Space takes the one that has the focus."""
    row, _, _ = option.partition(".")
    options = [node.key for node in pilot.node(row).children]
    for _ in range(80):
        if any("focused" in pilot.node(key).state for key in (row, *options)):
            break
        pilot.key("tab")
    for _ in range(2 * len(options)):
        if "focused" in pilot.node(option).state:
            break
        pilot.key("right")
    if "selected" not in pilot.node(option).state:
        pilot.key("space")
    assert "selected" in pilot.node(option).state


def _by_text(name: str, said: list[Said], learner: str) -> list[Attempt]:
    lines = []
    for answer in said:
        lines += ["hint"] * answer.hints + [answer.given, answer.sure, "next"]
    kept: list[Attempt] = []

    def keep(answer: Answered) -> None:
        kept.append(attempt_of(asdict(answer), learner=learner, version=lab.__version__))

    run = play(
        read_lesson(SHELF.file(name)),
        seed=SEED,
        stdin=io.StringIO("\n".join(lines) + "\n"),
        stdout=io.StringIO(),
        words=Words(),
        keep=keep,
    )
    assert run.phase == "finished"
    return kept


def _comparable(attempts: Any) -> list[Attempt]:
    return [replace(attempt, id="", made_at="", seconds=0.0, learner="") for attempt in attempts]


@pytest.mark.parametrize("name", NAMES)
def test_a_lesson_leaves_the_same_record_by_pointer_by_keys_and_as_text(
    name: str, make_pilot: Callable[..., Any], monkeypatch: pytest.MonkeyPatch, tmp_path: Any
):
    monkeypatch.setenv("TILTBENCH_HOME", str(tmp_path / "pointer"))
    pointer = make_pilot()
    pointer.lab.open_lesson(name, seed=SEED)
    said = _by_pointer(pointer)

    monkeypatch.setenv("TILTBENCH_HOME", str(tmp_path / "keys"))
    keys = make_pilot()
    keys.lab.open_lesson(name, seed=SEED)
    _by_keys(keys, said)

    text = _by_text(name, said, "34679CF7")
    by_pointer = _comparable(pointer.attempts())
    assert len(by_pointer) == len(said)
    assert all(attempt.locked for attempt in by_pointer)
    assert _comparable(keys.attempts()) == by_pointer
    assert _comparable(text) == by_pointer
