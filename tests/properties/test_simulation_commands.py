"""Whatever is asked of a session, in whatever order: no exception, no lost step, no lost bit."""

import math
import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from lab.files import UNITS, build_text, read_build_text
from lab.simulation import (
    TICK_NS,
    Command,
    Guess,
    Hang,
    HoldStill,
    LetGo,
    Move,
    MoveFinger,
    MovePivot,
    MoveReference,
    OpenBuild,
    Redo,
    Remove,
    Same,
    Session,
    SetHold,
    SetUnits,
    SetView,
    Tape,
    Undo,
    build_from_hanging_bar,
    finger_from_build,
    hanging_bar_from_build,
    read_tape,
    replay,
    workshop_bar,
)
from lab.simulation.part_commands import Copy, Rename, Tie, Untie
from lab.simulation.records import flat, recorded
from lab.simulation.tool_commands import FitPart

OAR = """
format = 1
title = "Oar"
units = "g-cm"
bar = { name = "loom", length = 240, weight = 1100 }
pivot = { at = 70, up = 1 }
part = [{ name = "blade", weight = 300, at = 225, shape = { kind = "box", size = [30, 2, 14] } }]
"""
TEXTS = (OAR, "", "format = 1", OAR.replace("300", "-300"))

places = st.floats(-0.3, 1.3) | st.sampled_from([0.0, -0.0, 0.4, 1.0, math.nan, math.inf, -math.inf, 1e300])
ids = st.integers(0, 45)
masses = st.floats(0.01, 0.5) | st.sampled_from([0.0, -1.0, math.nan, math.inf, 5e-324])
holds = st.sampled_from(["hung", "clamped", "glued"])
commands = st.one_of(
    st.builds(Hang, masses, places, holds, st.none() | st.text(max_size=8)),
    st.builds(Move, ids, places, joins=st.booleans()),
    st.builds(Remove, ids),
    st.builds(SetHold, ids, holds),
    st.builds(Copy, ids, mirrored=st.booleans()),
    st.builds(Rename, ids, st.sampled_from(["tin", "loom", "group", "a/b", " ", "x" * 50])),
    st.builds(Tie, ids, ids),
    st.builds(Untie, ids),
    st.builds(FitPart, st.sampled_from(["tin", "beads", "rod", "plate", "anchor"]), places),
    st.builds(MovePivot, places, joins=st.booleans()),
    st.builds(MoveReference, places, joins=st.booleans()),
    st.builds(MoveFinger, places, joins=st.booleans()),
    st.builds(Guess, st.sampled_from(["left", "level", "right", None])),
    st.builds(LetGo, at_once=st.booleans()),
    st.just(HoldStill()),
    st.builds(SetView, st.sampled_from(["plain", "numbers", "all"])),
    st.builds(SetUnits, st.sampled_from([*UNITS, "stone"])),
    st.builds(OpenBuild, st.sampled_from(TEXTS)),
    st.just(Undo()),
    st.just(Redo()),
)
first_states = st.sampled_from(
    [workshop_bar(), finger_from_build(read_build_text(OAR, file="oar.toml"), pad_half_m=0.01)]
)


def bits(state):
    """Every value of a state, floats in hex: unlike ==, it tells −0.0 from 0.0."""
    return flat(recorded(state))


def undo_all(session):
    while session.can_undo:
        assert session.do(Undo()) is None
    return session.state


@settings(max_examples=60, deadline=None)
@given(first_states, st.lists(commands | st.integers(0, 60), max_size=60))
def test_undo_leads_back_to_the_first_state_and_redo_forward_again(first, steps):
    session = Session(first)
    for step in steps:
        if isinstance(step, int):
            session.advance(step * 1_000_000)
        else:
            session.do(step)
    session.do(HoldStill())
    last = bits(session.state)
    assert bits(undo_all(session)) == bits(first)
    while session.can_redo:
        assert session.do(Redo()) is None
    # What had been taken back before may be made again too; without any Undo among the steps, all is back.
    if Undo() not in steps:
        assert bits(session.state) == last


@settings(max_examples=60, deadline=None)
@given(first_states, st.lists(commands, max_size=30), commands)
def test_a_refused_command_leaves_everything_as_it_was(first, before, command):
    session = Session(first)
    for each in before:
        session.do(each)
    state, steps = session.state, (session.can_undo, session.can_redo)
    if session.do(command) is not None:
        assert session.state is state
        assert (session.can_undo, session.can_redo) == steps


@settings(max_examples=40, deadline=None)
@given(first_states, st.lists(commands | st.integers(0, 60), max_size=40))
def test_every_session_replays_to_the_last_bit(first, steps):
    tape = Tape()
    session = Session(first, tape=tape)
    for step in steps:
        if isinstance(step, int):
            session.advance(step * 1_000_000)
        else:
            session.do(step)
    result = replay(read_tape(tape.text()))
    assert isinstance(result, Same), result.as_text()
    assert result.exact


@settings(max_examples=60, deadline=None)
@given(st.lists(commands, max_size=40))
def test_every_bar_can_be_saved_and_opened_again(steps):
    session = Session(workshop_bar())
    for step in steps:
        session.do(step)
    held = session.state.stilled()
    again = hanging_bar_from_build(read_build_text(build_text(build_from_hanging_bar(held)), file="again.toml"))
    assert again.parts == held.parts
    assert again.outcome is None


def random_command(dice: random.Random) -> Command:
    """Any command, its values mostly sensible, so that most of ten thousand do something."""
    at_m = dice.choice((dice.uniform(-0.1, 1.1), round(dice.uniform(0, 1), 2), 0.0, -0.0, math.nan))
    joins = dice.random() < 0.5
    which = dice.randint(1, 60)
    hold = dice.choice(("hung", "clamped"))
    made = {
        "hang": Hang(dice.choice((0.05, 0.1, 0.2, 0.5, -1.0)), at_m, hold),
        "move": Move(which, at_m, joins=joins),
        "remove": Remove(which),
        "set-hold": SetHold(which, hold),
        "move-pivot": MovePivot(at_m, joins=joins),
        "move-finger": MoveFinger(at_m, joins=joins),
        "move-reference": MoveReference(at_m, joins=joins),
        "guess": Guess(dice.choice(("left", "level", "right", None))),
        "let-go": LetGo(at_once=dice.random() < 0.1),
        "hold-still": HoldStill(),
        "set-view": SetView(dice.choice(("plain", "numbers", "all"))),
        "set-units": SetUnits(dice.choice(tuple(UNITS))),
        "open-build": OpenBuild(dice.choice(TEXTS) if dice.random() < 0.1 else ""),
        "undo": Undo(),
        "redo": Redo(),
    }
    return made[dice.choice(tuple(made))]


@pytest.mark.parametrize("seed", [1, 2])
@pytest.mark.parametrize(
    "first", [workshop_bar(), finger_from_build(read_build_text(OAR, file="oar.toml"))], ids=["bar", "tool"]
)
def test_ten_thousand_commands_raise_nothing_and_can_all_be_taken_back(first, seed):
    dice = random.Random(seed)
    session = Session(first)
    carried_out = 0
    for _ in range(10_000):
        carried_out += session.do(random_command(dice)) is None
        session.advance(dice.randrange(3 * TICK_NS))
    assert carried_out > 2_000
    assert bits(undo_all(session)) == bits(first)
