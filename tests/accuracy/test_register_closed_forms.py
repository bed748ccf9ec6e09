"""Shifts, ballast, tilts, periods and supports against formulas that sympy derives, and numbers that mpmath finds.

sympy starts from what balance means (moments about a point add up to nothing), not from our formulas.
"""

from math import atan2, pi, radians

import mpmath
import numpy as np
import pytest
import sympy
from scipy.optimize import brentq
from scipy.special import ellipkinc

from lab.mechanics import (
    STANDARD_GRAVITY_M_S2,
    Friction,
    Part,
    Pivot,
    Rod,
    Swing,
    balance_shift_m,
    ballast_kg,
    large_swing_period_s,
    loading_shift_m,
    mean_chord,
    move_m,
    moved_mass_kg,
    pivoted,
    small_swing_period_s,
    support_reactions_n,
    swing_tick,
    turn_about,
    two_finger_slide,
)
from lab.mechanics.surfaces import Surface
from lab.mechanics.two_fingers import FingerSlide

RANDOM = np.random.default_rng(4712)
CASES = [tuple(map(float, RANDOM.uniform(0.1, 5.0, 5))) for _ in range(12)]
#: A closed form and ours both round a few times.
CLOSE = 1e-12


def solved(equation: sympy.Expr, unknown: sympy.Symbol, values: dict[sympy.Symbol, float]) -> float:
    """The one root of an equation, exact until the numbers go in, and then with thirty digits."""
    (root,) = sympy.solve(equation, unknown)
    return float(root.subs({name: sympy.Float(value, 30) for name, value in values.items()}))


W, w, x, d, s, t, b, m = sympy.symbols("W w x d s t b m", real=True)


@pytest.mark.parametrize("case", CASES)
def test_shifts_are_what_the_moments_before_and_after_give(case: tuple[float, ...]) -> None:
    whole, part, by, at, balance = case
    whole += part
    before, after = (W - w) * x + w * t, (W - w) * x + w * (t + d)
    shift = solved(W * s - (after - before), s, {W: whole, w: part, d: by})
    assert balance_shift_m(mass_kg=part, by_m=by, whole_kg=whole) == pytest.approx(shift, rel=CLOSE)
    back = solved(W * s - (after - before), d, {W: whole, w: part, s: shift})
    assert move_m(mass_kg=part, balance_shift_m=shift, whole_kg=whole) == pytest.approx(back, rel=CLOSE)
    mass = solved(W * s - (after - before), w, {W: whole, d: by, s: shift})
    assert moved_mass_kg(by_m=by, balance_shift_m=shift, whole_kg=whole) == pytest.approx(mass, rel=CLOSE)
    added = solved((W + w) * (x + s) - (W * x + w * t), s, {W: whole, w: part, x: balance, t: at})
    ours = loading_shift_m(mass_kg=part, at_m=at, whole_kg=whole, balance_m=balance)
    assert ours == pytest.approx(added, rel=CLOSE, abs=1e-15)


@pytest.mark.parametrize("case", CASES)
def test_ballast_is_what_brings_the_moment_about_the_target_to_nothing(case: tuple[float, ...]) -> None:
    whole, gap, arm, target, _ = case
    now, at = target + gap, target - arm
    exact = solved(W * (x - t) + w * (b - t), w, {W: whole, x: now, t: target, b: at})
    assert ballast_kg(whole_kg=whole, now_m=now, target_m=target, at_m=at) == pytest.approx(exact, rel=CLOSE)


