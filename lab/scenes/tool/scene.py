"""The whole picture of a tool that is built on a finger: what is drawn, in which order, and what can be grabbed."""

from __future__ import annotations

from collections.abc import Mapping

from lab.scenes.finger_bench import draw_carriage, draw_cords, draw_finger, draw_ground, draw_rule
from lab.scenes.finger_marks import tool_boxes
from lab.scenes.finger_stage import FingerStage, carriage_box, finger_bounds
from lab.scenes.finger_tool import draw_hung, draw_tool, name_parts
from lab.scenes.labels import LabelBoard
from lab.scenes.marks import draw_chain_line
from lab.scenes.ties import draw_ties
from lab.scenes.tool.marks import (
    draw_arms_of_parts,
    draw_balance,
    draw_balance_line,
    draw_ghost_at_pointer,
    draw_picked,
    draw_place_plate,
    name_reference_line,
    place_plate,
)
from lab.scenes.tool.view import FINGER, REFERENCE, ToolView, key_of, part_box, reference_knob
from lab.ui.canvas import Canvas
from lab.ui.geometry import Point, Rect

SLACK_PX = 40.0
"""A part is dropped on the tool by its body: so far beside it counts as on it."""


def draw_built_tool(canvas: Canvas, rect: Rect, view: ToolView) -> None:
    """Draws the bench into a rectangle; nothing leaves it."""
    stage, finger = view.stage(rect), view.finger
    say = view.look.words.say
    with canvas.clipped(rect):
        canvas.box(rect, fill=view.look.theme.paper)
        board = LabelBoard(canvas, rect.cut_bottom(view.foot_px)[1])
        plate = place_plate(canvas, view, stage)
        board.keep_clear([plate] if plate is not None else [])
        draw_ground(canvas, finger, stage)
        draw_rule(canvas, finger, stage, board)
        draw_cords(canvas, finger, stage, board, held_until=say("held until you let go"))
        if view.lines:
            _draw_reference(canvas, view, stage, board)
        if view.outcome_shown:
            draw_balance_line(canvas, view, stage)
        draw_finger(canvas, finger, stage)
        draw_hung(canvas, finger, stage)
        draw_carriage(canvas, finger, stage)
        draw_tool(canvas, finger, stage)
        if view.tool.held:
            board.keep_clear(draw_ties(canvas, view.look, _tied_at(view, stage)))
        draw_picked(canvas, view, stage)
        board.keep_clear([carriage_box(finger, stage), stage.finger_rect(finger.tool, view.look)])
        _name(canvas, view, stage, board)
        draw_ghost_at_pointer(canvas, view, stage)
        if plate is not None:
            draw_place_plate(canvas, view, plate)


def _tied_at(view: ToolView, stage: FingerStage) -> dict[str, Point]:
    """Where each part is tied: on the pole, so that the twine crosses nothing."""
    y = stage.camera.y_px(view.tool.handle.at_m[2])
    return {part.name: (stage.camera.x_px(part.at_m[0]), y) for part in view.tool.parts}


def _name(canvas: Canvas, view: ToolView, stage: FingerStage, board: LabelBoard) -> None:
    """What belongs to the thinking: names, where it balances, the arms."""
    held = view.tool.held
    if not held:
        board.keep_clear(tool_boxes(view.finger, stage))
    if view.outcome_shown:
        draw_balance(canvas, view, stage, board)
    if held:
        name_parts(canvas, view.finger, stage, board)
    if view.lines:
        name_reference_line(canvas, view, stage, board)
    if view.lines and held:
        draw_arms_of_parts(canvas, view, stage, board)


def _draw_reference(canvas: Canvas, view: ToolView, stage: FingerStage, board: LabelBoard) -> None:
    knob, sizes = reference_knob(view, stage), view.look.sizes
    top, foot = stage.line_y + sizes.px(14), stage.ground_y - sizes.px(6)
    draw_chain_line(canvas, view.look, knob, top, foot, picked=view.picked == REFERENCE)
    board.keep_clear([knob.grown(sizes.px(4)), Rect(knob.center[0] - 2, top, 4, foot - top)])


def grab_bounds(view: ToolView, rect: Rect) -> Mapping[str, Rect]:
    """What can be grabbed in the picture, by key: parts, the longest first, the reference line, the finger."""
    stage, target = view.stage(rect), view.look.sizes.target
    tool = view.finger.tool
    bounds = {
        key_of(view.tool, outline.part): part_box(view, stage, outline).at_least(target, target)
        for outline in stage.outlines
    }
    if view.lines:
        bounds[REFERENCE] = reference_knob(view, stage).at_least(target, target)
    # The finger reaches up to the tool: its upper part belongs to whatever lies on it.
    grip = finger_bounds(view.finger, view.frame(rect))["finger"]
    low = stage.camera.y_px(tool.underside_m) + view.look.sizes.px(14)
    bounds[FINGER] = Rect(grip.x, low, grip.w, grip.bottom - low).at_least(target, target)
    seen = rect.cut_bottom(view.foot_px)[1]
    return {key: box.common(seen) if box.intersects(seen) else box for key, box in bounds.items()}


def along_at_m(view: ToolView, rect: Rect, point: Point) -> float:
    """The place along under a point, however high it is."""
    return view.stage(rect).camera.along_m(point[0])


def place_at_m(view: ToolView, rect: Rect, point: Point, *, half_m: float = 0.0) -> float | None:
    """The place along the tool under a point, None where it is too far from the tool to mean it.

    half_m: half the length of what would go there, which may reach over an end.
    """
    stage, sizes = view.stage(rect), view.look.sizes
    tool = view.laid_for or view.bench
    along_m = stage.camera.along_m(point[0])
    slack_m = stage.camera.length_m(sizes.px(SLACK_PX)) + half_m
    top_y, low_y = stage.line_y, stage.rule.bottom
    if not (tool.left_m - slack_m <= along_m <= tool.right_m + slack_m and top_y <= point[1] <= low_y):
        return None
    return along_m
