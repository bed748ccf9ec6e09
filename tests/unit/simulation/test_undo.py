"""Undo and redo: every change can be taken back, to the first state."""

import pytest

from lab.simulation import (
    Guess,
    Hang,
    HoldStill,
    LetGo,
    Move,
    MovePivot,
    MoveReference,
    OpenBuild,
    Redo,
    Remove,
    Session,
    SetUnits,
    SetView,
    Undo,
    workshop_bar,
)

BUILD = """
format = 1
title = "Oar"
units = "g-cm"
bar = { name = "loom", length = 200, weight = 900 }
pivot = { at = 60 }
"""


@pytest.fixture
def session():
    return Session(workshop_bar())


@pytest.mark.parametrize(
    "command",
    [
        Hang(0.05, 0.3),
        Move(1, 0.3),
        Remove(2),
        MovePivot(0.5),
        MoveReference(0.5),
        Guess("left"),
        SetView("all"),
        SetUnits("N-m"),
        OpenBuild(BUILD),
    ],
)
def test_one_undo_takes_a_change_back_and_one_redo_makes_it_again(session, command):
    first = session.state
    assert session.do(command) is None
    changed = session.state
    assert changed != first
    assert session.do(Undo()) is None
    assert session.state == first
    assert not session.can_undo
    assert session.do(Redo()) is None
    assert session.state == changed
    assert not session.can_redo


def test_a_change_that_changes_nothing_is_no_step(session):
    for command in (Move(1, 0.15), MovePivot(0.40), SetView("plain"), HoldStill(), Guess(None)):
        assert session.do(command) is None
    assert not session.can_undo


def test_a_whole_drag_is_one_step(session):
    first = session.state
    session.do(Move(1, 0.16))
    for place in range(17, 40):
        session.do(Move(1, place / 100, joins=True))
    assert session.state.weight(1).at_m == 0.39
    session.do(Undo())
    assert session.state == first


def test_two_drags_are_two_steps_and_so_are_drags_of_two_weights(session):
    session.do(Move(1, 0.16))
    session.do(Move(1, 0.20, joins=True))
    session.do(Move(1, 0.21))
    session.do(Move(2, 0.60, joins=True))
    places = []
    while session.can_undo:
        session.do(Undo())
        places.append((session.state.weight(1).at_m, session.state.weight(2).at_m))
    assert places == [(0.21, 0.72), (0.20, 0.72), (0.15, 0.72)]


def test_a_drag_back_to_where_it_began_leaves_no_step_and_may_go_on(session):
    first = session.state
    session.do(MoveReference(0.1))
    session.do(MoveReference(0.0, joins=True))
    assert not session.can_undo
    session.do(MoveReference(0.3, joins=True))
    assert session.can_undo
    session.do(Undo())
    assert session.state == first


def test_a_place_refused_in_the_middle_of_a_drag_does_not_break_it_in_two(session):
    session.do(Move(1, 0.1))
    assert session.do(Move(1, -0.2, joins=True)) is not None
    session.do(Move(1, 0.05, joins=True))
    session.do(Undo())
    assert session.state == workshop_bar()


def test_undo_after_letting_go_first_holds_the_bar_and_then_takes_back_the_change(session):
    first = session.state
    session.do(Hang(0.5, 0.9))
    hung = session.state
    session.do(LetGo())
    session.advance(40_000_000)
    session.do(Undo())
    assert session.state == hung
    session.do(Undo())
    assert session.state == first


def test_letting_go_and_holding_are_no_steps_and_keep_what_can_be_made_again(session):
    session.do(Hang(0.5, 0.9))
    session.do(Undo())
    session.do(LetGo())
    session.do(HoldStill())
    assert not session.can_undo
    assert session.do(Redo()) is None
    assert len(session.state.weights) == 4


def test_a_new_change_forgets_what_could_be_made_again(session):
    session.do(Hang(0.5, 0.9))
    session.do(Undo())
    session.do(Hang(0.2, 0.1))
    assert not session.can_redo


def test_what_was_looked_at_while_it_tipped_is_taken_back_with_the_bar_held(session):
    session.do(LetGo())
    session.advance(40_000_000)
    session.do(SetView("all"))
    session.do(Undo())
    assert session.state.held
    session.do(Undo())
    assert session.state == workshop_bar()


def test_an_equal_place_written_otherwise_leaves_not_a_bit_changed(session):
    session.do(MoveReference(0.2))
    session.do(MoveReference(-0.0, joins=True))
    assert str(session.state.reference_m) == "0.0"


def test_two_things_dragged_at_once_are_one_step():
    session = Session(workshop_bar())
    first = session.state
    # Two fingers by turns, each move joining the one before by the same finger.
    session.do(Move(1, 0.20))
    session.do(Move(2, 0.70))
    for step in range(1, 6):
        session.do(Move(1, 0.20 + step / 100, joins=True))
        session.do(Move(2, 0.70 - step / 100, joins=True))
    session.do(Undo())
    assert session.state == first
    assert not session.can_undo
    session.do(Redo())
    assert [weight.at_m for weight in session.state.weights[:2]] == pytest.approx([0.25, 0.65])


def test_two_things_dragged_one_after_the_other_are_two_steps():
    session = Session(workshop_bar())
    first = session.state
    session.do(Move(1, 0.20))
    session.do(Move(1, 0.25, joins=True))
    session.do(Move(2, 0.70))
    session.do(Move(2, 0.65, joins=True))
    session.do(Undo())
    assert [weight.at_m for weight in session.state.weights[:2]] == pytest.approx([0.25, 0.72])
    session.do(Undo())
    assert session.state == first


def test_a_drag_that_began_before_an_undo_begins_anew_after_it():
    session = Session(workshop_bar())
    session.do(Move(1, 0.20))
    session.do(Undo())
    session.do(Move(1, 0.30, joins=True))
    session.do(Undo())
    assert session.state == workshop_bar()
