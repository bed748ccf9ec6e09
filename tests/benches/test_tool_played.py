"""The tool on a finger in use: by pointer alone, by keys alone; what comes of it is what mechanics says."""

import math
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from lab.app.paths import find_paths
from lab.files import read_build
from lab.mechanics import moment_sum, rests_on
from lab.scenes.tool.view import ToolView
from lab.screens.sound_cues import cues
from lab.simulation import Session
from lab.simulation.benches.tool import BuiltTool
from lab.simulation.benches.tool_builds import tool_from_build, workshop_tool
from lab.simulation.tool_commands import FitPart
from lab.ui.events import FileDropped, PointerDown, PointerMove, PointerUp, Text
from lab.ui.geometry import Rect


@pytest.fixture
def at_tool(pilot: Any) -> Any:
    pilot.press("to-build")
    pilot.press("benches")
    pilot.press("bench-tool")
    return pilot


def bench(pilot: Any) -> BuiltTool:
    return pilot.lab._screen._model.bench


def view(pilot: Any) -> ToolView:
    screen = pilot.lab._screen
    return replace(screen._face._view(screen._now()), laid_for=screen._face._hands.laid_for)


def spot(pilot: Any, at_m: float) -> tuple[float, float]:
    """The point on the tool at a place along."""
    stage = view(pilot).stage(Rect(*pilot.node("picture").bounds))
    return stage.camera.at(at_m, 0.0)


def mechanics_says(tool: BuiltTool) -> tuple[float, str]:
    """Where it balances, and which end drops, from the parts alone."""
    return moment_sum(tool.parts).balance_point_m[0], rests_on(tool.parts, tool.finger_at_m, tool.pad_half_m)


# --- by pointer ---------------------------------------------------------------------------------------------


def test_a_tool_built_by_pointer_drops_as_mechanics_says_and_stays_over_its_balance_point(at_tool: Any):
    at_tool.drag(at_tool.middle("tray-ring"), spot(at_tool, 1.10))
    at_tool.press("shelf.brass")
    at_tool.drag(at_tool.middle("tray-500"), spot(at_tool, 0.05))
    tool = bench(at_tool)
    assert [part.name for part in tool.parts] == ["pole", "hook", "grip", "ring", "brass 500"]
    assert tool.parts[3].at_m[0] == pytest.approx(1.10, abs=1e-9)
    assert tool.parts[4].at_m[0] == pytest.approx(0.05, abs=1e-9)
    # (320 × 50 + 420 × 97 + 90 × 10 + 180 × 110 + 500 × 5) ÷ 1 510 = 79 940 ÷ 1 510, by hand.
    balance_m = 79940 / 1510 / 100
    assert mechanics_says(tool) == (pytest.approx(balance_m, rel=1e-12), "right")
    at_tool.press("guess.right")
    at_tool.press("let-go")
    at_tool.wait(8.0)
    assert bench(at_tool).outcome == "right"
    assert at_tool.says("You said right, and right it was.")
    at_tool.press("hold")
    at_tool.drag(at_tool.middle("finger"), (spot(at_tool, balance_m)[0], at_tool.middle("finger")[1]))
    # A dragged finger takes tenths of a centimetre; the pad reaches 3 mm to either side.
    assert bench(at_tool).finger_at_m == pytest.approx(balance_m, abs=0.0025)
    at_tool.press("let-go")
    at_tool.wait(1.0)
    assert bench(at_tool).outcome == mechanics_says(bench(at_tool))[1] == "level"
    assert at_tool.says("It stays on the finger.")


def test_a_part_tapped_in_the_tray_goes_where_the_tool_is_tapped(at_tool: Any):
    at_tool.press("tray-camera")
    assert at_tool.has("on-its-way")
    at_tool.tap(*spot(at_tool, 0.30))
    assert bench(at_tool).parts[3].at_m[0] == pytest.approx(0.30, abs=1e-9)
    assert not at_tool.has("on-its-way")
    assert "selected" in at_tool.node("part-4").state


def test_a_part_dropped_beside_the_tool_goes_back_and_says_why(at_tool: Any):
    x, y, _, _ = at_tool.node("picture").bounds
    at_tool.drag(at_tool.middle("tray-blade"), (x + 30, y + 12))
    assert len(bench(at_tool).parts) == 3
    assert at_tool.says("There is no tool there to put it on, so it went back.")


