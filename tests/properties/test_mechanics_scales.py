"""What must hold of every sum from a millionth to a million times the usual size, at ties and next to them."""

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from math import hypot, isclose, pi, sqrt

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from lab.files.units import UNITS
from lab.mechanics import (
    STANDARD_GRAVITY_M_S2,
    Box,
    Group,
    Member,
    PadMotion,
    Part,
    Pivot,
    Rod,
    Swing,
    Vector,
    balance_point_m,
    flattened,
    inertia_about_kg_m2,
    moment_sum,
    pad_body,
    pad_tick,
    pivoted,
    rests_on,
    swing_energy_j,
    swing_tick,
    turn_about,
    two_support_reactions_n,
)
from lab.mechanics.assemblies import assembly_sums

SCALES = st.floats(-6.0, 6.0).map(lambda power: 10.0**power)
MASSES = st.floats(1e-3, 1e3)
PLACES = st.tuples(*[st.floats(-1.0, 1.0)] * 3)
#: A moment under this share of all of them is level; see lab.mechanics.pivots.
LEVEL = 1e-9


@st.composite
def builds(draw: st.DrawFn, least: int = 1) -> list[Part]:
    """One to eight parts, mass and length each at a scale of its own."""
    mass, length = draw(SCALES), draw(SCALES)
    count = draw(st.integers(least, 8))
    return [
        Part(f"part {n}", draw(MASSES) * mass, tuple(length * x for x in draw(PLACES)))  # type: ignore[arg-type]
        for n in range(count)
    ]


@st.composite
def pairs(draw: st.DrawFn) -> tuple[list[Part], float]:
    """A build that is level about zero to the last bit, for every part has its like on the other side; its length."""
    mass, length = draw(SCALES), draw(SCALES)
    parts = []
    for n in range(draw(st.integers(1, 4))):
        weight, arm = draw(MASSES) * mass, draw(st.floats(0.01, 1.0)) * length
        hold = draw(st.sampled_from(["clamped", "hung"]))
        parts += [Part(f"left {n}", weight, (-arm, 0.0, 0.0), hold=hold)]
        parts += [Part(f"right {n}", weight, (arm, 0.0, 0.0), hold=hold)]
    return parts, length


def reach(parts: list[Part]) -> float:
    return max(max(abs(x) for part in parts for x in part.at_m), 1e-12)


def exact_moment(parts: list[Part], at: float) -> tuple[Fraction, Fraction]:
    """Anticlockwise about a place along, and with every term counted up."""
    terms = [Fraction(part.signed_mass_kg) * (Fraction(at) - Fraction(part.at_m[0])) for part in parts]
    return sum(terms, Fraction(0)), sum(map(abs, terms), Fraction(0))


@given(builds(), st.tuples(*[st.floats(-1.0, 1.0)] * 3), SCALES)
def test_the_balance_point_is_the_same_for_any_reference_line(parts: list[Part], line: Vector, far: float) -> None:
    size = reach(parts)
    reference = tuple(each * size * min(far, 1e3) for each in line)
    here, there = moment_sum(parts), moment_sum(parts, reference)  # type: ignore[arg-type]
    assert here.balance_point_m == there.balance_point_m
    largest = size + max(map(abs, reference))
    for axis in range(3):
        by_table = reference[axis] + there.moment_kg_m[axis] / there.mass_kg
        assert isclose(by_table, here.balance_point_m[axis], rel_tol=0.0, abs_tol=1e-12 * largest)


