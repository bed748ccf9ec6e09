"""Mass sums and inertia against aerosandbox's mass properties, and against exact fractions."""

from fractions import Fraction
from functools import reduce
from operator import add
from typing import Any

import numpy as np
import pytest

from lab.mechanics import (
    Box,
    Group,
    Part,
    Point,
    Shape,
    Sphere,
    flattened,
    inertia_about_kg_m2,
    moment_sum,
    principal_inertia,
)
from lab.mechanics.assemblies import assembly_sums

EPS = float(np.finfo(float).eps)


def random_build(seed: int, count: int = 15, *, size_m: float = 1.0) -> list[Part]:
    """Points, boxes and balls."""
    random = np.random.default_rng(seed)
    parts = []
    for number in range(count):
        sides = random.uniform(0.01, 0.3, 3) * size_m
        shapes: tuple[Shape, ...] = (Point(), Box(tuple(map(float, sides))), Sphere(float(sides[0])))
        at = tuple(map(float, random.uniform(-1.0, 1.0, 3) * size_m))
        parts.append(Part(f"part {number}", float(random.uniform(0.01, 2.0)), at, shapes[number % 3]))
    return parts


def their_whole(parts: list[Part]) -> Any:
    """The same parts as aerosandbox adds them up."""
    aerosandbox = pytest.importorskip("aerosandbox", reason="no wheels for this Python yet")
    from aerosandbox.weights import mass_properties_of_shapes as shapes

    found = []
    for part in parts:
        if isinstance(part.shape, Box):
            own = shapes.mass_properties_of_rectangular_prism(part.mass_kg, *part.shape.size_m)
        elif isinstance(part.shape, Sphere):
            own = shapes.mass_properties_of_sphere(part.mass_kg, part.shape.radius_m)
        else:
            own = aerosandbox.MassProperties(mass=part.mass_kg)
        for name, value in zip(("x_cg", "y_cg", "z_cg"), part.at_m, strict=True):
            setattr(own, name, value)
        found.append(own)
    return reduce(add, found)


@pytest.mark.parametrize("size_m", [1e-3, 1.0, 1e3])
@pytest.mark.parametrize("seed", range(5))
def test_a_build_has_the_mass_properties_of_aerosandbox(seed: int, size_m: float) -> None:
    parts = random_build(seed, size_m=size_m)
    whole = their_whole(parts)
    total = moment_sum(parts)
    # Fifteen parts joined one at a time round some fifty times.
    assert total.mass_kg == pytest.approx(whole.mass, rel=50 * EPS)
    assert total.balance_point_m == pytest.approx(whole.xyz_cg, abs=50 * EPS * size_m)
    ours = inertia_about_kg_m2(parts, total.balance_point_m)
    slack = 50 * EPS * float(np.trace(ours))
    assert ours == pytest.approx(np.array(whole.inertia_tensor), abs=slack)
    point = (0.3 * size_m, -0.7 * size_m, 1.1 * size_m)
    theirs = np.array(whole.get_inertia_tensor_about_point(*point))
    about = inertia_about_kg_m2(parts, point)
    assert about == pytest.approx(theirs, abs=50 * EPS * float(np.trace(about)))


@pytest.mark.parametrize("seed", range(5))
def test_principal_moments_are_the_roots_of_their_tensor(seed: int) -> None:
    parts = random_build(seed)
    tensor = np.array(their_whole(parts).inertia_tensor)
    ours = principal_inertia(parts)
    # The characteristic polynomial's roots, which know nothing of eigenvectors; they lose half of the digits.
    roots = sorted(np.roots(np.poly(tensor)).real)
    assert sorted(ours.moments_kg_m2) == pytest.approx(roots, rel=1e-7)
    for moment, axis in zip(ours.moments_kg_m2, ours.axes, strict=True):
        assert tensor @ np.array(axis) == pytest.approx(moment * np.array(axis), abs=1e-12 * max(roots))


def test_many_builds_at_once_are_each_what_aerosandbox_makes_of_them() -> None:
    builds = [random_build(seed, count=9) for seed in range(20, 26)]
    mass = np.array([[part.mass_kg for part in build] for build in builds])
    at = np.array([[part.at_m for part in build] for build in builds])
    own = np.array([[part.own_inertia_kg_m2 for part in build] for build in builds])
    found = assembly_sums(mass, at, own)
    for number, build in enumerate(builds):
        whole = their_whole(build)
        assert found.mass_kg[number] == pytest.approx(whole.mass, rel=50 * EPS)
        assert found.balance_point_m[number] == pytest.approx(whole.xyz_cg, abs=50 * EPS)
        tensor = np.array(whole.inertia_tensor)
        assert found.inertia_kg_m2[number] == pytest.approx(tensor, abs=50 * EPS * float(np.trace(tensor)))


def exact_inertia(parts: list[Part], point: tuple[float, float, float]) -> list[list[Fraction]]:
    """The parallel-axis theorem in fractions, each part's own inertia as it is stated."""
    total = [[Fraction(0)] * 3 for _ in range(3)]
    for part in parts:
        away = [Fraction(a) - Fraction(b) for a, b in zip(part.at_m, point, strict=True)]
        square = sum(each * each for each in away)
        for i in range(3):
            for j in range(3):
                spread = (square if i == j else 0) - away[i] * away[j]
                total[i][j] += Fraction(part.own_inertia_kg_m2[i][j]) + Fraction(part.signed_mass_kg) * spread
    return total


@pytest.mark.parametrize("scale", [1e-6, 1.0, 1e6])
@pytest.mark.parametrize("seed", range(4))
def test_inertia_about_any_point_agrees_with_exact_fractions(seed: int, scale: float) -> None:
    parts = random_build(seed, size_m=scale)
    parts[3] = Part("hole", parts[3].mass_kg, parts[3].at_m, parts[3].shape, cut=True)
    for point in ((0.0, 0.0, 0.0), (1.5 * scale, -0.25 * scale, 3.0 * scale)):
        ours, exact = inertia_about_kg_m2(parts, point), exact_inertia(parts, point)
        # Fifteen terms, each rounded some five times, of the size of the trace.
        slack = 15 * 5 * EPS * float(sum(exact[i][i] for i in range(3)))
        for i in range(3):
            for j in range(3):
                assert abs(Fraction(float(ours[i, j])) - exact[i][j]) <= Fraction(slack)


def test_a_deep_nest_of_groups_adds_up_to_the_same_fractions() -> None:
    """Groups placed and not turned only add places, so their parts' exact places are known."""
    member: Part | Group = Part("lead", 0.7, (0.1, 0.2, 0.3))
    at = [Fraction(0.1), Fraction(0.2), Fraction(0.3)]
    for depth in range(60):
        step = (0.001 * depth, -0.002 * depth, 0.01)
        member = Group(name=f"g{depth}", members=(member,), at_m=step)
        at = [here + Fraction(there) for here, there in zip(at, step, strict=True)]
    (lead,) = flattened([member])
    # Sixty sums, each rounded at the size of the largest, 3.6 m.
    for ours, exact in zip(lead.at_m, at, strict=True):
        assert abs(Fraction(ours) - exact) <= Fraction(60 * EPS * 3.6)
