"""What each command does to an airframe that is hung or weighed; it stays as it is built."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import Field, replace
from math import radians
from types import MappingProxyType
from typing import Any, ClassVar, Protocol, TypeVar, get_args

from lab.mechanics import MechanicsError, Part, Surface
from lab.simulation.airframe_commands import GuessAttitude, HangBy, Nose, RaiseNose
from lab.simulation.benches.airframe_hanging import AirframeHanging
from lab.simulation.benches.airframe_places import first_hook_m, first_scales, spans_m
from lab.simulation.benches.airframe_weighing import AirframeWeighing
from lab.simulation.benches.scales_edits import NO_SUCH_SCALE, NOT_A_READING, ONE_LINE
from lab.simulation.benches.scales_places import apart
from lab.simulation.benches.shared_edits import NOT_A_PLACE, NOT_A_SIDE, Does, clamped
from lab.simulation.commands import Side
from lab.simulation.plate_commands import DrawPlumbLine, RubOutLines
from lab.simulation.refused import Refused, msg
from lab.simulation.scales_commands import GuessReading, MoveScale


class HungOrWeighed(Protocol):
    """What of an airframe these edits read and change."""

    __dataclass_fields__: ClassVar[dict[str, Field[Any]]]

    @property
    def parts(self) -> tuple[Part, ...]:
        """All that weighs."""
        ...

    @property
    def surfaces(self) -> tuple[Surface, ...]:
        """Wings and the like."""
        ...

    @property
    def hang(self) -> AirframeHanging | None:
        """How it hangs; None before it was first hung."""
        ...

    @property
    def weighing(self) -> AirframeWeighing | None:
        """How it stands on scales; None before it was first weighed."""
        ...


F = TypeVar("F", bound=HungOrWeighed)

MOST_LINES = 8

RAISES_RAD = radians(3.0), radians(20.0)
"""How far a nose can be raised: less tells nothing of how high it balances, with more it would roll off."""

HEAVIEST_KG = 1e4

NOT_HELD_UP = Refused(template=msg("Let it go and let it hang still first: only then is the line plumb."))
ANY_WAY = Refused(template=msg("Hung by its balance point it hangs any way: there is no line to draw."))
DRAWN_ALREADY = Refused(template=msg("This line is drawn already. Hang it by another place."))
FULL_OF_LINES = Refused(template=msg("There are enough lines. Rub them out first."))
NOTHING_DRAWN = Refused(template=msg("There is no line to rub out."))
NOT_STEADY = Refused(template=msg("Let it down and let the readings settle first."))
NOT_AN_ANGLE = Refused(template=msg("A nose is raised by three to twenty degrees."))
WOULD_TIP = Refused(template=msg("Raised so far it would tip off its scales. Raise it less, or move a scale."))


def hanging_of(state: HungOrWeighed) -> AirframeHanging:
    """How it hangs, or would first be hung."""
    return state.hang or AirframeHanging(hook_m=first_hook_m(state.parts, state.surfaces))


def weighing_of(state: HungOrWeighed) -> AirframeWeighing:
    """How it stands on its scales, or would first be let down on them."""
    return state.weighing or AirframeWeighing(scales=first_scales(state.parts, state.surfaces))


def hang_by(state: F, command: HangBy) -> F | Refused:
    """It stops at the box round the airframe. Lines stay: they are on it. A guess was about another place."""
    goal = (command.along_m, command.across_m, command.up_m)
    if not all(map(math.isfinite, goal)):
        return NOT_A_PLACE
    hanging = hanging_of(state)
    along, across, up = spans_m(state.parts, state.surfaces)
    # A wire eye may stand out of its back, by which it was hung before.
    up = (up[0], max(up[1], hanging.hook_m[2]))
    hook_m = (clamped(goal[0], along), clamped(goal[1], across), clamped(goal[2], up))
    if hook_m == hanging.hook_m:
        return state
    return replace(state, hang=replace(hanging.stilled(), hook_m=hook_m, guess_nose=None, guess_wing=None))


def guess_attitude(state: F, command: GuessAttitude) -> F | Refused:
    """A guess is kept until what was guessed about changes."""
    if command.nose not in (None, *get_args(Nose)) or command.wing not in (None, *get_args(Side)):
        return NOT_A_SIDE
    return replace(state, hang=replace(hanging_of(state), guess_nose=command.nose, guess_wing=command.wing))


def draw_plumb_line(state: F, _: DrawPlumbLine) -> F | Refused:
    """Once for every place it hangs by."""
    hanging = hanging_of(state)
    line = hanging.line
    if line is None:
        return ANY_WAY if hanging.at_rest else NOT_HELD_UP
    if line in hanging.lines:
        return DRAWN_ALREADY
    return FULL_OF_LINES if len(hanging.lines) >= MOST_LINES else replace(state, hang=hanging.drawn())


def rub_out_lines(state: F, _: RubOutLines) -> F | Refused:
    """All of them."""
    hanging = hanging_of(state)
    return replace(state, hang=replace(hanging, lines=())) if hanging.lines else NOTHING_DRAWN


def move_scale(state: F, command: MoveScale) -> F | Refused:
    """It stops at the box round the airframe. What stands comes back to level first; off its scales it stays off."""
    weighing = weighing_of(state)
    number = next((place for place, scale in enumerate(weighing.scales) if scale.id == command.id), None)
    if number is None:
        return NO_SUCH_SCALE
    if not math.isfinite(command.along_m + command.across_m):
        return NOT_A_PLACE
    along, across, _ = spans_m(state.parts, state.surfaces)
    scale = weighing.scales[number]
    at_m = (clamped(command.along_m, along), clamped(command.across_m, across), scale.at_m[2])
    if at_m == scale.at_m:
        return state
    first, second, third = (
        replace(each, at_m=at_m) if place == number else each for place, each in enumerate(weighing.scales)
    )
    if not apart(each.at_m for each in (first, second, third)):
        return ONE_LINE
    kept = weighing.stilled() if weighing.tipped else weighing
    return replace(state, weighing=kept.with_scales((first, second, third)))


def guess_reading(state: F, command: GuessReading) -> F | Refused:
    """A guess is kept until what was guessed about changes."""
    if command.mass_kg is not None and not 0.0 <= command.mass_kg <= HEAVIEST_KG:
        return NOT_A_READING
    return replace(state, weighing=replace(weighing_of(state), guessed_kg=command.mass_kg))


def raise_nose(state: F, command: RaiseNose) -> F | Refused:
    """The level readings are noted before it goes up; that it would tip is said before, and it stays."""
    weighing = weighing_of(state)
    least, most = RAISES_RAD
    if command.angle_rad != 0.0 and not least <= command.angle_rad <= most:
        return NOT_AN_ANGLE
    if not weighing.steady:
        return NOT_STEADY
    try:
        holds = weighing.holds_at(command.angle_rad)
    except MechanicsError:
        holds = False
    return replace(state, weighing=weighing.raising(command.angle_rad + 0.0)) if holds else WOULD_TIP


HANG_EDITS: Mapping[type, Does] = MappingProxyType(
    {HangBy: hang_by, GuessAttitude: guess_attitude, DrawPlumbLine: draw_plumb_line, RubOutLines: rub_out_lines}
)
"""What it does to an airframe that is hung, by the class of the command."""

WEIGH_EDITS: Mapping[type, Does] = MappingProxyType(
    {MoveScale: move_scale, GuessReading: guess_reading, RaiseNose: raise_nose}
)
"""What it does to an airframe that is weighed, by the class of the command."""
