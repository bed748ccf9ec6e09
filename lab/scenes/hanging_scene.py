"""The whole picture of the hanging bar: what is drawn, in which order, and what in it can be grabbed."""

from __future__ import annotations

from collections.abc import Mapping

from lab.scenes.bar import draw_bar, draw_holding_cord, draw_pin
from lab.scenes.bar_bodies import draw_body, draw_rod, is_rod
from lab.scenes.dimension_lines import draw_dimension_lines
from lab.scenes.hanging_view import GHOST_ID, PIVOT, REFERENCE, Ghost, HangingView, Stage, weight_key
from lab.scenes.labels import LabelBoard
from lab.scenes.marks import (
    draw_balance_point,
    draw_level_line,
    draw_reference_line,
    draw_turn_arrow,
    name_pivot,
    name_reference_line,
    reference_boxes,
    reference_handle,
)
from lab.scenes.rail import carriage_rect, draw_carriage, draw_rail, name_unit
from lab.scenes.ties import draw_ties
from lab.scenes.weights import (
    clamp_rect,
    draw_brass,
    draw_cord,
    draw_weights,
    hung_places,
    level_rect,
    weight_bounds,
)
from lab.ui.canvas import Canvas
from lab.ui.geometry import Point, Rect


def draw_hanging_bar(canvas: Canvas, rect: Rect, view: HangingView) -> None:
    """Draws the bench into a rectangle; nothing leaves it."""
    stage = view.stage(rect)
    with canvas.clipped(rect):
        canvas.box(rect, fill=view.look.theme.paper)
        _draw_bench(canvas, view, stage)


def _draw_bench(canvas: Canvas, view: HangingView, stage: Stage) -> None:
    board = LabelBoard(canvas, stage.frame.cut_bottom(view.foot_px)[1])
    if not view.bench.held:
        draw_level_line(canvas, view, stage, board)
    draw_rail(canvas, view, stage, board)
    carried_m = view.ghost.at_m if view.ghost is not None else view.carried_at_m
    if carried_m is not None:
        board.keep_clear([place_plate(canvas, view, stage, carried_m)])
    clamps = [clamp_rect(stage, weight) for weight in view.bench.weights if weight.hold == "clamped"]
    if view.bench.held:
        board.keep_clear(clamps)
    draw_holding_cord(canvas, view, stage, board, clamps)
    draw_bar(canvas, view, stage)
    board.keep_clear(_bar_boxes(view, stage))
    draw_carriage(canvas, view, stage, board)
    if view.lines:
        draw_reference_line(canvas, view, stage)
        board.keep_clear(reference_boxes(view, stage))
    places = hung_places(view, stage)
    board.keep_clear(box for place in places.values() for box in (place.body, place.cord))
    draw_weights(canvas, view, stage, board, places)
    hooks = {each.name: stage.hook_px(view, each.at_m) for each in view.bench.weights}
    board.keep_clear(draw_ties(canvas, view.look, hooks))
    draw_pin(canvas, view, stage)
    _add_marks(canvas, view, stage, board)
    if view.ghost is not None:
        draw_ghost(canvas, view, stage, view.ghost)
    elif view.carried_at_m is not None:
        draw_place_plate(canvas, view, stage, view.carried_at_m)


def _add_marks(canvas: Canvas, view: HangingView, stage: Stage, board: LabelBoard) -> None:
    """What belongs to the thinking: names, the balance point, which way it turned, the arms."""
    if view.numbers:
        name_pivot(view, stage, board)
    if view.outcome_shown:
        if not view.bench.held:
            draw_turn_arrow(canvas, view, stage, board)
        draw_balance_point(canvas, view, stage, board)
    if view.lines:
        name_reference_line(view, stage, board)
    name_unit(canvas, view, stage, board)
    if view.lines and view.bench.held:
        bottom = stage.frame.bottom - view.foot_px - view.look.sizes.px(6)
        draw_dimension_lines(canvas, view, stage, board, feet(view, stage), bottom)


def _bar_boxes(view: HangingView, stage: Stage) -> list[Rect]:
    """The turned bar as a row of small boxes that labels keep clear of."""
    bar = view.bench.bar
    pieces = 24
    boxes = []
    for index in range(pieces + 1):
        x, y = stage.hook_px(view, bar.left_m + bar.length_m * index / pieces)
        half_w, half_h = stage.bar.w / pieces / 2, stage.bar.h / 2 + 2
        boxes.append(Rect(x - half_w, y - half_h, 2 * half_w, 2 * half_h))
    return boxes


