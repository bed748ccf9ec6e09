"""The hanging bar in use: by pointer alone, by keys alone."""

from typing import Any

import pytest

from lab.scenes.hanging_view import stage_for
from lab.simulation import HangingBar
from lab.ui.events import Key, PointerCancel, PointerDown, PointerMove, PointerUp
from lab.ui.geometry import Rect


@pytest.fixture
def at_bar(pilot: Any) -> Any:
    pilot.press("to-build")
    return pilot


def bench(pilot: Any) -> HangingBar:
    model = pilot.lab._screen._model
    return model.bench


def spot(pilot: Any, at_m: float) -> tuple[float, float]:
    """The point a little below the bar at a place along."""
    state = bench(pilot)
    rect = Rect(*pilot.node("picture").bounds)
    stage = stage_for(state, rect, pilot.lab._look)
    return stage.camera.x_px(at_m), stage.bar.bottom + 10


def place(pilot: Any, name: str) -> float:
    return next(weight.at_m for weight in bench(pilot).weights if weight.name == name)


def names(pilot: Any) -> list[str]:
    return [weight.name for weight in bench(pilot).weights]


# --- hanging ------------------------------------------------------------------------------------------------


def test_a_weight_dragged_from_the_tray_hangs_where_it_was_dropped(at_bar: Any):
    at_bar.drag(at_bar.middle("tray-500"), spot(at_bar, 0.30))
    assert place(at_bar, "brass 500") == pytest.approx(0.30)


def test_a_weight_tapped_in_the_tray_hangs_where_the_bar_is_tapped(at_bar: Any):
    at_bar.press("tray-100")
    assert at_bar.has("on-its-way")
    at_bar.tap(*spot(at_bar, 0.31))
    assert place(at_bar, "brass 100 (2)") == pytest.approx(0.31)
    assert not at_bar.has("on-its-way")


def test_by_keys_a_weight_is_taken_up_moved_and_hung(at_bar: Any):
    at_bar.tab_to("tray-50")
    at_bar.key("right", times=2)
    at_bar.key("enter")
    assert "focused" in at_bar.node("on-its-way").state
    at_bar.key("left", times=3)
    at_bar.key("left", shift=True)
    at_bar.key("enter")
    # From the middle of the bar three steps of 0.5 cm and one of ten times that.
    assert place(at_bar, "brass 200 (2)") == pytest.approx(0.50 - 0.015 - 0.05)
    assert "focused" in at_bar.node("weight-4").state


def test_a_weight_taken_up_can_be_put_back(at_bar: Any):
    at_bar.press("tray-100")
    at_bar.press("hang-cancel")
    assert not at_bar.has("on-its-way")
    assert len(names(at_bar)) == 3


def test_a_new_weight_dropped_beside_the_bar_goes_back_and_says_so(at_bar: Any):
    at_bar.drag(at_bar.middle("tray-500"), (1000.0, 640.0))
    assert len(names(at_bar)) == 3
    assert at_bar.says("so it went back")


# --- moving -------------------------------------------------------------------------------------------------


def test_a_dragged_weight_moves_with_the_pointer_and_one_undo_takes_the_drag_back(at_bar: Any):
    at_bar.drag(at_bar.middle("weight-1"), spot(at_bar, 0.25), steps=20)
    assert place(at_bar, "brass 200") == pytest.approx(0.25)
    at_bar.press("undo")
    assert place(at_bar, "brass 200") == pytest.approx(0.15)


def test_a_hook_dropped_off_the_bar_goes_back_where_it_came_from_and_says_so(at_bar: Any):
    at_bar.drag(at_bar.middle("weight-2"), (1000.0, 600.0))
    assert place(at_bar, "brass 100") == 0.72
    assert at_bar.says("brass 100 would be off the bar, so it went back to where it was.")
    assert "disabled" in at_bar.node("undo").state


def test_escape_in_the_middle_of_a_drag_puts_it_back(at_bar: Any):
    start, end = at_bar.middle("weight-1"), spot(at_bar, 0.30)
    at_bar.lab.handle(PointerDown(0, *start))
    at_bar.lab.handle(PointerMove(0, *end))
    at_bar.lab.handle(PointerMove(0, end[0] + 1, end[1]))
    assert place(at_bar, "brass 200") != 0.15
    at_bar.lab.handle(Key("escape"))
    assert place(at_bar, "brass 200") == 0.15


def test_a_lost_pointer_puts_it_back_too(at_bar: Any):
    start, end = at_bar.middle("weight-1"), spot(at_bar, 0.30)
    at_bar.lab.handle(PointerDown(3, *start))
    at_bar.lab.handle(PointerMove(3, *end))
    at_bar.lab.handle(PointerMove(3, end[0] + 1, end[1]))
    at_bar.lab.handle(PointerCancel(3))
    at_bar.lab.handle(PointerUp(3, *end))
    assert place(at_bar, "brass 200") == 0.15


