"""The scales: on the table with post and window, and from above as rings under the body with a window beside it."""

from __future__ import annotations

from collections.abc import Mapping
from math import hypot

from lab.scenes.labels import LabelBoard, Spot
from lab.scenes.scales.stage import ScalesStage
from lab.scenes.scales.view import ScalesView, scale_key, window
from lab.scenes.tones import between
from lab.scenes.views.holding import parted
from lab.simulation.benches.scales import Scale
from lab.ui.canvas import Canvas
from lab.ui.geometry import Point, Rect
from lab.ui.metrics import text_width
from lab.ui.sizes import TextStyle

CASE_PX, LEAST_WIDE_PX, TAG_GAP_PX = 10.0, 74.0, 10.0
RING_PX = 11.0
CROWDED = 12.0
"""In a picture lower than so many lines, windows are written in small letters."""


def case_boxes(view: ScalesView, stage: ScalesStage) -> Mapping[str, Rect]:
    """Where the case of each scale stands on the table, by key: under its place, beside each other where they must."""
    if stage.side is None:
        return {}
    sizes, camera = view.look.sizes, stage.side.camera
    under = camera.length_px(view.bench.underside_m - view.bench.floor_m)
    high = min(1.25 * sizes.text("body") + sizes.px(2 * CASE_PX), max(under - sizes.px(26), 0.55 * under))
    order = sorted(range(len(view.bench.scales)), key=lambda number: stage.scales_m[number])
    widths = [_wide(view, number) for number in order]
    middles = [camera.x_px(stage.scales_m[number]) for number in order]
    lefts = parted(middles, widths, sizes.px(6), stage.side.frame.inset(sizes.px(4), 0))
    return {
        scale_key(view.bench.scales[number]): Rect(left, stage.floor_y - high, wide, high)
        for number, left, wide in zip(order, lefts, widths, strict=True)
    }


def _wide(view: ScalesView, number: int, style: TextStyle = "body") -> float:
    """As wide as its window will ever need, so that it does not grow while figures run."""
    sizes = view.look.sizes
    most = view.look.words.number(view.readings.units.from_kg(view.bench.sum.mass_kg), 1)
    text = f"{most} {view.readings.units.weight_word}"
    texts = (window(view, number), text)
    size = sizes.text(style)
    return max(
        sizes.px(LEAST_WIDE_PX),
        *(text_width(each, size=size, bold=True) + sizes.px(30) for each in texts),
    )


def draw_cases(canvas: Canvas, view: ScalesView, stage: ScalesStage, board: LabelBoard) -> None:
    """Cases, posts and knife edges on the table, the farther ones first; names under the table's edge."""
    if stage.side is None:
        return
    boxes = case_boxes(view, stage)
    order = sorted(range(len(view.bench.scales)), key=lambda number: -view.bench.scales[number].at_m[1])
    for number in order:
        _draw_case(canvas, view, stage, number, boxes[scale_key(view.bench.scales[number])])
    board.keep_clear(boxes.values())
    sizes = view.look.sizes
    # Of three, two often stand behind each other: their names are in the view from above.
    for scale in () if stage.top is not None else view.bench.scales:
        box = boxes[scale_key(scale)]
        y = stage.floor_y + sizes.px(6)
        spots: list[Spot] = [
            ((box.center[0], y), "center top"),
            ((box.x, y), "left top"),
            ((box.right, y), "right top"),
        ]
        text = view.look.words.content(scale.name)
        board.place(text, spots, size=sizes.text("small"), color=view.look.theme.soft)


def knife_px(view: ScalesView, stage: ScalesStage, number: int) -> Point:
    """The upper edge of a scale's post, where the body stands on it."""
    if stage.side is None:
        return (0.0, 0.0)
    return stage.side.camera.at(stage.scales_m[number], view.bench.underside_m)


def _plate(view: ScalesView, box: Rect, x: float) -> Rect:
    """The plate over a case; it reaches to the post where that stands beside it."""
    sizes = view.look.sizes
    left, right = min(box.x + 0.1 * box.w, x - sizes.px(6)), max(box.right - 0.1 * box.w, x + sizes.px(6))
    return Rect(left, box.y - sizes.px(9), right - left, sizes.px(6))


