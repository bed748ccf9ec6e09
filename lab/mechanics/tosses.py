"""A toss: an airframe thrown from the hand, seen from the side, about its balance point.

Three degrees of freedom: along, up and pitch.  The airframe flies by `lab.mechanics.airframes`, in still air,
without power, by fixed ticks of a fourth-order Runge-Kutta method; a tick of a quick airframe is divided.

Limits: the vortex lattice's; the air answers at once (no lag of the downwash, no added mass of the air); the
stall is a simple cap.  `out_of_depth` says where a flight went beyond: what is shown is then a sketch.
"""

from dataclasses import dataclass
from math import atan2, ceil, cos, hypot, pi, radians, sin, sqrt
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from lab.mechanics.airframes import AIR_KG_M3, STALL_LIFT, Aerodynamics, Airframe, aerodynamics, push
from lab.mechanics.checks import STANDARD_GRAVITY_M_S2, MechanicsError, finite, positive
from lab.mechanics.swing import TICK_S

Floats = NDArray[np.float64]
Flight = Literal["glides", "swoops", "tumbles"]
BeyondDepth = Literal["stalls", "turns fast", "slow"]

UPSET_RAD = radians(2.0)
"""How far nose up a launch is off the glide that the airframe is set for, where none is stated."""

SWOOP_RAD = radians(30.0)
"""Path angles further apart than this in one flight are swoops.  A choice: a good toss strays by ten degrees.
"""

GROWTH_RAD = radians(1.0)
"""Swings of the path smaller than this are not looked at for growth."""

FAST_TURN = 0.05
"""Most q c / 2V at which the air can be taken to answer at once: in a radian's turn the airframe flies ten
chords.  A choice."""

SLOW_SHARE = 0.5
"""Share of the stalling speed under which the flow is neither attached nor a steady plate's."""

LARGEST_PHASE = 0.2
"""Largest turn of phase in one step, rad: a step is then right to 0.2⁵ / 120, three millionths, of the motion."""

MOST_STEPS = 256
"""Most steps in one tick; only reached by airframes without weight or inertia to speak of."""

SWOOPS_FLOWN = 4.0
"""How many swoops long a flight is watched for its verdict, where no time is stated."""

