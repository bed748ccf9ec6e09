"""The mobile in use: by pointer alone, by keys alone; what comes of it is what mechanics says."""

import random
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from lab.app.paths import find_paths
from lab.app.workbench import Workbench
from lab.files import UNITS, read_build
from lab.outline.words import Words
from lab.scenes.mobile.stage import MobileStage, on_bar, pose_of, stage_of
from lab.scenes.mobile.view import MobileView
from lab.scenes.readings import Readings
from lab.screens.benches.gallery_parts import after
from lab.screens.benches.mobile.gallery import CROWDED, DEEPER
from lab.screens.screen import BuildModel, Setting
from lab.screens.sound_cues import cues
from lab.simulation.benches import Mobile
from lab.simulation.benches.bar_parts import bead_count, water_kg
from lab.simulation.benches.catalogue import BENCHES
from lab.simulation.benches.mobile import MOST_THINGS
from lab.simulation.benches.mobile_builds import mobile_from_build, workshop_mobile
from lab.simulation.mobile_commands import HangBar, HangOn, Rehang
from lab.ui.events import Key, PointerDown, PointerMove, PointerUp, Text
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.sizes import Sizes
from lab.ui.theme import THEMES


@pytest.fixture
def at_mobile(pilot: Any) -> Any:
    pilot.press("to-build")
    pilot.press("benches")
    pilot.press("bench-mobile")
    return pilot


def bench(pilot: Any) -> Mobile:
    return pilot.lab._screen._model.bench


def view(pilot: Any) -> MobileView:
    face = pilot.lab._screen._face
    return face._view(pilot.lab._screen._now())


def spot(pilot: Any, bar: int, at_m: float, *, below: float = 0.0) -> tuple[float, float]:
    """The point at a place on a bar, or so far below it."""
    rect = Rect(*pilot.node("picture").bounds)
    seen = view(pilot)
    stage = stage_of(seen, rect)
    pose = pose_of(seen, stage)
    x, y = on_bar(stage, seen.bench.beam(bar), pose.rings[bar], pose.angles_rad[bar], at_m)
    return x, y + below


def boxes_of(seen: MobileView, stage: MobileStage) -> Iterator[Rect]:
    """All bodies and bars, held level."""
    pose = pose_of(seen, stage)
    yield from pose.bodies.values()
    for beam in seen.bench.beams:
        x, y = on_bar(stage, beam, pose.rings[beam.id], 0.0, 0.0)
        half = stage.sizing.half_bar
        yield Rect(x, y - half, beam.length_m * stage.sizing.px_per_m, 2 * half)


# --- by pointer ---------------------------------------------------------------------------------------------


def test_by_pointer_a_mobile_is_tuned_until_every_bar_is_level(at_mobile: Any):
    hook = at_mobile.middle("weight-6")
    assert bench(at_mobile).beam(2).weight(6).at_m == 0.22
    x, _ = spot(at_mobile, 2, 0.21)
    at_mobile.drag(hook, (x, hook[1]), steps=12)
    brass = at_mobile.middle("weight-4")
    x, _ = spot(at_mobile, 1, 0.16)
    at_mobile.drag(brass, (x, brass[1]), steps=12)
    assert bench(at_mobile).levels.is_level
    at_mobile.press("guess.level")
    at_mobile.press("let-go")
    assert bench(at_mobile).outcome == "level"
    assert at_mobile.says("Every bar stays level.")


def test_things_dragged_from_the_tray_hang_where_they_were_dropped(at_mobile: Any):
    at_mobile.drag(at_mobile.middle("tray-float"), spot(at_mobile, 3, 0.10, below=30))
    assert bench(at_mobile).beam(3).weight(9).at_m == pytest.approx(0.10)
    assert bench(at_mobile).beam(3).weight(9).look == "float"
    at_mobile.drag(at_mobile.middle("tray-bar-20"), spot(at_mobile, 1, 0.40, below=30))
    assert bench(at_mobile).beam(10).hook_m == pytest.approx(0.40)
    at_mobile.drag(at_mobile.middle("tray-gull"), spot(at_mobile, 10, 0.05, below=30))
    assert bench(at_mobile).beam(10).weight(11).name == "gull (2)"


