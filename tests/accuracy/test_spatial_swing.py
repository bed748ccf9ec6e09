"""Bodies that swing from one point in three dimensions: against an adaptive solution of the equations in space, against
mujoco's ball joint, and against closed forms.

The references turn a whole rotation matrix, or a quaternion, about axes at rest; ours turns down in the body's own.
"""

from itertools import pairwise
from math import acos, cos, hypot, pi, radians, sin, sqrt

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.special import ellipk

from lab.mechanics import (
    STANDARD_GRAVITY_M_S2,
    TICK_S,
    Box,
    HungBody,
    Part,
    Pivot,
    Rod,
    SpatialSwing,
    Swing,
    Vector,
    hanging_attitude,
    hung_body,
    inertia_about_kg_m2,
    moment_sum,
    pivoted,
    spatial_energy_j,
    spatial_tick,
    swing_tick,
)

GLIDER = (
    Part("fuselage", 0.42, (0.44, 0.0, 0.0), Rod(1.0)),
    Part("wing", 0.38, (0.42, 0.0, 0.03), Box((0.16, 1.6, 0.02))),
    Part("tail", 0.09, (0.92, 0.0, 0.02), Box((0.1, 0.5, 0.01))),
    Part("battery", 0.30, (0.08, 0.02, -0.01), Box((0.08, 0.05, 0.03))),
    Part("tank", 0.12, (0.42, -0.4, 0.02), Box((0.1, 0.06, 0.04))),
)
#: Places to hang it by, with the time of its quickest small swing: all 0.4 s and more.
HOOKS: dict[str, Vector] = {
    "over the wing": (0.40, 0.0, 0.25),
    "nose": (0.0, 0.0, 0.0),
    "wing tip": (0.42, 0.8, 0.05),
    "under the belly": (0.45, 0.05, -0.2),
}


def solved(parts: tuple[Part, ...], hook: Vector, drag_s: float, seconds: float) -> np.ndarray:
    """Down in the body by DOP853: rotation matrix and angular momentum in axes at rest, Euler's second law.

    rtol 1e-12 leaves some 1e-10 after ten seconds, far under what is tested.
    """
    total = moment_sum(parts)
    inertia = inertia_about_kg_m2(parts, hook)
    arm = np.subtract(total.balance_point_m, hook)
    weight = np.array((0.0, 0.0, -total.mass_kg * STANDARD_GRAVITY_M_S2))

    def rates(_time: float, state: np.ndarray) -> np.ndarray:
        turn, momentum = state[:9].reshape(3, 3), state[9:]
        spin = np.linalg.solve(turn @ inertia @ turn.T, momentum)
        moment = np.cross(turn @ arm, weight) - drag_s * momentum
        return np.concatenate((np.cross(spin, turn.T).T.ravel(), moment))

    start = np.concatenate((np.eye(3).ravel(), np.zeros(3)))
    found = solve_ivp(rates, (0.0, seconds), start, method="DOP853", rtol=1e-12, atol=1e-13)
    return found.y[:9, -1].reshape(3, 3).T @ (0.0, 0.0, -1.0)


def ticked(body: HungBody, swing: SpatialSwing, seconds: float, dt_s: float = TICK_S) -> SpatialSwing:
    for _ in range(round(seconds / dt_s)):
        swing = spatial_tick(body, swing, dt_s)
    return swing


def lowest_j(body: HungBody) -> float:
    return -hypot(*body.pull_n_m)


@pytest.mark.parametrize("drag_s", [0.0, 0.6])
@pytest.mark.parametrize("name", HOOKS)
def test_down_is_within_a_millionth_of_an_adaptive_solution_after_ten_seconds(name: str, drag_s: float) -> None:
    body = hung_body(GLIDER, HOOKS[name], drag_s=drag_s)
    assert 2.0 * pi / body.paces_s[1] >= 0.4
    swing = ticked(body, SpatialSwing(), 10.0)
    # What the lab promises for periods of 0.4 s and more.
    assert np.abs(np.array(swing.down) - solved(GLIDER, HOOKS[name], drag_s, 10.0)).max() < 1e-6


