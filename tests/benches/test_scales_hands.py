"""The scales bench in use: by pointer alone, by keys alone, and what it comes to against the mechanics' own answer."""

from types import SimpleNamespace
from typing import Any

import pytest

from lab.mechanics import support_reactions_n
from lab.scenes.scales.stage import stage_of
from lab.scenes.scales.view import Moment, ScalesView
from lab.screens.sound_cues import cues
from lab.simulation import TICK_NS, LetGo, Session
from lab.simulation.benches.scales import LYING, ScalesBench
from lab.simulation.benches.scales_builds import workshop_scales
from lab.simulation.scales_commands import MoveScale, PutOn
from lab.ui.events import PointerDown, PointerMove, PointerUp
from lab.ui.geometry import Rect

G = 9.80665
FRAME = """
format = 1
title = "Kite frame"
units = "kg-m"
bench = "scales"
part = [
    { name = "frame", weight = 3.2, at = [0.6, 0, 0.02], shape = { kind = "box", size = [1.2, 0.8, 0.04] } },
    { name = "reel", weight = 1.1, at = [0.4, 0.1, 0.1], shape = { kind = "cylinder", radius = 0.08, length = 0.1 } },
    { name = "battery", weight = 0.7, at = [0.8, -0.2, 0.08], shape = { kind = "box", size = [0.12, 0.07, 0.06] } },
]
support = [
    { name = "bow scale", at = [0.1, 0, 0] },
    { name = "left scale", at = [1.1, -0.35, 0] },
    { name = "right scale", at = [1.1, 0.35, 0] },
]
"""


@pytest.fixture
def at_scales(pilot: Any) -> Any:
    pilot.press("to-build")
    pilot.press("benches")
    pilot.press("bench-scales")
    return pilot


@pytest.fixture
def at_frame(pilot: Any) -> Any:
    folder = pilot.paths.builds
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "kite-frame.toml").write_text(FRAME, encoding="utf-8")
    pilot.press("to-build")
    pilot.press("builds")
    pilot.press("open-0")
    return pilot


def bench(pilot: Any) -> ScalesBench:
    return pilot.lab._screen._model.bench


def spot(pilot: Any, along_m: float, across_m: float = 0.0) -> tuple[float, float]:
    """The point of the picture that shows a place; from beside, one a little over the bar."""
    state, look = bench(pilot), pilot.lab._look
    moment = Moment(raised_m=state.lift_m, motion=LYING, readings_kg=state.readings_kg)
    view = ScalesView(bench=state, look=look, readings=pilot.lab._screen._stand(pilot.lab._screen._model).readings,
                      moment=moment)  # fmt: skip
    stage = stage_of(view, Rect(*pilot.node("picture").bounds))
    if stage.top is not None:
        return stage.top.camera.at(along_m, across_m)
    return stage.side.camera.at(along_m, state.top_m + 0.03)


def at(pilot: Any, name: str) -> tuple[float, float]:
    return next((load.at_m, load.across_m) for load in bench(pilot).loads if load.name == name)


def stands_at(pilot: Any, number: int) -> float:
    return bench(pilot).scales[number].at_m[0]


def readings_by_mechanics(pilot: Any) -> list[float]:
    state = bench(pilot)
    forces = support_reactions_n(state.parts, [scale.at_m for scale in state.scales])
    return [force / G for force in forces]


def let_down(pilot: Any) -> None:
    pilot.press("let-go")
    pilot.wait(3.0)


# --- by pointer ---------------------------------------------------------------------------------------------


def test_nothing_is_given_away_before_it_is_let_down(at_scales: Any):
    assert at_scales.node("scale-1").value.startswith("not known yet")
    assert not at_scales.has("moments")
    let_down(at_scales)
    assert at_scales.node("scale-1").value.startswith("reads 516.7 g")
    assert at_scales.says("The left one reads more.")


def test_by_pointer_a_bar_is_loaded_guessed_let_down_and_read(at_scales: Any):
    at_scales.drag(at_scales.middle("tray-500"), spot(at_scales, 0.55))
    at_scales.drag(at_scales.middle("load-1"), spot(at_scales, 0.12), steps=20)
    at_scales.drag(at_scales.middle("scale-2"), (spot(at_scales, 0.7)[0], at_scales.middle("scale-2")[1]))
    assert at(at_scales, "brass") == (pytest.approx(0.55), 0.0)
    assert at(at_scales, "camera") == (pytest.approx(0.12), 0.0)
    assert stands_at(at_scales, 1) == pytest.approx(0.7)
    at_scales.press("guess.left")
    let_down(at_scales)
    assert bench(at_scales).readings_kg == pytest.approx(readings_by_mechanics(at_scales), rel=1e-12)
    assert at_scales.says("You said left.")


def test_on_the_scales_a_load_still_moves_and_the_readings_follow(at_scales: Any):
    let_down(at_scales)
    before = bench(at_scales).readings_kg
    at_scales.drag(at_scales.middle("load-2"), spot(at_scales, 0.3))
    state = bench(at_scales)
    assert not state.held
    assert state.readings_kg[0] > before[0]
    assert state.readings_kg == pytest.approx(readings_by_mechanics(at_scales), rel=1e-12)


