"""Whatever is asked of a plate, in whatever order: no exception, no lost step, and every one of them can be saved."""

import math
import random
from typing import Any

import pytest

from lab.files import UNITS, build_text, read_build_text
from lab.simulation import (
    Guess,
    Hang,
    HoldStill,
    LetGo,
    MoveReference,
    OpenBuild,
    Redo,
    Remove,
    Session,
    SetUnits,
    SetView,
    Undo,
)
from lab.simulation.benches.plate_builds import BLANKS, build_from_plate, plate_from_build, workshop_plate
from lab.simulation.benches.plate_rings import in_wood
from lab.simulation.commands import Measure
from lab.simulation.part_commands import Copy, Rename, Reweigh, Tie, Untie
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

SAVED = build_text(build_from_plate(BLANKS["window"]))


def random_command(dice):
    """Any command, its values mostly sensible, so that many of them do something."""

    def place():
        odd = (math.nan, math.inf, -0.0, 1e300)
        return dice.choice(
            (dice.uniform(-0.05, 0.4), dice.uniform(0.0, 0.3), round(dice.uniform(0, 0.3), 2), dice.choice(odd))
        )

    joins, ring, corner, number = dice.random() < 0.5, dice.randint(-1, 3), dice.randint(-1, 12), dice.randint(1, 30)
    mass_kg = dice.choice((0.01, 0.05, dice.uniform(0.001, 0.2), -1.0, math.nan))
    made = (
        TakeBlank(dice.choice((*BLANKS, "kite"))),
        MovePin(place(), place(), joins=joins),
        AddCorner(ring, corner, place(), place()),
        AddCorner(0, corner, place(), place()),
        MoveCorner(ring, corner, place(), place(), joins=joins),
        MoveCorner(0, corner, place(), place(), joins=joins),
        RemoveCorner(ring, corner),
        CutHole(place(), place(), dice.choice((0.01, 0.03, 0.0, math.nan))),
        MoveHole(ring, place(), place(), joins=joins),
        FillHole(ring),
        SetAreaWeight(dice.choice((0.7, 2.4, dice.uniform(0.1, 9.0), 0.0, math.nan))),
        ClipOn(mass_kg, place(), place(), dice.choice((None, "lead"))),
        MoveClip(number, place(), place(), joins=joins),
        Reweigh(number, mass_kg),
        Rename(number, dice.choice(("lead", " ", "hinge"))),
        Copy(number, mirrored=joins),
        Tie(number, dice.randint(1, 6)),
        Tie(dice.randint(1, 6), dice.randint(1, 6)),
        Untie(number),
        Remove(number),
        Hang(0.1, 0.1),
        DrawPlumbLine(),
        DrawPlumbLine(),
        RubOutLines(),
        MoveReference(place(), joins=joins),
        Measure(dice.choice((0.0, 0.001, -1.0)), 0.001),
        Guess(dice.choice(("left", "level", "right", None))),
        LetGo(at_once=dice.random() < 0.4),
        LetGo(at_once=dice.random() < 0.4),
        HoldStill(),
        SetView(dice.choice(("plain", "numbers", "all"))),
        SetUnits(dice.choice(tuple(UNITS))),
        OpenBuild(SAVED if dice.random() < 0.1 else ""),
        Undo(),
        Redo(),
    )
    return dice.choice(made)


def sound(state):
    """Whatever the bench may be asked for has an answer, and everything on the plate has its wood."""
    places = [(state.pivot.at_m, state.pivot.up_m), *((clip.at_m, clip.up_m) for clip in state.clips)]
    assert all(in_wood(place, state.outline_m, state.holes_m) for place in places)
    one, other = state.sum.balance_point_m, state.sum_of_pieces.balance_point_m
    # The same sum cut up another way, of plates of square millimetres up to a metre.
    assert one == pytest.approx(other, abs=1e-9)
    assert state.crossing_m is None or len(state.lines) > 1


@pytest.fixture
def plate(any_order) -> Any:
    return any_order(workshop_plate, random_command, done=0.2)


def test_a_thousand_commands_raise_nothing_and_can_all_be_taken_back(plate):
    plate.taken_back(1, 1_000, check=sound)


@pytest.mark.soak
@pytest.mark.parametrize("seed", [3, 4])
def test_ten_thousand_commands_raise_nothing_and_can_all_be_taken_back(seed, plate):
    plate.taken_back(seed, 10_000, check=sound)


@pytest.mark.parametrize("seed", range(12))
def test_whatever_was_done_is_saved_and_opened_the_same(seed):
    dice = random.Random(seed)
    session = Session(workshop_plate())
    for _ in range(60):
        session.do(random_command(dice))
    session.do(SetUnits("g-cm"))
    held = session.state.stilled()
    again = plate_from_build(read_build_text(build_text(build_from_plate(held)), file="again.toml"))
    assert again.rings_m == held.rings_m
    assert (again.pivot, again.area_kg_m2) == (held.pivot, held.area_kg_m2)
    # Parts on their own come first in a file, groups after them.
    assert {part.name: part for part in again.parts} == {part.name: part for part in held.parts}


@pytest.mark.parametrize("seed", range(6))
def test_every_session_replays_to_the_last_bit(seed, plate):
    plate.replayed(seed, 120)
