"""The turning areas below the picture of a bench."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from lab.outline import Node
from lab.scenes.camera import Camera
from lab.scenes.turning_areas import TurningView, draw_turning_areas
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.widgets.widget import Mood, Plain


@dataclass(frozen=True, slots=True)
class AreasPlot(Plain):
    """The turning areas, read out as their two sums.

    It is a value of its own, no picture that is drawn anew each frame: while something moves nothing in it changes.
    tall: in design pixels.  camera: of the picture right above it, whose scale it then shares; None for its own.
    """

    key: str
    view: TurningView
    tall: float
    camera: Callable[[], Camera | None] | None = None

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
        camera = self.camera() if self.camera is not None else None
        with canvas.clipped(rect):
            draw_turning_areas(canvas, rect, self.view, camera=camera)

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> Node:
        """A picture whose value says both sums."""
        say = look.words.say
        left, right = (self.view.readings.moment_with_unit(total) for total in self.view.sums_kg_m)
        value = say("anticlockwise {left}, clockwise {right}", left=left, right=right)
        return Node(self.key, "picture", say(self.view.title), value=value, bounds=rect)
