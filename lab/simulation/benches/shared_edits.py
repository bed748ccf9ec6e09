"""What every bench can be asked, whatever lies on it."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import TypeVar, get_args

from lab.files import UNITS, View
from lab.simulation.benches.finger import FingerTool
from lab.simulation.benches.hanging_bar import HangingBar
from lab.simulation.benches.showing import Showing
from lab.simulation.commands import Guess, HoldStill, LetGo, MoveReference, SetUnits, SetView, Side
from lab.simulation.refused import Refused, msg
from lab.simulation.settling import settle

B = TypeVar("B", HangingBar, FingerTool)
Moved = TypeVar("Moved", HangingBar, FingerTool, Showing)

NOT_A_PLACE = Refused(template=msg("That is not a place on the bench, so nothing was moved."))
NOT_A_SIDE = Refused(template=msg("A guess is left, level or right."))
NOT_A_VIEW = Refused(template=msg("Numbers are shown plain, as numbers, or all."))
NOT_UNITS = Refused(template=msg("The lab does not know these units."))


def clamped(at_m: float, span_m: tuple[float, float]) -> float:
    """The place in the span that is nearest to at_m, m."""
    low_m, high_m = span_m
    # Adding 0.0 turns −0.0 into 0.0: equal places must be the same bits.
    return min(max(at_m, low_m), high_m) + 0.0


def move_reference(state: B, command: MoveReference) -> B | Refused:
    """The line stops at the rail's ends. The bench goes on as it is: nothing on it is touched."""
    if not math.isfinite(command.at_m):
        return NOT_A_PLACE
    return replace(state, reference_m=clamped(command.at_m, state.rail_m))


def guess(state: B, command: Guess) -> B | Refused:
    """A guess is kept until what was guessed about changes."""
    if command.side is not None and command.side not in get_args(Side):
        return NOT_A_SIDE
    return replace(state, guess=command.side)


def let_go(state: Moved, command: LetGo) -> Moved | Refused:
    """Let go; while it moves already, only ``at_once`` makes a difference."""
    released = state.released()
    return settle(released) if command.at_once else released


def hold_still(state: Moved, _: HoldStill) -> Moved | Refused:
    """Back to level, held."""
    return state.stilled()


def set_view(state: B, command: SetView) -> B | Refused:
    """Only what is shown changes."""
    return replace(state, view=command.view) if command.view in get_args(View) else NOT_A_VIEW


def set_units(state: B, command: SetUnits) -> B | Refused:
    """Only what is shown changes."""
    return replace(state, units=command.units) if command.units in UNITS else NOT_UNITS
