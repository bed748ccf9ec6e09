"""The pictures of a tool's parts, drawn by us from lines and curves: steel, wood and brass."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from lab.ui.canvas import Canvas
from lab.ui.geometry import Point, Rect
from lab.ui.theme import Theme


@dataclass(frozen=True, slots=True, kw_only=True)
class PartDrawing:
    """What a part's picture is drawn with.

    rect: where, in pixels of the body's own canvas.  outward: −1 where its outer side is the left one.
    pole_px: how thick the pole is that it sits on, and at which height its middle is.
    stamp: the figure struck into it, "" for none.  text_px: the height of that figure.
    """

    theme: Theme
    rect: Rect
    outward: int
    pole_px: float
    pole_y: float
    stroke: float
    stamp: str
    text_px: float

    def at(self, out: float, down: float) -> Point:
        """A point by shares of the rectangle: out from the pole's side (0) to the outer side (1), and down."""
        along = out if self.outward > 0 else 1.0 - out
        return self.rect.x + along * self.rect.w, self.rect.y + down * self.rect.h


def draw_part(canvas: Canvas, look: str, drawing: PartDrawing) -> None:
    """Draw one part; a look that nobody knows is drawn as a brass weight."""
    _PICTURES.get(look, _weight)(canvas, drawing)


def rounded(points: Sequence[tuple[Point, float]]) -> list[Point]:
    """A closed outline through corners, each rounded by its own radius."""
    path: list[Point] = []
    count = len(points)
    for i, (corner, radius) in enumerate(points):
        before, after = points[i - 1][0], points[(i + 1) % count][0]
        if radius <= 0:
            path.append(corner)
            continue
        start, end = _towards(corner, before, radius), _towards(corner, after, radius)
        for step in range(9):
            t = step / 8
            path.append(
                (
                    (1 - t) ** 2 * start[0] + 2 * t * (1 - t) * corner[0] + t * t * end[0],
                    (1 - t) ** 2 * start[1] + 2 * t * (1 - t) * corner[1] + t * t * end[1],
                )
            )
    return path


def blended(color: str, other: str, share: float) -> str:
    """A colour on the way from one to the other, opaque.  Both "#RRGGBB"."""
    pairs = [(int(color[i : i + 2], 16), int(other[i : i + 2], 16)) for i in (1, 3, 5)]
    return "#" + "".join(f"{round(a + (b - a) * share):02X}" for a, b in pairs)


def _towards(here: Point, there: Point, distance: float) -> Point:
    length = math.dist(here, there)
    share = min(0.5, distance / length) if length else 0.0
    return here[0] + (there[0] - here[0]) * share, here[1] + (there[1] - here[1]) * share


def _stamp(canvas: Canvas, drawing: PartDrawing, at: Point, color: str) -> None:
    if drawing.stamp:
        canvas.text(drawing.stamp, at, size=drawing.text_px, color=color, bold=True, anchor="center middle")


def _beam(canvas: Canvas, drawing: PartDrawing, *, radius: float) -> None:
    theme, rect = drawing.theme, drawing.rect
    canvas.box(rect, fill=theme.wood, outline=theme.wood_edge, width=drawing.stroke, radius=radius)
    # Two lines of grain: wood, and not a drawn oblong.
    inset = max(drawing.stroke * 3, radius)
    for share, start, end in ((0.36, 0.03, 0.62), (0.66, 0.38, 0.97)):
        y = rect.y + share * rect.h
        ends = (rect.x + inset + start * (rect.w - 2 * inset), rect.x + inset + end * (rect.w - 2 * inset))
        canvas.line(
            ((ends[0], y), (ends[1], y)),
            blended(theme.wood, theme.wood_edge, 0.35),
            width=max(1.0, drawing.stroke * 0.6),
        )


def _pole(canvas: Canvas, drawing: PartDrawing) -> None:
    _beam(canvas, drawing, radius=min(drawing.rect.h * 0.42, 10 * drawing.stroke))


