"""Doubt of the balance point."""

from math import hypot

import pytest

from lab.mechanics import Part, balance_point_doubt_m


def test_no_doubt_stated_is_no_answer() -> None:
    assert balance_point_doubt_m([Part("pole", 1.0, (0.0, 0.0, 0.0))]) is None


def test_the_boat_hook_with_a_hook_in_doubt() -> None:
    parts = [
        Part("pole", 120.0, (0.20, 0.0, 0.0)),
        Part("hook", 480.0, (0.02, 0.0, 0.0), mass_doubt_kg=1.0, at_doubt_m=(0.001, 0.0, 0.0)),
    ]
    doubt = balance_point_doubt_m(parts)
    assert doubt is not None
    by_hand = hypot((0.02 - 0.056) / 600.0 * 1.0, 480.0 / 600.0 * 0.001)
    assert doubt[0] == pytest.approx(by_hand, abs=1e-15)
    assert doubt[1:] == (0.0, 0.0)


def test_one_ruler_shifts_all_alike_and_independent_ones_less() -> None:
    def build(set_name: str | None) -> list[Part]:
        return [
            Part(f"w{n}", 1.0, (0.1 * n, 0.0, 0.0), at_doubt_m=(0.01, 0.0, 0.0), set_name=set_name) for n in range(4)
        ]

    together, apart = balance_point_doubt_m(build("ruler")), balance_point_doubt_m(build(None))
    assert together is not None
    assert apart is not None
    assert together[0] == pytest.approx(0.01)
    assert apart[0] == pytest.approx(0.005)


def test_a_scale_that_reads_all_masses_too_high_in_one_ratio_moves_nothing() -> None:
    parts = [
        Part(f"w{n}", 1.0 + n, (0.3 * n, 0.0, 0.0), mass_doubt_kg=0.01 * (1.0 + n), set_name="scale") for n in range(3)
    ]
    doubt = balance_point_doubt_m(parts)
    assert doubt is not None
    assert doubt[0] == pytest.approx(0.0, abs=1e-16)


def test_weights_and_places_of_one_set_do_not_go_together() -> None:
    part = Part("w", 1.0, (1.0, 0.0, 0.0), mass_doubt_kg=0.1, at_doubt_m=(0.1, 0.0, 0.0), set_name="s")
    other = Part("o", 1.0, (-1.0, 0.0, 0.0))
    doubt = balance_point_doubt_m([part, other])
    assert doubt is not None
    assert doubt[0] == pytest.approx(hypot(0.05, 0.05))


def test_a_cut_out_in_a_set_errs_the_other_way() -> None:
    plate = Part("plate", 2.0, (0.0, 0.0, 0.0))
    left = Part("left", 0.5, (-1.0, 0.0, 0.0), mass_doubt_kg=0.1, set_name="scale")
    hole = Part("hole", 0.5, (-1.0, 0.0, 0.0), mass_doubt_kg=0.1, set_name="scale", cut=True)
    doubt = balance_point_doubt_m([plate, left, hole])
    assert doubt is not None
    assert doubt[0] == pytest.approx(0.0, abs=1e-16)
