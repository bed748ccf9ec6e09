"""The lab on a machine without a display: lessons chosen and played in plain lines."""

import argparse
import io
from pathlib import Path
from typing import Any

import pytest

from lab.app.commands import lessons, opening
from lab.app.console import Console, Stopped
from lab.app.paths import find_paths
from lab.app.terminal_menu import choose_lessons
from lab.attempts import AttemptStore
from lab.files import read_build


class Terminal(io.StringIO):
    """Somebody typing."""

    def isatty(self) -> bool:
        return True


def _console(*lines: str) -> Console:
    return Console(stdin=Terminal("".join(line + "\n" for line in lines)), stdout=io.StringIO(), stderr=io.StringIO())


def _said(console: Console) -> str:
    assert isinstance(console.stdout, io.StringIO)
    return console.stdout.getvalue()


def _talk(console: Console) -> str:
    assert isinstance(console.stderr, io.StringIO)
    return console.stderr.getvalue()


@pytest.fixture
def _no_display(monkeypatch: pytest.MonkeyPatch) -> None:
    for name in ("DISPLAY", "WAYLAND_DISPLAY"):
        monkeypatch.delenv(name, raising=False)


def _attempts() -> list[str]:
    with AttemptStore.open(find_paths().record) as store:
        return [attempt.lesson for attempt in store.attempts()]


@pytest.mark.parametrize("choice", ["2", "lopsided-tool", "lop", "LOPSIDED"])
def test_a_lesson_is_chosen_by_number_or_name_and_its_answers_are_kept(choice: str):
    console = _console(choice, "9.6", "fairly", "quit", "quit")
    choose_lessons(console, find_paths())
    assert "4.0 cm too far right" in _said(console)
    assert _attempts() == ["lopsided-tool"]


def test_a_name_that_is_none_is_answered_and_asked_again():
    console = _console("singing", "0", "", "quit")
    choose_lessons(console, find_paths())
    assert "singing" in _said(console)
    assert _said(console).count("which lesson") == 4


def test_the_end_of_input_leaves():
    choose_lessons(_console(), find_paths())


@pytest.mark.usefixtures("_no_display")
def test_without_a_display_the_lab_says_so_in_one_line_and_runs_in_the_terminal():
    console = _console("1", "quit", "quit")
    assert opening.run(argparse.Namespace(command=None), console, find_paths()) == 0
    assert _talk(console).count("\n") == 1
    assert "display" in _talk(console)
    assert "one-finger" in _said(console)


@pytest.mark.usefixtures("_no_display")
def test_without_a_display_a_lesson_is_played_in_the_terminal():
    console = _console("quit")
    args = argparse.Namespace(lesson="one-finger", page=False, text=False, learner=None, seed=4711)
    assert lessons.run(args, console, find_paths()) == 0
    assert "seed 4711" in _said(console)


@pytest.mark.usefixtures("_no_display")
def test_without_a_display_a_build_is_answered_with_its_sum():
    console = _console()
    build = find_paths().shipped_builds / "kite-spar.toml"
    assert opening.run(argparse.Namespace(command="open", file=str(build)), console, find_paths()) == 0
    assert "0.90 m" in _said(console)


def test_a_build_with_faults_is_not_opened(tmp_path: Path):
    (tmp_path / "bad.toml").write_text("weight = = 3")
    with pytest.raises(Stopped, match=r"bad\.toml:1"):
        opening.run(argparse.Namespace(command="open", file=str(tmp_path / "bad.toml")), _console(), find_paths())


def test_a_build_for_no_bench_is_answered_with_what_can_be_done(tmp_path: Path):
    odd = tmp_path / "odd.toml"
    odd.write_text(
        'format = 1\ntitle = "Winged bar"\nunits = "g-cm"\nbar = { length = 90, weight = 100 }\n'
        'surface = [{ name = "wing", root_chord = 10, tip_chord = 8, span = 60, at = 0 }]\n'
    )
    with pytest.raises(Stopped, match="tiltbench sum"):
        opening.run(argparse.Namespace(command="open", file=str(odd)), _console(), find_paths())


@pytest.mark.parametrize("build", sorted(find_paths().shipped_builds.glob("*.toml")), ids=lambda path: path.stem)
def test_every_build_that_ships_opens_on_a_bench_or_is_refused_in_one_sentence(build: Path, make_pilot: Any):
    pilot = make_pilot()
    title = read_build(build).title
    try:
        opening.check_it_stands(build)
    except Stopped as why:
        (line,) = why.lines
        assert ".;" not in line
        assert "\n" not in line
    else:
        pilot.lab.open_build(build)
        assert pilot.says(title)


def test_the_same_learner_keeps_the_same_code():
    for _ in range(2):
        choose_lessons(_console("2", "9.6", "fairly", "quit", "quit"), find_paths())
    with AttemptStore.open(find_paths().record) as store:
        assert len({attempt.learner for attempt in store.attempts()}) == 1


def test_answers_that_cannot_be_saved_are_said_at_the_end():
    paths = find_paths()
    paths.home.rmdir()
    paths.home.write_text("in the way")
    console = _console("2", "9.6", "fairly", "quit", "quit")
    choose_lessons(console, paths)
    assert "could not be saved" in _said(console)
    assert "1 answer could not be saved" in _talk(console)
