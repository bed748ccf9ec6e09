"""What happens, in ticks: benches, commands, session, tape and replay."""

from lab.simulation.benches import BenchState, FingerTool, HangingBar, Hung
from lab.simulation.clock import TICK_NS, TICK_S, TICKS_A_FRAME, Clock
from lab.simulation.commands import (
    Command,
    Edit,
    Guess,
    Hang,
    Hold,
    HoldStill,
    LetGo,
    Move,
    MoveFinger,
    MovePivot,
    MoveReference,
    OpenBuild,
    Redo,
    Remove,
    SetHold,
    SetUnits,
    SetView,
    Side,
    Undo,
)
from lab.simulation.refused import Refused
from lab.simulation.session import Session
from lab.simulation.tape import Tape

__all__ = [
    "TICKS_A_FRAME",
    "TICK_NS",
    "TICK_S",
    "BenchState",
    "Clock",
    "Command",
    "Edit",
    "FingerTool",
    "Guess",
    "Hang",
    "HangingBar",
    "Hold",
    "HoldStill",
    "Hung",
    "LetGo",
    "Move",
    "MoveFinger",
    "MovePivot",
    "MoveReference",
    "OpenBuild",
    "Redo",
    "Refused",
    "Remove",
    "Session",
    "SetHold",
    "SetUnits",
    "SetView",
    "Side",
    "Tape",
    "Undo",
]
