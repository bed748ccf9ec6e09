"""The hung plate: its sums, its swing, its lines; played by pointer alone and by keys alone."""

import math
from dataclasses import replace
from typing import Any

import pytest

from lab.files import build_text, read_build, read_build_text
from lab.mechanics import STANDARD_GRAVITY_M_S2, Pivot, inertia_about_kg_m2
from lab.scenes.plate_view import PlateView
from lab.screens.screen import BuildModel, Setting
from lab.screens.sound_cues import cues
from lab.simulation import Guess, HoldStill, LetGo, MoveReference, OpenBuild, Redo, Remove, Session, SetView, Undo
from lab.simulation.benches import HungPlate
from lab.simulation.benches.hanging_bar import FADE_S
from lab.simulation.benches.plate_builds import BLANKS, build_from_plate, plate_from_build, workshop_plate
from lab.simulation.benches.plate_edits import CROSSES, HOLE_CORNERS, HOLE_OUT, NO_PLUMB_LINE, PIN_IN_AIR, STILL_FIRST
from lab.simulation.benches.plate_rings import in_wood
from lab.simulation.benches.unfit import UnfitBuildError
from lab.simulation.clock import TICK_S
from lab.simulation.commands import Measure
from lab.simulation.part_commands import Rename, Reweigh
from lab.simulation.plate_commands import (
    AddCorner,
    ClipOn,
    CutHole,
    DrawPlumbLine,
    FillHole,
    MoveClip,
    MoveCorner,
    MoveHole,
    MovePin,
    RemoveCorner,
    RubOutLines,
    SetAreaWeight,
    TakeBlank,
)
from lab.ui.assets import asset_folder
from lab.ui.geometry import Rect

END = LetGo(at_once=True)
NEAR_M = 1e-12
"""A billionth of a millimetre: what round-off makes of places under a metre, and nothing else."""

ELL = ((0.0, 0.0), (0.4, 0.0), (0.4, 0.1), (0.1, 0.1), (0.1, 0.3), (0.0, 0.3))
ELL_AT = ((0.04 * 0.2 + 0.02 * 0.05) / 0.06, (0.04 * 0.05 + 0.02 * 0.2) / 0.06)
"""Two rectangles, 40 × 10 cm and 10 × 20 cm above its left end."""
BOARD = ((0.0, 0.0), (0.3, 0.0), (0.3, 0.4), (0.0, 0.4))
WINDOW = ((0.15, 0.2), (0.25, 0.2), (0.25, 0.35), (0.15, 0.35))
BOARD_AT = ((0.12 * 0.15 - 0.015 * 0.2) / 0.105, (0.12 * 0.2 - 0.015 * 0.275) / 0.105)
TRIANGLE = ((0.0, 0.0), (0.36, 0.06), (0.12, 0.30))
TRIANGLE_AT = (0.16, 0.12)
CLOSED_FORMS = [
    (ELL, (), ELL_AT, ((0.05, 0.28), (0.38, 0.05))),
    (BOARD, (WINDOW,), BOARD_AT, ((0.02, 0.38), (0.28, 0.38))),
    (TRIANGLE, (), TRIANGLE_AT, ((0.12, 0.28), (0.33, 0.07))),
]
NAMES = ["an L", "a board with a window", "a triangle"]


def plate(outline=ELL, holes=(), pin=(0.05, 0.28)):
    return HungPlate(
        outline_m=outline, holes_m=holes, area_kg_m2=2.4, pivot=Pivot(at_m=pin[0], up_m=pin[1]), view="numbers"
    )


def done(bench, *commands):
    session = Session(bench)
    for command in commands:
        assert session.do(command) is None, command
    return session.state


def watched(bench):
    """The plate let go and watched until it hangs still, a tick after the other."""
    bench = bench.released()
    for _ in range(4000):
        bench = bench.ticked()
        if not bench.moving:
            return bench
    raise AssertionError("it never came to rest")


# --- mechanics ----------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("outline", "holes", "at", "pins"), CLOSED_FORMS, ids=NAMES)
def test_lines_drawn_from_two_pins_cross_at_the_closed_form_and_at_the_sum(outline, holes, at, pins):
    bench = plate(outline, holes, pins[0])
    for pin in pins:
        bench = done(watched(done(bench, MovePin(*pin)) if pin != pins[0] else bench), DrawPlumbLine())
    assert bench.crossing_m == pytest.approx(at, abs=NEAR_M)
    for total in (bench.sum, bench.sum_of_pieces):
        assert (total.balance_point_m[0], total.balance_point_m[2]) == pytest.approx(at, abs=NEAR_M)


