"""What each command does to an airframe, whatever is being done with it."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import get_args

from lab import files
from lab.mechanics import MechanicsError
from lab.simulation.airframe_commands import DoWith
from lab.simulation.benches.airframe import AirframeBench, Doing
from lab.simulation.benches.airframe_build_edits import BUILD_EDITS
from lab.simulation.benches.airframe_builds import airframe_from_build
from lab.simulation.benches.airframe_hanging_edits import HANG_EDITS, WEIGH_EDITS
from lab.simulation.benches.airframe_tank_edits import NO_TANKS, TANK_EDITS
from lab.simulation.benches.shared_edits import (
    HELD_OR_NOT,
    NOT_A_PLACE,
    Does,
    clamped,
    let_go,
    set_units,
    set_view,
)
from lab.simulation.benches.unfit import OPENED_TEXT, UnfitBuildError, unreadable
from lab.simulation.commands import LetGo, MoveReference, OpenBuild, SetUnits, SetView
from lab.simulation.refused import Refused, msg

NOTHING_TO_DO = Refused(template=msg("There is no such thing to do with an airframe."))


def do_with(state: AirframeBench, command: DoWith) -> AirframeBench | Refused:
    """Something else is done with it; what was done before is kept, held."""
    if command.doing == "burn" and not state.tanks:
        return NO_TANKS
    return state.doing_now(command.doing) if command.doing in get_args(Doing) else NOTHING_TO_DO


def released(state: AirframeBench, command: LetGo) -> AirframeBench | Refused:
    """Let go where it hangs or is held over its scales; while it is built, looked at where it balances."""
    try:
        return let_go(state, command)
    except MechanicsError as error:
        return Refused(template=msg("This can't be let go: {why}."), values={"why": str(error)})


def move_reference(state: AirframeBench, command: MoveReference) -> AirframeBench | Refused:
    """Along only: the line stops a little beyond both ends."""
    if not math.isfinite(command.at_m):
        return NOT_A_PLACE
    along = clamped(command.at_m, state.rail_m)
    return replace(state, reference_m=(along, *state.reference_m[1:]))


def open_build(_: AirframeBench, command: OpenBuild) -> AirframeBench | Refused:
    """The saved build takes the place of everything."""
    try:
        return airframe_from_build(files.read_build_text(command.text, file=OPENED_TEXT))
    except files.FileFaults as faults:
        return unreadable(faults)
    except UnfitBuildError as unfit:
        return unfit.why


EDITS: Mapping[type, Does] = MappingProxyType(
    {
        **HELD_OR_NOT,
        LetGo: released,
        SetView: set_view,
        SetUnits: set_units,
        MoveReference: move_reference,
        OpenBuild: open_build,
        DoWith: do_with,
        **BUILD_EDITS,
        **HANG_EDITS,
        **WEIGH_EDITS,
        **TANK_EDITS,
    }
)
"""What it does to this bench, by the class of the command."""
