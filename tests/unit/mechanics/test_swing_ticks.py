"""Ticks of the swing: rest, stops, bounces, damping, pads and bodies of any size."""

from itertools import pairwise
from math import copysign, pi, radians

import pytest

from lab.mechanics import Part, Pivot, Rod, Swing, pivoted, swing_energy_j, swing_tick, turn_about
from lab.mechanics.pivots import on_edge
from lab.mechanics.swing import STOP_RESTITUTION

BAR = Part("bar", 0.15, (0.0, 0.0, 0.0), Rod(1.0))


def bar_with(mass: float, at: float) -> list[Part]:
    return [BAR, Part("weight", mass, (at, 0.0, 0.0))]


def run(parts: list[Part], pivot: Pivot, swing: Swing, ticks: int) -> list[Swing]:
    body, path = pivoted(parts, pivot), [swing]
    for _ in range(ticks):
        path.append(swing_tick(body, pivot, path[-1]))
    return path


def test_a_balanced_bar_on_a_pin_below_it_stays_level_for_ever() -> None:
    parts = [BAR, Part("a", 0.1, (0.3, 0.0, 0.0)), Part("b", 0.3, (-0.1, 0.0, 0.0))]
    path = run(parts, Pivot(0.0, up_m=-0.05), Swing(), 3000)
    assert path[-1] == Swing(0.0, 0.0, 0, settled=True)
    assert path[-1] is path[1]


@pytest.mark.parametrize(("at", "end", "stop"), [(-0.2, "left", 1), (0.2, "right", -1)])
def test_an_unbalanced_bar_on_an_unstable_pin_ends_against_the_stop_of_the_heavy_end(
    at: float, end: str, stop: int
) -> None:
    pivot = Pivot(0.0, up_m=-0.02)
    assert turn_about(bar_with(0.1, at), pivot).goes == end
    last = run(bar_with(0.1, at), pivot, Swing(), 2000)[-1]
    assert last == Swing(stop * pivot.stop_rad, 0.0, stop, settled=True)  # type: ignore[arg-type]


def test_a_stop_gives_back_its_share_of_the_rate_at_the_instant_it_is_met() -> None:
    pivot = Pivot(0.0, up_m=-0.02)
    body = pivoted(bar_with(0.1, -0.2), pivot)
    before = Swing()
    while True:
        after = swing_tick(body, pivot, before)
        if after.rate_rad_s < 0.0:
            break
        before = after
    # The energy at the stop, less the share that the stop keeps, is what is left at the end of that tick.
    at_stop = Swing(pivot.stop_rad, 0.0)
    motion = swing_energy_j(body, before) - swing_energy_j(body, at_stop)
    expected = swing_energy_j(body, at_stop) + STOP_RESTITUTION**2 * motion
    assert swing_energy_j(body, after) == pytest.approx(expected, rel=1e-10)
    assert abs(after.angle_rad) <= pivot.stop_rad


def test_a_stop_moved_in_past_the_bar_catches_it() -> None:
    path = run(bar_with(0.1, -0.2), Pivot(0.0, up_m=0.01, stop_rad=radians(5)), Swing(radians(15), 0.0), 400)
    assert path[-1].angle_rad == pytest.approx(radians(5))
    assert path[-1].settled


def test_a_settled_bar_wakes_when_its_weights_change() -> None:
    pivot = Pivot(0.0, up_m=-0.02)
    resting = run(bar_with(0.1, -0.2), pivot, Swing(), 2000)[-1]
    woken = swing_tick(pivoted(bar_with(0.1, 0.2), pivot), pivot, resting)
    assert not woken.settled
    assert woken.rate_rad_s < 0.0


def test_a_damped_swing_settles_at_its_static_tilt_and_an_undamped_one_goes_on() -> None:
    parts = bar_with(0.1, -0.02)
    damped = Pivot(0.0, up_m=0.05, damping_kg_m2_s=0.02)
    last = run(parts, damped, Swing(), 8000)[-1]
    assert last.settled
    assert last.angle_rad == pytest.approx(turn_about(parts, damped).tilt_rad)
    assert not run(parts, Pivot(0.0, up_m=0.05), Swing(), 8000)[-1].settled


def test_a_bar_pinned_at_its_balance_point_coasts_and_comes_to_rest_where_it_is() -> None:
    path = run([BAR], Pivot(0.0, stop_rad=pi), Swing(0.1, 0.2), 100)
    assert path[-1].angle_rad == pytest.approx(0.2)
    damped = run([BAR], Pivot(0.0, stop_rad=pi, damping_kg_m2_s=0.01), Swing(0.1, 0.2), 4000)[-1]
    assert damped.settled
    assert damped.angle_rad > 0.1


