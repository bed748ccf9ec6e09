"""What each command does to an airframe that flies on its tanks."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import TYPE_CHECKING

from lab.mechanics import MechanicsError
from lab.simulation.airframe_commands import BurnFrom, FillTank, PumpAcross, SetFlightTime
from lab.simulation.benches.airframe_tanks import TankFlight, first_flight
from lab.simulation.benches.shared_edits import Does
from lab.simulation.refused import Refused, msg

if TYPE_CHECKING:
    from lab.simulation.benches.airframe import AirframeBench

MOST_RATE_M3_S = 1.0
MOST_CHOICES = 40
"""Steps and pumps of one flight: more than anybody chooses, few enough to be followed at once."""

NO_TANKS = Refused(template=msg("It has no tanks to burn from."))
NO_SUCH_TANK = Refused(template=msg("That tank is not on it."))
NOT_A_TIME = Refused(template=msg("That is not a time since take-off."))
NOT_A_RATE = Refused(template=msg("That is not a rate for burning or pumping."))
NOT_A_FILLING = Refused(template=msg("A tank holds from nothing to what it has room for."))
TOO_MANY_CHOICES = Refused(template=msg("The plan is full. Go back to take-off and begin it again."))
PUMPED_ROUND = Refused(template=msg("This can't be flown: {why}."))


def flight_of(state: AirframeBench) -> TankFlight:
    """How it flies, or would first fly."""
    return state.flight or first_flight(state.tanks)


def set_flight_time(state: AirframeBench, command: SetFlightTime) -> AirframeBench | Refused:
    """It stops at take-off and at the end of the flight."""
    if not math.isfinite(command.at_s):
        return NOT_A_TIME
    return _flown(state, flight_of(state).set_to(command.at_s, state.tanks)) if state.tanks else NO_TANKS


def burn_from(state: AirframeBench, command: BurnFrom) -> AirframeBench | Refused:
    """From now on; what is burned is burned."""
    names = tuple(tank.name for tank in state.tanks)
    if not names:
        return NO_TANKS
    if command.first is not None and command.first not in names:
        return NO_SUCH_TANK
    flight = flight_of(state)
    rate = command.rate_m3_s
    if rate is None:
        rate = next(step for step in reversed(flight.steps) if step.from_s <= flight.at_s).rate_m3_s
    if not 0.0 <= rate <= MOST_RATE_M3_S:
        return NOT_A_RATE
    if command.first is None:
        return _flown(state, flight.burning(rate + 0.0, names))
    rest = tuple(name for name in names if name != command.first)
    return _flown(state, flight.burning(rate + 0.0, (command.first, *rest), "in order"))


def pump_across(state: AirframeBench, command: PumpAcross) -> AirframeBench | Refused:
    """From now on, or no more; a pump the other way between the two is switched off."""
    names = {tank.name for tank in state.tanks}
    if not {command.source, command.target} <= names or command.source == command.target:
        return NO_SUCH_TANK
    if command.rate_m3_s is not None and not 0.0 < command.rate_m3_s <= MOST_RATE_M3_S:
        return NOT_A_RATE
    return _flown(state, flight_of(state).pumping(command.source, command.target, command.rate_m3_s))


def fill_tank(state: AirframeBench, command: FillTank) -> AirframeBench | Refused:
    """It lands for it: the flight begins anew with what the other tanks hold now, burned as it is burned now."""
    tank = next((tank for tank in state.tanks if tank.name == command.name), None)
    if tank is None:
        return NO_SUCH_TANK
    if not 0.0 <= command.contents_m3 <= tank.capacity_m3:
        return NOT_A_FILLING
    flight = flight_of(state).stilled()
    step = next(step for step in reversed(flight.steps) if step.from_s <= flight.at_s)
    tanks = tuple(
        replace(each, contents_m3=command.contents_m3 + 0.0) if each.name == command.name else each
        for each in flight.tanks_at(state.tanks)
    )
    anew = replace(flight, steps=(replace(step, from_s=0.0),), pumps=(), set_s=0.0)
    return _flown(replace(state.touched(), tanks=tanks), anew)


def _flown(state: AirframeBench, flight: TankFlight) -> AirframeBench | Refused:
    """With the flight, if it can be flown. What hung or was weighed has another weight now."""
    if len(flight.steps) + len(flight.pumps) > MOST_CHOICES:
        return TOO_MANY_CHOICES
    try:
        flight.course(state.tanks)
    except MechanicsError as error:
        return replace(PUMPED_ROUND, values={"why": str(error)})
    return replace(state.touched(), flight=flight)


TANK_EDITS: Mapping[type, Does] = MappingProxyType(
    {SetFlightTime: set_flight_time, BurnFrom: burn_from, PumpAcross: pump_across, FillTank: fill_tank}
)
"""What it does to an airframe that flies on its tanks, by the class of the command."""
