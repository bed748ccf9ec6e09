"""Marks that belong to the thinking, not to the bench: reference line, balance point, labels."""

from __future__ import annotations

from math import copysign, cos, hypot, pi, sin

from lab.scenes.hanging_view import HangingView, Stage, sum_of
from lab.scenes.labels import LabelBoard, Spot
from lab.scenes.rail import carriage_rect
from lab.ui.canvas import Canvas
from lab.ui.geometry import Point, Rect
from lab.ui.look import Look

LEAST_TURN_RAD = 0.03
"""Under this a turn needs no arrow: one could hardly be drawn."""
DASH_DOT = (10.0, 4.0, 2.0, 4.0)
BALANCE_PX = 11.0


def reference_handle(view: HangingView, stage: Stage) -> Rect:
    """The knob by which the reference line is dragged, under the rail."""
    side = view.look.sizes.px(24)
    x = stage.camera.x_px(view.bench.reference_m)
    return Rect(x - side / 2, stage.rail.bottom + view.look.sizes.px(14), side, side)


def draw_reference_line(canvas: Canvas, view: HangingView, stage: Stage) -> None:
    """A chain line down from the rail, and a knob on it with an arrow to either side."""
    foot = stage.frame.bottom - view.foot_px - view.look.sizes.px(8)
    knob, picked = reference_handle(view, stage), view.picked == "reference"
    draw_chain_line(canvas, view.look, knob, stage.rail.bottom, foot, picked=picked)


def draw_chain_line(canvas: Canvas, look: Look, knob: Rect, top: float, foot: float, *, picked: bool) -> None:
    """A line of dashes and dots from top to foot, with a knob to drag it by: an arrow to either side in a circle."""
    theme, sizes = look.theme, look.sizes
    x, y = knob.center
    dash = tuple(sizes.px(length) for length in DASH_DOT)
    canvas.line([(x, top), (x, foot)], theme.ink, width=sizes.px(2), dash=dash)
    radius = knob.w / 2
    canvas.circle((x, y), radius, fill=theme.ink if picked else theme.panel, outline=theme.ink, width=sizes.stroke)
    color = theme.panel if picked else theme.ink
    tip, back, half = radius * 0.62, radius * 0.16, radius * 0.34
    for side in (-1, 1):
        canvas.polygon([(x + side * tip, y), (x + side * back, y - half), (x + side * back, y + half)], fill=color)


def reference_boxes(view: HangingView, stage: Stage) -> list[Rect]:
    """What no label may cover: the knob and the line."""
    knob = reference_handle(view, stage)
    top, foot = stage.rail.bottom, stage.frame.bottom - view.foot_px
    return [knob.grown(view.look.sizes.px(5)), Rect(knob.center[0] - 2, top, 4, foot - top)]


def name_reference_line(view: HangingView, stage: Stage, board: LabelBoard) -> None:
    """The words beside its knob."""
    look = view.look
    knob = reference_handle(view, stage)
    gap = look.sizes.px(6)
    text = look.words.say("reference line")
    spots: list[Spot] = [
        ((knob.right + gap, knob.center[1]), "left middle"),
        ((knob.x - gap, knob.center[1]), "right middle"),
        ((knob.right + look.sizes.px(30), knob.center[1]), "left middle"),
        ((knob.x - look.sizes.px(30), knob.center[1]), "right middle"),
    ]
    board.place(text, spots, size=look.sizes.text("small"), color=look.theme.soft)


def draw_quartered(canvas: Canvas, look: Look, at: Point, radius: float, angle_rad: float = 0.0) -> None:
    """The mark of a balance point: a disc in quarters, turned with its body."""
    theme = look.theme
    canvas.circle(at, radius, fill=theme.panel)
    for start in (0.0, pi):
        arc = [start + angle_rad + step * pi / 16 for step in range(9)]
        canvas.polygon([at, *((at[0] + radius * cos(a), at[1] - radius * sin(a)) for a in arc)], fill=theme.ink)
    canvas.circle(at, radius, outline=theme.ink, width=look.sizes.stroke)


