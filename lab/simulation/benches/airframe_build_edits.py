"""What each command does to an airframe that is built: parts and tanks put on, placed, weighed, copied, taken off.

All of it is refused where nothing would be left that weighs, or the sum has no answer.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import replace
from functools import wraps
from types import MappingProxyType
from typing import Any, get_args

from lab.mechanics import Axis, MechanicsError, Surface, Tank, Vector
from lab.simulation.airframe_commands import FitOn, MeasureFrom, PlacePart, PlaceTank, RemoveTank, ShowAxis
from lab.simulation.benches.airframe import MOST_PARTS, AirframeBench, AirframePart
from lab.simulation.benches.airframe_kinds import FUEL_KG_M3, KINDS, TANK, TANK_FILL_M3, TANK_M3
from lab.simulation.benches.airframe_places import Spans
from lab.simulation.benches.airframe_reach import reach_m
from lab.simulation.benches.airframe_tanks import first_flight
from lab.simulation.benches.bar_edits import HEAVIEST_KG
from lab.simulation.benches.groups import copied_names, taken_names, tied_with, together_m
from lab.simulation.benches.named_edits import NAME_EDITS, NO_SUCH_PART
from lab.simulation.benches.names import unused_name
from lab.simulation.benches.scales_edits import LIGHTEST_KG
from lab.simulation.benches.shared_edits import NOT_A_DOUBT, NOT_A_PLACE, Does, clamped, guess, is_measured
from lab.simulation.commands import Guess, Measure, Remove
from lab.simulation.part_commands import Copy, Reweigh
from lab.simulation.refused import Refused, msg

AXES: Mapping[Axis, int] = MappingProxyType({"along": 0, "across": 1, "up": 2})
BESIDE = 0.04
"""How far behind what is copied a copy lies, as a share of the way along that there is."""
MOST_TANKS = 8

FULL = Refused(template=msg("There is no room for one more part. Take one off first."))
NO_SUCH_KIND = Refused(template=msg("There is no such thing in the tray."))
NO_SUCH_TANK = Refused(template=msg("That tank is not on it."))
NOT_A_WEIGHT = Refused(template=msg("That is not a weight an airframe can carry."))
NOTHING_LEFT = Refused(template=msg("Something must be left that weighs."))
NOT_AN_AXIS = Refused(template=msg("Arms are along, across or up."))

Edited = Callable[[AirframeBench, Any], AirframeBench | Refused]


def _touching(edit: Edited) -> Edited:
    """An edit that is refused where the sums can't be done, and takes back what was guessed and drawn."""

    @wraps(edit)
    def done(state: AirframeBench, command: Any) -> AirframeBench | Refused:
        try:
            after = edit(state, command)
            if isinstance(after, Refused) or after == state:
                return after if isinstance(after, Refused) else state
            _ = after.sum, after.doing_now("hang").released()
            return after.touched()
        except MechanicsError as error:
            return Refused(template=msg("An airframe can't be so: {why}."), values={"why": str(error)})

    return done


@_touching
def fit_on(state: AirframeBench, command: FitOn) -> AirframeBench | Refused:
    """A new one with a name of its own, at a place within reach."""
    kind = KINDS.get(command.kind)
    if kind is None:
        return NO_SUCH_KIND
    goal = (command.along_m, command.across_m, command.up_m)
    if not all(map(math.isfinite, goal)):
        return NOT_A_PLACE
    at_m = _within(goal, reach_m(state))
    name = unused_name(kind.called, state.names)
    if kind.name == TANK:
        if len(state.tanks) >= MOST_TANKS:
            return FULL
        tank = Tank(name=name, at_m=at_m, capacity_m3=TANK_M3, contents_m3=TANK_FILL_M3, density_kg_m3=FUEL_KG_M3)
        return _with_tanks(state, (*state.tanks_now, tank))
    if len(state.parts_on) >= MOST_PARTS:
        return FULL
    new = AirframePart(id=state.next_id, name=name, mass_kg=kind.mass_kg, at_m=at_m, shape=kind.shape, look=kind.look)
    return replace(state, parts_on=(*state.parts_on, new), next_id=state.next_id + 1)


