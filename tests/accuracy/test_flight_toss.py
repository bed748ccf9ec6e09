"""Tosses against adaptive solutions, their own order and closed forms; the margin against what they do."""

from dataclasses import replace
from math import cos, hypot, pi, sin, sqrt

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

from lab.figures.accuracy_flight import GLIDER
from lab.figures.path_flight import path_rates, solved_place_m, solved_roots_s
from lab.mechanics import (
    STANDARD_GRAVITY_M_S2,
    TICK_S,
    Aerodynamics,
    Airframe,
    Launch,
    Surface,
    TossMotion,
    aerodynamics,
    balance_for_margin_m,
    flight_modes,
    launched,
    neutral_point,
    set_glide,
    toss,
    toss_tick,
)
from lab.mechanics.airframes import STALL_FADE_RAD
from lab.mechanics.tosses import State, motion_rates, runge_kutta

WING, TAIL = GLIDER.surfaces
FOREPLANE = replace(TAIL, name="foreplane", at_m=(-0.4, 0.0, 0.02))
SWEPT = Surface(name="wing", root_chord_m=0.2, tip_chord_m=0.12, span_m=1.0, sweep_rad=0.35)
KINDS = {"tail": (WING, TAIL), "foreplane": (WING, FOREPLANE), "no tail": (SWEPT,)}


#: Of 120 g gliders: a wing alone is short, and turns the more easily.
INERTIA_KG_M2 = {"tail": 0.003, "foreplane": 0.003, "no tail": 0.0005}


def with_margin(kind: str, margin: float, *, heavier: float = 1.0, inertia: float | None = None) -> Airframe:
    """A glider of that kind that balances so far ahead of its neutral point."""
    surfaces = KINDS[kind]
    inertia = INERTIA_KG_M2[kind] if inertia is None else inertia
    neutral = neutral_point(surfaces)
    at = balance_for_margin_m(neutral.at_m, neutral.chord.length_m, margin)
    return Airframe(
        surfaces=surfaces,
        mass_kg=0.12 * heavier,
        balance_point_m=(at, 0.0, 0.0),
        pitch_inertia_kg_m2=inertia * heavier,
    )


def as_state(motion: TossMotion) -> State:
    return (
        motion.u_m_s, motion.w_m_s, motion.rate_rad_s, motion.pitch_rad, motion.ahead_m, motion.up_m,
    )  # fmt: skip


def solved(air: Aerodynamics, state: State, seconds: float) -> np.ndarray:
    """Our own equations by DOP853: this checks the steps, not the equations."""
    return solve_ivp(
        lambda _time, at: motion_rates(air, tuple(at)), (0.0, seconds), state, method="DOP853", rtol=1e-11, atol=1e-11
    ).y[:, -1]


@pytest.mark.parametrize("kind", KINDS)
def test_a_flight_ends_where_the_equations_in_other_axes_end(kind: str) -> None:
    air = aerodynamics(with_margin(kind, 0.1))
    motion = launched(air, Launch())
    ahead, up = solved_place_m(air, motion, 10.0)
    for _ in range(round(10.0 / TICK_S)):
        motion = toss_tick(air, motion)
    # Fifty metres flown; steps of 0.2 rad of phase are right to some 1e-6 of the nod, which is over in a second.
    assert hypot(motion.ahead_m - ahead, motion.up_m - up) < 1e-6


def test_a_tumble_is_stepped_as_an_adaptive_solution_goes() -> None:
    air = aerodynamics(with_margin("tail", -0.3))
    motion = launched(air, Launch())
    start = as_state(motion)
    steepest = 0.0
    for _ in range(400):
        motion = toss_tick(air, motion)
        steepest = max(steepest, abs(motion.attack_rad))
    assert steepest > air.stall_rad + STALL_FADE_RAD  # the flow has let go of it wholly
    # The stall's fade is smooth to the second derivative only: fourth order is lost at its ends, 1e-5 is left.
    assert as_state(motion) == pytest.approx(tuple(solved(air, start, 2.0)), abs=1e-4)


def test_half_the_step_leaves_a_sixteenth_of_the_error() -> None:
    air = aerodynamics(with_margin("tail", 0.1))
    start = as_state(launched(air, Launch(upset_rad=0.05)))
    right = solved(air, start, 1.0)

    def error(steps: int) -> float:
        state = start
        for _ in range(steps):
            state = runge_kutta(air, state, 1.0 / steps)
        return float(np.linalg.norm(np.array(state) - right))

    # Steps of 1/80 to 1/320 s for a nod that dies at 20 /s: errors of 1e-6 to 1e-9, above DOP853's own 1e-11.
    errors = [error(steps) for steps in (80, 160, 320)]
    assert errors[0] / errors[1] == pytest.approx(16.0, rel=0.1)
    assert errors[1] / errors[2] == pytest.approx(16.0, rel=0.1)


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("margin", [0.02, 0.1, 0.3, -0.05])
def test_the_modes_are_those_of_the_equations_in_other_axes(kind: str, margin: float) -> None:
    air = aerodynamics(with_margin(kind, margin))
    ours = [complex(mode.growth_s, mode.pace_s) for mode in flight_modes(air).modes]
    theirs = [root for root in solved_roots_s(air) if root.imag >= 0.0]
    # Central differences in both, each right to some 1e-9.
    assert ours == pytest.approx(theirs, rel=1e-6)