@pytest.mark.parametrize(("outline", "holes", "at", "pins"), CLOSED_FORMS, ids=NAMES)
def test_a_small_swing_takes_two_pi_root_of_inertia_over_mass_gravity_distance(outline, holes, at, pins):
    still = plate(outline, holes, pins[0])
    (x, z), mass_kg = pins[0], still.sum.mass_kg
    inertia = float(inertia_about_kg_m2(still.parts, (x, 0.0, z))[1, 1])
    distance_m = math.hypot(at[0] - x, at[1] - z)
    undamped = math.sqrt(mass_kg * STANDARD_GRAVITY_M_S2 * distance_m / inertia)
    # Damping that leaves 1/e after FADE_S slows the swing by a known share.
    expected_s = 2 * math.pi / math.sqrt(undamped**2 - 1 / FADE_S**2)
    bench = still.released()
    # Only 3° from its rest, where a swing is as long as the smallest to 2e-4; four half swings are timed.
    bench = replace(bench, swing=replace(bench.swing, angle_rad=math.radians(3.0)))
    crossings, ticks, before = [], 0, bench.swing.angle_rad
    while bench.moving and len(crossings) < 5:
        bench, ticks = bench.ticked(), ticks + 1
        now = bench.swing.angle_rad
        if before * now < 0:
            crossings.append((ticks - now / (now - before)) * TICK_S)
        before = now
    assert len(crossings) >= 3
    assert crossings[2] - crossings[0] == pytest.approx(expected_s, rel=5e-4)


def test_it_swings_past_its_rest_and_comes_to_hang_there():
    bench = plate().released()
    rest = bench.fall.rest_rad
    seen = []
    while bench.moving:
        bench = bench.ticked()
        seen.append(bench.angle_rad)
    assert min(seen) < rest - 0.1  # it falls clockwise, and overshoots
    assert bench.angle_rad == rest
    x, z = bench.pivot.at_m, bench.pivot.up_m
    away = (ELL_AT[0] - x, ELL_AT[1] - z)
    assert math.cos(rest) * away[0] - math.sin(rest) * away[1] == pytest.approx(0.0, abs=NEAR_M)
    assert bench.outcome == "right"


def test_hung_from_a_pin_under_its_balance_point_it_turns_right_over():
    bench = watched(plate(TRIANGLE, pin=(0.15, 0.03)))
    assert abs(bench.angle_rad) > math.radians(90)


def test_hung_by_its_balance_point_it_stays_and_no_line_can_be_drawn():
    bench = plate(BOARD, pin=(0.15, 0.2)).released()
    assert (bench.moving, bench.outcome, bench.angle_rad) == (False, "level", 0.0)
    assert Session(bench).do(DrawPlumbLine()) is NO_PLUMB_LINE


def test_the_balance_point_of_a_crescent_lies_in_the_air():
    bench = BLANKS["crescent"]
    along, _, up = bench.sum.balance_point_m
    assert not in_wood((along, up), bench.outline_m, bench.holes_m)


def test_weight_follows_the_outline_and_the_sheet():
    assert plate().sum.mass_kg == pytest.approx(0.06 * 2.4, rel=1e-12)
    assert done(plate(), SetAreaWeight(7.85)).sum.mass_kg == pytest.approx(0.06 * 7.85, rel=1e-12)
    wider = done(plate(), MoveCorner(0, 1, 0.5, 0.0), MoveCorner(0, 2, 0.5, 0.1))
    assert wider.sum.mass_kg == pytest.approx(0.07 * 2.4, rel=1e-12)


def test_a_weight_clipped_on_pulls_the_balance_point_as_the_sum_says():
    bench = done(plate(), ClipOn(0.144, 0.39, 0.05))
    # As heavy as the plate itself: half-way between.
    assert bench.sum.balance_point_m[0] == pytest.approx((ELL_AT[0] + 0.39) / 2, abs=NEAR_M)
    assert [row.name for row in bench.sum_of_pieces.rows][-1] == "clip-1"


