"""What a learner can do to a hanging bar, and what is refused."""

import math

import pytest

from lab.files import build_text
from lab.simulation import (
    Guess,
    Hang,
    HoldStill,
    LetGo,
    Move,
    MoveFinger,
    MovePivot,
    MoveReference,
    OpenBuild,
    Redo,
    Remove,
    Session,
    SetHold,
    SetUnits,
    SetView,
    Undo,
    build_from_hanging_bar,
    empty_bar,
    workshop_bar,
)


@pytest.fixture
def session():
    return Session(workshop_bar())


def done(session, *commands):
    for command in commands:
        assert session.do(command) is None


def refused(session, command):
    """The sentence; and nothing else may have changed."""
    before, past, future = session.state, session.can_undo, session.can_redo
    why = session.do(command)
    assert why is not None
    assert session.state is before
    assert (session.can_undo, session.can_redo) == (past, future)
    return why.in_english()


def test_the_first_bar_is_the_one_of_the_design_with_its_balance_point_at_44_4_cm():
    bar = workshop_bar()
    # 7 500 + 3 000 + 7 200 + 4 500 = 22 200 g·cm over 500 g, by hand.
    assert bar.sum.balance_point_m[0] == pytest.approx(0.444, abs=1e-12)
    assert bar.sum.mass_kg == pytest.approx(0.5, abs=1e-12)
    assert bar.turn.goes == "right"
    assert [row.name for row in bar.sum.rows] == ["bar", "brass 200", "brass 100", "brass 50"]
    assert bar.outcome is None


def test_hanging_a_weight_adds_it_with_an_id_and_a_name_of_its_own(session):
    done(session, Hang(0.1, 0.3), Hang(0.1, 0.3), Hang(0.1, 0.5, "clamped"))
    new = session.state.weights[3:]
    assert [weight.id for weight in new] == [4, 5, 6]
    assert [weight.name for weight in new] == ["brass 100 (2)", "brass 100 (3)", "brass 100 (4)"]
    assert [weight.hold for weight in new] == ["hung", "hung", "clamped"]


def test_a_name_that_was_freed_is_used_again_but_an_id_never_is(session):
    done(session, Remove(2), Hang(0.1, 0.5))
    assert session.state.weights[-1].name == "brass 100"
    assert session.state.weights[-1].id == 4


def test_a_weight_may_not_take_the_name_of_the_bar(session):
    done(session, Hang(0.1, 0.5, name="bar"))
    assert session.state.weights[-1].name == "bar (2)"


@pytest.mark.parametrize("at_m", [-0.01, 1.01, math.nan, math.inf, -math.inf])
def test_a_hook_dropped_off_the_bar_hangs_nowhere(session, at_m):
    assert "no bar there" in refused(session, Hang(0.1, at_m))


@pytest.mark.parametrize("at_m", [-0.01, 1.01, math.nan])
def test_a_weight_dragged_off_the_bar_stays_where_it_was_and_is_named(session, at_m):
    assert refused(session, Move(1, at_m)).startswith("brass 200 would be off the bar")


def test_round_off_at_the_very_end_of_the_bar_still_counts_as_on_it(session):
    done(session, Move(3, 1.0 + 1e-12))
    assert session.state.weight(3).at_m == 1.0


@pytest.mark.parametrize("mass_kg", [0.0, -0.1, math.nan, math.inf, 1e6])
def test_a_weight_that_no_bar_can_carry_is_refused(session, mass_kg):
    assert "can carry" in refused(session, Hang(mass_kg, 0.5))


def test_a_bar_takes_forty_weights_and_says_when_it_is_full():
    session = Session(empty_bar())
    done(session, *(Hang(0.05, 0.02 * place) for place in range(40)))
    assert len({weight.name for weight in session.state.weights}) == 40
    assert "no room" in refused(session, Hang(0.05, 0.5))


@pytest.mark.parametrize("command", [Move(9, 0.5), Remove(9), SetHold(9, "clamped")])
def test_a_weight_that_is_gone_is_said_to_be_gone(session, command):
    assert "not on the bar any more" in refused(session, command)


