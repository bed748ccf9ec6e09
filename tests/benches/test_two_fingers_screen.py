"""Two fingers in use: by pointers, two at once, and by keys alone; what comes out is the mechanics' own answer."""

import itertools
from dataclasses import replace
from typing import Any

import pytest

from lab.app.settings import Settings
from lab.files import UNITS, read_build
from lab.mechanics import Friction, two_finger_slide
from lab.outline.words import Words
from lab.scenes.readings import Readings
from lab.scenes.two_fingers.scene import draw_two_fingers
from lab.scenes.two_fingers.view import TwoFingersView, reference_knob, stage_for
from lab.scenes.two_fingers.way import way_points
from lab.screens.screen import BuildModel, Setting
from lab.screens.sound_cues import cues
from lab.simulation import Hang, Session
from lab.simulation.benches.two_fingers import DRY, SOAPY, TwoFingers
from lab.simulation.benches.two_fingers_builds import workshop_pole
from lab.ui.events import FileDropped, Key, PointerDown, PointerMove, PointerUp
from lab.ui.geometry import Rect
from lab.ui.list_canvas import ListCanvas
from lab.ui.look import Look
from lab.ui.sizes import Sizes
from lab.ui.theme import THEMES


@pytest.fixture
def at_fingers(pilot: Any) -> Any:
    pilot.press("to-build")
    pilot.press("benches")
    pilot.press("bench-fingers")
    return pilot


def bench(pilot: Any) -> TwoFingers:
    state: TwoFingers = pilot.lab._screen._model.bench
    return state


def spot(pilot: Any, at_m: float, *, up_px: float = 40.0) -> tuple[float, float]:
    """The point over the body at a place along."""
    look = pilot.lab._look
    view = TwoFingersView(bench=bench(pilot), look=look, readings=Readings(words=look.words, units=UNITS["g-cm"]))
    stage = stage_for(view, Rect(*pilot.node("picture").bounds))
    return stage.camera.x_px(at_m), stage.pads[0].y - up_px


def x_moved(pilot: Any, key: str, by_m: float) -> tuple[tuple[float, float], tuple[float, float]]:
    """From where a thing is grabbed to so much further along."""
    start = pilot.middle(key)
    px_per_m = spot(pilot, 1.0)[0] - spot(pilot, 0.0)[0]
    return start, (start[0] + by_m * px_per_m, start[1])


def slid(state: TwoFingers) -> tuple[float, float]:
    """Where the mechanics by itself says that the fingers end."""
    way = two_finger_slide(state.parts, *state.fingers_m, left=state.left, right=state.right, touch_m=state.touch_m)
    return way.legs[-1].to_m  # type: ignore[union-attr]


def _model(state: TwoFingers) -> BuildModel:
    return BuildModel(setting=Setting(), bench=state, previous=state)


# --- by pointer ---------------------------------------------------------------------------------------------


def test_fingers_are_dragged_and_slide_in_to_where_the_mechanics_says(at_fingers: Any):
    at_fingers.drag(*x_moved(at_fingers, "finger-left", 0.14))
    assert bench(at_fingers).fingers_m == pytest.approx((0.20, 0.90))
    at_fingers.press("guess.right")
    at_fingers.press("let-go")
    assert bench(at_fingers).moving
    at_fingers.wait(1.0)
    # A second is 15 cm of closing, give or take a frame of the pilot's clock.
    assert bench(at_fingers).gap_m == pytest.approx(0.70 - 0.15, abs=0.005)
    at_fingers.wait(6.0)
    assert not bench(at_fingers).moving
    assert bench(at_fingers).places_m == pytest.approx(slid(bench(at_fingers)), abs=1e-12)
    assert at_fingers.says("They meet under the balance point.")
    assert at_fingers.says("You said right, and right it was.")
    at_fingers.press("hold")
    assert bench(at_fingers).fingers_m == pytest.approx((0.20, 0.90))


