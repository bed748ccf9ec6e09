"""Every test in a folder of its own, with no display, no sound and no clock of its own.

And the pilot: it plays the lab as a person does, by widget key, without a window and without waiting.
"""

import os
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from hypothesis import settings

from lab.attempts import Attempt, AttemptStore
from lab.outline.node import Node, find, walk
from lab.ui.events import Key, PointerDown, PointerMove, PointerUp, Wheel
from lab.ui.list_canvas import ListCanvas

if TYPE_CHECKING:
    from lab.app.settings import Settings

# Before anything imports pygame: it looks at these when it starts.
os.environ.setdefault("SDL_VIDEODRIVER", "dummy")
os.environ.setdefault("SDL_AUDIODRIVER", "dummy")
os.environ.setdefault("PYGAME_HIDE_SUPPORT_PROMPT", "1")

# No deadlines: a busy machine is no fault of the code.  The same examples every time: a failure that is
# found must be found again.
settings.register_profile("repeatable", deadline=None, derandomize=True, database=None)
settings.load_profile("repeatable")


@pytest.fixture(autouse=True)
def _own_home(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> Path:
    """No test reads or writes the data folder of whoever runs it."""
    home = tmp_path_factory.mktemp("home")
    monkeypatch.setenv("TILTBENCH_HOME", str(home))
    return home


FRAME_NS = 1_000_000_000 // 60


class Pilot:
    """Somebody at the lab: presses, drags and types, and watches time pass as fast as it can be computed."""

    def __init__(self, *, size: tuple[int, int] = (1280, 720), settings: "Settings | None" = None) -> None:
        # Here and not at the top: most tests need no screen, and should not wait for one to load.
        from lab.app.laboratory import Laboratory
        from lab.app.paths import find_paths
        from lab.app.record import Record
        from lab.app.settings import load_settings

        self.paths = find_paths()
        self.now_ns = 1_000_000_000
        self.lab = Laboratory(
            paths=self.paths,
            settings=settings or load_settings(self.paths.settings).settings,
            record=Record(self.paths.record),
            size=size,
            now_ns=self.now_ns,
            fresh_seed=lambda: 4711,
        )

    @property
    def outline(self) -> Node:
        """What is on the screen."""
        return self.lab.outline()

    def node(self, key: str) -> Node:
        """One thing on the screen."""
        node = find(self.outline, key)
        if node is None:
            raise AssertionError(f"no {key} on the screen; there are {[each.key for each in walk(self.outline)]}")
        return node

    def has(self, key: str) -> bool:
        """Whether a thing is on the screen."""
        return find(self.outline, key) is not None

    def says(self, text: str) -> bool:
        """Whether the screen says this anywhere."""
        return any(text in node.name or text in node.value for node in walk(self.outline))

    def middle(self, key: str) -> tuple[float, float]:
        """Where a thing is pressed."""
        x, y, width, height = self.node(key).bounds
        return x + width / 2, y + height / 2

    def press(self, key: str) -> None:
        """Tap or click a thing, scrolled into sight first."""
        self.scroll_to(key)
        self.tap(*self.middle(key))

    def scroll_to(self, key: str) -> None:
        """Turn the wheel over whatever scrolls until a thing in it is in sight."""
        scrolls = [node for node in walk(self.outline) if "scroll" in node.actions and find(node, key) is not None]
        for scroll in scrolls:
            x, y, width, height = scroll.bounds
            for _ in range(60):
                middle = self.middle(key)[1]
                if y <= middle <= y + height:
                    break
                self.lab.handle(Wheel(x + width / 2, y + height / 2, -1.0 if middle > y else 1.0))

    def tap(self, x: float, y: float) -> None:
        """Tap or click a place.  Half a second later: taps in quick succession count as one."""
        self.wait(0.5)
        self.lab.handle(PointerDown(0, x, y, self.now_ns // 1_000_000))
        self.lab.handle(PointerUp(0, x, y, self.now_ns // 1_000_000))

    def drag(self, start: tuple[float, float], end: tuple[float, float], *, steps: int = 8) -> None:
        """Take something in hand, carry it and put it down."""
        self.lab.handle(PointerDown(0, *start))
        for step in range(1, steps + 1):
            share = step / steps
            self.lab.handle(
                PointerMove(0, start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1]))
            )
            self.wait(1 / 60)
        self.lab.handle(PointerUp(0, *end))

    def key(self, name: str, *, times: int = 1, shift: bool = False, ctrl: bool = False) -> None:
        """Press a key."""
        for _ in range(times):
            self.lab.handle(Key(name, shift=shift, ctrl=ctrl))

    def tab_to(self, key: str, *, most: int = 80) -> None:
        """Press Tab until a thing has the focus."""
        for _ in range(most):
            if "focused" in self.node(key).state:
                return
            self.key("tab")
        raise AssertionError(f"Tab never reaches {key}")

    def wait(self, seconds: float) -> None:
        """Let time pass, a frame after the other."""
        until_ns = self.now_ns + round(seconds * 1_000_000_000)
        while self.now_ns < until_ns:
            self.now_ns += FRAME_NS
            self.lab.turn(self.now_ns)

    def draw(self) -> ListCanvas:
        """Draw the screen, on a list."""
        canvas = ListCanvas(self.lab.size)
        self.lab.draw(canvas)
        return canvas

    def attempts(self) -> tuple[Attempt, ...]:
        """What has been kept."""
        with AttemptStore.open(self.paths.record) as store:
            return store.attempts()


@pytest.fixture
def make_pilot() -> type[Pilot]:
    return Pilot


@pytest.fixture
def pilot() -> Pilot:
    return Pilot()
