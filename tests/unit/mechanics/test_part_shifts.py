"""Moving and loading: w d = W times the shift, both ways; what cannot be is refused or has no answer."""

import pytest

from lab.mechanics import (
    MechanicsError,
    Part,
    balance_shift_m,
    loading_shift_m,
    moment_sum,
    move_m,
    moved_mass_kg,
    with_part_moved,
)

POLE = [Part("pole", 0.12, (0.2, 0.0, 0.0)), Part("hook", 0.48, (0.02, 0.0, 0.01))]


def test_a_moved_part_takes_the_balance_point_with_it_by_its_share_of_the_whole() -> None:
    before = moment_sum(POLE).balance_point_m
    after = moment_sum(with_part_moved(POLE, "hook", (0.05, -0.01, 0.1))).balance_point_m
    for axis, by in enumerate((0.05, -0.01, 0.1)):
        # Sums of two terms of some 0.1: round-off of a few 1e-17.
        expected = balance_shift_m(mass_kg=0.48, by_m=by, whole_kg=0.60)
        assert after[axis] - before[axis] == pytest.approx(expected, abs=1e-15)


def test_the_same_law_gives_the_move_and_the_mass() -> None:
    shift = balance_shift_m(mass_kg=0.2, by_m=-0.3, whole_kg=1.5)
    assert shift == pytest.approx(-0.04, rel=1e-15)
    assert move_m(mass_kg=0.2, balance_shift_m=shift, whole_kg=1.5) == pytest.approx(-0.3, rel=1e-15)
    assert moved_mass_kg(by_m=-0.3, balance_shift_m=shift, whole_kg=1.5) == pytest.approx(0.2, rel=1e-15)


@pytest.mark.parametrize(
    ("by_m", "shift_m"), [(0.0, 0.1), (-0.3, 0.1), (0.3, -0.1), (0.1, 0.11)], ids=["no move", "back", "on", "too short"]
)
def test_no_mass_does_it_where_the_move_is_none_or_the_other_way_or_too_short(by_m: float, shift_m: float) -> None:
    assert moved_mass_kg(by_m=by_m, balance_shift_m=shift_m, whole_kg=2.0) is None


def test_no_shift_needs_no_mass() -> None:
    assert moved_mass_kg(by_m=0.0, balance_shift_m=0.0, whole_kg=2.0) == 0.0


def test_loading_and_taking_away_again_comes_back() -> None:
    on = loading_shift_m(mass_kg=0.5, at_m=0.9, whole_kg=1.5, balance_m=0.3)
    off = loading_shift_m(mass_kg=-0.5, at_m=0.9, whole_kg=2.0, balance_m=0.3 + on)
    assert on == pytest.approx(0.15, rel=1e-14)
    assert on + off == pytest.approx(0.0, abs=1e-15)


def test_what_the_law_cannot_use_is_refused_by_name() -> None:
    with pytest.raises(MechanicsError, match=r"mass moved is 3\.0 kg; it must be at most the whole, 2\.0 kg"):
        balance_shift_m(mass_kg=3.0, by_m=0.1, whole_kg=2.0)
    with pytest.raises(MechanicsError, match=r"mass moved is 0\.0 kg; it must be a finite number above 0"):
        move_m(mass_kg=0.0, balance_shift_m=0.1, whole_kg=2.0)
    with pytest.raises(MechanicsError, match="move is nan m"):
        balance_shift_m(mass_kg=1.0, by_m=float("nan"), whole_kg=2.0)
    with pytest.raises(MechanicsError, match=r"2\.0 kg are taken from 2\.0 kg; something must be left"):
        loading_shift_m(mass_kg=-2.0, at_m=0.0, whole_kg=2.0, balance_m=0.0)
    with pytest.raises(MechanicsError, match="there is no part 'net'; there are pole, hook"):
        with_part_moved(POLE, "net", (0.1, 0.0, 0.0))
