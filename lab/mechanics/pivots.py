"""A build on one pivot: which end drops, how far it tilts, how it would swing.

Along is x, to the right; up is z; anticlockwise is positive.  Cords of hung parts are taken to stay upright,
so a hung part acts as a point at its hook.
"""

from collections.abc import Iterable
from dataclasses import KW_ONLY, dataclass
from math import atan2, copysign, cos, hypot, isfinite, pi, radians, sqrt
from typing import Literal

from lab.mechanics.checks import (
    STANDARD_GRAVITY_M_S2,
    MechanicsError,
    finite,
    not_negative,
    positive,
)
from lab.mechanics.parts import Part, added, checked

Side = Literal["left", "right", "level"]

LEVEL_SHARE = 1e-9
"""A moment under this share of all the moments put together counts as none.  Round-off in a sum of many parts
is some 1e-15; the least difference a bench can be set to is some 1e-5.  Larger, near misses would stay up."""

DEFAULT_STOP_RAD = radians(20.0)


@dataclass(frozen=True, slots=True)
class Pivot:
    """What a build turns about.

    at_m: place along.  up_m: height.  stop_rad: where a stop catches it, to either side, at most π.
    pad_m: half the width of a flat rest under the build; 0 is a pin through it.
    damping_kg_m2_s: torque per rate of turning that slows it.  Raises MechanicsError.
    """

    at_m: float
    _: KW_ONLY
    up_m: float = 0.0
    stop_rad: float = DEFAULT_STOP_RAD
    pad_m: float = 0.0
    damping_kg_m2_s: float = 0.0

    def __post_init__(self) -> None:
        put = object.__setattr__
        put(self, "at_m", finite("place of the pivot", self.at_m, "m"))
        put(self, "up_m", finite("height of the pivot", self.up_m, "m"))
        put(self, "stop_rad", positive("stop of the pivot", self.stop_rad, "rad"))
        put(self, "pad_m", not_negative("pad of the pivot", self.pad_m, "m"))
        put(self, "damping_kg_m2_s", not_negative("damping of the pivot", self.damping_kg_m2_s, "kg m²/s"))
        if self.stop_rad > pi:
            raise MechanicsError(f"stop of the pivot is {self.stop_rad} rad; it must be at most half a turn, π")


@dataclass(frozen=True, slots=True, kw_only=True)
class Turn:
    """What a build on a pivot does when let go.

    moment_kg_m: Σ mass × (pivot − at), anticlockwise positive.  scale_kg_m: the same with every term counted
    up.  goes: the end that drops.  tilt_rad: where it comes to rest, anticlockwise positive, 0 when level;
    None where nothing holds it before the stop.
    """

    moment_kg_m: float
    scale_kg_m: float
    goes: Side
    tilt_rad: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Pivoted:
    """A build as its pivot feels it.

    inertia_kg_m2: about the pivot's axis.  mass_kg: in all.  lever_kg_m: Σ m (x − x_p), clockwise positive;
    exactly 0 where it counts as none.  drop_kg_m: Σ m (z_p − z), positive where it hangs below the pivot.
    """

    inertia_kg_m2: float
    mass_kg: float
    lever_kg_m: float
    drop_kg_m: float


def turn_about(parts: Iterable[Part], pivot: Pivot) -> Turn:
    """Which end of a build drops on its pivot, and where it comes to rest.

    Level where the moment is at most 1e-9 of `scale_kg_m`, or the balance point lies over the pad.  Off the
    pad it tilts about the pad's near edge.  Raises MechanicsError.  Source: S-03.
    """
    build = checked(parts)
    body = pivoted(build, pivot)
    moment = added(part.signed_mass_kg * (pivot.at_m - part.at_m[0]) for part in build)
    scale = added(part.mass_kg * abs(pivot.at_m - part.at_m[0]) for part in build)
    goes = side_of(moment, over_kg_m=pivot.pad_m * body.mass_kg, scale_kg_m=scale)
    tilt: float | None = 0.0
    if goes != "level":
        edged = on_edge(body, pivot, side=goes)
        tilt = atan2(-edged.lever_kg_m, edged.drop_kg_m)
        if abs(tilt) >= pivot.stop_rad:
            tilt = None
    return Turn(moment_kg_m=moment, scale_kg_m=scale, goes=goes, tilt_rad=tilt)