@pytest.mark.parametrize("name", HOOKS)
def test_the_energy_stays_within_a_millionth_of_its_range_for_a_minute(name: str) -> None:
    body, swing = hung_body(GLIDER, HOOKS[name]), SpatialSwing()
    start = spatial_energy_j(body, swing)
    strayed = 0.0
    for _ in range(12_000):
        swing = spatial_tick(body, swing)
        strayed = max(strayed, abs(spatial_energy_j(body, swing) - start))
    assert strayed < 1e-6 * (start - lowest_j(body))


@pytest.mark.parametrize("name", HOOKS)
def test_a_damped_swing_comes_to_rest_as_it_hangs_and_never_gains_energy(name: str) -> None:
    body = hung_body(GLIDER, HOOKS[name], drag_s=1.0)
    swing = SpatialSwing()
    before = start = spatial_energy_j(body, swing)
    span = start - lowest_j(body)
    for _ in range(12_000):
        swing = spatial_tick(body, swing)
        now = spatial_energy_j(body, swing)
        # Where it stands still for a moment nothing is lost, and the method's own waver shows.
        assert now <= before + 1e-9 * span
        before = now
        if swing.settled:
            break
    rest = hanging_attitude(GLIDER, HOOKS[name])
    assert swing.settled
    assert rest is not None
    assert rest.roll_rad is not None
    assert swing.pitch_rad == pytest.approx(rest.pitch_rad, abs=1e-12)  # round-off
    assert swing.roll_rad == pytest.approx(rest.roll_rad, abs=1e-12)
    assert spatial_tick(body, swing) is swing


def test_half_the_step_leaves_a_sixty_fourth_of_the_error() -> None:
    # At these steps the error, 1e-4 to 1e-8, is far above round-off and its series is down to the first term.
    hook = HOOKS["wing tip"]
    right = solved(GLIDER, hook, 0.0, 1.6)
    body = hung_body(GLIDER, hook)
    errors = []
    for steps in (100, 200, 400):
        # So short a pace that no tick is divided.
        assert body.paces_s[1] * 1.6 / steps < 0.1
        swing = ticked(body, SpatialSwing(), 1.6, 1.6 / steps)
        errors.append(float(np.abs(np.array(swing.down) - right).max()))
    for coarse, fine in pairwise(errors):
        assert fine < 1e-11 or coarse / fine == pytest.approx(64.0, rel=0.35)


def test_a_body_that_swings_in_its_plane_of_symmetry_swings_as_one_on_a_pin() -> None:
    level = tuple(part for part in GLIDER if part.name in ("fuselage", "wing", "tail"))
    hook = (0.30, 0.0, 0.2)
    pivot = Pivot(hook[0], up_m=hook[2], stop_rad=pi)
    flat, pinned = pivoted(level, pivot), Swing()
    body, swing = hung_body(level, hook), SpatialSwing()
    for _ in range(2000):
        pinned, swing = swing_tick(flat, pivot, pinned), spatial_tick(body, swing)
        # Anticlockwise as drawn, nose to the left, is nose down; both are within 1e-9 of the truth over ten seconds.
        assert swing.pitch_rad == pytest.approx(-pinned.angle_rad, abs=1e-8)
        assert swing.down[1] == pytest.approx(0.0, abs=1e-12)


