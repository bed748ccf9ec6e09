"""A canvas that is a list: everything drawn on it becomes an immutable operation with its bounds."""

import math
from collections.abc import Callable, Hashable, Iterator, Sequence
from contextlib import contextmanager

from lab.ui.canvas import Anchor, Canvas
from lab.ui.geometry import Point, Rect, bounding
from lab.ui.metrics import CAP_HEIGHT, LINE_ASCENT, LINE_DESCENT, line_box, text_width
from lab.ui.ops import ArcOp, Body, BoxOp, CircleOp, HatchOp, LineOp, Op, PolygonOp, TextOp, TurnedOp

# Ink of a text reaches beyond its line box: stacked accents above, tails below, overhang at the sides.
_INK_ASCENT, _INK_DESCENT, _INK_SIDE = 1.25, 0.4, 0.1
MOST_KEPT = 64
"""Pieces of pictures that a canvas remembers."""
_FINITE = "a place that is finite in pixels would do"


def _checked(points: Sequence[Point], least: int) -> tuple[Point, ...]:
    kept = tuple([(float(x), float(y)) for x, y in points])
    if len(kept) < least:
        raise ValueError(f"{len(kept)} points given; {least} or more would do")
    for x, y in kept:
        if not math.isfinite(x + y):
            raise ValueError(f"points {kept!r}; {_FINITE}")
    return kept


def _snapped(rect: Rect) -> Rect:
    left, top, w, h = rect
    if not math.isfinite(left + top + w + h):
        raise ValueError(f"rectangle {rect!r}; {_FINITE}")
    x, y = float(round(left)), float(round(top))
    return Rect(x, y, float(round(left + w)) - x, float(round(top + h)) - y)


