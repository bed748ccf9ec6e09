"""A tool built on a finger: what can be done to its parts, what is refused, and where it then balances."""

import math

import pytest

from lab.app.paths import find_paths
from lab.files import UNITS, build_text, read_build, read_build_text
from lab.simulation import (
    Guess,
    Hang,
    HoldStill,
    LetGo,
    Move,
    MoveFinger,
    MoveReference,
    OpenBuild,
    Refused,
    Remove,
    Session,
    SetHold,
    Undo,
    UnfitBuildError,
    settle,
)
from lab.simulation.benches.tool_builds import build_from_tool, tool_from_build, workshop_tool
from lab.simulation.benches.tool_parts import KINDS
from lab.simulation.part_commands import Copy, Rename, Reweigh
from lab.simulation.tool_commands import FitPart, SetLength

SHIPPED = find_paths().shipped_builds
POLE, HOOK, GRIP = 1, 2, 3


@pytest.fixture
def session():
    return Session(workshop_tool())


def done(session, *commands):
    for command in commands:
        assert session.do(command) is None


def refused(session, command):
    """The sentence; and nothing else may have changed."""
    before, past, future = session.state, session.can_undo, session.can_redo
    why = session.do(command)
    assert isinstance(why, Refused)
    assert session.state is before
    assert (session.can_undo, session.can_redo) == (past, future)
    return why.in_english()


def test_the_first_tool_is_a_boat_hook_whose_hook_end_is_the_heavier():
    tool = workshop_tool()
    # (320 × 50 + 420 × 97 + 90 × 10) ÷ 830 = 57 640 ÷ 830, in grams and centimetres, by hand.
    assert tool.sum.balance_point_m[0] == pytest.approx(57640 / 830 / 100, rel=1e-14)
    assert [part.name for part in tool.parts] == ["pole", "hook", "grip"]
    assert tool.ids == (1, 2, 3)
    assert settle(tool.released()).outcome == "right"
    assert tool.outcome is None


@pytest.mark.parametrize("kind", KINDS)
def test_every_part_of_the_tray_can_be_put_on_and_weighs_what_it_says(session, kind):
    done(session, FitPart(kind, 0.3))
    assert session.state.parts[-1].mass_kg == KINDS[kind].mass_kg
    assert session.state.ids[-1] == 4
    total_kg = 0.83 + KINDS[kind].mass_kg
    moment_kg_m = 0.5764 + KINDS[kind].mass_kg * 0.3
    assert session.state.sum.balance_point_m[0] == pytest.approx(moment_kg_m / total_kg, rel=1e-13)


def test_a_ring_reaches_over_the_end_as_far_as_it_has_a_grip(session):
    done(session, FitPart("ring", 1.05), Move(4, 3.0))
    # The hook ends at 101 cm; the ring, 17 cm to each side, keeps 2 cm on it.
    assert session.state.part(4).at_m[0] == pytest.approx(1.01 + 0.17 - 0.02, abs=1e-12)
    assert session.state.right_m == pytest.approx(1.33, abs=1e-12)
    done(session, MoveFinger(1.3))
    assert session.state.finger_at_m == 1.3


def test_brass_stays_on_the_tool(session):
    done(session, Hang(0.1, 0.2), Move(4, 9.0))
    assert session.state.part(4).at_m[0] == pytest.approx(1.01, abs=1e-12)
    assert session.state.looks["brass 100"] == "weight"


def test_what_sits_on_a_ring_comes_along_when_the_ring_moves_in(session):
    done(session, FitPart("ring", 1.1), Hang(0.05, 1.25), Move(4, 0.5))
    ring, brass = session.state.part(4), session.state.part(5)
    assert ring.at_m[0] == 0.5
    assert brass.at_m[0] == pytest.approx(1.01, abs=1e-12)