def post_boxes(view: ScalesView, stage: ScalesStage) -> list[Rect]:
    """Posts and plates, which no label may cover."""
    found, boxes, half = [], case_boxes(view, stage), view.look.sizes.px(9)
    for number, scale in enumerate(view.bench.scales if stage.side is not None else ()):
        (x, y), box = knife_px(view, stage, number), boxes[scale_key(scale)]
        found += [Rect(x - half, y, 2 * half, box.y - y), _plate(view, box, x)]
    return found


def _draw_case(canvas: Canvas, view: ScalesView, stage: ScalesStage, number: int, box: Rect) -> None:
    theme, sizes = view.look.theme, view.look.sizes
    x, y = knife_px(view, stage, number)
    plate = _plate(view, box, x)
    half = sizes.px(7)
    canvas.line(((x, y + half), (x, plate.y)), theme.steel_edge, width=sizes.px(8))
    canvas.line(((x, y + half), (x, plate.y)), theme.steel, width=sizes.px(5))
    canvas.polygon([(x, y), (x + half, y + 1.5 * half), (x - half, y + 1.5 * half)], fill=theme.ink)
    canvas.box(plate, fill=theme.steel, outline=theme.steel_edge, width=sizes.px(1.5), radius=sizes.px(2))
    canvas.line(((box.center[0], plate.bottom), (box.center[0], box.y + 2)), theme.ink, width=sizes.px(8))
    key = scale_key(view.bench.scales[number])
    if key == view.picked:
        canvas.box(box.grown(sizes.px(4)), fill=theme.held, radius=sizes.px(10))
    pale = between(theme.steel, theme.panel, 0.45)
    canvas.box(box, fill=pale, outline=theme.steel_edge, width=sizes.px(2), radius=sizes.px(6))
    draw_window(canvas, view, number, box.inset(sizes.px(7), sizes.px(5)))


def draw_window(canvas: Canvas, view: ScalesView, number: int, box: Rect) -> None:
    """What a scale shows."""
    theme, sizes, text = view.look.theme, view.look.sizes, window(view, number)
    canvas.box(box, fill=theme.panel, outline=theme.ink, width=sizes.px(1.5), radius=sizes.px(3))
    size = min(sizes.text("body"), 0.95 * box.h)
    size = min(size, size * (box.w - sizes.px(6)) / max(text_width(text, size=size, bold=True), 1.0))
    canvas.text(text, box.center, size=size, color=theme.ink, bold=True, anchor="center middle")


def ring_boxes(view: ScalesView, stage: ScalesStage) -> Mapping[str, Rect]:
    """Where each scale stands seen from above, by key."""
    if stage.top is None:
        return {}
    radius = view.look.sizes.px(RING_PX)
    places = {scale_key(scale): stage.top.camera.at(*scale.at_m[:2]) for scale in view.bench.scales}
    return {key: Rect(x - radius, y - radius, 2 * radius, 2 * radius) for key, (x, y) in places.items()}


def tag_boxes(view: ScalesView, stage: ScalesStage) -> Mapping[str, Rect]:
    """Where the window of each scale lies seen from above, by key: off the body, outwards from the others."""
    if stage.top is None:
        return {}
    scales, sizes, camera = view.bench.scales, view.look.sizes, stage.top.camera
    middle = (sum(scale.at_m[0] for scale in scales) / 3, sum(scale.at_m[1] for scale in scales) / 3)
    frame = stage.top.frame.inset(sizes.px(6))
    left, low, right, high = stage.top.bounds_m
    body = Rect(camera.x_px(left), camera.y_px(high), camera.length_px(right - left), camera.length_px(high - low))
    style: TextStyle = "body" if frame.h > CROWDED * sizes.text("body") else "small"
    found: dict[str, Rect] = {}
    for number, scale in enumerate(scales):
        wide, tall = _wide(view, number, style), 1.25 * sizes.text(style) + sizes.px(CASE_PX)
        box = _off_body(camera.at(*scale.at_m[:2]), _outwards(scale, middle), body, (wide, tall), sizes.px(TAG_GAP_PX))
        found[scale_key(scale)] = _beside_others(box, frame, list(found.values()))
    return found


