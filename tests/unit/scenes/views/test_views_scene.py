"""What may be read from the picture of a body, and where its marks are drawn."""

from dataclasses import replace
from itertools import combinations

import pytest

from lab.mechanics import Box, Part
from lab.scenes.views.naming import obstacles
from lab.scenes.views.nodes import view_bounds, view_nodes, view_said
from lab.scenes.views.scene import draw_views
from lab.scenes.views.stage import fitted, views_stage
from lab.scenes.views.view import (
    Band,
    GhostPart,
    Hanging,
    LineMark,
    PlaceMark,
    StandingScale,
    TurningArrow,
)
from lab.ui.geometry import Rect
from lab.ui.layout_check import core
from lab.ui.list_canvas import ListCanvas
from lab.ui.ops import ArcOp, BoxOp, CircleOp, LineOp, PolygonOp, TextOp, TurnedOp
from lab.ui.theme import THEMES

FRAME = Rect(0.0, 0.0, 864.0, 646.0)
ALL = ("side", "top", "front")
CG_M = (0.3765, -0.0065, 0.012)
SCALES = (
    StandingScale(key="bow", at_m=(0.1, 0.0, 0.0), name="bow scale", highlighted=True),
    StandingScale(key="left", at_m=(0.6, -0.1, 0.0), reading="610 g", name="left scale"),
    StandingScale(key="right", at_m=(0.6, 0.1, 0.0), reading="550 g", name="right scale"),
)
FULL = {
    "balance": PlaceMark(at_m=CG_M, text="CG 37.7 cm"),
    "neutral": LineMark(at_m=0.408, text="neutral point 40.8"),
    "reference": LineMark(at_m=0.0, text="reference line"),
    "bands": (Band(low_m=0.36, high_m=0.40, text="allowed 36 to 40"),),
    "told": LineMark(at_m=0.33, text="you 33"),
}


def drawn(view, frame=FRAME):
    canvas = ListCanvas((int(frame.right), int(frame.bottom)))
    draw_views(canvas, frame, view)
    return canvas


def texts(canvas):
    return [op for op in canvas.ops if isinstance(op, TextOp)]


@pytest.mark.parametrize("size", [(240, 200), (420, 320), (600, 420), (940, 580), (1600, 1000)])
@pytest.mark.parametrize("scale", [1.0, 1.5, 2.0])
@pytest.mark.parametrize("faces", [("side",), ("side", "top"), ALL])
def test_no_text_lies_on_another_or_leaves_the_rectangle(view_of, size, scale, faces):
    frame = Rect(0.0, 0.0, *map(float, size))
    for shown in (FULL, {"scales": SCALES, "ruler": "along"}):
        found = texts(drawn(view_of(faces=faces, scale=scale, **shown), frame))
        for op in found:
            assert frame.holds(core(op), 1.5), op.text
        for one, other in combinations(found, 2):
            assert not core(one).inset(0.75).intersects(core(other)), (one.text, other.text)


def test_names_and_weights_of_all_parts_are_written_once_where_there_is_room(view_of):
    lines = drawn(view_of(faces=ALL)).text_lines()
    for text in ("battery 300 g", "camera 160 g", "fuselage 420 g", "wing 380 g", "left tank 120 g", "right tank 60 g"):
        assert lines.count(text) == 1
    assert not any(" g" in line for line in drawn(view_of(faces=ALL, labels="names")).text_lines())
    assert drawn(view_of(labels="none")).text_lines() == []


def test_the_same_view_is_drawn_the_same_way_every_time(view_of):
    view = view_of(faces=ALL, **FULL)
    assert [op.text for op in texts(drawn(view))] == [op.text for op in texts(drawn(view))]
    assert [op.bounds for op in drawn(view).ops] == [op.bounds for op in drawn(view).ops]


def test_the_balance_point_is_marked_in_every_view_where_it_is(view_of):
    view = view_of(faces=ALL, **FULL)
    stage = views_stage(view, FRAME)
    discs = [op.center for op in drawn(view).ops if isinstance(op, CircleOp) and op.fill == view.look.theme.panel]
    for panel in stage.panels.values():
        at = panel.px(CG_M)
        assert any(center == pytest.approx(at) for center in discs)


def test_a_band_reaches_from_its_lower_to_its_upper_end(view_of):
    view = view_of(**FULL)
    panel = views_stage(view, FRAME).panels["side"]
    theme = view.look.theme
    (band,) = [op.bounds for op in drawn(view).ops if isinstance(op, BoxOp) and op.fill == theme.settled_fill]
    # Boxes snap to whole pixels.
    assert (band.x, band.right) == pytest.approx((panel.camera.x_px(0.36), panel.camera.x_px(0.40)), abs=0.5)
    assert band.y > panel.body_px.bottom