def _bar(canvas: Canvas, drawing: PartDrawing) -> None:
    _beam(canvas, drawing, radius=2 * drawing.stroke)
    # Brass caps keep a bar's ends square.
    rect, theme = drawing.rect, drawing.theme
    cap = min(rect.h * 0.5, rect.w * 0.02)
    for x in (rect.x, rect.right - cap):
        canvas.box(
            Rect(x, rect.y, cap, rect.h), fill=theme.brass, outline=theme.brass_edge, width=drawing.stroke, radius=2.0
        )


def _plate(canvas: Canvas, drawing: PartDrawing) -> None:
    """A thin plate seen flat."""
    theme = drawing.theme
    canvas.box(drawing.rect, fill=theme.wood, outline=theme.wood_edge, width=drawing.stroke, radius=drawing.stroke)


def _gap(canvas: Canvas, drawing: PartDrawing) -> None:
    """What is cut out: the paper shows, its edge dashed."""
    theme, rect = drawing.theme, drawing.rect
    canvas.box(rect, fill=theme.paper)
    corners = ((rect.x, rect.y), (rect.right, rect.y), (rect.right, rect.bottom), (rect.x, rect.bottom))
    canvas.line((*corners, corners[0]), theme.wood_edge, width=drawing.stroke, dash=(6.0, 4.0))


def _sleeve(canvas: Canvas, drawing: PartDrawing) -> None:
    """A band or a grip round the pole."""
    theme, rect = drawing.theme, drawing.rect
    canvas.box(rect, fill=theme.steel, outline=theme.steel_edge, width=drawing.stroke, radius=2 * drawing.stroke)
    for share in (0.25, 0.75):
        x = rect.x + share * rect.w
        ends = ((x, rect.y + drawing.stroke), (x, rect.bottom - drawing.stroke))
        canvas.line(ends, theme.steel_edge, width=max(1.0, drawing.stroke * 0.6))


def _hook(canvas: Canvas, drawing: PartDrawing) -> None:
    """A steel head whose jaw takes the pole."""
    theme, rect = drawing.theme, drawing.rect
    jaw_top = (drawing.pole_y - 0.78 * drawing.pole_px - rect.y) / rect.h
    jaw_bottom = (drawing.pole_y + 0.78 * drawing.pole_px - rect.y) / rect.h
    big, small = 0.22 * min(rect.w, rect.h), 0.05 * rect.w
    head = rounded(
        [
            (drawing.at(1.0, 0.0), small),
            (drawing.at(0.0, 0.0), big),
            (drawing.at(0.0, jaw_top), small),
            (drawing.at(0.3, jaw_top), small),
            (drawing.at(0.3, jaw_bottom), small),
            (drawing.at(0.0, jaw_bottom), small),
            (drawing.at(0.0, 1.0), big),
            (drawing.at(1.0, 1.0), small),
        ]
    )
    canvas.polygon(head, fill=theme.steel, outline=theme.steel_edge, width=drawing.stroke)
    for down in (0.1, 0.9):
        canvas.circle(drawing.at(0.82, down), max(2.0, 0.035 * rect.w), fill=theme.steel_edge)
    _stamp(canvas, drawing, drawing.at(0.66, 0.5), theme.on_material)


def _blade(canvas: Canvas, drawing: PartDrawing) -> None:
    """An oar's blade, brass at the tip."""
    theme, rect = drawing.theme, drawing.rect
    neck = min(0.45, 0.55 * drawing.pole_px / rect.h)
    outline = rounded(
        [
            (drawing.at(0.0, 0.5 - neck), 0.0),
            (drawing.at(0.34, 0.0), 0.2 * rect.w),
            (drawing.at(1.0, 0.06), 0.3 * rect.h),
            (drawing.at(1.0, 0.94), 0.3 * rect.h),
            (drawing.at(0.34, 1.0), 0.2 * rect.w),
            (drawing.at(0.0, 0.5 + neck), 0.0),
        ]
    )
    canvas.polygon(outline, fill=theme.wood, outline=theme.wood_edge, width=drawing.stroke)
    canvas.line((drawing.at(0.0, 0.5), drawing.at(0.84, 0.5)), theme.wood_edge, width=max(1.0, drawing.stroke * 0.7))
    tip = rounded(
        [
            (drawing.at(0.92, 0.045), 0.0),
            (drawing.at(1.0, 0.06), 0.3 * rect.h),
            (drawing.at(1.0, 0.94), 0.3 * rect.h),
            (drawing.at(0.92, 0.955), 0.0),
        ]
    )
    canvas.polygon(tip, fill=theme.brass, outline=theme.brass_edge, width=drawing.stroke)