def test_a_load_carried_past_a_scale_tips_the_bar_and_it_is_set_back(at_scales: Any):
    at_scales.drag(at_scales.middle("scale-2"), (spot(at_scales, 0.48)[0], at_scales.middle("scale-2")[1]))
    let_down(at_scales)
    assert bench(at_scales).tipping is None
    at_scales.drag(at_scales.middle("load-1"), spot(at_scales, 0.9), steps=40)
    at_scales.wait(3.0)
    state = bench(at_scales)
    assert state.motion.phase == "down"
    assert state.readings_kg[0] == 0.0
    # It began to tip where the balance point crossed the scale, and could not be moved farther.
    assert 0.48 < state.sum.balance_point_m[0] < 0.49
    assert at_scales.says("It tips over the right scale.")
    at_scales.press("hold")
    assert bench(at_scales).held
    assert at_scales.node("scale-1").value.startswith("not known yet")


def test_one_undo_takes_a_whole_drag_back(at_scales: Any):
    at_scales.drag(at_scales.middle("load-1"), spot(at_scales, 0.5), steps=20)
    at_scales.press("undo")
    assert at(at_scales, "camera") == (0.30, 0.0)


def test_two_pointers_carry_two_things_at_once_and_one_undo_takes_both_back(at_scales: Any):
    before = at(at_scales, "camera"), at(at_scales, "nest box")
    lab, first, second = at_scales.lab, at_scales.middle("load-1"), at_scales.middle("load-2")
    lab.handle(PointerDown(1, *first))
    lab.handle(PointerDown(2, *second))
    px = (spot(at_scales, 1.0)[0] - spot(at_scales, 0.0)[0]) / 100.0
    for step in range(1, 11):
        lab.handle(PointerMove(1, first[0] + step * px, first[1]))
        lab.handle(PointerMove(2, second[0] - step * px, second[1]))
        at_scales.wait(1 / 60)
    lab.handle(PointerUp(1, first[0] + 10 * px, first[1]))
    lab.handle(PointerUp(2, second[0] - 10 * px, second[1]))
    assert at(at_scales, "camera")[0] == pytest.approx(0.40)
    assert at(at_scales, "nest box")[0] == pytest.approx(0.60)
    at_scales.press("undo")
    assert (at(at_scales, "camera"), at(at_scales, "nest box")) == before


def test_a_weight_dropped_beside_the_bar_goes_back_and_says_so(at_scales: Any):
    at_scales.drag(at_scales.middle("tray-500"), (1100.0, 640.0))
    assert len(bench(at_scales).loads) == 2
    assert at_scales.says("so it went back")


def test_the_reference_line_moves_the_table_and_not_the_balance_point(at_scales: Any):
    at_scales.press("view.all")
    balance = bench(at_scales).sum.balance_point_m
    at_scales.drag(at_scales.middle("reference"), (spot(at_scales, 0.5)[0], at_scales.middle("reference")[1]))
    state = bench(at_scales)
    assert state.reference_m == pytest.approx(0.5)
    assert state.sum.balance_point_m == balance
    assert at_scales.says("from the reference line at 50.0 cm")


def test_a_row_of_the_table_picks_its_part(at_scales: Any):
    at_scales.press("view.all")
    at_scales.press("row-load-2")
    assert "selected" in at_scales.node("load-2").state
    at_scales.press("picked-more")
    assert at_scales.has("picked-weight")
    at_scales.press("picked-mirror")
    # As far left of the middle between the scales, 50 cm, as the nest box is right of it.
    assert at(at_scales, "nest box (2)") == (pytest.approx(0.30), 0.0)


# --- by keys ------------------------------------------------------------------------------------------------


def test_by_keys_a_weight_is_put_on_moved_and_removed_and_all_is_let_down(at_scales: Any):
    at_scales.tab_to("tray-50")
    at_scales.key("right", times=2)
    at_scales.key("enter")
    at_scales.key("left", times=3)
    at_scales.key("left", shift=True)
    at_scales.key("enter")
    # From the middle three steps of 0.5 cm and one of ten times that.
    assert at(at_scales, "brass") == (pytest.approx(0.50 - 0.015 - 0.05), 0.0)
    at_scales.tab_to("load-2")
    at_scales.key("delete")
    assert [load.name for load in bench(at_scales).loads] == ["camera", "brass"]
    at_scales.tab_to("scale-1")
    at_scales.key("right", times=4)
    assert stands_at(at_scales, 0) == pytest.approx(0.22)
    at_scales.tab_to("guess.left")
    at_scales.key("enter")
    at_scales.tab_to("let-go")
    at_scales.key("enter")
    at_scales.wait(3.0)
    assert bench(at_scales).readings_kg == pytest.approx(readings_by_mechanics(at_scales), rel=1e-12)
    at_scales.key("z", ctrl=True)
    assert bench(at_scales).held


