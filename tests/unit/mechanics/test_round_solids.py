"""Cones, balls, half balls, and shapes turned any way."""

from math import cos, inf, nan, pi, sin

import numpy as np
import pytest

from lab.mechanics import (
    Box,
    Cone,
    Cylinder,
    Disc,
    HalfDisc,
    Hemisphere,
    MechanicsError,
    Point,
    Polygon,
    Rectangle,
    Rod,
    Shape,
    Sphere,
    Triangle,
    Turned,
    bounds_m,
    centre_m,
    extent_m,
    unit_inertia_m2,
)

QUARTER_ABOUT_ACROSS = ((0.0, 0.0, 1.0), (0.0, 1.0, 0.0), (-1.0, 0.0, 0.0))
SHAPES: list[Shape] = [
    Point(),
    Rod(1.0),
    Rectangle(0.4, 0.3),
    Triangle(((0.0, 0.0), (0.3, 0.0), (0.1, 0.2))),
    Polygon(((0.0, 0.0), (0.3, 0.0), (0.4, 0.2), (0.1, 0.1))),
    Disc(0.2),
    HalfDisc(0.2),
    Box((0.1, 0.2, 0.3)),
    Cylinder(0.1, 0.5),
    Cone(0.1, 0.4, "up"),
    Sphere(0.1),
    Hemisphere(0.1, "across"),
]


def test_two_half_balls_make_a_ball() -> None:
    half = unit_inertia_m2(Hemisphere(0.2))
    rise = centre_m(Hemisphere(0.2))[2]
    assert rise == pytest.approx(0.375 * 0.2)
    assert half + np.diag([rise**2, rise**2, 0.0]) == pytest.approx(unit_inertia_m2(Sphere(0.2)), abs=1e-16)


def test_a_cone_points_the_positive_way_of_its_axis() -> None:
    low, high = bounds_m(Cone(0.1, 0.4))
    assert low == pytest.approx((-0.1, -0.1, -0.1))
    assert high == pytest.approx((0.3, 0.1, 0.1))
    assert centre_m(Cone(0.1, 0.4)) == pytest.approx((0.1, 0.0, 0.0))
    assert extent_m(Cone(0.1, 0.4, "up")) == (0.2, 0.2, 0.4)


@pytest.mark.parametrize("shape", SHAPES, ids=lambda shape: type(shape).__name__)
def test_a_shape_reaches_as_far_as_its_size(shape: Shape) -> None:
    low, high = bounds_m(shape)
    assert np.subtract(high, low) == pytest.approx(extent_m(shape), abs=1e-15)


@pytest.mark.parametrize("shape", SHAPES, ids=lambda shape: type(shape).__name__)
def test_a_shape_turned_a_quarter_has_its_axes_changed_over(shape: Shape) -> None:
    turned = Turned(shape, QUARTER_ABOUT_ACROSS)
    along, across, up = extent_m(shape)
    assert extent_m(turned) == pytest.approx((up, across, along), abs=1e-15)
    own, other = np.diag(unit_inertia_m2(shape)), np.diag(unit_inertia_m2(turned))
    assert other == pytest.approx(own[::-1], abs=1e-15)
    assert centre_m(turned)[0] == pytest.approx(centre_m(shape)[2], abs=1e-15)


def test_a_shape_turned_part_way_reaches_as_far_as_its_corners() -> None:
    angle = 0.3
    turn = ((cos(angle), 0.0, sin(angle)), (0.0, 1.0, 0.0), (-sin(angle), 0.0, cos(angle)))
    assert extent_m(Turned(Rod(1.0), turn)) == pytest.approx((cos(angle), 0.0, sin(angle)))
    assert extent_m(Turned(Sphere(0.1), turn)) == pytest.approx((0.2, 0.2, 0.2))
    # A round bar that lies slantwise: its axis and its rim both count.
    slanted = extent_m(Turned(Cylinder(0.1, 0.5), turn))
    assert slanted == pytest.approx((0.5 * cos(angle) + 0.2 * sin(angle), 0.2, 0.5 * sin(angle) + 0.2 * cos(angle)))
    cone = bounds_m(Turned(Cone(0.1, 0.4), turn))[1]
    assert cone[0] == pytest.approx(0.3 * cos(angle))


@pytest.mark.parametrize("bad", [0.0, -1.0, nan, inf])
def test_a_size_that_no_round_solid_has_is_refused_and_named(bad: float) -> None:
    with pytest.raises(MechanicsError, match=r"radius of the cone is .* m; it must be a finite number above 0"):
        Cone(bad, 1.0)
    with pytest.raises(MechanicsError, match="length of the cone"):
        Cone(1.0, bad)
    with pytest.raises(MechanicsError, match="radius of the sphere"):
        Sphere(bad)
    with pytest.raises(MechanicsError, match="radius of the hemisphere"):
        Hemisphere(bad)


def test_an_axis_that_is_none_of_the_three_is_refused() -> None:
    for make in (lambda: Cone(1.0, 1.0, "aft"), lambda: Hemisphere(1.0, "aft")):  # type: ignore[arg-type]
        with pytest.raises(MechanicsError, match="axis is 'aft'; it must be one of along, across, up"):
            make()


def test_a_full_turn_changes_nothing_but_the_last_bit() -> None:
    turn = ((cos(2 * pi), 0.0, sin(2 * pi)), (0.0, 1.0, 0.0), (-sin(2 * pi), 0.0, cos(2 * pi)))
    shape = Box((0.1, 0.2, 0.3))
    assert unit_inertia_m2(Turned(shape, turn)) == pytest.approx(unit_inertia_m2(shape), abs=1e-16)
