"""Marks on the picture of a body on scales: cords that hold it, reference line, balance point, what it tips over."""

from __future__ import annotations

from lab.mechanics import Toppling, Vector
from lab.scenes.labels import LabelBoard, Spot
from lab.scenes.marks import DASH_DOT, draw_quartered
from lab.scenes.scales.stage import ScalesStage, tipped_place_m
from lab.scenes.scales.view import REFERENCE, ScalesView, load_key, scale_key
from lab.scenes.views.place_marks import DASHED
from lab.scenes.views.stage import Panel
from lab.ui.canvas import Canvas
from lab.ui.geometry import Point, Rect, bounding

MARK_PX, KNOB_PX = 11.0, 24.0
HELD_AT = 0.05
"""How far inside its ends the body is held, as a share of its length: clear of a reference line at an end."""


def draw_cords(canvas: Canvas, view: ScalesView, panel: Panel, board: LabelBoard) -> None:
    """Held: two cords from above, a yellow knob at each end of the body."""
    if not view.bench.held:
        return
    theme, sizes = view.look.theme, view.look.sizes
    radius = sizes.px(9)
    left, right = view.bench.carrier_m
    y = panel.px((left, 0.0, view.bench.top_m))[1]
    inset = HELD_AT * (right - left)
    for at_m in (left + inset, right - inset):
        x = panel.camera.x_px(at_m)
        canvas.line(((x, panel.frame.y), (x, y - radius)), theme.ink, width=sizes.px(3))
        canvas.circle((x, y - radius + sizes.px(2)), radius, fill=theme.held, outline=theme.ink, width=sizes.stroke)
        board.keep_clear([Rect(x - radius, panel.frame.y, 2 * radius, y - panel.frame.y)])


def name_held(view: ScalesView, panel: Panel, board: LabelBoard) -> None:
    """The word beside the cords."""
    if not view.bench.held:
        return
    theme, sizes = view.look.theme, view.look.sizes
    left, right = view.bench.carrier_m
    x, y = panel.px((right - HELD_AT * (right - left), 0.0, view.bench.top_m))
    spots: list[Spot] = [
        ((x - sizes.px(14), y - sizes.px(26)), "right middle"),
        ((x - sizes.px(14), panel.frame.y + sizes.px(22)), "right middle"),
        ((x + sizes.px(14), panel.frame.y + sizes.px(22)), "left middle"),
    ]
    board.place(view.look.words.say("held"), spots, size=sizes.text("small"), color=theme.soft)


def reference_knob(view: ScalesView, stage: ScalesStage) -> Rect | None:
    """The knob by which the reference line is dragged; None where there is no line."""
    panel = stage.side or stage.top
    if not view.told or panel is None or (view.three and view.tips):
        return None
    side = view.look.sizes.px(KNOB_PX)
    x, y = panel.camera.x_px(view.bench.reference_m), panel.frame.y + view.look.sizes.px(26)
    return Rect(x - side / 2, y, side, side)


def draw_reference(canvas: Canvas, view: ScalesView, stage: ScalesStage, board: LabelBoard) -> None:
    """A chain line down to the rule, and a knob on it with an arrow to either side."""
    knob = reference_knob(view, stage)
    if knob is None:
        return
    theme, sizes = view.look.theme, view.look.sizes
    x, y = knob.center
    foot = stage.rule.y if stage.side is not None else stage.frame.bottom
    dash = tuple(sizes.px(length) for length in DASH_DOT)
    canvas.line(((x, knob.y), (x, foot)), theme.ink, width=sizes.px(2), dash=dash)
    picked = view.picked == REFERENCE
    radius = knob.w / 2
    canvas.circle((x, y), radius, fill=theme.ink if picked else theme.panel, outline=theme.ink, width=sizes.stroke)
    color = theme.panel if picked else theme.ink
    tip, back, half = radius * 0.62, radius * 0.16, radius * 0.34
    for side in (-1, 1):
        canvas.polygon([(x + side * tip, y), (x + side * back, y - half), (x + side * back, y + half)], fill=color)
    board.keep_clear([knob.grown(sizes.px(4)), Rect(x - 2, knob.y, 4, foot - knob.y)])


def name_reference(view: ScalesView, stage: ScalesStage, board: LabelBoard) -> None:
    """The words beside its knob."""
    knob = reference_knob(view, stage)
    if knob is None:
        return
    sizes = view.look.sizes
    gap, y = sizes.px(7), knob.center[1]
    spots: list[Spot] = [((knob.right + gap, y), "left middle"), ((knob.x - gap, y), "right middle")]
    board.place(view.look.words.say("reference line"), spots, size=sizes.text("small"), color=view.look.theme.soft)


def draw_balance(canvas: Canvas, view: ScalesView, stage: ScalesStage, panel: Panel, board: LabelBoard) -> None:
    """The balance point, and while the body lies level a line from it down to the rule."""
    if not view.told:
        return
    look, sizes = view.look, view.look.sizes
    balance = view.bench.sum.balance_point_m
    if panel.face == "top":
        along, across = tipped_place_m(view, (balance[0], balance[1]), balance[2])
        at = panel.camera.at(along, across)
    elif view.three and view.tips:
        at = panel.flat_px(panel.hook_m)
    else:
        at = panel.px(balance)
    radius = sizes.px(MARK_PX)
    level = not view.tips
    if panel.face == "side" and level:
        foot = stage.rule.y
        dash = tuple(sizes.px(length) for length in DASHED)
        canvas.line(((at[0], at[1]), (at[0], foot)), look.theme.settled, width=sizes.px(2), dash=dash)
        board.keep_clear([Rect(at[0] - 1, at[1], 2, foot - at[1])])
    draw_quartered(canvas, look, at, radius, panel.angle_rad)
    board.keep_clear([Rect(at[0] - radius, at[1] - radius, 2 * radius, 2 * radius)])
    if level and (panel.face == "top" or stage.top is None):
        _name_balance(view, stage, panel, board, at)


