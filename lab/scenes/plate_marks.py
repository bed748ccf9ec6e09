"""Marks on and over a hung plate: pencil lines and where they cross, the balance point, the plumb bob, the lines of
the sum."""

from __future__ import annotations

from math import hypot

from lab.scenes.labels import LabelBoard, Spot
from lab.scenes.marks import BALANCE_PX, DASH_DOT, draw_quartered
from lab.scenes.plate_view import PIN, REFERENCE, PlateStage, PlateView, settled_sum
from lab.ui.canvas import Canvas
from lab.ui.geometry import Point, Rect

PENCIL_DASH = (7.0, 5.0)
BOB_PX = 10.0
CROSSING_PX = 8.0
PIN_PX = 7.0


def reference_knob(view: PlateView, stage: PlateStage) -> Rect:
    """The knob by which the reference line is dragged, over the rule."""
    side = view.look.sizes.px(24)
    x = stage.camera.x_px(view.bench.reference_m)
    x = min(max(x, stage.frame.x + side / 2 + 2), stage.frame.right - side / 2 - 2)
    return Rect(x - side / 2, stage.rail.bottom + view.look.sizes.px(10), side, side)


def draw_reference(canvas: Canvas, view: PlateView, stage: PlateStage, board: LabelBoard) -> None:
    """A chain line over the picture with its knob and its name."""
    theme, sizes = view.look.theme, view.look.sizes
    knob = reference_knob(view, stage)
    x, y = knob.center
    dash = tuple(sizes.px(length) for length in DASH_DOT)
    canvas.line(((x, knob.bottom), (x, stage.rule.y)), theme.ink, width=sizes.px(1.5), dash=dash)
    picked = view.picked == REFERENCE
    canvas.circle((x, y), knob.w / 2, fill=theme.ink if picked else theme.panel, outline=theme.ink, width=sizes.stroke)
    color = theme.panel if picked else theme.ink
    tip, back, half = knob.w * 0.31, knob.w * 0.08, knob.w * 0.17
    for side in (-1, 1):
        canvas.polygon([(x + side * tip, y), (x + side * back, y - half), (x + side * back, y + half)], fill=color)
    board.keep_clear([knob.grown(2.0), Rect(x - 2, knob.bottom, 4, stage.rule.y - knob.bottom)])
    gap = sizes.px(6)
    spots: list[Spot] = [((knob.x - gap, y), "right middle"), ((knob.right + gap, y), "left middle")]
    text = view.look.words.say("reference line")
    board.place(text, spots, size=sizes.text("small"), color=theme.soft)


def draw_pencil_lines(canvas: Canvas, view: PlateView, stage: PlateStage) -> None:
    """The lines drawn so far, on the plate and beyond it: they may cross in the air."""
    theme, sizes = view.look.theme, view.look.sizes
    reach_m = _reach_m(view)
    dash = tuple(sizes.px(length) for length in PENCIL_DASH)
    for line in view.bench.lines:
        (x, z), (along, up) = line.through_m, line.down
        over_m = 0.06 * reach_m
        ends = [stage.px(view, (x - over_m * along, z - over_m * up)), stage.px(view, (x + reach_m * along,
                                                                                    z + reach_m * up))]  # fmt: skip
        canvas.line(ends, theme.ink, width=max(1.0, sizes.px(2)), dash=dash)
        radius = sizes.px(3)
        canvas.circle(stage.px(view, line.through_m), radius, fill=theme.ink)


def _reach_m(view: PlateView) -> float:
    """As far as the plate is wide and high together: past any crossing."""
    along, up = zip(*view.bench.outline_m, strict=True)
    return hypot(max(along) - min(along), max(up) - min(up))


def draw_plumb_bob(canvas: Canvas, view: PlateView, stage: PlateStage) -> None:
    """The cord from the pin with its bob, once the plate is let go."""
    theme, sizes = view.look.theme, view.look.sizes
    x, y = stage.camera.at(view.bench.pivot.at_m, view.bench.pivot.up_m)
    bob = sizes.px(BOB_PX)
    foot = max(stage.rule.y - 2.4 * bob, y + 2 * bob)
    canvas.line(((x, y), (x, foot)), theme.clockwise, width=max(1.0, sizes.px(1.5)))
    tip = ((x - bob / 2, foot), (x + bob / 2, foot), (x + bob / 2, foot + 0.6 * bob), (x, foot + 1.7 * bob),
           (x - bob / 2, foot + 0.6 * bob))  # fmt: skip
    canvas.polygon(tip, fill=theme.brass, outline=theme.brass_edge, width=max(1.0, sizes.px(1.5)))