@_touching
def place_part(state: AirframeBench, command: PlacePart) -> AirframeBench | Refused:
    """It stops where its reach ends, with all that is tied to it; the surface called the same goes with it."""
    goal = (command.along_m, command.across_m, command.up_m)
    if command.id not in state.ids:
        return NO_SUCH_PART
    if not all(map(math.isfinite, goal)):
        return NOT_A_PLACE
    index = state.ids.index(command.id)
    tied = [number for number in tied_with(state.names, index) if number < len(state.parts_on)]
    at_m = state.parts_on[index].at_m
    spans = reach_m(state, {state.parts_on[number].name for number in tied})
    places = [state.parts_on[number].at_m for number in tied]
    by = [
        together_m(goal[axis] - at_m[axis], [place[axis] for place in places], [spans[axis]] * len(tied))
        for axis in range(3)
    ]
    moved = {number: _shifted(state.parts_on[number].at_m, by) for number in tied}
    if len(tied) == 1:
        # To the last bit where it was said, and not by way of a sum.
        moved[index] = _within(goal, spans)
    names = {state.parts_on[number].name.rsplit("/", 1)[-1]: by for number in tied}
    return replace(
        state,
        parts_on=tuple(replace(each, at_m=moved.get(number, each.at_m)) for number, each in enumerate(state.parts_on)),
        surfaces=tuple(_carried(surface, names) for surface in state.surfaces),
    )


@_touching
def place_tank(state: AirframeBench, command: PlaceTank) -> AirframeBench | Refused:
    """It stops where its reach ends."""
    goal = (command.along_m, command.across_m, command.up_m)
    if command.name not in (tank.name for tank in state.tanks):
        return NO_SUCH_TANK
    if not all(map(math.isfinite, goal)):
        return NOT_A_PLACE
    at_m = _within(goal, reach_m(state, {command.name}))
    tanks = tuple(replace(tank, at_m=at_m) if tank.name == command.name else tank for tank in state.tanks)
    return replace(state, tanks=tanks)


@_touching
def remove_tank(state: AirframeBench, command: RemoveTank) -> AirframeBench | Refused:
    """With what is in it."""
    left = tuple(tank for tank in state.tanks_now if tank.name != command.name)
    if len(left) == len(state.tanks):
        return NO_SUCH_TANK
    return _with_tanks(state, left)


@_touching
def remove(state: AirframeBench, command: Remove) -> AirframeBench | Refused:
    """Its id is not used again. The last part stays; a surface stays, for it weighs nothing."""
    if command.id not in state.ids:
        return NO_SUCH_PART
    if len(state.parts_on) == 1:
        return NOTHING_LEFT
    names = taken_names(state.names, state.ids.index(command.id))
    left = replace(state, parts_on=tuple(each for each in state.parts_on if each.id != command.id))
    return left.called(names)


@_touching
def reweigh(state: AirframeBench, command: Reweigh) -> AirframeBench | Refused:
    """Its shape stays, and its inertia goes with its weight; one stated in numbers can't."""
    if command.id not in state.ids:
        return NO_SUCH_PART
    if not LIGHTEST_KG <= command.mass_kg <= HEAVIEST_KG:
        return NOT_A_WEIGHT
    part = state.parts_on[state.ids.index(command.id)]
    if part.inertia_kg_m2 is not None:
        return Refused(template=msg("{name} is as heavy as its file says."), values={"name": part.name})
    return _with_parts(state, {part.id: replace(part, mass_kg=command.mass_kg)})


