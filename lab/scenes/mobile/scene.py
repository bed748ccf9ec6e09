"""The whole picture of a mobile: what is drawn, in which order, and what in it can be grabbed."""

from __future__ import annotations

from collections.abc import Mapping

from lab.scenes.labels import LabelBoard
from lab.scenes.marks import DASH_DOT
from lab.scenes.mobile.bodies import draw_bar, draw_cord, draw_load, draw_ring
from lab.scenes.mobile.marks import draw_balance, label_loads, name_bars, say_held, write_carried
from lab.scenes.mobile.stage import MobileStage, Pose, on_bar, pose_of, size_of, stage_of
from lab.scenes.mobile.view import BAR, HOOK, REFERENCE, WEIGHT, Ghost, MobileView
from lab.ui.canvas import Canvas
from lab.ui.geometry import Point, Rect

BAR_PIECES = 16


def draw_mobile(canvas: Canvas, rect: Rect, view: MobileView) -> None:
    """Draws the bench into a rectangle; nothing leaves it."""
    stage = stage_of(view, rect)
    pose = pose_of(view, stage)
    with canvas.clipped(rect):
        canvas.box(rect, fill=view.look.theme.paper)
        _draw(canvas, view, stage, pose)


def _draw(canvas: Canvas, view: MobileView, stage: MobileStage, pose: Pose) -> None:
    board = LabelBoard(canvas, stage.frame.cut_bottom(view.foot_px)[1])
    _draw_rail(canvas, view, stage)
    board.keep_clear([stage.rail, *_taken(view, stage, pose)])
    if view.lines:
        _draw_reference(canvas, view, stage, board)
    _draw_cords(canvas, view, stage, pose)
    for beam in view.bench.beams:
        draw_bar(canvas, view, stage, beam, pose.rings[beam.id], pose.angles_rad[beam.id])
    for beam in view.bench.beams:
        draw_ring(canvas, view.look, pose.rings[beam.id], held=view.bench.held)
    place = carried_place(view, pose)
    if place is not None:
        plate = _plate(canvas, view, stage, pose, place)
        board.keep_clear([plate])
    label_loads(view, pose, board, _draw_hung(canvas, view, pose))
    if view.told:
        draw_balance(canvas, view, stage, pose, board)
        write_carried(view, pose, board)
    if view.bench.held:
        say_held(view, stage, board)
    # What is told of bars at rest calls them by name; on their way names would hop from end to end.
    if (view.numbers or not view.bench.held) and not view.bench.moving:
        name_bars(view, stage, pose, board)
    if place is not None:
        _draw_plate(canvas, view, plate, place[1])
    if view.ghost is not None and view.ghost.pointer is not None:
        _draw_ghost(canvas, view, stage, view.ghost, view.ghost.pointer)


def _draw_rail(canvas: Canvas, view: MobileView, stage: MobileStage) -> None:
    theme, sizes, rail = view.look.theme, view.look.sizes, stage.rail
    canvas.box(rail, fill=theme.steel, radius=sizes.px(4))
    canvas.box(Rect(rail.x + 3, rail.y + 2, rail.w - 6, max(2.0, rail.h * 0.2)), fill="#FFFFFF50", radius=1)
    canvas.box(rail, outline=theme.steel_edge, width=sizes.stroke, radius=sizes.px(4))


def _draw_cords(canvas: Canvas, view: MobileView, stage: MobileStage, pose: Pose) -> None:
    x, y = stage.top
    canvas.line([(x, stage.rail.bottom), (x, y)], view.look.theme.ink, width=view.look.sizes.px(3))
    for number, hook in pose.hooks.items():
        body = pose.bodies.get(number)
        end = pose.rings[number] if body is None else (body.center[0], body.y)
        canvas.line([hook, end], view.look.theme.ink, width=view.look.sizes.px(2))