def side_of(moment_kg_m: float, *, over_kg_m: float, scale_kg_m: float) -> Side:
    """The end that an anticlockwise moment drops; level up to `over_kg_m` and a share of the scale.  Source: S-03."""
    if abs(moment_kg_m) <= over_kg_m + LEVEL_SHARE * scale_kg_m:
        return "level"
    return "left" if moment_kg_m > 0.0 else "right"


def pivoted(parts: Iterable[Part], pivot: Pivot) -> Pivoted:
    """A build as its pivot feels it: clamped parts with their shape, hung parts as points at their hooks.

    Raises MechanicsError.  Source: S-05.
    """
    build = checked(parts)
    away = [(part.at_m[0] - pivot.at_m, part.at_m[2] - pivot.up_m) for part in build]
    both = tuple(zip(build, away, strict=True))
    mass = added(part.signed_mass_kg for part in build)
    own = added(part.own_inertia_kg_m2[1][1] for part in build if part.hold == "clamped")
    inertia = own + added(part.signed_mass_kg * (x * x + z * z) for part, (x, z) in both)
    return Pivoted(
        inertia_kg_m2=max(inertia, 0.0),
        mass_kg=mass,
        lever_kg_m=_snapped([part.signed_mass_kg * x for part, (x, _) in both], pivot.pad_m * mass),
        drop_kg_m=_snapped([-part.signed_mass_kg * z for part, (_, z) in both], 0.0),
    )


def _snapped(terms: list[float], edge_kg_m: float) -> float:
    """The sum; exactly 0, or exactly over the pad's edge, where it is beyond it by round-off only.

    A bar balanced on an unstable pin would otherwise creep away from level in a few seconds.
    """
    total = added(terms)
    slack = LEVEL_SHARE * added(abs(term) for term in terms)
    if abs(total) <= slack:
        return 0.0
    return copysign(edge_kg_m, total) if edge_kg_m < abs(total) <= edge_kg_m + slack else total


def on_edge(body: Pivoted, pivot: Pivot, *, side: Side) -> Pivoted:
    """The same build as the pad's left or right edge feels it; unchanged where there is no pad."""
    if pivot.pad_m == 0.0 or side == "level":
        return body
    edge = pivot.pad_m if side == "right" else -pivot.pad_m
    inertia = body.inertia_kg_m2 - 2.0 * edge * body.lever_kg_m + body.mass_kg * edge * edge
    return Pivoted(
        inertia_kg_m2=max(inertia, 0.0),
        mass_kg=body.mass_kg,
        lever_kg_m=body.lever_kg_m - edge * body.mass_kg,
        drop_kg_m=body.drop_kg_m,
    )


def small_swing_period_s(body: Pivoted) -> float | None:
    """The time of one small swing about the rest position, s; None where it would not swing back.

    Raises nothing.  Source: S-05.
    """
    if body.drop_kg_m <= 0.0:
        return None
    turning_back = STANDARD_GRAVITY_M_S2 * hypot(body.lever_kg_m, body.drop_kg_m)
    return 2.0 * pi * sqrt(body.inertia_kg_m2 / turning_back)


def large_swing_period_s(body: Pivoted, amplitude_rad: float) -> float | None:
    """The time of one swing of any size, s, by the elliptic integral; None where it would not swing back.

    amplitude_rad: the farthest from the rest position, under π.  Raises MechanicsError.  Source: S-07.
    """
    if not (isfinite(amplitude_rad) and abs(amplitude_rad) < pi):
        raise MechanicsError(f"amplitude is {amplitude_rad} rad; it must be under half a turn, π")
    small = small_swing_period_s(body)
    if small is None:
        return None
    first, second = 1.0, cos(amplitude_rad / 2.0)
    # The arithmetic-geometric mean doubles its right digits each round; six rounds reach float64 from 179.9°.
    for _ in range(8):
        first, second = (first + second) / 2.0, sqrt(first * second)
    return small / first
