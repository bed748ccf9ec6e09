"""What must hold of every airframe in pitch."""

from dataclasses import replace
from math import sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from lab.mechanics import Airframe, Surface, aerodynamics, mean_chord, neutral_point, set_glide
from lab.mechanics.airframes import push
from lab.mechanics.tosses import motion_rates

SCALES = st.floats(-6.0, 6.0).map(lambda power: 10.0**power)


@st.composite
def airframes(draw: st.DrawFn) -> tuple[Surface, ...]:
    """A wing of chord 1, mostly with a tail or a foreplane clear of it."""
    wing = Surface(
        name="wing",
        root_chord_m=1.0,
        tip_chord_m=draw(st.floats(0.0, 1.0)),
        span_m=draw(st.floats(2.0, 14.0)),
        sweep_rad=draw(st.floats(-0.3, 0.5)),
    )
    if draw(st.booleans()):
        return (wing,)
    behind = draw(st.booleans())
    other = Surface(
        name="other",
        root_chord_m=0.5,
        tip_chord_m=draw(st.floats(0.1, 0.5)),
        span_m=draw(st.floats(1.0, 2.0)),
        at_m=((5.0 if behind else -3.0), 0.0, draw(st.sampled_from([0.0, 0.3, -1.0]))),
    )
    return wing, other


def scaled(surface: Surface, by: float) -> Surface:
    along, across, up = surface.at_m
    return replace(
        surface,
        root_chord_m=surface.root_chord_m * by,
        tip_chord_m=surface.tip_chord_m * by,
        span_m=surface.span_m * by,
        at_m=(along * by, across * by, up * by),
    )


def moved(surface: Surface, along: float, across: float, up: float) -> Surface:
    at = surface.at_m
    return replace(surface, at_m=(at[0] + along, at[1] + across, at[2] + up))


@settings(max_examples=15)
@given(airframes(), SCALES)
def test_an_airframe_of_another_size_has_its_neutral_point_at_the_same_share(
    surfaces: tuple[Surface, ...], by: float
) -> None:
    one, other = neutral_point(surfaces), neutral_point([scaled(each, by) for each in surfaces])
    # Some hundred equations of condition 1e3: round-off of 1e-12 at most.
    assert other.share == pytest.approx(one.share, abs=1e-10)
    assert other.lift_slope == pytest.approx(one.lift_slope, rel=1e-10)


@settings(max_examples=15)
@given(airframes(), st.floats(-50.0, 50.0), st.floats(-50.0, 50.0), st.floats(-50.0, 50.0))
def test_moving_an_airframe_moves_its_neutral_point_along(
    surfaces: tuple[Surface, ...], along: float, across: float, up: float
) -> None:
    one = neutral_point(surfaces)
    other = neutral_point([moved(each, along, across, up) for each in surfaces])
    # Places of 50 chords are rounded to 1e-14 of themselves, on panels of a thousandth.
    assert other.at_m - along == pytest.approx(one.at_m, abs=1e-7)


@settings(max_examples=15)
@given(airframes())
def test_the_order_of_surfaces_and_the_shares_of_their_lift_agree(surfaces: tuple[Surface, ...]) -> None:
    one, turned = neutral_point(surfaces), neutral_point(surfaces[::-1])
    assert turned.at_m == pytest.approx(one.at_m, abs=1e-9)
    assert sum(each.lift_slope for each in one.surfaces) == pytest.approx(one.lift_slope, rel=1e-12)
    mean = sum(each.lift_slope * each.at_m for each in one.surfaces) / one.lift_slope
    assert mean == pytest.approx(one.at_m, abs=1e-9)


@settings(max_examples=15)
@given(airframes())
def test_a_tail_moves_the_neutral_point_aft_and_a_foreplane_forward(surfaces: tuple[Surface, ...]) -> None:
    alone, whole = neutral_point(surfaces[:1]), neutral_point(surfaces)
    if len(surfaces) == 2:
        assert (whole.at_m > alone.at_m) == (surfaces[1].at_m[0] > 0.0)
    chord = mean_chord(surfaces[0])
    assert chord.length_m <= surfaces[0].root_chord_m


@settings(max_examples=15)
@given(airframes(), st.floats(-1.0, 1.0), st.floats(0.1, 2.0), st.floats(-3.0, 3.0), st.floats(-1.0, 1.0))
def test_a_model_of_another_size_flies_the_same_path_in_its_own_time(
    surfaces: tuple[Surface, ...], up: float, by: float, rate: float, pitch: float
) -> None:
    # Froude: lengths by k, masses by k³, inertias by k⁵, speeds by √k, times by √k.
    one, other = (
        aerodynamics(
            Airframe(
                surfaces=tuple(scaled(each, size) for each in surfaces),
                mass_kg=2.0 * size**3,
                balance_point_m=(0.1 * size, 0.0, 0.0),
                pitch_inertia_kg_m2=0.7 * size**5,
            )
        )
        for size in (1.0, by)
    )
    speed = set_glide(one).speed_m_s
    quick = sqrt(by)
    state = (speed, speed * up, rate, pitch, 0.0, 0.0)
    small = (speed * quick, speed * up * quick, rate / quick, pitch, 0.0, 0.0)
    du, dw, dq, dp, dx, dz = motion_rates(other, small)
    expected = motion_rates(one, state)
    scale = max(abs(value) for value in expected)
    assert (du, dw, dq * by, dp * quick, dx / quick, dz / quick) == pytest.approx(expected, abs=1e-8 * scale)


@settings(max_examples=50)
@given(st.floats(-20.0, 20.0), st.floats(-20.0, 20.0))
def test_air_never_pushes_an_airframe_on_its_way(u_m_s: float, w_m_s: float) -> None:
    wing = Surface(name="wing", root_chord_m=0.16, tip_chord_m=0.10, span_m=1.0)
    air = aerodynamics(
        Airframe(surfaces=(wing,), mass_kg=0.1, balance_point_m=(0.03, 0.0, 0.0), pitch_inertia_kg_m2=1e-3)
    )
    felt = push(air, u_m_s, w_m_s, 0.0)
    # Drag only takes: no work is done on what does not turn.
    assert felt.ahead_n * u_m_s + felt.down_n * w_m_s <= 1e-12
