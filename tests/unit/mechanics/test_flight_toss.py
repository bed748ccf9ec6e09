"""Tosses: what is refused, what is said of where the model ends, and the forces beyond the stall."""

from dataclasses import replace
from math import pi, radians

import numpy as np
import pytest

from lab.mechanics import (
    Airframe,
    Launch,
    MechanicsError,
    Surface,
    aerodynamics,
    balance_for_margin_m,
    flight_modes,
    launched,
    neutral_point,
    set_glide,
    toss,
    toss_tick,
)
from lab.mechanics.airframes import AIR_KG_M3, PLATE_PUSH, STALL_FADE_RAD, attached_share, push

WING = Surface(name="wing", root_chord_m=0.16, tip_chord_m=0.10, span_m=1.0)
TAIL = Surface(name="tail", root_chord_m=0.09, tip_chord_m=0.07, span_m=0.32, at_m=(0.52, 0.0, 0.0))
FIN = Surface(name="fin", root_chord_m=0.09, tip_chord_m=0.07, span_m=0.1, at_m=(0.55, 0.0, 0.0), vertical=True)
NEUTRAL = neutral_point([WING, TAIL])


def glider(margin: float = 0.15, **values: object) -> Airframe:
    at = balance_for_margin_m(NEUTRAL.at_m, NEUTRAL.chord.length_m, margin)
    given = {
        "surfaces": (WING, TAIL, FIN),
        "mass_kg": 0.12,
        "balance_point_m": (at, 0.0, 0.0),
        "pitch_inertia_kg_m2": 0.003,
        **values,
    }
    return Airframe(**given)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("values", "said"),
    [
        ({"mass_kg": 0.0}, "mass of the airframe is 0.0 kg; it must be a finite number above 0"),
        ({"pitch_inertia_kg_m2": -1.0}, "inertia of the airframe in pitch is -1.0 kg m²; it must be a finite number"),
        ({"surfaces": (FIN,)}, "no surface lies flat"),
        ({"set_lift": 1.2}, "set lift coefficient of the airframe is 1.2; it must be under 1, the stall's"),
        ({"couple": float("nan")}, "couple coefficient of the airframe is nan"),
    ],
)
def test_an_airframe_that_cannot_be_is_refused(values: dict[str, object], said: str) -> None:
    with pytest.raises(MechanicsError) as refused:
        glider(**values)
    assert str(refused.value).startswith(said)


@pytest.mark.parametrize(
    ("values", "said"),
    [
        ({"speed_m_s": 0.0}, "speed of the launch is 0.0 m/s; it must be a finite number above 0"),
        ({"climb_rad": 2.0}, "climb of the launch is 2 rad; it must be within 90 degrees of 0"),
        ({"upset_rad": 4.0}, "upset of the launch is 4 rad; it must be within 180 degrees of 0"),
        ({"height_m": 0.0}, "height of the launch is 0.0 m; it must be a finite number above 0"),
    ],
)
def test_a_launch_that_cannot_be_is_refused(values: dict[str, float], said: str) -> None:
    with pytest.raises(MechanicsError) as refused:
        Launch(**values)
    assert str(refused.value) == said


def test_a_flight_too_long_or_of_no_time_is_refused() -> None:
    with pytest.raises(MechanicsError, match="time of the flight is 1e\\+04 s; it must be at most 1000 s"):
        toss(glider(), seconds=1e4)
    with pytest.raises(MechanicsError, match=r"time of the flight is 0\.0 s"):
        toss(glider(), seconds=0.0)


def test_drawing_tick_by_tick_is_the_same_flight() -> None:
    airframe = glider()
    whole = toss(airframe, Launch(speed_m_s=7.0, climb_rad=0.2), seconds=1.0)
    air = aerodynamics(airframe)
    motion = launched(air, Launch(speed_m_s=7.0, climb_rad=0.2))
    assert motion.climb_rad == pytest.approx(0.2)
    for index in range(200):
        assert (motion.ahead_m, motion.up_m) == (whole.ahead_m[index], whole.up_m[index])
        motion = toss_tick(air, motion)