def _ring(canvas: Canvas, drawing: PartDrawing) -> None:
    """A landing net seen flat: hoop, mesh, collar."""
    theme, rect = drawing.theme, drawing.rect
    middle, half_w, half_h = rect.center, rect.w / 2, rect.h / 2
    turns = [step * math.pi / 24 for step in range(48)]
    hoop = [(middle[0] + half_w * math.cos(turn), middle[1] - half_h * math.sin(turn)) for turn in turns]
    canvas.polygon(hoop, fill=theme.panel)
    for step in range(-3, 4):
        share = step / 3.6
        reach = 0.97 * math.sqrt(1.0 - share**2)
        for sense in (1, -1):
            # A mesh of cords at 45 degrees of a round hoop, each cut where it meets the hoop.
            ends = tuple(
                (
                    middle[0] + half_w * (share + side * reach) * math.sqrt(0.5),
                    middle[1] + sense * half_h * (share - side * reach) * math.sqrt(0.5),
                )
                for side in (1, -1)
            )
            canvas.line(ends, theme.edge, width=max(1.0, drawing.stroke * 0.6))
    canvas.polygon(hoop, outline=theme.steel_edge, width=drawing.stroke * 2.0)
    collar = Rect(0, 0, 0.2 * rect.w, 1.5 * drawing.pole_px)
    x = rect.x - collar.w * 0.4 if drawing.outward > 0 else rect.right - collar.w * 0.6
    canvas.box(
        Rect(x, drawing.pole_y - collar.h / 2, collar.w, collar.h),
        fill=theme.brass, outline=theme.brass_edge, width=drawing.stroke, radius=3.0,
    )  # fmt: skip


def _camera(canvas: Canvas, drawing: PartDrawing) -> None:
    """A camera on its clamp, the lens outward."""
    theme, rect = drawing.theme, drawing.rect
    lens = Rect(*drawing.at(0.86 if drawing.outward > 0 else 1.06, 0.3), 0.2 * rect.w, 0.4 * rect.h)
    canvas.box(lens, fill=theme.steel, outline=theme.steel_edge, width=drawing.stroke, radius=2.0)
    body = Rect(rect.x, rect.y + 0.12 * rect.h, rect.w, 0.88 * rect.h)
    canvas.box(
        Rect(rect.x + 0.3 * rect.w, rect.y, 0.3 * rect.w, 0.3 * rect.h),
        fill=theme.steel, outline=theme.steel_edge, width=drawing.stroke, radius=2.0,
    )  # fmt: skip
    canvas.box(body, fill=theme.steel, outline=theme.steel_edge, width=drawing.stroke, radius=0.12 * rect.w)
    _stamp(canvas, drawing, body.center, theme.on_material)


def _battery(canvas: Canvas, drawing: PartDrawing) -> None:
    """A battery strapped on: its outer end capped."""
    theme, rect = drawing.theme, drawing.rect
    canvas.box(rect, fill=theme.steel, outline=theme.steel_edge, width=drawing.stroke, radius=0.14 * rect.h)
    ends = (drawing.at(0.84, 0.08), drawing.at(0.84, 0.92))
    canvas.line(ends, theme.steel_edge, width=max(1.0, drawing.stroke * 0.6))
    _stamp(canvas, drawing, drawing.at(0.42, 0.5), theme.on_material)