def test_dragging_takes_the_marks_of_the_rule(at_bar: Any):
    x, y = spot(at_bar, 0.252)
    at_bar.drag(at_bar.middle("weight-1"), (x, y), steps=20)
    assert place(at_bar, "brass 200") == pytest.approx(0.25)


def test_arrow_keys_move_a_focused_weight_by_half_a_centimetre(at_bar: Any):
    at_bar.tab_to("weight-2")
    at_bar.key("right", times=3)
    assert place(at_bar, "brass 100") == pytest.approx(0.735)


def test_no_key_moves_a_weight_off_the_bar(at_bar: Any):
    at_bar.tab_to("weight-3")
    at_bar.key("right", times=40)
    assert place(at_bar, "brass 50") == 1.0


# --- what is picked -----------------------------------------------------------------------------------------


def test_a_tapped_weight_gets_a_strip_that_steps_its_place(at_bar: Any):
    at_bar.press("weight-1")
    at_bar.press("picked-place.more")
    at_bar.press("picked-place.more")
    at_bar.press("picked-place.less")
    assert place(at_bar, "brass 200") == pytest.approx(0.155)


def test_a_place_can_be_typed(at_bar: Any):
    at_bar.press("weight-1")
    at_bar.press("picked-place")
    for figure in "33":
        at_bar.press(f"keypad.{figure}")
    at_bar.press("keypad.done")
    assert place(at_bar, "brass 200") == pytest.approx(0.33)


def test_a_picked_weight_is_clamped_hung_and_removed_and_each_can_be_undone(at_bar: Any):
    at_bar.press("weight-1")
    at_bar.press("picked-hold.clamped")
    assert bench(at_bar).weights[0].hold == "clamped"
    at_bar.press("picked-remove")
    assert names(at_bar) == ["brass 100", "brass 50"]
    at_bar.key("z", ctrl=True)
    assert bench(at_bar).weights[0].hold == "clamped"
    at_bar.key("z", ctrl=True)
    assert bench(at_bar).weights[0].hold == "hung"
    at_bar.key("y", ctrl=True)
    assert bench(at_bar).weights[0].hold == "clamped"


def test_delete_removes_the_focused_weight(at_bar: Any):
    at_bar.tab_to("weight-2")
    at_bar.key("delete")
    assert names(at_bar) == ["brass 200", "brass 50"]


def test_a_tap_on_bare_ground_picks_nothing_any_more(at_bar: Any):
    at_bar.press("weight-1")
    assert at_bar.has("picked-place")
    at_bar.tap(40.0, 600.0)
    assert not at_bar.has("picked-place")


# --- carriage and reference line ----------------------------------------------------------------------------


def test_the_carriage_slides_along_the_rail(at_bar: Any):
    x, _ = spot(at_bar, 0.60)
    at_bar.drag(at_bar.middle("pivot"), (x, at_bar.middle("pivot")[1]), steps=20)
    assert bench(at_bar).pivot.at_m == pytest.approx(0.60)
    at_bar.key("z", ctrl=True)
    at_bar.tab_to("pivot")
    at_bar.key("right")
    assert bench(at_bar).pivot.at_m == pytest.approx(0.405)


def test_dragging_the_reference_line_changes_the_table_and_not_the_balance_point(at_bar: Any):
    at_bar.press("view.all")
    assert at_bar.node("balances").name == "balances at 44.4 cm"
    x, _ = spot(at_bar, 0.10)
    at_bar.drag(at_bar.middle("reference"), (x, at_bar.middle("reference")[1]), steps=20)
    assert at_bar.node("row-weight-1.2").name == "arm cm 5.0"
    assert at_bar.node("balances").name == "balances at 44.4 cm"
    assert at_bar.node("quotient-from").name == "34.4 from the reference line at 10.0 cm"


def test_two_fingers_can_carry_two_weights(at_bar: Any):
    one, two = at_bar.middle("weight-1"), at_bar.middle("weight-2")
    at_bar.lab.handle(PointerDown(1, *one))
    at_bar.lab.handle(PointerMove(1, one[0] + 60, one[1]))
    at_bar.lab.handle(PointerDown(2, *two))
    at_bar.lab.handle(PointerMove(2, two[0] - 60, two[1]))
    at_bar.lab.handle(PointerUp(1, one[0] + 60, one[1]))
    at_bar.lab.handle(PointerUp(2, two[0] - 60, two[1]))
    assert place(at_bar, "brass 200") > 0.15
    assert place(at_bar, "brass 100") < 0.72
