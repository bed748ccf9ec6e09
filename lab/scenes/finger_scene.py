"""The whole picture of a tool on a finger: what is drawn, and in which order."""

from __future__ import annotations

from lab.scenes.finger_bench import draw_carriage, draw_cords, draw_finger, draw_ground, draw_rule
from lab.scenes.finger_marks import draw_explained, draw_place_line, draw_reference, name_reference
from lab.scenes.finger_stage import FingerView, carriage_box, finger_stage
from lab.scenes.finger_tool import draw_hung, draw_tool, name_parts
from lab.scenes.labels import LabelBoard
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect


def draw_finger_bench(canvas: Canvas, rect: Rect, view: FingerView) -> None:
    """Draw the bench into a rectangle; nothing leaves it."""
    stage = finger_stage(view, rect)
    with canvas.clipped(rect):
        canvas.box(rect, fill=view.look.theme.paper)
        board = LabelBoard(canvas, rect.cut_top(view.covered_px)[1])
        draw_ground(canvas, view, stage)
        draw_rule(canvas, view, stage, board)
        if view.moment != "explained":
            draw_cords(canvas, view, stage, board)
        draw_reference(canvas, view, stage, board)
        if view.moment == "explained":
            draw_place_line(canvas, view, stage)
        draw_finger(canvas, view, stage)
        draw_hung(canvas, view, stage)
        draw_carriage(canvas, view, stage)
        draw_tool(canvas, view, stage)
        if view.moment == "held":
            board.keep_clear([carriage_box(view, stage), stage.finger_rect(view.tool, view.look)])
            name_parts(canvas, view, stage, board)
        if view.moment == "explained":
            draw_explained(canvas, view, stage, board)
        name_reference(canvas, view, stage, board)
