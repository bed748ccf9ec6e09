"""Sums against exact fractions, solids against trimesh, doubt against chance, statics against symbols."""

from fractions import Fraction
from math import isclose

import numpy as np
import pytest
import sympy
import trimesh

from lab.mechanics import (
    STANDARD_GRAVITY_M_S2,
    Box,
    Cylinder,
    Part,
    balance_point_doubt_m,
    inertia_about_kg_m2,
    moment_sum,
    two_support_reactions_n,
    unit_inertia_m2,
)

ULPS = 4 * np.finfo(float).eps  # A product, a sum, a quotient: one rounding each, and one to spare.


def random_build(seed: int, count: int = 12) -> list[Part]:
    random = np.random.default_rng(seed)
    return [
        Part(
            f"part {n}",
            float(random.uniform(0.01, 2.0)),
            tuple(map(float, random.uniform(-1.0, 1.0, 3))),
            Box(tuple(map(float, random.uniform(0.01, 0.2, 3)))),
            cut=n == 3,
            mass_doubt_kg=float(random.uniform(0.0, 0.01)),
            at_doubt_m=tuple(map(float, random.uniform(0.0, 0.002, 3))),
        )
        for n in range(count)
    ]


@pytest.mark.parametrize("seed", range(20))
def test_balance_point_and_moment_agree_with_exact_fractions(seed: int) -> None:
    build = random_build(seed)
    reference = (0.37, -0.11, 5.25)
    total = moment_sum(build, reference)
    mass = sum(Fraction(part.signed_mass_kg) for part in build)
    for axis in range(3):
        moment = sum(Fraction(p.signed_mass_kg) * Fraction(p.at_m[axis]) for p in build)
        gross = sum(Fraction(p.mass_kg) * abs(Fraction(p.at_m[axis])) for p in build)
        shifted = moment - mass * Fraction(reference[axis])
        largest = float(gross + mass * abs(Fraction(reference[axis])))
        assert abs(float(Fraction(total.balance_point_m[axis]) - moment / mass)) <= ULPS * float(gross / mass)
        assert abs(float(Fraction(total.moment_kg_m[axis]) - shifted)) <= ULPS * largest


@pytest.mark.parametrize("seed", range(10))
def test_two_reactions_agree_with_exact_fractions_and_symbols(seed: int) -> None:
    build = [part for part in random_build(seed) if not part.cut]
    first, second = Fraction(-2), Fraction(9, 4)
    one, other = sympy.symbols("one other")
    weights = [
        (sympy.Rational(*p.mass_kg.as_integer_ratio()), sympy.Rational(*p.at_m[0].as_integer_ratio())) for p in build
    ]
    solved = sympy.solve(
        [
            one + other - sum(w for w, _ in weights),
            one * sympy.Rational(-2) + other * sympy.Rational(9, 4) - sum(w * x for w, x in weights),
        ],
        [one, other],
    )
    reactions = two_support_reactions_n(build, float(first), float(second))
    assert reactions is not None
    assert isclose(reactions[0], float(solved[one]) * STANDARD_GRAVITY_M_S2, rel_tol=1e-14)
    assert isclose(reactions[1], float(solved[other]) * STANDARD_GRAVITY_M_S2, rel_tol=1e-14)


def test_solid_shapes_turn_as_trimesh_says() -> None:
    block = trimesh.creation.box((0.3, 0.2, 0.1))
    assert unit_inertia_m2(Box((0.3, 0.2, 0.1))) == pytest.approx(block.moment_inertia / block.mass, abs=1e-12)
    # trimesh's cylinder is a prism of 512 sides about z: its area and spread are 1e-4 short of a circle's.
    round_bar = trimesh.creation.cylinder(radius=0.05, height=0.4, sections=512)
    ours = unit_inertia_m2(Cylinder(0.05, 0.4, axis="up"))
    assert ours == pytest.approx(round_bar.moment_inertia / round_bar.mass, rel=1e-4, abs=1e-12)
    tube = trimesh.creation.annulus(0.03, 0.05, 0.4, sections=512)
    ours = unit_inertia_m2(Cylinder(0.05, 0.4, 0.03, axis="up"))
    assert ours == pytest.approx(tube.moment_inertia / tube.mass, rel=1e-4, abs=1e-9)


def test_inertia_of_a_whole_is_that_of_trimesh_joined_solids() -> None:
    block = trimesh.creation.box((0.3, 0.2, 0.1))
    other = trimesh.creation.box((0.1, 0.1, 0.4))
    block.apply_translation((0.1, 0.0, 0.0))
    other.apply_translation((-0.4, 0.05, 0.2))
    joined = trimesh.util.concatenate([block, other])  # apart, so nothing is counted twice
    parts = [
        Part("block", float(block.mass), (0.1, 0.0, 0.0), Box((0.3, 0.2, 0.1))),
        Part("other", float(other.mass), (-0.4, 0.05, 0.2), Box((0.1, 0.1, 0.4))),
    ]
    centre = moment_sum(parts).balance_point_m
    assert centre == pytest.approx(joined.center_mass, abs=1e-12)
    assert inertia_about_kg_m2(parts, centre) == pytest.approx(joined.moment_inertia, abs=1e-12)


@pytest.mark.parametrize("sets", [False, True])
def test_doubt_agrees_with_random_trials(sets: bool) -> None:
    random = np.random.default_rng(99)
    names = ["tray", "tray", "hook", None, None]
    parts = [
        Part(
            f"part {n}",
            0.1 + 0.1 * n,
            (0.1 * n * n, 0.0, 0.0),
            mass_doubt_kg=0.001 + 0.0005 * n,
            at_doubt_m=(0.001, 0.0, 0.0),
            set_name=names[n] if sets else None,
        )
        for n in range(5)
    ]
    trials = 200_000
    groups = [name if sets and name else n for n, name in enumerate(names)]
    draws = {group: random.standard_normal((2, trials)) for group in dict.fromkeys(groups)}
    mass = np.array([p.mass_kg + p.mass_doubt_kg * draws[g][0] for p, g in zip(parts, groups, strict=True)])
    at = np.array([p.at_m[0] + p.at_doubt_m[0] * draws[g][1] for p, g in zip(parts, groups, strict=True)])
    spread = float(((mass * at).sum(axis=0) / mass.sum(axis=0)).std())
    doubt = balance_point_doubt_m(parts)
    assert doubt is not None
    # 200 000 trials know their own spread to 1 part in 630; four times that, and the second order is less.
    assert doubt[0] == pytest.approx(spread, rel=4 / 630)
