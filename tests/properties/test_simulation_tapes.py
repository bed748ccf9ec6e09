"""Tapes that were damaged: always a clear fault with a line, a difference, or the same; never a traceback."""

import json
import random

import pytest

from lab.files import FileFaults, read_build_text
from lab.simulation import (
    TICK_NS,
    Guess,
    Hang,
    LetGo,
    Move,
    MoveFinger,
    Session,
    Tape,
    Undo,
    finger_from_build,
    read_tape,
    replay,
    workshop_bar,
)

GAFF = """
format = 1
title = "Gaff"
units = "g-cm"
part = [
    { name = "pole", weight = 300, at = 75, shape = { kind = "rod", length = 150 } },
    { name = "hook", weight = 220, at = 147 },
]
"""
ODD = ("nan", "inf", "-0x1p-1074", "0x1p+1023", "", "left", -1, 0, 10**30, True, None, [], {}, ["nan"], {"is": "Rod"})


def bar_tape():
    tape = Tape()
    session = Session(workshop_bar(), tape=tape)
    for command in (Hang(0.1, 0.3), Move(1, 0.2), Guess("left"), Undo(), LetGo()):
        session.do(command)
    for _ in range(60):
        session.advance(TICK_NS)
    return tape.text()


def tool_tape():
    tape = Tape()
    session = Session(finger_from_build(read_build_text(GAFF, file="gaff.toml")), tape=tape)
    session.do(MoveFinger(0.9))
    session.do(LetGo())
    for _ in range(60):
        session.advance(TICK_NS)
    return tape.text()


def tried(text):
    try:
        replay(read_tape(text, file="bug.jsonl"))
    except FileFaults as faults:
        for fault in faults.faults:
            assert fault.line >= 1
            assert fault.what
            assert fault.cure


def holders(value):
    """Every list and table in a JSON value, itself included."""
    if isinstance(value, dict | list):
        yield value
        for each in list(value.values() if isinstance(value, dict) else value):
            yield from holders(each)


@pytest.mark.parametrize("text", [bar_tape(), tool_tape()], ids=["bar", "tool"])
def test_a_value_that_was_put_wrong_anywhere_never_ends_in_a_traceback(text):
    dice = random.Random(5)
    lines = text.splitlines()
    for _ in range(1500):
        mutated = list(lines)
        at = dice.randrange(len(lines)) if dice.random() < 0.5 else 0
        table = json.loads(mutated[at])
        holder = dice.choice([each for each in holders(table) if each])
        key = dice.choice(list(holder)) if isinstance(holder, dict) else dice.randrange(len(holder))
        if dice.random() < 0.2:
            del holder[key]
        else:
            holder[key] = dice.choice(ODD)
        mutated[at] = json.dumps(table)
        tried("\n".join(mutated))


@pytest.mark.parametrize("text", [bar_tape(), tool_tape()], ids=["bar", "tool"])
def test_letters_that_were_put_wrong_anywhere_never_end_in_a_traceback(text):
    dice = random.Random(6)
    for _ in range(500):
        at = dice.randrange(len(text))
        tried(text[:at] + dice.choice('{}[]",:0x\n\u2028é') * dice.randrange(3) + text[at + dice.randrange(3) :])
