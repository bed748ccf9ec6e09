"""What must hold of every change: moves, ballast, fingers, mobiles."""

from itertools import pairwise
from math import isclose, isfinite

from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.optimize import linprog

from lab.mechanics import (
    BallastPlace,
    CannotBeDone,
    FingerSlide,
    Friction,
    HungBar,
    MobileBar,
    Part,
    Pivot,
    balance_shift_m,
    ballast_kg,
    lightest_ballast,
    mobile_sum,
    moment_sum,
    move_m,
    turn_about,
    two_finger_slide,
    with_part_moved,
)

MASSES = st.floats(1e-3, 1e3)
PLACES = st.floats(-10.0, 10.0)
SCALES = st.sampled_from([1e-6, 1e-3, 1.0, 1e3, 1e6])
#: Round numbers of a ruler: sums of them tie in the mind and differ in the last bit.
MARKS = st.integers(-12, 12).map(lambda tenths: tenths / 10.0)
GRIPS = st.tuples(st.floats(0.05, 1.2), st.floats(0.2, 0.95)).map(lambda pair: Friction(pair[0], pair[0] * pair[1]))


@given(st.lists(st.tuples(MASSES, PLACES), min_size=2, max_size=6), PLACES, SCALES, SCALES)
def test_the_shift_is_the_difference_of_two_sums(
    loads: list[tuple[float, float]], by: float, mass_scale: float, length_scale: float
) -> None:
    parts = [Part(f"p{n}", m * mass_scale, (x * length_scale, 0.0, 0.0)) for n, (m, x) in enumerate(loads)]
    by *= length_scale
    whole = sum(part.mass_kg for part in parts)
    before = moment_sum(parts).balance_point_m[0]
    after = moment_sum(with_part_moved(parts, "p0", (by, 0.0, 0.0))).balance_point_m[0]
    shift = balance_shift_m(mass_kg=parts[0].mass_kg, by_m=by, whole_kg=whole)
    # Two sums of places up to 20 scales, rounded a few times each.
    assert isclose(after - before, shift, rel_tol=0.0, abs_tol=1e-14 * 20.0 * length_scale)
    assert isclose(
        move_m(mass_kg=parts[0].mass_kg, balance_shift_m=shift, whole_kg=whole), by, rel_tol=1e-14, abs_tol=1e-300
    )


@given(MASSES, PLACES, PLACES, PLACES, SCALES, SCALES)
def test_ballast_brings_the_balance_point_to_the_target_or_says_that_it_cannot(
    whole: float, now: float, target: float, at: float, mass_scale: float, length_scale: float
) -> None:
    now, target, at = (place * length_scale for place in (now, target, at))
    ballast = ballast_kg(whole_kg=whole * mass_scale, now_m=now, target_m=target, at_m=at)
    if isinstance(ballast, CannotBeDone):
        assert (at - target) * (now - target) >= 0.0 or ballast.reason == "too heavy"
        return
    reach = max(abs(now), abs(target), abs(at))
    assume(ballast <= 1e6 * whole * mass_scale)  # beyond, the sum's own round-off is the larger
    loads = [Part("all", whole * mass_scale, (now, 0, 0))]
    loads += [Part("lead", ballast, (at, 0, 0))] if ballast > 0.0 else []
    # 1e-9 of the arm counts as there already.
    assert isclose(moment_sum(loads).balance_point_m[0], target, rel_tol=0.0, abs_tol=3e-9 * reach + 1e-300)


def _least_by_scipy(masses: list[float], parts: list, places: list, axes: list[int]) -> float | None:
    rows = [[place[axis] for place in places] for axis in axes]
    right = [-sum(m * at[axis] for m, at in zip(masses, parts, strict=True)) for axis in axes]
    found = linprog([1.0] * len(places), A_eq=rows, b_eq=right)
    return float(found.fun) if found.status == 0 else None


@settings(max_examples=60)
@given(
    st.lists(st.tuples(st.integers(1, 9), MARKS, MARKS), min_size=1, max_size=3),
    st.lists(st.tuples(MARKS, MARKS), min_size=1, max_size=6),
    st.sampled_from([[0], [1], [0, 1]]),
    SCALES,
    SCALES,
)
def test_no_lighter_ballast_exists_where_marks_tie_and_at_every_scale(
    loads: list, spots: list, axes: list[int], mass_scale: float, length_scale: float
) -> None:
    masses = [float(load[0]) for load in loads]
    expected = _least_by_scipy(masses, [load[1:] for load in loads], spots, axes)
    parts = [
        Part(f"p{n}", mass * mass_scale, (x * length_scale, y * length_scale, 0.0))
        for n, (mass, x, y) in enumerate(loads)
    ]
    places = [BallastPlace(f"b{n}", (x * length_scale, y * length_scale, 0.0)) for n, (x, y) in enumerate(spots)]
    names = ("along", "across")
    found = lightest_ballast(parts, places, target_m={names[axis]: 0.0 for axis in axes})
    if isinstance(found, CannotBeDone):
        assert expected is None
        return
    if expected is None:
        # Balanced but for round-off, which a place at the target itself cannot take away: for scipy, no answer.
        assert found.loads == ()
        expected = 0.0
    # scipy's default tolerance is 1e-7, on moments of marks of at least 0.1.
    assert isclose(found.mass_kg / mass_scale, expected, rel_tol=1e-5, abs_tol=1e-5)
    for axis in axes:
        assert abs(found.balance_point_m[axis]) <= 1e-9 * 1.3 * length_scale
    for other in found.as_light:
        assert isclose(sum(load.mass_kg for load in other), found.mass_kg, rel_tol=2e-9)


