"""What must hold of everything that moves: energy, sides, rest."""

from dataclasses import replace
from itertools import pairwise
from math import hypot, pi

from hypothesis import given, settings
from hypothesis import strategies as st

from lab.mechanics import (
    STANDARD_GRAVITY_M_S2,
    Box,
    PadMotion,
    Part,
    Pivot,
    Rod,
    Swing,
    moment_sum,
    pad_body,
    pad_energy_j,
    pad_tick,
    pivoted,
    rests_on,
    swing_energy_j,
    swing_tick,
    turn_about,
)

BAR = Part("bar", 0.15, (0.0, 0.0, 0.0), Rod(1.0))
HUNG = st.lists(
    st.tuples(st.floats(0.05, 0.5), st.floats(-0.5, 0.5), st.sampled_from(["clamped", "hung"])),
    max_size=4,
)


def bar_with(weights: list[tuple[float, float, str]]) -> list[Part]:
    return [BAR] + [
        Part(f"weight {n}", mass, (at, 0.0, -0.01), hold=hold)  # type: ignore[arg-type]
        for n, (mass, at, hold) in enumerate(weights)
    ]


@settings(max_examples=60)
@given(
    HUNG,
    st.floats(-0.3, 0.3),
    st.floats(-0.05, 0.2),
    st.floats(0.05, pi),
    st.floats(0.0, 0.1),
    st.floats(-1.0, 1.0),
    st.floats(-3.0, 3.0),
)
def test_a_swing_never_has_more_energy_than_before(
    weights: list, at: float, up: float, stop: float, damping: float, angle: float, rate: float
) -> None:
    pivot = Pivot(at, up_m=up, stop_rad=stop, damping_kg_m2_s=damping)
    body = pivoted(bar_with(weights), pivot)
    swing = Swing(max(-stop, min(stop, angle)), rate)
    before = swing_energy_j(body, swing)
    range_j = before + STANDARD_GRAVITY_M_S2 * hypot(body.lever_kg_m, body.drop_kg_m)
    for _ in range(300):
        swing = swing_tick(body, pivot, swing)
        now = swing_energy_j(body, swing)
        # A millionth of the range, and what round-off makes of energies that nearly cancel.
        assert now <= before + 1e-6 * range_j + 1e-14 * abs(now)
        assert abs(swing.angle_rad) <= stop
        # Against what it started with: a hundred small steps up would pass the line above.
        before = min(before, now)


@settings(max_examples=60)
@given(HUNG, st.floats(-0.3, 0.3), st.floats(-0.05, 0.0))
def test_from_level_the_end_that_drops_is_the_one_that_the_sum_says(weights: list, at: float, up: float) -> None:
    parts, pivot = bar_with(weights), Pivot(at, up_m=up)
    turn = turn_about(parts, pivot)
    body, swing = pivoted(parts, pivot), Swing()
    for _ in range(4000):
        swing = swing_tick(body, pivot, swing)
        if swing.settled:
            break
        expected = 1.0 if turn.goes == "left" else -1.0
        assert swing.angle_rad * expected >= 0.0
    if turn.goes == "level":
        assert swing == Swing(settled=True)


@settings(max_examples=40)
@given(HUNG, st.floats(-0.3, 0.3), st.floats(-0.6, 0.6), st.floats(-2.0, 2.0))
def test_a_mirrored_swing_mirrors(weights: list, at: float, angle: float, rate: float) -> None:
    parts = bar_with(weights)
    mirrored = [replace(part, at_m=(-part.at_m[0], *part.at_m[1:])) for part in parts]
    one, other = Pivot(at, up_m=0.02, stop_rad=0.7), Pivot(-at, up_m=0.02, stop_rad=0.7)
    here, there = Swing(angle, rate), Swing(-angle, -rate)
    for _ in range(100):
        here = swing_tick(pivoted(parts, one), one, here)
        there = swing_tick(pivoted(mirrored, other), other, there)
        assert (there.angle_rad, there.rate_rad_s) == (-here.angle_rad, -here.rate_rad_s)


@st.composite
def tools(draw: st.DrawFn) -> tuple[Part, ...]:
    """A pole of 40 cm with one or two heads on it."""
    pole = Part("pole", draw(st.floats(0.05, 0.5)), (0.2, 0.0, 0.0), Box((0.4, 0.01, 0.012)))
    heads = draw(st.lists(st.tuples(st.floats(0.05, 1.0), st.floats(0.02, 0.38)), min_size=1, max_size=2))
    return (
        pole,
        *(
            Part(f"head {n}", mass, (at, 0.0, draw(st.floats(-0.05, 0.05))), Box((0.03, 0.03, 0.04)))
            for n, (mass, at) in enumerate(heads)
        ),
    )


@settings(max_examples=60)
@given(tools(), st.floats(0.0, 0.4), st.floats(0.0005, 0.03), st.floats(0.0, 2.0), st.floats(0.1, 1.5))
def test_a_body_on_a_pad_stays_or_falls_and_never_gains_energy(
    parts: tuple[Part, ...], finger: float, half: float, friction: float, height: float
) -> None:
    body = pad_body(parts, underside_m=-0.006, left_m=0.0, right_m=0.4, friction=friction)
    floor = min(z for _, z in body.outline_m) - height
    path = [PadMotion()]
    for _ in range(500):
        path.append(pad_tick(body, finger, half, floor, path[-1], 0.005))
    side = rests_on(parts, finger, half)
    assert (path[1] is path[0]) == (side == "level")
    if side != "level":
        leaning = path[1].angle_rad
        assert leaning >= 0.0 if side == "left" else leaning <= 0.0
    energies = [pad_energy_j(body, motion) for motion in path]
    slack = 1e-6 * (max(energies) - min(energies)) + 1e-15
    assert all(now <= before + slack for before, now in pairwise(energies))


@settings(max_examples=40)
@given(tools(), st.floats(-1.0, 1.0), st.floats(0.0005, 0.05))
def test_over_its_balance_point_a_body_stays(parts: tuple[Part, ...], off: float, half: float) -> None:
    body = pad_body(parts, underside_m=-0.006, left_m=0.0, right_m=0.4)
    finger = moment_sum(parts).balance_point_m[0] + off * half
    assert rests_on(parts, finger, half) == "level"
    start = PadMotion()
    assert pad_tick(body, finger, half, -1.0, start, 0.005) is start


@settings(max_examples=40)
@given(tools(), st.floats(0.0, 0.4))
def test_a_mirrored_fall_mirrors_until_it_lands(parts: tuple[Part, ...], finger: float) -> None:
    mirrored = tuple(replace(part, at_m=(-part.at_m[0], 0.0, part.at_m[2])) for part in parts)
    one = pad_body(parts, underside_m=-0.006, left_m=0.0, right_m=0.4)
    other = pad_body(mirrored, underside_m=-0.006, left_m=-0.4, right_m=0.0)
    here, there = PadMotion(), PadMotion()
    for _ in range(200):
        here = pad_tick(one, finger, 0.003, -1.0, here, 0.005)
        there = pad_tick(other, -finger, 0.003, -1.0, there, 0.005)
        if here.corner is not None or here.phase == "down":
            break
        assert there.phase == here.phase
        # An edge's contact is found by rotating there and back: some 1e-16 a tick, grown by the fall.
        assert abs(there.angle_rad + here.angle_rad) < 1e-9
        assert abs(there.x_m + here.x_m) < 1e-9
