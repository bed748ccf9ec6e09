"""The amounts that a text may name."""

from pathlib import Path

import pytest

from lab.lesson import ask, read_lesson
from lab.lesson.amounts import amounts_of

KINDS = Path(__file__).parent / "kinds"


def test_what_sits_beside_the_middle_names_how_far_whichever_side():
    scales = ask(read_lesson(KINDS / "three-scales.toml"), 0, seed=1)
    named = amounts_of(scales.task)
    # The hull lies 2 cm to the left, the camera 4 cm to the right.
    assert (named["hull.across"].value, named["camera.across"].value) == (0.02, 0.04)


def test_a_scale_beside_the_middle_names_how_far_and_all_of_it_where_it_balances():
    scales = ask(read_lesson(KINDS / "three-scales.toml"), 0, seed=1)
    named = amounts_of(scales.task)
    assert (named["left scale.across"].value, named["right scale.across"].value) == (0.20, 0.20)
    assert "nose scale.across" not in named
    # 900 g at 33 and 300 g at 10: 32 700 g cm, of 1200 g; to round-off.
    assert named["balance.at"].value == pytest.approx(0.2725, rel=1e-12)


def test_what_sits_in_the_middle_has_no_distance_from_it():
    hung = ask(read_lesson(KINDS / "hung-glider.toml"), 0, seed=1)
    assert "lead.across" not in amounts_of(hung.task)


def test_an_airframe_names_its_balance_and_its_neutral_point():
    glider = ask(read_lesson(KINDS / "steady-glider.toml"), 1, seed=1)
    named = amounts_of(glider.task)
    # 18 x 32 + 22 x 21 + 6 x 60 + 20 x 2 = 1438 g cm, of 66 g; the sum is exact but for round-off.
    assert named["balance.at"].value == pytest.approx(0.01 * 1438 / 66, rel=1e-12)
    # The closed estimate for this wing and tail is 22.5 cm; the lattice may differ by a twentieth of the chord, 0.5 cm.
    assert named["neutral.at"].value == pytest.approx(0.225, abs=0.0055)


def test_the_weight_of_all_of_it_has_a_name():
    scales = ask(read_lesson(KINDS / "three-scales.toml"), 0, seed=1)
    # 900 g and 300 g, to round-off.
    assert amounts_of(scales.task)["whole.weight"].value == pytest.approx(1.2, rel=1e-12)


def test_a_shift_names_where_it_balanced_before():
    moved = ask(read_lesson(KINDS / "moved-camera.toml"), 2, seed=1)
    # 500 g at 40 and 200 g at 70: 34 000 g cm, of 700 g; to round-off.
    assert amounts_of(moved.task)["balance.at"].value == pytest.approx(0.34 / 0.7, rel=1e-12)
