"""Tins and beads are hung, filled, strung and named by a pointer and by the keyboard alone."""

from __future__ import annotations

from typing import Any

import pytest

from lab.outline.words import Words
from lab.screens.benches.screen import FreeBuildScreen
from lab.screens.intents import Do
from lab.screens.screen import BuildModel, Setting
from lab.simulation import HangingBar, Session
from lab.simulation.benches.bar_builds import empty_bar
from lab.simulation.benches.bar_parts import bead_count, kind_of, water_kg
from lab.simulation.benches.groups import group_of
from lab.simulation.tool_commands import FitPart
from lab.ui.events import Key, PointerDown, PointerMove, PointerUp, Text
from lab.ui.list_canvas import ListCanvas
from lab.ui.look import Look
from lab.ui.sizes import Sizes
from lab.ui.theme import THEMES


class Played:
    """The bench's screen, and a session that does what it asks for."""

    def __init__(self) -> None:
        self.session = Session(empty_bar())
        self.screen = FreeBuildScreen(Look(THEMES["paper"], Sizes(1280, 720), Words()))
        self._show()

    def _show(self) -> None:
        model = BuildModel(setting=Setting(), bench=self.session.state, previous=self.session.previous)
        self.screen.show(model)
        self.screen.draw(ListCanvas((1280, 720)))

    @property
    def bar(self) -> HangingBar:
        assert isinstance(self.session.state, HangingBar)
        return self.session.state

    def send(self, *events: Any) -> None:
        for event in events:
            for intent in self.screen.handle(event).intents:
                if isinstance(intent, Do):
                    self.session.do(intent.command)
            self._show()

    def keys(self, *names: str) -> None:
        self.send(*(Key(name) for name in names))

    def middle(self, key: str) -> tuple[float, float]:
        x, y, wide, high = next(node for node in _walk(self.screen.outline()) if node.key == key).bounds
        return x + wide / 2, y + high / 2

    def press(self, key: str) -> None:
        x, y = self.middle(key)
        self.send(PointerDown(0, x, y), PointerUp(0, x, y))

    def tab_to(self, key: str) -> None:
        for _ in range(80):
            node = next((node for node in _walk(self.screen.outline()) if "focused" in node.state), None)
            if node is not None and node.key == key:
                return
            self.keys("tab")
        raise AssertionError(key)


def _walk(node: Any) -> Any:
    yield node
    for child in node.children:
        yield from _walk(child)


def test_a_tin_is_dragged_onto_the_bar_and_filled_by_pressing_plus():
    played = Played()
    played.press("shelf.tins")
    start, pivot = played.middle("tray-tin"), played.middle("pivot")
    end = (pivot[0] - 150, 400.0)
    played.send(PointerDown(0, *start), PointerMove(0, end[0] + 40, end[1]), PointerMove(0, *end), PointerUp(0, *end))
    assert [kind_of(weight).name for weight in played.bar.weights] == ["tin"]  # type: ignore[union-attr]
    for _ in range(3):
        played.press("picked-water.more")
    # Three steps of 10 mL; the round-off is that of one subtraction.
    assert water_kg(played.bar.weights[0]) == pytest.approx(0.030, abs=1e-12)
    assert played.bar.sum.mass_kg == pytest.approx(0.150 + 0.070, abs=1e-12)


def test_beads_are_hung_strung_and_named_by_the_keyboard_alone():
    played = Played()
    played.press("shelf.beads")
    played.tab_to("tray-beads")
    played.keys("enter", "right", "enter")
    assert bead_count(played.bar.weights[0]) == 1
    played.tab_to("picked-beads")
    played.keys("right", "right")
    assert bead_count(played.bar.weights[0]) == 3
    assert "3 beads, 60 g" in next(node for node in _walk(played.screen.outline()) if node.key == "weight-1").value
    played.tab_to("picked-more")
    played.keys("enter")
    played.tab_to("picked-new-name")
    played.send(*(Key("backspace") for _ in range(5)), Text("buoys"))
    played.keys("enter")
    assert played.bar.weights[0].name == "buoys"


def test_two_are_tied_by_a_pointer_and_then_go_together():
    played = _with_tin_and_beads()
    tin, beads = (f"weight-{weight.id}" for weight in played.bar.weights)
    for key in (tin, "picked-more", "picked-tie", beads):
        played.press(key)
    assert {group_of(weight.name) for weight in played.bar.weights} == {"group"}
    before = [weight.at_m for weight in played.bar.weights]
    start = played.middle(tin)
    end = (start[0] + 60, start[1])
    played.send(PointerDown(0, *start), PointerMove(0, start[0] + 30, start[1]), PointerMove(0, *end))
    played.send(PointerUp(0, *end))
    by_m = [weight.at_m - old_m for weight, old_m in zip(played.bar.weights, before, strict=True)]
    assert by_m[0] > 0.05
    assert by_m[1] == pytest.approx(by_m[0], abs=1e-12)


def test_two_are_tied_and_loosened_by_the_keyboard_alone():
    played = _with_tin_and_beads()
    tin, beads = (f"weight-{weight.id}" for weight in played.bar.weights)
    for key in (tin, "picked-more", "picked-tie", beads):
        played.tab_to(key)
        played.keys("enter")
    assert {group_of(weight.name) for weight in played.bar.weights} == {"group"}
    played.tab_to("picked-untie")
    played.keys("enter")
    assert {group_of(weight.name) for weight in played.bar.weights} == {None}


def test_escape_lets_a_tie_be():
    played = _with_tin_and_beads()
    tin, beads = (f"weight-{weight.id}" for weight in played.bar.weights)
    for key in (tin, "picked-more", "picked-tie"):
        played.press(key)
    played.keys("escape")
    played.press(beads)
    assert {group_of(weight.name) for weight in played.bar.weights} == {None}


def _with_tin_and_beads() -> Played:
    played = Played()
    for command in (FitPart("tin", 0.2), FitPart("beads", 0.4)):
        assert played.session.do(command) is None
    played.send(Key("tab"))
    return played