@_touching
def copy(state: AirframeBench, command: Copy) -> AirframeBench | Refused:
    """One more of the same a little behind it, with all that is tied to it; mirrored, on the other side of across 0."""
    if command.id not in state.ids:
        return NO_SUCH_PART
    numbers = tied_with(state.names, state.ids.index(command.id))
    tied = [state.parts_on[number] for number in numbers if number < len(state.parts_on)]
    if len(state.parts_on) + len(tied) > MOST_PARTS:
        return FULL
    names = copied_names(state.names, [each.name for each in tied])
    spans = reach_m(state)
    beside_m = BESIDE * (spans[0][1] - spans[0][0])
    new = tuple(
        replace(each, id=state.next_id + number, name=name, at_m=_copied(each.at_m, command, beside_m, spans))
        for number, (each, name) in enumerate(zip(tied, names, strict=True))
    )
    return replace(state, parts_on=(*state.parts_on, *new), next_id=state.next_id + len(new))


def _copied(at_m: Vector, command: Copy, beside_m: float, spans: Spans) -> Vector:
    along, across, up = at_m
    return (along, -across + 0.0, up) if command.mirrored else _within((along + beside_m, across, up), spans)


def measure(state: AirframeBench, command: Measure) -> AirframeBench | Refused:
    """What it is made of is as doubtful as said, on all three axes; what tanks hold is taken as it is."""
    if not is_measured(command):
        return NOT_A_DOUBT
    doubt_m = (command.at_m, command.at_m, command.at_m)
    parts = tuple(replace(each, mass_doubt_kg=command.mass_kg, at_doubt_m=doubt_m) for each in state.parts_on)
    return replace(state, parts_on=parts)


def show_axis(state: AirframeBench, command: ShowAxis) -> AirframeBench | Refused:
    """Only what is shown changes."""
    return replace(state, axis=command.axis) if command.axis in get_args(Axis) else NOT_AN_AXIS


def measure_from(state: AirframeBench, command: MeasureFrom) -> AirframeBench | Refused:
    """The line stops a little beyond the airframe. Nothing on it is touched."""
    if command.axis not in get_args(Axis):
        return NOT_AN_AXIS
    if not math.isfinite(command.at_m):
        return NOT_A_PLACE
    index = AXES[command.axis]
    place = list(state.reference_m)
    place[index] = clamped(command.at_m, reach_m(state)[index])
    return replace(state, reference_m=(place[0], place[1], place[2]))


def _within(goal: Vector, spans: Spans) -> Vector:
    along, across, up = (clamped(each, span) for each, span in zip(goal, spans, strict=True))
    return along, across, up


def _shifted(at_m: Vector, by: list[float]) -> Vector:
    return at_m[0] + by[0] + 0.0, at_m[1] + by[1] + 0.0, at_m[2] + by[2] + 0.0


def _carried(surface: Surface, by: Mapping[str, list[float]]) -> Surface:
    way = by.get(surface.name)
    return surface if way is None else replace(surface, at_m=_shifted(surface.at_m, way))


def _with_parts(state: AirframeBench, changed: Mapping[int, AirframePart]) -> AirframeBench:
    return replace(state, parts_on=tuple(changed.get(each.id, each) for each in state.parts_on))


def _with_tanks(state: AirframeBench, tanks: tuple[Tank, ...]) -> AirframeBench:
    """With other tanks: a flight on those that were is over."""
    if state.doing == "burn":
        if not tanks:
            return replace(state, tanks=tanks, flight=None, doing="build")
        return replace(state, tanks=tanks, flight=first_flight(tanks))
    return replace(state, tanks=tanks, flight=None)


BUILD_EDITS: Mapping[type, Does] = MappingProxyType(
    {
        **NAME_EDITS,
        Guess: guess,
        FitOn: fit_on,
        PlacePart: place_part,
        PlaceTank: place_tank,
        RemoveTank: remove_tank,
        Remove: remove,
        Reweigh: reweigh,
        Copy: copy,
        Measure: measure,
        ShowAxis: show_axis,
        MeasureFrom: measure_from,
    }
)
"""What it does to an airframe that is built, by the class of the command."""
