"""What must hold of every burn plan and every path: no volume is made or lost, no limit is missed."""

from itertools import pairwise
from math import fsum, isclose

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from lab.mechanics import (
    BalancePath,
    Burn,
    Limits,
    MechanicsError,
    Part,
    PathLeg,
    Pump,
    Tank,
    TankCourse,
    balance_path,
    limit_crossings,
    moment_sum,
    standing,
    tank_course,
)

SCALES = st.sampled_from([1e-6, 1e-3, 1.0, 1e3, 1e6])
#: Round rates and volumes, so that tanks empty together, just when a pump starts, and so on.
TENTHS = st.integers(1, 30).map(lambda n: n / 10.0)


@st.composite
def plans(draw: st.DrawFn) -> tuple[list[Tank], list[Burn], list[Pump], float]:
    """Two to four tanks; pumps only from an earlier to a later one, so that none run in a ring."""
    scale = draw(SCALES)
    count = draw(st.integers(2, 4))
    names = [f"t{n}" for n in range(count)]
    tanks = []
    for number, name in enumerate(names):
        capacity = draw(TENTHS)
        share = draw(st.sampled_from([0.0, 0.3, 0.5, 1.0]))
        tanks.append(
            Tank(
                name=name,
                at_m=(float(number), draw(st.sampled_from([-1.0, 0.0, 1.0])), 0.0),
                capacity_m3=capacity * scale,
                contents_m3=capacity * share * scale,
                density_kg_m3=draw(st.sampled_from([700.0, 800.0])),
            )
        )
    burns = [
        Burn(
            rate_m3_s=draw(TENTHS) * 0.1 * scale,
            tanks=tuple(draw(st.permutations(names))[: draw(st.integers(1, count))]),
            order=draw(st.sampled_from(["together", "in order"])),
            for_s=draw(TENTHS) * 3.0,
        )
        for _ in range(draw(st.integers(1, 3)))
    ]
    pumps = []
    for _ in range(draw(st.integers(0, 3))):
        first, second = sorted(draw(st.lists(st.integers(0, count - 1), min_size=2, max_size=2, unique=True)))
        start = draw(TENTHS)
        rate = draw(TENTHS) * 0.1 * scale
        pumps.append(
            Pump(
                source=names[first],
                target=names[second],
                rate_m3_s=rate,
                from_s=start,
                until_s=start + draw(TENTHS) * 5,
            )
        )
    return tanks, burns, pumps, scale


@settings(max_examples=300)
@given(plans())
def test_volume_is_neither_made_nor_lost(plan: tuple[list[Tank], list[Burn], list[Pump], float]) -> None:
    tanks, burns, pumps, scale = plan
    course = tank_course(tanks, burns, pumps=pumps)
    had = fsum(tank.contents_m3 for tank in tanks)
    # Each leg rounds each tank once or twice, at most 4 tanks of 3 scales.
    slack = 4e-16 * 3.0 * scale * 4 * 2 * len(course.legs)
    assert abs(fsum(course.contents_m3) + course.burned_m3 - had) <= slack
    for tank, contents in zip(tanks, course.contents_m3, strict=True):
        assert 0.0 <= contents <= tank.capacity_m3


@settings(max_examples=300)
@given(plans())
def test_legs_follow_each_other_few_and_within_every_tank(
    plan: tuple[list[Tank], list[Burn], list[Pump], float],
) -> None:
    tanks, burns, pumps, scale = plan
    course = tank_course(tanks, burns, pumps=pumps)
    # A burn and a pump each begin and end once; each time, each tank may empty or fill, twice to be generous.
    assert len(course.legs) <= (len(burns) + 2 * len(pumps)) * (2 * len(tanks) + 1) + 1
    for before, after in pairwise(course.legs):
        assert before.end_s == after.start_s
        for tank, held, flow, then in zip(tanks, before.contents_m3, before.flow_m3_s, after.contents_m3, strict=True):
            assert -1e-15 * scale <= then <= tank.capacity_m3
            there = held + flow * (before.end_s - before.start_s)
            assert isclose(there, then, rel_tol=0.0, abs_tol=2e-15 * 3.0 * scale)
    _rates_hold(course, burns, pumps)


def _rates_hold(course: TankCourse, burns: list[Burn], pumps: list[Pump]) -> None:
    ends = [fsum(burn.for_s or 0.0 for burn in burns[: n + 1]) for n in range(len(burns))]
    for leg in course.legs:
        if leg.end_s - leg.start_s <= 1e-12:  # between two times that are one but for round-off
            continue
        middle = (leg.start_s + leg.end_s) / 2.0
        wanted = next(burn.rate_m3_s for burn, end in zip(burns, ends, strict=True) if middle < end)
        assert isclose(leg.burn_m3_s, wanted, rel_tol=1e-11)
        for pump, moved in zip(pumps, leg.pump_m3_s, strict=True):
            runs = pump.from_s <= middle < pump.until_s
            assert 0.0 <= moved <= (pump.rate_m3_s if runs else 0.0)


