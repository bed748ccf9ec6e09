"""How fast frames are drawn, and how still the lab is at rest."""

from __future__ import annotations

import os
import tempfile
import time
from collections.abc import Sequence
from pathlib import Path

from lab.app.laboratory import Laboratory
from lab.app.loop import FRAME_NS, DrawnCanvas, Loop, Window
from lab.app.paths import find_paths
from lab.app.record import Record
from lab.app.settings import load_settings
from lab.figures.rows import Row, row
from lab.figures.timing import Work, medians_s
from lab.outline.words import Words
from lab.screens.benches.screen import FreeBuildScreen
from lab.screens.screen import BuildModel, Setting
from lab.simulation import Hang, HangingBar, HoldStill, LetGo, MovePivot, Session
from lab.simulation.benches.bar_builds import empty_bar
from lab.ui.events import Event, Quit
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.sizes import Sizes
from lab.ui.theme import THEMES

SIZE = (1280, 720)
#: The bar as it is drawn at that size, in pixels.
BAR_PX = (780, 26)
MOST_PARTS, FEW_PARTS = 40, 4
#: A swing to both sides and back.
FRAMES, QUICK_FRAMES = 240, 60
REST_S, QUICK_REST_S = 5.0, 1.0
SHARE_OF_A_CORE = 0.01


class SwingingScreen:
    """Free build with all its numbers shown, its bar swinging; every call is one frame, the flip left out."""

    def __init__(self, parts: int) -> None:
        """parts: weights on the bar, spread out evenly."""
        from lab.ui.pygame_canvas import PygameCanvas

        self._session = Session(empty_bar(view="all"))
        for number in range(parts):
            self._session.do(Hang(0.05 + 0.05 * (number % 4), (number + 0.5) / parts))
        self._session.do(MovePivot(0.45))
        look = Look(theme=THEMES["paper"], sizes=Sizes(*SIZE), words=Words())
        self._screen = FreeBuildScreen(look)
        self._canvas = PygameCanvas(SIZE)
        self()

    def __call__(self) -> None:
        """One frame: time passes, the new state is shown, drawn and painted."""
        session = self._session
        if not session.moving:
            # At rest nothing would be drawn: it is held level and let go once more.
            session.do(HoldStill())
            session.do(LetGo())
        session.advance(FRAME_NS)
        bench, previous = session.state, session.previous
        if not isinstance(bench, HangingBar) or not isinstance(previous, HangingBar):
            raise TypeError("free build shows a hanging bar")
        model = BuildModel(
            setting=Setting(),
            bench=bench,
            previous=previous,
            fraction=session.fraction,
        )
        self._screen.show(model)
        self._canvas.clear()
        self._screen.draw(self._canvas)
        self._canvas.paint()


def drawing_rows(*, quick: bool = False) -> tuple[Row, ...]:
    """A busy frame beside single operations of pygame, and its growth with the number of parts."""
    from lab.ui.pygame_yardsticks import full_blit, turned_bar

    works: tuple[Work, ...] = (
        SwingingScreen(MOST_PARTS),
        SwingingScreen(FEW_PARTS),
        full_blit(SIZE),
        turned_bar(BAR_PX, 10.0),
    )
    busy_s, small_s, blit_s, turned_s = medians_s(works, rounds=QUICK_FRAMES if quick else FRAMES)
    times = MOST_PARTS / FEW_PARTS
    return (
        row("busy frame, 40 parts", busy_s, blit_s, goal=20.0, beside="one opaque full-screen blit"),
        row("busy frame, 40 parts", busy_s, turned_s, goal=float("inf"), beside="one rotozoom of the same bar"),
        row("busy frame, 40 parts", busy_s, times * small_s, goal=1.0, beside="ten busy frames of 4 parts"),
    )


def rest_rows(*, quick: bool = False) -> tuple[Row, ...]:
    """What the start screen costs while nobody touches it."""
    os.environ.setdefault("SDL_VIDEODRIVER", "dummy")
    from lab.ui import pygame_window
    from lab.ui.pygame_yardsticks import wait_for_events

    seconds = QUICK_REST_S if quick else REST_S
    window = pygame_window.Window("Tiltbench", size=SIZE)
    with tempfile.TemporaryDirectory() as home:
        paths = find_paths({"TILTBENCH_HOME": home})
        settings = load_settings(Path(home, "none")).settings
        laboratory = Laboratory(paths=paths, settings=settings, record=Record(paths.record), size=window.size)
        loop = Loop(laboratory, _ClosedLater(window, seconds))
        loop.show()
        ours = _share(lambda: _go_on(loop, laboratory))
    waiting = _share(lambda: wait_for_events(round(seconds * 1000)))
    window.close()
    return (
        row("at rest: pictures drawn after the first", loop.drawn - 1, 1.0, goal=0.0, unit="pictures", beside="one"),
        row("at rest: share of a core", ours, SHARE_OF_A_CORE, goal=1.0, unit="s/s", beside="one hundredth of a core"),
        row("at rest: share of a core", ours, waiting, goal=1.0, unit="s/s", beside="a loop that waits for events"),
    )


class _ClosedLater:
    """A window that somebody closes after a while, and otherwise leaves alone."""

    def __init__(self, window: Window, seconds: float) -> None:
        self._window = window
        self._until = time.monotonic() + seconds

    @property
    def canvas(self) -> DrawnCanvas:
        return self._window.canvas

    def events(self) -> Sequence[Event]:
        closed = (Quit(),) if time.monotonic() > self._until else ()
        return (*self._window.events(), *closed)

    def present(self, rects: Sequence[Rect]) -> None:
        self._window.present(rects)


def _go_on(loop: Loop, laboratory: Laboratory) -> None:
    while not laboratory.finished:
        loop.frame()


def _share(work: Work) -> float:
    """Processor time over time passed."""
    cpu_s, started = time.process_time(), time.monotonic()
    work()
    return (time.process_time() - cpu_s) / (time.monotonic() - started)
