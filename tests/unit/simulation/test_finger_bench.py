"""A tool on one finger: it stays while its balance point is over the pad, else it tips and falls."""

from dataclasses import replace

import pytest

from lab.files import read_build_text
from lab.simulation import (
    Guess,
    Hang,
    HoldStill,
    LetGo,
    MoveFinger,
    MoveReference,
    OpenBuild,
    Session,
    SetUnits,
    Undo,
    UnfitBuildError,
    finger_from_build,
    settle,
)

BOAT_HOOK = """
format = 1
title = "Boat hook"
units = "g-cm"
[[part]]
name = "pole"
weight = 120
at = 20.0
shape = { kind = "rod", length = 40 }
[[part]]
name = "hook"
weight = 480
at = 2.0
shape = { kind = "box", size = [4, 2, 5] }
look = "hook"
"""

POINT = """
format = 1
title = "Lead"
units = "g-cm"
part = [{ name = "lead", weight = 50, at = 3 }]
"""


@pytest.fixture
def build():
    return read_build_text(BOAT_HOOK, file="boat-hook.toml")


def test_the_boat_hook_balances_at_5_6_cm_and_stays_there(build):
    tool = finger_from_build(build, finger_at_m=0.056, pad_half_m=0.003)
    # 480 × 2 + 120 × 20 = 3 360 g·cm over 600 g, by hand.
    assert tool.sum.balance_point_m[0] == pytest.approx(0.056, abs=1e-15)
    assert tool.outcome is None
    assert tool.released().outcome == "level"
    assert not tool.released().moving


@pytest.mark.parametrize("at_m", [0.0531, 0.0559, 0.0589])
def test_it_stays_while_the_balance_point_is_over_the_pad(build, at_m):
    assert settle(finger_from_build(build, finger_at_m=at_m, pad_half_m=0.003).released()).outcome == "level"


@pytest.mark.parametrize(
    ("at_m", "side"), [(0.0525, "right"), (0.0595, "left"), (0.096, "left"), (0.02, "right"), (0.40, "left")]
)
def test_off_the_pad_the_heavier_side_drops_and_it_comes_to_rest_within_a_few_seconds(build, at_m, side):
    tool = finger_from_build(build, finger_at_m=at_m, pad_half_m=0.003).released()
    ticks = 0
    while tool.moving and ticks < 2000:
        assert tool.outcome is None
        tool = tool.ticked()
        ticks += 1
    assert tool.outcome == side
    assert ticks < 1000  # five seconds; half a millimetre off the pad takes about half of that
    assert tool.ticked() is tool


def test_a_tool_9_6_cm_along_slides_off_and_falls_to_the_floor(build):
    tool = settle(finger_from_build(build, finger_at_m=0.096, pad_half_m=0.003).released())
    assert tool.motion.phase == "down"
    assert tool.motion.z_m < -0.1  # the floor is 0.35 × 40 cm below


def test_moving_the_finger_holds_the_tool_again_and_takes_the_guess_back(build):
    session = Session(finger_from_build(build, finger_at_m=0.096))
    first = session.state
    session.do(Guess("left"))
    session.do(LetGo())
    session.advance(40_000_000)
    assert session.moving
    session.do(MoveFinger(0.056))
    assert session.state.held
    assert session.state.guess is None
    session.do(LetGo(at_once=True))
    assert session.state.outcome == "level"
    while session.can_undo:
        session.do(Undo())
    assert session.state == first


@pytest.mark.parametrize(("at_m", "ends_m"), [(-1.0, 0.0), (9.0, 0.4)])
def test_the_finger_stops_at_the_ends_of_the_tool(build, at_m, ends_m):
    session = Session(finger_from_build(build))
    assert session.do(MoveFinger(at_m)) is None
    assert session.state.finger_at_m == ends_m


def test_holding_still_lays_it_back_on_the_finger(build):
    session = Session(finger_from_build(build, finger_at_m=0.3))
    first = session.state
    session.do(LetGo(at_once=True))
    session.do(HoldStill())
    assert session.state == first


def test_the_reference_moves_arms_and_not_the_balance_point(build):
    session = Session(finger_from_build(build))
    balance = session.state.sum.balance_point_m
    session.do(MoveReference(0.1))
    assert session.state.sum.rows[0].arm_m[0] == pytest.approx(0.1, abs=1e-15)
    assert session.state.sum.balance_point_m == balance


def test_nothing_can_be_hung_on_a_tool_and_no_place_is_not_a_place(build):
    session = Session(finger_from_build(build))
    first = session.state
    for command in (Hang(0.1, 0.1), MoveFinger(float("nan")), SetUnits("cubits"), OpenBuild("not = [toml")):
        assert session.do(command) is not None
    assert session.state is first


def test_another_tool_can_be_opened_and_keeps_the_pad(build):
    session = Session(finger_from_build(build, pad_half_m=0.007))
    assert session.do(OpenBuild(BOAT_HOOK.replace("Boat hook", "Gaff"))) is None
    assert session.state.title == "Gaff"
    assert session.state.pad_half_m == 0.007


def test_without_a_place_the_finger_is_under_the_middle(build):
    tool = finger_from_build(build)
    assert tool.finger_at_m == 0.2
    assert (tool.left_m, tool.right_m) == (0.0, 0.4)
    assert tool.floor_m < tool.underside_m < 0.0


def test_a_thing_without_length_is_refused():
    with pytest.raises(UnfitBuildError, match="no length"):
        finger_from_build(read_build_text(POINT, file="lead.toml"))
    session = Session(finger_from_build(read_build_text(BOAT_HOOK, file="boat-hook.toml")))
    assert session.do(OpenBuild(POINT)) is not None


def test_a_bar_can_lie_on_a_finger_too():
    text = BOAT_HOOK.replace(
        "[[part]]", 'pivot = { at = 10, pad = 2 }\nbar = { name = "bar", length = 60, weight = 90 }\n[[part]]', 1
    )
    tool = finger_from_build(read_build_text(text, file="bar.toml"))
    assert tool.finger_at_m == 0.1
    assert tool.pad_half_m == 0.02
    assert tool.parts[0].name == "bar"


def test_parts_that_mechanics_cannot_use_are_refused_with_its_reason(build):
    vast = tuple(replace(part, mass_kg=1e308) for part in build.parts)
    with pytest.raises(UnfitBuildError, match="can't lie on a finger: the sum is too large"):
        finger_from_build(replace(build, parts=vast))


def test_a_tool_that_has_had_its_minute_is_called_down_where_it_is(build):
    tool = finger_from_build(build, finger_at_m=0.096).released().ticked().ticked()
    ended = tool.at_end()
    assert not ended.moving
    assert ended.outcome == "left"
    assert ended.motion.angle_rad == tool.motion.angle_rad
    assert ended.at_end() is ended


def test_a_bow_that_hangs_under_the_pad_tips_about_its_edge_and_comes_to_rest_there():
    # Its weights hang below its face, so off the pad it tilts and stays, as a coat hanger does.
    text = BOAT_HOOK.replace("at = 2.0", "at = [2.0, 0, -12]").replace("[4, 2, 5]", "[4, 2, 2]")
    heavy = finger_from_build(read_build_text(text, file="bow.toml"), finger_at_m=0.06, pad_half_m=0.003).released()
    rested = settle(heavy)
    assert not rested.moving
    assert rested.outcome == "left"
    assert rested.motion.angle_rad > 0.0
