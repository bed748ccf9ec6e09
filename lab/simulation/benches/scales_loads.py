"""What every change of what stands on scales has in common: when it is refused, what moves together, what is on it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import wraps
from typing import Any

from lab.mechanics import MechanicsError
from lab.simulation.benches.groups import tied_with
from lab.simulation.benches.hanging_bar import Hung
from lab.simulation.benches.scales import ScalesBench
from lab.simulation.refused import Refused, msg

_EDGE_M = 1e-9

TIPPED = Refused(template=msg("It has tipped. Set it back first."))
CARRIES_ALL = Refused(template=msg("Everything else lies on that part, so it stays where it is."))
FULL = Refused(template=msg("There is no room for one more weight. Take one off first."))

Edited = Callable[[ScalesBench, Any], ScalesBench | Refused]


def touching(edit: Edited) -> Edited:
    """An edit that is refused once the body tips or the sums can't be done, and takes guesses back."""

    @wraps(edit)
    def done(state: ScalesBench, command: Any) -> ScalesBench | Refused:
        if state.tipping is not None:
            return TIPPED
        try:
            after = edit(state, command)
            if isinstance(after, Refused) or after == state:
                return after if isinstance(after, Refused) else state
            after = replace(after, guess=None, guessed_kg=None)
            _ = after.at_rest()
            return after.set_down()
        except MechanicsError as error:
            return Refused(template=msg("This can't stand on scales: {why}."), values={"why": str(error)})

    return done


def tied(state: ScalesBench, load: Hung) -> list[Hung]:
    """What moves with a part, itself among it. What carries all stays where it is, whatever it is called."""
    numbers = tied_with(state.names, state.ids.index(load.id))
    tied = [state.loads[number] for number in numbers if number < len(state.loads)]
    return [each for each in tied if each is not state.carrier]


def shifted(load: Hung, along_m: float, across_m: float) -> Hung:
    """The part, moved by so much."""
    return replace(load, at_m=load.at_m + along_m + 0.0, across_m=load.across_m + across_m + 0.0)


def on_it(state: ScalesBench, along_m: float, across_m: float) -> bool:
    """Whether a place is within reach of what carries."""
    (left, right), (low, high) = state.reach_m
    return left - _EDGE_M <= along_m <= right + _EDGE_M and low - _EDGE_M <= across_m <= high + _EDGE_M
