"""Weights are weighed anew, copied and mirrored."""

import pytest

from lab.files import build_text
from lab.simulation import (
    Guess,
    HangingBar,
    Move,
    OpenBuild,
    Refused,
    Session,
    Undo,
    build_from_hanging_bar,
    workshop_bar,
)
from lab.simulation.part_commands import Copy, Reweigh, Tie, Untie


def _bar(session: Session) -> HangingBar:
    assert isinstance(session.state, HangingBar)
    return session.state


def test_a_weight_is_weighed_anew_and_taken_back():
    session = Session(workshop_bar())
    assert session.do(Reweigh(2, 0.123)) is None
    assert [weight.mass_kg for weight in _bar(session).weights] == [0.2, 0.123, 0.05]


@pytest.mark.parametrize("mass_kg", [0.0, -1.0, float("nan"), float("inf"), 1e9])
def test_what_is_no_weight_changes_nothing(mass_kg: float):
    session = Session(workshop_bar())
    assert isinstance(session.do(Reweigh(2, mass_kg)), Refused)
    assert session.state == workshop_bar()


def test_a_copy_hangs_beside_and_at_the_end_on_the_other_side():
    session = Session(workshop_bar())
    session.do(Copy(1))
    new = _bar(session).weights[-1]
    assert (new.name, new.mass_kg, new.id) == ("brass 200 (2)", 0.2, 4)
    assert new.at_m == pytest.approx(0.20, abs=1e-12)
    session.do(Copy(3))
    assert _bar(session).weights[-1].at_m == pytest.approx(0.95, abs=1e-12)


def test_mirrored_it_balances_itself_about_the_pivot():
    session = Session(workshop_bar())
    session.do(Copy(1, mirrored=True))
    # The pivot is at 40 cm, the weight at 15: its image hangs at 65.
    assert _bar(session).weights[-1].at_m == pytest.approx(0.65, abs=1e-12)


def test_a_mirror_beyond_the_bar_is_refused():
    session = Session(workshop_bar())
    assert isinstance(session.do(Copy(3, mirrored=True)), Refused)
    assert session.state == workshop_bar()


def _tied() -> Session:
    """Brass 100 at 72 cm and brass 50 at 90 cm, tied together."""
    session = Session(workshop_bar())
    assert session.do(Tie(2, 3)) is None
    return session


def test_tied_weights_move_as_one_and_stop_where_the_first_of_them_stops():
    session = _tied()
    assert session.do(Move(2, 0.60)) is None
    assert [weight.at_m for weight in _bar(session).weights] == pytest.approx([0.15, 0.60, 0.78], abs=1e-12)
    assert session.do(Move(2, 0.95)) is None
    # Brass 50 is 18 cm farther out and has come to the bar's end.
    assert [weight.at_m for weight in _bar(session).weights] == pytest.approx([0.15, 0.82, 1.0], abs=1e-12)


def test_tied_weights_are_copied_and_mirrored_as_one():
    session = _tied()
    session.do(Move(3, 0.60))
    session.do(Copy(2, mirrored=True))
    new = _bar(session).weights[-2:]
    assert [weight.name for weight in new] == ["group (2)/brass 100", "group (2)/brass 50"]
    assert [weight.at_m for weight in new] == pytest.approx([0.38, 0.20], abs=1e-12)
    session.do(Copy(2))
    assert [weight.at_m for weight in _bar(session).weights[-2:]] == pytest.approx([0.47, 0.65], abs=1e-12)


def test_tying_keeps_the_guess_and_is_taken_back():
    session = Session(workshop_bar())
    session.do(Guess("left"))
    session.do(Tie(1, 2))
    assert _bar(session).guess == "left"
    session.do(Undo())
    session.do(Undo())
    assert session.state == workshop_bar()


def test_a_weight_that_is_loosened_moves_alone():
    session = _tied()
    session.do(Untie(2))
    session.do(Move(2, 0.5))
    assert [(weight.name, weight.at_m) for weight in _bar(session).weights[1:]] == [
        ("brass 100", 0.5),
        ("brass 50", 0.9),
    ]


def test_what_is_tied_is_a_group_in_the_file_and_tied_again_when_opened():
    session = _tied()
    text = build_text(build_from_hanging_bar(_bar(session)))
    assert 'name = "group"' in text
    again = Session(workshop_bar())
    assert again.do(OpenBuild(text)) is None
    assert _bar(again) == _bar(session)
