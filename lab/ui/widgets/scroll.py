"""A column higher than its place."""

from dataclasses import dataclass

from lab.outline import Node
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.widgets.widget import Mood, Plain, Widget


@dataclass(frozen=True, slots=True)
class Scroll(Plain):
    """Shows part of a child that is higher than the place it got; wheel, dragging and the focus move it.

    The desk keeps the offset by key and does the clipping; the bar at the side appears only where needed.
    """

    key: str
    child: Widget

    def least_width(self, look: Look) -> float:
        """The child's."""
        return self.child.least_width(look)

    def natural_width(self, look: Look) -> float:
        """The child's."""
        return self.child.natural_width(look)

    def height(self, look: Look, width: float) -> float:
        """The child's: where there is room, nothing scrolls."""
        return self.child.height(look, width)

    def place(self, look: Look, rect: Rect) -> tuple[tuple[Widget, Rect], ...]:
        """The child, at least as high as the place; not yet moved."""
        return ((self.child, Rect(rect.x, rect.y, rect.w, max(rect.h, self.child.height(look, rect.w)))),)

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> Node:
        """A panel that scrolls."""
        return Node(self.key, "panel", "", bounds=rect, actions=("scroll",), children=children)
