"""Outlines with holes against shapely (area, centre, what is simple) and sympy (exact second moments)."""

import random
from itertools import pairwise
from math import cos, pi, sin

import pytest
import shapely
import sympy

from lab.mechanics import MechanicsError, Polygon, Triangle, polygon_moments, unit_inertia_m2

Ring = tuple[tuple[float, float], ...]
SEED = 20240


def star(generator: random.Random, corners: int, size: float, at: tuple[float, float]) -> Ring:
    """A simple outline: corners in order of their angle, at any distance."""
    angles = sorted(generator.uniform(0.0, 2 * pi) for _ in range(corners))
    distances = [size * generator.uniform(0.3, 1.0) for _ in angles]
    return tuple((at[0] + d * cos(a), at[1] + d * sin(a)) for a, d in zip(angles, distances, strict=True))


def test_outlines_with_a_hole_have_shapelys_area_and_centre() -> None:
    generator = random.Random(SEED)
    tried = 0
    while tried < 200:
        outline = star(generator, generator.randint(8, 40), 1.0, (3.0, -2.0))
        hole = star(generator, generator.randint(5, 12), 0.1, (3.0, -2.0))
        reference = shapely.Polygon(outline, [hole])
        if not (reference.is_valid and shapely.Polygon(outline).contains_properly(shapely.Polygon(hole))):
            continue
        tried += 1
        found = polygon_moments(outline, (hole,))
        # Shapely adds about its first corner and rounds as it goes: some 40 terms of 1e-16.
        assert found.area_m2 == pytest.approx(reference.area, rel=1e-13)
        assert found.centre_m == pytest.approx((reference.centroid.x, reference.centroid.y), abs=1e-13)


def test_what_shapely_calls_not_simple_is_refused_and_nothing_else() -> None:
    generator = random.Random(SEED)
    refused = 0
    for _ in range(2000):
        # Corners on a coarse grid, so that many touch and many lie in line.
        outline = tuple(
            (generator.randint(0, 6) / 8, generator.randint(0, 6) / 8) for _ in range(generator.randint(3, 6))
        )
        if len(set(outline)) < len(outline):
            continue
        simple = shapely.LinearRing(outline).is_simple and shapely.Polygon(outline).area > 0
        try:
            Polygon(outline)
            taken = True
        except MechanicsError:
            taken, refused = False, refused + 1
        assert taken == simple, outline
    assert refused > 300


def test_holes_that_shapely_finds_inside_and_apart_are_taken_and_no_others() -> None:
    generator = random.Random(SEED)
    taken_often = 0
    for _ in range(500):
        outline = star(generator, 12, 1.0, (0.0, 0.0))
        holes = [
            star(generator, 4, 0.25, (generator.uniform(-0.6, 0.6), generator.uniform(-0.6, 0.6))) for _ in range(2)
        ]
        rings = [shapely.Polygon(ring) for ring in (outline, *holes)]
        if not all(ring.is_valid for ring in rings):
            continue
        fits = all(rings[0].contains_properly(hole) for hole in rings[1:]) and rings[1].disjoint(rings[2])
        try:
            Polygon(outline, tuple(holes))
            taken = True
        except MechanicsError:
            taken = False
        taken_often += taken
        assert taken == fits
    assert taken_often > 20


def exact_moments(rings: list[tuple[Ring, int]]) -> tuple[sympy.Rational, ...]:
    """Area, centre and second moments of rings, outline +1 and holes −1, by sympy in whole fractions."""
    x, z = sympy.symbols("x z")
    totals = []
    for what in (sympy.Integer(1), x, z, x**2, z**2, x * z):
        total = sympy.Integer(0)
        for ring, sign in rings:
            corners = [sympy.Point(sympy.Rational(a), sympy.Rational(b)) for a, b in ring]
            # Triangles about the first corner, each mapped to the unit one and integrated there.
            for second, third in pairwise(corners[1:]):
                u, v = sympy.symbols("u v")
                first = corners[0]
                along = first.x + u * (second.x - first.x) + v * (third.x - first.x)
                up = first.y + u * (second.y - first.y) + v * (third.y - first.y)
                scale = (second.x - first.x) * (third.y - first.y) - (third.x - first.x) * (second.y - first.y)
                inner = sympy.integrate(sympy.expand(what.subs({x: along, z: up}) * scale), (v, 0, 1 - u))
                total += sign * sympy.integrate(sympy.expand(inner), (u, 0, 1))
        totals.append(total)
    area = totals[0]
    middle_x, middle_z = totals[1] / area, totals[2] / area
    return (
        area,
        middle_x,
        middle_z,
        totals[3] / area - middle_x**2,
        totals[4] / area - middle_z**2,
        totals[5] / area - middle_x * middle_z,
    )


def test_second_moments_are_sympys_exact_ones_to_round_off() -> None:
    outline = ((0.0, 0.0), (0.5, -0.125), (0.75, 0.25), (0.25, 0.1875), (0.125, 0.5))
    hole = ((0.25, 0.0), (0.375, 0.0), (0.3125, 0.125))
    exact = [float(value) for value in exact_moments([(outline, 1), (hole, -1)])]
    found = polygon_moments(outline, (hole,))
    ours = [found.area_m2, *found.centre_m, found.along2_m2, found.up2_m2, found.product_m2]
    assert ours == pytest.approx(exact, rel=1e-14)


def test_a_triangles_inertia_is_the_closed_form_of_its_sides() -> None:
    # About its centre, across the plate: (a² + b² + c²) / 36, whatever its shape.
    corners = ((0.1, 0.2), (0.9, -0.3), (0.4, 0.8))
    squares = [
        (p[0] - q[0]) ** 2 + (p[1] - q[1]) ** 2 for p, q in zip(corners, (*corners[1:], corners[0]), strict=True)
    ]
    assert unit_inertia_m2(Triangle(corners))[1, 1] == pytest.approx(sum(squares) / 36, rel=1e-14)


def test_a_regular_polygon_goes_to_a_disc_as_the_square_of_its_corners() -> None:
    def error(corners: int) -> float:
        ring = tuple((cos(2 * pi * n / corners), sin(2 * pi * n / corners)) for n in range(corners))
        return 0.5 - float(unit_inertia_m2(Polygon(ring))[1, 1])

    # Twice the corners, a quarter of the error; the next term is a few thousandths of it at 50.
    assert error(50) / error(100) == pytest.approx(4.0, rel=5e-3)
    assert error(100) / error(200) == pytest.approx(4.0, rel=2e-3)