def test_a_large_plane_swing_takes_as_long_as_the_elliptic_integral_says() -> None:
    bob = (Part("bob", 1.0, (0.0, 0.0, -0.3), Box((0.05, 0.05, 0.05))),)
    body, tilt = hung_body(bob, (0.0, 0.0, 0.0)), radians(100.0)
    period = 2.0 * pi / body.paces_s[0] * 2.0 / pi * float(ellipk(sin(tilt / 2.0) ** 2))
    start = SpatialSwing(down=(sin(tilt), 0.0, -cos(tilt)))
    swing = ticked(body, start, period, period / round(period / TICK_S))
    # Back at the top it stands still: there an error of time counts by its square.
    assert swing.down == pytest.approx(start.down, abs=1e-9)


@pytest.mark.parametrize("slow", [True, False])
def test_a_spinning_top_goes_round_at_the_rate_of_its_closed_form(slow: bool) -> None:
    """S-69: A cos θ Ω² − C s Ω + P = 0, θ from straight up, P the pull, s the spin about its axis, A and C its
    inertias about the hook and the axis."""
    top = (Part("disc", 0.2, (0.0, 0.0, 0.1), Box((0.3, 0.3, 0.02))),)
    body = hung_body(top, (0.0, 0.0, 0.0))
    inertia = inertia_about_kg_m2(top, (0.0, 0.0, 0.0))
    across, about, pull = float(inertia[0, 0]), float(inertia[2, 2]), hypot(*body.pull_n_m)
    tilt, spin = radians(50.0), 200.0
    root = sqrt((about * spin) ** 2 - 4.0 * across * cos(tilt) * pull)
    going = (about * spin + (-root if slow else root)) / (2.0 * across * cos(tilt))
    # Up in the body is tilted along; the turn is the spin about its axis, and Ω about straight up.
    up = (sin(tilt), 0.0, cos(tilt))
    rates = (going * up[0], 0.0, spin)
    swing = SpatialSwing(down=(-up[0], 0.0, -up[2]), rates_rad_s=rates)
    for _ in range(200):
        swing = spatial_tick(body, swing)
        # It keeps its tilt; the spin of 200 /s makes ten steps of a tick, each as good as the others.
        assert acos(-swing.down[2]) == pytest.approx(tilt, abs=1e-7)
    # In the body, up goes round the axis at Ω cos θ less the spin about it.
    back = (going * cos(tilt) - spin) * 1.0
    turned = np.arctan2(-swing.down[1], -swing.down[0])
    assert np.exp(1j * turned) == pytest.approx(np.exp(1j * back), abs=1e-5)


@pytest.mark.parametrize("name", HOOKS)
def test_mujocos_ball_joint_swings_the_same(name: str) -> None:
    mujoco = pytest.importorskip("mujoco", reason="no wheels for this Python yet")
    hook, total = HOOKS[name], moment_sum(GLIDER)
    inertia = inertia_about_kg_m2(GLIDER, total.balance_point_m)
    at = " ".join(repr(float(a - b)) for a, b in zip(total.balance_point_m, hook, strict=True))
    spread = " ".join(repr(float(inertia[i, j])) for i, j in ((0, 0), (1, 1), (2, 2), (0, 1), (0, 2), (1, 2)))
    model = mujoco.MjModel.from_xml_string(
        f'<mujoco><option timestep="0.0005" integrator="RK4" gravity="0 0 -{STANDARD_GRAVITY_M_S2}"/><worldbody>'
        f'<body><joint type="ball"/><inertial mass="{total.mass_kg!r}" pos="{at}" fullinertia="{spread}"/></body>'
        "</worldbody></mujoco>"
    )
    data = mujoco.MjData(model)
    body, swing = hung_body(GLIDER, hook), SpatialSwing()
    for _ in range(5):
        swing = ticked(body, swing, 1.0)
        mujoco.mj_step(model, data, nstep=2000)
        down = data.xmat[1].reshape(3, 3).T @ (0.0, 0.0, -1.0)
        # Theirs: fourth order at half a millisecond and paces of 8 /s, some 1e-8 over five seconds; their balance
        # point and inertia pass through text and an eigenvalue solver of their own.
        assert swing.down == pytest.approx(down, abs=1e-6)
