"""The tool itself: one stiff body, drawn once and then shown turned, and the weights that hang from it."""

from __future__ import annotations

from lab.scenes.finger_parts import PartOutline
from lab.scenes.finger_shapes import PartDrawing, draw_part
from lab.scenes.finger_stage import FingerStage, FingerView, balance_m, body_place_px, pose_of
from lab.scenes.labels import LabelBoard, Spot
from lab.simulation.benches.groups import in_group
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect

MARGIN_PX = 4.0
STAMPED = {"hook": (0.66, 0.5), "box": (0.8, 0.3), "camera": (0.86, 0.7), "weight": (0.92, 0.7), "tin": (0.9, 0.5)}
"""Parts whose weight is struck into them, and the share of each, across and down, that is free for it."""


def draw_tool(canvas: Canvas, view: FingerView, stage: FingerStage) -> None:
    """The stiff body, turned as it is now."""
    fixed = tuple(outline for outline in stage.outlines if outline.hook_m is None)
    left, bottom, right, top = stage.bounds_m
    camera, look = stage.camera, view.look
    # The frame of the body: pixels from its own left top corner.
    corner = (left - camera.length_m(MARGIN_PX), top + camera.length_m(MARGIN_PX))
    size = (camera.length_px(right - left) + 2 * MARGIN_PX, camera.length_px(top - bottom) + 2 * MARGIN_PX)
    beam = next((outline for outline in fixed if outline.beam), None)

    def make(body: Canvas) -> None:
        for outline in fixed:
            rect = Rect(
                camera.length_px(outline.left_m - corner[0]),
                camera.length_px(corner[1] - outline.top_m),
                camera.length_px(outline.right_m - outline.left_m),
                camera.length_px(outline.top_m - outline.bottom_m),
            )
            pole = beam or outline
            stamp, text_px = stamp_of(canvas, view, stage, outline)
            drawing = PartDrawing(
                theme=look.theme,
                rect=rect,
                outward=outline.outward,
                pole_px=camera.length_px(pole.top_m - pole.bottom_m),
                pole_y=camera.length_px(corner[1] - pole.middle_m[1]),
                stroke=look.sizes.stroke,
                stamp=stamp,
                text_px=text_px,
            )
            draw_part(body, outline.look, drawing)

    angle, dx, dz = pose_of(view)
    balance = balance_m(view.tool)
    grip = (camera.length_px(balance[0] - corner[0]), camera.length_px(corner[1] - balance[1]))
    at = camera.at(balance[0] + dx, balance[1] + dz)
    canvas.turned(_name(view, stage), size, make, at=at, grip=grip, angle_rad=angle)


def draw_hung(canvas: Canvas, view: FingerView, stage: FingerStage) -> None:
    """Weights on cords, which hang straight down however the tool lies."""
    look, camera = view.look, stage.camera
    for outline in stage.outlines:
        if outline.hook_m is None:
            continue
        hook = body_place_px(view, stage, outline.hook_m)
        drop = camera.length_px(outline.hook_m[1] - outline.top_m)
        wide = camera.length_px(outline.right_m - outline.left_m)
        high = camera.length_px(outline.top_m - outline.bottom_m)
        rect = Rect(hook[0] - wide / 2, hook[1] + drop, wide, high)
        canvas.line((hook, (hook[0], rect.y)), look.theme.ink, width=look.sizes.stroke)
        stamp, text_px = stamp_of(canvas, view, stage, outline)
        drawing = PartDrawing(
            theme=look.theme, rect=rect, outward=1, pole_px=0.0, pole_y=0.0, stroke=look.sizes.stroke,
            stamp=stamp, text_px=text_px,
        )  # fmt: skip
        draw_part(canvas, "weight", drawing)


def stamp_of(canvas: Canvas, view: FingerView, stage: FingerStage, outline: PartOutline) -> tuple[str, float]:
    """The weight as it is struck into a part, and its height; "" where it has no room or is not such a part."""
    if outline.look not in STAMPED:
        return "", 1.0
    text = view.readings.weight(outline.part.mass_kg)
    across, down = STAMPED[outline.look]
    room_w = across * stage.camera.length_px(outline.right_m - outline.left_m)
    room_h = down * stage.camera.length_px(outline.top_m - outline.bottom_m)
    small = view.look.sizes.text("small")
    for size in (view.look.sizes.text("body"), small, round(0.86 * small)):
        wide, high = canvas.text_size(text, size=size, bold=True)
        if wide <= room_w and high * 0.62 <= room_h:
            return text, size
    return "", 1.0


def name_parts(canvas: Canvas, view: FingerView, stage: FingerStage, board: LabelBoard) -> None:
    """The name of each part beside it while the tool lies level, with its weight unless that is struck into it."""
    look = view.look
    boxes = [_level_box(stage, outline) for outline in stage.outlines]
    board.keep_clear(boxes)
    board.keep_clear(
        Rect(box.center[0] - 2, box.y - stage.camera.length_px(outline.hook_m[1] - outline.top_m), 4, box.h)
        for outline, box in zip(stage.outlines, boxes, strict=True)
        if outline.hook_m is not None
    )
    for outline, box in zip(stage.outlines, boxes, strict=True):
        text = look.words.content(in_group(outline.part.name))
        if not stamp_of(canvas, view, stage, outline)[0]:
            weight = view.readings.weight_with_unit(outline.part.mass_kg)
            text = look.words.say("{part} {weight}", part=text, weight=weight)
        # A name under the rule would seem to belong to the rule.
        spots = [spot for spot in _label_spots(view, outline, box) if spot[0][1] < stage.rule.y]
        board.place(text, spots, size=look.sizes.text("small"), color=look.theme.soft)


def _label_spots(view: FingerView, outline: PartOutline, box: Rect) -> list[Spot]:
    """Above and below the part, nearest first; a weight on a cord is named below it."""
    sizes = view.look.sizes
    shares = (0.62, 0.7, 0.5, 0.4, 0.3, 0.8) if outline.beam else (0.5, 0.2, 0.8)
    middle = [box.x + share * box.w for share in shares]
    spots: list[Spot] = []
    for lift in range(3):
        away = sizes.px(5) + lift * 1.4 * sizes.text("small")
        if outline.hook_m is None:
            spots += [((x, box.y - away), "center bottom") for x in middle]
        spots += [((x, box.bottom + away), "center top") for x in middle]
    return spots


def _level_box(stage: FingerStage, outline: PartOutline) -> Rect:
    x, y = stage.camera.at(outline.left_m, outline.top_m)
    wide = stage.camera.length_px(outline.right_m - outline.left_m)
    return Rect(x, y, wide, stage.camera.length_px(outline.top_m - outline.bottom_m))


def _name(view: FingerView, stage: FingerStage) -> tuple[object, ...]:
    """All that the picture of the stiff body depends on."""
    look = view.look
    parts = tuple((part.name, part.mass_kg, part.at_m, part.shape) for part in view.tool.parts)
    looks = tuple(sorted(view.tool.looks.items()))
    return (
        "tool", look.theme.name, parts, looks, view.tool.left_m, round(stage.camera.px_per_m, 3),
        look.sizes.text("body"), look.sizes.stroke, look.words.language, view.readings.units.name,
    )  # fmt: skip
