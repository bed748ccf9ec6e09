"""A little bar that hangs by its middle, held, with one brass weight on each side: both weights and arms written."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from lab.scenes.bar import draw_bar, draw_holding_cord, draw_pin, holding_at_m
from lab.scenes.hanging_view import HangingView, Stage
from lab.scenes.labels import LabelBoard
from lab.scenes.rail import draw_carriage, draw_steel
from lab.scenes.readings import Readings, Units
from lab.scenes.rows import HIGH, NECK
from lab.scenes.weights import Place, brass_rect, draw_brass, draw_cord
from lab.simulation import HangingBar
from lab.ui.canvas import Anchor, Canvas
from lab.ui.geometry import Point, Rect
from lab.ui.look import Look

BRASS_KG_M3 = 8500.0
DRAWN_SHARE = 1.5
"""Brass is drawn half as large again as it would be beside this bar, so that its number can be read on it."""

LEAST_SIDE_PX, MOST_SIDE_PX = 30.0, 84.0
CORD_PX = 40.0


@dataclass(frozen=True, slots=True, kw_only=True)
class PairView:
    """A pair on the bar as it is to be drawn.

    bench: the bar with its two weights, held; the pivot is at 0.
    """

    bench: HangingBar
    look: Look
    units: Units


def draw_pair_bar(canvas: Canvas, rect: Rect, view: PairView) -> None:
    """Draws the bar into a rectangle; nothing leaves it."""
    hanging = _hanging(view)
    stage = hanging.stage(rect)
    with canvas.clipped(rect):
        canvas.box(rect, fill=view.look.theme.paper)
        board = LabelBoard(canvas, rect)
        draw_steel(canvas, hanging, stage)
        _draw_rule(canvas, hanging, stage, board)
        places = _places(view, hanging, stage)
        _write(canvas, view, hanging, stage, places, board)
        draw_holding_cord(canvas, hanging, stage, board, [])
        draw_bar(canvas, hanging, stage)
        draw_carriage(canvas, hanging, stage, board)
        for place in places.values():
            draw_cord(canvas, view.look, place)
        for weight in view.bench.weights:
            draw_brass(canvas, view.look, places[weight.id].body, hanging.readings.weight(weight.mass_kg))
        draw_pin(canvas, hanging, stage)


def _hanging(view: PairView) -> HangingView:
    """The bare bar: what hangs on it is drawn here, larger than on the long bars."""
    bench = view.bench
    bare = HangingBar(bar=bench.bar, pivot=bench.pivot, units=bench.units)
    readings = Readings(words=view.look.words, units=view.units)
    return HangingView(bench=bare, look=view.look, readings=readings)


def _draw_rule(canvas: Canvas, hanging: HangingView, stage: Stage, board: LabelBoard) -> None:
    """A mark for each hook, counted outward from the middle both ways; where letters are large, not all numbers."""
    theme, sizes, units = hanging.look.theme, hanging.look.sizes, hanging.readings.units
    half = round(units.from_m(hanging.bench.bar.right_m))
    size, top = sizes.text("small"), stage.rail.y
    words = hanging.look.words
    # The middle and the last one with its unit first: those are never left out.
    for hook in sorted(range(-half, half + 1), key=lambda hook: (hook != 0, hook != half, abs(hook))):
        x = stage.camera.x_px(units.to_m(hook))
        canvas.line([(x, top - sizes.px(12)), (x, top)], theme.soft, width=sizes.px(2))
        text = words.number(abs(hook), 0)
        if hook == half:
            text = words.say("{number} {unit}", number=text, unit=units.length_word)
        board.place(text, [((x, top - sizes.px(16)), "center bottom")], size=size, color=theme.soft)


def _places(view: PairView, hanging: HangingView, stage: Stage) -> Mapping[int, Place]:
    sizes = view.look.sizes
    places = {}
    for weight in view.bench.weights:
        true_m = float((weight.mass_kg / BRASS_KG_M3) ** (1 / 3))
        side = DRAWN_SHARE * stage.camera.length_px(true_m)
        # Less than the step between two hooks, so that two neighbours never touch.
        side = max(sizes.px(LEAST_SIDE_PX), min(side, sizes.px(MOST_SIDE_PX)))
        hook = stage.hook_px(hanging, weight.at_m)
        top = hook[1] + stage.bar.h / 2 + sizes.px(CORD_PX)
        lowest = stage.frame.bottom - side * (NECK + HIGH) - 3.2 * sizes.text("body")
        places[weight.id] = Place(hook=hook, body=brass_rect((hook[0], min(top, lowest)), side))
    return places


def _write(
    canvas: Canvas, view: PairView, hanging: HangingView, stage: Stage, places: Mapping[int, Place], board: LabelBoard
) -> None:
    """Under each weight what it weighs, and from the middle to its cord how far out it hangs."""
    look, readings, units = view.look, hanging.readings, view.units
    theme, sizes, say = look.theme, look.sizes, look.words.say
    middle = stage.camera.x_px(view.bench.pivot.at_m)
    room = (middle, stage.camera.x_px(holding_at_m(hanging)))
    above = stage.bar.y - sizes.px(16)
    for weight in view.bench.weights:
        x, hook_y = places[weight.id].hook
        shown = say("{number} {unit}", number=readings.weight(weight.mass_kg), unit=units.weight_word)
        _label(canvas, look, shown, (x, places[weight.id].body.bottom + sizes.px(6)), "center top", room)
        board.keep_clear([Rect(min(x, middle), above - sizes.px(6), abs(x - middle), sizes.px(12))])
        canvas.line([(x, hook_y), (x, above - sizes.px(6))], theme.soft, width=sizes.px(1))
        canvas.line([(middle, above), (x, above)], theme.ink, width=sizes.px(1.5))
        tip = sizes.px(7) if x > middle else -sizes.px(7)
        canvas.polygon([(x, above), (x - tip, above - sizes.px(4)), (x - tip, above + sizes.px(4))], fill=theme.ink)
        arm = say("{number} {unit}", number=readings.short_length(abs(weight.at_m)), unit=units.length_word)
        _label(canvas, look, arm, (x, above - sizes.px(8)), "center bottom", room)


def _label(canvas: Canvas, look: Look, text: str, at: Point, anchor: Anchor, room: tuple[float, float]) -> None:
    """Write over or under a place, but on its own side of the middle, and short of the cord that holds the bar.

    room: the middle and the cord.
    """
    middle, cord = room
    size = look.sizes.text("body")
    half = canvas.text_size(text, size=size, bold=True)[0] / 2 + look.sizes.px(5)
    x = max(min(at[0], cord - half), middle + half) if at[0] > middle else min(at[0], middle - half)
    canvas.text(text, (x, at[1]), size=size, color=look.theme.ink, bold=True, anchor=anchor)
