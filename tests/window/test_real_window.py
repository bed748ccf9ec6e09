"""The real program in a real window under Xvfb, driven by xdotool: a lesson by pointer, a lesson by keys.

A pilot without a window is played alongside; it says where things are and how long they take, and its
record is what the window's must be.
"""

import os
import shutil
import time
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from lab.app.settings import load_settings, save_settings
from lab.attempts import Attempt

pytestmark = [
    pytest.mark.window,
    pytest.mark.skipif(not os.environ.get("DISPLAY"), reason="there is no display"),
    pytest.mark.skipif(shutil.which("xdotool") is None, reason="xdotool is not there"),
]

SEED = "4711"
X_KEYS = {"tab": "Tab", "enter": "Return", "space": "space", "left": "Left", "right": "Right", "escape": "Escape"}
#: Two taps in quick succession count as one; a person's are further apart than this.
BETWEEN_TAPS_S = 0.45


@pytest.fixture
def both(
    make_pilot: Any, real_window: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> Iterator[Callable[[str], tuple[Any, Any]]]:
    """Opens a lesson in a pilot and in the real window, both with the same settings."""
    opened: list[Any] = []

    def start(lesson: str) -> tuple[Any, Any]:
        settings = load_settings(tmp_path / "none").settings
        for home in ("pilot", "window"):
            save_settings(tmp_path / home / "settings.json", settings)
        monkeypatch.setenv("TILTBENCH_HOME", str(tmp_path / "pilot"))
        pilot = make_pilot()
        pilot.lab.open_lesson(lesson, seed=int(SEED))
        window = real_window(tmp_path / "window", "lesson", lesson, "--seed", SEED)
        opened.append(window)
        window.wait_for_window(pilot.lab.size)
        return pilot, window

    yield start
    for window in opened:
        window.close()


def _press(pilot: Any, window: Any, key: str) -> None:
    x, y = pilot.middle(key)
    pilot.press(key)
    time.sleep(BETWEEN_TAPS_S)
    window.hands("mousemove", round(x), round(y), "click", 1)


def _drag(pilot: Any, window: Any, key: str, to_x: float) -> None:
    x, y = (round(value) for value in pilot.middle(key))
    pilot.drag((x, y), (to_x, y))
    time.sleep(BETWEEN_TAPS_S)
    window.hands("mousemove", x, y, "mousedown", 1)
    for step in range(1, 9):
        window.hands("mousemove", round(x + step / 8 * (to_x - x)), y, "sleep", 0.03)
    window.hands("mouseup", 1)


def _keys(pilot: Any, window: Any, *names: str) -> None:
    for name in names:
        pilot.key(name)
    window.hands("key", "--delay", 40, *(X_KEYS[name] for name in names))


def _tab_to(pilot: Any, window: Any, *keys: str) -> None:
    """Press Tab, in both, until one of these has the focus."""
    for _ in range(80):
        if any("focused" in pilot.node(key).state for key in keys):
            return
        _keys(pilot, window, "tab")
    raise AssertionError(f"Tab never reaches {keys}")


def _watch(pilot: Any, window: Any, locked: int) -> None:
    """Wait, in both, until the answer is kept and what was let go has come to rest."""
    window.wait_until(lambda: len(window.attempts()) >= locked, f"answer {locked}")
    waited = 0.0
    while not pilot.has("next"):
        pilot.wait(0.1)
        waited += 0.1
    time.sleep(waited + 0.8)


def _same_record(pilot: Any, window: Any) -> None:
    def plain(attempts: Any) -> list[Attempt]:
        return [replace(attempt, id="", made_at="", seconds=0.0) for attempt in attempts]

    mine, theirs = plain(pilot.attempts()), plain(window.attempts())
    assert theirs == mine
    assert all(attempt.locked for attempt in theirs)


def _kind(pilot: Any) -> str:
    return "place" if pilot.has("finger") else "side"


def test_a_lesson_is_played_by_pointer(both: Any):
    pilot, window = both("lopsided-tool")
    for number in range(6):
        if _kind(pilot) == "side":
            _press(pilot, window, ("side.left", "side.level", "side.right")[number % 3])
        else:
            x, _, width, _ = pilot.node("picture").bounds
            _drag(pilot, window, "finger", round(x + (0.3, 0.62, 0.75)[number % 3] * width))
        _press(pilot, window, ("sure.guess", "sure.fairly", "sure.certain")[number % 3])
        _press(pilot, window, "lock")
        _watch(pilot, window, number + 1)
        _press(pilot, window, "next")
    _same_record(pilot, window)
    assert len(window.attempts()) == 6
    assert window.close() == 0


def test_a_lesson_is_played_by_keys(both: Any):
    pilot, window = both("lopsided-tool")
    for number in range(6):
        if _kind(pilot) == "side":
            _tab_to(pilot, window, "side", "side.left", "side.level", "side.right")
            _keys(pilot, window, *(["right"] * (number % 3)), "space")
        else:
            _tab_to(pilot, window, "finger")
            _keys(pilot, window, *(["left"] * (3 + number)))
        _tab_to(pilot, window, "sure", "sure.guess", "sure.fairly", "sure.certain")
        _keys(pilot, window, *(["right"] * (number % 3)), "space")
        _tab_to(pilot, window, "lock")
        _keys(pilot, window, "enter")
        _watch(pilot, window, number + 1)
        _tab_to(pilot, window, "next")
        _keys(pilot, window, "enter")
    _same_record(pilot, window)
    assert window.close() == 0


def test_a_window_closed_mid_question_keeps_the_answer_so_far(both: Any):
    pilot, window = both("one-finger")
    x, _, width, _ = pilot.node("picture").bounds
    _drag(pilot, window, "finger", round(x + 0.3 * width))
    time.sleep(0.5)
    assert window.close() == 0
    (attempt,) = window.attempts()
    assert not attempt.locked
    assert attempt.given == pilot.node("place").value


def test_a_weight_and_an_arm_are_set_by_pointer_and_the_changed_picture_is_foretold(both: Any):
    pilot, window = both("weight-times-arm")
    for answer in ("weight.more", "side.left", "hung"):
        if answer == "hung":
            _drag(pilot, window, "hung", pilot.middle("hung")[0] + 200)
        else:
            _press(pilot, window, answer)
        _press(pilot, window, "sure.fairly")
        _press(pilot, window, "lock")
        _watch(pilot, window, len(pilot.attempts()))
        _press(pilot, window, "foretell.level")
        window.wait_until(lambda: len(window.attempts()) == len(pilot.attempts()), "what was foretold")
        _press(pilot, window, "next")
    _same_record(pilot, window)
    assert [attempt.kind for attempt in window.attempts()] == [
        "weight", "contrast", "side", "contrast", "arm", "contrast",
    ]  # fmt: skip
    assert window.close() == 0


def test_what_several_scales_read_is_set_by_keys(both: Any):
    pilot, window = both("two-scales")
    for number in ("reading-1", "reading-2"):
        _tab_to(pilot, window, number)
        _keys(pilot, window, "right", "right")
    _tab_to(pilot, window, "sure", "sure.guess", "sure.fairly", "sure.certain")
    _keys(pilot, window, "space")
    _tab_to(pilot, window, "lock")
    _keys(pilot, window, "enter")
    _watch(pilot, window, 1)
    _same_record(pilot, window)
    assert window.close() == 0