def test_moving_the_reference_changes_arms_and_moments_and_not_the_balance_point():
    before, after = plate(), done(plate(), MoveReference(0.1))
    assert after.sum_of_pieces.balance_point_m == before.sum_of_pieces.balance_point_m
    assert after.sum_of_pieces.rows[0].arm_m[0] == pytest.approx(before.sum_of_pieces.rows[0].arm_m[0] - 0.1)


def test_doubts_of_the_plate_and_its_weights_reach_the_result():
    bench = done(plate(), ClipOn(0.05, 0.3, 0.05), Measure(0.001, 0.002))
    assert all(part.mass_doubt_kg == 0.001 and part.at_doubt_m == (0.002, 0.0, 0.002) for part in bench.parts)


# --- cutting ------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("command", "why"),
    [
        (MoveCorner(0, 3, -0.05, 0.05), CROSSES),
        (MoveCorner(0, 2, 0.05, 0.2), CROSSES),
        (AddCorner(0, 5, 0.0, 0.0), CROSSES),
        (AddCorner(0, 2, 0.1, 0.1), CROSSES),
        (CutHole(0.1, 0.1, 0.06), HOLE_OUT),
        (CutHole(0.05, 0.27, 0.02), PIN_IN_AIR),
        (DrawPlumbLine(), STILL_FIRST),
        (MoveCorner(0, 4, 0.02, 0.3), PIN_IN_AIR),
    ],
)
def test_what_cannot_be_cut_is_refused_with_a_sentence_and_nothing_is_lost(command, why):
    session = Session(plate())
    before = session.state
    assert session.do(command) is why
    assert session.state is before
    assert not session.can_undo


def test_corners_are_added_moved_and_removed_and_all_is_taken_back():
    session = Session(plate())
    first = session.state
    assert session.do(AddCorner(0, 0, 0.2, 0.0)) is None
    for step in range(1, 6):
        assert session.do(MoveCorner(0, 1, 0.2, -0.01 * step, joins=step > 1)) is None
    assert session.state.outline_m[1] == (0.2, -0.05)
    assert session.do(RemoveCorner(0, 1)) is None
    assert session.state.outline_m == first.outline_m
    for _ in range(3):  # removal, the whole drag, the new corner
        assert session.do(Undo()) is None
    assert session.state is first
    for _ in range(3):
        assert session.do(Redo()) is None
    assert session.state.outline_m == first.outline_m


def test_a_hole_is_cut_moved_reshaped_and_filled():
    bench = done(plate(), CutHole(0.25, 0.05, 0.03))
    (hole,) = bench.holes_m
    assert len(hole) == HOLE_CORNERS
    ring_area = HOLE_CORNERS / 2 * 0.03**2 * math.sin(2 * math.pi / HOLE_CORNERS)
    assert bench.sum.mass_kg == pytest.approx((0.06 - ring_area) * 2.4, rel=1e-6)  # corners are on a grid
    moved = done(bench, MoveHole(1, 0.3, 0.05), MoveCorner(1, 0, 0.335, 0.06))
    assert moved.holes_m[0][0] == (0.335, 0.06)
    assert done(moved, FillHole(1)).holes_m == ()


def test_cutting_rubs_out_the_lines_and_undo_brings_them_back():
    session = Session(plate())
    for command in (END, DrawPlumbLine(), MoveCorner(0, 1, 0.42, 0.0)):
        assert session.do(command) is None
    assert session.state.lines == ()
    session.do(Undo())
    assert len(session.state.lines) == 1


def test_lines_can_be_rubbed_out_and_weights_named_weighed_moved_and_removed():
    bench = done(plate(), END, DrawPlumbLine(), RubOutLines())
    assert bench.lines == ()
    bench = done(bench, ClipOn(0.05, 0.3, 0.05), Rename(1, "hinge"), Reweigh(1, 0.08), MoveClip(1, 0.2, 0.06))
    (clip,) = bench.clips
    assert (clip.name, clip.mass_kg, clip.at_m, clip.up_m) == ("hinge", 0.08, 0.2, 0.06)
    assert done(bench, Remove(1)).clips == ()


@pytest.mark.parametrize("name", sorted(BLANKS))
def test_every_outline_to_begin_with_hangs_and_keeps_the_sheet(name):
    bench = done(done(plate(), SetAreaWeight(4.8)), TakeBlank(name))
    assert bench.area_kg_m2 == 4.8
    assert watched(bench).outcome in ("left", "right")


