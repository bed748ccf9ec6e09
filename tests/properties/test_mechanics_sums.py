"""What must hold of every build: its sums."""

from dataclasses import replace
from math import isclose

from hypothesis import given, settings
from hypothesis import strategies as st

from lab.mechanics import (
    STANDARD_GRAVITY_M_S2,
    Box,
    Cylinder,
    Part,
    Pivot,
    Point,
    Rod,
    balance_point_doubt_m,
    inertia_about_kg_m2,
    moment_sum,
    rests_on,
    turn_about,
    two_support_reactions_n,
)

MASSES = st.floats(1e-3, 1e3)
PLACES = st.tuples(*[st.floats(-10.0, 10.0)] * 3)
DOUBTS = st.one_of(st.just(0.0), st.floats(1e-6, 0.1))
SIZES = st.floats(1e-3, 2.0)
SHAPES = st.one_of(
    st.just(Point()),
    st.builds(Rod, SIZES),
    st.builds(Box, st.tuples(SIZES, SIZES, SIZES)),
    st.builds(lambda radius, length: Cylinder(radius, length, radius / 2.0), SIZES, SIZES),
)


@st.composite
def builds(draw: st.DrawFn) -> list[Part]:
    """One to eight parts, the first three times as heavy as any, so that a cut-out leaves something."""
    count = draw(st.integers(1, 8))
    parts = [Part(f"part {n}", draw(MASSES), draw(PLACES), draw(SHAPES)) for n in range(count)]
    heaviest = max(part.mass_kg for part in parts)
    parts.append(Part("base", 3.0 * heaviest, draw(PLACES), draw(SHAPES)))
    if draw(st.booleans()):
        parts[0] = replace(parts[0], cut=True)
    return parts


def scaled(parts: list[Part], mass: float, length: float) -> list[Part]:
    """The same build in other units."""
    return [
        replace(
            part,
            mass_kg=part.mass_kg * mass,
            at_m=tuple(x * length for x in part.at_m),
            shape=Point(),
            mass_doubt_kg=part.mass_doubt_kg * mass,
            at_doubt_m=tuple(x * length for x in part.at_doubt_m),
        )
        for part in parts
    ]


def span(parts: list[Part], extra: float = 0.0) -> float:
    return max(max(abs(x) for part in parts for x in part.at_m), extra, 1e-3)


@given(builds(), PLACES)
def test_the_balance_point_does_not_depend_on_the_reference(parts: list[Part], reference: tuple) -> None:
    here, there = moment_sum(parts), moment_sum(parts, reference)
    assert here.balance_point_m == there.balance_point_m
    for axis in range(3):
        by_table = reference[axis] + there.moment_kg_m[axis] / there.mass_kg
        # Three times the span: arms reach from the reference, and 8 parts each round once.
        assert isclose(by_table, here.balance_point_m[axis], abs_tol=1e-12 * 3.0 * span(parts, 10.0))


@given(builds(), st.randoms(use_true_random=False))
def test_the_sums_do_not_depend_on_the_order(parts: list[Part], random: object) -> None:
    shuffled = list(parts)
    random.shuffle(shuffled)  # type: ignore[attr-defined]
    one, other = moment_sum(parts), moment_sum(shuffled)
    assert (one.mass_kg, one.moment_kg_m, one.balance_point_m) == (
        other.mass_kg,
        other.moment_kg_m,
        other.balance_point_m,
    )


@given(builds(), st.floats(1e-6, 1e6), st.floats(1e-6, 1e6))
def test_other_units_change_numbers_and_nothing_else(parts: list[Part], mass: float, length: float) -> None:
    other = scaled(parts, mass, length)
    here, there = moment_sum(parts).balance_point_m, moment_sum(other).balance_point_m
    for x, y in zip(here, there, strict=True):
        assert isclose(x * length, y, rel_tol=1e-12, abs_tol=1e-12 * span(parts) * length)
    pivot, moved = Pivot(0.1, up_m=11.0), Pivot(0.1 * length, up_m=11.0 * length)
    one, two = turn_about(scaled(parts, 1.0, 1.0), pivot), turn_about(other, moved)
    # A moment within 1e-6 of none may fall on either side of level's 1e-9 by round-off of the units.
    if abs(one.moment_kg_m) > 1e-6 * one.scale_kg_m:
        assert one.goes == two.goes
        assert (one.tilt_rad is None) == (two.tilt_rad is None) or isclose(
            abs(one.tilt_rad or two.tilt_rad or 0.0), pivot.stop_rad, rel_tol=1e-9
        )


