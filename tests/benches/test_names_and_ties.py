"""At every bench a part is named, copied, and tied to another, by a pointer and by the keyboard alone."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import pytest

from lab.files import build_text, read_build_text
from lab.simulation import Session, Undo, workshop_bar
from lab.simulation.benches.catalogue import kind_of
from lab.simulation.benches.groups import group_of
from lab.simulation.benches.mobile_builds import workshop_mobile
from lab.simulation.benches.plate_builds import workshop_plate
from lab.simulation.benches.scales_builds import workshop_scales
from lab.simulation.benches.tool_builds import workshop_tool
from lab.simulation.benches.two_fingers_builds import workshop_pole
from lab.simulation.commands import Move
from lab.simulation.part_commands import Copy, Tie, Untie
from lab.simulation.plate_commands import ClipOn, MoveClip
from lab.simulation.scales_commands import Shift
from lab.ui.events import Key, Text


def clipped() -> Any:
    """A plate with two weights on it."""
    session = Session(workshop_plate())
    for command in (ClipOn(0.02, 0.06, 0.06), ClipOn(0.01, 0.10, 0.20)):
        assert session.do(command) is None
    return session.state


@dataclass(frozen=True, slots=True)
class Case:
    """A bench with two parts.  keys: theirs.  ids: theirs.  move: the command that moves the first by 1 cm along."""

    start: Callable[[], Any]
    keys: tuple[str, str]
    ids: tuple[int, int]
    move: Callable[[Any], Any]


CASES = {
    "bar": Case(workshop_bar, ("weight-1", "weight-2"), (1, 2), lambda at: Move(1, at[0] + 0.01)),
    "tool": Case(workshop_tool, ("part-3", "part-2"), (3, 2), lambda at: Move(3, at[0] - 0.01)),
    "scales": Case(workshop_scales, ("load-1", "load-2"), (1, 2), lambda at: Shift(1, at[0] + 0.01, 0.0)),
    "fingers": Case(workshop_pole, ("piece-1", "piece-2"), (1, 2), lambda at: Move(1, at[0] + 0.01)),
    "plate": Case(clipped, ("clip-1", "clip-2"), (1, 2), lambda at: MoveClip(1, at[0] + 0.01, at[2])),
}


def named(bench: Any) -> dict[int, str]:
    return dict(zip(bench.ids, bench.names, strict=False))


def placed(bench: Any) -> dict[str, tuple[float, ...]]:
    return {part.name: part.at_m for part in bench.parts}


@pytest.mark.parametrize("case", CASES.values(), ids=CASES)
def test_a_part_is_tied_to_another_by_a_pointer_and_they_move_as_one(case, play):
    played = play(case.start())
    for key in (case.keys[0], "picked-more", "picked-tie", case.keys[1]):
        played.press(key)
    names = named(played.bench)
    assert {group_of(names[number]) for number in case.ids} == {"group"}
    before = placed(played.bench)
    played.session.do(case.move(before[names[case.ids[0]]]))
    after = placed(played.bench)
    moved = [after[names[number]][0] - before[names[number]][0] for number in case.ids]
    assert abs(moved[0]) == pytest.approx(0.01, abs=1e-9)
    assert moved[1] == pytest.approx(moved[0], abs=1e-9)


@pytest.mark.parametrize("case", CASES.values(), ids=CASES)
def test_a_part_is_tied_and_loosened_by_the_keyboard_alone(case, play):
    played = play(case.start())
    for key in (case.keys[0], "picked-more", "picked-tie", case.keys[1]):
        played.tab_to(key)
        played.keys("enter")
    assert {group_of(name) for name in named(played.bench).values()} >= {"group"}
    played.tab_to("picked-untie")
    played.keys("enter")
    assert {group_of(name) for name in named(played.bench).values()} == {None}


@pytest.mark.parametrize("case", CASES.values(), ids=CASES)
def test_a_name_is_typed_and_taken_back(case, play):
    first = case.start()
    played = play(first)
    for key in (case.keys[0], "picked-more"):
        played.press(key)
    played.tab_to("picked-new-name")
    played.send(*(Key("backspace") for _ in range(20)), Text("lantern"))
    played.keys("enter")
    assert named(played.bench)[case.ids[0]] == "lantern"
    played.session.do(Undo())
    assert played.bench == first


@pytest.mark.parametrize("case", CASES.values(), ids=CASES)
def test_a_group_is_copied_saved_and_opened_again(case):
    session = Session(case.start())
    assert session.do(Tie(*case.ids)) is None
    count = len(session.state.ids)
    why = session.do(Copy(case.ids[0]))
    assert why is None
    names = named(session.state)
    assert len(names) == count + 2
    assert sorted(group_of(name) or "" for name in names.values())[-4:] == ["group"] * 2 + ["group (2)"] * 2
    kind = kind_of(session.state)
    again = kind.take(read_build_text(build_text(kind.build_of(session.state)), file="again.toml"))
    for name, at_m in placed(session.state).items():
        # Numbers that never were in a file come back within its last place.
        assert placed(again)[name] == pytest.approx(at_m, abs=1e-9)
    assert session.do(Untie(case.ids[0])) is None
    assert group_of(named(session.state)[case.ids[0]]) is None


def test_a_bar_of_a_mobile_is_named_and_its_copy_has_a_name_of_its_own(play):
    played = play(workshop_mobile())
    for key in ("bar-3", "picked-more"):
        played.press(key)
    played.tab_to("picked-new-name")
    played.send(*(Key("backspace") for _ in range(20)), Text("spar"))
    played.keys("enter")
    assert played.bench.beam(3).name == "spar"
    assert played.session.do(Copy(3)) is None
    names = [name for beam in played.bench.beams for name in (beam.name, *(each.name for each in beam.weights))]
    assert len(set(names)) == len(names)