def test_lines_stand_at_their_places(view_of):
    view = view_of(**FULL)
    panel = views_stage(view, FRAME).panels["side"]
    upright = {
        round(op.points[0][0], 3)
        for op in drawn(view).ops
        if isinstance(op, LineOp) and op.points[0][0] == op.points[-1][0]
    }
    for place in (0.0, 0.408, 0.33, CG_M[0]):
        assert round(panel.camera.x_px(place), 3) in upright


def test_the_learners_tag_is_yellow_in_every_theme_and_can_be_taken_hold_of(view_of):
    for theme in THEMES:
        view = view_of(theme=theme, **FULL)
        tags = [op.bounds for op in drawn(view).ops if isinstance(op, BoxOp) and op.fill == view.look.theme.held]
        bounds = view_bounds(view, FRAME)["told"]
        assert any(tag.grown(1.0).holds(bounds) for tag in tags)
        panel = views_stage(view, FRAME).panels["side"]
        assert bounds.center[0] == pytest.approx(panel.camera.x_px(0.33))


def test_right_and_left_are_named_at_the_wing_tips_from_above_and_from_ahead(view_of):
    found = [op for op in texts(drawn(view_of(faces=ALL, labels="none"))) if op.text in ("R", "L")]
    top, front = (views_stage(view_of(faces=ALL, labels="none"), FRAME).panels[face].frame for face in ("top", "front"))
    places = {
        (op.text, frame): op.box.center for op in found for frame in (top, front) if frame.contains(op.box.center)
    }
    assert places[("R", top)][1] < places[("L", top)][1]
    assert places[("R", front)][0] < places[("L", front)][0]


def test_scales_stand_under_their_places_side_by_side_and_do_not_tell_before(view_of):
    view = view_of(faces=("side", "front"), scales=SCALES)
    canvas = drawn(view)
    assert "?" in canvas.text_lines()
    boxes = [box for key, box in view_bounds(view, FRAME).items() if key.startswith("scale:")]
    assert len(boxes) == 3
    assert not any(one.intersects(other) for one, other in combinations(boxes, 2))
    panel = views_stage(view, FRAME).panels["side"]
    assert view_bounds(view, FRAME)["scale:bow"].center[0] == pytest.approx(panel.camera.x_px(0.1))
    assert all(box.y > panel.body_px.bottom for box in boxes)


def test_a_hung_body_is_one_picture_that_turns(view_of):
    level = drawn(view_of(hanging=Hanging(at_m=(0.3, 0.0, 0.06), reach_rad=0.4)))
    turned = drawn(view_of(hanging=Hanging(at_m=(0.3, 0.0, 0.06), pitch_rad=0.3, reach_rad=0.4, plumb=True)))
    (one,) = [op for op in turned.ops if isinstance(op, TurnedOp)]
    assert one.angle_rad == -0.3
    (other,) = [op for op in level.ops if isinstance(op, TurnedOp)]
    assert one.at == pytest.approx(other.at), "the hook stays"


def test_only_what_moves_is_drawn_anew(view_of):
    still, carried = drawn(view_of()), drawn(view_of(picked="battery"))
    bodies = [op.body for canvas in (still, carried) for op in canvas.ops if isinstance(op, TurnedOp)]
    moved = view_of(picked="battery")
    parts = tuple(replace(part, at_m=(0.2, 0.0, 0.0)) if part.name == "battery" else part for part in moved.body.parts)
    later = drawn(replace(moved, body=replace(moved.body, parts=parts)))
    assert bodies[0] != bodies[1]
    assert [op.body for op in later.ops if isinstance(op, TurnedOp)] == [bodies[1]]


def test_a_ghost_is_drawn_where_the_part_would_be_with_an_arrow_to_it(view_of):
    ghost = Part("battery", 0.3, (0.6, 0.0, 0.0), Box((0.06, 0.04, 0.04)))
    view = view_of(ghosts=(GhostPart(part=ghost, look="battery", text="goes here", from_m=(0.085, 0.0, 0.0)),))
    panel, theme = views_stage(view, FRAME).panels["side"], view.look.theme
    canvas = drawn(view)
    (shape,) = [op for op in canvas.ops if isinstance(op, PolygonOp) and op.fill == f"{theme.held}40"]
    x, y = panel.px(ghost.at_m)
    assert (sum(p[0] for p in shape.points) / 4, sum(p[1] for p in shape.points) / 4) == pytest.approx((x, y))
    heads = [op for op in canvas.ops if isinstance(op, PolygonOp) and op.fill == theme.ink and len(op.points) == 3]
    assert any(op.points[0] == pytest.approx((x, y)) for op in heads)
    assert "goes here" in canvas.text_lines()