def test_a_thing_tapped_in_the_tray_hangs_where_a_bar_is_tapped(at_mobile: Any):
    at_mobile.press("tray-20")
    assert at_mobile.has("on-its-way")
    at_mobile.tap(*spot(at_mobile, 2, 0.10))
    assert bench(at_mobile).beam(2).weight(9).at_m == pytest.approx(0.10)
    assert not at_mobile.has("on-its-way")


def test_a_bar_is_carried_by_its_hook_to_another_bar_and_one_undo_takes_it_back(at_mobile: Any):
    at_mobile.drag(at_mobile.middle("hook-3"), spot(at_mobile, 2, 0.32), steps=15)
    assert bench(at_mobile).beam(3).above == 2
    assert bench(at_mobile).beam(3).hook_m == pytest.approx(0.32)
    at_mobile.press("undo")
    assert bench(at_mobile).beam(3).above == 1
    assert bench(at_mobile).beam(3).hook_m == 0.50


def test_a_bar_is_slid_through_its_ring_by_its_wood(at_mobile: Any):
    rect = Rect(*at_mobile.node("picture").bounds)
    scale = stage_of(view(at_mobile), rect).sizing.px_per_m
    x, y = spot(at_mobile, 1, 0.40)
    at_mobile.drag((x, y), (x + 0.05 * scale, y), steps=10)
    assert bench(at_mobile).beam(1).pin_m == pytest.approx(0.21)
    assert bench(at_mobile).beam(1).pivot.at_m == pytest.approx(0.21)


def test_what_is_dropped_where_no_bar_is_goes_back_and_says_so(at_mobile: Any):
    first = bench(at_mobile)
    at_mobile.drag(at_mobile.middle("tray-float"), (400.0, 690.0))
    assert at_mobile.says("so it went back")
    at_mobile.drag(at_mobile.middle("weight-8"), (400.0, 690.0))
    assert bench(at_mobile) == first


def test_two_fingers_carry_two_things_at_once(at_mobile: Any):
    first, second = at_mobile.middle("weight-5"), at_mobile.middle("weight-8")
    lab = at_mobile.lab
    lab.handle(PointerDown(1, *first))
    lab.handle(PointerDown(2, *second))
    rect = Rect(*at_mobile.node("picture").bounds)
    scale = stage_of(view(at_mobile), rect).sizing.px_per_m
    for step in range(1, 6):
        lab.handle(PointerMove(1, first[0] + 0.01 * step * scale, first[1]))
        lab.handle(PointerMove(2, second[0] - 0.01 * step * scale, second[1]))
    lab.handle(PointerUp(1, first[0] + 0.05 * scale, first[1]))
    lab.handle(PointerUp(2, second[0] - 0.05 * scale, second[1]))
    assert bench(at_mobile).beam(2).weight(5).at_m == pytest.approx(0.07)
    assert bench(at_mobile).beam(3).weight(8).at_m == pytest.approx(0.155)


def test_escape_in_the_middle_of_a_drag_puts_it_back(at_mobile: Any):
    first, start, end = bench(at_mobile), at_mobile.middle("hook-3"), spot(at_mobile, 2, 0.30)
    lab = at_mobile.lab
    lab.handle(PointerDown(0, *start))
    lab.handle(PointerMove(0, *end))
    lab.handle(PointerMove(0, end[0] + 1, end[1]))
    assert bench(at_mobile).beam(3).above == 2
    lab.handle(Key("escape"))
    assert bench(at_mobile).beams == first.beams


def test_the_reference_line_changes_the_arm_and_not_the_balance_point(at_mobile: Any):
    at_mobile.press("view.all")
    before = bench(at_mobile).sum.balance_point_m
    knob = at_mobile.middle("reference")
    at_mobile.drag(knob, (knob[0] + 60, knob[1]), steps=6)
    after_ = bench(at_mobile)
    assert after_.reference_m > 0.03
    assert after_.sum.balance_point_m == pytest.approx(before)
    assert after_.sum.moment_kg_m[0] == pytest.approx(after_.sum.mass_kg * (before[0] - after_.reference_m))