@pytest.mark.parametrize(
    "command",
    [Hang(0.1, 0.5, "glued"), SetHold(1, "glued"), Guess("up"), SetView("some"), SetUnits("stones")],
)
def test_a_word_that_is_not_one_of_the_choices_is_refused(session, command):
    refused(session, command)


@pytest.mark.parametrize("command", [MovePivot(math.nan), MoveReference(math.inf)])
def test_a_place_that_is_not_a_number_is_refused(session, command):
    assert "not a place" in refused(session, command)


def test_a_finger_is_nothing_to_a_hanging_bar(session):
    assert "on this bench" in refused(session, MoveFinger(0.2))


@pytest.mark.parametrize(("at_m", "ends_m"), [(-3.0, 0.0), (0.62, 0.62), (7.0, 1.0)])
def test_the_carriage_stops_at_the_ends_of_the_bar(session, at_m, ends_m):
    done(session, MovePivot(at_m))
    assert session.state.pivot.at_m == ends_m


@pytest.mark.parametrize(("at_m", "ends_m"), [(-3.0, -0.04), (0.3, 0.3), (7.0, 1.04)])
def test_the_reference_line_goes_anywhere_on_the_rail(session, at_m, ends_m):
    done(session, MoveReference(at_m))
    assert session.state.reference_m == pytest.approx(ends_m, abs=1e-15)  # one rounding of 1.04


def test_moving_the_reference_changes_the_arms_and_not_the_balance_point(session):
    before = session.state.sum
    done(session, MoveReference(0.25))
    after = session.state.sum
    assert after.balance_point_m == before.balance_point_m
    arms = [(one.arm_m[0], other.arm_m[0]) for one, other in zip(before.rows, after.rows, strict=True)]
    assert all(one - other == pytest.approx(0.25, abs=1e-15) for one, other in arms)


def test_touching_the_bar_while_it_tips_holds_it_level_again(session):
    for touch in (Hang(0.05, 0.1), Move(1, 0.2), SetHold(1, "clamped"), MovePivot(0.45), Remove(1)):
        done(session, LetGo())
        session.advance(40_000_000)
        assert session.moving
        done(session, touch)
        assert session.state.held
        assert session.state.swing.angle_rad == 0.0


def test_what_does_not_touch_the_bar_leaves_it_tipping(session):
    done(session, LetGo())
    session.advance(40_000_000)
    swing = session.state.swing
    done(session, SetView("all"), SetUnits("lb-in"), MoveReference(0.1), Guess("left"))
    assert session.state.swing == swing
    assert not session.state.held


def test_a_guess_is_kept_until_what_was_guessed_about_changes(session):
    done(session, Guess("right"), SetView("numbers"), MoveReference(0.2), LetGo(), HoldStill())
    assert session.state.guess == "right"
    done(session, Move(1, 0.2))
    assert session.state.guess is None


def test_there_is_nothing_to_take_back_or_make_again_at_first(session):
    assert "nothing to take back" in refused(session, Undo())
    assert "nothing to make again" in refused(session, Redo())


def test_weights_of_one_size_are_numbered_and_keep_their_numbers_through_undo_and_a_saved_build():
    session = Session(empty_bar())
    done(session, *(Hang(0.05, 0.5) for _ in range(11)))
    numbered = ["brass 50", *(f"brass 50 ({number})" for number in range(2, 12))]
    assert [weight.name for weight in session.state.weights] == numbered
    done(session, Undo(), Hang(0.05, 0.6))
    assert [weight.name for weight in session.state.weights] == numbered
    done(session, Remove(session.state.weights[2].id))
    done(session, OpenBuild(build_text(build_from_hanging_bar(session.state))))
    assert [weight.name for weight in session.state.weights] == numbered[:2] + numbered[3:]
    done(session, Hang(0.05, 0.7), Undo(), Redo())
    # The number that was taken away is free again.
    assert session.state.weights[-1].name == "brass 50 (3)"
