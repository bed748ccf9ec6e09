"""The moment table, the balance point, inertia of the whole, and many builds at once."""

from math import inf, nan

import numpy as np
import pytest

from lab.mechanics import (
    Box,
    MechanicsError,
    Part,
    Rod,
    balance_point_m,
    inertia_about_kg_m2,
    moment_sum,
)
from lab.mechanics.assemblies import assembly_sums

BOAT_HOOK = (
    Part("pole", 0.120, (0.20, 0.0, 0.0), Rod(0.40)),
    Part("hook", 0.480, (0.02, 0.0, 0.0)),
)


def test_the_boat_hook_balances_at_five_point_six_centimetres() -> None:
    total = moment_sum(BOAT_HOOK)
    assert [row.name for row in total.rows] == ["pole", "hook"]
    assert [row.moment_kg_m[0] for row in total.rows] == pytest.approx([0.024, 0.0096])
    assert total.mass_kg == pytest.approx(0.6)
    assert total.moment_kg_m[0] == pytest.approx(0.0336)
    assert total.balance_point_m[0] == pytest.approx(0.056, abs=1e-15)


def test_another_reference_changes_arms_and_moments_and_not_the_balance_point() -> None:
    total = moment_sum(BOAT_HOOK, (0.10, 0.0, 0.0))
    assert [row.arm_m[0] for row in total.rows] == pytest.approx([0.10, -0.08])
    assert total.moment_kg_m[0] == pytest.approx(-0.0264)
    assert total.balance_point_m == moment_sum(BOAT_HOOK).balance_point_m
    assert total.reference_m == (0.10, 0.0, 0.0)


def test_a_cut_out_is_a_row_with_its_mass_taken_away() -> None:
    plate = Part("plate", 2.4, (0.3, 0.0, 0.2))
    hole = Part("hole", 0.4, (0.45, 0.0, 0.2), cut=True)
    total = moment_sum([plate, hole])
    assert total.rows[1].mass_kg == -0.4
    assert total.balance_point_m[0] == pytest.approx((2.4 * 0.3 - 0.4 * 0.45) / 2.0)


def test_a_reference_that_is_no_place_is_refused() -> None:
    with pytest.raises(MechanicsError, match="reference"):
        moment_sum(BOAT_HOOK, (nan, 0.0, 0.0))


def test_inertia_of_two_halves_is_that_of_the_whole() -> None:
    halves = [
        Part("left half", 0.5, (-0.25, 0.0, 0.0), Box((0.5, 0.1, 0.2))),
        Part("right half", 0.5, (0.25, 0.0, 0.0), Box((0.5, 0.1, 0.2))),
    ]
    whole = [Part("whole", 1.0, (0.0, 0.0, 0.0), Box((1.0, 0.1, 0.2)))]
    for point in ((0.0, 0.0, 0.0), (0.3, -0.2, 0.1)):
        assert inertia_about_kg_m2(halves, point) == pytest.approx(inertia_about_kg_m2(whole, point), abs=1e-15)


def test_many_builds_at_once_give_what_each_gives_alone() -> None:
    random = np.random.default_rng(3)
    mass, at = random.uniform(0.1, 1.0, (5, 4)), random.normal(size=(5, 4, 3))
    own = np.broadcast_to(np.diag([0.01, 0.02, 0.025]), (5, 4, 3, 3))
    sums = assembly_sums(mass, at, own, reference_m=(0.1, 0.2, 0.3))
    assert balance_point_m(mass, at) == pytest.approx(sums.balance_point_m, abs=1e-15)
    for k in range(5):
        parts = [Part(f"{n}", mass[k, n], tuple(at[k, n]), inertia_kg_m2=(0.01, 0.02, 0.025)) for n in range(4)]
        alone = moment_sum(parts, (0.1, 0.2, 0.3))
        assert sums.mass_kg[k] == pytest.approx(alone.mass_kg)
        assert sums.moment_kg_m[k] == pytest.approx(alone.moment_kg_m, abs=1e-14)
        assert sums.balance_point_m[k] == pytest.approx(alone.balance_point_m, abs=1e-14)
        about = inertia_about_kg_m2(parts, alone.balance_point_m)
        assert sums.inertia_kg_m2[k] == pytest.approx(about, abs=1e-13)
        one = assembly_sums(mass[k], at[k])
        assert one.balance_point_m == pytest.approx(alone.balance_point_m, abs=1e-14)


def test_one_list_of_masses_serves_many_layouts() -> None:
    at = np.arange(24.0).reshape(4, 2, 3)
    found = balance_point_m([1.0, 3.0], at)
    assert found.shape == (4, 3)
    assert found == pytest.approx(at[:, 0] * 0.25 + at[:, 1] * 0.75)


@pytest.mark.parametrize(
    ("mass", "at", "what"),
    [
        ([], np.zeros((0, 3)), "at least one"),
        ([1.0, 0.0], np.zeros((2, 3)), "mass"),
        ([1.0, nan], np.zeros((2, 3)), "mass"),
        ([1.0, inf], np.zeros((2, 3)), "mass"),
        ([1.0], [[nan, 0.0, 0.0]], "place"),
        ([1.0], [[0.0, -inf, 0.0]], "place"),
        ([1.0, 2.0], np.zeros((3, 3)), "shape"),
        (1.0, np.zeros((1, 3)), "shape"),
    ],
)
def test_arrays_that_cannot_be_summed_are_refused(mass: object, at: object, what: str) -> None:
    with pytest.raises(MechanicsError, match=what):
        balance_point_m(mass, at)  # type: ignore[arg-type]


def test_inertias_of_the_wrong_shape_are_refused() -> None:
    with pytest.raises(MechanicsError, match="own inertias"):
        assembly_sums([1.0, 2.0], np.zeros((2, 3)), np.zeros((3, 3)))