def test_what_turns_clockwise_has_its_arrow_to_the_left_below_and_in_that_colour(view_of):
    for sense, way in (("clockwise", -1), ("anticlockwise", 1)):
        view = view_of(faces=("front",), turning=TurningArrow(face="front", sense=sense, text="turns"))
        color = view.look.theme.color(sense)
        (arc,) = [op for op in drawn(view).ops if isinstance(op, ArcOp) and op.color == color]
        (head,) = [op for op in drawn(view).ops if isinstance(op, PolygonOp) and op.fill == color]
        assert way * (head.points[0][0] - arc.center[0]) > 0


def test_the_deciding_part_stands_out_and_its_name_is_bold(view_of):
    canvas = drawn(view_of(highlighted=frozenset({"battery"})))
    assert [op.bold for op in texts(canvas) if op.text == "battery 300 g"] == [True]
    assert [op.bold for op in texts(canvas) if op.text == "camera 160 g"] == [False]


def test_everything_shown_is_said_and_has_its_place(view_of):
    view = view_of(faces=ALL, scales=SCALES, **FULL)
    nodes = {node.key: node for node in view_nodes(view, FRAME)}
    assert (nodes["view.part:battery"].name, nodes["view.part:battery"].value) == ("battery", "300 g at 8.5 cm")
    assert nodes["view.surface:wing"].name == "wing"
    assert nodes["view.tank:left tank"].value == "120 g at 42.5 cm, 16.0 cm left of the middle"
    assert nodes["view.balance"].name == "CG 37.7 cm"
    assert nodes["view.scale:bow"].value == "not known yet"
    for node in nodes.values():
        assert node.role == "mark"
        assert FRAME.grown(1.0).holds(Rect(*node.bounds)), node.key
    assert "battery: 300 g at 8.5 cm" in view_said(view)


def test_a_bar_has_its_ruler_from_end_to_end(view_of, nest_box_pole):
    view = view_of(nest_box_pole, ruler="along")
    panel = views_stage(view, FRAME).panels["side"]
    wood = [op.bounds for op in drawn(view).ops if isinstance(op, BoxOp) and op.fill == view.look.theme.wood]
    (rule,) = wood
    assert rule.x < panel.camera.x_px(0.0)
    assert rule.right > panel.camera.x_px(3.2)
    assert {"0", "100", "200", "300"} <= set(drawn(view).text_lines())


def test_a_view_with_a_hundred_marks_too_many_still_draws(view_of):
    parts = tuple(Part(f"shot {number}", 0.01, (number / 100, 0.0, 0.0)) for number in range(100))
    view = view_of(replace(view_of().body, parts=parts, looks={}))
    assert fitted(view, FRAME) == view
    assert drawn(view).ops


def test_a_long_answer_is_written_in_lines_and_stays_in_the_picture(view_of):
    text = "you said that it would go three hundred centimetres to the right of where it was before"
    frame = Rect(0.0, 0.0, 300.0, 400.0)
    found = texts(drawn(view_of(told=LineMark(at_m=0.02, text=text)), frame))
    said = [op for op in found if op.text in text and op.bold]
    assert " ".join(op.text for op in said) == text
    assert all(frame.holds(core(op)) for op in said)


def test_the_words_of_a_hung_bodys_balance_point_lie_on_bare_ground(view_of):
    hanging = Hanging(at_m=(0.3765, 0.0, 0.06), pitch_rad=0.1, reach_rad=0.4)
    view = view_of(balance=PlaceMark(at_m=CG_M, text="balances at 37.7 cm"), hanging=hanging)
    (words,) = [op for op in texts(drawn(view)) if op.text == "balances at 37.7 cm"]
    panel = views_stage(view, FRAME).panels["side"]
    assert not any(core(words).intersects(piece) for piece in obstacles(view, panel))


def test_a_scale_stays_under_its_place_of_a_body_with_its_nose_raised_or_stands_where_it_stood(view_of):
    nose = (0.03, 0.0, -0.042)
    raised = Hanging(at_m=(0.5, 0.1, -0.042), pitch_rad=0.25, cord=False)
    for follows in (True, False):
        scales = (
            StandingScale(key="1", at_m=nose, reading="300 g", name="nose", follows=follows),
            StandingScale(key="2", at_m=(0.5, 0.1, -0.042), reading="900 g", name="wing", follows=follows),
        )
        view = view_of(scales=scales, hanging=raised, labels="none")
        panel = views_stage(view, FRAME).panels["side"]
        box = view_bounds(view, FRAME)["scale:1"]
        place = panel.px(nose) if follows else panel.camera.at(nose[0], nose[2])
        # Nothing crowds it there, so that its case is right under it.
        assert box.center[0] == pytest.approx(place[0], abs=0.5)
