"""An airframe tossed from the hand: thrown, it flies by the mechanics' own ticks until it lands.

What it needs to know of the airframe it is given when it is thrown; that stays as it is while it flies.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import lru_cache

from lab.mechanics import (
    Aerodynamics,
    Airframe,
    Flight,
    Launch,
    Part,
    Surface,
    Toss,
    TossMotion,
    aerodynamics,
    inertia_about_kg_m2,
    launched,
    moment_sum,
    toss,
    toss_tick,
)
from lab.simulation.clock import TICK_S

PATH_TICKS = 4
"""Ticks from one noted point of a path to the next: 20 ms, a hand's breadth at the speed of a brisk throw."""

LONGEST_S = 60.0
"""A flight not down by then is ended where it is: a meadow is not longer."""

AS_SET = Launch()
"""Thrown at the glide that it is set for, its nose a little high."""

PathPoint = tuple[float, float, float]
"""A noted place of a path: ahead and up, m; pitch, rad."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FlownToss:
    """A toss that is over.  path: as in TossState.  margin: what it flew with, in mean chords.  flight: what it did."""

    path: tuple[PathPoint, ...]
    margin: float
    flight: Flight


@dataclass(frozen=True, slots=True, kw_only=True)
class TossState:
    """A toss.

    launch: how it is thrown.  guess: what it will do, said before.  airframe: what flies; None while held.
    motion: where it is now; None while held.  ticks: flown.  path: noted points so far, the launch first.
    last: the toss before this one, or None.
    """

    launch: Launch = AS_SET
    guess: Flight | None = None
    airframe: Airframe | None = None
    motion: TossMotion | None = None
    ticks: int = 0
    path: tuple[PathPoint, ...] = ()
    last: FlownToss | None = None

    @property
    def held(self) -> bool:
        """Whether it is still in the hand."""
        return self.motion is None

    @property
    def landed(self) -> bool:
        """Whether it is down, or has flown as long as it is watched."""
        return self.motion is not None and (self.motion.up_m <= 0.0 or self.ticks * TICK_S >= LONGEST_S)

    @property
    def moving(self) -> bool:
        """Whether the next tick changes anything."""
        return not self.held and not self.landed

    @property
    def flown(self) -> Toss | None:
        """What the throw comes to, were there no floor: its verdict, and where it is beyond the model. None while held.

        Work for `toss` once a throw; it is not to be shown before `landed`.
        """
        return None if self.airframe is None else _toss(self.airframe, self.launch)

    def released(self, parts: Iterable[Part], surfaces: tuple[Surface, ...]) -> TossState:
        """Just thrown.  Raises MechanicsError where nothing on it flies."""
        airframe = tossed_airframe(tuple(parts), surfaces)
        motion = launched(_air(airframe), self.launch)
        return replace(self.stilled(), airframe=airframe, motion=motion, path=(_noted(motion),))

    def stilled(self) -> TossState:
        """Back in the hand. A toss that landed is kept as the last one; one broken off is not."""
        last = self.last
        if self.landed and self.flown is not None:
            last = FlownToss(path=self.path, margin=self.flown.margin, flight=self.flown.flight)
        return replace(self, airframe=None, motion=None, ticks=0, path=(), last=last)

    def ticked(self) -> TossState:
        """One tick later."""
        if self.airframe is None or self.motion is None or not self.moving:
            return self
        motion = toss_tick(_air(self.airframe), self.motion)
        later = replace(self, motion=motion, ticks=self.ticks + 1)
        if later.ticks % PATH_TICKS and later.moving:
            return later
        return replace(later, path=(*self.path, _noted(motion)))

    def at_end(self) -> TossState:
        """Where it lands."""
        state = self
        while state.moving:
            state = state.ticked()
        return state


def tossed_airframe(parts: tuple[Part, ...], surfaces: tuple[Surface, ...]) -> Airframe:
    """What flies, of what is on it.  Raises MechanicsError where no surface lies flat."""
    total = moment_sum(parts)
    at_m = total.balance_point_m
    return Airframe(
        surfaces=surfaces,
        mass_kg=total.mass_kg,
        balance_point_m=at_m,
        pitch_inertia_kg_m2=float(inertia_about_kg_m2(parts, at_m)[1][1]),
    )


def _noted(motion: TossMotion) -> PathPoint:
    return motion.ahead_m, motion.up_m, motion.pitch_rad


@lru_cache(maxsize=8)
def _air(airframe: Airframe) -> Aerodynamics:
    """Asked for at every tick; its vortex lattice is solved once."""
    return aerodynamics(airframe)


@lru_cache(maxsize=8)
def _toss(airframe: Airframe, launch: Launch) -> Toss:
    return toss(airframe, launch)
