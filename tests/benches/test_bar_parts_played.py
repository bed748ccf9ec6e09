"""Tins and beads are hung, filled, strung, named and tied by a pointer and by the keyboard alone."""

import pytest

from lab.outline.node import find
from lab.simulation import Session
from lab.simulation.benches.bar_builds import empty_bar
from lab.simulation.benches.bar_parts import bead_count, kind_of, water_kg
from lab.simulation.benches.groups import group_of
from lab.simulation.tool_commands import FitPart
from lab.ui.events import Key, PointerDown, PointerMove, PointerUp, Text


def with_tin_and_beads():
    session = Session(empty_bar())
    for command in (FitPart("tin", 0.2), FitPart("beads", 0.4)):
        assert session.do(command) is None
    return session.state


def test_a_tin_is_dragged_onto_the_bar_and_filled_by_pressing_plus(play):
    played = play(empty_bar())
    played.press("shelf.tins")
    start, pivot = played.middle("tray-tin"), played.middle("pivot")
    end = (pivot[0] - 150, 400.0)
    played.send(PointerDown(0, *start), PointerMove(0, end[0] + 40, end[1]), PointerMove(0, *end), PointerUp(0, *end))
    assert [kind_of(weight).name for weight in played.bench.weights] == ["tin"]
    for _ in range(3):
        played.press("picked-water.more")
    # Three steps of 10 mL; the round-off is that of one subtraction.
    assert water_kg(played.bench.weights[0]) == pytest.approx(0.030, abs=1e-12)
    assert played.bench.sum.mass_kg == pytest.approx(0.150 + 0.070, abs=1e-12)


def test_beads_are_hung_strung_and_named_by_the_keyboard_alone(play):
    played = play(empty_bar())
    played.press("shelf.beads")
    played.tab_to("tray-beads")
    played.keys("enter", "right", "enter")
    assert bead_count(played.bench.weights[0]) == 1
    played.tab_to("picked-beads")
    played.keys("right", "right")
    assert bead_count(played.bench.weights[0]) == 3
    assert "3 beads, 60 g" in find(played.screen.outline(), "weight-1").value
    played.tab_to("picked-more")
    played.keys("enter")
    played.tab_to("picked-new-name")
    played.send(*(Key("backspace") for _ in range(5)), Text("buoys"))
    played.keys("enter")
    assert played.bench.weights[0].name == "buoys"


@pytest.mark.parametrize(("kind", "weighs_kg", "hold"), [("rod", 0.060, "clamped"), ("plate", 0.080, "hung")])
def test_a_rod_and_a_plate_are_put_on_by_pointer_and_by_keys_and_copied(kind, weighs_kg, hold, play):
    played = play(empty_bar())
    played.press("shelf.more")
    start, pivot = played.middle(f"tray-{kind}"), played.middle("pivot")
    end = (pivot[0] - 150, 400.0)
    played.send(PointerDown(0, *start), PointerMove(0, end[0] + 40, end[1]), PointerMove(0, *end), PointerUp(0, *end))
    played.tab_to(f"tray-{kind}")
    played.keys("enter", "right", "right", "enter")
    played.press("picked-more")
    played.press("picked-mirror")
    assert [(each.mass_kg, each.hold) for each in played.bench.weights] == [(weighs_kg, hold)] * 3
    second, third = played.bench.weights[1:]
    pivot_m = played.bench.pivot.at_m
    assert third.at_m == pytest.approx(2 * pivot_m - second.at_m, abs=1e-9)  # places are kept to a nanometre
    moment_kg_m = sum(weighs_kg * each.at_m for each in played.bench.weights)
    bar = played.bench.bar
    moment_kg_m += bar.mass_kg * (bar.left_m + bar.length_m / 2)
    # Four products of numbers below 1, added in another order.
    assert played.bench.sum.moment_kg_m[0] == pytest.approx(moment_kg_m, abs=1e-12)


def test_two_are_tied_by_a_pointer_and_then_go_together(play):
    played = play(with_tin_and_beads())
    played.keys("tab")
    tin, beads = (f"weight-{weight.id}" for weight in played.bench.weights)
    for key in (tin, "picked-more", "picked-tie", beads):
        played.press(key)
    assert {group_of(weight.name) for weight in played.bench.weights} == {"group"}
    before = [weight.at_m for weight in played.bench.weights]
    start = played.middle(tin)
    end = (start[0] + 60, start[1])
    played.send(PointerDown(0, *start), PointerMove(0, start[0] + 30, start[1]), PointerMove(0, *end))
    played.send(PointerUp(0, *end))
    by_m = [weight.at_m - old_m for weight, old_m in zip(played.bench.weights, before, strict=True)]
    assert by_m[0] > 0.05
    assert by_m[1] == pytest.approx(by_m[0], abs=1e-12)


def test_two_are_tied_and_loosened_by_the_keyboard_alone(play):
    played = play(with_tin_and_beads())
    played.keys("tab")
    tin, beads = (f"weight-{weight.id}" for weight in played.bench.weights)
    for key in (tin, "picked-more", "picked-tie", beads):
        played.tab_to(key)
        played.keys("enter")
    assert {group_of(weight.name) for weight in played.bench.weights} == {"group"}
    played.tab_to("picked-untie")
    played.keys("enter")
    assert {group_of(weight.name) for weight in played.bench.weights} == {None}


def test_escape_lets_a_tie_be(play):
    played = play(with_tin_and_beads())
    played.keys("tab")
    tin, beads = (f"weight-{weight.id}" for weight in played.bench.weights)
    for key in (tin, "picked-more", "picked-tie"):
        played.press(key)
    played.keys("escape")
    played.press(beads)
    assert {group_of(weight.name) for weight in played.bench.weights} == {None}
