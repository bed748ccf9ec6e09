"""Weights are weighed anew, copied and mirrored."""

import pytest

from lab.simulation import HangingBar, Refused, Session, workshop_bar
from lab.simulation.part_commands import Copy, Reweigh


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