def draw_balance_point(canvas: Canvas, view: HangingView, stage: Stage, board: LabelBoard) -> None:
    """The balance point on the bar, and where it lies along the rule."""
    look = view.look
    along, _, up = sum_of(view.bench).balance_point_m
    at = stage.hook_px(view, along, 0.0 if abs(stage.camera.length_px(up)) < 2 else up)
    radius = look.sizes.px(BALANCE_PX)
    draw_quartered(canvas, look, at, radius, view.angle_rad)
    if view.bench.moving:
        return  # its words would hop from side to side, away from whatever swings by
    text = look.words.say("balances at {place}", place=view.readings.length_with_unit(along))
    above, below = stage.bar.h / 2 + look.sizes.px(7), stage.bar.h / 2 + look.sizes.px(7)
    lift = look.sizes.px(16)
    spots: list[Spot] = []
    for step in range(3):
        spots += [
            ((at[0] + lift, at[1] - above - step * lift), "left bottom"),
            ((at[0] - lift, at[1] - above - step * lift), "right bottom"),
            ((at[0], at[1] - above - step * lift), "center bottom"),
            ((at[0], at[1] + below + step * lift), "center top"),
            ((at[0] + lift, at[1] + below + step * lift), "left top"),
            ((at[0] - lift, at[1] + below + step * lift), "right top"),
        ]
    board.keep_clear([Rect(at[0] - radius, at[1] - radius, 2 * radius, 2 * radius)])
    size = look.sizes.text("small")
    texts = (text, view.readings.length_with_unit(along))
    board.place_one_of(texts, spots, sizes=(size,), color=look.theme.settled, bold=True)


def name_pivot(view: HangingView, stage: Stage, board: LabelBoard) -> None:
    """Where the pivot is, beside the stirrup."""
    look = view.look
    box = carriage_rect(view, stage)
    place = view.readings.length_with_unit(view.bench.pivot.at_m)
    texts = (look.words.say("pivot {place}", place=place), place)
    sizes = (look.sizes.text("body"), look.sizes.text("small"))
    y = box.bottom + look.sizes.px(6)
    gap = look.sizes.px(8)
    lower = y + look.sizes.px(38)
    spots: list[Spot] = [
        ((box.right + gap, y), "left top"),
        ((box.x - gap, y), "right top"),
        ((box.right, lower), "left top"),
        ((box.x, lower), "right top"),
    ]
    board.place_one_of(texts, spots, sizes=sizes, color=look.theme.ink, bold=True)


def draw_level_line(canvas: Canvas, view: HangingView, stage: Stage, board: LabelBoard) -> None:
    """Once let go: where the bar's middle was when it was held level."""
    sizes = view.look.sizes
    y = stage.camera.y_px(0.0)
    ends = [(stage.bar.x - sizes.px(10), y), (stage.bar.right + sizes.px(10), y)]
    board.keep_clear([Rect(ends[0][0], y - 1, ends[1][0] - ends[0][0], 2)])
    canvas.line(ends, view.look.theme.edge, width=sizes.px(1), dash=(sizes.px(3), sizes.px(6)))


def draw_turn_arrow(canvas: Canvas, view: HangingView, stage: Stage, board: LabelBoard) -> None:
    """Beyond the end that has dropped: which way it turned, in the colour of that sense."""
    turn = view.angle_rad
    if abs(turn) < LEAST_TURN_RAD:
        return
    theme, sizes = view.look.theme, view.look.sizes
    bar, pivot = view.bench.bar, view.bench.pivot
    pin = stage.camera.at(pivot.at_m, pivot.up_m)
    end_m, start = (bar.left_m, pi) if turn > 0 else (bar.right_m, 0.0)
    reach = stage.camera.length_px(hypot(end_m - pivot.at_m, pivot.up_m)) + sizes.px(16)
    color = theme.anticlockwise if turn > 0 else theme.clockwise
    head = sizes.px(13)
    # The tip is where the middle of the end has come to; the line stops short of it.
    tip = start + turn
    sweep = copysign(max(abs(turn) - head / reach, 0.0), turn)
    if sweep:
        canvas.arc(pin, reach, start, sweep, color, width=sizes.px(4))
    back, half = tip - copysign(head / reach, turn), sizes.px(7)
    points = [
        _around(pin, reach, tip),
        _around(pin, reach + half, back),
        _around(pin, reach - half, back),
    ]
    canvas.polygon(points, fill=color)
    x, y = points[0]
    board.keep_clear([Rect(x - head, min(y, pin[1]), 2 * head, abs(y - pin[1]))])


def _around(center: Point, radius: float, angle_rad: float) -> Point:
    return center[0] + radius * cos(angle_rad), center[1] - radius * sin(angle_rad)
