"""Flat outlines with holes: what they are, and what is refused."""

from math import inf, nan, pi

import numpy as np
import pytest

from lab.mechanics import (
    MOST_CORNERS,
    Disc,
    HalfDisc,
    MechanicsError,
    Part,
    Polygon,
    Rectangle,
    Triangle,
    bounds_m,
    centre_m,
    extent_m,
    moment_sum,
    unit_inertia_m2,
)

SQUARE = ((0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0))
SMALL = ((0.4, 0.4), (0.6, 0.4), (0.6, 0.6), (0.4, 0.6))


def moved(ring: tuple[tuple[float, float], ...], along: float, up: float) -> tuple[tuple[float, float], ...]:
    return tuple((x + along, z + up) for x, z in ring)


def test_a_polygon_with_four_square_corners_is_a_rectangle() -> None:
    plate = Polygon(((3.0, 5.0), (3.4, 5.0), (3.4, 5.3), (3.0, 5.3)))
    assert unit_inertia_m2(plate) == pytest.approx(unit_inertia_m2(Rectangle(0.4, 0.3)), abs=1e-15)
    assert centre_m(plate) == pytest.approx((3.2, 0.0, 5.15), abs=1e-14)
    assert extent_m(plate) == pytest.approx((0.4, 0.0, 0.3), abs=1e-14)


def test_its_corners_may_go_round_either_way_and_say_the_first_twice() -> None:
    one = Polygon(SQUARE, (SMALL,))
    other = Polygon(SQUARE[::-1], (SMALL,))
    assert other.moments.area_m2 == pytest.approx(one.moments.area_m2, rel=1e-15)
    assert unit_inertia_m2(other) == pytest.approx(unit_inertia_m2(one), rel=1e-14)
    assert Polygon((*SQUARE, SQUARE[0])) == Polygon(SQUARE)
    assert Polygon(SQUARE, (SMALL[::-1],)).moments.area_m2 == pytest.approx(0.96, rel=1e-15)


def test_a_polygon_is_the_same_however_far_from_its_zero_it_is_drawn() -> None:
    near, far = Polygon(SQUARE, (SMALL,)).moments, Polygon(moved(SQUARE, 1e6, -1e6), (moved(SMALL, 1e6, -1e6),)).moments
    # Corners 10⁶ away are themselves rounded at 10⁻¹⁰.
    assert far.area_m2 == pytest.approx(near.area_m2, abs=1e-9)
    assert far.along2_m2 == pytest.approx(near.along2_m2, abs=1e-9)
    assert far.product_m2 == pytest.approx(near.product_m2, abs=1e-9)


def test_a_slanting_plate_has_a_product_of_inertia() -> None:
    own = unit_inertia_m2(Triangle(((0.0, 0.0), (0.3, 0.0), (0.0, 0.2))))
    # ∫ x z of a right triangle about its centre is −b h / 36 of its area; the tensor holds it with a minus.
    assert own[0, 2] == own[2, 0] == pytest.approx(0.3 * 0.2 / 36, rel=1e-12)
    assert own[0, 0] + own[2, 2] == pytest.approx(own[1, 1], rel=1e-15)


def test_a_parts_place_is_its_centre_of_area() -> None:
    fin = Part("fin", 0.05, (1.0, 0.0, 2.0), Triangle(((0.0, 0.0), (0.3, 0.0), (0.0, 0.3))))
    assert moment_sum([fin]).balance_point_m == (1.0, 0.0, 2.0)
    low, high = bounds_m(fin.shape)
    assert low == pytest.approx((-0.1, 0.0, -0.1), abs=1e-15)
    assert high == pytest.approx((0.2, 0.0, 0.2), abs=1e-15)


def test_a_half_disc_is_half_of_a_disc() -> None:
    whole, half = unit_inertia_m2(Disc(0.2)), unit_inertia_m2(HalfDisc(0.2))
    rise = centre_m(HalfDisc(0.2))[2]
    assert rise == pytest.approx(4 * 0.2 / (3 * pi), rel=1e-15)
    # Two of them, each moved to the disc's middle, make the disc.
    assert half + np.diag([rise**2, rise**2, 0.0]) == pytest.approx(whole, abs=1e-16)
    assert bounds_m(HalfDisc(0.2)) == (pytest.approx((-0.2, 0.0, -rise)), pytest.approx((0.2, 0.0, 0.2 - rise)))
    assert extent_m(HalfDisc(0.2)) == (0.4, 0.0, 0.2)
    assert extent_m(Disc(0.2)) == (0.4, 0.0, 0.4)


def test_an_outline_that_crosses_itself_is_refused_and_the_sides_named() -> None:
    bow_tie = ((0.0, 0.0), (1.0, 1.0), (1.0, 0.0), (0.0, 1.0))
    with pytest.raises(
        MechanicsError,
        match=r"the outline of part 'sail' crosses or touches itself: its side 1–2 meets its side 3–4; give",
    ):
        Polygon(bow_tie, called="part 'sail'")


