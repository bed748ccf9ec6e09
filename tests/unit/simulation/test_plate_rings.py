"""Outlines on a grid of nanometres: what lies inside, and how they fall into triangles."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from lab.mechanics import MechanicsError, Polygon
from lab.simulation.benches.plate_rings import in_wood, on_grid, ring_on_grid, triangles_of

SQUARE = ((0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0))
ELL = ((0.0, 0.0), (2.0, 0.0), (2.0, 1.0), (1.0, 1.0), (1.0, 3.0), (0.0, 3.0))
COMB = ((0.0, 0.0), (5.0, 0.0), (5.0, 2.0), (4.0, 2.0), (4.0, 1.0), (3.0, 1.0), (3.0, 2.0), (2.0, 2.0), (2.0, 1.0),
        (1.0, 1.0), (1.0, 2.0), (0.0, 2.0))  # fmt: skip


def area(ring):
    pairs = zip(ring, (*ring[1:], ring[0]), strict=True)
    return sum(x * b - a * z for (x, z), (a, b) in pairs) / 2


@st.composite
def stars(draw):
    """Rings that go once round zero: each corner at its own bearing, so none crosses another."""
    count = draw(st.integers(3, 24))
    radii = draw(st.lists(st.floats(0.02, 0.4), min_size=count, max_size=count))
    turn = draw(st.floats(0.0, 6.3))
    bearings = [turn + 2 * math.pi * place / count for place in range(count)]
    ring = tuple((r * math.cos(at), r * math.sin(at)) for r, at in zip(radii, bearings, strict=True))
    return ring_on_grid(ring[::-1] if draw(st.booleans()) else ring)


@pytest.mark.parametrize(("ring", "count"), [(SQUARE, 2), (ELL, 4), (ELL[::-1], 4)])
def test_an_outline_of_n_corners_falls_into_n_less_two_triangles(ring, count):
    assert len(triangles_of(ring)) == count


@pytest.mark.parametrize("ring", [COMB, COMB[::-1]])
def test_corners_that_come_to_lie_on_one_line_make_fewer_triangles_of_the_same_area(ring):
    triangles = triangles_of(ring)
    # The feet of the three teeth's gaps lie on one line.
    assert len(triangles) == 8
    assert sum(map(area, triangles)) == 8.0


def test_a_corner_on_a_straight_edge_makes_no_triangle():
    assert len(triangles_of(((0.0, 0.0), (0.5, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0)))) == 2


@settings(max_examples=150, deadline=None)
@given(stars())
def test_triangles_fill_the_outline_once_and_go_round_anticlockwise(ring):
    triangles = triangles_of(ring)
    assert all(area(triangle) > 0.0 for triangle in triangles)
    # Each area is a few products of numbers under 1: their round-off is under 1e-15 each.
    assert sum(map(area, triangles)) == pytest.approx(abs(area(ring)), abs=1e-14)
    corners = set(ring)
    assert all(set(triangle) <= corners for triangle in triangles)


@settings(max_examples=150, deadline=None)
@given(stars())
def test_the_mean_of_the_triangles_is_the_centre_by_green_s_theorem(ring):
    triangles = triangles_of(ring)
    try:
        moments = Polygon(ring).moments
    except MechanicsError:
        return  # two corners of a thin ring fell on one place of the grid
    total = sum(map(area, triangles))
    for axis in (0, 1):
        mean = sum(area(tri) * sum(corner[axis] for corner in tri) / 3 for tri in triangles) / total
        # Two ways to one number of a plate under a metre; slivers of a mm² lose some digits.
        assert mean == pytest.approx(moments.centre_m[axis], abs=1e-11)


def test_wood_is_inside_the_outline_and_outside_its_holes_and_edges_count():
    hole = ((0.4, 0.4), (0.6, 0.4), (0.6, 0.6), (0.4, 0.6))
    inside, in_hole, on_edge, on_hole_edge, outside = (0.2, 0.2), (0.5, 0.5), (0.0, 0.3), (0.4, 0.5), (1.1, 0.5)
    assert [in_wood(place, SQUARE, (hole,)) for place in (inside, in_hole, on_edge, on_hole_edge, outside)] == [
        True, False, True, True, False,
    ]  # fmt: skip


@settings(max_examples=150, deadline=None)
@given(stars(), st.floats(-0.5, 0.5), st.floats(-0.5, 0.5))
def test_a_place_is_inside_where_a_triangle_holds_it(ring, x, z):
    place = on_grid(x), on_grid(z)
    assert in_wood(place, ring, ()) == any(in_wood(place, triangle, ()) for triangle in triangles_of(ring))


def test_the_grid_is_a_nanometre_and_knows_no_minus_nought():
    assert on_grid(0.1234567894) == 0.123456789
    assert math.copysign(1.0, on_grid(-1e-12)) == 1.0