MOST_TICKS = 200_000
"""Longest flight that is worked out, in ticks."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Launch:
    """How it is thrown.  speed_m_s, climb_rad: of its path; where None, of the glide that the airframe is set
    for.  upset_rad: its nose above where that glide holds it to its path.  height_m: of its balance point above
    the floor.  Raises MechanicsError."""

    speed_m_s: float | None = None
    climb_rad: float | None = None
    upset_rad: float = UPSET_RAD
    height_m: float = 1.5

    def __post_init__(self) -> None:
        if self.speed_m_s is not None:
            positive("speed of the launch", self.speed_m_s, "m/s")
        if self.climb_rad is not None:
            _within("climb of the launch", self.climb_rad, pi / 2.0)
        _within("upset of the launch", self.upset_rad, pi)
        positive("height of the launch", self.height_m, "m")


def _within(what: str, angle_rad: float, most_rad: float) -> None:
    if abs(finite(what, angle_rad, "rad")) > most_rad:
        most = most_rad * 180.0 / pi
        raise MechanicsError(f"{what} is {angle_rad:.4g} rad; it must be within {most:.0f} degrees of 0")


@dataclass(frozen=True, slots=True, kw_only=True)
class TossMotion:
    """Where it is and how it moves.  u_m_s: along its nose; w_m_s: downwards, square to that.  rate_rad_s: nose
    up.  pitch_rad: its nose (the direction without lift) above level.  ahead_m; up_m: above the floor."""

    u_m_s: float
    w_m_s: float
    rate_rad_s: float
    pitch_rad: float
    ahead_m: float
    up_m: float

    @property
    def speed_m_s(self) -> float:
        """Through the air."""
        return hypot(self.u_m_s, self.w_m_s)

    @property
    def attack_rad(self) -> float:
        """Angle of attack, from the direction without lift."""
        return atan2(self.w_m_s, self.u_m_s)

    @property
    def climb_rad(self) -> float:
        """Of its path above level, −π to π."""
        up = self.u_m_s * sin(self.pitch_rad) - self.w_m_s * cos(self.pitch_rad)
        ahead = self.u_m_s * cos(self.pitch_rad) + self.w_m_s * sin(self.pitch_rad)
        return atan2(up, ahead)


@dataclass(frozen=True, slots=True, kw_only=True)
class Glide:
    """Steady flight at the lift that an airframe is set for.  attack_rad, climb_rad (below 0), speed_m_s."""

    attack_rad: float
    climb_rad: float
    speed_m_s: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Toss:
    """A flight.  Arrays, (n,), a value a tick from the launch on: time_s, ahead_m, up_m (above the floor; it is
    flown on as if there were none), pitch_rad, climb_rad, attack_rad, speed_m_s.  flight: what it does.
    out_of_depth: what the model was not made for, in the order it was met.  landed: index of the first value on
    or under the floor, or None.  margin: of the airframe, in mean chords."""

    time_s: Floats
    ahead_m: Floats
    up_m: Floats
    pitch_rad: Floats
    climb_rad: Floats
    attack_rad: Floats
    speed_m_s: Floats
    flight: Flight
    out_of_depth: tuple[BeyondDepth, ...]
    landed: int | None
    margin: float


def set_glide(air: Aerodynamics) -> Glide:
    """The glide at the lift coefficient that it is thrown for.  Source: S-65."""
    lift = air.set_lift
    drag = air.drag(lift)
    weight_n = air.mass_kg * STANDARD_GRAVITY_M_S2
    return Glide(
        attack_rad=lift / air.lift_slope,
        climb_rad=-atan2(drag, lift),
        speed_m_s=sqrt(2.0 * weight_n / (AIR_KG_M3 * air.area_m2 * hypot(lift, drag))),
    )


def launched(air: Aerodynamics, launch: Launch) -> TossMotion:
    """The motion as it leaves the hand.  Source: S-65."""
    glide = set_glide(air)
    speed = glide.speed_m_s if launch.speed_m_s is None else launch.speed_m_s
    climb = glide.climb_rad if launch.climb_rad is None else launch.climb_rad
    attack = glide.attack_rad + launch.upset_rad
    return TossMotion(
        u_m_s=speed * cos(attack),
        w_m_s=speed * sin(attack),
        rate_rad_s=0.0,
        pitch_rad=climb + attack,
        ahead_m=0.0,
        up_m=launch.height_m,
    )


State = tuple[float, float, float, float, float, float]
"""u and w, m/s; rate, rad/s; pitch, rad; ahead and up, m: the fields of a TossMotion in their order."""


def motion_rates(air: Aerodynamics, state: State) -> State:
    """How (u, w, rate, pitch, ahead, up) change, each per second: Newton and Euler in axes that turn along.
    Source: S-65."""
    u, w, rate, pitch, _, _ = state
    felt = push(air, u, w, rate)
    rise, level = sin(pitch), cos(pitch)
    return (
        felt.ahead_n / air.mass_kg - STANDARD_GRAVITY_M_S2 * rise - rate * w,
        felt.down_n / air.mass_kg + STANDARD_GRAVITY_M_S2 * level + rate * u,
        felt.moment_n_m / air.inertia_kg_m2,
        rate,
        u * level + w * rise,
        u * rise - w * level,
    )


def toss_tick(air: Aerodynamics, motion: TossMotion, dt_s: float = TICK_S) -> TossMotion:
    """The motion one tick later.

    air: from `aerodynamics(airframe)`.  dt_s: above 0.  It knows no floor.  Source: S-65.
    """
    steps = min(max(ceil(_pace_s(air, motion) * dt_s / LARGEST_PHASE), 1), MOST_STEPS)
    state: State = (
        motion.u_m_s,
        motion.w_m_s,
        motion.rate_rad_s,
        motion.pitch_rad,
        motion.ahead_m,
        motion.up_m,
    )
    for _ in range(steps):
        state = runge_kutta(air, state, dt_s / steps)
    return TossMotion(
        u_m_s=state[0], w_m_s=state[1], rate_rad_s=state[2], pitch_rad=state[3], ahead_m=state[4], up_m=state[5]
    )  # fmt: skip


def _pace_s(air: Aerodynamics, motion: TossMotion) -> float:
    """Fastest that anything in the motion goes, 1/s: its turning, its spring and damping in pitch, its lift's."""
    per_m = AIR_KG_M3 * air.area_m2 / 2.0
    spring = per_m * air.chord_m * abs(air.moment_slope) / air.inertia_kg_m2
    damping = per_m * air.chord_m**2 * abs(air.moment_rate) / (2.0 * air.inertia_kg_m2)
    return motion.speed_m_s * (sqrt(spring) + damping + per_m * air.lift_slope / air.mass_kg) + abs(motion.rate_rad_s)


