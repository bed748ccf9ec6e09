"""A ground with a title on which other widgets stand."""

from dataclasses import dataclass

from lab.outline import Node
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.paragraph import draw_text, least_width, natural_width, text_height
from lab.ui.widgets.arrange import Column
from lab.ui.widgets.widget import Mood, Plain, Widget


def heading_beside(look: Look, title: str, note: str, width: float) -> bool:
    """Whether a title and its note fit on one line."""
    both = natural_width(look, title, "title") + natural_width(look, note, "small") + look.sizes.px(12)
    return both <= width


def heading_height(look: Look, title: str, note: str, width: float) -> float:
    """The height of a title with its note, beside or below; 0 where there is neither."""
    title_h = text_height(look, title, width, "title") if title else 0.0
    note_h = text_height(look, note, width, "small") if note else 0.0
    beside = title and note and heading_beside(look, title, note, width)
    return max(title_h, note_h) if beside else title_h + note_h


def draw_heading(canvas: Canvas, look: Look, title: str, note: str, rect: Rect) -> None:
    """Draws a title and, at the other side or below, its note."""
    taken = draw_text(canvas, look, title, rect, style="title") if title else rect.cut_top(0)[0]
    if not note:
        return
    if title and heading_beside(look, title, note, rect.w):
        drop = (look.sizes.text("title") - look.sizes.text("small")) * 0.65
        beside = Rect(
            rect.x, rect.y + (taken.h - text_height(look, note, rect.w, "small")) / 2 + drop / 3, rect.w, taken.h
        )
        draw_text(canvas, look, note, beside, style="small", color="soft", align="end")
    else:
        draw_text(canvas, look, note, rect.cut_top(taken.h)[1], style="small", color="soft")


@dataclass(frozen=True, slots=True)
class Panel(Plain):
    """A ground for other widgets, one below the other.

    title, note: at its top; "" for none.  fill: a theme token, "" for none.  outline: a hair line round it.
    pad: between its edge and its content in design pixels.  gap, weights: as a column's.  round: round corners.
    edge: "left", "right", "top" or "bottom" for a hair line on that side only.
    """

    key: str
    title: str = ""
    note: str = ""
    children: tuple[Widget, ...] = ()
    fill: str = "panel"
    outline: bool = False
    pad: float = 24.0
    gap: float | None = None
    weights: tuple[float, ...] = ()
    round: bool = False
    edge: str = ""

    def least_width(self, look: Look) -> float:
        """Its content between its margins."""
        title = max(least_width(look, self.title, "title"), least_width(look, self.note, "small"))
        return max(title, self._column.least_width(look)) + 2 * look.sizes.px(self.pad)

    def natural_width(self, look: Look) -> float:
        """Its content between its margins."""
        title = natural_width(look, self.title, "title") if self.title else 0.0
        return max(title, self._column.natural_width(look)) + 2 * look.sizes.px(self.pad)

    def height(self, look: Look, width: float) -> float:
        """Title and content."""
        pad = look.sizes.px(self.pad)
        inner = max(1.0, width - 2 * pad)
        down = self._pad_down(look)
        return 2 * down + self._head(look, inner) + self._column.height(look, inner)

    def place(self, look: Look, rect: Rect) -> tuple[tuple[Widget, Rect], ...]:
        """Its children below the title."""
        inner = rect.inset(look.sizes.px(self.pad), self._pad_down(look))
        return self._column.place(look, inner.cut_top(self._head(look, inner.w))[1])

    def draw(self, canvas: Canvas, look: Look, rect: Rect, mood: Mood) -> None:
        """Draws the ground and the title."""
        theme, hair = look.theme, 1.5 * look.sizes.unit
        if self.fill or self.outline:
            canvas.box(
                rect,
                fill=theme.color(self.fill) if self.fill else None,
                outline=theme.hair if self.outline else None,
                width=hair,
                radius=look.sizes.radius if self.round else 0.0,
            )
        if self.edge:
            sides = {"left": rect.cut_left, "right": rect.cut_right, "top": rect.cut_top, "bottom": rect.cut_bottom}
            side = {"left": "right", "right": "left"}.get(self.edge, self.edge) if look.sizes.mirrored else self.edge
            canvas.box(sides[side](hair)[0], fill=theme.hair)
        inner = rect.inset(look.sizes.px(self.pad), self._pad_down(look))
        if self.title or self.note:
            draw_heading(canvas, look, self.title, self.note, inner)

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> Node:
        """A panel; its title is a heading."""
        return Node(self.key, "panel", self.title, value=self.note, bounds=rect, children=children)

    @property
    def _column(self) -> Column:
        return Column(self.children, gap=self.gap, weights=self.weights)

    def _pad_down(self, look: Look) -> float:
        return look.sizes.px(min(self.pad, 12.0))

    def _head(self, look: Look, width: float) -> float:
        tall = heading_height(look, self.title, self.note, width)
        return tall + look.sizes.px(4) if tall and self.children else tall