class ListCanvas:
    """Keeps what is drawn as `ops`; needs no window, no font file, no pygame."""

    def __init__(self, size: tuple[int, int]) -> None:
        """size: in whole pixels."""
        self._size = (int(size[0]), int(size[1]))
        self._clip: Rect | None = None
        self._kept: dict[Hashable, tuple[Op, ...]] = {}
        self.ops: list[Op] = []

    @property
    def size(self) -> tuple[int, int]:
        """Width and height in pixels."""
        return self._size

    def clear(self) -> None:
        """Forgets all that was drawn."""
        self.ops = []
        self._clip = None

    def again(self, ops: Sequence[Op]) -> None:
        """Operations that were recorded before, as they are."""
        self.ops.extend(ops)

    def kept(self, key: Hashable, draw: Callable[[], None]) -> None:
        """What `draw` draws; put down again from memory where the same key was drawn under the same clip."""
        known = self._kept.get((key, self._clip))
        if known is not None:
            self.again(known)
            return
        start = len(self.ops)
        draw()
        if len(self._kept) >= MOST_KEPT:
            self._kept.clear()
        self._kept[(key, self._clip)] = tuple(self.ops[start:])

    def text_lines(self) -> list[str]:
        """Each text in drawing order, those on turned bodies included."""
        lines: list[str] = []
        for op in self.ops:
            if isinstance(op, TextOp):
                lines.append(op.text)
            elif isinstance(op, TurnedOp):
                lines.extend(body_list(op.body).text_lines())
        return lines

    def box(
        self,
        rect: Rect,
        *,
        fill: str | None = None,
        outline: str | None = None,
        width: float = 1.0,
        radius: float = 0.0,
    ) -> None:
        """A rectangle with round corners, on whole pixels; its outline lies inside it."""
        whole = _snapped(rect)
        if whole.w > 0 and whole.h > 0 and (fill or outline):
            self._add(BoxOp(whole, self._clip, fill, outline, width, min(radius, whole.w / 2, whole.h / 2)))

    def line(self, points: Sequence[Point], color: str, *, width: float = 1.0, dash: Sequence[float] = ()) -> None:
        """A line through two or more points; dash: lengths on, off, on, off..."""
        kept = _checked(points, 2)
        self._add(LineOp(bounding(kept, width / 2 + 1), self._clip, kept, color, width, tuple(dash)))

    def polygon(
        self,
        points: Sequence[Point],
        *,
        fill: str | None = None,
        outline: str | None = None,
        width: float = 1.0,
    ) -> None:
        """A closed shape; its outline straddles the edge."""
        kept = _checked(points, 3)
        margin = (width if outline else 0.0) + 1
        self._add(PolygonOp(bounding(kept, margin), self._clip, kept, fill, outline, width))

    def circle(
        self,
        center: Point,
        radius: float,
        *,
        fill: str | None = None,
        outline: str | None = None,
        width: float = 1.0,
    ) -> None:
        """A circle; its outline lies inside it."""
        (middle,) = _checked((center,), 1)
        if radius > 0:
            bounds = bounding((middle,), radius + 1)
            self._add(CircleOp(bounds, self._clip, middle, radius, fill, outline, width))

    def arc(
        self,
        center: Point,
        radius: float,
        start_rad: float,
        sweep_rad: float,
        color: str,
        *,
        width: float = 1.0,
    ) -> None:
        """Part of a circle from start_rad (0 points right) by sweep_rad, anticlockwise positive as seen."""
        (middle,) = _checked((center,), 1)
        if radius <= 0 or not math.isfinite(start_rad + sweep_rad):
            raise ValueError(f"arc of radius {radius} px from {start_rad} by {sweep_rad} rad; {_FINITE}")
        ends = arc_points(middle, radius, start_rad, sweep_rad)
        bounds = bounding(ends, width / 2 + 1)
        self._add(ArcOp(bounds, self._clip, middle, radius, start_rad, sweep_rad, color, width))

    def hatch(self, rect: Rect, color: str, *, rising: bool, spacing: float = 8.0, width: float = 1.5) -> None:
        """Slanted lines over a rectangle, rising to the right or falling."""
        whole = _snapped(rect)
        if whole.w > 0 and whole.h > 0:
            self._add(HatchOp(whole, self._clip, color, rising, spacing, width))

    def text(
        self,
        text: str,
        at: Point,
        *,
        size: float,
        color: str,
        bold: bool = False,
        anchor: Anchor = "left top",
    ) -> Rect:
        """One line of text; "middle" centres its capitals and figures on the point.  Returns its line box."""
        ((x, y),) = _checked((at,), 1)
        size = float(round(size))
        width = text_width(text, size=size, bold=bold)
        side, level = anchor.split(" ")
        left = float(round(x - {"left": 0.0, "center": 0.5, "right": 1.0}[side] * width))
        above = {
            "top": LINE_ASCENT,
            "middle": CAP_HEIGHT / 2,
            "baseline": 0.0,
            "bottom": -LINE_DESCENT,
        }[level]
        baseline = float(round(y + above * size))
        box = line_box(left, baseline, width, size)
        if text:
            side_ink = _INK_SIDE * size
            bounds = Rect(
                left - side_ink,
                math.floor(baseline - _INK_ASCENT * size),
                width + 2 * side_ink,
                math.ceil((_INK_ASCENT + _INK_DESCENT) * size) + 1,
            )
            self._add(TextOp(bounds, self._clip, text, left, baseline, size, color, bold, box))
        return box

    def text_size(self, text: str, *, size: float, bold: bool = False) -> tuple[float, float]:
        """Width and height of the line box of one line of text."""
        whole = float(round(size))
        return text_width(text, size=whole, bold=bold), (LINE_ASCENT + LINE_DESCENT) * whole

    def turned(
        self,
        name: Hashable,
        size: tuple[float, float],
        make: Callable[[Canvas], None],
        *,
        at: Point,
        grip: Point,
        angle_rad: float,
    ) -> None:
        """A body shown turned, anticlockwise positive as seen, its point `grip` at `at`."""
        (place,) = _checked((at,), 1)
        if not math.isfinite(angle_rad):
            raise ValueError(f"angle {angle_rad} rad; a finite angle would do")
        corners = turned_corners(size, place, grip, angle_rad)
        op = TurnedOp(bounding(corners, 2.0), self._clip, Body(name, size, make), place, grip, angle_rad)
        self._add(op)

    @contextmanager
    def clipped(self, rect: Rect) -> Iterator[None]:
        """Within the `with` block nothing outside the rectangle is drawn."""
        before = self._clip
        whole = _snapped(rect)
        self._clip = whole if before is None else whole.common(before)
        try:
            yield
        finally:
            self._clip = before

    def _add(self, op: Op) -> None:
        if self._clip is None or op.bounds.intersects(self._clip):
            self.ops.append(op)


def body_list(body: Body) -> ListCanvas:
    """What a body is made of, in its own pixels."""
    canvas = ListCanvas((math.ceil(body.size[0]), math.ceil(body.size[1])))
    body.make(canvas)
    return canvas


def arc_points(center: Point, radius: float, start_rad: float, sweep_rad: float) -> list[Point]:
    """Points along an arc, close enough together to look round."""
    steps = max(4, math.ceil(abs(sweep_rad) * math.sqrt(max(radius, 1.0)) * 2.5))
    angles = (start_rad + sweep_rad * i / steps for i in range(steps + 1))
    return [(center[0] + radius * math.cos(a), center[1] - radius * math.sin(a)) for a in angles]


def turned_corners(size: tuple[float, float], at: Point, grip: Point, angle_rad: float) -> list[Point]:
    """Where the corners of a turned body lie."""
    cos, sin = math.cos(angle_rad), math.sin(angle_rad)
    corners = ((0.0, 0.0), (size[0], 0.0), size, (0.0, size[1]))
    return [
        (at[0] + (x - grip[0]) * cos + (y - grip[1]) * sin, at[1] - (x - grip[0]) * sin + (y - grip[1]) * cos)
        for x, y in corners
    ]
