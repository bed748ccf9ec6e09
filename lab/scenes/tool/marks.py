"""Marks on a tool that is built on a finger: what is picked or on its way, where it balances, the arms."""

from __future__ import annotations

from lab.mechanics import balance_point_doubt_m
from lab.scenes.dimension_lines import Arm, ArmSheet, draw_arms, most_arms
from lab.scenes.finger_bench import trestle_boxes
from lab.scenes.finger_marks import MARK_PX
from lab.scenes.finger_stage import FingerStage, balance_m, body_place_px
from lab.scenes.labels import LabelBoard, Spot, label_box
from lab.scenes.marks import draw_quartered
from lab.scenes.tool.shelf import draw_alone
from lab.scenes.tool.view import FINGER, ToolView, key_of, part_box, part_key, reference_knob
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect


def draw_picked(canvas: Canvas, view: ToolView, stage: FingerStage) -> None:
    """A yellow frame round the part that is picked, or on its way and not yet there."""
    look = view.look
    sizes = look.sizes
    picked = view.picked
    if view.ghost is not None and view.ghost.tool is not None:
        picked = part_key(view.ghost.tool.ids[-1])
    for outline in stage.outlines:
        if key_of(view.tool, outline.part) == picked:
            box = part_box(view, stage, outline).grown(sizes.px(5))
            canvas.box(box, outline=look.theme.ink, width=sizes.px(4.5), radius=sizes.px(6))
            canvas.box(box, outline=look.theme.held, width=sizes.px(2.5), radius=sizes.px(6))


def draw_balance_line(canvas: Canvas, view: ToolView, stage: FingerStage) -> None:
    """From a balance point that lies level to its place on the rule; else only that place. The finger is before it."""
    look, rule = view.look, stage.rule
    sizes, (along_m, up_m) = look.sizes, balance_m(view.bench)
    x = stage.camera.x_px(along_m)
    level = not view.tool.motion.angle_rad and not view.tool.motion.z_m
    top = stage.camera.y_px(up_m) if level else rule.y
    canvas.line(((x, top), (x, rule.bottom + sizes.px(8))), look.theme.settled, width=sizes.px(3))


def draw_balance(canvas: Canvas, view: ToolView, stage: FingerStage, board: LabelBoard) -> None:
    """The balance point on the tool, wherever that now is, and where it was on the rule."""
    look, rule = view.look, stage.rule
    theme, sizes = look.theme, look.sizes
    along_m, up_m = balance_m(view.bench)
    mark = body_place_px(view.finger, stage, (along_m, up_m))
    x = stage.camera.x_px(along_m)
    draw_quartered(canvas, look, mark, sizes.px(MARK_PX))
    board.keep_clear([Rect(mark[0], mark[1], 0, 0).grown(sizes.px(MARK_PX + 2))])
    below, above, gap = rule.bottom + sizes.px(8), rule.y - sizes.px(6), sizes.px(6)
    steps = [sizes.px(step) for step in (40, 80, 120, 180, 240)]
    spots: list[Spot] = [
        *(((x + gap, below), "left top"), ((x - gap, below), "right top")),
        *(((x + gap, above), "left bottom"), ((x - gap, above), "right bottom")),
        *(((x + step, below), "left top") for step in steps),
        *(((x - step, below), "right top") for step in steps),
    ]
    size = sizes.text("body")
    board.place(balance_text(view), spots, size=size, color=theme.settled, bold=True, ground=theme.paper)


def balance_text(view: ToolView) -> str:
    """Where it balances, with one standard uncertainty where the parts state doubts."""
    say, readings = view.look.words.say, view.readings
    place = readings.length_with_unit(balance_m(view.bench)[0])
    doubt = balance_point_doubt_m(view.bench.parts)
    if doubt is None:
        return say("balances at {place}", place=place)
    units, decimals = readings.units, readings.fineness.length + 1
    return say(
        "balances at {place} ± {doubt} {unit}",
        place=view.look.words.number(units.from_m(balance_m(view.bench)[0]), decimals),
        doubt=view.look.words.number(units.from_m(doubt[0]), decimals),
        unit=units.length_word,
    )