def test_two_pointers_slide_both_fingers_at_once_and_one_undo_takes_both_back(at_fingers: Any):
    (left, left_end), (right, right_end) = (
        x_moved(at_fingers, "finger-left", 0.1),
        x_moved(at_fingers, "finger-right", -0.2),
    )
    lab = at_fingers.lab
    lab.handle(PointerDown(1, *left))
    lab.handle(PointerDown(2, *right))
    for step in range(1, 9):
        for pointer, start, end in ((1, left, left_end), (2, right, right_end)):
            lab.handle(PointerMove(pointer, start[0] + (end[0] - start[0]) * step / 8, start[1]))
    lab.handle(PointerUp(1, *left_end))
    lab.handle(PointerUp(2, *right_end))
    assert bench(at_fingers).fingers_m == pytest.approx((0.16, 0.70))
    at_fingers.press("undo")
    assert bench(at_fingers).fingers_m == workshop_pole().fingers_m


def test_a_drag_given_up_puts_the_finger_back(at_fingers: Any):
    start, end = x_moved(at_fingers, "finger-right", -0.3)
    at_fingers.lab.handle(PointerDown(0, *start))
    at_fingers.lab.handle(PointerMove(0, *end))
    at_fingers.lab.handle(PointerMove(0, end[0] + 1, end[1]))
    assert bench(at_fingers).fingers_m[1] < 0.7
    at_fingers.lab.handle(Key("escape"))
    assert bench(at_fingers).fingers_m == workshop_pole().fingers_m


def test_a_weight_from_the_tray_stands_where_it_is_dropped_and_changes_the_meeting(at_fingers: Any):
    at_fingers.drag(at_fingers.middle("tray-500"), spot(at_fingers, 0.80))
    added = bench(at_fingers).pieces[-1].part
    assert (added.name, added.at_m[0]) == ("brass 500", pytest.approx(0.80))
    at_fingers.press("let-go")
    at_fingers.press("show-end")
    state = bench(at_fingers)
    # (150 × 50 + 200 × 25 + 50 × 70 + 500 × 80) / 900
    assert state.sum.balance_point_m[0] == pytest.approx(56.0 / 90.0)
    assert state.places_m[0] < 56.0 / 90.0 < state.places_m[1]
    at_fingers.press("hold")
    # What was put down is still picked.
    at_fingers.press("picked-remove")
    assert len(bench(at_fingers).pieces) == 2


def test_a_weight_picked_is_copied_mirrored_and_weighed_anew(at_fingers: Any):
    at_fingers.press("piece-2")
    at_fingers.press("picked-more")
    at_fingers.press("picked-mirror")
    assert bench(at_fingers).pieces[-1].part.at_m[0] == pytest.approx(0.30)
    at_fingers.press("picked-copy")
    assert bench(at_fingers).pieces[-1].part.at_m[0] == pytest.approx(0.75)
    at_fingers.press("picked-weight.more")
    assert bench(at_fingers).pieces[1].part.mass_kg == pytest.approx(0.055)


def test_a_weight_dropped_beside_the_body_goes_back_and_says_so(at_fingers: Any):
    at_fingers.drag(at_fingers.middle("tray-100"), (1000.0, 640.0))
    assert len(bench(at_fingers).pieces) == 2
    assert at_fingers.says("so it went back")
    at_fingers.press("tray-100")
    at_fingers.press("stand-cancel")
    assert not at_fingers.has("on-its-way")


def test_a_finger_is_soaped_and_slips_first(at_fingers: Any):
    at_fingers.press("finger-left")
    at_fingers.press("picked-grip.soapy")
    assert (bench(at_fingers).left, bench(at_fingers).right) == (SOAPY, DRY)
    at_fingers.press("let-go")
    at_fingers.wait(0.5)
    assert "slips" in at_fingers.node("finger-left").value
    assert "sticks" in at_fingers.node("finger-right").value
    at_fingers.press("show-end")
    assert at_fingers.says("The left finger slipped first.")


def test_frictions_are_typed_and_the_lower_takes_the_other_along(at_fingers: Any):
    at_fingers.press("view.numbers")
    at_fingers.press("finger-right")
    at_fingers.press("picked-more")
    for _ in range(4):
        at_fingers.press("picked-static.less")
    assert bench(at_fingers).right == Friction(0.3, 0.3)
    at_fingers.press("picked-kinetic.less")
    assert bench(at_fingers).right == Friction(0.3, 0.25)


def test_where_they_meet_is_said_with_the_flag(at_fingers: Any):
    start = at_fingers.middle("meeting")
    at_fingers.drag(start, (spot(at_fingers, 0.50)[0], start[1]))
    assert bench(at_fingers).meeting_guess_m == pytest.approx(0.50)
    at_fingers.press("let-go")
    at_fingers.press("show-end")
    assert at_fingers.says("You said they meet at 50.0 cm: 10.0 cm off.")


