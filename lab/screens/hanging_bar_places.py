"""Widgets that only the hanging bar's screen has: a strip upon a picture, a margin, the turning areas."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from lab.outline import Node
from lab.scenes.hanging_view import HangingView, stage_for
from lab.scenes.turning_areas import draw_turning_areas, side_sums_kg_m
from lab.ui.canvas import Canvas
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


@dataclass(frozen=True, slots=True)
class AreasPlot(Plain):
    """The turning areas, read out as their two sums.

    It is a value of its own, no picture that is drawn anew each frame: while the bar moves nothing in it changes.
    tall: in design pixels.  under: the picture right above it, whose scale it then shares; None for one of its own.
    """

    key: str
    view: HangingView
    tall: float
    under: Callable[[], Rect | None] | None = None

    def least_width(self, look: Look) -> float:
        """Room for a title's words."""
        return look.sizes.px(240)

    def natural_width(self, look: Look) -> float:
        """The same."""
        return look.sizes.px(240)

    def height(self, look: Look, width: float) -> float:
        """As given."""
        return look.sizes.px(self.tall)

    def draw(self, canvas: Canvas, look: Look, rect: Rect, mood: Mood) -> None:
        """Draws title, stacks and sums."""
        above = self.under() if self.under is not None else None
        camera = stage_for(self.view.bench, above, look).camera if above is not None else None
        with canvas.clipped(rect):
            draw_turning_areas(canvas, rect, self.view, camera=camera)

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> Node:
        """A picture whose value says both sums."""
        say = look.words.say
        left, right = (self.view.readings.moment_with_unit(total) for total in side_sums_kg_m(self.view.bench))
        value = say("anticlockwise {left}, clockwise {right}", left=left, right=right)
        return Node(self.key, "picture", say("Turning areas about the pivot"), value=value, bounds=rect)
