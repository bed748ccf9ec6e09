"""The marks of an explained tool: where it balances, where the learner said, which way it turned."""

from __future__ import annotations

from math import asin, atan2, cos, hypot, pi, sin

from lab.scenes.finger_bench import trestle_boxes
from lab.scenes.finger_stage import FingerStage, FingerView, balance_m, body_place_px, carriage_box, line_m
from lab.scenes.labels import LabelBoard, Spot, label_box
from lab.scenes.marks import DASH_DOT, draw_quartered
from lab.ui.canvas import Anchor, Canvas
from lab.ui.geometry import Point, Rect

MARK_PX = 12.0
SEGMENTS = 24
ARC_BOXES = 12


def draw_explained(canvas: Canvas, view: FingerView, stage: FingerStage, board: LabelBoard) -> None:
    """Everything that the explanation adds to the picture."""
    along, up = balance_m(view.tool)
    mark = body_place_px(view, stage, (along, _within(stage, up)))
    board.keep_clear(tool_boxes(view, stage))
    board.keep_clear([carriage_box(view, stage)])
    if view.told_m is not None:
        _draw_told(canvas, view, stage, view.told_m)
    draw_quartered(canvas, view.look, mark, view.look.sizes.px(MARK_PX))
    board.keep_clear(_draw_turning(canvas, view, stage))
    _name_places(canvas, view, stage, board, mark)


def _within(stage: FingerStage, up_m: float) -> float:
    """A balance point that lies beyond what is drawn is marked at the nearest edge of it."""
    _, bottom, _, top = stage.bounds_m
    return min(max(up_m, bottom), top)


def draw_place_line(canvas: Canvas, view: FingerView, stage: FingerStage) -> None:
    """A line from the mark to its place on the rule; the finger stands before it."""
    theme, sizes = view.look.theme, view.look.sizes
    along, up = balance_m(view.tool)
    start = body_place_px(view, stage, (along, _within(stage, up)))[1] + sizes.px(MARK_PX)
    x = stage.camera.x_px(along)
    canvas.line(((x, start), (x, stage.rule.bottom + sizes.px(8))), theme.settled, width=sizes.px(3))


def draw_reference(canvas: Canvas, view: FingerView, stage: FingerStage, board: LabelBoard) -> None:
    """Dash and dot from the line above to under the rule, behind the finger.  None at the zero of the rule."""
    at_m = line_m(view.tool)
    if at_m is None:
        return
    sizes, x, (top, foot) = view.look.sizes, stage.camera.x_px(at_m), _reference_ends(view, stage)
    dash = tuple(sizes.px(length) for length in DASH_DOT)
    canvas.line(((x, top), (x, foot)), view.look.theme.ink, width=sizes.px(1.5), dash=dash)
    board.keep_clear([Rect(x - 2, top, 4, foot - top)])


def name_reference(canvas: Canvas, view: FingerView, stage: FingerStage, board: LabelBoard) -> None:
    """Its name beside it, where nothing else is."""
    at_m = line_m(view.tool)
    if at_m is None:
        return
    look, x, (top, foot) = view.look, stage.camera.x_px(at_m), _reference_ends(view, stage)
    gap, size, above = look.sizes.px(7), look.sizes.text("small"), stage.rule.y - look.sizes.px(6)
    text = look.words.say("reference line")
    board.keep_clear([*tool_boxes(view, stage), carriage_box(view, stage), stage.finger_rect(view.tool, look)])
    spots: list[Spot] = []
    for y, level in ((foot, "bottom"), (top, "top"), ((top + above) / 2, "middle"), (above, "bottom")):
        spots += [((x + gap, y), f"left {level}"), ((x - gap, y), f"right {level}")]  # type: ignore[list-item]
    legs = trestle_boxes(view, stage)
    spots.sort(key=lambda spot: any(label_box(canvas, text, spot, size=size).intersects(leg) for leg in legs))
    board.place(text, spots, size=size, color=look.theme.soft)


def _reference_ends(view: FingerView, stage: FingerStage) -> tuple[float, float]:
    sizes = view.look.sizes
    foot = min(stage.rule.bottom + sizes.px(56), stage.ground_y - sizes.px(4))
    return stage.line_y + sizes.px(14), foot


def _draw_told(canvas: Canvas, view: FingerView, stage: FingerStage, told_m: float) -> None:
    theme, sizes = view.look.theme, view.look.sizes
    x = stage.camera.x_px(told_m)
    ends = ((x, stage.rule.y + sizes.px(6)), (x, stage.rule.bottom + sizes.px(8)))
    canvas.line(
        ends,
        theme.on_material if theme.name != "contrast" else theme.ink,
        width=sizes.px(2),
        dash=(sizes.px(5), sizes.px(4)),
    )