# --- files --------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("units", ["g-cm", "kg-m", "N-m", "lb-in"])
@pytest.mark.parametrize("name", sorted(BLANKS))
def test_a_plate_is_saved_and_opened_again_to_the_last_bit(name, units):
    bench = done(BLANKS[name], SetAreaWeight(2.37), Measure(0.001, 0.002), MoveReference(0.02))
    bench = replace(bench, units=units)
    again = plate_from_build(read_build_text(build_text(build_from_plate(bench)), file="again.toml"))
    if units in ("g-cm", "kg-m"):
        assert again == bench
    assert again.rings_m == bench.rings_m
    assert (again.pivot.at_m, again.pivot.up_m) == (bench.pivot.at_m, bench.pivot.up_m)
    assert again.area_kg_m2 == bench.area_kg_m2


def test_any_outline_of_a_file_lies_where_its_part_does():
    text = """
format = 1
title = "Vane"
units = "g-cm"
bench = "plate"
pivot = { at = 28, up = 24 }

[[part]]
name = "vane"
weight = 90
at = [30, 0, 20]
shape = { kind = "triangle", outline = [[0, 0], [9, 0], [0, 9]] }

[[part]]
name = "lead"
weight = 20
at = [29, 0, 19]
"""
    bench = plate_from_build(read_build_text(text, file="vane.toml"))
    assert bench.outline_m == ((0.27, 0.17), (0.36, 0.17), (0.27, 0.26))
    assert (bench.clips[0].name, bench.clips[0].at_m, bench.clips[0].up_m) == ("lead", 0.29, 0.19)
    assert done(workshop_plate(), OpenBuild(text)) == bench


@pytest.mark.parametrize(
    "parts",
    [
        'part = [{ name = "pole", weight = 9, at = 0, shape = { kind = "rod", length = 9 } }]',
        'part = [{ name = "board", weight = 9, at = 0, shape = { kind = "rectangle", length = 9, width = 9 } },'
        ' { name = "slot", weight = 1, at = 1, cut = true }]',
        'part = [{ name = "board", weight = 9, at = 0, shape = { kind = "rectangle", length = 9, width = 9 } }]\n'
        "pivot = { at = 40 }",
    ],
    ids=["no plate", "a part that is a hole", "a pin off it"],
)
def test_what_cannot_hang_is_refused(parts):
    with pytest.raises(UnfitBuildError):
        plate_from_build(read_build_text(f'format = 1\ntitle = "Odd"\nunits = "g-cm"\n{parts}\n', file="odd.toml"))


@pytest.mark.parametrize(
    ("name", "along", "up"),
    [
        # Sums by hand of what the files say: plate, lug, stiffener; sail, spine, spar, tail.
        ("gusset-plate", (640 * 12.886 + 60 * 15 + 45 * 10) / 745e2, (640 * 7.686 - 60 * 1.3 + 45 * 6) / 745e2),
        ("survey-kite", (0.9 * 0.5 + 0.5 * 0.6 + 0.4 * 0.3 + 0.2 * 1.5) / 2.0, 0.0),
    ],
)
def test_what_lies_over_the_edge_of_a_plate_in_a_file_hangs_with_it(name, along, up):
    bench = plate_from_build(read_build(asset_folder() / "builds" / f"{name}.toml"))
    assert bench.sum.balance_point_m[0] == pytest.approx(along, abs=5e-6)
    assert bench.sum.balance_point_m[2] == pytest.approx(up, abs=5e-6)
    end = bench.released().at_end()
    pin = end.pivot.at_m, end.pivot.up_m
    x, z = along - pin[0], up - pin[1]
    # Turned by its tilt, the balance point is straight below the pin.
    turned = x * math.cos(end.angle_rad) - z * math.sin(end.angle_rad)
    assert turned == pytest.approx(0.0, abs=1e-5)
    assert build_text(build_from_plate(plate_from_build(build_from_plate(bench)))) == build_text(
        build_from_plate(bench)
    )


# --- by hand ------------------------------------------------------------------------------------------------


@pytest.fixture
def at_plate(pilot: Any) -> Any:
    pilot.press("to-build")
    pilot.press("benches")
    pilot.press("bench-plate")
    return pilot


def bench_of(pilot: Any) -> HungPlate:
    bench: HungPlate = pilot.lab._screen._model.bench
    return bench


