"""Builds become hanging bars and come back as they were."""

from dataclasses import replace

import pytest

from lab.files import build_text, read_build_text
from lab.mechanics import Pivot
from lab.simulation import (
    Hang,
    Move,
    OpenBuild,
    Session,
    UnfitBuildError,
    build_from_hanging_bar,
    empty_bar,
    hanging_bar_from_build,
    workshop_bar,
)

RIGGED = """
format = 1
title = "Net boom"
units = "g-cm"
reference = 10.0
view = "numbers"
[bar]
name = "boom"
length = 180
weight = 640
left = -20
depth = 5
[pivot]
at = 55
up = 1.5
stop = 15
damping = 40
[[part]]
name = "net"
weight = 320.5
weight_doubt = 0.5
at = [120.25, 3.0, -4.0]
at_doubt = 0.1
shape = { kind = "box", size = [30, 8, 20] }
hold = "clamped"
set = "dock scale"
look = "ring"
[[part]]
name = "lead"
weight = 75
at = 2
hold = "hung"
"""

BAR = '[bar]\nname = "boom"\nlength = 100\nweight = 300\n'


def read(text):
    return read_build_text(text, file="boom.toml")


def opened(body):
    return hanging_bar_from_build(read(f'format = 1\ntitle = "Boom"\nunits = "g-cm"\n{body}'))


def test_a_build_comes_back_as_it_went_in_down_to_doubts_and_shapes():
    build = read(RIGGED)
    state = hanging_bar_from_build(build)
    assert build_from_hanging_bar(state) == build
    assert state.held
    assert state.guess is None
    assert [weight.id for weight in state.weights] == [1, 2]
    assert state.next_id == 3


@pytest.mark.parametrize("state", [workshop_bar(), empty_bar(view="all"), hanging_bar_from_build(read(RIGGED))])
def test_a_bench_saved_as_text_and_opened_again_is_the_same_bench(state):
    again = hanging_bar_from_build(read(build_text(build_from_hanging_bar(state))))
    assert again.parts == state.parts
    assert again.pivot.at_m == state.pivot.at_m
    # The file holds the stop in degrees: one rounding each way.
    assert again.pivot.stop_rad == pytest.approx(state.pivot.stop_rad, rel=1e-15)
    assert (again.title, again.units, again.view) == (state.title, state.units, state.view)
    assert again.reference_m == state.reference_m
    assert again.bar == state.bar


def test_a_build_without_a_pivot_hangs_by_the_middle_of_its_bar():
    state = opened(BAR)
    assert state.pivot == Pivot(at_m=0.5, up_m=0.01)


@pytest.mark.parametrize(
    ("body", "said"),
    [
        ('part = [{ name = "lead", weight = 1, at = 0 }]', "no bar"),
        (BAR + '[[part]]\nname = "hole"\nweight = 5\nat = 50\ncut = true\n', "hole"),
        (BAR + '[[support]]\nname = "a"\nat = 10\n[[support]]\nname = "b"\nat = 90\n', "supports"),
        (BAR + "".join(f'[[part]]\nname = "n{n}"\nweight = 5\nat = 50\n' for n in range(41)), "more weights"),
    ],
)
def test_a_build_that_cannot_hang_is_refused_with_a_reason(body, said):
    with pytest.raises(UnfitBuildError, match=said):
        opened(body)


def test_a_build_made_elsewhere_is_checked_for_what_a_file_could_not_hold():
    build = read(RIGGED)
    with pytest.raises(UnfitBuildError, match="pivot"):
        hanging_bar_from_build(replace(build, pivot=Pivot(at_m=2.0)))
    with pytest.raises(UnfitBuildError, match="lead is off the bar"):
        hanging_bar_from_build(replace(build, parts=(replace(build.parts[1], at_m=(9.0, 0.0, 0.0)),)))
    vast = tuple(replace(part, mass_kg=1e308) for part in build.parts)
    with pytest.raises(UnfitBuildError, match="can't hang: the sum is too large"):
        hanging_bar_from_build(replace(build, parts=vast))


def test_opening_a_build_is_a_command_and_a_bad_one_changes_nothing():
    session = Session(workshop_bar())
    first = session.state
    for text in ("", "format = 1", RIGGED.replace("weight = 75", "weight = -75"), RIGGED.replace("[bar]", "[barr]")):
        why = session.do(OpenBuild(text))
        assert why is not None
        assert why.in_english().startswith("This build can't be opened. build:")
        assert session.state is first
    assert session.do(OpenBuild(RIGGED)) is None
    assert session.state.title == "Net boom"
    assert session.do(Hang(0.1, 0.9)) is None
    assert session.state.weights[-1].id == 3


def test_a_weight_that_moves_keeps_its_shape_and_its_doubts():
    session = Session(hanging_bar_from_build(read(RIGGED)))
    before = session.state.weight(1).part
    session.do(Move(1, 0.5))
    after = session.state.weight(1).part
    assert after.at_m == (0.5, 0.03, -0.04)
    assert (after.shape, after.mass_doubt_kg, after.set_name) == (before.shape, before.mass_doubt_kg, "dock scale")


def test_a_build_that_can_be_read_but_not_hung_is_refused_too():
    session = Session(workshop_bar())
    first = session.state
    why = session.do(
        OpenBuild('format = 1\ntitle = "Lead"\nunits = "g-cm"\npart = [{ name = "l", weight = 1, at = 0 }]')
    )
    assert "no bar" in why.in_english()
    assert session.state is first
