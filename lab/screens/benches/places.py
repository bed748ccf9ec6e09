"""Widgets that only the screen of a bench has: a strip upon a picture, a margin."""

from __future__ import annotations

from dataclasses import dataclass

from lab.outline import Node
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.widgets.widget import Mood, Plain, Widget


@dataclass(frozen=True, slots=True)
class Above(Plain):
    """A strip that lies on the lower edge of a picture, no wider than it needs to be."""

    below: Widget
    strip: Widget | None
    key: str = ""

    def least_width(self, look: Look) -> float:
        """The picture's."""
        return self.below.least_width(look)

    def natural_width(self, look: Look) -> float:
        """The picture's."""
        return self.below.natural_width(look)

    def height(self, look: Look, width: float) -> float:
        """The picture's."""
        return self.below.height(look, width)

    def place(self, look: Look, rect: Rect) -> tuple[tuple[Widget, Rect], ...]:
        """The picture in all of it, the strip above its lower edge."""
        if self.strip is None:
            return ((self.below, rect),)
        margin = look.sizes.px(8)
        wide = min(self.strip.natural_width(look), rect.w - 2 * margin)
        tall = self.strip.height(look, wide)
        box = Rect(round(rect.center[0] - wide / 2), rect.bottom - tall - margin, wide, tall)
        return (self.below, rect), (self.strip, box)

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> None:
        """Only arranges."""


@dataclass(frozen=True, slots=True)
class Inset(Plain):
    """A child with a margin at its sides, so that a scroll column does not cut what reaches a little beyond it."""

    child: Widget
    side: float
    key: str = ""

    def least_width(self, look: Look) -> float:
        """The child's and the margins."""
        return self.child.least_width(look) + 2 * look.sizes.px(self.side)

    def natural_width(self, look: Look) -> float:
        """The child's and the margins."""
        return self.child.natural_width(look) + 2 * look.sizes.px(self.side)

    def height(self, look: Look, width: float) -> float:
        """The child's."""
        return self.child.height(look, width - 2 * look.sizes.px(self.side))

    def place(self, look: Look, rect: Rect) -> tuple[tuple[Widget, Rect], ...]:
        """The child between the margins."""
        return ((self.child, rect.inset(look.sizes.px(self.side), 0)),)

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> None:
        """Only arranges."""
