"""An airframe in the air: its surfaces, its mass and inertia, and the forces that its motion meets.

Attached flow is linear, by the vortex lattice; drag is quadratic in lift.  Beyond the stall each surface is a
plate: its push is square to it, acts at its middle, and no longer grows with the angle.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from math import atan2, cos, hypot, pi, radians, sin, tan

from lab.mechanics.checks import MechanicsError, Vector, finite, positive, vector
from lab.mechanics.surfaces import MeanChord, Surface, airframe_surfaces, main_surface, mean_chord
from lab.mechanics.vortex_lattice import pitch_slopes

AIR_KG_M3 = 1.225
"""Density of the air at sea level in the standard atmosphere.  Source: S-67."""

STALL_LIFT = 1.0
"""Lift coefficient at which the flow lets go: thin sections of small models give 0.9 to 1.1.  A choice in that
band, from memory."""

STALL_FADE_RAD = radians(6.0)
"""Angle from the stall's onset to where nothing of attached flow is left.  A choice: gentle, as thin sections
stall, and smooth enough to step through."""

PLATE_PUSH = 1.1
"""Push square to a stalled plate over its area and q: plates of finite span give 1.1 to 1.2 broadside, and not
much less from 25 degrees on.  Source: S-66."""

ZERO_LIFT_DRAG = 0.03
"""Drag coefficient without lift: some 0.02 of skin friction on both faces of the surfaces at the speed of a
hand, half as much again for body and joints.  A choice."""

SPAN_EFFICIENCY = 0.85
"""Share of the ideal that a span makes of its lift: induced drag is CL² / (π A × this).  From memory of usual
values, 0.7 to 0.9.  A choice."""

SET_LIFT = 0.5
"""Lift coefficient at which a tail is set to hold an airframe where none is stated: half-way to the stall."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Airframe:
    """What is tossed.

    surfaces: at least one that lies flat.  mass_kg, balance_point_m: of the whole.  pitch_inertia_kg_m2: about
    the balance point, across.  set_lift: the lift coefficient at which its tail (or its trailing edge, where it
    has no tail) is set to hold it.  couple: the nose-up moment coefficient without lift, in place of set_lift:
    it belongs to the airframe, and stays the same when the balance point is moved.  Raises MechanicsError.
    """

    surfaces: tuple[Surface, ...]
    mass_kg: float
    balance_point_m: Vector
    pitch_inertia_kg_m2: float
    set_lift: float = SET_LIFT
    couple: float | None = None

    def __post_init__(self) -> None:
        put = object.__setattr__
        put(self, "surfaces", airframe_surfaces(self.surfaces))
        put(self, "mass_kg", positive("mass of the airframe", self.mass_kg, "kg"))
        put(self, "balance_point_m", vector("balance point of the airframe", self.balance_point_m, "m"))
        inertia = positive("inertia of the airframe in pitch", self.pitch_inertia_kg_m2, "kg m²")
        put(self, "pitch_inertia_kg_m2", inertia)
        set_lift = positive("set lift coefficient of the airframe", self.set_lift, "")
        if set_lift >= STALL_LIFT:
            raise MechanicsError(
                f"set lift coefficient of the airframe is {set_lift:.4g}; it must be under {STALL_LIFT:g}, the stall's"
            )
        put(self, "set_lift", set_lift)
        if self.couple is not None:
            put(self, "couple", finite("couple coefficient of the airframe", self.couple, ""))


@dataclass(frozen=True, slots=True, kw_only=True)
class Plate:
    """Half a surface, its fore or its aft half, once the flow has let go.  area_m2; arm_m: its middle behind the
    balance point."""

    area_m2: float
    arm_m: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Aerodynamics:
    """The numbers that fly, worked out once for an airframe.

    mass_kg, inertia_kg_m2: of the whole, in pitch.  area_m2, chord_m, aspect: of the wing.  margin: in mean
    chords.  lift_slope, moment_slope: per radian.  lift_rate, moment_rate: per q c / 2V.  couple: moment
    coefficient without lift.  set_lift: lift coefficient that it is thrown for.  held_lift: the one that its
    couple holds it at, or None where that is none short of the stall.  Angles of attack count from the
    direction without lift.
    """

    mass_kg: float
    inertia_kg_m2: float
    area_m2: float
    chord_m: float
    aspect: float
    margin: float
    lift_slope: float
    moment_slope: float
    lift_rate: float
    moment_rate: float
    couple: float
    set_lift: float
    held_lift: float | None
    plates: tuple[Plate, ...]

    @property
    def stall_rad(self) -> float:
        """Angle of attack at which the flow lets go."""
        return STALL_LIFT / self.lift_slope

    def drag(self, lift: float) -> float:
        """Drag coefficient of attached flow at a lift coefficient."""
        return ZERO_LIFT_DRAG + lift * lift / (pi * self.aspect * SPAN_EFFICIENCY)


@dataclass(frozen=True, slots=True, kw_only=True)
class Push:
    """Of the air on an airframe: ahead_n along its nose, down_n square to that, moment_n_m nose up."""

    ahead_n: float
    down_n: float
    moment_n_m: float


