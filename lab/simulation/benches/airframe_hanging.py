"""An airframe hung by one of its points: held level, let go, it swings three ways at once to rest under its hook.

What it needs to know of the parts it is given when it is let go; they stay as they are while it hangs.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import lru_cache
from math import dist, radians, sin

from lab.mechanics import (
    HungBody,
    MechanicsError,
    Part,
    PlumbCrossing,
    PlumbLine,
    SpatialSwing,
    Vector,
    hung_body,
    plumb_crossing,
    spatial_tick,
)
from lab.simulation.airframe_commands import Nose
from lab.simulation.benches.hanging_bar import FADE_S, MOST_DAMPED, REST_RAD
from lab.simulation.clock import TICK_S
from lab.simulation.commands import Side

LEVEL_RAD = radians(0.5)
"""A nose or a wing nearer to level than this hangs level: a centimetre at the end of a metre, which no eye tells."""

BREATH_RAD = 1e-3
"""How far a body that stands on its hook to the last digit is nudged, nose down: nothing keeps standing on a point."""

HELD_LEVEL = SpatialSwing()
"""Held level, not yet let go."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HangLine:
    """A plumb line drawn on it. through_m: the hook it hung by.  down: its direction, of length one."""

    through_m: Vector
    down: Vector


@dataclass(frozen=True, slots=True, kw_only=True)
class AirframeHanging:
    """What hangs how.

    hook_m: the place it hangs by, along, across, up.  held: level, by hand.  swing: how it hangs now.
    body: what decides its motion; None while held.  lines: plumb lines drawn on it so far, in its own coordinates.
    guess_nose, guess_wing: how it will hang; of the wings the side that hangs lower.
    """

    hook_m: Vector
    held: bool = True
    swing: SpatialSwing = HELD_LEVEL
    body: HungBody | None = None
    lines: tuple[HangLine, ...] = ()
    guess_nose: Nose | None = None
    guess_wing: Side | None = None

    @property
    def moving(self) -> bool:
        """Whether the next tick changes anything."""
        return not self.held and not self.swing.settled

    @property
    def at_rest(self) -> bool:
        """Whether it was let go and hangs still."""
        return not self.held and self.swing.settled

    @property
    def hangs_any_way(self) -> bool:
        """Whether it was let go and hangs by its balance point, so that it stays as it is held."""
        return self.body is not None and self.body.rest is None

    @property
    def nose(self) -> Nose | None:
        """Which way the nose hangs; None until it hangs still, or where it hangs any way."""
        if not self.at_rest or self.hangs_any_way:
            return None
        along = self.swing.down[0]
        return "level" if abs(along) < sin(LEVEL_RAD) else "up" if along > 0.0 else "down"

    @property
    def wing(self) -> Side | None:
        """Which wing hangs lower; None as for the nose."""
        if not self.at_rest or self.hangs_any_way:
            return None
        across = self.swing.down[1]
        return "level" if abs(across) < sin(LEVEL_RAD) else "right" if across > 0.0 else "left"

    @property
    def upside_down(self) -> bool:
        """Whether its belly looks up."""
        return self.swing.down[2] > 0.0

    @property
    def line(self) -> HangLine | None:
        """The plumb line through the hook of what hangs still; None else, and where it hangs any way."""
        if not self.at_rest or self.hangs_any_way:
            return None
        return HangLine(through_m=self.hook_m, down=self.swing.down)

    @property
    def crossing(self) -> PlumbCrossing | None:
        """Where the lines cross, and how far they scatter; None with fewer than two, or all the same way."""
        return _crossing(self.lines)

    def touched(self) -> AirframeHanging:
        """Held, with what was guessed and drawn forgotten: the airframe is not what it was."""
        return replace(self.stilled(), lines=(), guess_nose=None, guess_wing=None)

    def stilled(self) -> AirframeHanging:
        """Held level."""
        return self if self.held else replace(self, held=True, swing=HELD_LEVEL, body=None)

    def released(self, parts: Iterable[Part]) -> AirframeHanging:
        """Just let go.  parts: all that weighs.  Raises MechanicsError."""
        if not self.held:
            return self
        body = _damped(tuple(parts), self.hook_m)
        swing = HELD_LEVEL
        if body.rest is not None and body.rest[2] > 0.0 and spatial_tick(body, swing).settled:
            swing = SpatialSwing(down=(-BREATH_RAD, 0.0, -1.0))
        return replace(self, held=False, swing=swing, body=body)

    def ticked(self) -> AirframeHanging:
        """One tick later."""
        if not self.moving or self.body is None:
            return self
        swing = spatial_tick(self.body, self.swing, TICK_S)
        rest = self.body.rest
        # Nearer than half a pixel at the end of a wing it hangs still, as everything on a cord does here.
        if rest is not None and max(map(abs, swing.rates_rad_s)) < REST_RAD and dist(swing.down, rest) < REST_RAD:
            swing = SpatialSwing(down=rest, settled=True)
        return replace(self, swing=swing)

    def at_end(self) -> AirframeHanging:
        """Where it comes to rest in the end, however long it would take to get there."""
        if not self.moving or self.body is None:
            return self
        return replace(self, swing=SpatialSwing(down=self.body.rest or self.swing.down, settled=True))

    def drawn(self) -> AirframeHanging:
        """With the plumb line of how it hangs now; the very same where there is none to draw."""
        return self if self.line is None else replace(self, lines=(*self.lines, self.line))


@lru_cache(maxsize=16)
def _damped(parts: tuple[Part, ...], hook_m: Vector) -> HungBody:
    """As its hook feels it, in air so thick that a swing fades while a class looks on."""
    body = hung_body(parts, hook_m)
    slow_s, quick_s = body.paces_s
    # Round its balance point nothing pulls it back; a spin then fades as fast.
    fades_s = min(1.0 / FADE_S, MOST_DAMPED * (slow_s or quick_s)) if quick_s else 1.0 / FADE_S
    return replace(body, drag_s=2.0 * fades_s)


@lru_cache(maxsize=64)
def _crossing(lines: tuple[HangLine, ...]) -> PlumbCrossing | None:
    try:
        return plumb_crossing(PlumbLine(through_m=line.through_m, down=line.down) for line in lines)
    except MechanicsError:
        return None
