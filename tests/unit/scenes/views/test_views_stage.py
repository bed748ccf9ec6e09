"""Where the views of a body lie: one scale, the right axes, room kept for what the body may do."""

from math import radians

import pytest

from lab.mechanics.hanging import hanging_attitude
from lab.scenes.views.nodes import view_bounds
from lab.scenes.views.pointing import axis_m
from lab.scenes.views.projections import flat_m
from lab.scenes.views.stage import bounds_m, fitted, seen_angle_rad, views_stage
from lab.scenes.views.view import Hanging, LineMark
from lab.ui.geometry import Rect

FRAME = Rect(10.0, 64.0, 864.0, 646.0)
ALL = ("side", "top", "front")


def test_all_views_share_one_scale_and_lie_beside_each_other_in_the_rectangle(view_of):
    stage = views_stage(view_of(faces=ALL), FRAME)
    assert len({panel.camera.px_per_m for panel in stage.panels.values()}) == 1
    frames = [panel.frame for panel in stage.panels.values()] + [stage.spare]
    for index, frame in enumerate(frames):
        assert FRAME.holds(frame, 0.5)
        assert not any(frame.intersects(other) for other in frames[index + 1 :])


def test_from_ahead_the_right_wing_is_at_the_left_and_from_above_it_is_up(view_of):
    panels = views_stage(view_of(faces=ALL), FRAME).panels
    right, left = (0.4, 0.27, 0.0), (0.4, -0.27, 0.0)
    assert panels["front"].px(right)[0] < panels["front"].px(left)[0]
    assert panels["top"].px(right)[1] < panels["top"].px(left)[1]
    nose, tail = (0.0, 0.0, 0.0), (0.9, 0.0, 0.0)
    for face in ("side", "top"):
        assert panels[face].px(nose)[0] < panels[face].px(tail)[0]


def test_the_views_stay_as_they_are_where_the_layout_is_mirrored(view_of):
    plain, mirrored = view_of(faces=ALL), view_of(faces=ALL, lang="xr")
    for view, sign in ((plain, 1.0), (mirrored, -1.0)):
        panels = views_stage(view, FRAME).panels
        assert panels["side"].px((0.0, 0.0, 0.0))[0] < panels["side"].px((0.9, 0.0, 0.0))[0]
        assert sign * (panels["front"].frame.x - panels["side"].frame.x) > 0


def test_a_part_is_drawn_where_the_camera_says_and_as_large_as_it_is(view_of):
    view = view_of(faces=ALL)
    panel = views_stage(view, FRAME).panels["side"]
    box = view_bounds(view, FRAME)["part:battery"]
    assert box.center == pytest.approx(panel.px((0.085, 0.0, 0.0)))
    assert (box.w, box.h) == pytest.approx((0.06 * panel.camera.px_per_m, 0.04 * panel.camera.px_per_m))


def test_the_body_keeps_its_margins_and_stays_in_its_frame_in_any_rectangle(view_of):
    for size in ((240, 200), (512, 420), (940, 580), (400, 900), (2600, 1500)):
        for faces in (("side",), ("side", "top"), ALL):
            frame = Rect(0.0, 0.0, *map(float, size))
            view = fitted(view_of(faces=faces), frame)
            for panel in views_stage(view, frame).panels.values():
                assert panel.frame.holds(panel.body_px, 0.5), (size, faces, panel.face)


def test_a_body_that_may_turn_never_leaves_its_frame(view_of):
    reach = radians(40)
    for angle in (-reach, 0.0, reach):
        hanging = Hanging(at_m=(0.3, 0.0, 0.06), pitch_rad=angle, reach_rad=reach)
        view = view_of(hanging=hanging)
        panel = views_stage(view, FRAME).panels["side"]
        box = panel.body_px
        for x in (panel.bounds_m[0], panel.bounds_m[2]):
            for y in (panel.bounds_m[1], panel.bounds_m[3]):
                # The corners of its box reach farther than the body itself; they have a margin to do it in.
                assert panel.frame.grown(box.h / 4).contains(panel.flat_px((x, y)))


def test_the_hook_stays_where_it_is_whatever_the_angle(view_of):
    hook = (0.3, 0.02, 0.06)
    places = {
        views_stage(view_of(hanging=Hanging(at_m=hook, pitch_rad=angle, reach_rad=0.6)), FRAME).panels["side"].px(hook)
        for angle in (-0.5, -0.1, 0.0, 0.6)
    }
    assert len({(round(x, 6), round(y, 6)) for x, y in places}) == 1


