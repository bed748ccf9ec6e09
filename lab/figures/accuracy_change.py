"""How right the changes are: ballast, limits crossed, fingers slid together, doubt."""

import numpy as np

from lab.figures.change_cases import (
    balance_trials_m,
    ballast_cases,
    crossings_by_scipy_s,
    fingers_stepped_m,
    least_by_scipy_kg,
    path_cases,
)
from lab.figures.rows import Row, row
from lab.mechanics import (
    STANDARD_GRAVITY_M_S2,
    CannotBeDone,
    FingerSlide,
    Friction,
    Part,
    balance_point_doubt_m,
    lightest_ballast,
    limit_crossings,
    moment_sum,
    two_finger_slide,
)

SEED = 20_260
BALLAST_SHARE = 1e-9
CROSSING_SHARE = 1e-9
STEP_S = 2e-4
PACE_M_S = 1e-3


def ballast_beside_scipy(cases: int = 200) -> Row:
    """The farthest that our lightest ballast is from scipy's, as a share of it; 1 where one of us finds none."""
    worst = 0.0
    for case in ballast_cases(SEED, cases):
        ours = lightest_ballast(case.parts, case.places, target_m=case.target_m)
        theirs = least_by_scipy_kg(case)
        if isinstance(ours, CannotBeDone) or theirs is None:
            worst = max(worst, 0.0 if isinstance(ours, CannotBeDone) and theirs is None else 1.0)
        else:
            worst = max(worst, abs(ours.mass_kg - theirs) / theirs)
    return row(
        f"ballast: lightest of {cases} builds, share off",
        worst,
        BALLAST_SHARE,
        goal=1.0,
        unit="",
        beside="1e-9 of scipy's linear programme",
    )


def crossings_beside_scipy(cases: int = 100) -> Row:
    """The farthest that an instant of crossing is from scipy's root, as a share of it; 1 where one is missed."""
    worst = 0.0
    for path, limits in path_cases(SEED, cases):
        ours = [crossing.at_s for crossing in limit_crossings(path, limits).crossings]
        theirs = crossings_by_scipy_s(path, limits)
        if len(ours) != len(theirs):
            worst = 1.0
        else:
            worst = max([worst, *(abs(a - b) / b for a, b in zip(ours, theirs, strict=True))])
    return row(
        f"limits: instants of crossing in {cases} flights, share off",
        worst,
        CROSSING_SHARE,
        goal=1.0,
        unit="",
        beside="1e-9 of scipy's root",
    )


def fingers_beside_steps(step_s: float = STEP_S, pace_m_s: float = PACE_M_S) -> Row:
    """The farthest that a finger's stop is from the same slide stepped in time, beside what inertia takes."""
    grips = Friction(0.5, 0.35), Friction(0.45, 0.3)
    slide = two_finger_slide([Part("oar", 1.2, (0.0, 0.0, 0.0))], -0.4, 0.7, left=grips[0], right=grips[1])
    if not isinstance(slide, FingerSlide):
        raise ValueError("these fingers must span the balance point")
    stops = [leg.to_m for leg in slide.legs[:5]]
    stepped = fingers_stepped_m(1.2, (-0.4, 0.7), grips, pace_m_s=pace_m_s, step_s=step_s, turns=5)
    off = max(
        abs(a - b) for ours, theirs in zip(stops, stepped, strict=True) for a, b in zip(ours, theirs, strict=True)
    )
    # Each turn takes a step to notice, and the body some steps to change its speed by twice the pace.
    return row(
        "fingers: where each stops in five turns",
        off,
        100.0 * pace_m_s**2 / STANDARD_GRAVITY_M_S2,
        goal=1.0,
        unit="m",
        beside="way that inertia takes in a slide stepped in time",
    )


def doubted_parts() -> tuple[Part, ...]:
    """A build whose parts are weighed on two scales and measured with one ruler across the axes; one is a hole."""
    doubt = (0.003, 0.0015, 0.002)
    return (
        Part("pole", 0.8, (0.5, 0.02, 0.0), mass_doubt_kg=0.004, at_doubt_m=doubt, set_name="ruler"),
        Part("camera", 0.35, (0.05, -0.04, 0.06), mass_doubt_kg=0.002, at_doubt_m=doubt, set_name="ruler"),
        Part("battery", 0.5, (0.9, 0.0, -0.05), mass_doubt_kg=0.003, at_doubt_m=(0.002, 0.001, 0.001)),
        Part("slot", 0.1, (0.3, 0.01, 0.01), cut=True, mass_doubt_kg=0.001, at_doubt_m=doubt, set_name="ruler"),
    )


def doubt_beside_trials(trials: int = 1_000_000) -> Row:
    """The farthest that an end of a 95 % interval is from that of random trials, beside half of the doubt's second
    digit: what JCGM 101, 8.1, allows before the law of propagation is taken to fail.  Source: S-52."""
    parts = doubted_parts()
    ours = balance_point_doubt_m(parts)
    if ours is None:
        raise ValueError("these parts must state their doubts")
    found = balance_trials_m(parts, SEED, trials)
    balance = moment_sum(parts).balance_point_m
    worst, beside = 0.0, 1.0
    for axis in range(3):
        low, high = np.quantile(found[:, axis], [0.025, 0.975])
        allowed = 0.5 * 10.0 ** (np.floor(np.log10(ours[axis])) - 1.0)
        ends = balance[axis] - 1.959964 * ours[axis], balance[axis] + 1.959964 * ours[axis]
        off = max(abs(ends[0] - low), abs(ends[1] - high))
        if off / allowed > worst / beside:
            worst, beside = float(off), float(allowed)
    return row(
        f"doubt: ends of 95 % beside {trials} trials",
        worst,
        beside,
        goal=1.0,
        unit="m",
        beside="half of its second digit (JCGM 101)",
    )


def change_rows() -> tuple[Row, ...]:
    """Every accuracy of the changes that is measured here."""
    return ballast_beside_scipy(), crossings_beside_scipy(), fingers_beside_steps(), doubt_beside_trials()