def name_reference_line(canvas: Canvas, view: ToolView, stage: FingerStage, board: LabelBoard) -> None:
    """The words beside its knob."""
    look = view.look
    knob, gap, size = reference_knob(view, stage), look.sizes.px(8), look.sizes.text("small")
    text = look.words.say("reference line")
    spots: list[Spot] = [
        ((knob.right + gap, knob.center[1]), "left middle"),
        ((knob.x - gap, knob.center[1]), "right middle"),
        *(((knob.right + look.sizes.px(step), knob.center[1]), "left middle") for step in (30, 60, 90)),
    ]
    legs = trestle_boxes(view.finger, stage)
    spots.sort(key=lambda spot: any(label_box(canvas, text, spot, size=size).intersects(leg) for leg in legs))
    board.place(text, spots, size=size, color=look.theme.soft)


def draw_arms_of_parts(canvas: Canvas, view: ToolView, stage: FingerStage, board: LabelBoard) -> None:
    """As many arms as there is room for between the rule and the floor, the picked part's among them."""
    look, tool, readings = view.look, view.tool, view.readings
    knob = reference_knob(view, stage)
    top = knob.bottom + look.sizes.px(6)
    bottom = min(stage.ground_y, stage.frame.bottom) - look.sizes.px(6)
    arms = [
        Arm(
            part_key(id_),
            part.at_m[0],
            look.words.say(
                "{arm} {part}", arm=readings.length(part.at_m[0] - tool.reference_m), part=look.words.content(part.name)
            ),
            knob.bottom,
        )
        for id_, part in zip(tool.ids, tool.parts, strict=True)
    ]
    arms.sort(key=lambda arm: arm.key != view.picked)
    chosen = arms[: max(most_arms(look, top, bottom), 0)]
    chosen.sort(key=lambda arm: abs(arm.at_m - tool.reference_m))
    sheet = ArmSheet(look=look, camera=stage.camera, reference_m=tool.reference_m, picked=view.picked)
    draw_arms(canvas, sheet, board, tuple(chosen), top, bottom)


def draw_ghost_at_pointer(canvas: Canvas, view: ToolView, stage: FingerStage) -> None:
    """A part that is carried where no tool is."""
    ghost, look = view.ghost, view.look
    if ghost is None or ghost.tool is not None or ghost.pointer is None:
        return
    scale = stage.camera.px_per_m
    draw_alone(canvas, look, ghost.part, ghost.look, ghost.pointer, px_per_m=scale)


def place_plate(canvas: Canvas, view: ToolView, stage: FingerStage) -> Rect | None:
    """Where the place of what is just being carried is written, above the tool; the finger says its own."""
    at_m = view.carried_at_m if view.ghost is None else view.ghost.at_m
    if at_m is None or view.picked == FINGER:
        return None
    sizes = view.look.sizes
    wide, high = canvas.text_size(view.readings.length_with_unit(at_m), size=sizes.text("body"), bold=True)
    wide, high = wide + sizes.px(16), high + sizes.px(4)
    x = min(max(stage.camera.x_px(at_m) - wide / 2, stage.frame.x + 4), stage.frame.right - wide - 4)
    top = stage.camera.y_px(stage.bounds_m[3]) - sizes.px(12) - high
    return Rect(x, max(top, stage.frame.y + 4), wide, high)


def draw_place_plate(canvas: Canvas, view: ToolView, plate: Rect) -> None:
    """The place of what is just being carried."""
    look = view.look
    at_m = view.carried_at_m if view.ghost is None else view.ghost.at_m
    if at_m is None:
        return
    fill, ink = look.theme.held_fill, look.theme.ink
    canvas.box(plate, fill=fill, outline=ink, width=look.sizes.px(1), radius=look.sizes.px(6))
    text, size = view.readings.length_with_unit(at_m), look.sizes.text("body")
    canvas.text(text, plate.center, size=size, color=ink, bold=True, anchor="center middle")
