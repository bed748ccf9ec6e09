"""The hanging bar: weights on a bar that hangs by a pin from a carriage on an overhead rail."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import Literal

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

FADE_S = 1.0
"""A swing fades to 1/e in this time, s: from a few degrees it is at rest after about 6 s, so that a class
sees the end. Longer and they look away; shorter and the bar seems to hang in oil."""

MOST_DAMPED = 0.9
"""The most damping, as a share of critical. With it a bar on a low pin is at rest within 6 s; at 0.7 it rocks
for 2 s longer, and over 1 it creeps."""

REST_RAD = 1e-3
"""Nearer to its end than this, and slower than this in a second, the bar is at rest: half a pixel at
the end of a bar of 1000. Smaller, and a class waits for what nobody can see."""

LEVEL = Swing(angle_rad=0.0, rate_rad_s=0.0)
"""Held level, not yet let go."""

AT_REST_LEVEL = Swing(angle_rad=0.0, rate_rad_s=0.0, settled=True)
"""Let go and staying level."""


NO_EXTENT: Shape = Point()


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
    shape: Shape = NO_EXTENT
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
    """What decides the motion, worked out once when the bar is let go, since it then stays the same.

    pivot: with the damping that is used.  end: where it comes to rest.
    """

    pivoted: Pivoted
    pivot: Pivot
    end: Swing

    def swung(self, swing: Swing) -> Swing:
        """The swing one tick later."""
        after = swing_tick(self.pivoted, self.pivot, swing, TICK_S)
        off_rad = abs(after.angle_rad - self.end.angle_rad)
        near = off_rad < REST_RAD and abs(after.rate_rad_s) < REST_RAD
        return self.end if near else after


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

    @property
    def ids(self) -> tuple[int, ...]:
        """Those of the weights, in order."""
        return tuple(weight.id for weight in self.weights)

    @property
    def names(self) -> tuple[str, ...]:
        """What all is called: the weights in order, then the bar."""
        return (*(weight.name for weight in self.weights), self.bar.name)

    def called(self, names: tuple[str, ...]) -> HangingBar:
        """The same with other names of the weights."""
        weights = zip(self.weights, names[: len(self.weights)], strict=True)
        return replace(self, weights=tuple(replace(weight, name=name) for weight, name in weights))

    def stilled(self) -> HangingBar:
        """The bar held level again."""
        return self if self.held else replace(self, held=True, swing=LEVEL, turning=None)

    def released(self) -> HangingBar:
        """The bar just let go. One that balances exactly has come to rest already."""
        if not self.held:
            return self
        turning = turning_of(self.parts, self.pivot)
        if turning.end == AT_REST_LEVEL:
            return replace(self, held=False, swing=AT_REST_LEVEL)
        return replace(self, held=False, swing=LEVEL, turning=turning)

    def ticked(self) -> HangingBar:
        """The bar one tick later."""
        if not self.moving:
            return self
        turning = self.turning or turning_of(self.parts, self.pivot)
        return replace(self, swing=turning.swung(self.swing))

    def at_end(self) -> HangingBar:
        """The bar where it comes to rest in the end, however long it would take to get there."""
        if not self.moving:
            return self
        turning = self.turning or turning_of(self.parts, self.pivot)
        return replace(self, swing=turning.end)


def turning_of(parts: tuple[Part, ...], pivot: Pivot) -> Turning:
    """What decides the motion of a bar on its pivot, with everything that it carries.  Raises MechanicsError."""
    turned = pivoted(parts, pivot)
    damping_kg_m2_s = pivot.damping_kg_m2_s or settling_damping_kg_m2_s(turned)
    return Turning(
        pivoted=turned,
        pivot=replace(pivot, damping_kg_m2_s=damping_kg_m2_s),
        end=_end(turn_about(parts, pivot), pivot),
    )


def _end(turn: Turn, pivot: Pivot) -> Swing:
    """Where a bar let go level comes to rest: level, at a tilt that holds it, or against a stop."""
    if turn.goes == "level":
        return AT_REST_LEVEL
    if turn.tilt_rad is not None:
        return Swing(angle_rad=turn.tilt_rad, rate_rad_s=0.0, settled=True)
    side: Literal[-1, 1] = 1 if turn.goes == "left" else -1
    return Swing(angle_rad=side * pivot.stop_rad, rate_rad_s=0.0, stop=side, settled=True)


def settling_damping_kg_m2_s(turned: Pivoted) -> float:
    """The damping that brings a swing to rest in about 6 s, kg·m²/s; 0 where nothing swings back.

    A pin through or below the balance point has no swing to fade: damping would only hold up the fall.
    """
    if turned.drop_kg_m <= 0.0:
        return 0.0
    rate_rad_s = math.sqrt(STANDARD_GRAVITY_M_S2 * turned.drop_kg_m / turned.inertia_kg_m2)
    return 2.0 * turned.inertia_kg_m2 * min(1.0 / FADE_S, MOST_DAMPED * rate_rad_s)