def test_hands_stop_on_the_way_and_go_on(at_fingers: Any):
    at_fingers.press("let-go")
    at_fingers.wait(1.0)
    at_fingers.press("stop-hands")
    stood = bench(at_fingers).places_m
    at_fingers.wait(0.5)
    assert bench(at_fingers).places_m == stood
    at_fingers.press("let-go")
    at_fingers.wait(7.0)
    assert at_fingers.says("They meet under the balance point.")


def test_a_body_off_its_balance_point_tips_in_real_motion_and_says_why(at_fingers: Any):
    at_fingers.drag(*x_moved(at_fingers, "finger-left", 0.5))
    at_fingers.press("let-go")
    at_fingers.wait(0.2)
    early = bench(at_fingers).motion.angle_rad
    at_fingers.wait(0.2)
    assert 0.0 < early < bench(at_fingers).motion.angle_rad
    at_fingers.wait(3.0)
    assert at_fingers.says("It tipped off the left finger.")
    assert at_fingers.says("No finger is left of the balance point")


def test_a_weight_put_down_clinks_and_fingers_that_meet_knock():
    held = workshop_pole()
    loaded = Session(held)
    loaded.do(Hang(0.1, 0.5))
    end = held.released().at_end()
    on_the_way = replace(end, gap_m=end.gap_m + 1e-4)
    pairs = ((held, loaded.state), (on_the_way, end), (held, held.released()), (end, held))
    heard = [cues(_model(before), _model(after)) for before, after in pairs]
    assert heard == [("clink",), ("knock",), (), ()]


# --- by keys ------------------------------------------------------------------------------------------------


def test_by_keys_fingers_are_nudged_a_weight_stood_and_all_slides_in(at_fingers: Any):
    at_fingers.tab_to("finger-left")
    at_fingers.key("right", times=4)
    at_fingers.key("right", shift=True)
    assert bench(at_fingers).fingers_m == pytest.approx((0.06 + 0.02 + 0.05, 0.90))
    at_fingers.tab_to("tray-50")
    at_fingers.key("right")
    at_fingers.key("enter")
    assert "focused" in at_fingers.node("on-its-way").state
    at_fingers.key("right", shift=True)
    at_fingers.key("enter")
    assert bench(at_fingers).pieces[-1].part.at_m[0] == pytest.approx(0.55)
    at_fingers.tab_to("guess.left")
    at_fingers.key("right")
    at_fingers.tab_to("let-go")
    at_fingers.key("enter")
    at_fingers.wait(7.0)
    assert bench(at_fingers).places_m == pytest.approx(slid(bench(at_fingers)), abs=1e-12)
    at_fingers.tab_to("hold")
    at_fingers.key("enter")
    at_fingers.tab_to("piece-3")
    at_fingers.key("delete")
    assert len(bench(at_fingers).pieces) == 2


def test_by_keys_the_flag_the_line_and_a_row_of_the_table_are_reached(at_fingers: Any):
    at_fingers.press("view.all")
    at_fingers.tab_to("meeting")
    at_fingers.key("left", times=2, shift=True)
    assert bench(at_fingers).meeting_guess_m == pytest.approx(0.90)
    before = bench(at_fingers).sum.balance_point_m[0]
    at_fingers.tab_to("reference")
    at_fingers.key("right", times=2, shift=True)
    assert bench(at_fingers).reference_m == pytest.approx(0.10)
    assert bench(at_fingers).sum.balance_point_m[0] == pytest.approx(before, abs=1e-15)
    at_fingers.tab_to("row-piece-1")
    at_fingers.key("enter")
    assert "selected" in at_fingers.node("piece-1").state
    at_fingers.key("escape")
    assert "selected" not in at_fingers.node("piece-1").state


# --- the strip, and files -----------------------------------------------------------------------------------


