"""Limits: inside or out and by how much; the instants at which a path crosses them, exactly."""

from math import sqrt

import pytest

from lab.mechanics import (
    BalancePath,
    Burn,
    Limits,
    MechanicsError,
    Part,
    PathLeg,
    Tank,
    balance_path,
    instants_at_m,
    limit_crossings,
    standing,
    tank_course,
)

SLOPED = Limits(outline=((0.2, 4.0), (0.2, 9.0), (0.4, 9.0), (0.3, 4.0)), across_m=(-0.05, 0.05))


def leg(start: float, end: float, mass: float, gain: float, moment: float, moment_gain: float) -> PathLeg:
    return PathLeg(
        start_s=start,
        end_s=end,
        mass_kg=mass,
        mass_rate_kg_s=gain,
        moment_kg_m=(moment, 0.0, 0.0),
        moment_rate_kg_m_s=(moment_gain, 0.0, 0.0),
    )


def test_inside_says_how_far_the_edges_are() -> None:
    found = standing(SLOPED, (0.25, 0.02, 0.0), 6.5)
    assert found.inside
    assert found.along_spans_m == ((0.2, pytest.approx(0.35)),)
    assert found.along_out_m == 0.0
    assert found.along_margin_m == pytest.approx(0.05, rel=1e-12)
    assert found.across_margin_m == pytest.approx(0.03, rel=1e-12)


@pytest.mark.parametrize(
    ("at", "mass", "along_out", "mass_out", "across_out"),
    [
        ((0.36, 0.0, 0.0), 6.5, 0.01, 0.0, 0.0),
        ((0.15, 0.0, 0.0), 6.5, -0.05, 0.0, 0.0),
        ((0.25, 0.0, 0.0), 10.0, None, 1.0, 0.0),
        ((0.25, 0.0, 0.0), 3.5, None, -0.5, 0.0),
        ((0.25, -0.07, 0.0), 6.5, 0.0, 0.0, -0.02),
        ((0.25, 0.06, 0.0), 6.5, 0.0, 0.0, 0.01),
    ],
)
def test_outside_says_which_limit_and_by_how_much(
    at: tuple[float, float, float], mass: float, along_out: float | None, mass_out: float, across_out: float
) -> None:
    found = standing(SLOPED, at, mass)
    assert not found.inside
    assert found.along_out_m == (None if along_out is None else pytest.approx(along_out, abs=1e-15))
    assert found.mass_out_kg == pytest.approx(mass_out, abs=1e-15)
    assert found.across_out_m == pytest.approx(across_out, abs=1e-15)


def test_the_edges_and_corners_are_inside() -> None:
    for at, mass in ((0.2, 5.0), (0.35, 6.5), (0.2, 4.0), (0.3, 4.0), (0.4, 9.0), (0.3, 9.0), (0.1 + 0.2, 4.0)):
        assert standing(SLOPED, (at, 0.05, 0.0), mass).inside, (at, mass)


def test_a_notched_outline_allows_two_spans_at_one_mass() -> None:
    notched = Limits(outline=((0.0, 1.0), (0.0, 5.0), (0.4, 5.0), (0.5, 2.0), (0.6, 5.0), (1.0, 5.0), (1.0, 1.0)))
    found = standing(notched, (0.5, 0.0, 0.0), 3.5)
    assert found.along_spans_m == ((0.0, pytest.approx(0.45)), (pytest.approx(0.55), 1.0))
    assert abs(found.along_out_m or 0.0) == pytest.approx(0.05, rel=1e-12)
    assert standing(notched, (0.5, 0.0, 0.0), 2.0).inside
    assert standing(notched, (0.7, 0.0, 0.0), 5.0).along_spans_m == ((0.0, 0.4), (0.6, 1.0))


def test_limits_may_be_only_across() -> None:
    found = standing(Limits(across_m=(-0.1, 0.2)), (9.0, 0.0, 0.0), 1.0)
    assert found.inside
    assert found.along_out_m is None
    assert found.across_margin_m == pytest.approx(0.1)


