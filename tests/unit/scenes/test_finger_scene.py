"""The picture of a tool on a finger: where things lie, and what may be read from it."""

from dataclasses import replace
from math import hypot

import pytest

from lab.files import UNITS, Build
from lab.mechanics import Box, Part, Rectangle, Rod
from lab.outline import Words
from lab.scenes.finger_parts import part_outlines
from lab.scenes.finger_scene import draw_finger_bench
from lab.scenes.finger_stage import FingerView, balance_m, body_place_px, finger_stage, place_along_m, pose_of
from lab.scenes.readings import Readings
from lab.simulation.benches.finger_builds import finger_from_build
from lab.ui.geometry import Rect
from lab.ui.list_canvas import ListCanvas
from lab.ui.look import Look
from lab.ui.ops import BoxOp, CircleOp, LineOp, PolygonOp, TextOp, TurnedOp
from lab.ui.sizes import Sizes
from lab.ui.theme import THEMES

FRAME = Rect(340.0, 64.0, 940.0, 580.0)
POLE = Part(name="pole", mass_kg=0.120, at_m=(0.20, 0.0, 0.0), shape=Rod(length_m=0.40))
HOOK = Part(name="hook", mass_kg=0.480, at_m=(0.02, 0.0, 0.0), shape=Box(size_m=(0.04, 0.02, 0.05)))
FLOAT = Part(name="float", mass_kg=0.100, at_m=(0.30, 0.0, 0.0), hold="hung")


def view_of(*parts: Part, finger_at_m: float = 0.096, **more) -> FingerView:
    build = Build(title="Boat hook", parts=parts or (POLE, HOOK), looks={"pole": "pole", "hook": "hook"})
    words = Words()
    look = Look(theme=THEMES["paper"], sizes=Sizes(1280, 720), words=words)
    return FingerView(
        tool=finger_from_build(build, finger_at_m=finger_at_m, pad_half_m=0.003),
        look=look,
        readings=Readings(words=words, units=UNITS["g-cm"]),
        **{"moment": "held", **more},
    )


def drawn(view: FingerView) -> ListCanvas:
    canvas = ListCanvas((1280, 720))
    draw_finger_bench(canvas, FRAME, view)
    return canvas


def test_the_pad_is_as_wide_as_what_counts():
    view = view_of()
    stage = finger_stage(view, FRAME)
    assert stage.pad_rect(view.tool).w == pytest.approx(stage.camera.length_px(0.006))


def test_the_finger_touches_the_underside_at_its_place():
    view = view_of()
    stage = finger_stage(view, FRAME)
    pad = stage.pad_rect(view.tool)
    assert (pad.center[0], pad.y) == pytest.approx(stage.camera.at(0.096, view.tool.underside_m))


def test_line_tool_rule_and_floor_lie_below_each_other_in_any_frame():
    for size in ((940, 580), (512, 420), (1080, 850), (2600, 1900)):
        view = view_of(POLE, HOOK, FLOAT)
        frame = Rect(10.0, 20.0, *map(float, size))
        stage = finger_stage(view, frame)
        _, bottom_m, _, top_m = stage.bounds_m
        assert frame.y < stage.line_y < stage.camera.y_px(top_m)
        assert stage.camera.y_px(bottom_m) < stage.rule.bottom
        assert stage.rule.bottom < stage.ground_y < frame.bottom
        assert frame.x <= stage.rule.x
        assert stage.rule.right <= frame.right


def test_a_point_of_the_picture_means_a_place_that_stops_at_the_ends():
    view = view_of()
    stage = finger_stage(view, FRAME)
    assert place_along_m(view, FRAME, (stage.camera.x_px(0.123), 300.0)) == pytest.approx(0.123)
    assert place_along_m(view, FRAME, (0.0, 300.0)) == 0.0
    assert place_along_m(view, FRAME, (5000.0, 300.0)) == pytest.approx(0.40)


def test_held_the_cords_hold_it_and_let_go_they_do_not():
    held, loose = drawn(view_of()), drawn(view_of(moment="moving"))
    pins = [op for op in held.ops if isinstance(op, CircleOp) and op.fill == THEMES["paper"].held]
    assert len(pins) == 2
    assert not [op for op in loose.ops if isinstance(op, CircleOp) and op.fill == THEMES["paper"].held]
    assert "held until you lock it in" in held.text_lines()