# --- by keys ------------------------------------------------------------------------------------------------


def test_by_keys_things_are_nudged_typed_hung_and_let_go(at_mobile: Any):
    at_mobile.tab_to("weight-6")
    at_mobile.key("left", times=2)
    assert bench(at_mobile).beam(2).weight(6).at_m == pytest.approx(0.21)
    at_mobile.tab_to("weight-4")
    at_mobile.key("left", shift=True)
    at_mobile.key("left", times=2)
    assert bench(at_mobile).beam(1).weight(4).at_m == pytest.approx(0.16)
    at_mobile.tab_to("let-go")
    at_mobile.key("enter")
    assert bench(at_mobile).outcome == "level"


def test_by_keys_a_bar_is_taken_up_carried_to_another_bar_and_removed(at_mobile: Any):
    at_mobile.tab_to("tray-bar-20")
    at_mobile.key("enter")
    assert "focused" in at_mobile.node("on-its-way").state
    at_mobile.key("down")
    at_mobile.key("right", times=4)
    at_mobile.key("enter")
    assert bench(at_mobile).beam(9).above == 2
    assert bench(at_mobile).beam(9).hook_m == pytest.approx(0.20)
    assert "focused" in at_mobile.node("bar-9").state
    at_mobile.key("delete")
    assert bench(at_mobile).beam(9) is None


def test_tab_walks_the_tree_in_reading_order(at_mobile: Any):
    handles = [node.key for node in at_mobile.node("picture").children if node.role == "handle"]
    assert handles == [
        "bar-1", "weight-4", "bar-2", "hook-2", "weight-5", "weight-6", "bar-3", "hook-3", "weight-7", "weight-8",
    ]  # fmt: skip


def test_typed_numbers_place_and_weigh_what_is_picked(at_mobile: Any):
    at_mobile.press("weight-5")
    at_mobile.press("picked-place.more")
    at_mobile.press("picked-more")
    at_mobile.press("picked-weight.more")
    gull = bench(at_mobile).beam(2).weight(5)
    assert gull.mass_kg == pytest.approx(0.035)
    assert gull.at_m == pytest.approx(0.025)
    at_mobile.press("bar-3")
    at_mobile.press("picked-ring.less")
    at_mobile.press("hook-3")
    at_mobile.press("picked-place.more")
    assert bench(at_mobile).beam(3).pin_m == pytest.approx(0.125)
    assert bench(at_mobile).beam(3).hook_m == pytest.approx(0.505)


def test_a_bar_is_copied_with_all_below_it_and_mirrored(at_mobile: Any):
    at_mobile.press("bar-3")
    at_mobile.press("picked-more")
    at_mobile.press("picked-mirror")
    state = bench(at_mobile)
    twin = state.beam(9)
    # The ring at 26 cm; the low bar hangs at 50 cm, so its image hangs at 2 cm, turned left for right.
    assert twin.hook_m == pytest.approx(0.02)
    assert [round(each.at_m, 6) for each in twin.weights] == [0.23, 0.055]
    assert "selected" in at_mobile.node("bar-9").state
    at_mobile.press("undo")
    assert bench(at_mobile) == workshop_mobile()
    at_mobile.press("weight-8")
    at_mobile.press("picked-more")
    at_mobile.press("picked-copy")
    assert bench(at_mobile).beam(3).weight(9).name == "float (2)"


# --- what is shown ------------------------------------------------------------------------------------------


def test_nothing_is_given_away_before_it_is_let_go(at_mobile: Any):
    for shown in ("plain", "numbers"):
        at_mobile.press(f"view.{shown}")
        assert not at_mobile.has("levels")
        assert not at_mobile.has("reference")
    at_mobile.press("view.all")
    assert at_mobile.has("levels")


