"""The hanging bar: weights on a bar that hangs by a pin from a carriage on an overhead rail."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from lab.files import Bar, View
from lab.mechanics import (
    STANDARD_GRAVITY_M_S2,
    MomentSum,
    Part,
    Pivot,
    Pivoted,
    Point,
    Shape,
    Swing,
    Turn,
    Vector,
    moment_sum,
    pivoted,
    swing_tick,
    turn_about,
)
from lab.simulation.clock import TICK_S
from lab.simulation.commands import Hold, Side

MOST_WEIGHTS = 40
"""Weights on one bar. More cannot be told apart or grabbed at any window size."""

RAIL_OVERHANG = 0.04
"""How far the rail goes on beyond each end of the bar, as a share of the bar's length."""

FADE_S = 1.2
"""A swing fades to 1/e in this time, s: after five of them, 6 s, less than 1 % is left, so that a class
sees the end. Longer and they look away; shorter and the bar seems to hang in oil."""

MOST_DAMPED = 0.8
"""The most damping, as a share of critical. At 0.8 a slow bar comes to rest soonest; more and it creeps."""

LEVEL = Swing(angle_rad=0.0, rate_rad_s=0.0)
"""Held level, not yet let go."""

AT_REST_LEVEL = Swing(angle_rad=0.0, rate_rad_s=0.0, settled=True)
"""Let go and staying level."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Hung:
    """A weight on the bar.

    id: unlike any other ever on this bar, kept when it moves.  mass_kg: > 0.  at_m: along, on the bar.
    The other values matter only to builds that state them, and go back into the file as they came.
    """

    id: int
    name: str
    mass_kg: float
    at_m: float
    hold: Hold = "hung"
    across_m: float = 0.0
    up_m: float = 0.0
    shape: Shape = Point()
    inertia_kg_m2: tuple[float, float, float] | tuple[Vector, Vector, Vector] | None = None
    mass_doubt_kg: float = 0.0
    at_doubt_m: Vector = (0.0, 0.0, 0.0)
    set_name: str | None = None
    look: str | None = None

    @property
    def part(self) -> Part:
        """The weight as mechanics sees it."""
        return Part(
            name=self.name,
            mass_kg=self.mass_kg,
            at_m=(self.at_m, self.across_m, self.up_m),
            shape=self.shape,
            inertia_kg_m2=self.inertia_kg_m2,
            hold=self.hold,
            mass_doubt_kg=self.mass_doubt_kg,
            at_doubt_m=self.at_doubt_m,
            set_name=self.set_name,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Turning:
    """What decides the motion, worked out once when the bar is let go, since it then stays the same."""

    pivoted: Pivoted
    pivot: Pivot


@dataclass(frozen=True, slots=True, kw_only=True)
class HangingBar:
    """The whole state of the bench.

    pivot: a pin through the bar, at_m along it.  reference_m: where arms are measured from, along.
    guess: which end the learner says will drop.  held: kept level by the holding cord.
    next_id: the id of the next weight to be hung.  turning: None while held.
    """

    bar: Bar
    weights: tuple[Hung, ...] = ()
    pivot: Pivot
    reference_m: float = 0.0
    guess: Side | None = None
    held: bool = True
    swing: Swing = LEVEL
    title: str = "Hanging bar"
    units: str = "g-cm"
    view: View = "plain"
    next_id: int = 1
    turning: Turning | None = None

    @property
    def parts(self) -> tuple[Part, ...]:
        """Everything that weighs something, the bar first."""
        return (self.bar.as_part(), *(weight.part for weight in self.weights))

    @property
    def sum(self) -> MomentSum:
        """The moment sum about the reference line, the bar's row first."""
        return moment_sum(self.parts, (self.reference_m, 0.0, 0.0))

    @property
    def turn(self) -> Turn:
        """How strongly it turns about the pivot, and which end that makes drop."""
        return turn_about(self.parts, self.pivot)

    @property
    def outcome(self) -> Side | None:
        """Which end dropped, or ``level``; None until it has been let go and has come to rest."""
        return None if self.held or not self.swing.settled else self.turn.goes

    @property
    def moving(self) -> bool:
        """Whether the next tick changes anything."""
        return not self.held and not self.swing.settled

    @property
    def rail_m(self) -> tuple[float, float]:
        """Where the rail begins and ends, along."""
        overhang_m = RAIL_OVERHANG * self.bar.length_m
        return self.bar.left_m - overhang_m, self.bar.right_m + overhang_m

    def weight(self, id: int) -> Hung | None:  # noqa: A002 - the field's own name
        """The weight with this id, or None where it is no longer on the bar."""
        return next((weight for weight in self.weights if weight.id == id), None)

    def stilled(self) -> HangingBar:
        """The bar held level again."""
        return self if self.held else replace(self, held=True, swing=LEVEL, turning=None)

    def released(self) -> HangingBar:
        """The bar just let go. One that balances exactly has come to rest already."""
        if not self.held:
            return self
        if self.turn.goes == "level":
            return replace(self, held=False, swing=AT_REST_LEVEL)
        return replace(self, held=False, swing=LEVEL, turning=self._turning())

    def ticked(self) -> HangingBar:
        """The bar one tick later."""
        if not self.moving:
            return self
        turning = self.turning or self._turning()
        return replace(self, swing=swing_tick(turning.pivoted, turning.pivot, self.swing, TICK_S))

    def at_end(self) -> HangingBar:
        """The bar where it comes to rest in the end, however long it would take to get there."""
        if not self.moving:
            return self
        turn = self.turn
        if turn.goes == "level":
            return replace(self, swing=AT_REST_LEVEL)
        stop_rad = self.pivot.stop_rad
        side = 1 if turn.goes == "left" else -1
        if turn.tilt_rad is not None and abs(turn.tilt_rad) < stop_rad:
            rest = Swing(angle_rad=turn.tilt_rad, rate_rad_s=0.0, settled=True)
        else:
            rest = Swing(angle_rad=side * stop_rad, rate_rad_s=0.0, stop=side, settled=True)
        return replace(self, swing=rest)

    def _turning(self) -> Turning:
        turned = pivoted(self.parts, self.pivot)
        damping_kg_m2_s = self.pivot.damping_kg_m2_s or settling_damping_kg_m2_s(turned)
        return Turning(pivoted=turned, pivot=replace(self.pivot, damping_kg_m2_s=damping_kg_m2_s))


def settling_damping_kg_m2_s(turned: Pivoted) -> float:
    """The damping that brings a swing to rest in about 6 s, kg·m²/s; 0 where nothing swings back.

    A pin through or below the balance point has no swing to fade: damping would only hold up the fall.
    """
    if turned.drop_kg_m <= 0.0:
        return 0.0
    rate_rad_s = math.sqrt(STANDARD_GRAVITY_M_S2 * turned.drop_kg_m / turned.inertia_kg_m2)
    return 2.0 * turned.inertia_kg_m2 * min(1.0 / FADE_S, MOST_DAMPED * rate_rad_s)