def test_between_two_ticks_it_is_drawn_between_them():
    tool = view_of().tool.released()
    for _ in range(40):
        previous, tool = tool, tool.ticked()
    view = replace(view_of(moment="moving"), tool=tool, previous=previous, fraction=0.25)
    expected = previous.motion.angle_rad + 0.25 * (tool.motion.angle_rad - previous.motion.angle_rad)
    assert pose_of(view)[0] == pytest.approx(expected)
    assert tool.motion.angle_rad > previous.motion.angle_rad > 0.0, "the hook end, on the left, goes down"


def test_explained_it_is_tipped_about_the_edge_of_the_pad_towards_the_end_that_dropped():
    for goes, sense in (("left", 1), ("right", -1)):
        view = view_of(moment="explained", goes=goes, told_m=0.096)
        stage = finger_stage(view, FRAME)
        angle, _, _ = pose_of(view)
        assert angle * sense > 0.05
        edge = (0.096 - sense * 0.003, view.tool.underside_m)
        # A body that turns about a point keeps that point where it is.
        assert body_place_px(view, stage, edge) == pytest.approx(stage.camera.at(*edge), abs=1e-6)


def test_explained_level_it_lies_as_it_lay():
    assert pose_of(view_of(moment="explained", goes="level")) == (0.0, 0.0, 0.0)


def test_turning_keeps_every_length():
    view = view_of(moment="explained", goes="left")
    stage = finger_stage(view, FRAME)
    one, other = body_place_px(view, stage, (0.0, 0.0)), body_place_px(view, stage, (0.4, 0.0))
    assert hypot(one[0] - other[0], one[1] - other[1]) == pytest.approx(stage.camera.length_px(0.4))


def test_the_explanation_names_both_places_and_marks_the_balance_point():
    canvas = drawn(view_of(moment="explained", goes="left", told_m=0.096))
    assert "balances 5.6" in canvas.text_lines()
    assert "you 9.6" in canvas.text_lines()
    assert balance_m(view_of().tool)[0] == pytest.approx(0.056)


def test_nothing_gives_the_balance_point_away_before():
    for moment in ("held", "moving"):
        assert not any("balances" in text for text in drawn(view_of(moment=moment)).text_lines())


def test_the_tool_is_one_body_whose_picture_is_kept_while_it_turns():
    level, turned = drawn(view_of()), drawn(view_of(moment="explained", goes="left"))
    (one,) = [op for op in level.ops if isinstance(op, TurnedOp)]
    (other,) = [op for op in turned.ops if isinstance(op, TurnedOp)]
    assert one.body == other.body
    assert one.angle_rad != other.angle_rad


def test_a_weight_on_a_cord_hangs_straight_down_and_stays_above_the_rule():
    view = view_of(POLE, HOOK, FLOAT, moment="explained", goes="right", finger_at_m=0.01)
    stage = finger_stage(view, FRAME)
    brass = [op.bounds for op in drawn(view).ops if isinstance(op, BoxOp) and op.fill == THEMES["paper"].brass]
    block = max((box for box in brass if box.bottom < stage.rule.y + 1), key=lambda box: box.area)
    hook = body_place_px(view, stage, (0.30, 0.0))
    assert block.center[0] == pytest.approx(hook[0], abs=1.0)
    assert block.bottom <= stage.rule.y


def test_each_look_is_drawn_and_an_unknown_one_too():
    for look in ("hook", "pole", "blade", "ring", "camera", "box", "weight", "sextant"):
        build = Build(title="Tool", parts=(POLE, HOOK), looks={"hook": look})
        view = replace(view_of(), tool=finger_from_build(build, finger_at_m=0.1, pad_half_m=0.003))
        assert any(isinstance(op, TurnedOp) for op in drawn(view).ops)
        body = next(op for op in drawn(view).ops if isinstance(op, TurnedOp)).body
        inside = ListCanvas((2000, 2000))
        body.make(inside)
        assert inside.ops


def test_a_cut_out_is_drawn_over_its_plate_as_a_gap_and_not_once_it_is_filled():
    board = Part(name="board", mass_kg=1.2, at_m=(0.3, 0.0, 0.2), shape=Rectangle(length_m=0.6, width_m=0.4))
    window = Part(
        name="window", mass_kg=0.2, at_m=(0.45, 0.0, 0.2), cut=True, shape=Rectangle(length_m=0.2, width_m=0.2)
    )

    def outlines(part):
        build = Build(title="Board", parts=(part, board), looks={})
        return part_outlines(finger_from_build(build, finger_at_m=0.3, pad_half_m=0.003))

    cut = outlines(window)
    assert [(each.part.name, each.look) for each in cut] == [("board", "plate"), ("window", "gap")]
    # As large as it is stated: 20 cm, to round-off.
    assert cut[1].right_m - cut[1].left_m == pytest.approx(0.2, abs=1e-12)
    assert [each.part.name for each in outlines(replace(window, mass_kg=1e-9))] == ["board"]
    assert drawn(view_of(window, board)).ops


