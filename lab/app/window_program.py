"""The lab in its window."""

from __future__ import annotations

import gc
import os
import sys
from collections.abc import Callable, Iterator, Mapping, MutableMapping
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

from lab.app.console import Console, Stopped
from lab.app.kept import kept_settings, say_what_is_left
from lab.app.paths import Paths, find_paths
from lab.app.record import Record
from lab.app.settings import load_settings

if TYPE_CHECKING:
    from lab.app.laboratory import Laboratory
    from lab.ui.pygame_sound import Speaker

#: Drivers that SDL falls back to where there is no display: they open windows that nobody can see.
BLIND_DRIVERS = ("offscreen", "dummy")


class NoDisplayError(Exception):
    """No window can be opened here.  Its text says why."""


def window_or_lines(console: Console, *, window: Callable[[], int], lines: Callable[[], None], from_pipe: str) -> int:
    """Open a window, or do the same in plain lines where there is no display; returns the exit code.

    from_pipe: the command that takes answers from a pipe.  Raises Stopped where there is no terminal either.
    """
    try:
        return window()
    except NoDisplayError as error:
        why = str(error)
    say = console.words.say
    if not console.has_terminal:
        no_way = say(
            "tiltbench: there is no display ({why}) and no terminal; `{command}` takes answers from a pipe",
            why=why,
            command=from_pipe,
        )
        raise Stopped(no_way, code=2)
    console.talk(say("There is no display ({why}), so this runs in the terminal.", why=why))
    lines()
    return 0


def open_window(
    paths: Paths,
    console: Console,
    *,
    lesson: Path | None = None,
    build: Path | None = None,
    probe: bool = False,
    seed: int | None = None,
) -> int:
    """Run the lab in a window until it is closed; returns the exit code.

    lesson, build, probe: what to open instead of the start screen.  Raises NoDisplayError before anything is shown.
    """
    ask_for_display(os.environ, sys.platform)
    _quieten(os.environ, sys.platform)
    # Loaded only where there is a display to use it on.
    with loading():
        from lab.app.laboratory import Laboratory
        from lab.app.loop import Loop
        from lab.ui.pygame_sound import Speaker
        from lab.ui.pygame_window import NoDisplay, Window

    try:
        window = Window("Tiltbench")
    except NoDisplay as error:
        raise NoDisplayError(str(error)) from error
    speaker = Speaker()
    try:
        if window.driver in BLIND_DRIVERS:
            raise NoDisplayError(console.words.say("the display does not answer"))
        for notice in window.notices:
            console.talk(console.words.say(notice.template, **notice.values))
        settings = kept_settings(console, paths)
        record = Record(paths.record)
        laboratory = Laboratory(paths=paths, settings=settings, record=record, size=window.size)
        _enter(laboratory, lesson=lesson, build=build, probe=probe, seed=seed)
        run_safely(Loop(laboratory, window, speaker=speaker).run, laboratory.close)
        _say_how_it_sounded(speaker, console)
        say_what_is_left(record, console)
    finally:
        speaker.close()
        window.close()
    return 0


def _enter(laboratory: Laboratory, *, lesson: Path | None, build: Path | None, probe: bool, seed: int | None) -> None:
    """Go to what the command names; to nothing else than the start screen where it names nothing."""
    if lesson is not None:
        laboratory.open_lesson(str(lesson), seed=seed)
    elif build is not None:
        laboratory.open_build(build)
    elif probe:
        laboratory.open_probe(seed=seed)


def _say_how_it_sounded(speaker: Speaker, console: Console) -> None:
    """The system's own words for a sound device that failed: of use to staff, not to a learner."""
    if speaker.trouble:
        console.talk(console.words.say("There was no sound: {why}", why=speaker.trouble))


def show_first_picture() -> None:
    """Open the window, on whatever display there is, show the start screen once, and close it."""
    with loading():
        from lab.app.laboratory import Laboratory
        from lab.app.loop import Loop
        from lab.ui.pygame_window import Window

    paths = find_paths()
    window = Window("Tiltbench")
    settings = load_settings(paths.settings).settings
    Loop(Laboratory(paths=paths, settings=settings, record=Record(paths.record), size=window.size), window).show()
    window.close()


@contextmanager
def loading() -> Iterator[None]:
    """For what is loaded once and stays: the garbage collector does not look through it, neither now nor later."""
    gc.disable()
    try:
        yield
    finally:
        gc.freeze()
        gc.enable()


def ask_for_display(environment: Mapping[str, str], platform: str) -> None:
    """Find out whether there is a display, before anything is loaded.  Raises NoDisplayError where there is none."""
    if environment.get("SDL_VIDEODRIVER", "") in BLIND_DRIVERS:
        raise NoDisplayError(f"SDL_VIDEODRIVER is {environment['SDL_VIDEODRIVER']}")
    if platform.startswith(("win", "darwin")) or environment.get("SDL_VIDEODRIVER"):
        return
    if not environment.get("DISPLAY") and not environment.get("WAYLAND_DISPLAY"):
        raise NoDisplayError("neither DISPLAY nor WAYLAND_DISPLAY is set")


def _quieten(environment: MutableMapping[str, str], platform: str) -> None:
    """Keep the libraries below from writing lines of their own."""
    environment.setdefault("PYGAME_HIDE_SUPPORT_PROMPT", "1")
    # Where X does not answer, SDL would go on to try Wayland, whose library complains on standard error.
    if platform.startswith("linux") and environment.get("DISPLAY") and not environment.get("WAYLAND_DISPLAY"):
        environment.setdefault("SDL_VIDEODRIVER", "x11")


def run_safely(run: Callable[[], None], close: Callable[[], None]) -> None:
    """Run, and keep what is to be kept however that ends."""
    try:
        run()
    except BaseException:
        close()
        raise
