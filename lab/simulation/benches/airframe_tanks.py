"""A flight on what the tanks hold: time runs, is stopped and dragged; what is in them is exact at any instant.

The tanks of the bench are as they were at take-off.  What is chosen in flight holds from then on; what is burned is
burned.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from math import inf

from lab.mechanics import (
    BalancePath,
    Burn,
    LimitCourse,
    Limits,
    Part,
    Pump,
    Tank,
    TankCourse,
    balance_path,
    limit_crossings,
    tank_course,
)
from lab.mechanics.tanks import BurnOrder
from lab.simulation.clock import TICK_S

PACE = 60.0
"""Seconds of flight in one of the learner's: half an hour is flown while a class looks on."""

ALL_GONE_S = 1800.0
"""In how long a rate that nobody chose burns all there is."""

STILL_S = 1800.0
"""How long a flight is followed on after its last choice where nothing is burned any more."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BurnStep:
    """So much a second, from these tanks, from an instant on, until the next step.  tanks: names, the first first."""

    from_s: float
    rate_m3_s: float
    tanks: tuple[str, ...]
    order: BurnOrder = "together"


@dataclass(frozen=True, slots=True, kw_only=True)
class PumpRun:
    """A pump that was switched on.  until_s: when it was switched off; None where it was not."""

    source: str
    target: str
    rate_m3_s: float
    from_s: float = 0.0
    until_s: float | None = None

    def runs_at(self, at_s: float) -> bool:
        """Whether it is switched on at an instant."""
        return self.from_s <= at_s and (self.until_s is None or at_s < self.until_s)


@dataclass(frozen=True, slots=True, kw_only=True)
class TankFlight:
    """How it is flown, and how far.

    steps: of burning, at least one, the first from take-off on, each later than the one before.  pumps: in the order
    they were switched on.  set_s: the instant at which time was last set or stopped; ticks: how many ran since.
    end_s: when the course ends; known while it runs.  pace: seconds of flight in a second.
    """

    steps: tuple[BurnStep, ...]
    pumps: tuple[PumpRun, ...] = ()
    held: bool = True
    set_s: float = 0.0
    ticks: int = 0
    end_s: float | None = None
    pace: float = PACE

    @property
    def at_s(self) -> float:
        """Time since take-off, s; counted in whole ticks, so that no round-off gathers."""
        return min(self.set_s + self.ticks * TICK_S * self.pace, inf if self.end_s is None else self.end_s)

    @property
    def moving(self) -> bool:
        """Whether the next tick changes anything."""
        return not self.held and self.end_s is not None and self.at_s < self.end_s

    def stilled(self) -> TankFlight:
        """Stopped where it is."""
        return self if self.held else replace(self, held=True, set_s=self.at_s, ticks=0, end_s=None)

    def released(self, tanks: tuple[Tank, ...]) -> TankFlight:
        """Time runs from where it is.  tanks: as they were at take-off.  Raises MechanicsError."""
        if not self.held:
            return self
        end_s = self.course(tanks).legs[-1].end_s
        return replace(self, held=False, set_s=min(self.set_s, end_s), ticks=0, end_s=end_s)

    def ticked(self) -> TankFlight:
        """One tick later."""
        return replace(self, ticks=self.ticks + 1) if self.moving else self

    def at_end(self) -> TankFlight:
        """As it ends."""
        return self if self.end_s is None else replace(self, set_s=self.end_s, ticks=0)

    def set_to(self, at_s: float, tanks: tuple[Tank, ...]) -> TankFlight:
        """Stopped at another instant of the course, the nearest to what is asked."""
        end_s = self.course(tanks).legs[-1].end_s
        # Adding 0.0 turns −0.0 into 0.0: equal times must be the same bits.
        return replace(self.stilled(), set_s=min(max(at_s, 0.0), end_s) + 0.0)

    def burning(self, rate_m3_s: float, names: tuple[str, ...], order: BurnOrder = "together") -> TankFlight:
        """Burned so from now on; what was planned for later is dropped."""
        now = self.stilled()
        step = BurnStep(from_s=now.set_s, rate_m3_s=rate_m3_s, tanks=names, order=order)
        return replace(now, steps=(*(each for each in now.steps if each.from_s < now.set_s), step))

    def pumping(self, source: str, target: str, rate_m3_s: float | None) -> TankFlight:
        """Pumped across from now on, no more the other way; a rate of None switches off what runs between the two."""
        now, between = self.stilled(), {source, target}
        kept = []
        for run in now.pumps:
            if {run.source, run.target} == between:
                if run.from_s >= now.set_s:
                    continue
                if run.until_s is None or run.until_s > now.set_s:
                    run = replace(run, until_s=now.set_s)
            kept.append(run)
        if rate_m3_s is not None:
            kept.append(PumpRun(source=source, target=target, rate_m3_s=rate_m3_s, from_s=now.set_s))
        return replace(now, pumps=tuple(kept))

    def course(self, tanks: tuple[Tank, ...]) -> TankCourse:
        """What all this does to the tanks.  Raises MechanicsError."""
        return _course(self.steps, self.pumps, tanks)

    def tanks_at(self, tanks: tuple[Tank, ...], at_s: float | None = None) -> tuple[Tank, ...]:
        """The tanks with what is in them at an instant of the course; now, where none is given."""
        course = self.course(tanks)
        wanted_s = min(self.at_s if at_s is None else at_s, course.legs[-1].end_s)
        contents = course.contents_at(wanted_s)
        return tuple(replace(tank, contents_m3=each) for tank, each in zip(tanks, contents, strict=True))

    def path(self, parts: tuple[Part, ...], tanks: tuple[Tank, ...]) -> BalancePath:
        """How the balance point goes.  parts: all but the tanks' contents.  Raises MechanicsError."""
        return balance_path(parts, self.course(tanks))

    def limit_course(self, parts: tuple[Part, ...], tanks: tuple[Tank, ...], limits: Limits) -> LimitCourse:
        """When it leaves its limits and comes back, exact.  Raises MechanicsError."""
        return limit_crossings(self.path(parts, tanks), limits)


def first_flight(tanks: tuple[Tank, ...]) -> TankFlight:
    """At take-off, all tanks burned together, gone in half an hour."""
    rate = sum(tank.contents_m3 for tank in tanks) / ALL_GONE_S
    return TankFlight(steps=(BurnStep(from_s=0.0, rate_m3_s=rate, tanks=tuple(tank.name for tank in tanks)),))


@lru_cache(maxsize=32)
def _course(steps: tuple[BurnStep, ...], pumps: tuple[PumpRun, ...], tanks: tuple[Tank, ...]) -> TankCourse:
    """While time runs every frame asks for the same one many times."""
    ends = [step.from_s for step in steps[1:]]
    plan = [
        Burn(
            rate_m3_s=step.rate_m3_s,
            tanks=step.tanks,
            order=step.order,
            for_s=None if end is None else end - step.from_s,
        )
        for step, end in zip(steps, (*ends, None), strict=True)
    ]
    runs = [
        Pump(
            source=run.source,
            target=run.target,
            rate_m3_s=run.rate_m3_s,
            from_s=run.from_s,
            until_s=inf if run.until_s is None else run.until_s,
        )
        for run in pumps
    ]
    chosen = [step.from_s for step in steps] + [run.from_s for run in pumps]
    until_s = max(chosen) + STILL_S if steps[-1].rate_m3_s == 0.0 else None
    return tank_course(tanks, plan, pumps=runs, until_s=until_s)