def test_a_shorter_handle_weighs_less_and_what_sat_beyond_comes_along(session):
    done(session, SetLength(POLE, 0.75))
    pole, hook = session.state.part(POLE), session.state.part(HOOK)
    assert (pole.at_m[0], pole.mass_kg) == (0.375, 0.24)
    # The hook, 8 cm wide, keeps 2 cm on the pole's end.
    assert hook.at_m[0] == pytest.approx(0.75 + 0.04 - 0.02, abs=1e-12)
    done(session, SetLength(POLE, 1.0))
    assert session.state.part(POLE).mass_kg == pytest.approx(0.32, abs=1e-15)


def test_the_finger_and_the_reference_line_stay_under_a_tool_that_gets_shorter(session):
    done(session, MoveFinger(1.0), MoveReference(1.0), Remove(HOOK), SetLength(POLE, 0.6))
    assert (session.state.finger_at_m, session.state.reference_m) == (0.6, 0.6)


def test_a_part_can_be_weighed_anew_and_renamed(session):
    done(session, Reweigh(HOOK, 0.2), Rename(HOOK, "  gaff \t head "))
    assert session.state.part(HOOK).mass_kg == 0.2
    assert session.state.part(HOOK).name == "gaff head"
    assert session.state.looks["gaff head"] == "hook"
    done(session, Rename(GRIP, "pole"))
    assert session.state.part(GRIP).name == "pole (2)"


@pytest.mark.parametrize(
    "command",
    [FitPart("hook", 0.1), Hang(0.1, 0.2), Move(HOOK, 0.3), Remove(GRIP), SetLength(POLE, 0.9), Reweigh(HOOK, 0.1),
     MoveFinger(0.2)],
)  # fmt: skip
def test_an_edit_holds_the_tool_first_and_takes_back_the_guess(session, command):
    done(session, Guess("left"), LetGo())
    session.advance(40_000_000)
    assert session.moving
    done(session, command)
    assert session.state.held
    assert session.state.guess is None
    assert session.state.motion == workshop_tool().motion


def test_a_new_name_is_no_change_of_what_was_guessed_about(session):
    done(session, Guess("left"), Rename(HOOK, "gaff"))
    assert session.state.guess == "left"


@pytest.mark.parametrize(
    ("command", "says"),
    [
        (FitPart("anchor", 0.3), "no such part"),
        (FitPart("hook", 3.0), "no tool there"),
        (FitPart("hook", math.nan), "not a place"),
        (Hang(0.1, 1.4), "no tool there"),
        (Hang(-1.0, 0.4), "not a weight"),
        (Hang(0.1, 0.4, "glued"), "hung or clamped"),
        (Move(9, 0.2), "not on the tool any more"),
        (Move(HOOK, math.inf), "not a place"),
        (Remove(POLE), "the handle"),
        (Copy(9), "not on the tool any more"),
        (Remove(9), "not on the tool any more"),
        (SetHold(HOOK, "hung"), "Only a weight"),
        (SetLength(POLE, 0.0), "5 cm to 10 m"),
        (SetLength(POLE, math.nan), "5 cm to 10 m"),
        (Reweigh(HOOK, 0.0), "not a weight"),
        (Reweigh(HOOK, math.nan), "not a weight"),
        (Rename(HOOK, "  "), "1 to 40 letters"),
        (Rename(HOOK, "x" * 41), "1 to 40 letters"),
        (OpenBuild("not = [toml"), "can't be opened"),
    ],
)
def test_what_makes_no_sense_is_refused_with_a_sentence(session, command, says):
    assert says in refused(session, command)


def test_a_copy_lies_beside_and_its_mirror_image_across_the_finger(session):
    done(session, Copy(GRIP), MoveFinger(0.48), Copy(GRIP, mirrored=True))
    # A twentieth of 101 cm beside; twice the finger's place less its own.
    assert [part.at_m[0] for part in session.state.parts[3:]] == pytest.approx([0.1505, 0.86], abs=1e-12)
    assert {part.mass_kg for part in session.state.parts[2:]} == {0.09}
    done(session, MoveFinger(0.9))
    assert "does not reach" in refused(session, Copy(GRIP, mirrored=True))


