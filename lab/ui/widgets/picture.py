"""A drawing with bodies in it that can be taken hold of."""

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Literal

from lab.outline import Node
from lab.ui.canvas import Canvas, Draw
from lab.ui.geometry import Point, Rect
from lab.ui.look import Look
from lab.ui.outcomes import Nudged, Pressed, Removed, Tapped, WidgetEvent
from lab.ui.widgets.widget import Mood, Plain, Spot, states

HandleAction = Literal["move", "remove", "press"]
_WAYS = {"left": (-1, 0), "right": (1, 0), "up": (0, 1), "down": (0, -1)}


@dataclass(frozen=True, slots=True)
class Handle:
    """A body in a picture that can be grabbed, focused and nudged.

    name, value: as spoken.  bounds: as drawn.  axis: which arrow keys nudge it.
    """

    key: str
    name: str
    value: str
    bounds: Rect
    actions: tuple[HandleAction, ...] = ("move", "press")
    axis: Literal["along", "up", "both"] = "along"
    selected: bool = False


@dataclass(frozen=True, slots=True)
class Picture(Plain):
    """A drawing in the rectangle it is given, clipped to it.

    draw_in: (canvas, rect).  handles: (rect) -> the bodies in it, the topmost last.  nodes: (rect) -> what else can be
    read out.  value: the whole said in a sentence.  least: width and height in design pixels.  tappable: whether a
    press on a bare place is reported.  Pictures are equal where they take the same place: what moves in them does
    not count, so that a tree in which only a picture moves need not be laid out again.
    """

    key: str
    name: str
    draw_in: Draw = field(compare=False)
    handles: Callable[[Rect], tuple[Handle, ...]] = field(default=lambda rect: (), compare=False)
    nodes: Callable[[Rect], tuple[Node, ...]] = field(default=lambda rect: (), compare=False)
    value: str = field(default="", compare=False)
    least: tuple[float, float] = (240.0, 160.0)
    tappable: bool = True

    def least_width(self, look: Look) -> float:
        """As asked for."""
        return look.sizes.px(self.least[0])

    def natural_width(self, look: Look) -> float:
        """As asked for."""
        return look.sizes.px(self.least[0])

    def height(self, look: Look, width: float) -> float:
        """As asked for; a weight in its column gives it more."""
        return look.sizes.px(self.least[1])

    def draw(self, canvas: Canvas, look: Look, rect: Rect, mood: Mood) -> None:
        """Draws the picture."""
        with canvas.clipped(rect):
            self.draw_in(canvas, rect)

    def spots(self, look: Look, rect: Rect) -> tuple[Spot, ...]:
        """The ground, if it can be tapped, and the bodies."""
        ground = Spot(key=self.key, rect=rect, stop=False, press_at=self._tapped, enabled=self.tappable)
        return (ground, *(_handle_spot(handle) for handle in self.handles(rect)))

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> Node:
        """A picture; its bodies are handles."""
        bodies = tuple(
            Node(
                handle.key,
                "handle",
                handle.name,
                value=handle.value,
                state=states(focused=mood.focused == handle.key, selected=handle.selected),
                bounds=handle.bounds,
                actions=handle.actions,
            )
            for handle in self.handles(rect)
        )
        parts = (*self.nodes(rect), *bodies)
        return Node(self.key, "picture", self.name, value=self.value, bounds=rect, children=parts)

    def _tapped(self, at: Point) -> WidgetEvent:
        return Tapped(self.key, at)


def _handle_spot(handle: Handle) -> Spot:
    keys: dict[str, WidgetEvent] = {}
    if "move" in handle.actions:
        for name, (dx, dy) in _WAYS.items():
            if (dx and handle.axis != "up") or (dy and handle.axis != "along"):
                keys[name] = Nudged(handle.key, dx, dy)
                keys[f"shift+{name}"] = Nudged(handle.key, dx, dy, large=True)
    if "remove" in handle.actions:
        keys["delete"] = keys["backspace"] = Removed(handle.key)
    return Spot(
        key=handle.key,
        rect=handle.bounds,
        effect=Pressed(handle.key) if "press" in handle.actions else None,
        keys=keys,
        drag="picture" if "move" in handle.actions else None,
    )
