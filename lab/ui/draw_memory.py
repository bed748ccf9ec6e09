"""Operations of widgets that look as they did in the frame before: recorded once, put down again."""

from collections.abc import Hashable

from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.list_canvas import ListCanvas
from lab.ui.look import Look
from lab.ui.ops import Op
from lab.ui.widgets.picture import Picture
from lab.ui.widgets.widget import Mood, Widget

MOST_WIDGETS = 512


class DrawMemory:
    """What widgets drew, by the widget itself, its place and the mood. Pictures move and are always drawn."""

    def __init__(self) -> None:
        # Each widget is kept with what it drew: its id stays its own for as long.
        self._known: dict[Hashable, tuple[Widget, tuple[Op, ...]]] = {}

    def forget(self) -> None:
        """Forgets all: another look."""
        self._known.clear()

    def draw(
        self, canvas: Canvas, look: Look, widget: Widget, rect: Rect, mood: Mood, *, clip: Rect | None = None
    ) -> None:
        """Draws a widget, from memory if it is known."""
        if isinstance(widget, Picture) or not isinstance(canvas, ListCanvas):
            widget.draw(canvas, look, rect, mood)
            return
        key = (id(widget), rect, clip, mood)
        known = self._known.get(key)
        if known is not None:
            canvas.again(known[1])
            return
        start = len(canvas.ops)
        widget.draw(canvas, look, rect, mood)
        if len(self._known) >= MOST_WIDGETS:
            self._known.clear()
        self._known[key] = (widget, tuple(canvas.ops[start:]))