def test_a_ring_comes_in_one_size(session):
    done(session, FitPart("ring", 0.5))
    assert "one length" in refused(session, SetLength(4, 0.5))


def test_a_tool_of_forty_parts_is_full(session):
    done(session, *(Hang(0.05, 0.5) for _ in range(37)))
    assert "no room" in refused(session, Hang(0.05, 0.5))
    assert len({part.name for part in session.state.parts}) == 40


def test_the_handle_can_go_when_another_pole_takes_its_place(session):
    done(session, FitPart("pole-50", 0.9), Remove(POLE))
    assert session.state.handle.name == "pole (2)"
    # Grip and hook have come along to the pole from 65 to 115 cm.
    assert session.state.left_m >= 0.65 - 0.16
    done(session, LetGo(at_once=True))
    assert session.state.outcome is not None


def test_taking_all_of_it_back_leads_to_the_first_tool(session):
    first = session.state
    done(
        session, FitPart("blade", 1.0), Move(4, 1.05), Move(4, 1.08, joins=True), SetHold(4, "clamped"), Hang(0.2, 0.0),
        SetHold(5, "clamped"), Rename(5, "lead"), LetGo(), HoldStill(), SetLength(POLE, 1.2), MoveFinger(0.7),
    )  # fmt: skip
    while session.can_undo:
        done(session, Undo())
    assert session.state == first


def test_a_tool_that_balances_on_the_pad_stays_and_half_a_pad_farther_it_tips(session):
    at_m = session.state.sum.balance_point_m[0]
    done(session, MoveFinger(at_m), LetGo(at_once=True))
    assert session.state.outcome == "level"
    for step_m, side in ((0.004, "left"), (-0.004, "right")):
        done(session, MoveFinger(at_m + step_m), LetGo(at_once=True))
        assert session.state.outcome == side
        assert session.state.motion.phase == "down"


def test_a_tool_is_saved_and_opened_again_to_the_last_bit(session):
    # As the screen gives them: numbers of the units that are shown.
    m, kg = UNITS["g-cm"].to_m, UNITS["g-cm"].to_kg
    done(
        session, FitPart("ring", m(110)), Hang(kg(50), m(12.3)), Reweigh(POLE, kg(299.9)), SetLength(POLE, m(101)),
        MoveFinger(m(43.7)), MoveReference(m(10)), Move(HOOK, m(96.3)),
    )  # fmt: skip
    again = tool_from_build(read_build_text(build_text(build_from_tool(session.state)), file="again.toml"))
    assert again == session.state


def test_a_bar_lies_on_the_finger_as_a_pole():
    tool = tool_from_build(read_build(SHIPPED / "survey-bar.toml"))
    assert tool.underside_m == pytest.approx(-read_build(SHIPPED / "survey-bar.toml").bar.depth_m / 2, abs=1e-15)


@pytest.mark.parametrize("name", ["boat-hook", "oar", "landing-net", "camera-pole", "nest-box-pole"])
def test_shipped_tools_lie_on_the_finger_as_their_files_say_and_stay_so_when_saved(name):
    build = read_build(SHIPPED / f"{name}.toml")
    tool = tool_from_build(build)
    weight_kg = math.fsum(part.mass_kg for part in build.all_parts)
    moment_kg_m = math.fsum(part.mass_kg * part.at_m[0] for part in build.all_parts)
    assert tool.sum.balance_point_m[0] == pytest.approx(moment_kg_m / weight_kg, rel=1e-14)
    assert tool_from_build(read_build_text(build_text(build_from_tool(tool)), file="again.toml")).parts == tool.parts


def test_a_boom_with_its_arm_at_an_angle_is_no_straight_tool():
    with pytest.raises(UnfitBuildError, match="at an angle"):
        tool_from_build(read_build(SHIPPED / "camera-boom.toml"))


@pytest.mark.parametrize("name", ["glider", "tailless-wing", "survey-drone"])
def test_an_airframe_is_no_tool(name):
    with pytest.raises(UnfitBuildError, match="flies"):
        tool_from_build(read_build(SHIPPED / f"{name}.toml"))