@given(
    st.lists(st.tuples(MASSES, PLACES), min_size=1, max_size=4),
    st.floats(0.01, 5.0),
    st.floats(0.01, 5.0),
    GRIPS,
    GRIPS,
    SCALES,
)
def test_fingers_meet_under_the_balance_point_and_no_turn_is_outward(
    loads: list[tuple[float, float]], before: float, after: float, left: Friction, right: Friction, scale: float
) -> None:
    parts = [Part(f"p{n}", mass, (at * scale, 0.0, 0.0)) for n, (mass, at) in enumerate(loads)]
    balance = moment_sum(parts).balance_point_m[0]
    touch = 1e-3 * scale
    first, last = balance - before * scale, balance + after * scale
    slide = two_finger_slide(parts, first, last, left=left, right=right, touch_m=touch)
    assert isinstance(slide, FingerSlide)
    near = 1e-12 * scale * 10.0
    for leg in slide.legs:
        assert leg.from_m[0] <= leg.to_m[0] + near
        assert leg.from_m[1] >= leg.to_m[1] - near
    assert all(one.to_m == other.from_m and one.mover != other.mover for one, other in pairwise(slide.legs))
    end = slide.legs[-1].to_m
    assert isclose(end[1] - end[0], touch, rel_tol=1e-6)
    assert end[0] - near <= balance <= end[1] + near
    for leg in slide.legs:
        forces = slide.forces_at(sum(leg.gap_m) / 2.0)
        held = forces.right_holds_n if leg.mover == "left" else forces.left_holds_n
        assert forces.friction_n <= held * (1.0 + 1e-9)
        assert isclose(forces.left_normal_n + forces.right_normal_n, slide.weight_n, rel_tol=1e-9)


@st.composite
def mobiles(draw: st.DrawFn, name: str = "m", depth: int = 3) -> MobileBar:
    parts = tuple(
        Part(f"{name} part {n}", draw(MASSES), (draw(PLACES), 0.0, 0.0)) for n in range(draw(st.integers(1, 3)))
    )
    count = draw(st.integers(0, 2)) if depth else 0
    below = tuple(HungBar(draw(mobiles(f"{name}{n}", depth - 1)), (draw(PLACES), 0.0, 0.0)) for n in range(count))
    return MobileBar(name, parts, Pivot(draw(PLACES)), below=below)


def _weight(bar: MobileBar) -> float:
    return sum(part.mass_kg for part in bar.parts) + sum(_weight(hung.bar) for hung in bar.below)


@settings(max_examples=60)
@given(mobiles())
def test_every_bar_of_a_mobile_feels_the_whole_below_it_as_one_load(top: MobileBar) -> None:
    found = mobile_sum(top)
    assert isclose(found.mass_kg, _weight(top), rel_tol=1e-12)
    flat = [*top.parts, *(Part(hung.bar.name, _weight(hung.bar), hung.at_m) for hung in top.below)]
    by_hand = turn_about(flat, top.pivot)
    level = found.levels[0]
    assert isclose(level.turn.moment_kg_m, by_hand.moment_kg_m, rel_tol=0.0, abs_tol=1e-12 * by_hand.scale_kg_m)
    assert found.is_level == all(each.turn.goes == "level" for each in found.levels)


@settings(max_examples=60)
@given(mobiles())
def test_a_mobile_pinned_at_each_bars_balance_point_is_level(top: MobileBar) -> None:
    def pinned(bar: MobileBar) -> MobileBar:
        below = tuple(HungBar(pinned(hung.bar), hung.at_m) for hung in bar.below)
        loads = [*bar.parts, *(Part(hung.bar.name, _weight(hung.bar), hung.at_m) for hung in below)]
        return MobileBar(bar.name, bar.parts, Pivot(moment_sum(loads).balance_point_m[0]), below=below)

    found = mobile_sum(pinned(top))
    for level in found.levels:
        # A pin up to 10 m away lies within 1e-15 m of where it should: under 1e-9 of the moments but where almost
        # all of the weight hangs at the pin itself.
        if level.turn.scale_kg_m > 1e-4 * level.carried_kg:
            assert level.turn.goes == "level"
        assert isfinite(level.tilt_rad)
