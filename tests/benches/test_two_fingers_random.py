"""Whatever is asked of two fingers, in whatever order: no exception, no lost step, and all of it can be saved."""

import math
from typing import Any

import pytest

from lab.files import UNITS, build_text, read_build_text
from lab.simulation import (
    Guess,
    Hang,
    HoldStill,
    LetGo,
    Move,
    MoveReference,
    OpenBuild,
    Redo,
    Remove,
    SetUnits,
    SetView,
    Undo,
)
from lab.simulation.benches.two_fingers_builds import build_from_two_fingers, two_fingers_from_build, workshop_pole
from lab.simulation.commands import Measure
from lab.simulation.part_commands import Copy, Rename, Reweigh, Tie, Untie
from lab.simulation.two_finger_commands import GuessMeeting, MoveFingers, SetFriction, StopFingers

SAVED = build_text(build_from_two_fingers(workshop_pole()))


def random_command(dice):
    """Any command, its values mostly sensible, so that most of them do something."""
    at_m = dice.choice((dice.uniform(-0.1, 1.1), round(dice.uniform(0, 1), 2), 0.0, -0.0, math.nan, math.inf))
    right_m = dice.choice((dice.uniform(-0.1, 1.1), 0.9, math.nan))
    mass_kg = dice.choice((0.05, 0.1, dice.uniform(0.001, 0.6), -1.0, math.nan))
    static = dice.choice((0.5, 0.2, dice.uniform(0.0, 1.5), math.nan))
    which, joins = dice.randint(1, 12), dice.random() < 0.5
    made = (
        lambda: MoveFingers(at_m, right_m, joins=joins),
        lambda: MoveFingers(dice.uniform(0, 0.35), dice.uniform(0.45, 1), joins=joins),
        lambda: SetFriction(dice.choice(("left", "right")), static, static * dice.choice((1.0, 0.7, 0.999, 0.3, 2.0))),
        lambda: GuessMeeting(dice.choice((None, at_m)), joins=joins),
        StopFingers,
        lambda: Hang(mass_kg, at_m),
        lambda: Move(which, at_m, joins=joins),
        lambda: Remove(which),
        lambda: Reweigh(which, mass_kg),
        lambda: Copy(which, mirrored=joins),
        lambda: Rename(which, dice.choice(("tin", "", "brass 50", "x" * 90))),
        lambda: Tie(which, dice.randint(1, 6)),
        lambda: Tie(which, dice.randint(1, 6)),
        lambda: Untie(which),
        lambda: MoveReference(at_m, joins=joins),
        lambda: Measure(dice.choice((0.0, 0.001, -1.0)), 0.001),
        lambda: Guess(dice.choice(("left", "level", "right", None))),
        lambda: LetGo(at_once=dice.random() < 0.1),
        LetGo,
        HoldStill,
        lambda: SetView(dice.choice(("plain", "numbers", "all"))),
        lambda: SetUnits(dice.choice(tuple(UNITS))),
        lambda: OpenBuild(SAVED if dice.random() < 0.1 else ""),
        Undo,
        Undo,
        Redo,
    )
    return dice.choice(made)()


def check(state):
    """What holds of any two fingers."""
    low_m, high_m = state.span_m
    assert low_m <= state.places_m[0] < state.places_m[1] <= high_m
    assert state.view in ("plain", "numbers", "all")


@pytest.fixture
def fingers(any_order) -> Any:
    return any_order(workshop_pole, random_command, ticks=8, done=1 / 3)


@pytest.mark.parametrize(("seed", "steps"), [(1, 1000), pytest.param(2, 10_000, marks=pytest.mark.soak)])
def test_many_commands_raise_nothing_and_can_all_be_taken_back(seed, steps, fingers):
    fingers.taken_back(seed, steps, check=check)


def test_every_state_on_the_way_can_be_saved_and_opened_again(fingers):
    for session in fingers.played(3, 300):
        state = session.state
        text = build_text(build_from_two_fingers(state))
        again = two_fingers_from_build(read_build_text(text, file="again.toml"))
        assert build_text(build_from_two_fingers(again)) == text
        # Parts on their own come first in a file, groups after them.
        assert sorted(part.name for part in again.parts) == sorted(part.name for part in state.parts)


def test_a_tape_of_it_replays_to_the_last_bit(fingers):
    assert fingers.replayed(4, 400).ticks > 100