def _draw_hung(canvas: Canvas, view: MobileView, pose: Pose) -> set[int]:
    """Hooks and weights; returns the ids of those that say no weight themselves."""
    bare = set()
    for beam in view.bench.beams:
        if beam.id in pose.hooks:
            hook = pose.hooks[beam.id]
            draw_cord(canvas, view.look, hook, hook, picked=view.picked == f"{HOOK}{beam.id}")
        for weight in beam.weights:
            draw_cord(canvas, view.look, pose.hooks[weight.id], pose.hooks[weight.id])
            stamped = draw_load(
                canvas,
                view.look,
                (weight.look, weight.mass_kg),
                pose.bodies[weight.id],
                view.readings.stamp(weight.mass_kg),
                picked=view.picked == f"{WEIGHT}{weight.id}",
                faint=view.coming == weight.id,
            )
            if not stamped:
                bare.add(weight.id)
    return bare


def _taken(view: MobileView, stage: MobileStage, pose: Pose) -> list[Rect]:
    """What no label may cover: bars in small pieces, cords, bodies, rings."""
    half, boxes = stage.sizing.half_bar + 2, list(pose.bodies.values())
    for beam in view.bench.beams:
        ring, angle = pose.rings[beam.id], pose.angles_rad[beam.id]
        step = beam.length_m / BAR_PIECES
        reach = step * stage.sizing.px_per_m / 2
        for piece in range(BAR_PIECES + 1):
            x, y = on_bar(stage, beam, ring, angle, piece * step)
            boxes.append(Rect(x - reach, y - half, 2 * reach, 2 * half))
        foot = on_bar(stage, beam, ring, angle, beam.pin_m)
        boxes.append(
            Rect(min(ring[0], foot[0]) - half, min(ring[1], foot[1]) - half, 2 * half, abs(foot[1] - ring[1]) + half)
        )
    for number, (x, y) in pose.hooks.items():
        low = pose.bodies[number].y if number in pose.bodies else pose.rings[number][1]
        boxes.append(Rect(x - 3, y, 6, max(low - y, 0.0)))
    return boxes


def reference_knob(view: MobileView, stage: MobileStage) -> Rect:
    """The knob by which the reference line is dragged, on the rail."""
    side = view.look.sizes.px(24)
    return Rect(stage.x_px(view.bench, view.bench.reference_m) - side / 2, stage.rail.center[1] - side / 2, side, side)


def _draw_reference(canvas: Canvas, view: MobileView, stage: MobileStage, board: LabelBoard) -> None:
    """A chain line down from the rail, and a knob on it with an arrow to either side."""
    theme, sizes = view.look.theme, view.look.sizes
    knob = reference_knob(view, stage)
    x, y = knob.center
    foot = stage.frame.bottom - view.foot_px - sizes.px(8)
    dash = tuple(sizes.px(length) for length in DASH_DOT)
    canvas.line([(x, knob.bottom), (x, foot)], theme.ink, width=sizes.px(2), dash=dash)
    picked, radius = view.picked == REFERENCE, knob.w / 2
    canvas.circle((x, y), radius, fill=theme.ink if picked else theme.panel, outline=theme.ink, width=sizes.stroke)
    color, tip, back, half = theme.panel if picked else theme.ink, radius * 0.62, radius * 0.16, radius * 0.34
    for side in (-1, 1):
        canvas.polygon([(x + side * tip, y), (x + side * back, y - half), (x + side * back, y + half)], fill=color)
    board.keep_clear([knob, Rect(x - 2, knob.bottom, 4, foot - knob.bottom)])
    gap, low = radius + sizes.px(5), stage.rail.bottom + sizes.px(3)
    board.place(
        view.look.words.say("reference line"),
        [((x + gap, low), "left top"), ((x - gap, low), "right top")],
        size=sizes.text("small"),
        color=theme.ink,
    )


def carried_place(view: MobileView, pose: Pose) -> tuple[Point, float] | None:
    """Where a thing that is carried hangs now: the pixel, and the place on its bar. None where nothing is."""
    bench = view.bench
    for beam in bench.beams:
        if view.carried == f"{BAR}{beam.id}":
            return pose.rings[beam.id], beam.pin_m
        if view.carried == f"{HOOK}{beam.id}" or (view.coming == beam.id and beam.id in pose.hooks):
            return pose.hooks[beam.id], beam.hook_m
        for weight in beam.weights:
            if view.carried == f"{WEIGHT}{weight.id}" or view.coming == weight.id:
                return pose.hooks[weight.id], weight.at_m
    return None


