"""What each command does to a tool on a finger."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

from lab import files
from lab.simulation.benches.finger import FingerTool
from lab.simulation.benches.finger_builds import finger_from_build
from lab.simulation.benches.shared_edits import NOT_A_DOUBT, NOT_A_PLACE, SHARED, Does, clamped, is_measured, measured
from lab.simulation.benches.unfit import OPENED_TEXT, UnfitBuildError, unreadable
from lab.simulation.commands import Measure, MoveFinger, OpenBuild
from lab.simulation.refused import Refused


def move_finger(state: FingerTool, command: MoveFinger) -> FingerTool | Refused:
    """The finger stops at the tool's ends. The tool is held again, and a guess about it taken back."""
    if not math.isfinite(command.at_m):
        return NOT_A_PLACE
    at_m = clamped(command.at_m, (state.left_m, state.right_m))
    if at_m == state.finger_at_m:
        return state
    return replace(state.stilled(), finger_at_m=at_m, guess=None)


def measure(state: FingerTool, command: Measure) -> FingerTool | Refused:
    """Every part of the tool is as doubtful as said."""
    if not is_measured(command):
        return NOT_A_DOUBT
    return replace(state, parts=measured(state.parts, command))


def open_tool(state: FingerTool, command: OpenBuild) -> FingerTool | Refused:
    """The saved build takes the place of the tool. The pad stays as wide as it is."""
    try:
        return finger_from_build(files.read_build_text(command.text, file=OPENED_TEXT), pad_half_m=state.pad_half_m)
    except files.FileFaults as faults:
        return unreadable(faults)
    except UnfitBuildError as unfit:
        return unfit.why


EDITS: Mapping[type, Does] = MappingProxyType(
    {
        **SHARED,
        MoveFinger: move_finger,
        Measure: measure,
        OpenBuild: open_tool,
    }
)
"""What it does to this bench, by the class of the command."""
