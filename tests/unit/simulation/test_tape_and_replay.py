"""A tape holds a session, and replaying it comes out the same to the last bit or names what does not."""

import json
import math

import pytest

from lab.files import FileFaults, read_build_text
from lab.simulation import (
    TICK_NS,
    FirstDifference,
    Guess,
    Hang,
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
    finger_from_build,
    read_tape,
    replay,
    workshop_bar,
)

TOOL = """
format = 1
title = "Nest-box pole"
units = "g-cm"
[[part]]
name = "pole"
weight = 800
at = 150
shape = { kind = "rod", length = 300 }
[[part]]
name = "camera"
weight = 250
at = 290
shape = { kind = "box", size = [8, 6, 6] }
look = "camera"
"""


def play(session, ticks):
    for _ in range(ticks):
        session.advance(TICK_NS)


def bar_tape():
    tape = Tape()
    session = Session(workshop_bar(), tape=tape)
    for command in (Hang(0.1 / 3, 0.7), Move(1, 0.2), Move(1, 0.1 + 0.2 / 7, joins=True), Hang(0.1, 1.4)):
        session.do(command)
    for command in (SetHold(2, "clamped"), MovePivot(math.pi / 7), MoveReference(1 / 3), Guess("right")):
        session.do(command)
    session.do(LetGo())
    play(session, 450)
    for command in (Undo(), Undo(), Redo(), Remove(3), SetUnits("lb-in"), SetView("all"), LetGo()):
        session.do(command)
    play(session, 130)
    return tape.text()


def tool_tape():
    tape = Tape()
    session = Session(finger_from_build(read_build_text(TOOL, file="pole.toml")), tape=tape)
    session.do(Guess("level"))
    session.do(MoveFinger(1.80))
    session.do(LetGo())
    play(session, 300)
    session.do(OpenBuild(TOOL.replace("250", "350")))
    session.do(LetGo(at_once=True))
    return tape.text()


@pytest.mark.parametrize("record", [bar_tape, tool_tape])
def test_a_replay_comes_out_the_same_to_the_last_bit(record):
    result = replay(read_tape(record()))
    assert isinstance(result, Same)
    assert result.exact
    assert result.commands >= 5
    assert result.ticks >= 300


@pytest.mark.parametrize("record", [bar_tape, tool_tape])
def test_recording_twice_makes_the_same_text(record):
    assert record() == record()


def test_frames_of_other_lengths_lead_to_the_same_states():
    states = []
    for frame_ns in (TICK_NS, 16_666_667, 33_333_333):
        session = Session(workshop_bar())
        session.do(LetGo())
        while session.ticks < 120:
            session.advance(min(frame_ns, (120 - session.ticks) * TICK_NS))
        states.append(session.state)
    assert states[0] == states[1] == states[2]


def test_floats_are_on_the_tape_in_hex_and_checkpoints_come_every_second_of_motion():
    lines = [json.loads(line) for line in bar_tape().splitlines()]
    assert [line["tick"] for line in lines[1:] if "state" in line and "swing.angle_rad" in line["state"]]
    at_m = next(line["with"]["at_m"] for line in lines if line.get("do") == "hang")
    assert float.fromhex(at_m) == 0.7
    assert lines[0]["format"] == 1
    assert lines[0]["bench"] == "HangingBar"
    assert lines[-1].keys() == {"tick", "end"}


def test_a_bench_left_alone_adds_nothing_to_its_tape():
    tape = Tape()
    session = Session(workshop_bar(), tape=tape)
    before = len(tape.text())
    play(session, 1000)
    assert len(tape.text()) <= before + len("1000")


def test_a_tape_records_one_session_only():
    tape = Tape()
    assert tape.text() == ""
    Session(workshop_bar(), tape=tape)
    with pytest.raises(ValueError, match="new one"):
        Session(workshop_bar(), tape=tape)


def changed(text, line, change):
    lines = text.splitlines()
    table = json.loads(lines[line])
    change(table)
    lines[line] = json.dumps(table)
    return "\n".join(lines) + "\n"


def line_with(text, key):
    return next(n for n, line in enumerate(text.splitlines()) if key in json.loads(line))


def swing_line(text):
    lines = [json.loads(line) for line in text.splitlines()]
    return next(n for n, line in enumerate(lines) if line.get("tick") == 200 and "state" in line)


def test_the_first_difference_is_named_with_tick_line_field_and_both_values():
    text = bar_tape()
    at = swing_line(text)
    was = json.loads(text.splitlines()[at])["state"]["swing.angle_rad"]
    other = math.nextafter(float.fromhex(was), 1.0).hex()
    result = replay(read_tape(changed(text, at, lambda table: table["state"].update({"swing.angle_rad": other}))))
    assert result == FirstDifference(tick=200, line=at + 1, field="swing.angle_rad", was=other, now=was)
    assert "swing.angle_rad was" in result.as_text()


