"""A page that is mostly read: one column, no wider than reads well."""

from __future__ import annotations

from dataclasses import dataclass

from lab.outline import Node
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.widgets.scroll import Scroll
from lab.ui.widgets.widget import Mood, Plain, Widget


@dataclass(frozen=True, slots=True)
class ReadingPage(Plain):
    """A header over one column that reads well: no wider than a page, scrolling where it must."""

    header: Widget
    page: Widget
    key: str = "page"
    width: float = 720.0
    foot: Widget | None = None

    def least_width(self, look: Look) -> float:
        """Of what is in it."""
        return max(self.header.least_width(look), self.page.least_width(look))

    def natural_width(self, look: Look) -> float:
        """The window's."""
        return look.sizes.width

    def height(self, look: Look, width: float) -> float:
        """The window's."""
        return look.sizes.height

    def place(self, look: Look, rect: Rect) -> tuple[tuple[Widget, Rect], ...]:
        """The column in the middle, below the header; the foot stays where it is when the column scrolls."""
        head, below = rect.cut_top(self.header.height(look, rect.w))
        margin = max(look.sizes.margin, (below.w - look.sizes.px(self.width * look.sizes.text_scale)) / 2)
        page = Margins(f"{self.key}.page", self.page, margin)
        if self.foot is None:
            return (self.header, head), (Scroll(f"{self.key}.scroll", page), below)
        foot = Margins(f"{self.key}.foot", self.foot, margin)
        tall = foot.height(look, below.w)
        body, rest = below.cut_top(min(page.height(look, below.w), below.h - tall))
        return (self.header, head), (Scroll(f"{self.key}.scroll", page), body), (foot, rest.cut_top(tall)[0])

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> None:
        """Only arranges."""


@dataclass(frozen=True, slots=True)
class Margins(Plain):
    """A child with room at its sides, in pixels, and the usual margin above and below."""

    key: str
    child: Widget
    margin_px: float

    def least_width(self, look: Look) -> float:
        """The child's and its margins."""
        return self.child.least_width(look) + 2 * self.margin_px

    def natural_width(self, look: Look) -> float:
        """The child's and its margins."""
        return self.child.natural_width(look) + 2 * self.margin_px

    def height(self, look: Look, width: float) -> float:
        """The child's and its margins."""
        return self.child.height(look, max(1.0, width - 2 * self.margin_px)) + 2 * look.sizes.margin

    def place(self, look: Look, rect: Rect) -> tuple[tuple[Widget, Rect], ...]:
        """The child between its margins."""
        return ((self.child, rect.inset(self.margin_px, look.sizes.margin)),)

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> None:
        """Only arranges."""
