"""The whole lab played without a window: places, settings, notices, and what is kept."""

import json
from pathlib import Path
from typing import Any

import pytest

from lab.app.paths import find_paths
from lab.app.settings import load_settings
from lab.attempts import valid_code
from lab.outline.node import walk
from lab.simulation.benches.catalogue import BENCHES
from lab.ui.events import Exposed, FileDropped, PointerDown, PointerUp, Quit, Resized

BUILDS = find_paths().shipped_builds


def test_it_opens_at_the_start_screen_with_a_bar_to_let_go(pilot: Any):
    assert pilot.has("let-go")
    assert not pilot.lab.moving
    pilot.press("let-go")
    assert pilot.lab.moving
    pilot.wait(15.0)
    assert not pilot.lab.moving
    assert pilot.says("dropped")


def test_from_the_start_screen_one_reaches_lessons_and_free_build_and_comes_back(pilot: Any):
    for place in ("to-lessons", "to-build"):
        pilot.press(place)
        assert not pilot.has(place)
        pilot.press("back")
        assert pilot.has(place)


def test_the_list_of_builds_can_be_opened_from_the_start_screen(pilot: Any):
    pilot.press("to-saved")
    assert any(node.role == "dialog" for node in walk(pilot.outline))
    assert pilot.says("Survey bar")


def test_a_lesson_is_taken_by_pointer_and_its_answer_kept(pilot: Any):
    pilot.press("to-lessons")
    pilot.press("lesson-lopsided-tool")
    assert pilot.says("boat hook") or pilot.says("Boat hook")
    pilot.drag(pilot.middle("finger"), (pilot.middle("finger")[0] - 120, pilot.middle("finger")[1]))
    pilot.press("sure.certain")
    pilot.press("lock")
    (attempt,) = pilot.attempts()
    assert attempt.locked
    assert attempt.sure == "certain"
    assert (attempt.lesson, attempt.question, attempt.seed) == ("lopsided-tool", "boat-hook", 4711)
    assert valid_code(attempt.learner)
    pilot.wait(10.0)
    pilot.press("next")
    assert pilot.says("2")


def test_a_window_closed_mid_question_keeps_the_answer_so_far(pilot: Any):
    pilot.lab.open_lesson("lopsided-tool", seed=5)
    pilot.drag(pilot.middle("finger"), (pilot.middle("finger")[0] - 100, pilot.middle("finger")[1]))
    pilot.wait(2.0)
    pilot.lab.handle(Quit())
    assert pilot.lab.finished
    (attempt,) = pilot.attempts()
    assert (attempt.locked, attempt.sure, attempt.seed) == (False, None, 5)
    # Two seconds were waited, and a little passed during the drag.
    assert 2.0 <= attempt.seconds < 3.0


def test_going_back_mid_question_keeps_the_answer_so_far(pilot: Any):
    pilot.lab.open_lesson("lopsided-tool")
    pilot.drag(pilot.middle("finger"), (pilot.middle("finger")[0] - 100, pilot.middle("finger")[1]))
    pilot.press("back")
    assert pilot.has("lesson-lopsided-tool")
    (attempt,) = pilot.attempts()
    assert not attempt.locked


def test_an_answer_that_cannot_be_saved_says_so_and_is_saved_on_retry(pilot: Any):
    home = pilot.paths.home
    home.rmdir()
    home.write_text("a file where the folder should be")
    pilot.lab.open_lesson("lopsided-tool")
    pilot.drag(pilot.middle("finger"), (pilot.middle("finger")[0] - 100, pilot.middle("finger")[1]))
    pilot.press("sure.guess")
    pilot.press("lock")
    assert pilot.says("not saved yet")
    pilot.wait(30.0)
    assert pilot.says("not saved yet"), "trouble does not go by itself"
    pilot.press("notice-retry")
    assert pilot.says("not saved yet")
    home.unlink()
    pilot.press("notice-retry")
    assert not pilot.says("not saved yet")
    assert len(pilot.attempts()) == 1


