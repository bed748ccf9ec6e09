"""What hanging and weighing say of any airframe is what its moment sum says."""

from math import dist, radians

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from lab import files
from lab.app.paths import find_paths
from lab.mechanics import Box, MechanicsError, Part, Surface, hanging_attitude, moment_sum
from lab.simulation.benches.airframe_hanging import AirframeHanging
from lab.simulation.benches.airframe_places import first_hook_m, first_scales, spans_m
from lab.simulation.benches.airframe_weighing import AirframeWeighing, borne_by

BUILDS = sorted(find_paths().shipped_builds.glob("*.toml"))
AIRFRAMES = [path.name for path in BUILDS if files.read_build(path).is_airframe]

#: What the bench promises; the condition of both readings is under 100, so round-off leaves some 1e-14.
AGREES_M = 1e-9

Frame = tuple[tuple[Part, ...], tuple[Surface, ...]]


@pytest.fixture(params=AIRFRAMES)
def shipped(request: pytest.FixtureRequest) -> Frame:
    build = files.read_build(next(path for path in BUILDS if path.name == request.param))
    return build.all_parts, build.surfaces


@st.composite
def frames(draw: st.DrawFn) -> Frame:
    """A fuselage with a wing, a tail, and up to four things anywhere on it."""
    shares = st.floats(0.0, 1.0)
    long, wide = draw(st.floats(0.3, 3.0)), draw(st.floats(0.3, 4.0))
    parts = [
        Part("fuselage", draw(st.floats(0.05, 5.0)), (long * 0.5, 0.0, 0.0), Box((long, 0.1 * long, 0.1 * long))),
        Part("wing", draw(st.floats(0.05, 5.0)), (long * 0.4, 0.0, 0.05 * long), Box((0.2 * long, wide, 0.02 * long))),
    ]
    for number in range(draw(st.integers(0, 4))):
        at_m = (long * draw(shares), wide * (draw(shares) - 0.5), 0.1 * long * (draw(shares) - 0.5))
        parts.append(Part(f"load {number}", draw(st.floats(0.01, 3.0)), at_m))
    wing = Surface(
        name="wing", root_chord_m=0.25 * long, tip_chord_m=0.15 * long, span_m=wide, at_m=(0.3 * long, 0.0, 0.0)
    )
    return tuple(parts), (wing,)  # fmt: skip


def swung(parts: tuple[Part, ...], hook_m: tuple[float, float, float]) -> AirframeHanging:
    state = AirframeHanging(hook_m=hook_m).released(parts)
    for _ in range(12_000):
        if not state.moving:
            return state
        state = state.ticked()
    return state


def stood(state: AirframeWeighing) -> AirframeWeighing:
    for _ in range(4000):
        if not state.moving:
            break
        state = state.ticked()
    assert not state.moving
    return state


def hangs_as_the_sum_says(parts: tuple[Part, ...], surfaces: tuple[Surface, ...]) -> None:
    (nose, tail), (left, right), (bottom, top) = spans_m(parts, surfaces)
    balance = moment_sum(parts).balance_point_m
    hung = AirframeHanging(hook_m=first_hook_m(parts, surfaces))
    size = tail - nose
    # Three places from which it hangs in three directions that are far from alike.
    hooks = (
        hung.hook_m,
        (balance[0] - 0.4 * size, balance[1] + 0.02 * size, top),
        (balance[0], balance[1] + 0.4 * max(size, right - left), bottom),
    )
    lines = ()
    for hook in hooks:
        state = swung(parts, hook)
        rest = hanging_attitude(parts, hook)
        assert rest is not None
        assert state.at_rest
        assert state.swing.pitch_rad == pytest.approx(rest.pitch_rad, abs=AGREES_M)
        assert state.swing.roll_rad == pytest.approx(rest.roll_rad, abs=AGREES_M)
        lines = (*lines, *state.drawn().lines)
    crossing = AirframeHanging(hook_m=hung.hook_m, lines=lines).crossing
    assert crossing is not None
    assert dist(crossing.at_m, balance) < AGREES_M
    assert crossing.scatter_m < AGREES_M


def weighs_as_the_sum_says(parts: tuple[Part, ...], surfaces: tuple[Surface, ...]) -> None:
    total = moment_sum(parts)
    state = stood(AirframeWeighing(scales=first_scales(parts, surfaces)).released(parts))
    assert not state.tipped
    assert sum(state.readings_kg) == pytest.approx(total.mass_kg, rel=1e-9)
    along, across, up = state.read_m or (0.0, 0.0, 0.0)
    assert (along, across) == pytest.approx(total.balance_point_m[:2], abs=AGREES_M)
    assert up is None
    raised = stood(state.raising(radians(8.0)))
    read = raised.read_m
    assert read is not None
    assert read == pytest.approx(total.balance_point_m, abs=AGREES_M)


def test_a_shipped_airframe_hangs_as_its_sum_says(shipped: Frame) -> None:
    hangs_as_the_sum_says(*shipped)


def test_a_shipped_airframe_weighs_as_its_sum_says(shipped: Frame) -> None:
    weighs_as_the_sum_says(*shipped)


def test_a_shipped_airframe_stands_on_the_scales_that_it_is_given(shipped: Frame) -> None:
    parts, surfaces = shipped
    state = stood(AirframeWeighing(scales=first_scales(parts, surfaces)).released(parts))
    # Each of them bears so much that its window tells something.
    assert min(state.readings_kg) > 0.05 * state.mass_kg


@settings(max_examples=25)
@given(frames())
def test_any_airframe_hangs_as_its_sum_says(frame: Frame) -> None:
    hangs_as_the_sum_says(*frame)


@settings(max_examples=40)
@given(frames())
def test_any_airframe_weighs_as_its_sum_says(frame: Frame) -> None:
    standing = AirframeWeighing(scales=first_scales(*frame)).released(frame[0])
    places = standing.places_m
    # Loads far out or far up can leave it no scales to stand on, level or raised.
    assume(borne_by(frame[0], places, 0.0) and borne_by(frame[0], places, radians(8.0)))
    weighs_as_the_sum_says(*frame)


@settings(max_examples=40)
@given(frames(), st.floats(-0.3, 1.3), st.floats(-0.6, 0.6))
def test_an_airframe_tips_exactly_where_its_balance_point_lies_beyond_its_scales(
    frame: Frame, along: float, across: float
) -> None:
    parts, surfaces = frame
    (nose, tail), (left, right), (bottom, _) = spans_m(parts, surfaces)
    first, second, third = first_scales(parts, surfaces)
    # One scale goes anywhere; where that leaves no triangle, nothing is asked.
    moved = (nose + along * (tail - nose), (left + right) / 2 + across * (right - left), bottom)
    state = AirframeWeighing(scales=(first.__class__(id=1, name="moved", at_m=moved), second, third))
    try:
        state = stood(state.released(parts))
    except MechanicsError:
        return
    x, y, _ = moment_sum(parts).balance_point_m
    sides = []
    places = state.places_m
    for start, end in ((0, 1), (1, 2), (2, 0)):
        (ax, ay, _), (bx, by, _) = places[start], places[end]
        sides.append((bx - ax) * (y - ay) - (by - ay) * (x - ax))
    inside = all(side > 0.0 for side in sides) or all(side < 0.0 for side in sides)
    if min(map(abs, sides)) > 1e-6:  # over an edge itself it still stands
        assert state.tipped is not inside
