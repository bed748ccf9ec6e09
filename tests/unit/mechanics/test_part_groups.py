"""Groups: placed, turned, nested; their names; what is refused."""

from math import inf, nan, pi, radians

import numpy as np
import pytest

from lab.mechanics import (
    Box,
    Group,
    MechanicsError,
    Part,
    Rod,
    balance_point_doubt_m,
    extent_m,
    flattened,
    inertia_about_kg_m2,
    moment_sum,
)

QUARTER = pi / 2
NOSE = Part("nose", 1.0, (-1.0, 0.0, 0.0))
RIGHT = Part("right", 1.0, (0.0, 1.0, 0.0))
TOP = Part("top", 1.0, (0.0, 0.0, 1.0))


def place(turn_rad: tuple[float, float, float], part: Part) -> tuple[float, float, float]:
    return flattened([Group(name="frame", members=(part,), turn_rad=turn_rad)])[0].at_m


def test_a_group_carries_its_parts_to_its_place_and_names_them() -> None:
    head = Part("head", 0.4, (0.1, 0.0, 0.0))
    parts = flattened([NOSE, Group(name="mast", members=(head,), at_m=(1.0, 2.0, 3.0))])
    assert [part.name for part in parts] == ["nose", "mast/head"]
    assert parts[1].at_m == (1.1, 2.0, 3.0)
    assert parts[0] == NOSE


@pytest.mark.parametrize(
    ("turn", "part", "goes_to"),
    [
        ((0.0, QUARTER, 0.0), NOSE, (0.0, 0.0, 1.0)),  # nose up
        ((QUARTER, 0.0, 0.0), RIGHT, (0.0, 0.0, -1.0)),  # right wing down
        ((0.0, 0.0, QUARTER), NOSE, (0.0, 1.0, 0.0)),  # nose to the right
        ((QUARTER, 0.0, 0.0), TOP, (0.0, 1.0, 0.0)),
        ((0.0, QUARTER, 0.0), TOP, (1.0, 0.0, 0.0)),
        # Yawed first and then pitched about its own axis: the nose still goes up, wherever it points.
        ((0.0, QUARTER, QUARTER), NOSE, (0.0, 0.0, 1.0)),
        ((0.0, QUARTER, QUARTER), RIGHT, (1.0, 0.0, 0.0)),
        # Rolled last, about the axis that the yaw has turned.
        ((QUARTER, 0.0, QUARTER), RIGHT, (0.0, 0.0, -1.0)),
    ],
)
def test_nose_up_right_wing_down_and_nose_right_are_positive(
    turn: tuple[float, float, float], part: Part, goes_to: tuple[float, float, float]
) -> None:
    assert place(turn, part) == pytest.approx(goes_to, abs=1e-15)


def test_a_part_is_turned_with_its_group_shape_and_all() -> None:
    pole = Part("pole", 2.0, (0.5, 0.0, 0.0), Rod(1.0))
    (up,) = flattened([Group(name="mast", members=(pole,), turn_rad=(0.0, -QUARTER, 0.0))])
    assert up.at_m == pytest.approx((0.0, 0.0, 0.5), abs=1e-16)
    assert extent_m(up.shape) == pytest.approx((0.0, 0.0, 1.0), abs=1e-15)
    assert np.array(up.own_inertia_kg_m2) == pytest.approx(np.diag([1 / 6, 1 / 6, 0.0]), abs=1e-16)


def test_an_inertia_by_numbers_is_turned_too_also_of_a_cut_out() -> None:
    given = Part("gear", 2.0, (0.0, 0.0, 0.0), inertia_kg_m2=(0.1, 0.2, 0.25))
    cut = Part("hole", 0.1, (0.0, 0.0, 0.0), inertia_kg_m2=(0.01, 0.02, 0.025), cut=True)
    turned = flattened([Group(name="box", members=(given, cut), turn_rad=(0.0, 0.0, QUARTER))])
    assert np.array(turned[0].own_inertia_kg_m2) == pytest.approx(np.diag([0.2, 0.1, 0.25]), abs=1e-15)
    assert np.array(turned[1].own_inertia_kg_m2) == pytest.approx(-np.diag([0.02, 0.01, 0.025]), abs=1e-15)
    assert turned[1].cut