def test_an_answer_that_could_not_be_saved_is_tried_again_when_the_lab_closes(pilot: Any):
    home = pilot.paths.home
    home.rmdir()
    home.write_text("in the way")
    pilot.lab.open_lesson("lopsided-tool")
    pilot.drag(pilot.middle("finger"), (pilot.middle("finger")[0] - 100, pilot.middle("finger")[1]))
    pilot.press("sure.guess")
    pilot.press("lock")
    home.unlink()
    pilot.lab.handle(Quit())
    assert len(pilot.attempts()) == 1


def test_a_setting_is_kept_and_the_screen_follows(pilot: Any):
    before = pilot.node("to-build").bounds
    pilot.press("looks")
    pilot.press("setting-text_scale.2.0")
    pilot.press("looks-done")
    assert pilot.node("to-build").bounds != before
    assert load_settings(pilot.paths.settings).settings.text_scale == 2.0
    assert json.loads(pilot.paths.settings.read_text())["learner"] == pilot.lab.house.settings.learner


def test_a_new_window_size_is_taken(pilot: Any):
    assert pilot.lab.handle(Resized(1080, 1920))
    assert pilot.outline.bounds[2:] == (1080, 1920)
    assert pilot.draw().size == (1080, 1920)


def test_an_exposed_window_is_drawn_again_and_a_quiet_one_is_not(pilot: Any):
    assert pilot.lab.handle(Exposed())
    assert not pilot.lab.turn(pilot.now_ns + 10_000_000_000)


def test_a_build_file_dropped_on_the_window_is_opened(pilot: Any):
    pilot.lab.handle(FileDropped(BUILDS / "kite-spar.toml"))
    assert pilot.says("Kite spar")


def test_a_file_that_cannot_be_opened_is_said_and_the_notice_goes_by_itself(pilot: Any, tmp_path: Path):
    (tmp_path / "bad.toml").write_text("weight = = 3")
    pilot.lab.handle(FileDropped(tmp_path / "bad.toml"))
    assert pilot.says("bad.toml")
    assert pilot.lab.wake_at_ns is not None
    pilot.wait(7.0)
    assert not pilot.says("bad.toml")
    assert pilot.lab.wake_at_ns is None


@pytest.mark.parametrize("name", BENCHES)
def test_what_is_built_is_kept_by_itself_when_nobody_touches_anything_more(name: str, pilot: Any):
    pilot.press("to-build")
    pilot.press("benches")
    pilot.press(f"bench-{name}" if name != "bar" else "benches-done")
    assert pilot.lab.wake_at_ns is None  # nothing has been built yet
    x, y = pilot.middle("view.numbers")
    pilot.lab.handle(PointerDown(0, x, y))
    pilot.lab.handle(PointerUp(0, x, y))
    # The window sleeps until this very moment: then what was built must be on the disk, whatever happens next.
    asleep_until_ns = pilot.lab.wake_at_ns
    assert asleep_until_ns is not None
    assert asleep_until_ns - pilot.now_ns <= 1_000_000_000
    pilot.lab.turn(asleep_until_ns)
    assert pilot.lab.wake_at_ns is None
    left = pilot.paths.builds / f".left-{name}.toml"
    assert 'view = "numbers"' in left.read_text(encoding="utf-8")


def test_a_lesson_that_is_not_there_leaves_one_where_one_is(pilot: Any):
    pilot.lab.open_lesson("no-such-lesson")
    assert pilot.has("to-lessons")
    assert pilot.says("no-such-lesson")


def test_a_weight_hung_in_free_build_can_be_saved_and_opened_again(pilot: Any):
    pilot.press("to-build")
    pilot.press("tray.100") if pilot.has("tray.100") else pilot.key("tab")
    pilot.press("builds")
    pilot.press("build-save")
    saved = list(pilot.paths.builds.glob("*.toml"))
    assert len(saved) == 1
    assert pilot.says(saved[0].name)


@pytest.mark.parametrize("size", [(1024, 600), (1280, 720), (1080, 1920), (3840, 2160)])
def test_every_place_can_be_drawn_at_every_size(size: tuple[int, int], make_pilot: Any):
    pilot = make_pilot(size=size)
    for place in ("", "to-lessons", "to-build"):
        if place:
            pilot.press(place)
        assert pilot.draw().ops
        if place:
            pilot.press("back")
    pilot.lab.open_lesson("")
    assert pilot.draw().ops
