"""Sessions played once and kept: what a learner did then leads to the same states now.

Each tape beside this file was recorded by the function of its name below. Run this file as a program to
record them again, after a change that is meant to make a motion come out otherwise.
"""

from pathlib import Path

import pytest

from lab.files import read_build_text
from lab.simulation import (
    TICK_NS,
    Guess,
    Hang,
    HoldStill,
    LetGo,
    Move,
    MoveFinger,
    MovePivot,
    MoveReference,
    Redo,
    Remove,
    Same,
    Session,
    SetHold,
    SetUnits,
    SetView,
    Tape,
    Undo,
    empty_bar,
    finger_from_build,
    read_tape,
    replay,
    workshop_bar,
)
from lab.simulation.benches.mobile_builds import workshop_mobile
from lab.simulation.benches.plate_builds import workshop_plate
from lab.simulation.benches.scales_builds import scales_from_build, workshop_scales
from lab.simulation.benches.tool_builds import workshop_tool
from lab.simulation.benches.two_fingers_builds import workshop_pole
from lab.simulation.mobile_commands import HangBar, HangOn, Rehang, SlideBar
from lab.simulation.part_commands import Rename, Reweigh
from lab.simulation.plate_commands import (
    AddCorner,
    ClipOn,
    CutHole,
    DrawPlumbLine,
    MoveCorner,
    MoveHole,
    MovePin,
    SetAreaWeight,
)
from lab.simulation.scales_commands import GuessReading, MoveScale, PutOn, Shift
from lab.simulation.tool_commands import FitPart, SetLength
from lab.simulation.two_finger_commands import GuessMeeting, MoveFingers, SetFriction, StopFingers

HERE = Path(__file__).parent

KITE_FRAME = """
format = 1
title = "Kite frame"
units = "kg-m"
part = [
    { name = "frame", weight = 3.2, at = [0.6, 0, 0.02], shape = { kind = "box", size = [1.2, 0.8, 0.04] } },
    { name = "reel", weight = 1.1, at = [0.4, 0.1, 0.1], shape = { kind = "cylinder", radius = 0.08, length = 0.1 } },
]
support = [{ name = "bow scale", at = [0.1, 0, 0] }, { name = "left scale", at = [1.1, -0.35, 0] },
           { name = "right scale", at = [1.1, 0.35, 0] }]
"""

BOAT_HOOK = """
format = 1
title = "Boat hook"
units = "g-cm"
[[part]]
name = "pole"
weight = 120
at = 20.0
shape = { kind = "rod", length = 40 }
[[part]]
name = "hook"
weight = 480
at = 2.0
shape = { kind = "box", size = [4, 2, 5] }
look = "hook"
"""


def played(state, *steps):
    """A tape of a session. steps: commands, and numbers of ticks to let pass between them."""
    tape = Tape()
    session = Session(state, tape=tape)
    for step in steps:
        if isinstance(step, int):
            for _ in range(step):
                session.advance(TICK_NS)
        else:
            session.do(step)
    return tape.text()


def bar_built_from_nothing():
    drag = (Move(1, 0.11), Move(1, 0.14, joins=True), Move(1, 0.155, joins=True))
    built = (Hang(0.2, 0.1), Hang(0.1, 0.72), Hang(0.05, 1.3), Hang(0.05, 0.9, "clamped"), SetHold(3, "hung"), *drag)
    tried = (MovePivot(0.40), MoveReference(0.25), Guess("right"), LetGo(), 260, HoldStill(), Undo(), Undo(), Redo())
    return played(empty_bar(), *built, *tried, Remove(2), SetUnits("lb-in"), SetView("all"), LetGo(at_once=True))


def bar_that_swings_to_rest():
    return played(workshop_bar(), Move(1, 0.16), MovePivot(0.446), LetGo(), 1400)


def bar_that_falls_on_its_stop():
    return played(workshop_bar(), Guess("left"), LetGo(), 240)


def tool_that_stays():
    tool = finger_from_build(read_build_text(BOAT_HOOK, file="boat-hook.toml"), pad_half_m=0.003)
    return played(tool, MoveFinger(0.056), Guess("level"), LetGo(), 50)


def tool_that_slides_off():
    tool = finger_from_build(read_build_text(BOAT_HOOK, file="boat-hook.toml"), pad_half_m=0.003)
    return played(tool, MoveFinger(0.096), Guess("level"), LetGo(), 300, HoldStill(), MoveFinger(0.07), LetGo(), 300)


def mobile_that_is_tuned():
    hung = (HangBar(3, 0.2, 0.015, 0.05), HangOn(9, 0.02, 0.03, look="gull"), HangOn(9, 0.02, 0.16), SlideBar(9, 0.098))
    drag = (Rehang(6, 2, 0.23), Rehang(6, 2, 0.24, joins=True), Rehang(6, 3, 0.10, joins=True))
    tried = (Guess("left"), LetGo(), 900, HoldStill(), Undo(), Redo(), Rehang(9, 1, 0.33), Remove(4), LetGo(), 500)
    return played(workshop_mobile(), LetGo(), 1200, *hung, *drag, *tried)