def test_nod_and_swoop_are_seen_in_an_adaptive_flight() -> None:
    # Four small upsets flown by DOP853 for a while give the propagator; its eigenvalues are what was flown.
    air = aerodynamics(with_margin("tail", 0.15, inertia=0.006))
    glide = set_glide(air)
    middle = np.array([glide.speed_m_s, glide.climb_rad, glide.climb_rad + glide.attack_rad, 0.0, 0.0, 0.0])
    seconds, nudge = 0.1, 1e-4

    def flown(start: np.ndarray) -> np.ndarray:
        found = solve_ivp(
            lambda _time, at: path_rates(air, at), (0.0, seconds), start, method="DOP853", rtol=1e-12, atol=1e-13
        )
        return found.y[:4, -1]

    columns = [(flown(middle + each) - flown(middle - each)) / (2.0 * nudge) for each in np.eye(6)[:4] * nudge]
    roots = np.log(np.linalg.eigvals(np.stack(columns, axis=1)).astype(complex)) / seconds
    modes = flight_modes(air).modes
    assert [mode.pace_s > 0.0 for mode in modes] == [True, True]
    for mode in modes:
        root = complex(mode.growth_s, mode.pace_s)
        # Upsets of 1e-4 leave their square, 1e-8, over a propagator that has fallen to a quarter.
        assert min(abs(root - each) for each in roots) < 1e-5 * abs(root)


def test_a_dense_slippery_glider_swoops_as_lanchester_says() -> None:
    # His closed form knows no drag and holds the angle: heavy against the air it moves, and much margin.
    air = aerodynamics(with_margin("tail", 0.5, heavier=1000.0))
    swoop = flight_modes(air).modes[-1].period_s
    closed = sqrt(2.0) * pi * set_glide(air).speed_m_s / STANDARD_GRAVITY_M_S2
    # Drag bends it by (drag / lift)² / 4, some 0.2 %; damping over so heavy a body by less.
    assert swoop == pytest.approx(closed, rel=0.01)


@pytest.mark.parametrize("kind", KINDS)
def test_running_away_begins_exactly_at_the_neutral_point(kind: str) -> None:
    neutral = neutral_point(KINDS[kind])

    def spring(margin: float) -> float:
        return flight_modes(aerodynamics(with_margin(kind, margin))).spring_s4

    turning = float(brentq(spring, -0.05, 0.06, xtol=1e-12))
    # The lattice about one place or the other differs by round-off, the differences by 1e-10 of a root.
    assert abs(turning) < 1e-8
    assert neutral.chord.length_m > 0.1
    ahead, behind = (flight_modes(aerodynamics(with_margin(kind, margin))) for margin in (1e-4, -1e-4))
    assert ahead.returns
    assert not behind.returns


@pytest.mark.parametrize("kind", KINDS)
def test_what_a_toss_does_follows_the_margin(kind: str) -> None:
    ahead, behind, far = (toss(with_margin(kind, margin)) for margin in (0.2, -0.03, -0.3))
    assert ahead.flight == "glides"
    assert not ahead.out_of_depth
    assert ahead.margin == pytest.approx(0.2, abs=1e-9)
    assert behind.flight in {"swoops", "tumbles"}
    assert far.flight == "tumbles"
    assert "stalls" in far.out_of_depth
    # Back to its glide, to a tenth of the upset; away from it, beyond the upset many times over.
    glide_rad = set_glide(aerodynamics(with_margin(kind, 0.2))).attack_rad
    assert abs(ahead.attack_rad[-1] - glide_rad) < 0.1 * abs(ahead.attack_rad[0] - glide_rad)
    away = np.abs(behind.attack_rad - glide_rad)
    assert away.max() > 2.0 * away[0]


@pytest.mark.parametrize("kind", KINDS)
def test_a_launch_without_upset_glides_on_unchanged(kind: str) -> None:
    airframe = with_margin(kind, 0.15)
    glide = set_glide(aerodynamics(airframe))
    flown = toss(airframe, Launch(upset_rad=0.0))
    # Every force is even to round-off; the tail-less one's swoop grows, but from 1e-15.
    assert flown.climb_rad == pytest.approx(np.full(len(flown.time_s), glide.climb_rad), abs=1e-9)
    assert flown.speed_m_s == pytest.approx(np.full(len(flown.time_s), glide.speed_m_s), rel=1e-9)
    fallen = flown.up_m[0] - flown.up_m[-1]
    assert fallen / flown.ahead_m[-1] == pytest.approx(-sin(glide.climb_rad) / cos(glide.climb_rad), rel=1e-9)


def test_a_swoop_that_grows_is_called_one() -> None:
    # A wing alone with much inertia along: its nod damps too little to hold the swoop, though its margin is fair.
    airframe = with_margin("no tail", 0.1, inertia=0.002)
    modes = flight_modes(aerodynamics(airframe))
    assert modes.spring_s4 > 0.0
    assert not modes.returns
    assert toss(airframe).flight == "swoops"
    assert not toss(airframe).out_of_depth
