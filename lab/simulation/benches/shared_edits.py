"""What every bench can be asked, whatever lies on it."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import Field, replace
from types import MappingProxyType
from typing import Any, ClassVar, Protocol, Self, TypeVar, get_args

from lab.files import UNITS, View
from lab.mechanics import Part
from lab.simulation.commands import Guess, HoldStill, LetGo, Measure, MoveReference, SetUnits, SetView, Side
from lab.simulation.refused import Refused, msg
from lab.simulation.settling import Moving, settle


class LetsGo(Moving, Protocol):
    """What can be let go and held."""

    def released(self) -> Self:
        """Just let go."""
        ...

    def stilled(self) -> Self:
        """Held."""
        ...


class OnBench(LetsGo, Protocol):
    """What every bench of free build has."""

    __dataclass_fields__: ClassVar[dict[str, Field[Any]]]

    @property
    def rail_m(self) -> tuple[float, float]:
        """Where the reference line may be, along."""
        ...


B = TypeVar("B", bound=OnBench)
Loose = TypeVar("Loose", bound=LetsGo)


Does = Callable[[Any, Any], Any]
"""What a command does to a bench: a pure function of the state and the command; the next state, or a Refused."""

NOT_A_PLACE = Refused(template=msg("That is not a place on the bench, so nothing was moved."))
NOT_A_SIDE = Refused(template=msg("A guess is left, level or right."))
NOT_A_VIEW = Refused(template=msg("Numbers are shown plain, as numbers, or all."))
NOT_A_DOUBT = Refused(template=msg("A doubt is nought or more."))
NOT_UNITS = Refused(template=msg("The lab does not know these units."))


def is_measured(command: Measure) -> bool:
    """Whether doubts are numbers, none below nought."""
    return all(math.isfinite(doubt) and doubt >= 0.0 for doubt in (command.mass_kg, command.at_m))


def measured(parts: tuple[Part, ...], command: Measure) -> tuple[Part, ...]:
    """The parts with doubts of their weights, and of their places along."""
    return tuple(replace(part, mass_doubt_kg=command.mass_kg, at_doubt_m=(command.at_m, 0.0, 0.0)) for part in parts)


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


def let_go(state: Loose, command: LetGo) -> Loose | Refused:
    """Let go; while it moves already, only ``at_once`` makes a difference."""
    released = state.released()
    return settle(released) if command.at_once else released


def hold_still(state: Loose, _: HoldStill) -> Loose | Refused:
    """Back to level, held."""
    return state.stilled()


def set_view(state: B, command: SetView) -> B | Refused:
    """Only what is shown changes."""
    return replace(state, view=command.view) if command.view in get_args(View) else NOT_A_VIEW


def set_units(state: B, command: SetUnits) -> B | Refused:
    """Only what is shown changes."""
    return replace(state, units=command.units) if command.units in UNITS else NOT_UNITS


HELD_OR_NOT: Mapping[type, Does] = MappingProxyType({LetGo: let_go, HoldStill: hold_still})
"""What can be asked even of a scene that is only shown."""

SHARED: Mapping[type, Does] = MappingProxyType(
    {
        **HELD_OR_NOT,
        MoveReference: move_reference,
        Guess: guess,
        SetView: set_view,
        SetUnits: set_units,
    }
)
"""What every bench of free build does alike."""