def plate_that_is_hung_twice():
    cut = (AddCorner(0, 0, 0.17, -0.02), MoveCorner(0, 1, 0.18, -0.03, joins=True), CutHole(0.06, 0.06, 0.03))
    loaded = (*cut, MoveHole(1, 0.06, 0.07), ClipOn(0.05, 0.3, 0.06), MoveCorner(0, 0, 0.5, 0.1), SetAreaWeight(4.8))
    first = (Guess("right"), LetGo(), 1600, DrawPlumbLine(), MovePin(0.31, 0.02), LetGo(), 90, HoldStill())
    return played(workshop_plate(), *loaded, *first, LetGo(), 1700, DrawPlumbLine(), Undo(), Undo(), Redo())


def fingers_that_meet_and_tip():
    drag = (MoveFingers(0.1, 0.9), MoveFingers(0.12, 0.85, joins=True), MoveFingers(0.15, 0.8, joins=True))
    said = (Guess("left"), GuessMeeting(0.5), GuessMeeting(0.48, joins=True))
    slid = (LetGo(), 300, StopFingers(), 20, LetGo(), 400, HoldStill())
    soaped = (SetFriction("right", 0.2, 0.12), Hang(0.5, 0.9), Move(3, 0.8), LetGo(), 700, Undo(), Undo(), Redo())
    return played(workshop_pole(), *drag, *said, *slid, *soaped, MoveFingers(0.1, 0.3), LetGo(), 300)


def tool_built_on_a_finger():
    built = (
        FitPart("ring", 1.1),
        Hang(0.5, 0.05, "clamped"),
        Move(4, 1.15),
        Move(4, 1.19, joins=True),
        Rename(2, "gaff"),
    )
    tried = (MoveFinger(0.5), Guess("left"), LetGo(), 300, HoldStill(), SetLength(1, 0.9), Reweigh(2, 0.3), Undo())
    return played(workshop_tool(), *built, *tried, SetHold(5, "hung"), Remove(3), MoveReference(0.4), LetGo(), 400)


def scales_that_settle_and_tip():
    drag = tuple(Shift(1, 0.30 + step / 50, 0.0, joins=step > 0) for step in range(33))
    set_up = (GuessReading(0.5), Guess("left"), LetGo(), 300, MoveScale(2, 0.60, 0.0), PutOn(0.2, 0.55))
    return played(workshop_scales(), *set_up, *drag, 400, HoldStill(), Undo(), LetGo(), 60)


def frame_that_tips_off_three_scales():
    frame = scales_from_build(read_build_text(KITE_FRAME, file="kite-frame.toml"))
    return played(frame, Shift(2, 0.5, 0.2), MoveScale(1, 0.2, 0.1), LetGo(), 250, PutOn(4.0, 0.3, -0.4), 400)


PLAYED = {
    "scales-that-settle-and-tip": scales_that_settle_and_tip,
    "frame-that-tips-off-three-scales": frame_that_tips_off_three_scales,
    "tool-built-on-a-finger": tool_built_on_a_finger,
    "fingers-that-meet-and-tip": fingers_that_meet_and_tip,
    "mobile-that-is-tuned": mobile_that_is_tuned,
    "plate-that-is-hung-twice": plate_that_is_hung_twice,
    "bar-built-from-nothing": bar_built_from_nothing,
    "bar-that-swings-to-rest": bar_that_swings_to_rest,
    "bar-that-falls-on-its-stop": bar_that_falls_on_its_stop,
    "tool-that-stays": tool_that_stays,
    "tool-that-slides-off": tool_that_slides_off,
}


def kept(name):
    return (HERE / f"{name}.jsonl").read_text(encoding="utf-8")


@pytest.mark.parametrize("name", PLAYED)
def test_a_kept_session_comes_out_as_it_did(name):
    # Not to the last bit: the tapes were recorded on one machine, and its sines end in other bits elsewhere.
    result = replay(read_tape(kept(name), file=f"{name}.jsonl"), exact=False)
    assert isinstance(result, Same), result.as_text()
    assert result.commands == kept(name).count('"do":')


@pytest.mark.parametrize("name", PLAYED)
def test_the_same_session_played_today_replays_to_the_last_bit(name):
    result = replay(read_tape(PLAYED[name]()))
    assert isinstance(result, Same), result.as_text()
    assert result.exact


if __name__ == "__main__":
    for name, play in PLAYED.items():
        (HERE / f"{name}.jsonl").write_text(play(), encoding="utf-8", newline="\n")