def test_the_strip_s_data_are_the_closed_forms_all_the_way():
    state = workshop_pole().released()
    points = way_points(state.slide)
    weight_n, balance_m = state.slide.weight_n, 0.4
    assert points[0].gap_m == pytest.approx(0.84)
    assert points[-1].gap_m == pytest.approx(state.touch_m)
    for point in points:
        on_left = weight_n * (point.right_m - balance_m) / (point.right_m - point.left_m)
        on_right = weight_n * (balance_m - point.left_m) / (point.right_m - point.left_m)
        # Quotients of a few rounded numbers.
        assert point.forces.left_normal_n == pytest.approx(on_left, rel=1e-9)
        assert point.forces.right_normal_n == pytest.approx(on_right, rel=1e-9)
        assert point.forces.friction_n == pytest.approx(DRY.kinetic * on_left, rel=1e-9) or (
            point.forces.friction_n == pytest.approx(DRY.kinetic * on_right, rel=1e-9)
        )
    falls = [b.forces.friction_n / a.forces.friction_n for a, b in itertools.pairwise(points) if a.gap_m == b.gap_m]
    # At each change the friction falls from what just held to what slides.
    assert falls == pytest.approx([DRY.kinetic / DRY.static] * (len(state.slide.legs) - 1), rel=1e-9)


def test_what_has_come_so_far_is_the_beginning_of_the_whole_way():
    state = workshop_pole().released()
    for _ in range(500):
        state = state.ticked()
    done = way_points(state.slide, to_gap_m=state.gap_m)
    assert done[-1].gap_m == pytest.approx(state.gap_m)
    assert (done[-1].left_m, done[-1].right_m) == pytest.approx(state.places_m)
    assert done[0] == way_points(state.slide)[0]


def test_what_is_saved_says_its_bench_and_opens_there_again(at_fingers: Any):
    at_fingers.press("finger-right")
    at_fingers.press("picked-grip.soapy")
    at_fingers.press("picked-place.less")
    at_fingers.press("builds")
    at_fingers.press("build-save")
    (path,) = list(at_fingers.paths.builds.glob("[!.]*.toml"))
    build = read_build(path)
    assert build.bench == "fingers"
    assert [support.name for support in build.supports] == ["left finger", "right finger"]
    assert build.supports[1].friction == (SOAPY.static, SOAPY.kinetic)
    was = bench(at_fingers)
    at_fingers.lab.handle(FileDropped(path))
    assert bench(at_fingers).fingers_m == pytest.approx(was.fingers_m, abs=1e-15)
    assert bench(at_fingers).right == SOAPY


@pytest.mark.parametrize("language", ["en", "xr"])
def test_nothing_moves_in_a_low_window_when_something_is_picked(make_pilot: Any, language: str):
    settings = Settings(learner="KEEP-0001", language=language, text_scale=2.0)
    pilot = make_pilot(size=(1024, 600), settings=settings)
    for key in ("to-build", "benches", "bench-fingers"):
        pilot.press(key)
    before = {key: pilot.node(key).bounds for key in ("picture", "finger-right", "piece-2")}
    pilot.tap(*pilot.middle("piece-1"))
    assert pilot.has("strip")
    for key, bounds in before.items():
        # In a mirrored picture the far edge is a difference of two.
        assert pilot.node(key).bounds == pytest.approx(bounds, abs=1e-9)


@pytest.mark.parametrize("reference_m", [0.0, 0.2, 0.4, 0.55])
def test_where_they_are_said_to_meet_is_never_written_under_the_knob_of_the_reference_line(reference_m: float):
    words = Words("xr")
    look = Look(THEMES["paper"], Sizes(1024, 600, text_scale=2.0, mirrored=words.mirrored), words)
    state = replace(workshop_pole(), view="all", reference_m=reference_m, meeting_guess_m=0.5)
    view = TwoFingersView(bench=state, look=look, readings=Readings(words=words, units=UNITS["g-cm"]), told=True)
    rect, canvas = Rect(492, 157, 532, 443), ListCanvas((1024, 600))
    draw_two_fingers(canvas, rect, view)
    knob = reference_knob(view, stage_for(view, rect))
    lines = [op for op in canvas.ops if getattr(op, "text", "").find("50.0") >= 0]
    assert lines
    assert not any(Rect(*op.bounds).intersects(knob) for op in lines)


def test_what_is_tied_is_called_by_its_own_name_in_picture_and_strip(at_fingers: Any):
    for key in ("piece-1", "picked-more", "picked-tie", "piece-2", "picked-more"):
        at_fingers.press(key)
    assert [piece.part.name for piece in bench(at_fingers).pieces] == ["group/brass 200", "group/brass 50"]
    assert at_fingers.node("picked-name").name == "brass 200"
    assert not any("group/" in line for line in at_fingers.draw().text_lines())
