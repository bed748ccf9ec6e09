"""The finger pad against other ways to the same answer: an adaptive solution, a root, linear equations, pymunk."""

from dataclasses import replace
from math import atan2, cos, hypot, radians, sin

import numpy as np
import pymunk
import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

from lab.mechanics import (
    STANDARD_GRAVITY_M_S2,
    Box,
    PadBody,
    PadMotion,
    Part,
    Rectangle,
    pad_body,
    pad_energy_j,
    pad_tick,
)

TOOL = pad_body(
    (
        Part("hook", 0.480, (0.02, 0.0, 0.0), Rectangle(0.04, 0.05)),
        Part("pole", 0.120, (0.2, 0.0, 0.0), Box((0.4, 0.01, 0.012))),
    ),
    underside_m=-0.006,
    left_m=0.0,
    right_m=0.4,
)
FLOOR_M = -1.0
HALF_M = 0.003
FINGERS_M = (0.062, 0.096, 0.2, 0.03)


def edge_of(body: PadBody, finger_m: float) -> tuple[float, float]:
    side = 1.0 if body.cg_m[0] > finger_m else -1.0
    return finger_m + side * HALF_M, body.underside_m


def ticks(body: PadBody, finger_m: float, count: int, dt_s: float = 0.005) -> list[PadMotion]:
    motions = [PadMotion()]
    for _ in range(count):
        motions.append(pad_tick(body, finger_m, HALF_M, FLOOR_M, motions[-1], dt_s))
    return motions


@pytest.mark.parametrize("finger_m", FINGERS_M)
def test_tipping_is_a_pendulum_upside_down_on_the_edge(finger_m: float) -> None:
    body = replace(TOOL, friction=5.0)  # grips, so that the tipping lasts
    edge = edge_of(body, finger_m)
    away, up = body.cg_m[0] - edge[0], body.rise_m
    length, start = hypot(away, up), atan2(away, up)  # the CG's angle from upright, clockwise
    inertia = body.inertia_kg_m2 + body.mass_kg * length**2
    tips = [m for m in ticks(body, finger_m, 60) if m.phase == "tips"]
    found = solve_ivp(
        lambda _t, y: [y[1], body.mass_kg * STANDARD_GRAVITY_M_S2 * length * sin(y[0]) / inertia],
        (0.0, len(tips) * 0.005),
        (start, 0.0),
        method="DOP853",
        rtol=1e-12,
        atol=1e-14,
    )
    assert len(tips) > 10
    # An unstable fall multiplies an error some hundredfold in this time; the promise is 1e-6.
    assert -tips[-1].angle_rad == pytest.approx(float(found.y[0, -1]) - start, abs=1e-9)


def onset_rad(body: PadBody, finger_m: float) -> float:
    """How far it has turned when |F| = μ N: by energy for the rate, and by Newton for the CG on its circle."""
    edge = edge_of(body, finger_m)
    away, up = body.cg_m[0] - edge[0], body.rise_m
    inertia = body.inertia_kg_m2 + body.mass_kg * (away**2 + up**2)
    side = 1.0 if away > 0.0 else -1.0

    def excess(turn: float) -> float:
        c, s = cos(side * turn), sin(side * turn)  # clockwise by turn where it falls to the right
        x, z = away * c + up * s, up * c - away * s
        rate2 = 2.0 * body.mass_kg * STANDARD_GRAVITY_M_S2 * (up - z) / inertia
        spin_up = side * body.mass_kg * STANDARD_GRAVITY_M_S2 * x * side / inertia
        ax, az = z * spin_up - x * rate2, -x * spin_up - z * rate2
        fx, fz = body.mass_kg * ax, body.mass_kg * (az + STANDARD_GRAVITY_M_S2)
        along, normal = fx * c - fz * s, fx * s + fz * c
        return abs(along) - body.friction * normal

    return float(brentq(excess, 1e-6, 1.4, xtol=1e-13))


@pytest.mark.parametrize("finger_m", FINGERS_M)
def test_sliding_begins_where_the_friction_needed_outgrows_the_pad(finger_m: float) -> None:
    motions = ticks(TOOL, finger_m, 20_000, 1e-4)
    first = next(n for n, motion in enumerate(motions) if motion.phase == "slides")
    # Between the last tick that tips and the first that slides: at most 7 rad/s × 0.1 ms apart.
    assert abs(motions[first - 1].angle_rad) <= onset_rad(TOOL, finger_m) <= abs(motions[first].angle_rad)


def test_a_tool_at_rest_on_a_slope_slides_at_the_friction_angle() -> None:
    # Balanced nearly over the edge it turns so slowly that only the slope counts: tan θ = μ.
    onset = onset_rad(replace(TOOL, inertia_kg_m2=1e3), 0.062)
    assert onset == pytest.approx(atan2(TOOL.friction, 1.0), abs=1e-3)