def test_the_table_has_a_row_a_bar_and_picking_one_picks_the_bar(at_mobile: Any):
    at_mobile.press("view.all")
    rows = {node.key: [cell.name for cell in node.children] for node in at_mobile.node("levels").children}
    assert rows["row-bar-2"][-3:] == ["left g·cm 390", "right g·cm 440", "hands up g 110"]
    at_mobile.press("row-bar-2")
    assert "selected" in at_mobile.node("bar-2").state
    assert "selected" in at_mobile.node("row-bar-2").state


def test_it_is_let_go_watched_and_told(at_mobile: Any):
    at_mobile.press("view.numbers")
    at_mobile.press("guess.right")
    at_mobile.press("let-go")
    at_mobile.wait(8.0)
    state = bench(at_mobile)
    assert not state.moving
    tilts = {level.name: level.tilt_rad for level in state.levels.levels}
    assert [swing.angle_rad for swing in state.swings] == [tilts[beam.name] for beam in state.beams]
    assert at_mobile.says("2 bars are not level.")
    assert at_mobile.says("short bar: 50 g·cm more on the right.")
    at_mobile.press("hold")
    assert bench(at_mobile).held


def test_what_is_saved_opens_on_this_bench_again(at_mobile: Any):
    at_mobile.press("tray-gull")
    at_mobile.key("enter")
    at_mobile.press("builds")
    at_mobile.press("build-save")
    saved = next(Path(at_mobile.paths.builds).glob("*.toml"))
    again = mobile_from_build(read_build(saved))
    assert again.parts == bench(at_mobile).parts
    assert read_build(saved).bench == "mobile"


def test_saving_again_what_was_opened_writes_the_same_file(tmp_path: Path):
    paths = replace(find_paths(), home=tmp_path)
    saved = Workbench(paths, "mobile").save(None)
    other = Workbench(paths, "bar")
    assert other.open(saved) is None
    assert isinstance(other.session.state, Mobile)
    assert other.save(None) == saved


def test_what_is_hung_clinks_and_a_bar_knocks_on_its_stop():
    def model(state: Mobile) -> BuildModel:
        return BuildModel(setting=Setting(), bench=state, previous=state)

    first = workshop_mobile()
    hung = after(first, HangOn(3, 0.2, 0.26))
    assert cues(model(first), model(hung)) == ("clink",)
    assert cues(model(hung), model(after(hung, Rehang(9, 3, 0.25)))) == ()
    let_go = hung.released()
    assert cues(model(let_go), model(let_go.at_end())) == ("knock",)


# --- how it is drawn ----------------------------------------------------------------------------------------


@pytest.mark.parametrize("commands", [(), DEEPER, CROWDED], ids=["first", "deep", "crowded"])
def test_held_level_no_bar_or_weight_covers_another(commands: Any, at_mobile: Any):
    seen = replace(view(at_mobile), bench=after(workshop_mobile(), *commands))
    assert len(seen.bench.beams) > 2
    for size in ((880, 656), (620, 536), (500, 390)):
        stage = stage_of(seen, Rect(0, 0, *size))
        boxes = list(boxes_of(seen, stage))
        for number, box in enumerate(boxes):
            assert box.x >= 0
            assert box.right <= size[0]
            assert box.bottom <= size[1]
            assert not any(box.intersects(other) for other in boxes[:number])


@pytest.mark.parametrize("seed", range(6))
def test_the_fullest_mobile_fits_the_smallest_window_and_nothing_covers_anything(seed: int):
    dice, state = random.Random(seed), workshop_mobile()
    for _ in range(400):
        bar, at_m = dice.choice(state.beams).id, round(dice.uniform(0.0, 0.36), 2)
        kind = dice.choice((None, "gull", "float"))
        hung = HangOn(bar, dice.choice((0.02, 0.1, 0.2)), at_m, look=kind)
        state = after(state, dice.choice((hung, HangBar(bar, 0.2, 0.02, at_m), Rehang(dice.randint(2, 40), bar, at_m))))
    assert state.things == MOST_THINGS
    look = Look(THEMES["paper"], Sizes(1024, 600), Words())
    seen = MobileView(bench=state, look=look, readings=Readings(words=look.words, units=UNITS["g-cm"]))
    frame = Rect(0, 64, 624, 536)
    stage = stage_of(seen, frame)
    boxes = list(boxes_of(seen, stage))
    for number, box in enumerate(boxes):
        assert frame.holds(box)
        assert not any(box.intersects(other) for other in boxes[:number])


