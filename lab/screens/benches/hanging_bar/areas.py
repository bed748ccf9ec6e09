"""The turning areas below the hanging bar."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from lab.outline import Node
from lab.scenes.hanging_view import HangingView, stage_for
from lab.scenes.turning_areas import draw_turning_areas, side_sums_kg_m
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.widgets.widget import Mood, Plain


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