@pytest.mark.parametrize("finger_m", FINGERS_M)
def test_sliding_follows_newton_with_the_contact_solved_as_linear_equations(finger_m: float) -> None:
    motions = ticks(TOOL, finger_m, 400)
    first = next(n for n, m in enumerate(motions) if m.phase == "slides")
    last = next(n for n, m in enumerate(motions) if m.phase not in ("rests", "tips", "slides")) - 1
    assert last - first >= 5
    start, end = motions[first], motions[last]
    edge = edge_of(TOOL, finger_m)
    friction_n = start_sense(TOOL, start)

    def rates(_time: float, state: np.ndarray) -> list[float]:
        x, z, angle, vx, vz, rate = state
        c, s = cos(angle), sin(angle)
        u, n = np.array([c, s]), np.array([-s, c])
        arm = np.array([edge[0] - x, edge[1] - z])
        push = n + friction_n * TOOL.friction * u
        # n · (CG − edge) = h, differentiated twice: n · a + α (ṅ-part) = known.
        matrix = np.zeros((4, 4))
        matrix[0, 0] = matrix[1, 1] = TOOL.mass_kg
        matrix[0, 3], matrix[1, 3] = -push[0], -push[1]
        matrix[2, 2], matrix[2, 3] = TOOL.inertia_kg_m2, -(arm[0] * push[1] - arm[1] * push[0])
        matrix[3, 0], matrix[3, 1], matrix[3, 2] = n[0], n[1], u @ arm
        velocity = np.array([vx, vz])
        known = 2.0 * rate * (u @ velocity) - rate**2 * (n @ arm)
        ax, az, spin_up, _ = np.linalg.solve(matrix, [0.0, -TOOL.mass_kg * STANDARD_GRAVITY_M_S2, 0.0, known])
        return [vx, vz, rate, ax, az, spin_up]

    found = solve_ivp(
        rates,
        (0.0, (last - first) * 0.005),
        (
            TOOL.cg_m[0] + start.x_m,
            TOOL.cg_m[1] + start.z_m,
            start.angle_rad,
            start.vx_m_s,
            start.vz_m_s,
            start.rate_rad_s,
        ),
        method="DOP853",
        rtol=1e-11,
        atol=1e-12,
    )
    x, z, angle = found.y[:3, -1]
    # A fourth-order step of 5 ms at a pace of some 10 /s leaves (0.05)⁵ / 120 each: under a micrometre in all.
    assert end.x_m + TOOL.cg_m[0] == pytest.approx(x, abs=1e-6)
    assert end.z_m + TOOL.cg_m[1] == pytest.approx(z, abs=1e-6)
    assert end.angle_rad == pytest.approx(angle, abs=1e-5)


def start_sense(body: PadBody, motion: PadMotion) -> float:
    """Which way along u the friction pushes: against the way the underside's matter runs at the contact."""
    c, s = cos(motion.angle_rad), sin(motion.angle_rad)
    runs = motion.vx_m_s * c + motion.vz_m_s * s + body.rise_m * motion.rate_rad_s
    return -1.0 if runs > 0.0 else 1.0


def test_off_the_pad_it_falls_as_a_thrown_stone_and_turns_evenly() -> None:
    motions = ticks(TOOL, 0.2, 200)
    falling = [m for m in motions if m.phase == "falls" and m.corner is None]
    first, last = falling[0], falling[-1]
    time_s = (len(falling) - 1) * 0.005
    assert time_s > 0.05
    assert last.angle_rad == pytest.approx(first.angle_rad + first.rate_rad_s * time_s, abs=1e-12)
    assert last.x_m == pytest.approx(first.x_m + first.vx_m_s * time_s, abs=1e-12)
    fallen = first.vz_m_s * time_s - STANDARD_GRAVITY_M_S2 * time_s**2 / 2.0
    assert last.z_m == pytest.approx(first.z_m + fallen, abs=1e-12)
    assert pad_energy_j(TOOL, last) == pytest.approx(pad_energy_j(TOOL, first), abs=1e-12)


@pytest.mark.parametrize("finger_m", [0.08, 0.12, 0.2, 0.3])
def test_pymunk_tips_the_same_bar_to_the_same_side_as_far(finger_m: float) -> None:
    body = PadBody(
        mass_kg=0.2,
        inertia_kg_m2=0.2 * 0.4**2 / 12,
        cg_m=(0.2 if finger_m != 0.2 else 0.23, 0.01),
        underside_m=0.0,
        left_m=0.0,
        right_m=0.4,
        friction=5.0,
    )
    ours = ticks(body, finger_m, 200, 0.001)[-1]
    space = pymunk.Space()
    space.gravity = (0.0, -STANDARD_GRAVITY_M_S2)
    space.collision_slop = 1e-6  # its default of 0.1 is metres here
    space.iterations = 50
    turning = pymunk.Body(body.mass_kg, body.inertia_kg_m2)
    turning.position = body.cg_m
    left, right = body.ends_m
    face = pymunk.Poly(turning, [(left, -0.01), (right, -0.01), (right, 0.01), (left, 0.01)])
    pad = pymunk.Poly(
        space.static_body,
        [(finger_m - HALF_M, -0.5), (finger_m + HALF_M, -0.5), (finger_m + HALF_M, 0.0), (finger_m - HALF_M, 0.0)],
    )
    face.friction = pad.friction = 5.0
    space.add(turning, face, pad)
    for _ in range(2000):
        space.step(0.0001)
    assert abs(ours.angle_rad) > radians(5.0)
    # pymunk holds a contact by pushing out of overlap: it gives way a little before it turns.
    assert ours.angle_rad == pytest.approx(turning.angle, rel=0.02)