@given(builds())
def test_balance_point_and_inertia_are_those_of_exact_fractions(parts: list[Part]) -> None:
    size = reach(parts)
    mass = sum((Fraction(part.mass_kg) for part in parts), Fraction(0))
    balance = moment_sum(parts).balance_point_m
    for axis in range(3):
        exact = sum((Fraction(p.mass_kg) * Fraction(p.at_m[axis]) for p in parts), Fraction(0)) / mass
        assert abs(Fraction(balance[axis]) - exact) <= Fraction(1e-15 * size)
    exact_across = sum(
        (Fraction(p.mass_kg) * (Fraction(p.at_m[0]) ** 2 + Fraction(p.at_m[2]) ** 2) for p in parts), Fraction(0)
    )
    ours = inertia_about_kg_m2(parts, (0.0, 0.0, 0.0))[1, 1]
    # |r|² - y² rounds at the size of |r|², which y may make larger than what is left.
    gross = float(sum((Fraction(p.mass_kg) * sum(Fraction(x) ** 2 for x in p.at_m) for p in parts), Fraction(0)))
    assert abs(float(ours) - float(exact_across)) <= 1e-14 * gross


@given(builds(), st.floats(-1.0, 1.0))
def test_the_end_that_drops_is_that_of_the_exact_moment(parts: list[Part], at: float) -> None:
    pivot = at * reach(parts)
    moment, gross = exact_moment(parts, pivot)
    goes = turn_about(parts, Pivot(pivot)).goes
    if abs(moment) > Fraction(1.001 * LEVEL) * gross:
        assert goes == ("left" if moment > 0 else "right")
    elif abs(moment) < Fraction(0.999 * LEVEL) * gross:
        assert goes == "level"


@given(pairs(), st.floats(-3.0, 3.0))
def test_what_is_tied_is_level_wherever_it_stands(build: tuple[list[Part], float], along: float) -> None:
    parts, length = build
    assert turn_about(parts, Pivot(0.0)).goes == "level"
    assert moment_sum(parts).balance_point_m[0] == 0.0
    # Moved along, places round: a tie to round-off, and still level.
    moved = [replace(part, at_m=(part.at_m[0] + along * length, 0.0, 0.0)) for part in parts]
    turn = turn_about(moved, Pivot(along * length))
    assert turn.goes == "level"
    assert turn.tilt_rad == 0.0
    body, swing = pivoted(moved, Pivot(along * length)), Swing()
    assert body.lever_kg_m == 0.0
    assert swing_tick(body, Pivot(along * length), swing).angle_rad == 0.0


@given(pairs(), st.floats(-13.0, -1.0), st.sampled_from([-1.0, 1.0]), st.integers(0, 7))
def test_next_to_a_tie_it_is_level_or_the_heavier_side_drops(
    build: tuple[list[Part], float], power: float, sign: float, which: int
) -> None:
    parts, _ = build
    which %= len(parts)
    share = sign * 10.0**power
    nudged = [replace(p, mass_kg=p.mass_kg * (1.0 + share)) if n == which else p for n, p in enumerate(parts)]
    moment, gross = exact_moment(nudged, 0.0)
    goes = turn_about(nudged, Pivot(0.0)).goes
    if abs(moment) < Fraction(0.999 * LEVEL) * gross:
        assert goes == "level"
    elif abs(moment) > Fraction(1.001 * LEVEL) * gross:
        heavier = parts[which].at_m[0] if sign > 0.0 else -parts[which].at_m[0]
        assert goes == ("left" if heavier < 0.0 else "right")


@given(pairs(), st.floats(0.001, 0.5), st.floats(-3.0, -0.01), st.sampled_from([-1.0, 1.0]))
def test_a_body_stays_on_its_pad_up_to_the_edge_and_not_beyond(
    build: tuple[list[Part], float], half: float, power: float, sign: float
) -> None:
    parts, length = build
    pad = half * length
    assert rests_on(parts, sign * pad, pad) == "level"  # the balance point over the very edge
    assert rests_on(parts, sign * pad * (1.0 - 10.0**power), pad) == "level"
    over = rests_on(parts, sign * (pad + length * 10.0**power), pad)
    assert over == ("left" if sign > 0.0 else "right")


@given(pairs(), st.floats(-0.999, 0.999), st.floats(0.002, 0.3))
def test_over_its_balance_point_a_body_stays_for_ever_at_every_scale(
    build: tuple[list[Part], float], off: float, half: float
) -> None:
    parts, length = build
    solid = [replace(part, shape=Box((0.01 * length,) * 3)) for part in parts]
    body = pad_body(solid, underside_m=-0.005 * length, left_m=-1.1 * length, right_m=1.1 * length)
    start = PadMotion()
    after = pad_tick(body, off * half * length, half * length, -2.0 * length, start, 0.005)
    assert after is start


