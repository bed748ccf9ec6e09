"""The one window: opened once, its events read, its changed rectangles shown."""

import time
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import NamedTuple

import pygame

from lab.outline import msg
from lab.ui.events import Event, Exposed, Resized
from lab.ui.geometry import Rect
from lab.ui.pygame_canvas import PygameCanvas
from lab.ui.pygame_events import EventReader

USUAL_SIZE = (1280, 720)
# A window larger than this share of the desktop would hide its own frame.
_DESKTOP_SHARE = 0.94
_REPEAT_AFTER_MS, _REPEAT_MS = 400, 60


class NoDisplay(RuntimeError):  # noqa: N818 - it names what is missing
    """There is no display to open a window on."""


class Notice(NamedTuple):
    """Something staff should know: a template for words.say, and its values."""

    template: str
    values: Mapping[str, str]


class Window:
    """An open window with the canvas that is shown in it.

    Each frame: read `events`, draw on `canvas` after clear(), then present(canvas.paint()).
    """

    def __init__(
        self,
        title: str,
        *,
        size: tuple[int, int] = USUAL_SIZE,
        full_screen: bool = False,
        px_per_mm: float | None = None,
        fonts: Path | None = None,
    ) -> None:
        """size: wanted; made smaller where the desktop is.  full_screen: the whole first screen, at its own size.

        fonts: the assets folder, where it is not the shipped one.  Raises NoDisplay where there is none.
        """
        try:
            pygame.display.init()
            flags, size = _mode(size, full_screen=full_screen)
            self._screen = pygame.display.set_mode(size, flags)
        except pygame.error as error:
            raise NoDisplay(f"no window can be opened: {error}") from error
        pygame.font.init()
        pygame.display.set_caption(title)
        pygame.key.set_repeat(_REPEAT_AFTER_MS, _REPEAT_MS)
        self._reader = EventReader(px_per_mm=px_per_mm)
        self.canvas = PygameCanvas(self._screen.get_size(), fonts=fonts)
        missing = self.canvas.painter.texts.missing
        self.notices = tuple(
            Notice(msg("The font {file} is missing; another one is shown."), {"file": file.name}) for file in missing
        )

    @property
    def size(self) -> tuple[int, int]:
        """Width and height in pixels."""
        return self.canvas.size

    @property
    def driver(self) -> str:
        """What shows the window: "x11", "wayland", "windows"; "offscreen" and "dummy" show it to nobody."""
        return pygame.display.get_driver()

    def events(self, *, wait_ms: int = 0) -> list[Event]:
        """What happened since the last call; waits up to wait_ms for something to happen."""
        first = [pygame.event.wait(wait_ms)] if wait_ms > 0 else []
        read: list[Event] = []
        for event in (*first, *pygame.event.get()):
            read.extend(self._reader.read(event, size=self.size, now_ms=time.monotonic_ns() // 1_000_000))
        resized = [event for event in read if isinstance(event, Resized)]
        if resized:
            self._resize()
            read = [event for event in read if not isinstance(event, Resized)]
            read.append(Resized(*self.size))
        if any(isinstance(event, Exposed) for event in read):
            self.present([Rect(0.0, 0.0, *self.size)])
        return read

    def present(self, rects: Sequence[Rect]) -> None:
        """Shows rectangles of the canvas. Does nothing for none."""
        if not rects:
            return
        areas = [pygame.Rect(*map(round, rect)) for rect in rects]
        for area in areas:
            self._screen.blit(self.canvas.surface, area, area)
        pygame.display.update(areas)

    def close(self) -> None:
        """Closes the window."""
        pygame.display.quit()

    def _resize(self) -> None:
        screen = pygame.display.get_surface()
        if screen is not None and screen.get_size() != self.size:
            self._screen = screen
            self.canvas = self.canvas.resized(screen.get_size())


def _mode(size: tuple[int, int], *, full_screen: bool) -> tuple[int, tuple[int, int]]:
    """(flags, size): SCALED at exactly the desktop's size scales nothing, and is desktop full screen."""
    desktop = pygame.display.get_desktop_sizes()[0]
    if full_screen:
        return pygame.FULLSCREEN | pygame.SCALED, desktop
    width, height = (min(wanted, int(there * _DESKTOP_SHARE)) for wanted, there in zip(size, desktop, strict=True))
    return pygame.RESIZABLE, (width, height)