def _name_places(canvas: Canvas, view: FingerView, stage: FingerStage, board: LabelBoard, mark: Point) -> None:
    look = view.look
    sizes, say = look.sizes, look.words.say
    along = balance_m(view.tool)[0]
    truth = say("balances {place}", place=view.readings.length(along))
    x = stage.camera.x_px(along)
    size = sizes.text("body")
    told = view.told_m
    board.keep_clear([stage.rule, Rect(stage.frame.x, stage.ground_y - 2, stage.frame.w, sizes.px(16))])
    side = -1 if told is not None and told > along else 1
    marks = [(truth, x, side, look.theme.settled, True)]
    if told is not None:
        text = say("you {place}", place=view.readings.length(told))
        marks.append((text, stage.camera.x_px(told), -side, look.theme.ink, False))
    legs = trestle_boxes(view, stage)
    for text, place_x, way, color, bold in marks:
        below, elsewhere = _spots(view, stage, place_x, way)
        # Before a trestle a name breaks its legs: any other place under the rule is better.
        below.sort(
            key=lambda spot: any(label_box(canvas, text, spot, size=size, bold=bold).intersects(leg) for leg in legs)
        )
        board.place(text, below + elsewhere, size=size, color=color, bold=bold, ground=look.theme.paper)


def _spots(view: FingerView, stage: FingerStage, x: float, side: int) -> tuple[list[Spot], list[Spot]]:
    """Places for a label at a place of the rule: (under it, on the given side first; above it and under the floor)."""
    sizes = view.look.sizes
    gap, below, above = sizes.px(6), stage.rule.bottom + sizes.px(8), stage.rule.y - sizes.px(8)
    to_left: tuple[Anchor, Anchor] = ("right top", "right bottom")
    to_right: tuple[Anchor, Anchor] = ("left top", "left bottom")
    near, far = (to_right, to_left) if side > 0 else (to_left, to_right)
    floor = stage.ground_y + sizes.px(18)
    under: list[Spot] = [
        ((x + side * gap, below), near[0]),
        ((x, below), "center top"),
        ((x - side * gap, below), far[0]),
    ]
    return under, [
        ((x + side * gap, above), near[1]),
        ((x - side * gap, above), far[1]),
        ((x + side * gap, floor), near[0]),
        ((x, floor), "center top"),
        ((x - side * gap, floor), far[0]),
        ((x, stage.line_y), "center middle"),
        ((x + side * gap, stage.line_y), near[1]),
        ((x - side * gap, stage.line_y), far[1]),
    ]


def tool_boxes(view: FingerView, stage: FingerStage) -> list[Rect]:
    """The turned tool as small boxes that labels keep clear of."""
    boxes = []
    for outline in stage.outlines:
        half = stage.camera.length_px(outline.top_m - outline.bottom_m) / 2
        for index in range(SEGMENTS + 1):
            along = outline.left_m + (outline.right_m - outline.left_m) * index / SEGMENTS
            x, y = body_place_px(view, stage, (along, outline.middle_m[1]))
            boxes.append(Rect(x - 6, y - half, 12, 2 * half))
    return boxes


def _draw_turning(canvas: Canvas, view: FingerView, stage: FingerStage) -> list[Rect]:
    """An arc with a head beside the end that dropped, in the colour of its sense; return what it covers."""
    if view.goes == "level":
        return []
    look = view.look
    theme, sizes = look.theme, look.sizes
    tool, left = view.tool, view.goes == "left"
    color = theme.anticlockwise if left else theme.clockwise
    pivot = stage.camera.at(tool.finger_at_m, tool.underside_m)
    left_m, bottom_m, right_m, top_m = stage.bounds_m
    end = body_place_px(view, stage, (left_m if left else right_m, (bottom_m + top_m) / 2))
    radius = hypot(end[0] - pivot[0], end[1] - pivot[1]) + sizes.px(24)
    middle = atan2(pivot[1] - end[1], end[0] - pivot[0])
    # Long enough to be seen, short enough to stay beside the end it is about; its head stays above the rule.
    size = sizes.px(15)
    sweep = min(0.9, sizes.px(120) / radius)
    lowest = asin(max(-1.0, min(1.0, (pivot[1] - stage.rule.y + sizes.px(8)) / radius))) + size / radius
    if left:
        sense, start = 1, min(middle % (2 * pi) - sweep * 0.5, pi - lowest - sweep)
    else:
        sense, start = -1, max(middle + sweep * 0.5, lowest + sweep)
    sweep *= sense
    canvas.arc(pivot, radius, start, sweep, color, width=sizes.px(4))
    _draw_head(canvas, pivot, radius, start + sweep, sense=sense, size=size, color=color)
    shown = [start + sweep * share / ARC_BOXES for share in range(ARC_BOXES + 1)]
    places = [(pivot[0] + radius * cos(angle), pivot[1] - radius * sin(angle)) for angle in shown]
    return [Rect(x - size / 2, y - size / 2, size, size) for x, y in places]


def _draw_head(
    canvas: Canvas, center: Point, radius: float, angle: float, *, sense: int, size: float, color: str
) -> None:
    tip_angle = angle + sense * size / radius
    tip = (center[0] + radius * cos(tip_angle), center[1] - radius * sin(tip_angle))
    inner = (center[0] + (radius - size * 0.6) * cos(angle), center[1] - (radius - size * 0.6) * sin(angle))
    outer = (center[0] + (radius + size * 0.6) * cos(angle), center[1] - (radius + size * 0.6) * sin(angle))
    canvas.polygon((tip, inner, outer), fill=color)
