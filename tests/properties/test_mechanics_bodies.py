"""What must hold of every body: its groups, planes, hangings, weighings and feet, at every scale."""

from dataclasses import replace
from math import atan2, hypot, isclose, pi

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from lab.mechanics import (
    STANDARD_GRAVITY_M_S2,
    Box,
    Cone,
    Group,
    HalfDisc,
    MechanicsError,
    Part,
    PlumbLine,
    Point,
    Polygon,
    Rod,
    ScaleReading,
    Triangle,
    Vector,
    Weighing,
    bounds_m,
    flattened,
    footing,
    hanging_attitude,
    inertia_about_kg_m2,
    moment_sum,
    plumb_crossing,
    plumb_line,
    polygon_moments,
    principal_inertia,
    slide_or_tip,
    support_reactions_n,
    symmetry_planes,
    weighed_level_m,
)

SCALES = st.sampled_from([1e-6, 1e-3, 1.0, 1e3, 1e6])
MASSES = st.floats(1e-3, 1e3)
PLACES = st.tuples(*[st.floats(-1.0, 1.0)] * 3)
TURNS = st.tuples(*[st.floats(-pi, pi)] * 3)
SIZES = st.floats(0.01, 1.0)
SHAPES = st.one_of(
    st.just(Point()),
    st.builds(Rod, SIZES),
    st.builds(Box, st.tuples(SIZES, SIZES, SIZES)),
    st.builds(Cone, SIZES, SIZES, st.sampled_from(["along", "across", "up"])),
    st.builds(HalfDisc, SIZES),
    st.builds(lambda a, b, c: Triangle(((0.0, 0.0), (a, 0.0), (b - 0.5, c))), SIZES, SIZES, SIZES),
)


@st.composite
def builds(draw: st.DrawFn, least: int = 1, most: int = 6) -> list[Part]:
    count = draw(st.integers(least, most))
    return [Part(f"part {n}", draw(MASSES), draw(PLACES), draw(SHAPES)) for n in range(count)]


@st.composite
def outlines(draw: st.DrawFn) -> tuple[tuple[float, float], ...]:
    """Simple outlines: corners in order of their angle about zero, at distances of their own."""
    count = draw(st.integers(3, 12))
    distances = draw(st.lists(st.floats(0.3, 1.0), min_size=count, max_size=count))
    angles = [2 * pi * n / count for n in range(count)]
    return tuple((d * float(np.cos(a)), d * float(np.sin(a))) for d, a in zip(distances, angles, strict=True))


def close(one: Vector, other: Vector, abs_tol: float) -> bool:
    return all(isclose(a, b, rel_tol=0.0, abs_tol=abs_tol) for a, b in zip(one, other, strict=True))


@given(outlines(), SCALES, st.floats(-100.0, 100.0), st.floats(-100.0, 100.0))
def test_a_moved_outline_has_its_centre_moved_and_nothing_else(
    outline: tuple[tuple[float, float], ...], scale: float, along: float, up: float
) -> None:
    here = polygon_moments(outline)
    there = polygon_moments(tuple((scale * (x + along), scale * (z + up)) for x, z in outline))
    # A corner 100 sizes away is rounded at 1e-14 of the size.
    assert isclose(there.area_m2, here.area_m2 * scale**2, rel_tol=1e-11)
    assert isclose(there.centre_m[0], scale * (here.centre_m[0] + along), rel_tol=0.0, abs_tol=1e-11 * scale)
    assert isclose(there.centre_m[1], scale * (here.centre_m[1] + up), rel_tol=0.0, abs_tol=1e-11 * scale)
    assert isclose(there.along2_m2, here.along2_m2 * scale**2, rel_tol=1e-10)
    assert isclose(there.product_m2, here.product_m2 * scale**2, rel_tol=0.0, abs_tol=1e-11 * scale**2)


@given(outlines(), st.integers(0, 11))
def test_it_does_not_matter_where_an_outline_starts_or_which_way_it_goes_round(
    outline: tuple[tuple[float, float], ...], start: int
) -> None:
    start %= len(outline)
    one, other = Polygon(outline).moments, Polygon((*outline[start:], *outline[:start])[::-1]).moments
    assert isclose(one.area_m2, other.area_m2, rel_tol=1e-14)
    assert isclose(one.along2_m2, other.along2_m2, rel_tol=1e-13)
    assert isclose(one.product_m2, other.product_m2, rel_tol=0.0, abs_tol=1e-15)