def test_a_hook_is_dragged_to_a_mark_and_one_undo_brings_it_back(at_tool: Any):
    at_tool.drag(at_tool.middle("part-2"), (spot(at_tool, 0.60)[0], at_tool.middle("part-2")[1]), steps=20)
    assert bench(at_tool).part(2).at_m[0] == pytest.approx(0.60, abs=1e-9)
    at_tool.press("undo")
    assert bench(at_tool) == workshop_tool()


def test_two_fingers_move_a_part_and_the_finger_at_once(at_tool: Any):
    grip, finger = at_tool.middle("part-3"), at_tool.middle("finger")
    handle = at_tool.lab.handle
    handle(PointerDown(1, *grip))
    handle(PointerDown(2, *finger))
    for step in range(1, 11):
        handle(PointerMove(1, grip[0] + 6 * step, grip[1]))
        handle(PointerMove(2, finger[0] + 8 * step, finger[1]))
        at_tool.wait(1 / 60)
    handle(PointerUp(1, grip[0] + 60, grip[1]))
    handle(PointerUp(2, finger[0] + 80, finger[1]))
    tool, scale = bench(at_tool), view(at_tool).stage(Rect(*at_tool.node("picture").bounds)).camera.px_per_m
    # To the tenth of a centimetre that is shown, or to a mark 2.5 pixels off.
    assert tool.part(3).at_m[0] == pytest.approx(0.10 + 60 / scale, abs=0.0045)
    assert tool.finger_at_m == pytest.approx(0.505 + 80 / scale, abs=0.0045)


def test_the_reference_line_is_dragged_and_the_balance_point_stays(at_tool: Any):
    at_tool.press("view.all")
    before = bench(at_tool).sum.balance_point_m[0]
    knob = at_tool.middle("reference")
    at_tool.drag(knob, (spot(at_tool, 0.50)[0], knob[1]))
    tool = bench(at_tool)
    assert tool.reference_m == pytest.approx(0.50, abs=1e-9)
    assert tool.sum.rows[0].arm_m[0] == pytest.approx(0.0, abs=1e-9)
    assert tool.sum.balance_point_m[0] == pytest.approx(before, rel=1e-15)
    assert at_tool.says("19.4 from the reference line at 50.0 cm")


# --- by keys ------------------------------------------------------------------------------------------------


def test_by_keys_alone_a_part_is_put_on_moved_removed_and_the_tool_let_go(pilot: Any):
    for key in ("to-build", "benches", "bench-tool"):
        pilot.tab_to(key)
        pilot.key("enter")
    pilot.tab_to("tray-blade")
    pilot.key("enter")
    pilot.key("right", shift=True)  # five centimetres
    pilot.key("enter")
    assert bench(pilot).part(4).at_m[0] == pytest.approx(0.505 + 0.05, abs=1e-9)
    pilot.key("left", times=3)
    assert bench(pilot).part(4).at_m[0] == pytest.approx(0.555 - 0.015, abs=1e-9)
    pilot.key("delete")
    assert bench(pilot).parts == workshop_tool().parts
    pilot.tab_to("finger")
    pilot.key("right", times=2, shift=True)
    assert bench(pilot).finger_at_m == pytest.approx(0.605, abs=1e-9)
    pilot.tab_to("let-go")
    pilot.key("enter")
    pilot.wait(8.0)
    assert bench(pilot).outcome == mechanics_says(bench(pilot))[1] == "right"
    pilot.key("z", ctrl=True)
    assert bench(pilot).held


def test_place_weight_and_length_are_typed(at_tool: Any):
    at_tool.tab_to("part-2")
    at_tool.key("enter")
    at_tool.tab_to("picked-weight")
    at_tool.key("right")
    assert bench(at_tool).part(2).mass_kg == pytest.approx(0.43, abs=1e-12)
    at_tool.tab_to("picked-place")
    at_tool.key("left")
    assert bench(at_tool).part(2).at_m[0] == pytest.approx(0.965, abs=1e-9)
    at_tool.tab_to("part-1")
    at_tool.key("enter")
    at_tool.tab_to("picked-length")
    at_tool.key("right")
    assert bench(at_tool).handle.shape.length_m == pytest.approx(1.005, abs=1e-9)
    assert not at_tool.has("picked-place")


