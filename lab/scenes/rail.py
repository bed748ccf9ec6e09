"""The overhead rail with the rule on it, and the carriage whose stirrup carries the bar."""

from __future__ import annotations

from math import ceil, floor, log10

from lab.scenes.hanging_view import HangingView, Stage
from lab.scenes.labels import LabelBoard, Spot, label_box
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect

NICE_STEPS = (1.0, 2.0, 5.0, 10.0)
CARRIAGE_PX = (54.0, 30.0)


def nice_step(least: float) -> float:
    """The smallest 1, 2 or 5 times a power of ten that is at least so much."""
    power = 10.0 ** floor(log10(least))
    return next((step * power for step in NICE_STEPS if step * power >= least * (1 - 1e-9)), 10.0 * power)


def draw_rail(canvas: Canvas, view: HangingView, stage: Stage, board: LabelBoard) -> None:
    """The steel rail and the rule along its upper edge."""
    rail, bar, units = stage.rail, view.bench.bar, view.readings.units
    key = ("rail", view.look, units.name, rail, stage.camera, bar.left_m, bar.right_m)
    canvas.kept(key, lambda: _draw_rail(canvas, view, stage))
    ticks = view.look.sizes.px(16)
    board.keep_clear([Rect(rail.x, rail.y - ticks, rail.w, rail.h + ticks), _numbers_box(canvas, view, stage)])


def _draw_rail(canvas: Canvas, view: HangingView, stage: Stage) -> None:
    draw_steel(canvas, view, stage)
    _draw_rule(canvas, view, stage)


def draw_steel(canvas: Canvas, view: HangingView, stage: Stage) -> None:
    """The rail without a rule."""
    theme, sizes, rail = view.look.theme, view.look.sizes, stage.rail
    canvas.box(rail, fill=theme.steel, radius=sizes.px(4))
    canvas.box(Rect(rail.x + 3, rail.y + 3, rail.w - 6, max(2.0, rail.h * 0.18)), fill="#FFFFFF50", radius=1)
    canvas.box(rail, outline=theme.steel_edge, width=sizes.stroke, radius=sizes.px(4))


def _draw_rule(canvas: Canvas, view: HangingView, stage: Stage) -> None:
    theme, sizes = view.look.theme, view.look.sizes
    units, bar = view.readings.units, view.bench.bar
    first, last = units.from_m(bar.left_m), units.from_m(bar.right_m)
    size = sizes.text("small")
    major = major_step(canvas, view, stage)
    px_per_unit = stage.camera.length_px(units.to_m(1.0))
    minor = max(nice_step(sizes.px(7) / px_per_unit), major / 10)
    base = stage.rail.y
    for index in range(ceil(first / minor - 1e-9), floor(last / minor + 1e-9) + 1):
        value = index * minor
        x = stage.camera.x_px(units.to_m(value))
        is_major = abs(value / major - round(value / major)) < 1e-6
        is_half = abs(2 * value / major - round(2 * value / major)) < 1e-6
        tick = sizes.px(14 if is_major else 9 if is_half else 6)
        canvas.line([(x, base - tick), (x, base)], theme.soft, width=sizes.px(2 if is_major else 1))
        if is_major:
            text = view.readings.words.number(value, 0 if major >= 1 else 1)
            canvas.text(text, (x, base - sizes.px(18)), size=size, color=theme.soft, anchor="center bottom")


def _numbers_box(canvas: Canvas, view: HangingView, stage: Stage) -> Rect:
    """The row of the rule's numbers, from the first to the last."""
    units, bar, sizes = view.readings.units, view.bench.bar, view.look.sizes
    size, major = sizes.text("small"), major_step(canvas, view, stage)
    ends = []
    for number in (ceil(units.from_m(bar.left_m) / major - 1e-9), floor(units.from_m(bar.right_m) / major + 1e-9)):
        text = view.readings.words.number(number * major, 0 if major >= 1 else 1)
        at = (stage.camera.x_px(units.to_m(number * major)), stage.rail.y - sizes.px(18))
        ends.append(label_box(canvas, text, (at, "center bottom"), size=size))
    return ends[0].union(ends[1])


def major_step(canvas: Canvas, view: HangingView, stage: Stage) -> float:
    """From one number of the rule to the next, in shown units: as close as the numbers leave room for."""
    units, bar = view.readings.units, view.bench.bar
    first, last = units.from_m(bar.left_m), units.from_m(bar.right_m)
    decimals = 0 if last - first >= 4 else 1
    words, size = view.readings.words, view.look.sizes.text("small")
    widest = max(canvas.text_size(words.number(end, decimals), size=size)[0] for end in (first, last))
    return nice_step((widest + view.look.sizes.px(14)) / stage.camera.length_px(units.to_m(1.0)))


def name_unit(canvas: Canvas, view: HangingView, stage: Stage, board: LabelBoard) -> None:
    """The unit's word after the last number, or under an end of the rail where there is no room."""
    units, sizes = view.readings.units, view.look.sizes
    size, major = sizes.text("small"), major_step(canvas, view, stage)
    top = floor(units.from_m(view.bench.bar.right_m) / major + 1e-9) * major
    half = canvas.text_size(view.readings.words.number(top, 0 if major >= 1 else 1), size=size)[0] / 2
    beside = stage.camera.x_px(units.to_m(top)) + half + sizes.px(8)
    under = stage.rail.bottom + sizes.px(5)
    spots: list[Spot] = [
        ((beside, stage.rail.y - sizes.px(18)), "left bottom"),
        ((stage.rail.right, under), "right top"),
        ((stage.rail.x, under), "left top"),
    ]
    step = sizes.px(16)
    spots += [((stage.rail.right - count * step, under), "right top") for count in range(1, 12)]
    board.place(units.length_word, spots, size=size, color=view.look.theme.soft)


def carriage_rect(view: HangingView, stage: Stage) -> Rect:
    """The carriage on the rail, over the pivot."""
    wide, high = (view.look.sizes.px(side) for side in CARRIAGE_PX)
    x = stage.camera.x_px(view.bench.pivot.at_m)
    return Rect(x - wide / 2, stage.rail.center[1] - high / 2, wide, high)


def draw_carriage(canvas: Canvas, view: HangingView, stage: Stage, board: LabelBoard) -> None:
    """The carriage and the stirrup down to the pin."""
    theme, sizes = view.look.theme, view.look.sizes
    box = carriage_rect(view, stage)
    pivot = view.bench.pivot
    pin = stage.camera.at(pivot.at_m, pivot.up_m)
    spread = sizes.px(12)
    for foot in (pin[0] - spread, pin[0] + spread):
        canvas.line([(foot, box.bottom - 2), pin], theme.ink, width=sizes.px(2))
    canvas.box(box, fill=theme.ink, radius=sizes.px(7))
    for x in (box.x + sizes.px(11), box.right - sizes.px(11)):
        canvas.circle((x, box.center[1]), sizes.px(4), fill=theme.steel)
    if view.picked == "pivot":
        canvas.box(box.grown(sizes.px(4)), outline=theme.ink, width=sizes.stroke, radius=sizes.px(10))
    board.keep_clear([box, Rect(pin[0] - spread, box.bottom, 2 * spread, pin[1] - box.bottom)])