def feet(view: HangingView, stage: Stage) -> dict[str, float]:
    """The lower end of each weight, by key."""
    places = hung_places(view, stage)
    lower = {}
    for weight in view.bench.weights:
        place = places.get(weight.id)
        lower[weight_key(weight)] = place.body.bottom if place else clamp_rect(stage, weight).bottom + 12
    return lower


def draw_ghost(canvas: Canvas, view: HangingView, stage: Stage, ghost: Ghost) -> None:
    """A weight on its way: at its place on the bar with the place written above, or at the pointer."""
    look = view.look
    side = stage.side_px(ghost.mass_kg)
    if ghost.at_m is None:
        if ghost.pointer is not None:
            wide, high = stage.size_px(ghost.coming)
            _draw_coming(
                canvas, view, stage, Rect(ghost.pointer[0] - wide / 2, ghost.pointer[1] - side / 2, wide, high)
            )
        return
    place = hung_places(view, stage).get(GHOST_ID)
    if place is None:
        draw_rod(canvas, look, level_rect(view, stage, ghost.coming), faint=True)
    else:
        draw_cord(canvas, look, place)
        _draw_coming(canvas, view, stage, place.body)
    draw_place_plate(canvas, view, stage, ghost.at_m)


def _draw_coming(canvas: Canvas, view: HangingView, stage: Stage, body: Rect) -> None:
    """The weight on its way, without its cord."""
    ghost = view.ghost
    if ghost is None:
        return
    if is_rod(ghost.coming):
        flat = clamp_rect(stage, ghost.coming)
        draw_rod(canvas, view.look, flat.moved(body.center[0] - flat.center[0], body.y - flat.y), faint=True)
    elif not draw_body(canvas, view.look, ghost.coming, body, faint=True):
        stamp = view.readings.stamp(ghost.mass_kg) if ghost.stamp is None else ghost.stamp
        draw_brass(canvas, view.look, body, stamp, faint=True)


def place_plate(canvas: Canvas, view: HangingView, stage: Stage, at_m: float) -> Rect:
    """Where the plate with the place of what is being carried lies: over the bar, within the picture."""
    sizes, hook = view.look.sizes, stage.hook_px(view, at_m)
    wide, high = canvas.text_size(_plate_text(view, at_m), size=sizes.text("body"), bold=True)
    wide, high = wide + sizes.px(16), high + sizes.px(4)
    x = min(max(hook[0] - wide / 2, stage.frame.x + 4), stage.frame.right - wide - 4)
    return Rect(x, hook[1] - stage.bar.h / 2 - sizes.px(8) - high, wide, high)


def draw_place_plate(canvas: Canvas, view: HangingView, stage: Stage, at_m: float) -> None:
    """The place of what is just being carried."""
    look, plate = view.look, place_plate(canvas, view, stage, at_m)
    canvas.box(
        plate, fill=look.theme.held_fill, outline=look.theme.ink, width=look.sizes.px(1), radius=look.sizes.px(6)
    )
    canvas.text(
        _plate_text(view, at_m),
        plate.center,
        size=look.sizes.text("body"),
        color=look.theme.ink,
        bold=True,
        anchor="center middle",
    )


def _plate_text(view: HangingView, at_m: float) -> str:
    written = None if view.ghost is None else view.ghost.plate
    return view.readings.length_with_unit(at_m) if written is None else written


def grab_bounds(view: HangingView, rect: Rect) -> Mapping[str, Rect]:
    """What can be grabbed in the picture, by key: weights, the carriage, the reference line."""
    stage = view.stage(rect)
    target = view.look.sizes.target
    bounds = {PIVOT: carriage_rect(view, stage).at_least(target, target)}
    if view.lines:
        bounds[REFERENCE] = reference_handle(view, stage).at_least(target, target)
    bounds.update(weight_bounds(view, stage))
    if not view.foot_px:
        return bounds
    seen = rect.cut_bottom(view.foot_px)[1]
    return {key: box.common(seen) if box.intersects(seen) else box for key, box in bounds.items()}


def place_at_m(view: HangingView, rect: Rect, point: Point) -> float | None:
    """The place along the bar under a point, None where it is too far from the bar to mean it.

    What hangs below belongs to the bar too: a weight is dropped by its body, not by its hook.
    """
    stage = view.stage(rect)
    bar = view.bench.bar
    along_m = stage.camera.along_m(point[0])
    slack_m = stage.camera.length_m(view.look.sizes.px(16))
    high, low = stage.rail.bottom, rect.bottom
    if not (bar.left_m - slack_m <= along_m <= bar.right_m + slack_m and high <= point[1] < low):
        return None
    return min(max(along_m, bar.left_m), bar.right_m)


def along_at_m(view: HangingView, rect: Rect, point: Point) -> float:
    """The place along the rail under a point, however high it is."""
    return view.stage(rect).camera.along_m(point[0])
