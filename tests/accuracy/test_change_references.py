"""Changes beside references that solve them another way: scipy, steps in time, random trials.

The recorded figures draw more cases of the same kinds: `python -m lab.figures accuracy`.
"""

from dataclasses import replace
from math import isclose

import numpy as np
import pytest

from lab.figures.accuracy_change import (
    ballast_beside_scipy,
    crossings_beside_scipy,
    doubt_beside_trials,
    doubted_parts,
    fingers_beside_steps,
)
from lab.figures.change_cases import ballast_cases, least_by_scipy_kg
from lab.mechanics import (
    Burn,
    Part,
    Pump,
    Tank,
    balance_path,
    balance_point_doubt_m,
    tank_course,
)


def test_the_lightest_ballast_is_that_of_scipys_linear_programme() -> None:
    # scipy's own tolerance is set to 1e-10; a build where only one of the two finds an answer counts as 1.
    assert ballast_beside_scipy(cases=60).met


def test_some_of_those_builds_can_be_balanced_and_some_cannot() -> None:
    found = [least_by_scipy_kg(case) is not None for case in ballast_cases(20_260, 60)]
    assert 15 < sum(found) < 55


def test_limits_are_crossed_when_scipys_root_finding_says() -> None:
    # scipy's root is taken to 1e-15; 1e-9 of the instant is what we promise.
    assert crossings_beside_scipy(cases=30).met


def test_fingers_stop_where_a_slide_stepped_in_time_stops_them() -> None:
    fast, slow = fingers_beside_steps(5e-4, 2e-3), fingers_beside_steps(5e-4, 1e-3)
    assert fast.met
    assert slow.met
    # What is left is inertia, which goes with the square of the pace; 10 % for the steps.
    assert fast.ours / slow.ours == pytest.approx(4.0, rel=0.1)


def test_doubt_holds_against_random_trials_with_sets_across_the_axes() -> None:
    assert doubt_beside_trials(trials=400_000).met


def test_a_set_taken_as_independent_would_be_caught_by_the_trials() -> None:
    apart = tuple(replace(part, set_name=None) for part in doubted_parts())
    together, lone = balance_point_doubt_m(doubted_parts()), balance_point_doubt_m(apart)
    assert together is not None
    assert lone is not None
    # Trials beside the law agree to half a hundredth; this is several times as much.
    assert not isclose(together[0], lone[0], rel_tol=0.05)


def test_tanks_run_as_ten_thousand_small_steps_do() -> None:
    tanks = [
        Tank(name=name, at_m=(at, 0.0, 0.0), capacity_m3=2.0, contents_m3=held, density_kg_m3=800.0)
        for name, at, held in (("main", 0.0, 1.0), ("wing", 1.0, 1.8), ("tail", 3.0, 1.0))
    ]
    plan = [Burn(rate_m3_s=0.02, tanks=("main", "wing"), for_s=40.0), Burn(rate_m3_s=0.03, tanks=("main",))]
    pumps = [
        Pump(source="tail", target="main", rate_m3_s=0.05, from_s=10.0, until_s=25.0),
        Pump(source="wing", target="main", rate_m3_s=0.025, from_s=50.0),
    ]
    course = tank_course(tanks, plan, pumps=pumps)
    step = 0.005
    held = np.array([1.0, 1.8, 1.0])
    worst = 0.0
    for number in range(round(80.0 / step)):
        now = number * step
        worst = max(worst, float(np.abs(np.array(course.contents_at(now)) - held).max()))
        draws = np.array([0.01, 0.01, 0.0]) if now < 40.0 else np.array([0.03, 0.0, 0.0])
        held -= np.minimum(draws * step, held)
        for pump, source in ((pumps[0], 2), (pumps[1], 1)):
            if pump.from_s <= now < pump.until_s:
                moved = min(pump.rate_m3_s * step, held[source], 2.0 - held[0])
                held[source] -= moved
                held[0] += moved
    # A step overshoots an event by at most what flows in it, once an event.
    assert worst < 4 * 0.05 * step
    path = balance_path([Part("hull", 500.0, (1.0, 0.0, 0.0))], course)
    at_60 = np.array(course.contents_at(60.0)) * 800.0
    by_hand = (500.0 + at_60 @ np.array([0.0, 1.0, 3.0])) / (500.0 + at_60.sum())
    assert path.point_at(60.0).balance_point_m[0] == pytest.approx(by_hand, rel=1e-13)