def test_on_another_platform_the_last_bits_may_differ_but_no_more():
    def from_elsewhere(text):
        return changed(text, 0, lambda table: table.update(platform="sundial"))

    def turned(by_rad):
        def change(table):
            angle = float.fromhex(table["state"]["swing.angle_rad"])
            table["state"]["swing.angle_rad"] = (angle + by_rad).hex()

        text = bar_tape()
        return from_elsewhere(changed(text, swing_line(text), change))

    near = replay(read_tape(turned(1e-9)))
    assert isinstance(near, Same)
    assert not near.exact
    assert isinstance(replay(read_tape(turned(1e-4))), FirstDifference)
    assert isinstance(replay(read_tape(turned(1e-9)), exact=True), FirstDifference)


@pytest.mark.parametrize(
    ("change", "field"),
    [
        (lambda table: table["state"].update({"guess": "left"}), "guess"),
        (lambda table: table["state"].update({"held": 1}), "held"),
        (lambda table: table["state"].update({"weights[9].name": "ghost"}), "weights[9].name"),
        (lambda table: table["state"].update({"": ["title"]}), "title"),
    ],
)
def test_a_value_that_is_another_or_not_there_is_a_difference(change, field):
    text = bar_tape()
    result = replay(read_tape(changed(text, line_with(text, "state"), change)))
    assert isinstance(result, FirstDifference)
    assert result.field == field


def test_a_command_refused_then_and_not_now_is_a_difference():
    text = bar_tape()
    result = replay(read_tape(changed(text, line_with(text, "do"), lambda table: table.update(refused="No."))))
    assert result == FirstDifference(tick=0, line=2, field="refused", was="No.", now=None)
    assert "'No.'" in result.as_text()


def fault(text):
    with pytest.raises(FileFaults) as caught:
        read_tape(text, file="bug.jsonl")
    (only,) = caught.value.faults
    return only


def test_another_format_is_refused_with_a_sentence():
    only = fault(changed(bar_tape(), 0, lambda table: table.update(format=2)))
    assert only.as_text().startswith(
        "bug.jsonl:1: format: this tape has format 2, and this lab reads only format 1; replay it with the version"
    )


@pytest.mark.parametrize(
    ("change", "key"),
    [
        (lambda table: table.pop("tape"), "tape"),
        (lambda table: table.update(format=True), "format"),
        (lambda table: table.pop("start"), "start"),
        (lambda table: table.update(bench="FingerTool"), "bench"),
        (lambda table: table["start"].pop("guess"), "start"),
        (lambda table: table["start"].update(colour="red"), "start"),
        (lambda table: table["start"]["bar"].update(length_m="long"), "start"),
        (lambda table: table["start"]["bar"].update(length_m=True), "start"),
        (lambda table: table["start"]["pivot"].update(at_m="nan"), "start"),
        (lambda table: table["start"]["weights"][0].update(shape={"is": "Session"}), "start"),
        (lambda table: table["start"]["weights"][0].update(at_doubt_m=["0x0p0"]), "start"),
        (lambda table: table["start"].update(weights={}), "start"),
    ],
)
def test_a_damaged_header_is_a_fault_of_line_1(change, key):
    only = fault(changed(bar_tape(), 0, change))
    assert (only.line, only.key) == (1, key)


@pytest.mark.parametrize(
    ("line", "key"),
    [
        ("", "line"),
        ("nonsense", "line"),
        ("[1, 2]", "line"),
        ("[" * 100_000, "line"),
        ('{"tick": ' + "9" * 5000 + "}", "line"),
        ('{"tick": 0}', "line"),
        ('{"tick": 0, "state": {}, "do": "undo"}', "line"),
        ('{"tick": -1, "state": {}}', "tick"),
        ('{"tick": 1e3, "state": {}}', "tick"),
        ('{"tick": 99999999999, "state": {}}', "tick"),
        ('{"tick": 0, "do": "fly", "with": {}}', "do"),
        ('{"tick": 0, "do": ["undo"], "with": {}}', "do"),
        ('{"tick": 0, "do": "undo", "with": []}', "with"),
        ('{"tick": 0, "do": "undo", "with": {}, "refused": 3}', "refused"),
        ('{"tick": 0, "do": "move", "with": {"id": 1}}', "with"),
        ('{"tick": 0, "do": "move", "with": {"id": true, "at_m": "0x1p-2", "joins": false}}', "with"),
        ('{"tick": 0, "do": "guess", "with": {"side": 4}}', "with"),
        ('{"tick": 0, "state": []}', "state"),
        ('{"tick": 0, "end": {"held": 0.5}}', "end"),
        ('{"tick": 0, "state": {"": "held"}}', "state"),
    ],
)
def test_a_bad_line_is_a_fault_with_its_number(line, key):
    header = bar_tape().splitlines()[0]
    only = fault(f'{header}\n{{"tick":0,"do":"undo","with":{{}}}}\n{line}\n')
    assert (only.line, only.key) == (3, key)


def test_ticks_that_go_back_are_a_fault():
    text = bar_tape()
    lines = text.splitlines()
    only = fault("\n".join([*lines, lines[1]]))
    assert (only.line, only.key) == (len(lines) + 1, "tick")


def test_nothing_at_all_is_no_tape():
    assert fault("").line == 1
