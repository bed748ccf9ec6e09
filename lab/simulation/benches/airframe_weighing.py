"""An airframe weighed: let down on three scales, then once more with its nose raised; so its balance point is known.

The plates give and the windows settle as on the bench of scales.  While the nose goes up the windows lag behind what
the scales bear by the same time.  One whose balance point lies beyond its scales tips off them as a free body does.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from math import exp, radians

from lab.mechanics import (
    STANDARD_GRAVITY_M_S2,
    MechanicsError,
    PadMotion,
    Part,
    ScaleReading,
    Toppling,
    Vector,
    Weighing,
    moment_sum,
    pad_tick,
    pressed_kg,
    support_reactions_n,
    toppling_of,
    weighed_balance_point,
)
from lab.mechanics.axes import as_vector, rotation
from lab.simulation.benches.scales import LOWERS_S, LYING, SETTLES_S, STAND_SHARE, STEADY, Scale
from lab.simulation.clock import TICK_S

RAISES_RAD_S = radians(8.0)
"""How fast the nose is raised: slow enough that the windows follow, so quick that a class looks on."""

Readings = tuple[float, float, float]
NOTHING: Readings = (0.0, 0.0, 0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class AirframeWeighing:
    """What stands how on what.

    scales: three; at_m is the place of the airframe that stands on each.  guessed_kg: what the first will read.
    held: over the scales, by hand.  raised: how far it is over them, as a share of where it is held.
    parts: all that weighs; none while held.  shown_kg: what the windows show.  pitch_rad: how far the nose is raised
    now; raise_rad: how far it will be.  level_kg: what the scales read when all was level, noted before the nose went
    up.  tipping: None while it stands.  pressed_kg: what then still presses.
    """

    scales: tuple[Scale, Scale, Scale]
    guessed_kg: float | None = None
    held: bool = True
    raised: float = 1.0
    parts: tuple[Part, ...] = ()
    shown_kg: Readings = NOTHING
    pitch_rad: float = 0.0
    raise_rad: float = 0.0
    level_kg: Readings | None = None
    tipping: Toppling | None = None
    motion: PadMotion = LYING
    pressed_kg: float = 0.0

    # --- what the scales bear and show ----------------------------------------------------------------------

    @property
    def places_m(self) -> tuple[Vector, Vector, Vector]:
        """Where the airframe stands on the scales, in its own coordinates."""
        first, second, third = self.scales
        return first.at_m, second.at_m, third.at_m

    @property
    def mass_kg(self) -> float:
        """All that stands there; 0 while held."""
        return _whole(self.parts).mass_kg if self.parts else 0.0

    @property
    def borne_kg(self) -> Readings:
        """What each scale bears now."""
        if self.held or self.raised:
            return NOTHING
        if self.tipping is not None:
            first, second, third = self.tipping.bears
            return first * self.pressed_kg, second * self.pressed_kg, third * self.pressed_kg
        return borne_by(self.parts, self.places_m, self.pitch_rad) or NOTHING

    @property
    def readings_kg(self) -> Readings:
        """What each window shows now."""
        return self.borne_kg if self.tipping is not None else self.shown_kg

    @property
    def steady(self) -> bool:
        """Whether it stands, nothing moves, and the windows can be read."""
        return not self.held and self.tipping is None and not self.moving

    @property
    def tipped(self) -> bool:
        """Whether it has tipped off its scales, or is about to."""
        return self.tipping is not None

    @property
    def weighings(self) -> tuple[Weighing, ...]:
        """What has been weighed so far: level, and with the nose raised; none before the windows are steady."""
        if not self.steady:
            return self._noted
        now = self._weighing(self.shown_kg, self.pitch_rad)
        return (now,) if not self.pitch_rad else (*self._noted, now)

    @property
    def read_m(self) -> tuple[float, float, float | None] | None:
        """The balance point by the readings alone, along, across, up.

        None before the first weighing; up is None before the second.
        """
        weighed = self.weighings
        if not weighed:
            return None
        if len(weighed) > 1:
            return weighed_balance_point(weighed).at_m
        along, across, _ = moment_sum(weighed[0].parts).balance_point_m
        return along, across, None

    @property
    def _noted(self) -> tuple[Weighing, ...]:
        return () if self.level_kg is None else (self._weighing(self.level_kg, 0.0),)

    def _weighing(self, masses_kg: Readings, pitch_rad: float) -> Weighing:
        readings = tuple(
            ScaleReading(name=str(scale.id), mass_kg=mass_kg, at_m=scale.at_m)
            for scale, mass_kg in zip(self.scales, masses_kg, strict=True)
        )
        return Weighing(readings=readings, pitch_rad=pitch_rad)

    # --- what is done to it ---------------------------------------------------------------------------------

    def touched(self) -> AirframeWeighing:
        """Held over the scales, with what was guessed forgotten: the airframe is not what it was."""
        return replace(self.stilled(), guessed_kg=None)

    def stilled(self) -> AirframeWeighing:
        """Held level over the scales."""
        return self if self.held else AirframeWeighing(scales=self.scales, guessed_kg=self.guessed_kg)

    def released(self, parts: Iterable[Part]) -> AirframeWeighing:
        """Just let go of, on its way down.

        parts: all that weighs.  Raises MechanicsError where no scales could hold it.
        """
        if not self.held:
            return self
        found = replace(self, held=False, parts=tuple(parts))
        _ = borne_by(found.parts, found.places_m, 0.0)  # asked now: once it is on its way nobody could be told
        return found

    def with_scales(self, scales: tuple[Scale, Scale, Scale]) -> AirframeWeighing:
        """On scales that stand elsewhere: level again where it stood, tipping where they can't hold it now."""
        moved = replace(self, scales=scales, guessed_kg=None, level_kg=None, pitch_rad=0.0, raise_rad=0.0)
        return moved if self.held else moved.set_down()

    def raising(self, raise_rad: float) -> AirframeWeighing:
        """With the nose on its way up to an angle, or down to level.  The level readings are noted first."""
        noted = self.shown_kg if self.steady and not self.pitch_rad else self.level_kg
        return replace(self, raise_rad=raise_rad, level_kg=noted)

    def holds_at(self, pitch_rad: float) -> bool:
        """Whether its scales hold it with the nose so far up."""
        return borne_by(self.parts, self.places_m, pitch_rad) is not None

    def set_down(self) -> AirframeWeighing:
        """With its scales where they are now: it stands, or begins to tip."""
        if self.held or self.raised or self.tipping is not None or self.holds_at(0.0):
            return self
        tipping = toppling_of(self.parts, self.places_m, underside_m=self._feet_m, floor_m=self.floor_m)
        return replace(self, tipping=tipping, pressed_kg=tipping.body.mass_kg)

    @property
    def _feet_m(self) -> float:
        return min(place[2] for place in self.places_m)

    @property
    def floor_m(self) -> float:
        """The height of the table, for parts that are let down on the scales."""
        return floor_of(self.parts, self.places_m)

    # --- what time does -------------------------------------------------------------------------------------

    @property
    def moving(self) -> bool:
        """Whether the next tick changes anything."""
        if self.held:
            return False
        if self.tipping is not None:
            return self.motion.phase != "down"
        return self.raised > 0.0 or self.pitch_rad != self.raise_rad or self.shown_kg != self.borne_kg

    def ticked(self) -> AirframeWeighing:
        """One tick later."""
        if not self.moving:
            return self
        if self.tipping is not None:
            return self._tipped(self.tipping)
        if self.raised:
            return replace(self, raised=max(0.0, self.raised - TICK_S / LOWERS_S)).set_down()
        far = self.raise_rad - self.pitch_rad
        step = min(max(far, -RAISES_RAD_S * TICK_S), RAISES_RAD_S * TICK_S)
        turned = replace(self, pitch_rad=self.raise_rad if step == far else self.pitch_rad + step)
        return replace(turned, shown_kg=turned.settling())

    def settling(self) -> Readings:
        """What the windows show a tick later."""
        borne = self.borne_kg
        given = 1.0 - exp(-TICK_S / SETTLES_S)
        first, second, third = (
            shown + given * (bears - shown) for shown, bears in zip(self.shown_kg, borne, strict=True)
        )
        off = max(abs(shown - bears) for shown, bears in zip((first, second, third), borne, strict=True))
        still = self.pitch_rad == self.raise_rad and off < STEADY * self.mass_kg
        return borne if still else (first, second, third)

    def at_end(self) -> AirframeWeighing:
        """Where it comes to rest in the end: steady, or down where it is."""
        if not self.moving:
            return self
        if self.tipping is not None:
            still = replace(self.motion, phase="down", rate_rad_s=0.0, vx_m_s=0.0, vz_m_s=0.0)
            return replace(self, motion=still, pressed_kg=pressed_kg(self.tipping, self.motion, still, TICK_S))
        down = replace(self, raised=0.0, pitch_rad=self.raise_rad).set_down()
        return down if down.tipping is not None else replace(down, shown_kg=down.borne_kg)

    def _tipped(self, tipping: Toppling) -> AirframeWeighing:
        motion = pad_tick(tipping.body, tipping.edge_m, 0.0, tipping.floor_m, self.motion, TICK_S)
        # The very same motion back: it hangs on the edge and stays.
        if motion is self.motion:
            motion = replace(motion, phase="down")
        return replace(self, motion=motion, pressed_kg=pressed_kg(tipping, self.motion, motion, TICK_S))


