"""What a body does while it touches a pad's edge, nothing, or the floor: one smooth stretch each.

A contact is on the underside, s along it from the CG (u positive), and the CG stands h above the underside:
CG = edge − s u + h n.  Newton's law along u and n and about the CG gives, for friction F along u and the
normal force N along n,
    F = m (g sin θ − s̈ − h θ̈ + s θ̇²),   N = m (g cos θ − 2 ṡ θ̇ − h θ̇² − s θ̈),   I θ̈ = s N + h F.
While it sticks, ṡ = s̈ = 0; while it slides, F = σ μ N with σ the sense of ṡ.  Source: S-09.
"""

from dataclasses import dataclass
from math import cos, sin

from lab.mechanics.bodies import Course, PadBody, Place
from lab.mechanics.checks import STANDARD_GRAVITY_M_S2
from lab.mechanics.composition import turned

Four = tuple[float, float, float, float]
"""A state of a contact: s, ṡ, θ, θ̇."""

SLIDE_STEPS = 4
"""Steps in one stretch of sliding.  With four, a tick on a pad without friction keeps its energy to some 1e-10
of what moves; with one, to 1e-8."""

PAD_DRAG_S = 1.0
"""How a soft fingertip stills a body that hangs below its edge and swings there, 1/s.  A choice; one that
topples is not slowed, since it never comes back."""


@dataclass(frozen=True, slots=True)
class Grip:
    """The forces at a contact that sticks: friction along the underside, normal force off it, N."""

    friction_n: float
    normal_n: float

    def holds(self, coefficient: float) -> bool:
        """Whether the pad can give the friction."""
        return abs(self.friction_n) <= coefficient * self.normal_n


def contact_m(body: PadBody, course: Course, edge: Place) -> float:
    """Where along the underside the edge touches it, from the CG, m.  Source: S-09."""
    return course.seen_m(edge)[0]


def slip_m_s(body: PadBody, course: Course) -> float:
    """How fast the contact runs along the underside, m/s: ṡ.  Source: S-09."""
    c, s = cos(course.angle_rad), sin(course.angle_rad)
    return -(course.vx_m_s * c + course.vz_m_s * s) - body.rise_m * course.rate_rad_s


def held_course(body: PadBody, edge: Place, state: Four) -> Course:
    """The course of a body whose underside touches an edge.  state: s, ṡ, θ, θ̇.  Source: S-09."""
    run, slip, angle, rate = state
    rise = body.rise_m
    c, s = cos(angle), sin(angle)
    along, off = -(slip + rise * rate), -run * rate
    return Course(
        x_m=edge[0] - run * c - rise * s,
        z_m=edge[1] - run * s + rise * c,
        angle_rad=angle,
        vx_m_s=along * c - off * s,
        vz_m_s=along * s + off * c,
        rate_rad_s=rate,
    )


def grip(body: PadBody, course: Course, edge: Place) -> Grip:
    """The forces that would keep the contact from sliding.  Source: S-09."""
    run, rise = contact_m(body, course, edge), body.rise_m
    c, s, rate2 = cos(course.angle_rad), sin(course.angle_rad), course.rate_rad_s**2
    pull = STANDARD_GRAVITY_M_S2
    spin_up = tipping_push_s2(body, course, edge)
    return Grip(
        friction_n=body.mass_kg * (pull * s - rise * spin_up + run * rate2),
        normal_n=body.mass_kg * (pull * c - rise * rate2 - run * spin_up),
    )


def tipped(body: PadBody, course: Course, edge: Place, dt_s: float) -> Course:
    """The course after turning about the edge for a while: a pendulum, upright or hanging.  Source: S-06."""
    run, rise = contact_m(body, course, edge), body.rise_m
    about_edge = body.inertia_kg_m2 + body.mass_kg * (run * run + rise * rise)
    share = body.mass_kg * STANDARD_GRAVITY_M_S2 / about_edge
    angle, rate = turned(
        course.angle_rad,
        course.rate_rad_s,
        lever_s2=-share * run,
        drop_s2=-share * rise,
        drag_s=PAD_DRAG_S if rise < 0.0 else 0.0,
        step_s=dt_s,
    )
    return held_course(body, edge, (run, 0.0, angle, rate))


def sliding_normal_n(body: PadBody, course: Course, edge: Place, sense: float) -> float:
    """The normal force while the contact slides; 0 or below where the body leaves the edge.  Source: S-09."""
    state = (contact_m(body, course, edge), slip_m_s(body, course), course.angle_rad, course.rate_rad_s)
    return _slide_rates(body, sense, state)[1]