def test_what_limits_cannot_be_is_refused() -> None:
    with pytest.raises(MechanicsError, match="limits say nothing; give an outline, a range across, or both"):
        Limits()
    with pytest.raises(MechanicsError, match=r"limits across are 0\.1 m and -0\.1 m; the left one must be the lower"):
        Limits(across_m=(0.1, -0.1))
    with pytest.raises(MechanicsError, match="the outline of the limits has 2 corners; it must have three or more"):
        Limits(outline=((0.0, 1.0), (0.1, 1.0), (0.0, 1.0)))
    with pytest.raises(MechanicsError, match="the outline of the limits meets itself, edges 1 and 3"):
        Limits(outline=((0.0, 1.0), (1.0, 2.0), (1.0, 1.0), (0.0, 2.0)))
    with pytest.raises(MechanicsError, match="has a corner twice in a row"):
        Limits(outline=((0.0, 1.0), (0.0, 1.0), (1.0, 1.0), (0.0, 2.0)))
    with pytest.raises(MechanicsError, match=r"a corner of the limits is 0\.0 kg"):
        Limits(outline=((0.0, 0.0), (1.0, 1.0), (0.0, 2.0)))
    with pytest.raises(MechanicsError, match="balance point has 2 numbers"):
        standing(SLOPED, (0.0, 1.0), 2.0)  # type: ignore[arg-type]


def test_an_upright_edge_is_crossed_where_the_moments_say() -> None:
    """8 kg at 0.3, losing 10 g/s at 0.0: 2.4 / (8 − 0.01 t) = 0.32 at t = 50."""
    path = BalancePath(legs=(leg(0.0, 100.0, 8.0, -0.01, 2.4, 0.0),))
    box = Limits(outline=((0.2, 4.0), (0.2, 9.0), (0.32, 9.0), (0.32, 4.0)))
    found = limit_crossings(path, box)
    (crossing,) = found.crossings
    assert crossing.at_s == pytest.approx(50.0, rel=1e-13)
    assert (crossing.goes, crossing.limit, crossing.edge) == ("out", "outline", 2)
    assert crossing.point.balance_point_m[0] == pytest.approx(0.32, rel=1e-13)
    assert [(round(s.start_s), round(s.end_s), s.inside) for s in found.stretches] == [(0, 50, True), (50, 100, False)]
    assert not found.stays_inside
    assert instants_at_m(path, 0.32) == pytest.approx((50.0,), rel=1e-13)
    assert instants_at_m(path, 0.5) == ()


def test_a_sloped_edge_is_crossed_at_the_root_of_a_quadratic() -> None:
    """Moment 2.4 + 0.01 t at a constant gain of mass: with m = 8 − 0.02 t, x = a + s m meets p = a m + s m²."""
    path = BalancePath(legs=(leg(10.0, 110.0, 8.0, -0.02, 2.4, 0.002),))
    found = limit_crossings(path, Limits(outline=SLOPED.outline))
    # The edge: x = 0.22 + 0.02 m.  2.4 + 0.002 u = (8 − 0.02 u)(0.22 + 0.02 (8 − 0.02 u)).
    a, b, c = 8e-6, -0.02 * 0.22 - 0.04 * 0.16 - 0.002, 8.0 * 0.38 - 2.4
    root = (-b - sqrt(b * b - 4 * a * c)) / (2 * a)
    (crossing,) = found.crossings
    assert crossing.at_s == pytest.approx(10.0 + root, rel=1e-12)
    assert (crossing.goes, crossing.edge) == ("out", 2)


def test_a_limit_across_is_crossed_with_its_side() -> None:
    left = Tank(name="left", at_m=(0.25, -0.5, 0), capacity_m3=1.0, contents_m3=1.0, density_kg_m3=1.0)
    right = Tank(name="right", at_m=(0.25, 0.5, 0), capacity_m3=1.0, contents_m3=1.0, density_kg_m3=1.0)
    course = tank_course([left, right], [Burn(rate_m3_s=0.01, tanks=("left", "right"), order="in order")])
    path = balance_path([Part("hull", 5.0, (0.25, 0.0, 0.0))], course)
    found = limit_crossings(path, SLOPED)
    assert [(crossing.goes, crossing.limit) for crossing in found.crossings] == [("out", "right"), ("in", "right")]
    # 0.5 (1 − (1 − 0.01 t)) = 0.05 (7 − 0.01 t): t = 0.35 / 0.0055; back when 0.5 r = 0.05 (5 + r), r = 5 / 9.
    out, back = (crossing.at_s for crossing in found.crossings)
    assert out == pytest.approx(0.35 / 0.0055, rel=1e-12)
    assert back == pytest.approx(100.0 + 100.0 * (1.0 - 5.0 / 9.0), rel=1e-12)