def _plate(canvas: Canvas, view: MobileView, stage: MobileStage, pose: Pose, place: tuple[Point, float]) -> Rect:
    """Where the plate with the place of what is carried lies: over the bar, beside what hangs there already."""
    sizes, (at, place_m) = view.look.sizes, place
    wide, high = canvas.text_size(view.readings.length_with_unit(place_m), size=sizes.text("body"), bold=True)
    wide, high, gap = wide + sizes.px(16), high + sizes.px(4), sizes.px(14)
    low, far = stage.frame.x + 4, stage.frame.right - wide - 4
    over, under = at[1] - gap - high, at[1] + gap
    taken = (*pose.bodies.values(), *(Rect(x - gap, y - gap, 2 * gap, 2 * gap) for x, y in pose.rings.values()))
    beside = (at[0] - wide / 2, at[0] + gap, at[0] - gap - wide)
    spots = [Rect(min(max(x, low), far), y, wide, high) for y in (over, under) for x in beside]
    return next((spot for spot in spots if not any(spot.intersects(each) for each in taken)), spots[0])


def _draw_plate(canvas: Canvas, view: MobileView, plate: Rect, place_m: float) -> None:
    look, sizes = view.look, view.look.sizes
    canvas.box(plate, fill=look.theme.held_fill, outline=look.theme.ink, width=sizes.px(1), radius=sizes.px(6))
    text, size = view.readings.length_with_unit(place_m), sizes.text("body")
    canvas.text(text, plate.center, size=size, color=look.theme.ink, bold=True, anchor="center middle")


def _draw_ghost(canvas: Canvas, view: MobileView, stage: MobileStage, ghost: Ghost, at: Point) -> None:
    """A thing from the tray that is over no bar: at the pointer."""
    if ghost.length_m is not None:
        wide, half = ghost.length_m * stage.sizing.px_per_m, stage.sizing.half_bar
        theme = view.look.theme
        plank = Rect(at[0] - wide / 2, at[1] - half, wide, 2 * half)
        canvas.box(plank, fill=theme.wood, outline=theme.wood_edge, width=view.look.sizes.stroke, radius=4)
        return
    wide, high = size_of(view.look, ghost.mass_kg, ghost.look, stage.shrunk[0])
    box = Rect(at[0] - wide / 2, at[1] - high / 2, wide, high)
    draw_load(canvas, view.look, (ghost.look, ghost.mass_kg), box, view.readings.stamp(ghost.mass_kg), faint=True)


def grab_bounds(view: MobileView, rect: Rect) -> Mapping[str, Rect]:
    """What can be grabbed in the picture, by key, in reading order: each bar before what hangs from it."""
    stage = stage_of(view, rect)
    pose = pose_of(view, stage)
    target = view.look.sizes.target
    bounds: dict[str, Rect] = {}
    if view.lines:
        bounds[REFERENCE] = reference_knob(view, stage).at_least(target, target)
    for beam in view.bench.beams:
        if beam.id in pose.hooks:
            x, y = pose.hooks[beam.id]
            bounds[f"{HOOK}{beam.id}"] = Rect(x, y, 0, 0).at_least(target, target)
        bounds[f"{BAR}{beam.id}"] = _bar_box(view, stage, pose, beam.id).at_least(target, target)
        for weight in sorted(beam.weights, key=lambda each: (each.at_m, each.id)):
            bounds[f"{WEIGHT}{weight.id}"] = pose.bodies[weight.id].at_least(target, target)
    seen = rect.cut_bottom(view.foot_px)[1] if view.foot_px else rect
    return {key: box.common(seen) if box.intersects(seen) else box for key, box in bounds.items()}


def _bar_box(view: MobileView, stage: MobileStage, pose: Pose, number: int) -> Rect:
    beam = next(each for each in view.bench.beams if each.id == number)
    ring, angle, half = pose.rings[number], pose.angles_rad[number], stage.sizing.half_bar
    (x, y), (far_x, far_y) = (on_bar(stage, beam, ring, angle, at_m) for at_m in (0.0, beam.length_m))
    return Rect(min(x, far_x), min(y, far_y) - half, abs(far_x - x), abs(far_y - y) + 2 * half)
