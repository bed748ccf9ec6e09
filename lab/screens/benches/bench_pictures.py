"""A small picture of each bench, for the cards that lead to it: the thing itself, and nothing of what comes of it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from lab.files import Bench
from lab.scenes.weights import brass_rect, draw_brass
from lab.screens.start_picture import build_card_picture
from lab.ui.canvas import Canvas, Draw
from lab.ui.geometry import Point, Rect
from lab.ui.look import Look


def bench_picture(look: Look, name: Bench) -> Draw:
    """Draws a bench into any rectangle."""
    if name == "bar":
        return build_card_picture(look)
    draw = _PICTURES[name]
    return lambda canvas, rect: draw(_Sketch(canvas, look, rect))


@dataclass(frozen=True, slots=True)
class _Sketch:
    """A canvas on which places and sizes are shares of one rectangle."""

    canvas: Canvas
    look: Look
    rect: Rect

    @property
    def stroke(self) -> float:
        """Of every outline."""
        return max(1.5, self.look.sizes.px(1.5))

    def at(self, x: float, y: float) -> Point:
        """A place."""
        return self.rect.x + x * self.rect.w, self.rect.y + y * self.rect.h

    def box(self, x: float, y: float, w: float, h: float, *, of: str, edge: str = "ink", round_by: float = 0.2) -> None:
        """A box of a material (a token of the theme).  round_by: radius over its shorter side."""
        theme, rect = self.look.theme, self.rect
        box = Rect(*self.at(x, y), w * rect.w, h * rect.h)
        radius = round_by * min(box.w, box.h)
        self.canvas.box(box, fill=theme.color(of), outline=theme.color(edge), width=self.stroke, radius=radius)

    def line(self, *places: Point, width: float = 1.0, dash: tuple[float, ...] = ()) -> None:
        """A line in ink."""
        ends = tuple(self.at(*place) for place in places)
        dashes = tuple(self.look.sizes.px(each) for each in dash)
        self.canvas.line(ends, self.look.theme.ink, width=width * self.stroke, dash=dashes)

    def ring(self, x: float, y: float, radius: float, *, of: str) -> None:
        """A pin or an eye."""
        theme = self.look.theme
        fill = theme.color(of)
        self.canvas.circle(self.at(x, y), radius * self.rect.w, fill=fill, outline=theme.ink, width=self.stroke)

    def brass(self, x: float, y: float, side: float) -> None:
        """A brass weight that hangs from a place."""
        draw_brass(self.canvas, self.look, brass_rect(self.at(x, y), side * self.rect.w), "")

    def finger(self, x: float, top: float) -> None:
        """A finger from below, on its dark foot."""
        self.box(x - 0.055, top, 0.11, 0.26, of="skin", round_by=0.5)
        self.box(x - 0.12, top + 0.22, 0.24, 0.09, of="ink")


def _tool(sketch: _Sketch) -> None:
    """A pole with a heavy head, on a finger."""
    sketch.box(0.14, 0.42, 0.78, 0.075, of="wood", edge="wood_edge", round_by=0.5)
    sketch.box(0.08, 0.32, 0.17, 0.28, of="steel", edge="steel_edge")
    sketch.finger(0.4, 0.495)


def _plate(sketch: _Sketch) -> None:
    """A plate with a window, hung from a pin; its plumb line hangs before it."""
    theme = sketch.look.theme
    outline = tuple(sketch.at(*place) for place in ((0.42, 0.12), (0.72, 0.3), (0.84, 0.74), (0.5, 0.86), (0.2, 0.56)))
    sketch.canvas.polygon(outline, fill=theme.wood, outline=theme.wood_edge, width=sketch.stroke)
    sketch.box(0.56, 0.4, 0.14, 0.14, of="paper", edge="wood_edge", round_by=0.5)
    sketch.line((0.43, 0.22), (0.43, 0.94), dash=(5.0, 4.0))
    sketch.ring(0.43, 0.22, 0.045, of="held")


def _scales(sketch: _Sketch) -> None:
    """A loaded bar across two scales with round dials."""
    sketch.box(0.6, 0.2, 0.18, 0.16, of="brass", edge="brass_edge")
    sketch.box(0.06, 0.36, 0.88, 0.075, of="wood", edge="wood_edge")
    for middle, hand in ((0.23, (-0.035, -0.05)), (0.77, (0.05, -0.03))):
        sketch.box(middle - 0.035, 0.435, 0.07, 0.09, of="steel", edge="steel_edge")
        sketch.box(middle - 0.16, 0.52, 0.32, 0.32, of="steel", edge="steel_edge")
        sketch.ring(middle, 0.68, 0.11, of="panel")
        sketch.line((middle, 0.68), (middle + hand[0], 0.68 + hand[1]), width=1.4)


def _mobile(sketch: _Sketch) -> None:
    """A bar that hangs from a bar, and what hangs from them."""
    sketch.line((0.44, 0.02), (0.44, 0.24))
    sketch.line((0.16, 0.24), (0.16, 0.5))
    sketch.line((0.68, 0.24), (0.68, 0.56))
    sketch.line((0.48, 0.56), (0.48, 0.72))
    sketch.line((0.86, 0.56), (0.86, 0.72))
    sketch.box(0.1, 0.21, 0.68, 0.06, of="wood", edge="wood_edge")
    sketch.box(0.42, 0.53, 0.5, 0.06, of="wood", edge="wood_edge")
    sketch.brass(0.16, 0.48, 0.24)
    sketch.brass(0.48, 0.7, 0.17)
    sketch.brass(0.86, 0.7, 0.14)


def _fingers(sketch: _Sketch) -> None:
    """An oar on two fingers, and the ways they can slide."""
    sketch.box(0.05, 0.4, 0.8, 0.065, of="wood", edge="wood_edge", round_by=0.5)
    sketch.box(0.68, 0.35, 0.28, 0.165, of="wood", edge="wood_edge", round_by=0.4)
    for x, inward in ((0.2, 1.0), (0.76, -1.0)):
        top = 0.465 if x < 0.68 else 0.515
        sketch.finger(x, top)
        tip = x + inward * 0.24
        sketch.line((x + inward * 0.1, 0.64), (tip, 0.64), width=1.4)
        sketch.line((tip - inward * 0.06, 0.59), (tip, 0.64), (tip - inward * 0.06, 0.69), width=1.4)


def _airframe(sketch: _Sketch) -> None:
    """A glider from above, its plane of symmetry through it."""
    theme = sketch.look.theme
    wing = tuple(
        sketch.at(*place) for place in ((0.36, 0.06), (0.5, 0.06), (0.56, 0.5), (0.5, 0.94), (0.36, 0.94), (0.34, 0.5))
    )
    tail = tuple(sketch.at(*place) for place in ((0.8, 0.3), (0.9, 0.3), (0.9, 0.7), (0.8, 0.7)))
    for outline in (wing, tail):
        sketch.canvas.polygon(outline, fill=theme.wash, outline=theme.ink, width=sketch.stroke)
    sketch.box(0.06, 0.45, 0.86, 0.1, of="panel", round_by=0.5)
    sketch.line((0.02, 0.5), (0.98, 0.5), dash=(6.0, 4.0))


_PICTURES: Mapping[Bench, Callable[[_Sketch], None]] = MappingProxyType(
    {"tool": _tool, "plate": _plate, "scales": _scales, "mobile": _mobile, "fingers": _fingers, "airframe": _airframe}
)