@given(builds(), st.floats(1e-6, 1e6))
def test_scaling_all_weights_changes_only_the_weight(parts: list[Part], by: float) -> None:
    heavier = [replace(part, mass_kg=part.mass_kg * by) for part in parts]
    one, other = moment_sum(parts), moment_sum(heavier)
    assert isclose(one.mass_kg * by, other.mass_kg, rel_tol=1e-12)
    for x, y in zip(one.balance_point_m, other.balance_point_m, strict=True):
        assert isclose(x, y, abs_tol=1e-12 * span(parts))


@given(builds(), st.floats(-10.0, 10.0))
def test_mirrored_builds_mirror(parts: list[Part], at: float) -> None:
    mirrored = [replace(part, at_m=(-part.at_m[0], *part.at_m[1:])) for part in parts]
    one, other = moment_sum(parts).balance_point_m, moment_sum(mirrored).balance_point_m
    assert other == (-one[0], one[1], one[2])
    here, there = turn_about(parts, Pivot(at, up_m=11.0)), turn_about(mirrored, Pivot(-at, up_m=11.0))
    swapped = {"left": "right", "right": "left", "level": "level"}
    assert there.goes == swapped[here.goes]
    assert there.moment_kg_m == -here.moment_kg_m
    assert (there.tilt_rad is None) == (here.tilt_rad is None)
    if here.tilt_rad is not None and there.tilt_rad is not None:
        assert there.tilt_rad == -here.tilt_rad
    assert rests_on(mirrored, -at, 0.5) == swapped[rests_on(parts, at, 0.5)]


@given(builds(), PLACES)
def test_parts_joined_into_one_turn_as_before(parts: list[Part], point: tuple) -> None:
    total = moment_sum(parts)
    about = inertia_about_kg_m2(parts, total.balance_point_m)
    if min(about.diagonal()) <= 0.0 or parts[0].cut:
        return
    joined = Part("whole", total.mass_kg, total.balance_point_m, inertia_kg_m2=tuple(map(tuple, about.tolist())))
    apart, together = inertia_about_kg_m2(parts, point), inertia_about_kg_m2([joined], point)
    assert abs(apart - together).max() <= 1e-12 * max(abs(apart).max(), total.mass_kg * 300.0)


@given(builds(), st.floats(-20.0, 20.0), st.floats(0.1, 20.0))
def test_reactions_push_and_sum_to_the_weight(parts: list[Part], first: float, gap: float) -> None:
    reactions = two_support_reactions_n(parts, first, first + gap)
    total = moment_sum(parts)
    at = total.balance_point_m[0]
    if reactions is None:
        assert not first + 1e-9 < at < first + gap - 1e-9
        return
    assert min(reactions) >= 0.0
    weight = total.mass_kg * STANDARD_GRAVITY_M_S2
    # Far supports close together divide a difference of large arms by a small gap: 400 to 1 here.
    assert isclose(sum(reactions), weight, rel_tol=1e-8)


@settings(max_examples=50)
@given(builds(), DOUBTS, DOUBTS, st.floats(1e-6, 1e6))
def test_doubt_grows_with_its_causes_and_keeps_its_units(
    parts: list[Part], mass_share: float, place: float, length: float
) -> None:
    doubtful = [
        replace(part, mass_doubt_kg=part.mass_kg * mass_share, at_doubt_m=(place, 0.0, place)) for part in parts
    ]
    doubt = balance_point_doubt_m(doubtful)
    if mass_share == 0.0 and place == 0.0:
        assert doubt is None
        return
    other = balance_point_doubt_m(scaled(doubtful, 1.0, length))
    assert doubt is not None
    assert other is not None
    for x, y in zip(doubt, other, strict=True):
        assert isclose(x * length, y, rel_tol=1e-9, abs_tol=1e-12 * length)
    together = balance_point_doubt_m([replace(part, set_name="one ruler") for part in doubtful])
    assert together is not None