@given(pairs(), st.floats(0.01, 1.0), st.sampled_from([0.0, 1e-12, -1e-12]))
def test_a_support_under_the_balance_point_carries_all(
    build: tuple[list[Part], float], gap: float, nudge: float
) -> None:
    parts, length = build
    weight = moment_sum(parts).mass_kg * STANDARD_GRAVITY_M_S2
    found = two_support_reactions_n(parts, nudge * length, gap * length)
    assert found is not None, "a miss by round-off tips nothing"
    assert isclose(found[0], weight, rel_tol=1e-9)
    assert 0.0 <= found[1] <= 1e-9 * weight
    beyond = two_support_reactions_n(parts, 1e-3 * gap * length, gap * length)
    assert beyond is None


@given(builds(), st.floats(-1.0, 1.0), st.floats(0.001, 2.0))
def test_two_reactions_add_up_to_the_weight_and_to_its_moment(parts: list[Part], first: float, gap: float) -> None:
    size = reach(parts)
    at, other = first * size, (first + gap) * size
    found = two_support_reactions_n(parts, at, other)
    moment, gross = exact_moment(parts, at)
    if found is None:
        return
    kilograms = [each / STANDARD_GRAVITY_M_S2 for each in found]
    mass = sum(part.mass_kg for part in parts)
    # Round-off of arms of two sizes over a gap of a thousandth, and the slack at the edge; an arm of less than a
    # millionth of a millionth of the build's reach is none.
    assert isclose(sum(kilograms), mass, rel_tol=5e-6)
    slack = 1e-8 * float(gross) + 1e-12 * mass * size
    assert isclose(-kilograms[1] * (other - at), float(moment), rel_tol=1e-9, abs_tol=slack)


def nested(draw: Callable[[st.SearchStrategy[int]], int], parts: list[Part], at: Vector) -> tuple[Member, ...]:
    """The parts in groups inside groups, each placed where `at` puts it, and its parts moved back."""
    members: tuple[Member, ...] = tuple(parts)
    for depth in range(draw(st.integers(1, 3))):
        split = draw(st.integers(1, len(members)))
        inner = Group(name=f"g{depth}", members=members[:split], at_m=at)
        members = (inner, *members[split:])
    return members


@given(builds(least=2), st.data())
def test_grouping_parts_to_any_depth_changes_no_sum(parts: list[Part], data: st.DataObject) -> None:
    grouped = flattened(nested(data.draw, parts, (0.0, 0.0, 0.0)))
    one, other = moment_sum(parts), moment_sum(grouped)
    assert (one.mass_kg, one.moment_kg_m, one.balance_point_m) == (
        other.mass_kg,
        other.moment_kg_m,
        other.balance_point_m,
    )


@given(builds(), PLACES)
def test_a_placed_group_balances_where_it_was_placed(parts: list[Part], at: Vector) -> None:
    size = reach(parts)
    there = (at[0] * size, at[1] * size, at[2] * size)
    alone = moment_sum(parts).balance_point_m
    group = moment_sum(flattened([Group(name="g", members=tuple(parts), at_m=there)])).balance_point_m
    for one, other, by in zip(alone, group, there, strict=True):
        assert isclose(one + by, other, rel_tol=0.0, abs_tol=1e-12 * 2.0 * size)