def referred(at_m: float, **more) -> FingerView:
    """A view of the boat hook whose arms are measured from a line elsewhere."""
    view = view_of(**more)
    return replace(view, tool=replace(view.tool, reference_m=at_m))


def lines_of(canvas: ListCanvas) -> list[LineOp]:
    return [op for op in canvas.ops if isinstance(op, LineOp) and len(op.dash) == 4]


@pytest.mark.parametrize("moment", ["held", "moving", "explained"])
@pytest.mark.parametrize("at_m", [0.12, 0.60, -0.20])
def test_a_reference_line_stands_at_its_place_of_the_rule_and_is_named(moment, at_m):
    view = referred(at_m, moment=moment)
    stage, canvas = finger_stage(view, FRAME), drawn(view)
    (line,) = lines_of(canvas)
    x = stage.camera.x_px(at_m)
    assert {point[0] for point in line.points} == {x}
    assert stage.rule.x < x < stage.rule.right
    assert "reference line" in canvas.text_lines()


def test_a_line_at_the_zero_of_the_rule_is_that_zero():
    canvas = drawn(view_of())
    assert lines_of(canvas) == []
    assert "reference line" not in canvas.text_lines()


def test_the_finger_stays_under_the_tool_where_the_line_is_off_it():
    view = referred(0.60)
    assert place_along_m(view, FRAME, (5000.0, 300.0)) == pytest.approx(0.40)


def test_a_changed_tool_lies_as_the_one_it_is_shown_for_line_and_all():
    view = referred(0.60)
    changed = replace(view, tool=replace(view.tool, parts=view.tool.parts[:1]), laid_for=view.tool)
    assert finger_stage(changed, FRAME).rule == finger_stage(view, FRAME).rule


@pytest.mark.parametrize("size", [(940, 580), (560, 420), (1060, 760)])
def test_no_name_lies_on_the_arrow_of_the_turn(size):
    # A tool that is light at its right end: the arrow stands by the left one, where the names go too.
    view = referred(0.60, finger_at_m=0.20, moment="explained", goes="left", told_m=0.20)
    canvas = ListCanvas((1280, 900))
    draw_finger_bench(canvas, Rect(10.0, 10.0, *map(float, size)), view)
    (head,) = [op for op in canvas.ops if isinstance(op, PolygonOp) and op.fill == THEMES["paper"].anticlockwise]
    names = [op for op in canvas.ops if isinstance(op, TextOp) and op.text.startswith(("balances", "you"))]
    assert len(names) == 2
    assert not any(op.bounds.intersects(head.bounds) for op in names)


@pytest.mark.parametrize("frame", [FRAME, Rect(0.0, 64.0, 880.0, 400.0), Rect(0.0, 40.0, 500.0, 300.0)])
@pytest.mark.parametrize("share", [0.25, 0.5, 0.75])
def test_a_tool_that_falls_stays_in_the_picture_all_the_way_and_the_camera_never_jumps(frame, share):
    """A pole heavy at one end turns far round the finger: the other end rises higher than it was held."""
    view = view_of(
        POLE, Part(name="head", mass_kg=0.3, at_m=(0.38, 0.0, 0.0), shape=Box(size_m=(0.04, 0.02, 0.05))),
        finger_at_m=0.4 * share, moment="moving",
    )  # fmt: skip
    tool, scale = view.tool.released(), finger_stage(replace(view, moment="held"), frame).camera.px_per_m
    ends = [(0.0, 0.0), *((at_m, up_m) for at_m in (0.36, 0.4) for up_m in (-0.025, 0.025))]
    while tool.moving:
        tool = tool.ticked()
        now = replace(view, tool=tool)
        stage = finger_stage(now, frame)
        assert all(frame.contains(body_place_px(now, stage, place)) for place in ends)
        assert frame.y < stage.rule.y < stage.ground_y < frame.bottom
        # A tick turns a falling pole by a few degrees at most, so no more than that is drawn back in it.
        assert stage.camera.px_per_m == pytest.approx(scale, rel=0.03)
        scale = stage.camera.px_per_m