def test_the_static_tilt_is_the_angle_whose_tangent_is_lever_over_drop() -> None:
    """From the turned places of symbols: Σ m (x cos θ - z sin θ) = 0."""
    theta = sympy.Symbol("theta", real=True)
    masses, alongs, ups = (sympy.symbols(f"{name}:3", real=True) for name in "mxz")
    torque = sum(
        mass * (along * sympy.cos(theta) - up * sympy.sin(theta))
        for mass, along, up in zip(masses, alongs, ups, strict=True)
    )
    tangent = sympy.Symbol("tangent", real=True)
    (root,) = sympy.solve(
        sympy.expand(torque / sympy.cos(theta)).subs(sympy.sin(theta) / sympy.cos(theta), tangent), tangent
    )
    for seed in range(12):
        random = np.random.default_rng(seed)
        numbers = random.uniform((0.1, -0.2, -0.3), (1.0, 0.2, -0.05), (3, 3))
        parts = [Part(f"p{n}", float(a), (float(b), 0.0, float(c))) for n, (a, b, c) in enumerate(numbers)]
        values = dict(zip((*masses, *alongs, *ups), map(sympy.Float, numbers.T.ravel()), strict=True))
        tilt = turn_about(parts, Pivot(0.0, stop_rad=pi)).tilt_rad
        assert tilt == pytest.approx(float(sympy.atan(root.subs(values))), abs=1e-13)


def test_the_small_period_is_that_of_the_linearised_torque() -> None:
    """About its rest, from the derivative of the torque of a rod and a bob: 2π √(I / -torque')."""
    theta, length, rod, bob = sympy.symbols("theta length rod bob", positive=True)
    g = sympy.Float(STANDARD_GRAVITY_M_S2)
    torque = -(rod * g * length / 2 + bob * g * length) * sympy.sin(theta)
    slab = sympy.Symbol("slab", positive=True)
    inertia = sympy.integrate(rod / length * slab**2, (slab, 0, length)) + bob * length**2
    period = 2 * sympy.pi * sympy.sqrt(inertia / -sympy.diff(torque, theta).subs(theta, 0))
    for one, other, reach, *_ in CASES:
        parts = [
            Part("rod", one, (0.0, 0.0, -reach / 2), Rod(reach, "up")),
            Part("bob", other, (0.0, 0.0, -reach)),
        ]
        exact = float(period.subs({rod: one, bob: other, length: reach}))
        assert small_swing_period_s(pivoted(parts, Pivot(0.0))) == pytest.approx(exact, rel=CLOSE)


@pytest.mark.parametrize("amplitude_deg", [1.0, 45.0, 90.0, 150.0, 179.0, 179.9])
def test_a_large_period_is_mpmaths_elliptic_integral_to_the_last_digits(amplitude_deg: float) -> None:
    body = pivoted([Part("bob", 1.0, (0.0, 0.0, -0.7))], Pivot(0.0))
    with mpmath.workdps(40):
        half = mpmath.mpf(radians(amplitude_deg)) / 2
        pace = mpmath.sqrt(mpmath.mpf(STANDARD_GRAVITY_M_S2) / mpmath.mpf(0.7))
        exact = float(4 * mpmath.ellipk(mpmath.sin(half) ** 2) / pace)
    # Near the top the period grows as -log(cos): an amplitude's own last digit counts some 500-fold at 179.9°.
    assert large_swing_period_s(body, radians(amplitude_deg)) == pytest.approx(exact, rel=1e-12)


@pytest.mark.parametrize("amplitude_deg", [20.0, 100.0, 170.0])
def test_ticks_pass_every_angle_when_the_incomplete_integral_says(amplitude_deg: float) -> None:
    """From rest at the amplitude down to an angle: t = (K(k) - F(φ, k)) / pace, sin φ = sin(θ/2) / k."""
    amplitude, length = radians(amplitude_deg), 0.7
    pin = Pivot(0.0, stop_rad=pi)
    body = pivoted([Part("bob", 1.0, (0.0, 0.0, -length))], pin)
    pace, k = np.sqrt(STANDARD_GRAVITY_M_S2 / length), np.sin(amplitude / 2)
    swing = Swing(amplitude)
    for tick in range(1, 60):
        swing = swing_tick(body, pin, swing)
        if swing.rate_rad_s >= 0.0 or swing.angle_rad <= -0.99 * amplitude:
            break
        phase = np.arcsin(np.sin(swing.angle_rad / 2) / k)
        passed = (ellipkinc(pi / 2, k**2) - ellipkinc(phase, k**2)) / pace
        # Near rest a time is only known to the root of round-off over the pace; below, to 1e-12.
        assert passed == pytest.approx(0.005 * tick, abs=1e-9)