@pytest.mark.parametrize(
    "outline",
    [
        ((0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (1.0, 0.0), (0.0, 2.0)),  # a corner on a side
        ((0.0, 0.0), (1.0, 0.0), (0.5, 0.0), (0.5, 1.0)),  # a side that runs back
        ((0.0, 0.0), (1.0, 0.0), (2.0, 0.0)),  # no area at all
        ((0.0, 0.0), (1.0, 1.0), (2.0, 0.0), (2.0, 2.0), (1.0, 1.0), (0.0, 2.0)),  # a waist of nothing
        # A corner a last bit of a float past a side: round-off alone would let it through.
        ((0.0, 0.0), (0.3, 0.1), (0.6, 0.6), (0.15, 0.04999999999999999), (-0.1, 0.6)),
    ],
)
def test_an_outline_that_touches_itself_is_refused(outline: tuple[tuple[float, float], ...]) -> None:
    with pytest.raises(MechanicsError, match=r"the outline of the polygon crosses or touches itself"):
        Polygon(outline)


def test_corners_that_are_none_are_refused_by_number() -> None:
    with pytest.raises(MechanicsError, match=r"corner 2 of the outline of the polygon is nan m; it must be a finite"):
        Polygon(((0.0, 0.0), (nan, 0.0), (1.0, 1.0)))
    with pytest.raises(MechanicsError, match=r"corner 3 of the hole 1 of the polygon is inf m"):
        Polygon(SQUARE, (((0.4, 0.4), (0.6, 0.4), (0.6, inf)),))
    with pytest.raises(MechanicsError, match=r"corner 1 of the outline of the polygon has 3 numbers; it must have two"):
        Polygon(((0.0, 0.0, 0.0), (1.0, 0.0), (1.0, 1.0)))  # type: ignore[arg-type]
    with pytest.raises(MechanicsError, match=r"the outline of the polygon has 2 corners; it must have three or more"):
        Polygon(((0.0, 0.0), (1.0, 0.0)))
    with pytest.raises(MechanicsError, match=r"corners 2 and 3 of the outline of the polygon are at one place"):
        Polygon(((0.0, 0.0), (1.0, 0.0), (1.0, 0.0), (0.0, 1.0)))
    with pytest.raises(MechanicsError, match=r"outline of the triangle has 4 corners; it must have 3"):
        Triangle(SQUARE)
    with pytest.raises(MechanicsError, match=rf"has 501 corners with its holes; use at most {MOST_CORNERS}"):
        Polygon(tuple((float(n), float(n % 2)) for n in range(501)))


@pytest.mark.parametrize(
    ("holes", "what"),
    [
        ((moved(SMALL, 0.5, 0.0),), r"the hole 1 of the polygon meets the outline of the polygon, at its side 1–2"),
        ((moved(SMALL, 5.0, 0.0),), r"the hole 1 of the polygon lies outside the outline of the polygon; a hole must"),
        ((SMALL, moved(SMALL, 0.1, 0.1)), r"the hole 2 of the polygon meets the hole 1 of the polygon"),
        (
            (SMALL, ((0.45, 0.45), (0.55, 0.45), (0.5, 0.55))),
            r"the hole 2 of the polygon lies inside the hole 1 of the polygon",
        ),
        (
            (((0.45, 0.45), (0.55, 0.45), (0.5, 0.55)), SMALL),
            r"the hole 1 of the polygon lies inside the hole 2 of the polygon",
        ),
        ((moved(SMALL, 0.4, 0.0),), r"the hole 1 of the polygon meets the outline"),  # touches a side
        ((((-1.0, -1.0), (2.0, -1.0), (2.0, 2.0), (-1.0, 2.0)),), r"the hole 1 of the polygon lies outside"),
    ],
)
def test_a_hole_that_is_not_inside_is_refused(holes: tuple[tuple[tuple[float, float], ...], ...], what: str) -> None:
    with pytest.raises(MechanicsError, match=what):
        Polygon(SQUARE, holes)


@pytest.mark.parametrize("bad", [0.0, -1.0, nan, inf])
def test_a_radius_that_no_disc_has_is_refused(bad: float) -> None:
    with pytest.raises(MechanicsError, match=r"radius of the disc is .* m; it must be a finite number above 0"):
        Disc(bad)
    with pytest.raises(MechanicsError, match="radius of the half disc"):
        HalfDisc(bad)


def test_a_polygon_too_small_for_its_area_to_be_told_from_nothing_is_refused() -> None:
    with pytest.raises(MechanicsError, match=r"area of the outline less its holes is 0.0 m²; it must be above 0"):
        Polygon(((0.0, 0.0), (1e-200, 0.0), (0.0, 1e-200)))