def runge_kutta(air: Aerodynamics, state: State, step_s: float) -> State:
    """The state a step later, by the classical fourth-order rule.  Source: S-55."""
    first = motion_rates(air, state)
    second = motion_rates(air, _along(state, first, step_s / 2.0))
    third = motion_rates(air, _along(state, second, step_s / 2.0))
    fourth = motion_rates(air, _along(state, third, step_s))
    u, w, rate, pitch, ahead, up = (
        at + step_s / 6.0 * (a + 2.0 * b + 2.0 * c + d)
        for at, a, b, c, d in zip(state, first, second, third, fourth, strict=True)
    )
    return u, w, rate, pitch, ahead, up


def _along(state: State, rates: State, step_s: float) -> State:
    u, w, rate, pitch, ahead, up = (at + step_s * by for at, by in zip(state, rates, strict=True))
    return u, w, rate, pitch, ahead, up


def toss(airframe: Airframe, launch: Launch | None = None, *, seconds: float | None = None) -> Toss:
    """Throw an airframe, and say what it does.

    seconds: how long it is watched; else some swoops' time, 2π V / (√2 g) each.  Glides: its path keeps within
    30 degrees, does not stall and does not swing more and more.  Tumbles: its nose passes the vertical, or it
    comes to fly tail first.  Swoops: anything between.  Raises MechanicsError.  Source: S-65.
    """
    air, thrown = aerodynamics(airframe), launch or Launch()
    motion = launched(air, thrown)
    swoop_s = sqrt(2.0) * pi * set_glide(air).speed_m_s / STANDARD_GRAVITY_M_S2
    watched_s = SWOOPS_FLOWN * swoop_s if seconds is None else positive("time of the flight", seconds, "s")
    ticks = ceil(watched_s / TICK_S)
    if ticks > MOST_TICKS:
        raise MechanicsError(f"time of the flight is {watched_s:.4g} s; it must be at most {MOST_TICKS * TICK_S:g} s")
    motions = [motion]
    for _ in range(ticks):
        motion = toss_tick(air, motion)
        motions.append(motion)
    return _seen(air, motions)


def _seen(air: Aerodynamics, motions: list[TossMotion]) -> Toss:
    ahead, up, pitch, climb, attack, speed, rate = np.array([
        (each.ahead_m, each.up_m, each.pitch_rad, each.climb_rad, each.attack_rad, each.speed_m_s, each.rate_rad_s)
        for each in motions
    ]).T  # fmt: skip
    down = np.flatnonzero(up <= 0.0)
    return Toss(
        time_s=np.arange(len(motions), dtype=np.float64) * TICK_S,
        ahead_m=ahead,
        up_m=up,
        pitch_rad=pitch,
        climb_rad=climb,
        attack_rad=attack,
        speed_m_s=speed,
        flight=_flight(air, pitch, climb, attack),
        out_of_depth=_beyond_depth(air, attack, speed, rate),
        landed=int(down[0]) if len(down) else None,
        margin=air.margin,
    )


def _flight(air: Aerodynamics, pitch: Floats, climb: Floats, attack: Floats) -> Flight:
    if np.abs(pitch).max() > pi / 2.0 or np.abs(attack).max() > pi / 2.0:
        return "tumbles"
    if np.ptp(climb) > SWOOP_RAD or np.abs(attack).max() > air.stall_rad:
        return "swoops"
    return "swoops" if _grows(climb) or _grows(pitch) else "glides"


def _grows(angle: Floats) -> bool:
    """Whether it swings further in the second half of a flight than in the first."""
    half = len(angle) // 2
    return bool(np.ptp(angle[half:]) > max(np.ptp(angle[:half]), GROWTH_RAD))


def _beyond_depth(air: Aerodynamics, attack: Floats, speed: Floats, rate: Floats) -> tuple[BeyondDepth, ...]:
    stall_m_s = sqrt(2.0 * air.mass_kg * STANDARD_GRAVITY_M_S2 / (AIR_KG_M3 * air.area_m2 * STALL_LIFT))
    signs: dict[BeyondDepth, NDArray[np.bool_]] = {
        "stalls": np.abs(attack) > air.stall_rad,
        "turns fast": np.abs(rate) * air.chord_m > 2.0 * FAST_TURN * speed,
        "slow": speed < SLOW_SHARE * stall_m_s,
    }
    first = {what: int(np.argmax(sign)) for what, sign in signs.items() if sign.any()}
    return tuple(sorted(first, key=lambda what: first[what]))
