"""What happens, in ticks: benches, commands, session, tape and replay.

Determinism: the same first state, and the same commands before the same ticks, lead to the same states to the
last bit on the same version and platform (``tape.platform_key``), however long the frames were. So nothing in
a command or a tick reads a clock, a random number, a file or the surroundings, and nothing is printed;
real time comes in only as nanoseconds to ``Session.advance``, and only whole ticks of 5 ms reach a bench.
"""

from typing import TYPE_CHECKING

from lab.late_names import late_names

if TYPE_CHECKING:
    from lab.simulation.benches import BenchState, FingerTool, HangingBar, Hung, Showing
    from lab.simulation.benches.bar_builds import (
        build_from_hanging_bar,
        empty_bar,
        hanging_bar_from_build,
        workshop_bar,
    )
    from lab.simulation.benches.finger_builds import finger_from_build
    from lab.simulation.benches.unfit import UnfitBuildError
    from lab.simulation.clock import TICK_NS, TICK_S, TICKS_A_FRAME, Clock
    from lab.simulation.command_table import COMMANDS, CommandRow
    from lab.simulation.commands import (
        Command,
        Edit,
        Guess,
        Hang,
        Hold,
        HoldStill,
        LetGo,
        Measure,
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
    from lab.simulation.replaying import FirstDifference, Same, replay
    from lab.simulation.session import Session
    from lab.simulation.settling import settle
    from lab.simulation.tape import Tape
    from lab.simulation.tape_reading import Recording, read_tape
else:
    _MODULES = {
        "benches": "BenchState FingerTool HangingBar Hung Showing",
        "benches.bar_builds": "build_from_hanging_bar empty_bar hanging_bar_from_build workshop_bar",
        "benches.finger_builds": "finger_from_build",
        "benches.unfit": "UnfitBuildError",
        "clock": "TICK_NS TICK_S TICKS_A_FRAME Clock",
        "command_table": "COMMANDS CommandRow",
        "commands": "Command Edit Guess Hang Hold HoldStill LetGo Measure Move MoveFinger "
        "MovePivot MoveReference OpenBuild Redo Remove SetHold SetUnits SetView Side Undo",
        "refused": "Refused",
        "replaying": "FirstDifference Same replay",
        "session": "Session",
        "settling": "settle",
        "tape": "Tape",
        "tape_reading": "Recording read_tape",
    }
    __getattr__ = late_names(__name__, _MODULES)

__all__ = [
    "COMMANDS",
    "TICKS_A_FRAME",
    "TICK_NS",
    "TICK_S",
    "BenchState",
    "Clock",
    "Command",
    "CommandRow",
    "Edit",
    "FingerTool",
    "FirstDifference",
    "Guess",
    "Hang",
    "HangingBar",
    "Hold",
    "HoldStill",
    "Hung",
    "LetGo",
    "Measure",
    "Move",
    "MoveFinger",
    "MovePivot",
    "MoveReference",
    "OpenBuild",
    "Recording",
    "Redo",
    "Refused",
    "Remove",
    "Same",
    "Session",
    "SetHold",
    "SetUnits",
    "SetView",
    "Showing",
    "Side",
    "Tape",
    "Undo",
    "UnfitBuildError",
    "build_from_hanging_bar",
    "empty_bar",
    "finger_from_build",
    "hanging_bar_from_build",
    "read_tape",
    "replay",
    "settle",
    "workshop_bar",
]
