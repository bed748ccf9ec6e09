"""Parts: what is kept, what is refused, and that the message says which part and what would do."""

from math import inf, nan

import numpy as np
import pytest

from lab.mechanics import MechanicsError, Part, Rod, moment_sum
from lab.mechanics.parts import inertia_array_kg_m2


def test_a_part_keeps_its_numbers_as_floats() -> None:
    part = Part("hook", 1, (2, 0, 0))
    assert part.mass_kg == 1.0
    assert isinstance(part.mass_kg, float)
    assert all(isinstance(value, float) for value in part.at_m)
    assert part.signed_mass_kg == 1.0


def test_a_cut_out_takes_mass_and_inertia_away() -> None:
    cut = Part("hole", 0.2, (0.0, 0.0, 0.0), Rod(1.0), cut=True)
    assert cut.signed_mass_kg == -0.2
    assert inertia_array_kg_m2(cut)[1, 1] == pytest.approx(-0.2 / 12)
    given = Part("hole", 0.2, (0.0, 0.0, 0.0), inertia_kg_m2=(1.0, 1.0, 1.0), cut=True)
    assert (inertia_array_kg_m2(given) == -np.eye(3)).all()


@pytest.mark.parametrize("mass", [0.0, -0.5, nan, inf])
def test_a_mass_that_is_not_above_nothing_is_refused_by_name(mass: float) -> None:
    with pytest.raises(MechanicsError, match=r"mass of part 'hook' is .* kg; it must be .* above 0"):
        Part("hook", mass, (0.0, 0.0, 0.0))


@pytest.mark.parametrize("at", [(nan, 0.0, 0.0), (0.0, inf, 0.0), (0.0, 0.0)])
def test_a_place_that_is_no_place_is_refused(at: tuple[float, ...]) -> None:
    with pytest.raises(MechanicsError, match="place of part 'hook'"):
        Part("hook", 1.0, at)  # type: ignore[arg-type]


def test_doubts_below_nothing_are_refused() -> None:
    with pytest.raises(MechanicsError, match="mass doubt of part 'hook'"):
        Part("hook", 1.0, (0.0, 0.0, 0.0), mass_doubt_kg=-0.1)
    with pytest.raises(MechanicsError, match="place doubt of part 'hook'"):
        Part("hook", 1.0, (0.0, 0.0, 0.0), at_doubt_m=(0.0, -0.1, 0.0))


def test_a_hold_that_is_neither_clamped_nor_hung_is_refused() -> None:
    with pytest.raises(MechanicsError, match="must be clamped or hung"):
        Part("hook", 1.0, (0.0, 0.0, 0.0), hold="glued")  # type: ignore[arg-type]


def test_inertia_by_numbers_goes_before_the_shape() -> None:
    part = Part("hook", 2.0, (0.0, 0.0, 0.0), Rod(1.0), inertia_kg_m2=(0.1, 0.2, 0.25))
    assert (np.diag(inertia_array_kg_m2(part)) == [0.1, 0.2, 0.25]).all()
    full = ((0.2, 0.01, 0.0), (0.01, 0.2, 0.0), (0.0, 0.0, 0.3))
    assert Part("hook", 2.0, (0.0, 0.0, 0.0), inertia_kg_m2=full).own_inertia_kg_m2 == full


@pytest.mark.parametrize(
    ("inertia", "what"),
    [
        ((1.0, 1.0), "shape"),
        ((nan, 1.0, 1.0), "finite"),
        (((1.0, 0.5, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)), "not symmetric"),
        ((-1.0, 1.0, 1.0), "principal values"),
        ((1.0, 1.0, 3.0), "principal values"),
    ],
)
def test_an_inertia_that_no_body_has_is_refused(inertia: object, what: str) -> None:
    with pytest.raises(MechanicsError, match=what):
        Part("hook", 1.0, (0.0, 0.0, 0.0), inertia_kg_m2=inertia)  # type: ignore[arg-type]


def test_a_name_used_twice_is_refused() -> None:
    twice = [Part("hook", 1.0, (0.0, 0.0, 0.0)), Part("hook", 2.0, (1.0, 0.0, 0.0))]
    with pytest.raises(MechanicsError, match="'hook' is used twice"):
        moment_sum(twice)


def test_nothing_at_all_and_more_cut_away_than_there_was_are_refused() -> None:
    with pytest.raises(MechanicsError, match="at least one"):
        moment_sum([])
    cut = [Part("pole", 1.0, (0.0, 0.0, 0.0)), Part("hole", 1.0, (1.0, 0.0, 0.0), cut=True)]
    with pytest.raises(MechanicsError, match=r"total mass is 0\.0 kg"):
        moment_sum(cut)


def test_sums_too_large_to_hold_are_refused_and_never_become_infinite() -> None:
    huge = [Part("one", 1e308, (1.0, 0.0, 0.0)), Part("two", 1e308, (1.0, 0.0, 0.0))]
    with pytest.raises(MechanicsError, match="too large"):
        moment_sum(huge)
    with pytest.raises(MechanicsError, match="too large"):
        moment_sum([Part("one", 1e200, (1e200, 0.0, 0.0))])