def test_the_landing_is_where_the_floor_is_met() -> None:
    flown = toss(glider(), Launch(height_m=0.5))
    assert flown.landed is not None
    assert flown.up_m[flown.landed] <= 0.0 < flown.up_m[flown.landed - 1]
    assert toss(glider(), Launch(height_m=1000.0)).landed is None


def test_a_hard_throw_swoops_and_a_weak_one_is_out_of_depth() -> None:
    hard = toss(glider(), Launch(speed_m_s=2.0 * set_glide(aerodynamics(glider())).speed_m_s))
    assert hard.flight in {"swoops", "tumbles"}
    weak = toss(glider(), Launch(speed_m_s=0.5))
    assert "slow" in weak.out_of_depth


def test_a_heavy_nose_with_the_tail_left_as_it_was_flies_faster_and_a_heavy_tail_nowhere() -> None:
    right = aerodynamics(glider(0.15))
    nose_heavy = aerodynamics(glider(0.30, couple=right.couple))
    assert nose_heavy.held_lift == pytest.approx(right.set_lift / 2.0, rel=1e-9)
    assert set_glide(nose_heavy).speed_m_s > set_glide(right).speed_m_s
    tail_heavy = aerodynamics(glider(-0.05, couple=right.couple))
    assert tail_heavy.held_lift is None
    with pytest.raises(MechanicsError, match=r"at no lift short of the stall; its margin is -0\.05"):
        flight_modes(tail_heavy)
    assert toss(glider(-0.05, couple=right.couple)).flight in {"swoops", "tumbles"}


def test_the_flow_lets_go_smoothly() -> None:
    stall = radians(10.0)
    assert attached_share(stall, stall) == attached_share(-stall / 2.0, stall) == 1.0
    assert attached_share(stall + STALL_FADE_RAD, stall) == attached_share(pi, stall) == 0.0
    assert attached_share(stall + STALL_FADE_RAD / 2.0, stall) == pytest.approx(0.5)
    shares = [attached_share(angle, stall) for angle in np.linspace(0.0, 0.4, 50)]
    assert shares == sorted(shares, reverse=True)


def test_falling_flat_every_surface_pushes_back_as_a_plate_across_the_flow() -> None:
    air = aerodynamics(glider())
    felt = push(air, 0.0, 3.0, 0.0)
    area = WING.area_m2 + TAIL.area_m2
    # A plate across the flow is at its full push to sin²(stall)/2, some 2 %.
    assert felt.down_n == pytest.approx(-AIR_KG_M3 / 2.0 * area * PLATE_PUSH * 9.0, rel=0.03)
    assert felt.ahead_n == 0.0
    assert felt.moment_n_m < 0.0  # the tail is pushed up: the nose goes down and it flies again
    backwards = push(air, 0.0, -3.0, 0.0)
    assert backwards.down_n == pytest.approx(-felt.down_n)


def test_without_air_speed_only_turning_is_braked() -> None:
    air = aerodynamics(replace(glider(), surfaces=(WING,)))
    still = push(air, 0.0, 0.0, 0.0)
    assert (still.ahead_n, still.down_n, still.moment_n_m) == (0.0, 0.0, 0.0)
    spinning = push(air, 0.0, 1e-6, 20.0)
    assert spinning.moment_n_m < 0.0


def test_a_mode_says_its_period_and_its_half_time() -> None:
    nod, swoop = flight_modes(aerodynamics(glider())).modes
    assert nod.half_s is not None
    assert swoop.half_s is not None
    assert swoop.period_s is not None
    assert nod.half_s < swoop.half_s
    assert swoop.period_s == pytest.approx(2.0 * pi / swoop.pace_s)
    away = flight_modes(aerodynamics(glider(-0.1))).modes
    assert any(mode.half_s is None and mode.period_s is None for mode in away)