def px(pilot: Any, place_m: tuple[float, float]) -> tuple[float, float]:
    """Where a place of the held plate is on the screen."""
    view = PlateView(bench=bench_of(pilot), look=pilot.lab._look, readings=None)  # type: ignore[arg-type]
    return view.stage(Rect(*pilot.node("picture").bounds)).px(view, place_m)


def test_by_pointer_alone_two_lines_are_drawn_and_cross_where_the_sum_says(at_plate: Any):
    first = bench_of(at_plate)
    at_plate.press("guess.right")
    at_plate.press("let-go")
    assert at_plate.lab.moving
    at_plate.wait(12.0)
    assert at_plate.says("You said right, and right it was.")
    at_plate.press("draw-line")
    at_plate.press("hold")
    at_plate.drag(at_plate.middle("pin"), px(at_plate, (0.32, 0.02)))
    assert (bench_of(at_plate).pivot.at_m, bench_of(at_plate).pivot.up_m) == (0.32, 0.02)
    at_plate.press("let-go")
    at_plate.wait(12.0)
    at_plate.press("draw-line")
    bench = bench_of(at_plate)
    along, _, up = first.sum.balance_point_m
    assert bench.crossing_m == pytest.approx((along, up), abs=NEAR_M)
    assert at_plate.says("The lines cross at the balance point.")
    at_plate.press("view.numbers")
    for key in ("crossing-lines", "crossing-pieces"):
        # Each place on a line of its own, so that equal figures stand below one another.
        figures = [cell.name.rsplit(" ", 1)[1] for cell in at_plate.node(key).children[1:]]
        assert figures == [f"{100 * along:.1f}", f"{100 * up:.1f}"]


def test_by_pointer_an_outline_is_reshaped_and_a_hole_and_a_weight_put_in(at_plate: Any):
    at_plate.drag(at_plate.middle("corner-0-1"), px(at_plate, (0.40, -0.04)))
    assert bench_of(at_plate).outline_m[1] == (0.40, -0.04)
    at_plate.drag(at_plate.middle("edge-0-0"), px(at_plate, (0.15, -0.06)))
    assert bench_of(at_plate).outline_m[1] == (0.15, -0.06)
    at_plate.drag(at_plate.middle("tray-hole"), px(at_plate, (0.22, 0.03)))
    at_plate.drag(at_plate.middle("tray-50"), px(at_plate, (0.06, 0.10)))
    bench = bench_of(at_plate)
    assert len(bench.holes_m) == 1
    assert (bench.clips[0].at_m, bench.clips[0].up_m) == (0.06, 0.10)
    at_plate.drag(px(at_plate, (0.22, 0.03)), px(at_plate, (0.24, 0.05)))
    (before,), (after,) = bench.holes_m, bench_of(at_plate).holes_m
    moves = {(round(x - a, 6), round(z - b, 6)) for (x, z), (a, b) in zip(after, before, strict=True)}
    assert moves == {(0.02, 0.02)}


def test_a_corner_dragged_across_an_edge_stops_and_says_why(at_plate: Any):
    before = bench_of(at_plate)
    at_plate.drag(at_plate.middle("corner-0-3"), px(at_plate, (-0.1, 0.05)), steps=1)
    assert bench_of(at_plate).outline_m == before.outline_m
    assert at_plate.says("An outline can't cross or touch itself")


def test_a_tap_on_the_wood_hangs_it_there(at_plate: Any):
    at_plate.tap(*px(at_plate, (0.20, 0.06)))
    bench = bench_of(at_plate)
    assert (bench.pivot.at_m, bench.pivot.up_m) == (0.20, 0.06)


def test_a_tap_on_the_wood_of_a_plate_that_hangs_askew_hangs_it_by_that_place(at_plate: Any):
    at_plate.press("let-go")
    at_plate.wait(12.0)
    bench = bench_of(at_plate)
    view = PlateView(bench=bench, look=at_plate.lab._look, readings=None, angle_rad=bench.angle_rad)  # type: ignore[arg-type]
    at_plate.tap(*view.stage(Rect(*at_plate.node("picture").bounds)).px(view, (0.30, 0.05)))
    assert bench_of(at_plate).held
    assert (bench_of(at_plate).pivot.at_m, bench_of(at_plate).pivot.up_m) == pytest.approx((0.30, 0.05), abs=1e-9)


