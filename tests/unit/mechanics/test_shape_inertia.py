"""Shapes: how far they reach, how hard they are to turn, and what is refused."""

from math import inf, nan

import numpy as np
import pytest

from lab.mechanics import (
    Box,
    Cylinder,
    MechanicsError,
    Point,
    Rectangle,
    Rod,
    extent_m,
    unit_inertia_m2,
)


def test_a_point_reaches_nowhere_and_turns_freely() -> None:
    assert extent_m(Point()) == (0.0, 0.0, 0.0)
    assert not unit_inertia_m2(Point()).any()


@pytest.mark.parametrize(("axis", "index"), [("along", 0), ("across", 1), ("up", 2)])
def test_a_rod_turns_freely_about_its_own_axis_only(axis: str, index: int) -> None:
    rod = Rod(1.2, axis)  # type: ignore[arg-type]
    principal = np.diag(unit_inertia_m2(rod))
    assert principal[index] == 0.0
    assert np.delete(principal, index) == pytest.approx([0.12, 0.12], abs=1e-15)
    assert extent_m(rod)[index] == 1.2


def test_a_rectangle_is_a_box_without_thickness() -> None:
    thin = unit_inertia_m2(Box((0.4, 1e-12, 0.3)))
    assert unit_inertia_m2(Rectangle(0.4, 0.3)) == pytest.approx(thin, abs=1e-15)
    assert extent_m(Rectangle(0.4, 0.3)) == (0.4, 0.0, 0.3)


def test_a_tube_is_a_cylinder_less_its_core() -> None:
    outer, inner, length = 0.05, 0.03, 0.2
    whole, core = unit_inertia_m2(Cylinder(outer, length)), unit_inertia_m2(Cylinder(inner, length))
    tube = (whole * outer**2 - core * inner**2) / (outer**2 - inner**2)
    assert unit_inertia_m2(Cylinder(outer, length, inner)) == pytest.approx(tube, abs=1e-15)
    assert extent_m(Cylinder(outer, length, inner, axis="up")) == (0.1, 0.1, 0.2)


@pytest.mark.parametrize("bad", [0.0, -1.0, nan, inf])
def test_a_size_that_no_body_has_is_refused_and_named(bad: float) -> None:
    with pytest.raises(MechanicsError, match=r"length of the rod is .* m; it must be a finite number above 0"):
        Rod(bad)
    with pytest.raises(MechanicsError, match="width of the rectangle"):
        Rectangle(1.0, bad)
    with pytest.raises(MechanicsError, match="size of the box"):
        Box((1.0, bad, 1.0))
    with pytest.raises(MechanicsError, match="radius of the cylinder"):
        Cylinder(bad, 1.0)


def test_a_tube_whose_hole_is_as_wide_as_itself_is_refused() -> None:
    with pytest.raises(MechanicsError, match=r"inner radius of the cylinder is 0\.1 m; it must be under"):
        Cylinder(0.1, 1.0, 0.1)
    with pytest.raises(MechanicsError, match="inner radius"):
        Cylinder(0.1, 1.0, -0.01)


def test_an_axis_that_is_none_of_the_three_is_refused() -> None:
    with pytest.raises(MechanicsError, match="along, across, up"):
        Rod(1.0, "sideways")  # type: ignore[arg-type]
