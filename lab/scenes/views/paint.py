"""Colours and lines of things: pale hulls, paper wings, wood, steel, brass."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import hypot

from lab.scenes.finger_shapes import PartDrawing, draw_part, rounded
from lab.scenes.tones import between
from lab.scenes.views.projections import Face, Flat
from lab.scenes.views.solids import Rings
from lab.scenes.views.things import Thing
from lab.ui.canvas import Canvas
from lab.ui.geometry import Point, Rect, bounding
from lab.ui.look import Look
from lab.ui.theme import Theme

ToPx = Callable[[Flat], Point]

TOOL_LOOKS = frozenset({"hook", "blade", "ring", "box", "weight", "pole", "bar"})
"""Drawn in the side view as they are on every bench."""

LEAST_PX = 3.0
"""What is thinner than this could hardly be seen."""


@dataclass(frozen=True, slots=True)
class Finish:
    """fill, edge: "#RRGGBB".  rounded_px: of corners, in design pixels."""

    fill: str
    edge: str
    rounded_px: float = 0.0


def finish_of(theme: Theme, look: str) -> Finish:
    """What a thing is made of, to the eye."""
    pale = between(theme.steel, theme.panel, 0.72)
    finishes = {
        "fuselage": Finish(between(theme.anticlockwise_fill, theme.panel, 0.5), theme.ink),
        "wing": Finish(theme.wash, theme.ink), "tail": Finish(theme.wash, theme.ink),
        "fin": Finish(theme.wash, theme.ink), "sail": Finish(theme.wash, theme.ink),
        "battery": Finish(theme.steel, theme.ink, 3.0), "motor": Finish(theme.steel, theme.ink, 4.0),
        "camera": Finish(between(theme.settled_fill, theme.steel, 0.3), theme.ink, 3.0),
        "tank": Finish(pale, theme.ink, 6.0), "propeller": Finish(theme.wood, theme.ink, 6.0),
        "boom": Finish(between(theme.anticlockwise_fill, theme.panel, 0.5), theme.ink),
        "spar": Finish(theme.wood, theme.wood_edge, 2.0),
        "block": Finish(theme.wood, theme.wood_edge, 2.0), "board": Finish(theme.wood, theme.wood_edge),
        "box": Finish(theme.wood, theme.wood_edge, 2.0), "pole": Finish(theme.wood, theme.wood_edge, 2.0),
        "bar": Finish(theme.wood, theme.wood_edge, 2.0), "blade": Finish(theme.wood, theme.wood_edge, 3.0),
        "weight": Finish(theme.brass, theme.brass_edge, 3.0),
        "plate": Finish(pale, theme.steel_edge),
    }  # fmt: skip
    return finishes.get(look, Finish(theme.steel, theme.steel_edge, 2.0))


def draw_thing(
    canvas: Canvas, look: Look, thing: Thing, face: Face, to_px: ToPx, *, ground: str, highlighted: bool = False
) -> None:
    """Draw one thing as it lies level.  ground: what is seen through holes."""
    for rings in thing.patches[face]:
        ring = solid_px([to_px(place) for place in rings[0]], look.sizes.px(LEAST_PX))
        if highlighted:
            halo = rounded([(point, 0.0) for point in ring])
            canvas.polygon(halo, fill=look.theme.held, outline=look.theme.held, width=2 * look.sizes.px(5))
        if face == "side" and thing.look in TOOL_LOOKS and not thing.cut:
            _draw_tool(canvas, look, thing, ring, to_px)
            continue
        _draw_rings(canvas, look, thing, [ring, *_holes(rings, to_px)], ground)
        _draw_details(canvas, look, thing, face, bounding(ring))


def _holes(rings: Rings, to_px: ToPx) -> list[list[Point]]:
    return [[to_px(place) for place in hole] for hole in rings[1:]]


def solid_px(ring: list[Point], least_px: float) -> list[Point]:
    """The ring, or where it is thinner than it can be seen, a box as thick as that round it."""
    box = bounding(ring)
    if box.w >= least_px and box.h >= least_px:
        return ring
    box = box.at_least(least_px, least_px)
    return [(box.x, box.y), (box.right, box.y), (box.right, box.bottom), (box.x, box.bottom)]


def _draw_rings(canvas: Canvas, look: Look, thing: Thing, rings: Sequence[list[Point]], ground: str) -> None:
    finish, width = finish_of(look.theme, thing.look), max(1.5, look.sizes.px(2))
    outline = _eased(rings[0], look.sizes.px(finish.rounded_px))
    if thing.cut:
        dash = (look.sizes.px(5), look.sizes.px(4))
        canvas.polygon(outline, fill=ground)
        canvas.line([*outline, outline[0]], look.theme.wood_edge, width=width, dash=dash)
        return
    canvas.polygon(outline, fill=finish.fill, outline=finish.edge, width=width)
    for hole in rings[1:]:
        canvas.polygon(hole, fill=ground, outline=finish.edge, width=width)


def _eased(ring: list[Point], radius: float) -> list[Point]:
    """Corners of straight-sided things rounded; round ones are left as they are."""
    if radius <= 0 or len(ring) > 8:
        return ring
    box = bounding(ring)
    return rounded([(corner, min(radius, 0.35 * min(box.w, box.h))) for corner in ring])


def _draw_tool(canvas: Canvas, look: Look, thing: Thing, ring: list[Point], to_px: ToPx) -> None:
    """As on the bench: hook, blade, net, box, brass."""
    box = bounding(ring)
    middle_y = to_px((thing.at_m[0], thing.at_m[2]))[1] if not thing.hung else box.center[1]
    drawing = PartDrawing(
        theme=look.theme, rect=box, outward=1, pole_px=max(LEAST_PX, 0.24 * box.h), pole_y=middle_y,
        stroke=max(1.5, look.sizes.px(2)), stamp="", text_px=look.sizes.text("small"),
    )  # fmt: skip
    draw_part(canvas, thing.look, drawing)


def _draw_details(canvas: Canvas, look: Look, thing: Thing, face: Face, box: Rect) -> None:
    """What tells one box from another: a lens, a terminal, a level, a spar."""
    theme, width = look.theme, max(1.0, look.sizes.px(1.5))
    if thing.level is not None:
        _draw_level(canvas, look, thing.level, face, box)
    elif thing.look == "camera" and min(box.w, box.h) >= look.sizes.px(9):
        radius = 0.26 * min(box.w, box.h)
        canvas.circle(box.center, radius, fill=theme.steel_edge if theme.name != "contrast" else theme.panel)
        canvas.circle(box.center, radius, outline=theme.ink, width=width)
    elif thing.look == "battery" and min(box.w, box.h) >= look.sizes.px(8):
        x = box.x + 0.78 * box.w
        canvas.line(((x, box.y + 2), (x, box.bottom - 2)), theme.ink, width=width)
    elif thing.look == "motor" and face != "front" and box.w >= look.sizes.px(8):
        for share in (0.3, 0.5, 0.7):
            x = box.x + share * box.w
            canvas.line(((x, box.y + 2), (x, box.bottom - 2)), theme.ink, width=width)
    elif thing.look in ("motor", "propeller", "weight") and hypot(box.w, box.h) >= look.sizes.px(10):
        canvas.circle(box.center, max(2.0, 0.14 * min(box.w, box.h)), fill=finish_of(theme, thing.look).edge)


def _draw_level(canvas: Canvas, look: Look, level: float, face: Face, box: Rect) -> None:
    """How full: a surface in the side and front views; from above a gauge along the vessel."""
    theme, inset = look.theme, max(2.0, look.sizes.px(3))
    inner = box.inset(inset)
    radius = min(look.sizes.px(4), inner.h / 3)
    fill = between(theme.steel, theme.anticlockwise_fill, 0.25)
    if level <= 0.0 or inner.w < 2 or inner.h < 2:
        return
    if face == "top":
        canvas.box(Rect(inner.x, inner.y, max(2.0, level * inner.w), inner.h), fill=fill, radius=radius)
        return
    high = max(2.0, level * inner.h)
    full = Rect(inner.x, inner.bottom - high, inner.w, high)
    canvas.box(full, fill=fill, radius=min(radius, high / 2))
    canvas.line(((full.x, full.y), (full.right, full.y)), theme.ink, width=max(1.0, look.sizes.px(1)))