@given(st.lists(builds(least=3), min_size=1, max_size=5))
def test_many_builds_at_once_are_each_their_own_sum(several: list[list[Part]]) -> None:
    short = [parts[:3] for parts in several]
    mass = np.array([[part.mass_kg for part in parts] for parts in short])
    at = np.array([[part.at_m for part in parts] for parts in short])
    found, plain = assembly_sums(mass, at), balance_point_m(mass, at)
    for number, parts in enumerate(short):
        total, size = moment_sum(parts), reach(parts)
        assert isclose(found.mass_kg[number], total.mass_kg, rel_tol=1e-14)
        assert np.allclose(found.balance_point_m[number], total.balance_point_m, rtol=0.0, atol=1e-14 * size)
        assert np.allclose(plain[number], total.balance_point_m, rtol=0.0, atol=1e-14 * size)
        inertia = inertia_about_kg_m2(parts, total.balance_point_m)
        assert np.allclose(found.inertia_kg_m2[number], inertia, rtol=0.0, atol=1e-13 * total.mass_kg * 12.0 * size**2)


@given(
    # Places to nine figures after the point: no ruler reads numbers so small that they lose their own last bits.
    st.lists(
        st.tuples(st.floats(0.01, 1e3), st.floats(-1e3, 1e3).map(lambda at: round(at, 9))), min_size=1, max_size=6
    ),
    st.sampled_from(sorted(UNITS)),
)
def test_numbers_in_any_unit_balance_at_the_same_number(loads: list[tuple[float, float]], name: str) -> None:
    units = UNITS[name]
    bare = [Part(f"p{n}", weight, (at, 0.0, 0.0)) for n, (weight, at) in enumerate(loads)]
    told = [replace(p, mass_kg=units.to_kg(p.mass_kg), at_m=(units.to_m(p.at_m[0]), 0.0, 0.0)) for p in bare]
    here, there = moment_sum(bare), moment_sum(told)
    assert isclose(units.from_m(there.balance_point_m[0]), here.balance_point_m[0], rel_tol=0.0, abs_tol=1e-12 * 1e3)
    assert isclose(units.from_kg(there.mass_kg), here.mass_kg, rel_tol=1e-14)
    gross = sum(weight * abs(at) for weight, at in loads)
    assert isclose(units.from_kg_m(there.moment_kg_m[0]), here.moment_kg_m[0], rel_tol=0.0, abs_tol=1e-13 * gross)


@settings(max_examples=50)
@given(
    st.lists(st.tuples(st.floats(0.05, 0.5), st.floats(-0.5, 0.5)), max_size=3),
    st.floats(-0.2, 0.2),
    st.floats(-0.05, 0.2),
    st.floats(-1.0, 1.0),
    SCALES,
    SCALES,
)
def test_a_swing_is_the_same_at_every_scale_in_its_own_time_and_gains_no_energy(
    weights: list[tuple[float, float]], at: float, up: float, angle: float, mass: float, length: float
) -> None:
    def scene(heavy: float, long: float) -> tuple[list[Part], Pivot]:
        bar = Part("bar", 0.15 * heavy, (0.0, 0.0, 0.0), Rod(long))
        hung = [Part(f"w{n}", m * heavy, (x * long, 0.0, -0.01 * long)) for n, (m, x) in enumerate(weights)]
        return [bar, *hung], Pivot(at * long, up_m=up * long, stop_rad=pi / 2)

    (parts, pivot), (others, other_pivot) = scene(1.0, 1.0), scene(mass, length)
    one, other = pivoted(parts, pivot), pivoted(others, other_pivot)
    here, there = Swing(angle), Swing(angle)
    pace = sqrt(length)
    before = swing_energy_j(other, there)
    range_j = before + STANDARD_GRAVITY_M_S2 * hypot(other.lever_kg_m, other.drop_kg_m)
    for _ in range(60):
        here = swing_tick(one, pivot, here)
        there = swing_tick(other, other_pivot, there, 0.005 * pace)
        now = swing_energy_j(other, there)
        # Next to its lowest a bar has no range to speak of: there, the last bits of its energy decide.
        assert now <= before + 1e-6 * range_j + 1e-14 * abs(before)
        before = min(before, now)
        if here.stop or there.stop:
            break
        # An upright bar falls away from itself: round-off grows some 100-fold in 0.3 s.
        assert isclose(here.angle_rad, there.angle_rad, rel_tol=0.0, abs_tol=1e-9)
