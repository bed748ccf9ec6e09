"""Principal moments and axes of a build."""

from math import cos, radians, sin

import numpy as np
import pytest

from lab.mechanics import Box, Group, MechanicsError, Part, Point, flattened, moment_sum, principal_inertia

BOX = Part("box", 12.0, (1.0, 2.0, 3.0), Box((0.3, 0.2, 0.1)))


def test_a_box_turns_about_its_own_three_axes_the_longest_easiest() -> None:
    found = principal_inertia([BOX])
    assert found.moments_kg_m2 == pytest.approx((0.05, 0.10, 0.13), rel=1e-12)
    assert np.array(found.axes) == pytest.approx(np.eye(3), abs=1e-12)
    assert found.about_m == (1.0, 2.0, 3.0)


def test_the_axes_are_turned_with_the_box_and_are_right_handed() -> None:
    pitch = radians(20.0)
    (turned,) = flattened([Group(name="g", members=(BOX,), turn_rad=(0.0, pitch, 0.0))])
    found = principal_inertia([turned])
    assert found.moments_kg_m2 == pytest.approx((0.05, 0.10, 0.13), rel=1e-12)
    assert found.axes[0] == pytest.approx((cos(pitch), 0.0, -sin(pitch)), abs=1e-12)
    assert np.linalg.det(np.array(found.axes)) == pytest.approx(1.0, abs=1e-12)


def test_about_another_point_the_moments_are_larger() -> None:
    away = principal_inertia([BOX], (1.0, 2.0, 4.0))
    assert away.moments_kg_m2 == pytest.approx((0.13, 12.05, 12.10), rel=1e-12)
    assert away.about_m == (1.0, 2.0, 4.0)


def test_points_on_one_line_have_no_inertia_about_it() -> None:
    rod = [Part(f"p{n}", 0.1, (0.1 * n, 0.2 * n, 0.3 * n), Point()) for n in range(4)]
    found = principal_inertia(rod)
    assert found.moments_kg_m2[0] == pytest.approx(0.0, abs=1e-16)
    assert found.moments_kg_m2[0] >= 0.0
    assert np.cross(found.axes[0], (1.0, 2.0, 3.0)) == pytest.approx(np.zeros(3), abs=1e-7)


def test_cut_outs_that_take_away_what_is_not_there_are_refused() -> None:
    parts = [BOX, Part("hole", 1.0, (1.0, 2.0, 5.0), cut=True)]
    assert moment_sum(parts).mass_kg == 11.0
    with pytest.raises(MechanicsError, match=r"the least principal inertia is -.* kg m²; it must be 0 or above"):
        principal_inertia(parts)


def test_a_place_that_is_no_place_is_refused() -> None:
    with pytest.raises(MechanicsError, match="point is nan m"):
        principal_inertia([BOX], (float("nan"), 0.0, 0.0))