def floor_of(parts: Sequence[Part], places_m: Sequence[Vector]) -> float:
    """The height of the table under an airframe on scales that stand so, in its own coordinates, m."""
    lows = [part.at_m[2] - part.shape.reach_m((0.0, 0.0, -1.0)) for part in parts]
    ends = [part.at_m[0] + sense * part.shape.reach_m((sense, 0.0, 0.0)) for part in parts for sense in (-1.0, 1.0)]
    return min(*lows, *(place[2] for place in places_m)) - STAND_SHARE * (max(ends) - min(ends))


@lru_cache(maxsize=64)
def borne_by(
    parts: tuple[Part, ...], places_m: tuple[Vector, Vector, Vector], pitch_rad: float
) -> tuple[float, float, float] | None:
    """What three scales bear of an airframe whose nose is raised, kg; None where it tips off them.

    Raises MechanicsError where they stand in one line.
    """
    turn = rotation((0.0, pitch_rad, 0.0))
    whole = _whole(parts)
    turned = replace(whole, at_m=as_vector(turn @ whole.at_m))
    forces_n = support_reactions_n([turned], [as_vector(turn @ place) for place in places_m])
    if forces_n is None:
        return None
    first, second, third = (force / STANDARD_GRAVITY_M_S2 for force in forces_n)
    return first, second, third


@lru_cache(maxsize=16)
def _whole(parts: tuple[Part, ...]) -> Part:
    """All of it in its balance point: what scales feel.  Raises MechanicsError."""
    total = moment_sum(parts)
    if total.mass_kg <= 0.0:
        raise MechanicsError(f"the airframe comes to {total.mass_kg:.6g} kg; it must weigh something")
    return Part(name="airframe", mass_kg=total.mass_kg, at_m=total.balance_point_m)