def test_what_a_scale_will_read_is_set_by_steps_and_stands_beside_what_it_reads(at_scales: Any):
    at_scales.press("guess-reading.more")
    said = bench(at_scales).guessed_kg
    assert said is not None
    let_down(at_scales)
    assert at_scales.says(f"You said {round(said * 1000)} g on the left scale.")


# --- three scales -------------------------------------------------------------------------------------------


def test_on_three_scales_parts_and_scales_move_in_the_plane(at_frame: Any):
    at_frame.drag(at_frame.middle("load-3"), spot(at_frame, 0.5, 0.25))
    at_frame.drag(at_frame.middle("scale-1"), spot(at_frame, 0.2, 0.1))
    assert at(at_frame, "battery") == (pytest.approx(0.5), pytest.approx(0.25))
    assert bench(at_frame).scales[0].at_m[:2] == (pytest.approx(0.2), pytest.approx(0.1))
    let_down(at_frame)
    assert bench(at_frame).readings_kg == pytest.approx(readings_by_mechanics(at_frame), rel=1e-12)
    assert at_frame.says("It stands on all three.")


def test_by_keys_a_part_moves_along_and_across(at_frame: Any):
    at_frame.tab_to("load-2")
    at_frame.key("up", times=2)
    at_frame.key("left", shift=True)
    assert at(at_frame, "reel") == (pytest.approx(0.35), pytest.approx(0.11))


def test_a_frame_can_stand_on_two_scales_instead(at_frame: Any):
    at_frame.press("scale-count.2")
    assert len(bench(at_frame).scales) == 2
    at_frame.press("undo")
    assert len(bench(at_frame).scales) == 3


def test_what_was_left_on_the_bench_is_there_again(at_scales: Any, make_pilot: Any):
    at_scales.drag(at_scales.middle("load-1"), spot(at_scales, 0.4))
    left = bench(at_scales)
    at_scales.key("escape", times=2)
    again = make_pilot()
    again.press("to-build")
    again.press("benches")
    again.press("bench-scales")
    assert bench(again) == left


# --- what is heard ------------------------------------------------------------------------------------------


def heard(before: ScalesBench, after: ScalesBench) -> tuple[str, ...]:
    return cues(SimpleNamespace(bench=before), SimpleNamespace(bench=after))


def test_brass_clinks_and_wood_knocks_as_it_is_set_down_and_as_it_falls():
    session = Session(workshop_scales())
    held = session.state
    session.do(PutOn(0.5, 0.95))
    assert heard(held, session.state) == ("clink",)
    session.do(MoveScale(2, 0.5, 0.0))
    session.do(LetGo())
    sounds: list[tuple[int, str]] = []
    for tick in range(500):
        before = session.state
        session.advance(TICK_NS)
        sounds += [(tick, sound) for sound in heard(before, session.state)]
    assert [sound for _, sound in sounds] == ["knock", "knock"]
    # Set down after 0.3 s, and down on the table some while after.
    assert sounds[0][0] == pytest.approx(60, abs=1)
    assert sounds[1][0] > 80


def test_figures_are_written_down_once_they_no_longer_run_and_nothing_moves_by_that(at_scales: Any):
    at_scales.press("view.numbers")
    at_scales.press("let-go")
    at_scales.wait(0.5)
    assert bench(at_scales).moving
    before = {key: at_scales.node(key).bounds for key in ("readings", "moments", "picture")}
    assert not at_scales.says("516.7")
    at_scales.wait(3.0)
    assert not bench(at_scales).moving
    assert {key: at_scales.node(key).bounds for key in before} == before
    assert at_scales.says("516.7")


def test_while_a_body_is_let_down_and_settles_nothing_but_its_picture_is_laid_out_anew(at_scales: Any):
    at_scales.press("view.all")
    at_scales.press("let-go")
    screen = at_scales.lab._screen
    at_scales.wait(0.1)
    for seconds in (0.05, 0.5):
        at_scales.wait(seconds)
        assert bench(at_scales).moving
        assert screen._turned_only


def test_a_tin_of_the_other_shelf_is_dragged_on_and_stands_there(at_scales: Any):
    at_scales.press("shelf.more")
    part = at_scales.middle("load-1")
    at_scales.drag(at_scales.middle("tray-tin"), (part[0] + 120.0, part[1]))
    tin = bench(at_scales).loads[-1]
    assert (tin.name, tin.look, tin.mass_kg) == ("tin", "tin", 0.2)
    # It stands on the boom's upper face: half as high as it is over 1.5 cm.
    assert tin.up_m == pytest.approx(0.015 + 0.05, abs=1e-12)


def test_beads_are_put_on_by_the_keyboard_alone(at_scales: Any):
    at_scales.press("shelf.more")
    at_scales.tab_to("tray-beads")
    for name in ("enter", "right", "enter"):
        at_scales.key(name)
    assert bench(at_scales).loads[-1].name == "beads"
