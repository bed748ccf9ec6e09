"""A build on a pivot: which end drops, how far it tilts, what the pivot feels."""

from dataclasses import replace
from math import atan2, inf, nan, pi, radians, sqrt

import pytest

from lab.mechanics import (
    STANDARD_GRAVITY_M_S2,
    MechanicsError,
    Part,
    Pivot,
    Rod,
    large_swing_period_s,
    pivoted,
    small_swing_period_s,
    turn_about,
)

BAR = Part("bar", 0.15, (0.5, 0.0, 0.0), Rod(1.0))


def on_bar(*weights: tuple[float, float]) -> list[Part]:
    return [BAR, *(Part(f"w{n}", mass, (at, 0.0, 0.0)) for n, (mass, at) in enumerate(weights))]


def test_more_weight_to_the_left_drops_the_left_end_anticlockwise() -> None:
    turn = turn_about(on_bar((0.1, 0.2)), Pivot(0.5, up_m=0.1))
    assert turn.goes == "left"
    assert turn.moment_kg_m == pytest.approx(0.03)
    assert turn.tilt_rad is None  # 50°, past the stop at 20°


def test_a_small_moment_tilts_it_to_where_weight_times_arm_equals_weight_times_drop() -> None:
    turn = turn_about(on_bar((0.1, 0.45)), Pivot(0.5, up_m=0.1))
    assert turn.tilt_rad == pytest.approx(atan2(0.1 * 0.05, 0.25 * 0.1))
    right = turn_about(on_bar((0.1, 0.55)), Pivot(0.5, up_m=0.1))
    assert right.goes == "right"
    assert right.tilt_rad == pytest.approx(-atan2(0.1 * 0.05, 0.25 * 0.1))


def test_equal_moments_stay_level_and_the_scale_says_how_large_they_were() -> None:
    turn = turn_about(on_bar((0.2, 0.4), (0.1, 0.7)), Pivot(0.5, up_m=0.02))
    assert (turn.goes, turn.tilt_rad) == ("level", 0.0)
    assert turn.scale_kg_m == pytest.approx(0.04)


def test_nothing_holds_a_bar_on_a_pin_through_or_below_its_weights() -> None:
    for up in (0.0, -0.02):
        turn = turn_about(on_bar((0.1, 0.45)), Pivot(0.5, up_m=up))
        assert (turn.goes, turn.tilt_rad) == ("left", None)
        assert turn_about(on_bar((0.1, 0.4), (0.1, 0.6)), Pivot(0.5, up_m=up)).goes == "level"


def test_a_tilt_beyond_the_stop_is_no_tilt() -> None:
    parts = on_bar((0.1, 0.45))
    tilt = atan2(0.005, 0.025)
    assert turn_about(parts, Pivot(0.5, up_m=0.1, stop_rad=tilt * 0.99)).tilt_rad is None
    assert turn_about(parts, Pivot(0.5, up_m=0.1, stop_rad=tilt * 1.01)).tilt_rad == pytest.approx(tilt)


def test_a_moment_within_a_billionth_of_all_of_them_counts_as_none() -> None:
    nearly = on_bar((0.1, 0.4), (0.1, 0.6 + 1e-10))
    assert turn_about(nearly, Pivot(0.5)).goes == "level"
    assert pivoted(nearly, Pivot(0.5)).lever_kg_m == 0.0
    beyond = on_bar((0.1, 0.4), (0.1, 0.6 + 1e-8))
    assert turn_about(beyond, Pivot(0.5)).goes == "right"


def test_a_balance_point_over_the_pad_is_level_and_past_its_edge_is_not() -> None:
    parts = on_bar((0.1, 0.55))  # balances 2 cm right of the pivot
    assert turn_about(parts, Pivot(0.5, pad_m=0.0201)).goes == "level"
    assert turn_about(parts, Pivot(0.5, pad_m=0.02)).goes == "level"
    assert turn_about(parts, Pivot(0.5, pad_m=0.0199)).goes == "right"
    assert turn_about(parts, Pivot(0.5, pad_m=0.02)).moment_kg_m == pytest.approx(-0.005)


def test_off_a_pad_above_its_weights_it_tilts_about_the_near_edge() -> None:
    parts = on_bar((0.1, 0.55))
    turn = turn_about(parts, Pivot(0.5, up_m=0.1, pad_m=0.01))
    assert turn.tilt_rad == pytest.approx(-atan2(0.005 - 0.01 * 0.25, 0.25 * 0.1))


def test_a_hung_weight_is_felt_as_a_point_at_its_hook() -> None:
    rod = Part("w", 0.2, (0.8, 0.0, -0.05), Rod(0.3))
    pin = Pivot(0.5, up_m=0.1)
    clamped, hung = pivoted([BAR, rod], pin), pivoted([BAR, replace(rod, hold="hung")], pin)
    assert clamped.inertia_kg_m2 - hung.inertia_kg_m2 == pytest.approx(0.2 * 0.09 / 12)
    assert (clamped.lever_kg_m, clamped.drop_kg_m) == (hung.lever_kg_m, hung.drop_kg_m)
    assert hung.inertia_kg_m2 == pytest.approx(0.15 * (1 / 12 + 0.01) + 0.2 * (0.09 + 0.0225))


def test_the_small_swing_is_the_pendulum_formula_and_none_below_the_weights() -> None:
    body = pivoted([BAR], Pivot(0.5, up_m=0.02))
    expected = 2 * pi * sqrt(0.15 * (1 / 12 + 0.0004) / (STANDARD_GRAVITY_M_S2 * 0.15 * 0.02))
    assert small_swing_period_s(body) == pytest.approx(expected)
    assert small_swing_period_s(pivoted([BAR], Pivot(0.5, up_m=-0.02))) is None
    assert large_swing_period_s(pivoted([BAR], Pivot(0.5)), 0.1) is None
    with pytest.raises(MechanicsError, match="amplitude"):
        large_swing_period_s(body, pi)


@pytest.mark.parametrize(
    "bad",
    [
        {"at_m": nan},
        {"at_m": 0.0, "up_m": inf},
        {"at_m": 0.0, "stop_rad": 0.0},
        {"at_m": 0.0, "stop_rad": radians(181)},
        {"at_m": 0.0, "pad_m": -0.1},
        {"at_m": 0.0, "damping_kg_m2_s": -1.0},
    ],
)
def test_a_pivot_that_cannot_be_built_is_refused(bad: dict[str, float]) -> None:
    with pytest.raises(MechanicsError, match="of the pivot is"):
        Pivot(**bad)
