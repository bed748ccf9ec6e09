"""The edges of a body that hangs by one point: what it refuses, what stays where it is, and what has no inertia."""

from math import isfinite, nan, radians

import pytest

from lab.mechanics import (
    Box,
    MechanicsError,
    Part,
    Point,
    Rod,
    SpatialSwing,
    attitude_of,
    hanging_attitude,
    hung_body,
    spatial_energy_j,
    spatial_tick,
)

BOX = (Part("box", 1.0, (0.1, 0.0, -0.2), Box((0.1, 0.2, 0.05))),)
HOOK = (0.0, 0.0, 0.0)


def at_rest(parts: tuple[Part, ...], drag_s: float = 2.0, start: SpatialSwing | None = None) -> SpatialSwing:
    body, swing = hung_body(parts, HOOK, drag_s=drag_s), start or SpatialSwing()
    for _ in range(20_000):
        if swing.settled:
            break
        swing = spatial_tick(body, swing)
    assert swing.settled
    return swing


@pytest.mark.parametrize("drag_s", [-1.0, nan])
def test_a_drag_that_would_push_is_refused_by_name(drag_s: float) -> None:
    with pytest.raises(MechanicsError, match="drag is"):
        hung_body(BOX, HOOK, drag_s=drag_s)


@pytest.mark.parametrize("dt_s", [0.0, -0.005, nan])
def test_a_tick_takes_time(dt_s: float) -> None:
    with pytest.raises(MechanicsError, match="tick is"):
        spatial_tick(hung_body(BOX, HOOK), SpatialSwing(), dt_s)


def test_down_must_point_somewhere_and_rates_be_numbers() -> None:
    with pytest.raises(MechanicsError, match="direction of down"):
        SpatialSwing(down=(0.0, 0.0, 0.0))
    with pytest.raises(MechanicsError, match="rate of turning"):
        SpatialSwing(rates_rad_s=(0.0, nan, 0.0))
    with pytest.raises(MechanicsError, match="hook"):
        hung_body(BOX, (nan, 0.0, 0.0))
    with pytest.raises(MechanicsError):
        hung_body((), HOOK)


def test_a_body_hung_by_its_balance_point_stays_as_it_is_held() -> None:
    held = SpatialSwing(down=(0.6, 0.0, -0.8))
    body = hung_body(BOX, (0.1, 0.0, -0.2))
    assert body.rest is None
    after = spatial_tick(body, held)
    assert after.settled
    assert after.down == held.down
    assert spatial_tick(body, after) is after


def test_a_body_spun_about_its_balance_point_comes_to_rest_by_drag_alone() -> None:
    body = hung_body(BOX, (0.1, 0.0, -0.2), drag_s=2.0)
    swing = SpatialSwing(rates_rad_s=(0.5, 1.0, 0.2))
    for _ in range(6000):
        swing = spatial_tick(body, swing)
    assert swing.settled
    assert swing.rates_rad_s == (0.0, 0.0, 0.0)


def test_a_bob_on_a_thread_has_no_turn_about_the_thread_and_swings() -> None:
    bob = (Part("bob", 0.3, (0.2, 0.1, 0.0), Point()),)
    body = hung_body(bob, HOOK)
    assert min(body.moments_kg_m2) == 0.0
    assert body.paces_s[0] == pytest.approx(body.paces_s[1], rel=1e-9)  # a round pendulum; round-off
    rest = hanging_attitude(bob, HOOK)
    settled = at_rest(bob)
    assert rest is not None
    assert settled.pitch_rad == pytest.approx(rest.pitch_rad, abs=1e-12)


def test_a_rod_hung_by_its_end_is_no_body_about_its_own_length() -> None:
    rod = (Part("rod", 0.3, (0.25, 0.0, 0.0), Rod(0.5)),)
    settled = at_rest(rod)
    assert settled.pitch_rad == pytest.approx(radians(90.0), abs=1e-12)
    assert settled.roll_rad is None


def test_all_weight_in_the_hook_itself_is_at_rest() -> None:
    body = hung_body((Part("pin", 0.3, HOOK, Point()),), HOOK)
    assert spatial_tick(body, SpatialSwing()).settled


def test_a_body_that_stands_on_its_hook_without_a_push_stays_and_with_the_least_one_falls() -> None:
    above = (Part("box", 1.0, (0.0, 0.0, 0.2), Box((0.1, 0.2, 0.05))),)
    assert at_rest(above).down == (0.0, 0.0, -1.0)
    assert at_rest(above, start=SpatialSwing(down=(1e-3, 0.0, -1.0))).down == (0.0, 0.0, 1.0)


def test_hung_parts_act_at_their_hooks_without_a_shape() -> None:
    hung = (*BOX, Part("bag", 0.4, (0.0, 0.1, -0.3), Box((0.2, 0.2, 0.2)), hold="hung"))
    bare = (*BOX, Part("bag", 0.4, (0.0, 0.1, -0.3), Point(), hold="hung"))
    assert hung_body(hung, HOOK) == hung_body(bare, HOOK)


def test_a_body_as_small_as_a_grain_is_still_computed() -> None:
    grain = (Part("grain", 1e-9, (1e-6, 0.0, 0.0), Box((1e-6, 1e-6, 1e-6))),)
    swing = spatial_tick(hung_body(grain, HOOK, drag_s=1.0), SpatialSwing())
    assert all(map(isfinite, swing.down))


def test_energy_at_rest_is_all_height() -> None:
    body = hung_body(BOX, HOOK)
    # Its balance point lies 0.2 m under the hook.
    assert spatial_energy_j(body, SpatialSwing()) == pytest.approx(-1.0 * 9.80665 * 0.2, rel=1e-12)


def test_attitudes_have_the_senses_of_a_hung_body() -> None:
    assert attitude_of((0.0, 0.0, -1.0)) == (0.0, 0.0)
    pitch, roll = attitude_of((0.5, 0.0, -0.5))  # down lies aft: the nose is up
    assert (pitch, roll) == (pytest.approx(radians(45.0)), 0.0)
    assert attitude_of((0.0, 0.5, -0.5)) == (0.0, pytest.approx(radians(45.0)))  # right wing down
    assert attitude_of((1.0, 0.0, 0.0))[1] is None
