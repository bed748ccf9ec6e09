"""Whatever is asked of a body on scales, in whatever order: nothing raised, nothing lost, all of it can be saved."""

import json
import math
import operator
import random
from contextlib import suppress
from typing import Any

import pytest

from lab.files import UNITS, FileFaults, build_text, read_build_text
from lab.simulation import (
    TICK_NS,
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
    Tape,
    Undo,
    read_tape,
    replay,
)
from lab.simulation.benches.scales_builds import build_from_scales, scales_from_build, workshop_scales
from lab.simulation.commands import Measure
from lab.simulation.part_commands import Copy, Rename, Reweigh, Tie, Untie
from lab.simulation.scales_commands import GuessReading, MoveScale, PutOn, PutPart, Shift, StandOn

SLED = """
format = 1
title = "Net sled"
units = "kg-m"
part = [
    { name = "sled", weight = 4.0, at = [0.5, 0, 0], shape = { kind = "box", size = [1.0, 0.6, 0.05] } },
    { name = "net", weight = 1.5, at = [0.7, 0.1, 0.1], shape = { kind = "sphere", radius = 0.1 } },
]
support = [{ name = "aft scale", at = [0.1, 0, 0] }, { name = "left scale", at = [0.9, -0.2, 0] },
           { name = "right scale", at = [0.9, 0.2, 0] }]
"""
SAVED = build_text(build_from_scales(workshop_scales()))
STARTS = {"bar": workshop_scales, "sled": lambda: scales_from_build(read_build_text(SLED, file="sled.toml"))}


def random_command(dice):
    """Any command, its values mostly sensible, so that most of them do something."""
    at_m = dice.choice((dice.uniform(-0.1, 1.1), round(dice.uniform(0, 1), 2), 0.0, -0.0, math.nan, math.inf))
    across_m = dice.choice((0.0, dice.uniform(-0.4, 0.4), -0.0, math.nan))
    mass_kg = dice.choice((0.05, 0.5, dice.uniform(0.01, 2.0), -1.0, math.nan, 5e-324))
    joins, thing = dice.random() < 0.5, dice.randint(1, 40)
    return dice.choice(
        (
            PutOn(mass_kg, at_m, across_m, dice.choice((None, "lead", ""))),
            PutPart(dice.choice(("tin", "beads", "rod", "sheet", "anchor")), at_m, across_m),
            Shift(thing, at_m, across_m, joins=joins),
            Shift(dice.randint(1, 3), at_m, across_m, joins=joins),
            MoveScale(dice.randint(1, 4), at_m, across_m, joins=joins),
            StandOn(dice.choice((2, 3, 4))),
            GuessReading(dice.choice((None, mass_kg))),
            Reweigh(thing, mass_kg),
            Rename(thing, dice.choice(("net", "net", " ", "x" * 50))),
            Tie(thing, dice.randint(1, 6)),
            Tie(dice.randint(1, 6), dice.randint(1, 6)),
            Untie(thing),
            Remove(thing),
            Copy(thing, mirrored=joins),
            Copy(dice.randint(1, 3), mirrored=joins),
            MoveReference(at_m, joins=joins),
            Measure(dice.choice((0.0, 0.001, -1.0)), 0.001),
            Guess(dice.choice(("left", "level", "right", None))),
            LetGo(at_once=dice.random() < 0.1),
            LetGo(),
            HoldStill(),
            SetView(dice.choice(("plain", "numbers", "all"))),
            SetUnits(dice.choice(tuple(UNITS))),
            OpenBuild(SAVED if dice.random() < 0.1 else ""),
            Hang(0.1, 0.1),
            Undo(),
            Redo(),
        )
    )


def check(state):
    """What holds of every body on scales."""
    ids = [load.id for load in state.loads]
    assert len(set(ids)) == len(ids)
    assert min(state.readings_kg) >= 0.0
    if state.tipping is None and not state.held and not state.raised:
        assert sum(state.borne_kg) == pytest.approx(state.sum.mass_kg, rel=1e-12)


@pytest.fixture(params=STARTS.values(), ids=STARTS)
def scales(request, any_order) -> Any:
    return any_order(request.param, random_command)


def test_a_thousand_commands_raise_nothing_and_can_all_be_taken_back(scales):
    scales.taken_back(1, 1_000, check=check)


@pytest.mark.soak
@pytest.mark.parametrize("seed", [2, 3])
def test_ten_thousand_commands_raise_nothing_and_can_all_be_taken_back(scales, seed):
    scales.taken_back(seed, 10_000, check=check)


def test_every_body_that_can_be_put_on_scales_can_be_saved_and_opened_again(scales):
    for step, session in enumerate(scales.played(4, 400)):
        if step % 12:
            continue
        held = session.state.stilled()
        again = scales_from_build(read_build_text(build_text(build_from_scales(held)), file="again.toml"))
        # Parts on their own come first in a file, groups after them.
        by_name = operator.attrgetter("name")
        # Numbers first written in other units come back within the last place.
        for ours, theirs in zip(sorted(held.parts, key=by_name), sorted(again.parts, key=by_name), strict=True):
            assert theirs.name == ours.name
            assert theirs.mass_kg == pytest.approx(ours.mass_kg, rel=1e-15)
            assert theirs.at_m == pytest.approx(ours.at_m, abs=1e-12)
        assert [scale.name for scale in again.scales] == [scale.name for scale in held.scales]
        assert build_text(build_from_scales(again)) == build_text(build_from_scales(held))


def test_a_tape_of_a_body_on_scales_replays_to_the_last_bit(scales):
    assert scales.replayed(5, 300).ticks > 100


ODD = ("nan", "inf", "-0x1p-1074", "0x1p+1023", "", "left", -1, 0, 10**30, True, None, [], {}, ["nan"], {"is": "Rod"})


def holders(value):
    """Every list and table in a JSON value that is not empty, itself included."""
    if isinstance(value, dict | list) and value:
        yield value
        for each in list(value.values() if isinstance(value, dict) else value):
            yield from holders(each)


def tape_that_tips(start):
    """From the tick before a body begins to tip."""
    session = Session(start())
    for command in (LetGo(at_once=True), PutOn(30.0, 0.0)):
        session.do(command)
    tape = Tape()
    last = Session(session.state, tape=tape)
    for _ in range(40):
        last.advance(TICK_NS)
    assert last.state.tipping is not None
    return tape.text()


@pytest.mark.parametrize("start", STARTS.values(), ids=STARTS)
def test_a_value_that_was_put_wrong_anywhere_on_a_tape_never_ends_in_a_traceback(start):
    dice = random.Random(7)
    lines = tape_that_tips(start).splitlines()
    for _ in range(400):
        mutated = list(lines)
        at = 0 if dice.random() < 0.7 else dice.randrange(len(lines))
        table = json.loads(mutated[at])
        holder = dice.choice(list(holders(table)))
        key = dice.choice(list(holder)) if isinstance(holder, dict) else dice.randrange(len(holder))
        holder[key] = dice.choice(ODD)
        mutated[at] = json.dumps(table)
        with suppress(FileFaults):
            replay(read_tape("\n".join(mutated), file="bug.jsonl"))