def test_behind_more_a_part_is_renamed_copied_and_mirrored(at_tool: Any):
    at_tool.tap(*at_tool.middle("part-3"))
    at_tool.press("picked-more")
    at_tool.press("picked-new-name")
    at_tool.key("backspace", times=4)
    for letter in "hand grip":
        at_tool.lab.handle(Text(letter))
    assert bench(at_tool).part(3).name == "grip"
    at_tool.key("enter")
    assert bench(at_tool).part(3).name == "hand grip"
    at_tool.press("undo")
    assert bench(at_tool) == workshop_tool()
    at_tool.press("picked-mirror")
    # 10 cm is 40.5 cm left of the finger.
    assert bench(at_tool).part(4).at_m[0] == pytest.approx(0.505 + 0.405, abs=1e-12)
    at_tool.press("picked-copy")
    assert [part.name for part in bench(at_tool).parts[3:]] == ["grip (2)", "grip (3)"]


# --- what is given away, what is heard, what is kept ----------------------------------------------------------


def test_nothing_is_given_away_before_the_tool_is_let_go(at_tool: Any):
    at_tool.press("view.numbers")
    assert not at_tool.says("69.4")
    assert not at_tool.has("moments")
    at_tool.press("let-go")
    at_tool.press("show-end")
    assert at_tool.says("balances at 69.4 cm")
    assert at_tool.has("moments")


def test_doubt_is_told_with_the_balance_point(at_tool: Any):
    at_tool.press("view.all")
    at_tool.press("doubt")
    tool = bench(at_tool)
    # One u by hand: Σ m² u_x² + Σ (x − x̄)² u_m², over the sum of weights, squared.
    at_m, mass_kg = tool.sum.balance_point_m[0], tool.sum.mass_kg
    terms = [(part.mass_kg * 0.001) ** 2 + ((part.at_m[0] - at_m) * 0.001) ** 2 for part in tool.parts]
    doubt_cm = 100 * math.sqrt(math.fsum(terms)) / mass_kg
    assert at_tool.says(f"balances at 69.45 ± {doubt_cm:.2f} cm")


@pytest.mark.parametrize("finger_at_m", [0.2, 0.505, 0.9])
def test_it_is_heard_once_when_it_strikes_the_floor_on_the_finger_or_off_it(finger_at_m: float):
    tool = replace(workshop_tool(), finger_at_m=finger_at_m).released()
    heard = []
    while tool.moving:
        after = tool.ticked()
        heard += cues(_model(tool), _model(after))
        tool = after
    assert heard == ["knock"]
    assert tool.motion.phase == "down"


def test_a_part_clinks_when_it_is_put_on():
    session = Session(workshop_tool())
    before = session.state
    session.do(FitPart("hook", 0.3))
    assert cues(_model(before), _model(session.state)) == ("clink",)
    assert cues(_model(session.state), _model(before)) == ()


class _Model:
    def __init__(self, bench: BuiltTool) -> None:
        self.bench = bench


def _model(tool: BuiltTool) -> _Model:
    return _Model(tool)


def test_a_row_of_the_table_picks_its_part(at_tool: Any):
    at_tool.press("view.all")
    at_tool.press("row-part-2")
    assert "selected" in at_tool.node("part-2").state


@pytest.mark.parametrize("name", ["oar", "landing-net"])
def test_a_tool_dropped_onto_the_window_lies_on_the_finger(at_tool: Any, name: str):
    path = find_paths().shipped_builds / f"{name}.toml"
    at_tool.lab.handle(FileDropped(path))
    build = read_build(path)
    assert bench(at_tool) == tool_from_build(build)
    assert at_tool.says(build.title)


def test_what_is_saved_opens_the_same_again(at_tool: Any):
    at_tool.drag(at_tool.middle("tray-ring"), spot(at_tool, 1.05))
    before = bench(at_tool)
    at_tool.press("builds")
    at_tool.press("build-save")
    saved = next(Path(at_tool.paths.builds).glob("[!.]*.toml"))
    build = read_build(saved)
    assert build.bench == "tool"
    assert tool_from_build(build) == before
