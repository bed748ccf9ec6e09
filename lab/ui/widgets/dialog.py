"""What stands above a screen: a dialog that must be answered, a toast that only tells."""

from dataclasses import dataclass
from typing import Literal

from lab.outline import Node
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.paragraph import draw_middle, least_width, natural_width, text_height
from lab.ui.widgets.arrange import Column, Row
from lab.ui.widgets.label import Label
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.scroll import Scroll
from lab.ui.widgets.widget import Mood, Plain, Widget

_SHADE = "66"  # a veil of ink at 40 per cent: what lies below stays known, but plainly waits
_TOAST_PX = 560.0
_MOST_FOOT = 0.5  # of a dialog's height may be buttons that do not scroll: above more nothing could be read


@dataclass(frozen=True, slots=True)
class Dialog(Plain):
    """A question above the screen; pointer and focus stay in it, Escape leaves it.

    children: between its text and its buttons.  buttons: in a row, the usual one last.  width: in design pixels,
    grown with the text.
    """

    key: str
    title: str
    text: str = ""
    children: tuple[Widget, ...] = ()
    buttons: tuple[Widget, ...] = ()
    width: float = 480.0

    def least_width(self, look: Look) -> float:
        """Its content's."""
        return self._panel.least_width(look)

    def natural_width(self, look: Look) -> float:
        """The given width, with the text."""
        return look.sizes.px(self.width * look.sizes.text_scale)

    def height(self, look: Look, width: float) -> float:
        """Its content's."""
        return self._panel.height(look, width)

    def place(self, look: Look, rect: Rect) -> tuple[tuple[Widget, Rect], ...]:
        """In the middle of the window. Where it is higher than that it scrolls, all but its buttons."""
        box, scroll = self._box(look, rect), f"{self.key}.scroll"
        foot = Panel(f"{self.key}.foot", children=(Row(self.buttons),), fill="", pad=24, edge="top")
        foot_px = foot.height(look, box.w)
        if not self.buttons or box.h >= self.height(look, box.w) or foot_px > _MOST_FOOT * box.h:
            return ((Scroll(scroll, self._panel), box),)
        below, above = box.cut_bottom(foot_px)
        return (Scroll(scroll, self._panel_of(*self._said)), above), (foot, below)

    def draw(self, canvas: Canvas, look: Look, rect: Rect, mood: Mood) -> None:
        """Draws the veil over the screen and the dialog's ground."""
        veil = look.theme.ink if look.theme.name != "contrast" else "#000000"
        canvas.box(rect, fill=veil + _SHADE)
        grown = self._box(look, rect).grown(look.sizes.px(2))
        canvas.box(
            grown, fill=look.theme.panel, outline=look.theme.ink, width=look.sizes.stroke, radius=look.sizes.px(12)
        )

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> Node:
        """A dialog."""
        box = self._box(look, rect)
        return Node(self.key, "dialog", self.title, value=self.text, bounds=box, children=children)

    def _box(self, look: Look, window: Rect) -> Rect:
        room = window.inset(look.sizes.px(12))
        wide = min(room.w, max(self.natural_width(look), self.least_width(look)))
        tall = min(room.h, self.height(look, wide))
        return Rect(round(window.center[0] - wide / 2), round(window.center[1] - tall / 2), wide, tall)

    @property
    def _said(self) -> tuple[Widget, ...]:
        text = (Label(f"{self.key}.text", self.text),) if self.text else ()
        return Label(f"{self.key}.title", self.title, style="title"), *text, *self.children

    @property
    def _panel(self) -> Widget:
        buttons = (Row(self.buttons),) if self.buttons else ()
        return self._panel_of(*self._said, *buttons)

    def _panel_of(self, *widgets: Widget) -> Widget:
        inner = Column(widgets, gap=16)
        return Panel(
            f"{self.key}.panel",
            children=(Panel(f"{self.key}.inner", children=(inner,), fill="", pad=8),),
            fill="",
            pad=16,
        )


@dataclass(frozen=True, slots=True)
class Toast(Plain):
    """A line at the foot of the window that tells what happened; it takes no focus.

    kind: "warning" has the marker's colour at its edge.
    """

    key: str
    text: str
    kind: Literal["note", "warning"] = "note"

    def least_width(self, look: Look) -> float:
        """Its longest word."""
        return least_width(look, self.text, "body") + 2 * look.sizes.px(24)

    def natural_width(self, look: Look) -> float:
        """Its text on one line."""
        return natural_width(look, self.text, "body") + 2 * look.sizes.px(24)

    def height(self, look: Look, width: float) -> float:
        """Its lines."""
        return text_height(look, self.text, width - 2 * look.sizes.px(24), "body") + 2 * look.sizes.px(10)

    def box(self, look: Look, window: Rect) -> Rect:
        """Where it lies in the window."""
        room = window.inset(look.sizes.px(16))
        wide = min(room.w, self.natural_width(look), look.sizes.px(_TOAST_PX * look.sizes.text_scale))
        tall = self.height(look, wide)
        return Rect(round(room.center[0] - wide / 2), room.bottom - tall, wide, tall)

    def draw(self, canvas: Canvas, look: Look, rect: Rect, mood: Mood) -> None:
        """Draws the dark ground and the text."""
        box, theme = self.box(look, rect), look.theme
        edge = theme.held if self.kind == "warning" else theme.on_dark
        canvas.box(box, fill=theme.ink, outline=edge, width=look.sizes.stroke, radius=look.sizes.radius)
        draw_middle(canvas, look, self.text, box.inset(look.sizes.px(24), 0), color="on_dark")

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> Node:
        """A toast."""
        return Node(self.key, "toast", self.text, bounds=self.box(look, rect))