def test_along_all_is_to_scale(at_mobile: Any):
    """Rings and hooks lie as far apart as the places that the sums are made with."""
    seen = view(at_mobile)
    stage = stage_of(seen, Rect(0, 0, 880, 656))
    pose = pose_of(seen, stage)
    for number, along_m in seen.bench.pins_m.items():
        assert pose.rings[number][0] == pytest.approx(stage.x_px(seen.bench, along_m))


# --- the other shelf ----------------------------------------------------------------------------------------


def test_a_tin_is_hung_filled_named_and_comes_back_from_its_file(at_mobile: Any):
    at_mobile.press("shelf.more")
    at_mobile.drag(at_mobile.middle("tray-tin"), spot(at_mobile, 3, 0.10, below=30))
    for _ in range(12):
        at_mobile.press("picked-water.more")
    tin = bench(at_mobile).beam(3).weight(9)
    assert water_kg(tin) == pytest.approx(0.120, abs=1e-12)
    at_mobile.press("picked-more")
    assert not at_mobile.has("picked-weight")  # what a tin weighs is its water
    name = at_mobile.node("picked-new-name")
    at_mobile.press(name.key)
    at_mobile.lab.handle(Text(" kettle"))
    at_mobile.key("enter")
    assert bench(at_mobile).beam(3).weight(9).name == "tin kettle"
    again = mobile_from_build(BENCHES["mobile"].build_of(bench(at_mobile)))
    kettle = next(each for beam in again.beams for each in beam.weights if each.name == "tin kettle")
    assert water_kg(kettle) == pytest.approx(0.120, abs=1e-12)
    # A bar hands up its own weight, and all that hangs from it.
    low = bench(at_mobile).beam(3)
    hung_kg = sum(each.mass_kg for each in low.weights)
    assert again.carried_kg[low.name] == pytest.approx(low.mass_kg + hung_kg, abs=1e-12)


def test_beads_are_hung_and_strung_by_keys_alone(at_mobile: Any):
    at_mobile.tab_to("shelf.things")
    at_mobile.key("right")
    at_mobile.key("space")
    at_mobile.tab_to("tray-beads")
    at_mobile.key("enter")
    at_mobile.key("down")
    at_mobile.key("enter")
    at_mobile.tab_to("picked-beads")
    at_mobile.key("right", times=3)
    assert [bead_count(each) for beam in bench(at_mobile).beams for each in beam.weights if each.id == 9] == [4]


@pytest.mark.parametrize("thing", ["tray-rod", "tray-plate"])
def test_rods_and_plates_hang_from_a_hook(thing: str, at_mobile: Any):
    at_mobile.press("shelf.more")
    at_mobile.drag(at_mobile.middle(thing), spot(at_mobile, 1, 0.30, below=40))
    hung = bench(at_mobile).beam(1).weight(9)
    assert (hung.hold, hung.name) == ("hung", thing.removeprefix("tray-"))


def test_a_copy_that_finds_no_room_leaves_what_is_picked_picked(at_mobile: Any):
    for number in range(MOST_THINGS - bench(at_mobile).things):
        at_mobile.lab._room.do(HangOn(2 + number % 2, 0.02, 0.1 + 0.001 * number))
        at_mobile.lab._room.do(HangOn(1, 0.02, 0.1 + 0.001 * number))
    at_mobile.lab._refresh()
    at_mobile.tab_to("weight-6")
    at_mobile.key("enter")
    at_mobile.press("picked-more")
    full = bench(at_mobile)
    assert full.next_id > 20
    for key in ("picked-copy", "picked-mirror"):
        at_mobile.press(key)
        assert bench(at_mobile) == full
        assert at_mobile.has("picked-new-name"), key