@settings(max_examples=100)
@given(plans(), st.floats(0.0, 1.0))
def test_the_path_is_the_moment_sum_of_what_is_there(
    plan: tuple[list[Tank], list[Burn], list[Pump], float], share: float
) -> None:
    tanks, burns, pumps, scale = plan
    course = tank_course(tanks, burns, pumps=pumps)
    at_s = course.legs[-1].end_s * share
    hull = Part("hull", 500.0 * scale, (0.5, 0.1, 0.0))
    held = zip(tanks, course.contents_at(at_s), strict=True)
    now = [hull, *(Part(t.name, c * t.density_kg_m3, t.at_m) for t, c in held if c * t.density_kg_m3 > 0.0)]
    expected = moment_sum(now).balance_point_m
    found = balance_path([hull], course).point_at(at_s).balance_point_m
    for axis in range(3):
        # Places up to 3; the rates' round-off over a leg is some 1e-15 of the mass.
        assert isclose(found[axis], expected[axis], rel_tol=0.0, abs_tol=1e-13 * 3.0)


@st.composite
def walks(draw: st.DrawFn) -> tuple[BalancePath, float, float]:
    """Legs between points of a grid in (mass, moment), so that corners and edges are hit and run along."""
    mass_scale, length_scale = draw(SCALES), draw(SCALES)
    grid = st.tuples(st.integers(2, 12), st.integers(-4, 4))
    spots = [
        (m * mass_scale, m * x * 0.1 * mass_scale * length_scale)
        for m, x in draw(st.lists(grid, min_size=2, max_size=5))
    ]
    legs = [
        PathLeg(
            start_s=10.0 * n,
            end_s=10.0 * n + 10.0,
            mass_kg=m0,
            mass_rate_kg_s=(m1 - m0) / 10.0,
            moment_kg_m=(p0, 0.0, 0.0),
            moment_rate_kg_m_s=((p1 - p0) / 10.0, 0.0, 0.0),
        )
        for n, ((m0, p0), (m1, p1)) in enumerate(pairwise(spots))
    ]
    return BalancePath(legs=tuple(legs)), mass_scale, length_scale


CORNERS = ((-0.2, 3.0), (-0.3, 6.0), (-0.1, 10.0), (0.2, 10.0), (0.3, 5.0), (0.2, 3.0))


@settings(max_examples=300)
@given(walks())
def test_between_two_crossings_a_path_is_all_inside_or_all_outside(walk: tuple[BalancePath, float, float]) -> None:
    path, mass_scale, length_scale = walk
    limits = Limits(outline=tuple((x * length_scale, m * mass_scale) for x, m in CORNERS))
    course = limit_crossings(path, limits)
    assert course.stretches[0].start_s == 0.0
    assert course.stretches[-1].end_s == path.legs[-1].end_s
    assert len(course.crossings) == len(course.stretches) - 1
    for (before, after), crossing in zip(pairwise(course.stretches), course.crossings, strict=True):
        assert before.end_s == after.start_s == crossing.at_s
        assert before.inside != after.inside
        assert crossing.goes == ("in" if after.inside else "out")
    for stretch in course.stretches:
        for share in (0.01, 0.3, 0.5, 0.77, 0.99):
            point = path.point_at(stretch.start_s + (stretch.end_s - stretch.start_s) * share)
            inside = standing(limits, point.balance_point_m, point.mass_kg).inside
            # Touching an edge, or running along it, from outside counts as inside at that instant only.
            assert inside or not stretch.inside
            if inside and not stretch.inside:
                assert _near_an_edge(limits, point.balance_point_m[0], point.mass_kg)


def _near_an_edge(limits: Limits, along: float, mass: float) -> bool:
    for (a, low), (b, high) in limits.edges:
        length2 = ((b - a) / _span(limits, 0)) ** 2 + ((high - low) / _span(limits, 1)) ** 2
        beside = ((along - a) * (high - low) - (mass - low) * (b - a)) / (_span(limits, 0) * _span(limits, 1))
        if abs(beside) <= 1e-8 * max(length2, 1e-3) ** 0.5:
            return True
    return False


def _span(limits: Limits, axis: int) -> float:
    values = [corner[axis] for corner in limits.outline]
    return max(values) - min(values)


@given(plans())
def test_a_ring_of_pumps_is_refused(plan: tuple[list[Tank], list[Burn], list[Pump], float]) -> None:
    tanks, burns, pumps, _ = plan
    assume(pumps)
    first = pumps[0]
    back = Pump(source=first.target, target=first.source, rate_m3_s=1.0, from_s=first.from_s, until_s=first.until_s)
    ends_s = fsum(burn.for_s or 0.0 for burn in burns)
    if tank_course(tanks, burns, pumps=pumps).legs[-1].end_s > first.from_s and ends_s > first.from_s:
        with pytest.raises(MechanicsError, match="go round in a ring"):
            tank_course(tanks, burns, pumps=[*pumps, back])