@given(outlines())
def test_a_hole_and_the_plate_that_fills_it_make_the_whole_plate(outline: tuple[tuple[float, float], ...]) -> None:
    hole = tuple((x / 4, z / 4) for x, z in outline)
    holed, whole, filling = Polygon(outline, (hole,)), Polygon(outline), Polygon(hole)

    def part(name: str, shape: Polygon) -> Part:
        return Part(name, shape.moments.area_m2, shape.centre_m, shape)

    both = [part("holed", holed), part("filling", filling)]
    sums = moment_sum(both), moment_sum([part("whole", whole)])
    assert isclose(sums[0].mass_kg, sums[1].mass_kg, rel_tol=1e-13)
    assert close(sums[0].balance_point_m, sums[1].balance_point_m, 1e-13)
    zero = (0.0, 0.0, 0.0)
    assert np.allclose(inertia_about_kg_m2(both, zero), inertia_about_kg_m2([part("w", whole)], zero), atol=1e-13)


@given(SHAPES, st.tuples(*[st.floats(-1.0, 1.0)] * 3))
def test_a_shape_reaches_no_farther_than_its_box(shape: Rod, direction: Vector) -> None:
    length = hypot(*direction)
    if length < 1e-3:
        return
    unit = (direction[0] / length, direction[1] / length, direction[2] / length)
    low, high = bounds_m(shape)
    box = sum(max(ahead * a, ahead * b) for ahead, a, b in zip(unit, low, high, strict=True))
    assert shape.reach_m(unit) <= box + 1e-12


@given(builds(), PLACES, TURNS, SCALES)
def test_a_group_balances_where_its_balance_point_is_carried(
    parts: list[Part], at: Vector, turn: Vector, scale: float
) -> None:
    there = (at[0] * scale, at[1] * scale, at[2] * scale)
    alone = moment_sum(parts).balance_point_m
    carried = flattened([Group(name="g", members=(Part("lead", 1.0, alone),), at_m=there, turn_rad=turn)])[0].at_m
    group = flattened([Group(name="g", members=tuple(parts), at_m=there, turn_rad=turn)])
    assert close(moment_sum(group).balance_point_m, carried, 1e-12 * max(1.0, scale))


@given(builds(), TURNS)
def test_turning_a_build_turns_its_axes_and_keeps_its_principal_moments(parts: list[Part], turn: Vector) -> None:
    one = principal_inertia(parts)
    other = principal_inertia(flattened([Group(name="g", members=tuple(parts), turn_rad=turn)]))
    largest = max(one.moments_kg_m2)
    assert np.allclose(one.moments_kg_m2, other.moments_kg_m2, rtol=0.0, atol=1e-9 * largest + 1e-15)
    assert isclose(float(np.linalg.det(np.array(other.axes))), 1.0, rel_tol=1e-9)


@given(builds(), st.integers(0, 5))
def test_grouping_some_of_the_parts_changes_no_sum(parts: list[Part], count: int) -> None:
    grouped = flattened([Group(name="g", members=tuple(parts[: count + 1])), *parts[count + 1 :]])
    assert moment_sum(grouped).balance_point_m == moment_sum(parts).balance_point_m


@given(builds(), st.floats(-10.0, 10.0), SCALES)
def test_a_build_and_its_mirror_image_are_symmetrical_together(parts: list[Part], offset: float, scale: float) -> None:
    plain = [replace(part, shape=Point()) for part in parts]
    here = [replace(part, at_m=(part.at_m[0] * scale, part.at_m[1] * scale, part.at_m[2] * scale)) for part in plain]
    there = [
        replace(part, name=f"{part.name} too", at_m=(part.at_m[0], 2 * offset * scale - part.at_m[1], part.at_m[2]))
        for part in here
    ]
    (plane,) = [plane for plane in symmetry_planes([*here, *there]) if plane.saves == "across"]
    assert plane.exact
    assert isclose(plane.offset_m, offset * scale, rel_tol=0.0, abs_tol=1e-12 * scale)
    assert plane.miss_m <= 1e-12 * scale


@given(builds(most=5), st.floats(-1.0, 1.0))
def test_every_exact_plane_holds_the_balance_point(parts: list[Part], across: float) -> None:
    doubled = [*parts, *(replace(p, name=p.name + " too", at_m=(p.at_m[0], across, p.at_m[2])) for p in parts)]
    balance = moment_sum(doubled).balance_point_m
    for plane in symmetry_planes(doubled):
        off = abs(sum(a * b for a, b in zip(balance, plane.normal, strict=True)) - plane.offset_m)
        assert isclose(off, plane.miss_m, rel_tol=0.0, abs_tol=1e-9)
        if plane.exact:
            assert off <= 3e-9
        assert 0.0 <= plane.odd_share <= 0.25