def test_a_group_of_groups_is_the_same_as_what_it_holds() -> None:
    inner = Group(name="inner", members=(NOSE, RIGHT), at_m=(1.0, 0.0, 0.0), turn_rad=(0.1, 0.2, 0.3))
    outer = Group(name="outer", members=(inner, TOP), at_m=(0.0, 5.0, 0.0))
    names = [part.name for part in flattened([outer])]
    assert names == ["outer/inner/nose", "outer/inner/right", "outer/top"]
    lifted = flattened([Group(name="inner", members=(NOSE, RIGHT), at_m=(1.0, 5.0, 0.0), turn_rad=(0.1, 0.2, 0.3))])
    assert flattened([outer])[0].at_m == pytest.approx(lifted[0].at_m, abs=1e-15)


def test_groups_may_be_nested_deeper_than_python_recurses() -> None:
    member: Part | Group = NOSE
    for level in range(3000):
        member = Group(name=f"g{level}", members=(member,), at_m=(0.001, 0.0, 0.0))
    (found,) = flattened([member])
    assert found.at_m[0] == pytest.approx(2.0, abs=1e-12)


def test_turning_a_group_moves_no_weight_out_of_it() -> None:
    parts = (Part("hull", 3.0, (0.2, 0.1, 0.0), Box((0.5, 0.2, 0.1))), Part("lead", 1.0, (0.7, 0.0, 0.3)))
    flat, turned = flattened(parts), flattened([Group(name="g", members=parts, turn_rad=(0.4, -0.7, 1.1))])
    about = [inertia_about_kg_m2(each, moment_sum(each).balance_point_m) for each in (flat, turned)]
    # A turned body keeps its principal moments.
    assert np.linalg.eigvalsh(about[1]) == pytest.approx(np.linalg.eigvalsh(about[0]), rel=1e-12)


def test_place_doubts_turn_with_the_group() -> None:
    ruler = Part("lead", 1.0, (0.0, 0.0, 0.0), at_doubt_m=(0.003, 0.0, 0.004))
    (upright,) = flattened([Group(name="mast", members=(ruler,), turn_rad=(0.0, QUARTER, 0.0))])
    assert upright.at_doubt_m == pytest.approx((0.004, 0.0, 0.003), abs=1e-15)
    (slanted,) = flattened([Group(name="mast", members=(ruler,), turn_rad=(0.0, radians(45.0), 0.0))])
    assert balance_point_doubt_m([slanted]) == pytest.approx((0.005 / 2**0.5, 0.0, 0.005 / 2**0.5), abs=1e-15)


def test_groups_that_are_none_are_refused_by_name() -> None:
    with pytest.raises(MechanicsError, match="group 'mast' has no member; it must have at least one"):
        Group(name="mast", members=())
    with pytest.raises(MechanicsError, match="the name 'nose' is used twice in group 'mast'; each member needs"):
        Group(name="mast", members=(NOSE, NOSE))
    with pytest.raises(MechanicsError, match=r"turn of group 'mast' is nan rad; it must be a finite number"):
        Group(name="mast", members=(NOSE,), turn_rad=(0.0, nan, 0.0))
    with pytest.raises(MechanicsError, match=r"place of group 'mast' is inf m"):
        Group(name="mast", members=(NOSE,), at_m=(inf, 0.0, 0.0))


def test_the_same_part_in_two_groups_of_one_name_is_refused_in_the_sum() -> None:
    groups = [Group(name="mast", members=(NOSE,)), Group(name="mast", members=(NOSE,), at_m=(1.0, 0.0, 0.0))]
    with pytest.raises(MechanicsError, match="the name 'mast/nose' is used twice"):
        moment_sum(flattened(groups))