def _name_balance(view: ScalesView, stage: ScalesStage, panel: Panel, board: LabelBoard, at: Point) -> None:
    """Where it balances, beside its mark or its line."""
    look, sizes = view.look, view.look.sizes
    balance, radius = view.bench.sum.balance_point_m, sizes.px(MARK_PX)
    place = view.readings.length_with_unit(balance[0])
    text = look.words.say("balances at {place}", place=place)
    gap, y = sizes.px(8), (at[1] + stage.floor_y) / 2 if panel.face == "side" else at[1]
    off, line = gap + radius, 0.7 * sizes.text("small")
    beside: list[list[Spot]] = [
        [((at[0] + off, y + row * line), "left middle"), ((at[0] - off, y + row * line), "right middle")]
        for row in (0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5)
    ]
    near: list[Spot] = [spot for pair in beside[:3] for spot in pair]
    if panel.face == "top":
        near += [((at[0], at[1] - off), "center bottom"), ((at[0], at[1] + off), "center top")]
    far = [spot for pair in beside[3:] for spot in pair]
    for spots in (near, far):
        size, color = (sizes.text("small"),), look.theme.settled
        if board.place_one_of((text, place), spots, sizes=size, color=color, bold=True) is not None:
            return


def draw_triangle(canvas: Canvas, view: ScalesView, panel: Panel, board: LabelBoard) -> None:
    """The lines from scale to scale: inside them it stands."""
    points = [panel.camera.at(*scale.at_m[:2]) for scale in view.bench.scales]
    theme, sizes = view.look.theme, view.look.sizes
    dash = tuple(sizes.px(length) for length in DASHED)
    canvas.line([*points, points[0]], theme.ink, width=sizes.px(1.5), dash=dash)
    for start, end in zip(points, (*points[1:], points[0]), strict=True):
        along = [(start[0] + step / 30 * (end[0] - start[0]), start[1] + step / 30 * (end[1] - start[1]))
                 for step in range(31)]  # fmt: skip
        board.keep_clear([Rect(x - 3, y - 3, 6, 6) for x, y in along])
    if view.bench.tipping is not None:
        board.keep_clear([_draw_edge(canvas, view, points, view.bench.tipping)])


def _draw_edge(canvas: Canvas, view: ScalesView, points: list[Point], tipping: Toppling) -> Rect:
    """The line that it tips over, and an arrow that way; returns where the arrow lies."""
    theme, sizes = view.look.theme, view.look.sizes
    kept = [point for point, share in zip(points, tipping.bears, strict=True) if share]
    if len(kept) == 2:
        canvas.line(kept, theme.clockwise, width=sizes.px(4))
    foot = (
        sum(share * point[0] for point, share in zip(points, tipping.bears, strict=True)),
        sum(share * point[1] for point, share in zip(points, tipping.bears, strict=True)),
    )
    (dx, dy), long, head = (tipping.way[0], -tipping.way[1]), sizes.px(84), sizes.px(11)
    tip = (foot[0] + long * dx, foot[1] + long * dy)
    neck = (tip[0] - head * dx, tip[1] - head * dy)
    canvas.line([foot, neck], theme.clockwise, width=sizes.px(4))
    barbs = [
        (neck[0] - 0.6 * head * dy, neck[1] + 0.6 * head * dx),
        (neck[0] + 0.6 * head * dy, neck[1] - 0.6 * head * dx),
    ]
    canvas.polygon([tip, *barbs], fill=theme.clockwise)
    return bounding([foot, tip, *barbs])


def place_plate(canvas: Canvas, view: ScalesView, panel: Panel) -> tuple[Rect, str] | None:
    """Where the plate with the place of what is being carried lies, over it, and what it says; None for nothing."""
    found, rect = _carried_m(view), panel.frame
    if found is None:
        return None
    look, readings = view.look, view.readings
    text = readings.length_with_unit(found[0])
    if panel.face == "top":
        text = look.words.say("{along}, {across} across", along=text, across=readings.length_with_unit(found[1]))
    size = look.sizes.text("body")
    wide, high = canvas.text_size(text, size=size, bold=True)
    wide, high = wide + look.sizes.px(16), high + look.sizes.px(4)
    x, y = panel.px(found)
    left = min(max(x - wide / 2, rect.x + 4), rect.right - wide - 4)
    return Rect(left, max(rect.y + 4, y - look.sizes.px(40) - high), wide, high), text


def draw_place_plate(canvas: Canvas, view: ScalesView, panel: Panel) -> None:
    """The place of what is just being carried, over it."""
    found = place_plate(canvas, view, panel)
    if found is None:
        return
    (plate, text), look = found, view.look
    theme, size = look.theme, look.sizes.text("body")
    canvas.box(plate, fill=theme.held_fill, outline=theme.ink, width=look.sizes.px(1), radius=look.sizes.px(6))
    canvas.text(text, plate.center, size=size, color=theme.ink, bold=True, anchor="center middle")


def _carried_m(view: ScalesView) -> Vector | None:
    """Where that is which is being carried, in the body's own coordinates."""
    bench, ghost = view.bench, view.ghost
    if ghost is not None:
        return None if ghost.at_m is None else (*ghost.at_m, ghost.part.at_m[2])
    for load in bench.loads:
        if load_key(load.id) == view.carried:
            return load.part.at_m
    for scale in bench.scales:
        if scale_key(scale) == view.carried:
            return scale.at_m[0], scale.at_m[1], bench.underside_m
    return (bench.reference_m, 0.0, bench.top_m) if view.carried == REFERENCE else None