@given(builds(), PLACES, SCALES)
def test_a_hung_body_has_its_balance_point_straight_below_its_hook(
    parts: list[Part], hook: Vector, scale: float
) -> None:
    build = [replace(p, at_m=(p.at_m[0] * scale, p.at_m[1] * scale, p.at_m[2] * scale)) for p in parts]
    hook = (hook[0] * scale, hook[1] * scale, hook[2] * scale)
    found = hanging_attitude(build, hook)
    if found is None:
        return
    balance = moment_sum(build).balance_point_m
    hung = Group(name="hung", members=(Part("cg", 1.0, balance), Part("hook", 1.0, hook)))
    lead, eye = flattened([replace(hung, turn_rad=(found.roll_rad or 0.0, found.pitch_rad, 0.0))])
    size = max(hypot(*balance), hypot(*hook))
    # A roll that means nothing is left out: what it hides is 1e-9 of the drop.
    assert abs(lead.at_m[0] - eye.at_m[0]) <= 1e-12 * size + 2e-9 * found.drop_m
    assert abs(lead.at_m[1] - eye.at_m[1]) <= 1e-12 * size + 2e-9 * found.drop_m
    assert isclose(eye.at_m[2] - lead.at_m[2], found.drop_m, rel_tol=1e-9, abs_tol=1e-12 * size)


@given(builds(least=2), st.lists(PLACES, min_size=3, max_size=6))
def test_plumb_lines_from_any_hooks_cross_in_the_balance_point(parts: list[Part], hooks: list[Vector]) -> None:
    found = [line for hook in hooks if (line := plumb_line(parts, hook)) is not None]
    lines: list[PlumbLine] = [line for line, drop in found if drop > 0.01]
    try:
        crossing = plumb_crossing(lines)
    except MechanicsError:
        return
    # Lines may be within 0.1 degrees of one another: the crossing is a million times less sure than they are.
    assert close(crossing.at_m, moment_sum(parts).balance_point_m, 1e-8)


@given(builds(), st.tuples(PLACES, PLACES, PLACES), SCALES)
def test_three_supports_carry_the_weight_and_its_moment_or_it_tips(
    parts: list[Part], feet: tuple[Vector, Vector, Vector], scale: float
) -> None:
    build = [replace(p, at_m=(p.at_m[0] * scale, p.at_m[1] * scale, p.at_m[2])) for p in parts]
    places = [(x * scale, y * scale, z) for x, y, z in feet]
    try:
        found = support_reactions_n(build, places)
    except MechanicsError:
        return
    if found is None:
        return
    total = moment_sum(build)
    assert min(found) >= 0.0
    kilograms = [each / STANDARD_GRAVITY_M_S2 for each in found]
    # Feet almost in line divide by an area as small as 1e-9 of its sides' squares.
    assert isclose(sum(kilograms), total.mass_kg, rel_tol=1e-5)
    readings = [
        ScaleReading(name=str(n), mass_kg=kg, at_m=at) for n, (kg, at) in enumerate(zip(kilograms, places, strict=True))
    ]
    along, across = weighed_level_m(Weighing(readings=tuple(readings)))
    assert isclose(along, total.balance_point_m[0], rel_tol=0.0, abs_tol=1e-5 * scale)
    assert isclose(across, total.balance_point_m[1], rel_tol=0.0, abs_tol=1e-5 * scale)


@given(
    st.lists(st.tuples(st.floats(-1.0, 1.0), st.floats(-1.0, 1.0)), min_size=3, max_size=8),
    PLACES,
    SCALES,
    st.floats(0.0, 2.0),
    st.floats(0.0, 2 * pi),
)
@settings(max_examples=200)
def test_a_standing_body_is_the_same_at_every_scale_and_tips_no_sooner_than_its_least_edge(
    feet: list[tuple[float, float]], at: Vector, scale: float, friction: float, downhill: float
) -> None:
    lead = [Part("lead", 1.0, (at[0], at[1], 0.01 + abs(at[2])))]
    large = [Part("lead", 1.0, (at[0] * scale, at[1] * scale, (0.01 + abs(at[2])) * scale))]
    try:
        body = footing(lead, feet)
        other = footing(large, [(x * scale, y * scale) for x, y in feet])
    except MechanicsError:
        return
    if abs(body.margin_m) > 1e-8:
        assert body.stands == other.stands
    assert isclose(body.margin_m * scale, other.margin_m, rel_tol=1e-9, abs_tol=3e-9 * scale)
    if not body.stands:
        assert body.margin_m < 0.0
        return
    found = slide_or_tip(body, friction, (float(np.cos(downhill)), float(np.sin(downhill))))
    assert found.tips_at_rad >= body.tip_rad - 1e-12
    gives_way = min(found.slides_at_rad, found.tips_at_rad)
    assert found.at(gives_way) == "stands"
    assert found.at(min(gives_way + 1e-6, pi / 2 - 1e-9)) == ("slides" if found.first == "slides" else "tips")
    assert isclose(body.tip_rad, atan2(body.first_edge.margin_m, body.height_m))