def _beside_others(box: Rect, frame: Rect, others: list[Rect]) -> Rect:
    """The box within a frame; where it lies on others, the nearest place over, under or beside them that is free."""
    gap = 4.0
    for step in range(8):
        for dx, dy in ((0, 1), (0, -1), (1, 0), (-1, 0)):
            x, y = box.x + step * dx * (box.w + gap) / 2, box.y + step * dy * (box.h + gap) / 2
            tried = Rect(
                min(max(x, frame.x), frame.right - box.w), min(max(y, frame.y), frame.bottom - box.h), box.w, box.h
            )
            if not any(tried.grown(gap / 2).intersects(other) for other in others):
                return tried
    return box


def _outwards(scale: Scale, middle: tuple[float, float]) -> tuple[float, float]:
    along, across = scale.at_m[0] - middle[0], scale.at_m[1] - middle[1]
    long = hypot(along, across) or 1.0
    return along / long, across / long


def _off_body(ring: Point, out: tuple[float, float], body: Rect, size: tuple[float, float], gap: float) -> Rect:
    """Beside the body at the end that the scale stands nearest to; over or under it otherwise."""
    wide, high = size
    if abs(out[0]) > 1.2 * abs(out[1]):
        x = body.x - gap - wide if out[0] < 0 else body.right + gap
        return Rect(x, ring[1] - high / 2, wide, high)
    y = body.y - gap - high if out[1] > 0 else body.bottom + gap
    return Rect(ring[0] - wide / 2, y, wide, high)


def draw_rings(canvas: Canvas, view: ScalesView, stage: ScalesStage, board: LabelBoard) -> None:
    """From above: a ring where each stands, over the body, and its window beside it with a line to the ring."""
    if stage.top is None:
        return
    theme, sizes = view.look.theme, view.look.sizes
    rings, tags = ring_boxes(view, stage), tag_boxes(view, stage)
    tipping = view.bench.tipping
    for number, scale in enumerate(view.bench.scales):
        key = scale_key(scale)
        ring, tag = rings[key], tags[key]
        at, radius = ring.center, ring.w / 2
        near = (min(max(at[0], tag.x), tag.right), min(max(at[1], tag.y), tag.bottom))
        canvas.line((at, near), theme.soft, width=sizes.px(1.5))
        lifts = tipping is not None and not tipping.bears[number]
        fill = theme.held if key == view.picked else theme.paper if lifts else theme.steel
        canvas.circle(at, radius + sizes.px(2.5), fill=theme.paper)
        canvas.circle(at, radius, fill=fill, outline=theme.ink, width=sizes.px(2))
        canvas.circle(at, sizes.px(3), fill=theme.ink)
        draw_window(canvas, view, number, tag)
        board.keep_clear([ring.grown(2), tag])
    for scale in view.bench.scales:
        _name_tag(view, board, scale, tags[scale_key(scale)], body_y=stage.top.body_px.center[1])


def _name_tag(view: ScalesView, board: LabelBoard, scale: Scale, tag: Rect, *, body_y: float) -> None:
    """The scale's name at its window, on the side that is turned away from the body."""
    over: Spot = ((tag.center[0], tag.y - 2), "center bottom")
    under: Spot = ((tag.center[0], tag.bottom + 2), "center top")
    beside: list[Spot] = [((tag.x - 5, tag.center[1]), "right middle"), ((tag.right + 5, tag.center[1]), "left middle")]
    below = tag.center[1] > body_y + tag.h
    spots = [under, *beside, over] if below else [over, under, *beside]
    text, size = view.look.words.content(scale.name), view.look.sizes.text("small")
    board.place(text, spots, size=size, color=view.look.theme.soft)
