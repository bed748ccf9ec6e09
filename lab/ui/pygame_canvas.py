"""A canvas on one opaque surface that repaints only what changed since the last frame."""

from collections.abc import Sequence
from pathlib import Path

import pygame

from lab.ui.damage import changed_rects, first_needed
from lab.ui.geometry import Rect
from lab.ui.list_canvas import ListCanvas
from lab.ui.ops import Op
from lab.ui.pygame_painter import Painter

GROUND = "#F5F1E8"
# Above this share of the window, several rectangles cost more than the whole at once.
_WHOLE_SHARE = 0.7


class PygameCanvas(ListCanvas):
    """Collects a frame's operations; `paint` brings the surface up to date.

    Each frame: clear(), draw everything, paint().
    """

    def __init__(self, size: tuple[int, int], *, fonts: Path | None = None, painter: Painter | None = None) -> None:
        """size: in pixels.  fonts: the assets folder, where not the shipped one.  painter: to share its sprites."""
        super().__init__(size)
        self.painter = painter if painter is not None else Painter(fonts=fonts)
        self.surface = pygame.Surface(self.size, 0, 32)
        self._shown: Sequence[Op] | None = None

    def resized(self, size: tuple[int, int]) -> "PygameCanvas":
        """A canvas of another size with the same sprites."""
        return PygameCanvas(size, painter=self.painter)

    def forget(self) -> None:
        """Paints everything next time, for what was shown is lost."""
        self._shown = None

    def paint(self) -> list[Rect]:
        """Paints what differs from the last time.  Returns the rectangles that changed; none if nothing did."""
        window = Rect(0.0, 0.0, *self.size)
        if self._shown is None:
            rects = [window]
        else:
            rects = changed_rects(self._shown, self.ops, window)
            if sum(rect.area for rect in rects) > _WHOLE_SHARE * window.area:
                rects = [window]
        for rect in rects:
            start = first_needed(self.ops, rect)
            if start == 0:
                self.surface.fill(GROUND, pygame.Rect(*map(round, rect)))
            self.painter.paint(self.ops[start:], self.surface, rect)
        self._shown = self.ops
        return rects
