"""Planes of symmetry: which are found, how far they are missed, what they save."""

from dataclasses import replace
from math import cos, pi, sin, sqrt

import pytest

from lab.mechanics import (
    Box,
    Group,
    MechanicsError,
    Part,
    Rod,
    SymmetryPlane,
    Triangle,
    flattened,
    moment_sum,
    symmetry_planes,
)

BODY = Part("body", 1.0, (0.0, 0.0, 0.0), Rod(1.0))
LEFT = Part("left wing", 0.2, (-0.1, -0.5, 0.05), Box((0.1, 0.8, 0.01)))
RIGHT = replace(LEFT, name="right wing", at_m=(-0.1, 0.5, 0.05))
GLIDER = [BODY, LEFT, RIGHT]


def across(planes: tuple[SymmetryPlane, ...]) -> SymmetryPlane:
    (found,) = [plane for plane in planes if plane.saves == "across"]
    return found


def test_a_glider_is_the_same_left_and_right_and_that_saves_the_sum_across() -> None:
    (plane,) = symmetry_planes(GLIDER)
    assert plane.exact
    assert plane.saves == "across"
    assert plane.normal == (0.0, 1.0, 0.0)
    assert plane.offset_m == pytest.approx(0.0, abs=1e-16)
    assert (plane.miss_m, plane.odd, plane.odd_share) == (0.0, (), 0.0)
    assert moment_sum(GLIDER).balance_point_m[1] == plane.offset_m


def test_a_glider_drawn_anywhere_has_its_plane_there() -> None:
    there = flattened([Group(name="g", members=tuple(GLIDER), at_m=(3.0, 2.0, 1.0))])
    plane = across(symmetry_planes(there))
    assert plane.exact
    assert plane.offset_m == pytest.approx(2.0, rel=1e-12)


def test_a_camera_on_one_side_is_named_and_how_far_it_pulls_the_balance_point_off() -> None:
    build = [*GLIDER, Part("camera", 0.1, (0.2, 0.3, 0.0))]
    plane = across(symmetry_planes(build))
    assert not plane.exact
    assert plane.odd == ("camera",)
    assert plane.odd_share == pytest.approx(0.1 / 1.5)
    assert plane.offset_m == pytest.approx(0.0, abs=1e-15)
    assert plane.miss_m == pytest.approx(moment_sum(build).balance_point_m[1], rel=1e-12)
    assert 0.0 < plane.miss_share < 0.1


def test_a_wing_a_little_out_of_place_is_a_near_twin() -> None:
    build = [BODY, LEFT, replace(RIGHT, at_m=(-0.1, 0.504, 0.05))]
    plane = across(symmetry_planes(build))
    assert not plane.exact
    assert plane.odd == ()
    assert plane.twin_miss_m == pytest.approx(0.004, rel=1e-9)
    assert plane.miss_m == pytest.approx(0.2 * 0.004 / 1.4, rel=1e-9)


def test_a_wing_a_little_heavier_counts_by_the_weight_that_it_has_over() -> None:
    plane = across(symmetry_planes([BODY, LEFT, replace(RIGHT, mass_kg=0.203)]))
    assert not plane.exact
    assert plane.odd == ()
    assert plane.odd_share == pytest.approx(0.003 / 1.403)


def test_a_wing_of_another_shape_is_no_twin() -> None:
    planes = symmetry_planes([BODY, LEFT, replace(RIGHT, shape=Box((0.4, 0.5, 0.01)))])
    assert all(plane.saves != "across" for plane in planes)


def test_a_cut_out_is_no_twin_of_a_part() -> None:
    hole = Part("hole", 0.1, (0.0, 0.2, 0.0), cut=True)
    weight = Part("weight", 0.1, (0.0, -0.2, 0.0))
    plane = across(symmetry_planes([BODY, hole, weight]))
    assert set(plane.odd) == {"hole", "weight"}


def test_a_turned_part_is_no_mirror_of_itself() -> None:
    slanted = flattened([Group(name="g", members=(Part("bar", 1.0, (0.0, 0.0, 0.0), Rod(1.0)),), turn_rad=(0, 0, 0.3))])
    build = [*slanted, Part("top", 0.2, (0.0, 0.0, 0.4))]
    # The plane that holds the bar and the one across it, and both slant.
    assert [plane.saves for plane in symmetry_planes(build) if plane.exact] == [None, None]
    (near,) = [plane for plane in symmetry_planes(build) if not plane.exact]
    assert (near.saves, near.odd) == ("up", ("top",))


def test_a_square_of_four_has_its_two_slanting_planes_too() -> None:
    square = [Part(f"rotor {x}{y}", 0.2, (x, y, 0.0)) for x in (-1, 1) for y in (-1, 1)]
    planes = symmetry_planes(square)
    assert [plane.saves for plane in planes] == ["along", "across", "up", None, None]
    for plane in planes[3:]:
        assert abs(plane.normal[0]) == pytest.approx(sqrt(0.5))
        assert plane.exact


def test_a_ring_of_three_has_three_upright_planes_one_of_them_across_an_axis() -> None:
    ring = [Part(f"leg {n}", 0.3, (cos(2 * pi * n / 3), sin(2 * pi * n / 3), 0.0)) for n in range(3)]
    exact = [plane for plane in symmetry_planes(ring) if plane.exact]
    assert [plane.saves for plane in exact].count("across") == 1
    assert [plane.saves for plane in exact].count("up") == 1
    assert [plane.saves for plane in exact].count(None) == 2


def test_a_lone_triangle_that_leans_has_only_the_plane_it_lies_in() -> None:
    leaning = Part("fin", 0.1, (0.0, 0.0, 0.0), Triangle(((0.0, 0.0), (0.3, 0.0), (0.25, 0.2))))
    saved = [plane.saves for plane in symmetry_planes([leaning])]
    assert "across" in saved
    assert "along" not in saved
    assert "up" not in saved


def test_one_point_is_its_own_mirror_image_in_every_plane() -> None:
    planes = symmetry_planes([Part("lead", 0.1, (0.3, 0.2, 0.1))])
    assert {plane.saves for plane in planes} == {"along", "across", "up"}
    assert all(plane.exact for plane in planes)
    assert {plane.saves: plane.offset_m for plane in planes}["along"] == 0.3


def test_a_build_that_is_nowhere_alike_has_no_plane() -> None:
    build = [Part("a", 0.3, (0.0, 0.0, 0.0)), Part("b", 0.5, (1.0, 0.3, 0.1)), Part("c", 0.7, (0.2, 1.0, 0.5))]
    build.append(Part("d", 0.9, (0.4, 0.2, 1.1)))
    assert symmetry_planes(build) == ()


def test_a_build_too_large_to_be_searched_is_refused() -> None:
    grains = [Part(f"grain {n}", 1.0, (float(n), 0.0, 0.0)) for n in range(501)]
    with pytest.raises(MechanicsError, match="the build has 501 parts; it can have at most 500 to be searched"):
        symmetry_planes(grains)


def test_a_share_that_is_none_is_refused() -> None:
    with pytest.raises(MechanicsError, match=r"near_share is 0\.0 \(no unit\); it must be a finite number above 0"):
        symmetry_planes(GLIDER, near_share=0.0)