@pytest.mark.parametrize("seed", range(8))
def test_three_supports_solve_sympys_three_equations(seed: int) -> None:
    random = np.random.default_rng(seed)
    feet = [(0.0, 0.0), (1.0, float(random.uniform(-0.2, 0.2))), (float(random.uniform(0.2, 0.8)), 1.0)]
    inside = random.dirichlet((2.0, 2.0, 2.0), size=5) @ np.array(feet)
    parts = [
        Part(f"p{n}", float(random.uniform(0.1, 2.0)), (float(a), float(b), 0.1 * n)) for n, (a, b) in enumerate(inside)
    ]
    forces = sympy.symbols("f0 f1 f2")
    exact = [[sympy.Rational(*float(value).as_integer_ratio()) for value in foot] for foot in feet]
    loads = [[sympy.Rational(*value.as_integer_ratio()) for value in (p.mass_kg, *p.at_m[:2])] for p in parts]
    root = sympy.solve(
        [
            sum(forces) - sum(load[0] for load in loads),
            *(
                sum(f * foot[axis] for f, foot in zip(forces, exact, strict=True))
                - sum(load[0] * load[1 + axis] for load in loads)
                for axis in (0, 1)
            ),
        ],
        forces,
    )
    found = support_reactions_n(parts, [(*foot, 0.0) for foot in feet])
    expected = [float(root[f]) * STANDARD_GRAVITY_M_S2 for f in forces]
    assert found == pytest.approx(expected, rel=CLOSE)


def _grip_left_over(near: float, held: float, static: float, kinetic: float) -> float:
    """What slides, so near, pulls with more than what holds can give; both are pressed by the other's distance."""
    return (kinetic * held - static * near) / (near + held)


@pytest.mark.parametrize(("static", "kinetic"), [(0.5, 0.3), (0.6, 0.55), (1.2, 0.2)])
def test_fingers_stop_where_scipy_finds_both_frictions_equal(static: float, kinetic: float) -> None:
    """The slider's kinetic friction, grown with its load, against the most that the other's static holds."""
    slide = two_finger_slide([Part("oar", 1.2, (0.0, 0.0, 0.0))], -0.5, 0.8, left=Friction(static, kinetic))
    assert isinstance(slide, FingerSlide)
    left, right = -0.5, 0.8
    for leg in slide.legs[:-1]:
        on_left, on_right = 1.2 * right / (right - left), 1.2 * -left / (right - left)
        moves_right = static * on_right < static * on_left
        assert leg.mover == ("right" if moves_right else "left")
        held = -left if moves_right else right
        stop = brentq(_grip_left_over, 1e-9, 2.0, args=(held, static, kinetic), xtol=1e-15)
        left, right = (left, stop) if moves_right else (-stop, right)
        assert leg.to_m == pytest.approx((left, right), abs=1e-12)
    assert slide.legs[-1].to_m[1] - slide.legs[-1].to_m[0] == pytest.approx(0.01, abs=1e-12)


def test_the_mean_chord_is_sympys_integral_over_the_half_span() -> None:
    root, tip, half, y = sympy.symbols("root tip half y", positive=True)
    chord = root + (tip - root) * y / half
    area = sympy.integrate(chord, (y, 0, half))
    length = sympy.simplify(sympy.integrate(chord**2, (y, 0, half)) / area)
    across = sympy.simplify(sympy.integrate(chord * y, (y, 0, half)) / area)
    for one, other, span, lean, _ in CASES:
        sweep = lean / 10.0
        surface = Surface(name="wing", root_chord_m=one, tip_chord_m=other, span_m=span, sweep_rad=sweep)
        values = {root: one, tip: other, half: span / 2}
        found = mean_chord(surface)
        assert found.length_m == pytest.approx(float(length.subs(values)), rel=CLOSE)
        assert found.across_m == pytest.approx(float(across.subs(values)), rel=CLOSE)
        # Each strip's leading edge, weighted by its area, is where the mean chord's lies.
        assert atan2(found.at_m, found.across_m) == pytest.approx(sweep, rel=CLOSE)