def test_a_crossing_just_where_two_legs_meet_is_one_crossing() -> None:
    path = BalancePath(legs=(leg(0.0, 50.0, 8.0, -0.01, 2.4, 0.0), leg(50.0, 90.0, 7.5, -0.02, 2.4, 0.0)))
    box = Limits(outline=((0.2, 4.0), (0.2, 9.0), (0.32, 9.0), (0.32, 4.0)))
    (crossing,) = limit_crossings(path, box).crossings
    assert crossing.at_s == pytest.approx(50.0, rel=1e-13)
    assert crossing.edge == 2


def test_a_path_that_touches_an_edge_or_stays_inside_does_not_cross() -> None:
    """It turns back at the end of a leg, just on the edge."""
    there, back = leg(0.0, 10.0, 8.0, 0.0, 2.0, 0.04), leg(10.0, 20.0, 8.0, 0.0, 2.4, -0.04)
    box = Limits(outline=((0.2, 4.0), (0.2, 9.0), (0.3, 9.0), (0.3, 4.0)))
    found = limit_crossings(BalancePath(legs=(there, back)), box)
    assert found.crossings == ()
    assert found.stays_inside


def test_a_path_through_a_corner_crosses_once() -> None:
    """Straight through the corner (0.3, 8) of a box, upwards and out."""
    box = Limits(outline=((0.2, 4.0), (0.2, 8.0), (0.3, 8.0), (0.3, 4.0)))
    path = BalancePath(legs=(leg(0.0, 10.0, 7.0, 0.2, 1.9, 0.1),))
    assert path.point_at(5.0).balance_point_m[0] == pytest.approx(0.3)
    (crossing,) = limit_crossings(path, box).crossings
    assert crossing.at_s == pytest.approx(5.0, rel=1e-12)
    assert crossing.edge in (1, 2)


def test_a_path_that_comes_up_to_an_edge_and_stays_there_has_come_in() -> None:
    box = Limits(outline=((0.2, 4.0), (0.2, 8.0), (0.3, 8.0), (0.3, 4.0)))
    path = BalancePath(legs=(leg(0.0, 10.0, 7.0, 0.0, 2.8, -0.07), leg(10.0, 20.0, 7.0, 0.0, 2.1, 0.0)))
    (crossing,) = limit_crossings(path, box).crossings
    assert (crossing.goes, crossing.edge) == ("in", 2)
    assert crossing.at_s == pytest.approx(10.0, rel=1e-14)


def test_a_path_that_comes_up_to_a_corner_and_stays_there_has_come_in() -> None:
    """The second leg never meets anything: what it sets out from was met at the end of the first."""
    outline = ((-0.2, 3.0), (-0.3, 6.0), (-0.1, 10.0), (0.2, 10.0), (0.3, 5.0), (0.2, 3.0))
    path = BalancePath(legs=(leg(0.0, 10.0, 7.0, 0.3, -2.8, 0.18), leg(10.0, 20.0, 10.0, 0.0, -1.0, 0.0)))
    found = limit_crossings(path, Limits(outline=outline))
    (crossing,) = found.crossings
    assert crossing.goes == "in"
    assert crossing.at_s == pytest.approx(10.0, rel=1e-9)
    assert found.stretches[-1].inside


def test_a_path_along_an_edge_is_inside() -> None:
    box = Limits(outline=((0.2, 4.0), (0.2, 8.0), (0.3, 8.0), (0.3, 4.0)))
    path = BalancePath(legs=(leg(0.0, 10.0, 7.0, -0.1, 2.1, -0.03),))
    assert limit_crossings(path, box).stays_inside


def test_a_standing_path_has_one_stretch_and_a_place_it_stays_at_no_instant() -> None:
    still = BalancePath(legs=(leg(0.0, 0.0, 7.0, 0.0, 1.75, 0.0),))
    found = limit_crossings(still, Limits(outline=SLOPED.outline))
    assert [(s.start_s, s.end_s, s.inside) for s in found.stretches] == [(0.0, 0.0, True)]
    assert instants_at_m(still, 0.25) == ()
    with pytest.raises(MechanicsError, match="place is inf m"):
        instants_at_m(still, float("inf"))
