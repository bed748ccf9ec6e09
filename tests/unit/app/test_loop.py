"""The loop with a window that is none: it sleeps at rest, draws what changed, and never more than needed."""

from collections.abc import Sequence
from typing import Any

import pytest

from lab.app.loop import FRAME_NS, LOOK_NS, Loop
from lab.app.settings import changed, load_settings
from lab.outline import walk
from lab.ui.events import Event, Exposed, PointerDown, PointerMove, PointerUp, Quit
from lab.ui.geometry import Rect
from lab.ui.list_canvas import ListCanvas

SECOND_NS = 1_000_000_000


class Canvas(ListCanvas):
    """A list canvas that says whether it changed."""

    def __init__(self, size: tuple[int, int]) -> None:
        super().__init__(size)
        self._shown: object = None

    def paint(self) -> list[Rect]:
        ops = tuple(self.ops)
        changed = ops != self._shown
        self._shown = ops
        return [Rect(0.0, 0.0, *self.size)] if changed else []


class Quiet:
    """A window to which a script of events happens, and a clock that moves only by sleeping."""

    def __init__(self, size: tuple[int, int], script: Sequence[tuple[float, Event]]) -> None:
        self.canvas = Canvas(size)
        self.now_ns = 0
        self.slept: list[float] = []
        self.presented = 0
        self._script = [(round(at * SECOND_NS), event) for at, event in script]

    def events(self) -> list[Event]:
        due = [event for at_ns, event in self._script if at_ns <= self.now_ns]
        self._script = [(at_ns, event) for at_ns, event in self._script if at_ns > self.now_ns]
        return due

    def present(self, rects: Sequence[Rect]) -> None:
        self.presented += bool(rects)

    def sleep(self, seconds: float) -> None:
        self.slept.append(seconds)
        self.now_ns += round(seconds * SECOND_NS)


def _run(pilot: Any, *script: tuple[float, Event]) -> tuple[Loop, Quiet]:
    window = Quiet(pilot.lab.size, script)
    loop = Loop(pilot.lab, window, clock_ns=lambda: window.now_ns, sleep=window.sleep)
    loop.run()
    return loop, window


def test_at_rest_one_picture_is_drawn_and_no_more(pilot: Any):
    loop, window = _run(pilot, (600.0, Quit()))
    assert loop.drawn == 1
    assert window.presented == 1
    # It looks for events so often, and does nothing else.
    assert len(window.slept) == pytest.approx(600 * SECOND_NS / LOOK_NS, rel=0.01)


def test_while_something_moves_there_are_sixty_pictures_a_second(pilot: Any):
    x, y = pilot.middle("let-go")
    loop, _ = _run(pilot, (1.0, PointerDown(0, x, y)), (1.0, PointerUp(0, x, y)), (1.5, Quit()))
    # Half a second of motion at 60 a second, the first picture, and the press; one frame either way.
    assert 28 <= loop.drawn <= 34


def test_when_it_has_come_to_rest_no_more_is_drawn(pilot: Any):
    x, y = pilot.middle("let-go")
    loop, _ = _run(pilot, (1.0, PointerDown(0, x, y)), (1.0, PointerUp(0, x, y)), (200.0, Quit()))
    assert loop.drawn < 15 * 60


def test_a_thousand_moves_of_the_mouse_in_a_second_make_no_more_than_sixty_pictures(pilot: Any):
    x, y = pilot.middle("weight-1")
    moves = [(1.0 + number / 1000, PointerMove(0, x + number / 10, y)) for number in range(1000)]
    loop, _ = _run(pilot, (0.99, PointerDown(0, x, y)), *moves, (2.01, Quit()))
    assert 30 <= loop.drawn <= 64


def test_an_event_is_answered_by_the_next_picture(pilot: Any):
    x, y = pilot.middle("let-go")
    loop, window = _run(
        pilot, (1.0, PointerDown(0, x, y)), (1.0, PointerUp(0, x, y)), (1.0 + FRAME_NS / SECOND_NS, Quit())
    )
    assert loop.drawn >= 2
    assert window.presented >= 2


def test_an_exposed_window_is_drawn_again(pilot: Any):
    loop, _ = _run(pilot, (1.0, Exposed()), (2.0, Quit()))
    assert loop.drawn == 2


def test_a_notice_wakes_the_loop_to_be_taken_away(pilot: Any):
    pilot.lab.house.now_ns = 0
    pilot.lab.open_lesson("no-such-lesson")
    loop, window = _run(pilot, (30.0, Quit()))
    assert loop.drawn == 2
    assert not pilot.says("no-such-lesson")
    assert window.presented == 2