def test_by_keys_alone_it_is_cut_loaded_hung_let_go_and_drawn(at_plate: Any):
    at_plate.tab_to("corner-0-1")
    at_plate.key("down", times=2)
    at_plate.key("right", shift=True)
    assert bench_of(at_plate).outline_m[1] == pytest.approx((0.34 + 0.05, -0.01))
    at_plate.tab_to("edge-0-2")
    at_plate.key("enter")
    assert len(bench_of(at_plate).outline_m) == 7
    assert "focused" in at_plate.node("corner-0-3").state
    at_plate.key("delete")
    assert len(bench_of(at_plate).outline_m) == 6
    at_plate.tab_to("tray-hole")
    at_plate.key("enter")
    at_plate.key("down", shift=True, times=4)
    at_plate.key("right", times=6)
    at_plate.key("enter")
    assert len(bench_of(at_plate).holes_m) == 1
    at_plate.tab_to("pin")
    at_plate.key("right", times=2)
    at_plate.tab_to("let-go")
    at_plate.key("enter")
    at_plate.wait(12.0)
    at_plate.tab_to("draw-line")
    at_plate.key("enter")
    bench = bench_of(at_plate)
    (line,) = bench.lines
    away = bench.sum.balance_point_m[0] - line.through_m[0], bench.sum.balance_point_m[2] - line.through_m[1]
    assert away[0] * line.down[1] - away[1] * line.down[0] == pytest.approx(0.0, abs=NEAR_M)


def test_numbers_typed_into_the_strip_are_taken_as_they_are(at_plate: Any):
    at_plate.press("pin")
    at_plate.press("picked-along.more")
    assert bench_of(at_plate).pivot.at_m == pytest.approx(0.025)


def test_a_row_of_the_table_marks_its_piece_and_axes_can_be_changed(at_plate: Any):
    at_plate.press("view.all")
    at_plate.press("row-triangle-2")
    assert "selected" in at_plate.node("row-triangle-2").state
    at_plate.press("moment-axis.up")
    bench = bench_of(at_plate)
    assert at_plate.says("up")
    assert bench.sum_of_pieces.rows[1].moment_kg_m[2] > 0.0


def test_nothing_is_given_away_before_it_is_let_go_unless_all_is_shown(at_plate: Any):
    for view, told in (("plain", False), ("numbers", False), ("all", True)):
        at_plate.press(f"view.{view}")
        assert at_plate.has("moments") is told
    at_plate.press("view.numbers")
    at_plate.press("let-go")
    assert at_plate.has("moments")


def test_escape_lets_go_of_what_is_picked_before_it_goes_back(at_plate: Any):
    at_plate.press("pin")
    at_plate.key("escape")
    assert at_plate.has("pin")
    assert not at_plate.has("strip")


def test_holding_it_again_brings_it_back_as_it_was_cut():
    bench = done(plate(), SetView("all"), Guess("right"), LetGo())
    for _ in range(100):
        bench = bench.ticked()
    assert done(bench, HoldStill()) == done(plate(), SetView("all"), Guess("right"))


def test_a_plate_saved_from_the_screen_is_opened_on_its_own_bench_again(at_plate: Any):
    at_plate.drag(at_plate.middle("tray-hole"), px(at_plate, (0.22, 0.06)))
    before = bench_of(at_plate)
    assert len(before.holes_m) == 1
    at_plate.press("builds")
    at_plate.press("build-save")
    saved = at_plate.paths.builds / "rudder-pattern.toml"
    assert 'bench = "plate"' in saved.read_text("utf-8")
    at_plate.press("back")
    at_plate.lab.open_build(saved)
    assert bench_of(at_plate) == before


def test_brass_clinks_when_it_is_clipped_on_and_the_pencil_scratches():
    def heard(before, after):
        models = [BuildModel(setting=Setting(), bench=bench, previous=bench) for bench in (before, after)]
        return cues(*models)

    bench = plate()
    clipped = done(bench, ClipOn(0.05, 0.3, 0.05))
    hanging = done(bench, END)
    drawn = done(hanging, DrawPlumbLine())
    assert (heard(bench, clipped), heard(clipped, bench)) == (("clink",), ())
    assert (heard(hanging, drawn), heard(drawn, hanging)) == (("scratch",), ())