def test_a_hung_body_comes_to_rest_with_its_balance_point_below_the_hook(view_of):
    view = view_of(faces=("side", "front"))
    for hook in ((0.30, 0.0, 0.08), (0.377, 0.05, 0.08), (0.2, 0.2, 0.1), (0.5, -0.2, -0.1)):
        found = hanging_attitude(view.body.parts, hook)
        assert found is not None
        hanging = Hanging(at_m=hook, pitch_rad=found.pitch_rad, roll_rad=found.roll_rad or 0.0)
        shown = view_of(faces=("side", "front"), hanging=hanging)
        mass = sum(part.mass_kg for part in view.body.parts)
        cg = tuple(sum(part.mass_kg * part.at_m[axis] for part in view.body.parts) / mass for axis in range(3))
        for panel in views_stage(shown, FRAME).panels.values():
            # Square on to either face nothing but round-off is between them.
            assert panel.px(cg)[0] == pytest.approx(panel.px(hook)[0], abs=1e-6)
            assert panel.px(cg)[1] > panel.px(hook)[1]


def test_nose_up_is_clockwise_from_the_left_and_right_wing_down_anticlockwise_from_ahead(view_of):
    view = view_of(hanging=Hanging(at_m=(0.0, 0.0, 0.0), pitch_rad=0.2))
    assert seen_angle_rad(view, "side") == pytest.approx(-0.2, abs=1e-15)
    view = view_of(hanging=Hanging(at_m=(0.0, 0.0, 0.0), pitch_rad=0.2, roll_rad=0.3))
    assert seen_angle_rad(view, "front") == 0.3
    assert seen_angle_rad(view, "top") == 0.0


def test_a_body_that_went_somewhere_is_drawn_there(view_of):
    stays = views_stage(view_of(faces=ALL, hanging=Hanging(at_m=(0.3, 0.0, 0.0), cord=False)), FRAME)
    gone = Hanging(at_m=(0.3, 0.0, 0.0), cord=False, shift_m=(0.05, 0.02, -0.01))
    moved = views_stage(view_of(faces=ALL, hanging=gone), FRAME)
    for face, (right, up) in {"side": (0.05, -0.01), "top": (0.05, 0.02), "front": (-0.02, -0.01)}.items():
        (x, y), scale = stays.panels[face].px((0.1, 0.0, 0.0)), stays.px_per_m
        assert moved.panels[face].px((0.1, 0.0, 0.0)) == pytest.approx((x + scale * right, y - scale * up))


def test_a_pixel_means_a_place_that_stops_at_the_ends_of_the_body(view_of):
    view = view_of(faces=ALL, told=LineMark(at_m=0.3, text="you"))
    panel = views_stage(view, FRAME).panels["side"]
    y = panel.frame.center[1]
    assert axis_m(view, FRAME, (panel.camera.x_px(0.31), y)) == pytest.approx(0.31)
    assert axis_m(view, FRAME, (panel.frame.x + 1, y)) == pytest.approx(0.0)
    front = views_stage(view, FRAME).panels["front"]
    point = front.px((0.0, 0.1, 0.0))
    assert axis_m(view, FRAME, point, "across") == pytest.approx(0.1)
    assert axis_m(view, FRAME, point) is None
    assert axis_m(view, FRAME, point, held=True) is not None


def test_a_rectangle_too_small_for_all_sides_shows_fewer_but_never_loses_the_learners_mark(view_of):
    small = Rect(0.0, 0.0, 240.0, 200.0)
    view = view_of(faces=ALL, scale=2.0, told=LineMark(at_m=0.05, text="you", axis="across"))
    shown = fitted(view, small)
    assert "front" in shown.faces
    assert len(shown.faces) < 3
    assert "told" in view_bounds(view, small)


def test_a_changed_view_is_laid_out_as_the_view_it_came_from(view_of, nest_box_pole):
    view = view_of()
    other = view_of(nest_box_pole, laid_for=view)
    assert views_stage(view, FRAME).px_per_m == views_stage(other, FRAME).px_per_m


def test_a_face_knows_its_axes():
    assert flat_m("side", (1.0, 2.0, 3.0)) == (1.0, 3.0)
    assert flat_m("top", (1.0, 2.0, 3.0)) == (1.0, 2.0)
    assert flat_m("front", (1.0, 2.0, 3.0)) == (-2.0, 3.0)


def test_the_body_reaches_as_far_as_its_parts_and_surfaces(view_of):
    left, bottom, right, top = bounds_m(view_of(), "front")
    assert (left, right) == pytest.approx((-0.27, 0.27))
    assert top == pytest.approx(0.13)
    assert bottom == pytest.approx(-0.042)