def test_the_loop_ends_with_everything_kept(pilot: Any):
    pilot.lab.open_lesson("lopsided-tool")
    x, y = pilot.middle("finger")
    _run(
        pilot,
        (1.0, PointerDown(0, x, y)),
        (1.1, PointerMove(0, x - 60, y)),
        (1.2, PointerMove(0, x - 100, y)),
        (1.3, PointerUp(0, x - 100, y)),
        (2.0, Quit()),
    )
    (attempt,) = pilot.attempts()
    assert not attempt.locked


class Deaf:
    """A speaker whose device fails at the first sound."""

    wanting = False

    def __init__(self) -> None:
        self.asked: list[str] = []
        self.leant: list[tuple[float, bool] | None] = []
        self._told = False

    def play(self, name: str) -> None:
        self.asked.append(name)

    def lean(self, angle_rad: float | None, *, resting: bool = False) -> None:
        self.leant.append(None if angle_rad is None else (angle_rad, resting))

    def news(self) -> dict[str, str] | None:
        told, self._told = self._told, True
        return None if told else {"why": "no such device"}


def _heard(pilot: Any, speaker: Deaf) -> None:
    x, y = pilot.middle("to-build")
    window = Quiet(pilot.lab.size, [(0.5, PointerDown(0, x, y)), (0.5, PointerUp(0, x, y))])
    loop = Loop(pilot.lab, window, clock_ns=lambda: window.now_ns, sleep=window.sleep, speaker=speaker)
    loop.frame()
    x, y = pilot.middle("let-go")
    window._script = [(1_000_000_000, PointerDown(0, x, y)), (1_000_000_000, PointerUp(0, x, y))]
    for _ in range(2000):
        loop.frame()
        if not pilot.lab.moving and not window._script:
            return


def test_a_bar_that_swings_and_meets_its_stop_is_heard_and_a_device_that_fails_is_told_of(pilot: Any):
    speaker = Deaf()
    _heard(pilot, speaker)
    assert speaker.asked[:2] == ["creak", "knock"]
    assert speaker.asked.count("creak") == 1
    assert set(speaker.leant) == {None}, "a tilt is heard by those who asked for it"
    assert any("no sound here" in node.name for node in walk(pilot.lab.outline()))
    assert not any("no such device" in node.name for node in walk(pilot.lab.outline())), "no words for a child"


def test_nothing_is_played_where_sound_is_switched_off(pilot: Any):
    pilot.lab.house.settings = changed(pilot.lab.house.settings, "sound", False)
    pilot.lab.house.settings = changed(pilot.lab.house.settings, "balance_by_ear", True)
    speaker = Deaf()
    _heard(pilot, speaker)
    assert speaker.asked == []
    assert set(speaker.leant) == {None}


def test_who_balances_by_ear_hears_the_tilt_in_every_frame_until_it_rests(pilot: Any):
    pilot.lab.house.settings = changed(pilot.lab.house.settings, "balance_by_ear", True)
    speaker = Deaf()
    _heard(pilot, speaker)
    first = next(number for number, told in enumerate(speaker.leant) if told)
    assert set(speaker.leant[:first]) == {None}, "silent while it is held"
    told = [each for each in speaker.leant[first:] if each]
    assert len(told) > 10
    assert [resting for _, resting in told].count(True) >= 1
    assert not any(resting for _, resting in told[:-1]), "at rest no frames come"
    assert told[-1][0] == pytest.approx(pilot.lab._room.model().bench.swing.angle_rad)


def test_a_speaker_that_wants_more_is_asked_every_frame_though_nothing_moves_or_is_drawn(pilot: Any):
    speaker = Deaf()
    speaker.wanting = True
    window = Quiet(pilot.lab.size, [(1.0, Quit())])
    loop = Loop(pilot.lab, window, clock_ns=lambda: window.now_ns, sleep=window.sleep, speaker=speaker)
    loop.run()
    assert loop.drawn == 1
    # Sixty in a second; one more or less at the ends.
    assert len(speaker.leant) == pytest.approx(60, abs=1)


def test_balance_by_ear_is_chosen_in_the_dialog_and_kept(pilot: Any):
    pilot.press("looks")
    pilot.press("setting-balance_by_ear.True")
    assert pilot.lab.house.settings.balance_by_ear
    assert load_settings(pilot.lab.house.paths.settings).settings.balance_by_ear
    pilot.press("setting-balance_by_ear.False")
    assert not pilot.lab.house.settings.balance_by_ear