def aerodynamics(airframe: Airframe) -> Aerodynamics:
    """The forces of an airframe, by the vortex lattice about its balance point.

    Raises MechanicsError.  Source: S-62, S-65, S-66.
    """
    wing = main_surface(airframe.surfaces)
    chord = mean_chord(wing).length_m
    slopes = pitch_slopes(airframe.surfaces, airframe.balance_point_m[0])
    margin = -slopes.moment_slope / slopes.lift_slope
    couple, held = _held(airframe, margin)
    return Aerodynamics(
        mass_kg=airframe.mass_kg,
        inertia_kg_m2=airframe.pitch_inertia_kg_m2,
        area_m2=wing.area_m2,
        chord_m=chord,
        aspect=wing.aspect,
        margin=margin,
        lift_slope=slopes.lift_slope,
        moment_slope=slopes.moment_slope,
        lift_rate=slopes.lift_rate,
        moment_rate=slopes.moment_rate,
        couple=couple,
        set_lift=airframe.set_lift if held is None else held,
        held_lift=held,
        plates=tuple(_plates(airframe.surfaces, airframe.balance_point_m[0])),
    )


def _held(airframe: Airframe, margin: float) -> tuple[float, float | None]:
    """The couple, and the lift coefficient at which the lift's own moment is even with it."""
    if airframe.couple is None:
        return margin * airframe.set_lift, airframe.set_lift
    if margin == 0.0:
        return airframe.couple, None
    lift = airframe.couple / margin
    return airframe.couple, lift if 0.0 < lift < STALL_LIFT else None


def _plates(surfaces: Iterable[Surface], balance_m: float) -> list[Plate]:
    """Two halves a surface: together they push at its middle, and they brake its turning."""
    found = []
    for surface in surfaces:
        if surface.vertical:
            continue
        chord = mean_chord(surface)
        middle = _middle_m(surface, chord) - balance_m
        for arm in (middle - chord.length_m / 4.0, middle + chord.length_m / 4.0):
            found.append(Plate(area_m2=surface.area_m2 / 2.0, arm_m=arm))
    return found


def _middle_m(surface: Surface, chord: MeanChord) -> float:
    """Where a trapezoid's area balances, along: the middle of its mean chord."""
    return surface.at_m[0] + chord.across_m * tan(surface.sweep_rad) + chord.length_m / 2.0


def attached_share(attack_rad: float, stall_rad: float) -> float:
    """How much of the flow is still attached: 1 up to the stall, 0 from STALL_FADE_RAD beyond it on, and a
    smooth fifth-order fall between."""
    beyond = (abs(attack_rad) - stall_rad) / STALL_FADE_RAD
    if beyond <= 0.0:
        return 1.0
    if beyond >= 1.0:
        return 0.0
    return 1.0 - beyond**3 * (10.0 - beyond * (15.0 - 6.0 * beyond))


def push(air: Aerodynamics, u_m_s: float, w_m_s: float, rate_rad_s: float) -> Push:
    """What the air does to an airframe.

    u_m_s: its speed along its nose.  w_m_s: downwards, square to that.  rate_rad_s: nose up.
    Quasi-steady: the air answers at once.  Source: S-65, S-66.
    """
    share = attached_share(atan2(w_m_s, u_m_s), air.stall_rad)
    if share == 1.0:
        return _attached(air, u_m_s, w_m_s, rate_rad_s)
    let_go = _stalled(air, u_m_s, w_m_s, rate_rad_s)
    if share == 0.0:
        return let_go
    holds = _attached(air, u_m_s, w_m_s, rate_rad_s)
    return Push(
        ahead_n=share * holds.ahead_n + (1.0 - share) * let_go.ahead_n,
        down_n=share * holds.down_n + (1.0 - share) * let_go.down_n,
        moment_n_m=share * holds.moment_n_m + (1.0 - share) * let_go.moment_n_m,
    )


def _attached(air: Aerodynamics, u_m_s: float, w_m_s: float, rate_rad_s: float) -> Push:
    speed = hypot(u_m_s, w_m_s)
    if speed == 0.0:
        return Push(ahead_n=0.0, down_n=0.0, moment_n_m=0.0)
    attack = atan2(w_m_s, u_m_s)
    turning = rate_rad_s * air.chord_m / (2.0 * speed)
    lift = air.lift_slope * attack + air.lift_rate * turning
    drag = air.drag(lift)
    moment = air.couple + air.moment_slope * attack + air.moment_rate * turning
    force_n = AIR_KG_M3 * speed * speed / 2.0 * air.area_m2
    along, across = cos(attack), sin(attack)
    return Push(
        ahead_n=force_n * (lift * across - drag * along),
        down_n=-force_n * (lift * along + drag * across),
        moment_n_m=force_n * air.chord_m * moment,
    )


def _stalled(air: Aerodynamics, u_m_s: float, w_m_s: float, rate_rad_s: float) -> Push:
    """Each plate meets its own air: turning nose up brings a tail down onto it."""
    ahead = -AIR_KG_M3 / 2.0 * air.area_m2 * ZERO_LIFT_DRAG * hypot(u_m_s, w_m_s) * u_m_s
    down = moment = 0.0
    for plate in air.plates:
        own_w = w_m_s + rate_rad_s * plate.arm_m
        speed2 = u_m_s * u_m_s + own_w * own_w
        if speed2 == 0.0:
            continue
        # Up to the stall's angle a plate still answers to its angle; so it pushes nothing edge-on.
        steep = own_w / speed2**0.5
        full = steep / (steep * steep + sin(air.stall_rad) ** 2) ** 0.5
        up = AIR_KG_M3 / 2.0 * plate.area_m2 * PLATE_PUSH * speed2 * full
        down -= up
        moment -= up * plate.arm_m
    return Push(ahead_n=ahead, down_n=down, moment_n_m=moment)