def draw_pin(canvas: Canvas, view: PlateView, stage: PlateStage, board: LabelBoard) -> None:
    """The pin through the plate, and the two cords that carry it from the carriage on the rail."""
    theme, sizes = view.look.theme, view.look.sizes
    x, y = stage.camera.at(view.bench.pivot.at_m, view.bench.pivot.up_m)
    wide, high = sizes.px(46), sizes.px(26)
    box = Rect(x - wide / 2, stage.rail.center[1] - high / 2, wide, high)
    spread = sizes.px(9)
    for foot in (x - spread, x + spread):
        canvas.line([(foot, box.bottom - 2), (x, y)], theme.ink, width=max(1.0, sizes.px(1.5)))
    canvas.box(box, fill=theme.ink, radius=sizes.px(7))
    for side in (-1, 1):
        canvas.circle((x + side * sizes.px(12), box.center[1]), sizes.px(3.5), fill=theme.steel)
    radius = sizes.px(PIN_PX)
    if view.picked == PIN:
        canvas.circle((x, y), radius + sizes.px(6), fill=theme.held, outline=theme.ink, width=sizes.px(1.5))
    canvas.circle((x, y), radius, fill=theme.steel, outline=theme.ink, width=sizes.stroke)
    canvas.circle((x, y), radius * 0.35, fill=theme.ink)
    board.keep_clear([Rect(x - 2 * radius, y - 2 * radius, 4 * radius, 4 * radius)])


def pin_px(view: PlateView, stage: PlateStage) -> Rect:
    """The pin as it is drawn."""
    x, y = stage.camera.at(view.bench.pivot.at_m, view.bench.pivot.up_m)
    radius = view.look.sizes.px(PIN_PX)
    return Rect(x - radius, y - radius, 2 * radius, 2 * radius)


def draw_crossing(canvas: Canvas, view: PlateView, stage: PlateStage, board: LabelBoard) -> None:
    """A ring where the pencil lines cross."""
    crossing = view.bench.crossing_m
    if crossing is None:
        return
    theme, sizes = view.look.theme, view.look.sizes
    at = stage.px(view, crossing)
    radius = sizes.px(CROSSING_PX) if not view.outcome_shown else sizes.px(BALANCE_PX + 5)
    canvas.circle(at, radius, outline=theme.ink, width=sizes.stroke)
    board.keep_clear([Rect(at[0] - radius, at[1] - radius, 2 * radius, 2 * radius)])
    if not view.outcome_shown and not view.bench.moving and not stage.tight:
        text = view.look.words.say("the lines cross here")
        board.place(text, _round_about(at, radius + sizes.px(6)), size=sizes.text("small"), color=theme.ink, bold=True,
                    ground=theme.panel)  # fmt: skip


def draw_balance(canvas: Canvas, view: PlateView, stage: PlateStage, board: LabelBoard) -> None:
    """The balance point, in the wood or in the air."""
    theme, sizes, say = view.look.theme, view.look.sizes, view.look.words.say
    along, _, up = settled_sum(view.bench).balance_point_m
    at = stage.px(view, (along, up))
    radius = sizes.px(BALANCE_PX)
    draw_quartered(canvas, view.look, at, radius, view.angle_rad)
    board.keep_clear([Rect(at[0] - radius, at[1] - radius, 2 * radius, 2 * radius)])
    if view.bench.moving or stage.tight:
        return  # its words would sweep over all that is read
    length = view.readings.length_with_unit
    text = say("balances at {along} along, {up} up", along=length(along), up=length(up))
    short = say("{along}, {up}", along=length(along), up=length(up))
    spots = _round_about(at, radius + sizes.px(7))
    sizes_px = (sizes.text("small"),)
    for words in (text, short):
        if board.place(words, spots, size=sizes_px[0], color=theme.ink, bold=True, ground=theme.panel) is not None:
            return


def name_pin(view: PlateView, stage: PlateStage, board: LabelBoard) -> None:
    """Where the pin is."""
    length, pivot = view.readings.length_with_unit, view.bench.pivot
    text = view.look.words.say("pin at {along}, {up}", along=length(pivot.at_m), up=length(pivot.up_m))
    at = stage.camera.at(pivot.at_m, pivot.up_m)
    spots = _round_about(at, view.look.sizes.px(16))
    board.place(text, spots, size=view.look.sizes.text("small"), color=view.look.theme.ink, bold=True,
                ground=view.look.theme.panel)  # fmt: skip


def _round_about(at: Point, gap: float) -> list[Spot]:
    """Spots to the sides, below and above, then farther out."""
    x, y = at
    spots: list[Spot] = []
    for out in (gap, 2.4 * gap, 4 * gap):
        spots += [
            ((x + out, y), "left middle"), ((x - out, y), "right middle"), ((x, y + out), "center top"),
            ((x, y - out), "center bottom"), ((x + out, y + out), "left top"), ((x - out, y + out), "right top"),
            ((x + out, y - out), "left bottom"), ((x - out, y - out), "right bottom"),
        ]  # fmt: skip
    return spots