def _box(canvas: Canvas, drawing: PartDrawing) -> None:
    """A nest box: roof, board, round door."""
    theme, rect = drawing.theme, drawing.rect
    wall = Rect(rect.x + 0.08 * rect.w, rect.y + 0.2 * rect.h, 0.84 * rect.w, 0.8 * rect.h)
    canvas.box(wall, fill=theme.wood, outline=theme.wood_edge, width=drawing.stroke, radius=2.0)
    roof = [
        (rect.x, rect.y + 0.26 * rect.h),
        (rect.center[0], rect.y),
        (rect.right, rect.y + 0.26 * rect.h),
    ]
    canvas.polygon(roof, fill=theme.steel, outline=theme.steel_edge, width=drawing.stroke)
    door = 0.14 * min(rect.w, rect.h)
    canvas.circle((rect.center[0], rect.y + 0.44 * rect.h), door, fill=theme.steel_edge)
    _stamp(canvas, drawing, (rect.center[0], rect.y + 0.78 * rect.h), theme.on_material)


def _weight(canvas: Canvas, drawing: PartDrawing) -> None:
    """A brass weight with its knob."""
    theme, rect = drawing.theme, drawing.rect
    knob_h = 0.17 * rect.h
    middle = rect.center[0]
    knob = [
        (middle - 0.16 * rect.w, rect.y),
        (middle + 0.16 * rect.w, rect.y),
        (middle + 0.24 * rect.w, rect.y + knob_h),
        (middle - 0.24 * rect.w, rect.y + knob_h),
    ]
    canvas.polygon(knob, fill=theme.brass, outline=theme.brass_edge, width=drawing.stroke)
    block = Rect(rect.x, rect.y + knob_h, rect.w, rect.h - knob_h)
    canvas.box(block, fill=theme.brass, outline=theme.brass_edge, width=drawing.stroke, radius=0.1 * rect.w)
    _stamp(canvas, drawing, block.center, theme.on_material)


def _tin(canvas: Canvas, drawing: PartDrawing) -> None:
    """A tin with its rim and two bands."""
    theme, rect = drawing.theme, drawing.rect
    canvas.box(rect, fill=theme.steel, outline=theme.steel_edge, width=drawing.stroke, radius=0.06 * rect.w)
    for down in (0.12, 0.88):
        canvas.line((drawing.at(0.0, down), drawing.at(1.0, down)), theme.steel_edge, width=drawing.stroke)
    _stamp(canvas, drawing, rect.center, theme.on_material)


def _beads(canvas: Canvas, drawing: PartDrawing) -> None:
    """Equal wooden beads on an upright cord."""
    theme, rect = drawing.theme, drawing.rect
    count = max(1, round(rect.h / max(rect.w, 1.0)))
    radius = min(rect.w, rect.h / count) / 2
    for number in range(count):
        center = (rect.center[0], rect.y + rect.h * (number + 0.5) / count)
        canvas.circle(center, radius, fill=theme.wood, outline=theme.wood_edge, width=drawing.stroke * 0.7)


def _rod(canvas: Canvas, drawing: PartDrawing) -> None:
    """A steel rod strapped to the pole."""
    theme, rect = drawing.theme, drawing.rect
    canvas.box(rect, fill=theme.steel, outline=theme.steel_edge, width=drawing.stroke, radius=rect.h / 2)
    strap = 0.04 * rect.w
    for out in (0.16, 0.84):
        x = drawing.at(out, 0.0)[0] - strap / 2
        band = Rect(x, rect.y - rect.h * 0.4, strap, rect.h * 1.8)
        canvas.box(band, fill=theme.brass, outline=theme.brass_edge, width=drawing.stroke * 0.6)


_PICTURES: dict[str, Callable[[Canvas, PartDrawing], None]] = {
    "pole": _pole,
    "bar": _bar,
    "plate": _plate,
    "gap": _gap,
    "sleeve": _sleeve,
    "hook": _hook,
    "blade": _blade,
    "ring": _ring,
    "camera": _camera,
    "battery": _battery,
    "box": _box,
    "weight": _weight,
    "tin": _tin,
    "bead": _beads,
    "rod": _rod,
}