def test_a_build_with_nothing_to_turn_rests() -> None:
    point = [Part("point", 1.0, (0.0, 0.0, 0.0))]
    assert run(point, Pivot(0.0), Swing(0.1, 1.0), 2)[-1] == Swing(0.1, 0.0, 0, settled=True)


def test_a_body_as_small_as_a_grain_and_one_drowned_in_honey_stay_sound() -> None:
    grain = [Part("grain", 1e-6, (1e-6, 0.0, 0.0)), Part("speck", 1e-6, (0.0, 0.0, -2e-6))]
    for pivot in (Pivot(0.0, stop_rad=pi), Pivot(0.0, stop_rad=pi, damping_kg_m2_s=1e-3)):
        body = pivoted(grain, pivot)
        swing = Swing(0.5)
        start = swing_energy_j(body, swing)
        for _ in range(20):
            swing = swing_tick(body, pivot, swing)
        assert swing_energy_j(body, swing) <= start + 1e-6 * abs(start)
        assert abs(swing.angle_rad) < pi


@pytest.mark.parametrize("damping", [5.0, 50.0, 1e3])
def test_heavy_damping_lets_the_heavy_end_sink_without_a_bounce(damping: float) -> None:
    pivot = Pivot(0.0, up_m=-0.01, damping_kg_m2_s=damping)
    path = run(bar_with(0.5, -0.4), pivot, Swing(), 60)
    angles = [swing.angle_rad for swing in path]
    assert all(later >= sooner for sooner, later in pairwise(angles))
    assert angles[-1] > 0.0


def test_on_a_pad_it_stays_level_while_its_balance_point_is_over_it() -> None:
    parts = bar_with(0.1, 0.05)  # balances at 2 cm
    assert run(parts, Pivot(0.0, up_m=-0.01, pad_m=0.021), Swing(), 1000)[-1] == Swing(settled=True)
    off = run(parts, Pivot(0.0, up_m=-0.01, pad_m=0.019), Swing(), 4000)[-1]
    assert (off.stop, off.settled) == (-1, True)


def test_on_a_pad_it_turns_about_the_edge_and_lands_flat_without_a_bounce() -> None:
    parts = bar_with(0.1, 0.05)
    pivot = Pivot(0.0, up_m=-0.01, pad_m=0.021)
    path = run(parts, pivot, Swing(radians(3)), 2000)
    assert path[-1] == Swing(settled=True)
    edged = on_edge(pivoted(parts, pivot), pivot, side="left")
    energies = [swing_energy_j(edged, swing) for swing in path]
    slack = 1e-9 * (max(energies) - min(energies))
    assert all(later <= sooner + slack for sooner, later in pairwise(energies))


def test_a_given_step_other_than_the_tick_goes_the_same_way() -> None:
    pivot = Pivot(0.0, up_m=0.05)
    body = pivoted(bar_with(0.1, -0.02), pivot)
    whole = swing_tick(body, pivot, Swing(0.1), 0.01)
    halves = swing_tick(body, pivot, swing_tick(body, pivot, Swing(0.1)))
    assert whole.angle_rad == pytest.approx(halves.angle_rad, abs=1e-12)
    assert copysign(1.0, whole.rate_rad_s) == copysign(1.0, halves.rate_rad_s)


def test_a_bar_outside_a_stop_that_was_moved_in_comes_back_from_the_stop() -> None:
    pivot = Pivot(0.0, up_m=0.05, stop_rad=radians(5))
    body = pivoted([BAR], pivot)
    after = swing_tick(body, pivot, Swing(radians(15)))
    assert 0.0 < after.angle_rad < radians(5)
    assert after.rate_rad_s < 0.0


def test_a_small_damped_body_may_come_to_rest_within_a_tick() -> None:
    small = [Part("bead", 1e-3, (0.0, 0.0, -1e-4))]
    pivot = Pivot(0.0, damping_kg_m2_s=4e-9)  # divided into steps, and near critical
    last = run(small, pivot, Swing(0.1), 100)[-1]
    assert last == Swing(settled=True)


def test_a_creeping_bar_comes_to_rest_against_its_stop() -> None:
    pivot = Pivot(0.0, up_m=-0.01, damping_kg_m2_s=25.0)
    last = run(bar_with(0.5, -0.4), pivot, Swing(), 2000)[-1]
    assert last == Swing(pivot.stop_rad, 0.0, 1, settled=True)
