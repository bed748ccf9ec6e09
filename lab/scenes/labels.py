"""Labels in a picture: each steps aside to where it covers nothing."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from lab.ui.canvas import Anchor, Canvas
from lab.ui.geometry import Point, Rect
from lab.ui.metrics import CAP_HEIGHT, LINE_ASCENT, LINE_DESCENT

Spot = tuple[Point, Anchor]
_SIDE = {"left": 0.0, "center": 0.5, "right": 1.0}
_ABOVE = {
    "top": 0.0,
    "middle": LINE_ASCENT - CAP_HEIGHT / 2,
    "baseline": LINE_ASCENT,
    "bottom": LINE_ASCENT + LINE_DESCENT,
}
"""Of the text size: from the top of a line box down to its anchor."""

SPACE = 0.4
"""Of the text size: from one label to the next on the same line."""


def label_box(canvas: Canvas, text: str, spot: Spot, *, size: float, bold: bool = False) -> Rect:
    """The line box that a text would have at a spot."""
    wide, high = canvas.text_size(text, size=size, bold=bold)
    (x, y), anchor = spot
    side, level = anchor.split(" ")
    return Rect(x - _SIDE[side] * wide, y - _ABOVE[level] * size, wide, high)


class LabelBoard:
    """Remembers which places of a picture are taken while it is being drawn."""

    def __init__(self, canvas: Canvas, frame: Rect) -> None:
        """canvas: what labels are drawn on.  frame: what none may leave."""
        self._canvas = canvas
        self._frame = frame
        # As (left, top, right, bottom): asked for many thousand times while forty weights swing.
        self._taken: list[tuple[float, float, float, float]] = []

    def keep_clear(self, rects: Iterable[Rect]) -> None:
        """Let no label cover these."""
        self._taken.extend((rect.x, rect.y, rect.x + rect.w, rect.y + rect.h) for rect in rects)

    def free(self, box: Rect) -> bool:
        """Whether a label may lie here."""
        if not self._frame.holds(box, 1.0):
            return False
        left, top, right, bottom = box.x, box.y, box.x + box.w, box.y + box.h
        for x, y, far_x, far_y in self._taken:
            if left < far_x and x < right and top < far_y and y < bottom:
                return False
        return True

    def place_one_of(
        self, texts: Sequence[str], spots: Sequence[Spot], *, sizes: Sequence[float], color: str, bold: bool = False
    ) -> Rect | None:
        """Draw the first of several ways to say it that finds a free spot: longer and larger ones come first."""
        for text in texts:
            for size in sizes:
                box = self.place(text, spots, size=size, color=color, bold=bold)
                if box is not None:
                    return box
        return None

    def place(
        self,
        text: str,
        spots: Sequence[Spot],
        *,
        size: float,
        color: str,
        bold: bool = False,
        ground: str | None = None,
    ) -> Rect | None:
        """Draw a label at the first spot that is free; nowhere, and None returned, if there is none.

        ground: fills the label's box first, for labels that lie on lines or hatching.
        """
        for spot in spots:
            box = label_box(self._canvas, text, spot, size=size, bold=bold)
            if not self.free(box):
                continue
            if ground is not None:
                self._canvas.box(box, fill=ground, radius=4.0)
            self._canvas.text(text, spot[0], size=size, color=color, bold=bold, anchor=spot[1])
            # Two labels side by side are read as one where no space parts them.
            space = SPACE * size
            self.keep_clear([Rect(box.x - space, box.y, box.w + 2 * space, box.h)])
            return box
        return None