def slid(body: PadBody, course: Course, edge: Place, sense: float, dt_s: float) -> Course:
    """The course after sliding over the edge for a while: classical fourth-order steps, since friction leaves
    no energy to keep.  sense: of ṡ, the same throughout.  Source: S-09, S-55."""
    state = (contact_m(body, course, edge), slip_m_s(body, course), course.angle_rad, course.rate_rad_s)
    step_s = dt_s / SLIDE_STEPS
    for _ in range(SLIDE_STEPS):
        first = _slide_rates(body, sense, state)[0]
        second = _slide_rates(body, sense, _moved(state, first, step_s / 2.0))[0]
        third = _slide_rates(body, sense, _moved(state, second, step_s / 2.0))[0]
        fourth = _slide_rates(body, sense, _moved(state, third, step_s))[0]
        mean = tuple((a + 2.0 * b + 2.0 * c + d) / 6.0 for a, b, c, d in zip(first, second, third, fourth, strict=True))
        state = _moved(state, mean, step_s)
    return held_course(body, edge, state)


def _moved(state: Four, rates: tuple[float, ...], dt_s: float) -> Four:
    run, slip, angle, rate = (value + change * dt_s for value, change in zip(state, rates, strict=True))
    return run, slip, angle, rate


def _slide_rates(body: PadBody, sense: float, state: Four) -> tuple[Four, float]:
    """ṡ, s̈, θ̇, θ̈, and the normal force, while the contact slides."""
    run, slip, angle, rate = state
    rise, mass, pull = body.rise_m, body.mass_kg, STANDARD_GRAVITY_M_S2
    drag = sense * body.friction
    arm = run + drag * rise
    pressed = pull * cos(angle) - 2.0 * slip * rate - rise * rate * rate
    normal = mass * pressed / (1.0 + mass * run * arm / body.inertia_kg_m2)
    spin_up = normal * arm / body.inertia_kg_m2
    slip_up = pull * sin(angle) - rise * spin_up + run * rate * rate - drag * normal / mass
    return (slip, slip_up, rate, spin_up), normal


def dropped(course: Course, dt_s: float) -> Course:
    """The course after falling freely for a while, turning evenly: exact.  Source: S-09."""
    return Course(
        x_m=course.x_m + course.vx_m_s * dt_s,
        z_m=course.z_m + course.vz_m_s * dt_s - STANDARD_GRAVITY_M_S2 * dt_s * dt_s / 2.0,
        angle_rad=course.angle_rad + course.rate_rad_s * dt_s,
        vx_m_s=course.vx_m_s,
        vz_m_s=course.vz_m_s - STANDARD_GRAVITY_M_S2 * dt_s,
        rate_rad_s=course.rate_rad_s,
    )


def tipping_push_s2(body: PadBody, course: Course, edge: Place) -> float:
    """The acceleration, anticlockwise positive, that the weight gives about the edge.  Source: S-09."""
    run, rise = contact_m(body, course, edge), body.rise_m
    about_edge = body.inertia_kg_m2 + body.mass_kg * (run * run + rise * rise)
    lever = run * cos(course.angle_rad) + rise * sin(course.angle_rad)
    return body.mass_kg * STANDARD_GRAVITY_M_S2 * lever / about_edge


def landed(body: PadBody, course: Course, corner: int, *, keeps: float = 1.0) -> Course:
    """The course just after a corner stops dead on the floor: a share of the spin about that corner is kept,
    all of it unless said.  Source: S-09."""
    arm = course.arm_m(body.corners_m[corner])
    away = (-arm[0], -arm[1])
    spin = body.inertia_kg_m2 * course.rate_rad_s
    spin += body.mass_kg * (away[0] * course.vz_m_s - away[1] * course.vx_m_s)
    about = body.inertia_kg_m2 + body.mass_kg * (away[0] ** 2 + away[1] ** 2)
    return _about_corner(body, course.place_m(body.corners_m[corner]), corner, course.angle_rad, keeps * spin / about)


def toppled(body: PadBody, course: Course, corner: int, dt_s: float) -> Course:
    """The course after turning about a corner that stands on the floor for a while.  Source: S-06."""
    u, n = body.corners_m[corner]
    about = body.inertia_kg_m2 + body.mass_kg * (u * u + n * n)
    share = body.mass_kg * STANDARD_GRAVITY_M_S2 / about
    angle, rate = turned(
        course.angle_rad, course.rate_rad_s, lever_s2=-share * u, drop_s2=share * n, drag_s=0.0, step_s=dt_s
    )
    return _about_corner(body, course.place_m((u, n)), corner, angle, rate)


def _about_corner(body: PadBody, stand: Place, corner: int, angle: float, rate: float) -> Course:
    """The course of a body that turns about a corner which stands still."""
    turned_so = Course(x_m=0.0, z_m=0.0, angle_rad=angle)
    arm = turned_so.arm_m(body.corners_m[corner])
    return Course(
        x_m=stand[0] - arm[0],
        z_m=stand[1] - arm[1],
        angle_rad=angle,
        vx_m_s=rate * arm[1],
        vz_m_s=-rate * arm[0],
        rate_rad_s=rate,
    )
