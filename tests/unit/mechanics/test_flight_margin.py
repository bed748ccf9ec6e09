"""What a balance point's place means in pitch, and how sure."""

from dataclasses import replace
from math import erf, hypot, sqrt

import pytest

from lab.mechanics import (
    MechanicsError,
    Surface,
    balance_for_margin_m,
    closed_neutral_share,
    neutral_point,
    neutral_point_m,
    pitch_margin,
)
from lab.mechanics.neutral_points import MODEL_DOUBT_SHARE, NEUTRAL_SHARE, closed_shift

WING = Surface(name="wing", root_chord_m=0.16, tip_chord_m=0.10, span_m=1.0)
TAIL = Surface(name="tail", root_chord_m=0.09, tip_chord_m=0.07, span_m=0.32, at_m=(0.52, 0.0, 0.0))
NEUTRAL = neutral_point([WING, TAIL])


def at(margin: float) -> float:
    return balance_for_margin_m(NEUTRAL.at_m, NEUTRAL.chord.length_m, margin)


@pytest.mark.parametrize(
    ("margin", "goes", "sureness"),
    [
        (0.15, "steady", "sure"),
        (0.04, "steady", "likely"),
        (0.02, "steady", "open"),
        (0.0, "neutral", "open"),
        (0.0049, "neutral", "open"),
        (-0.0051, "runs away", "open"),
        (-0.04, "runs away", "likely"),
        (-0.15, "runs away", "sure"),
    ],
)
def test_ahead_is_steady_behind_runs_away_and_the_doubt_says_how_sure(margin: float, goes: str, sureness: str) -> None:
    found = pitch_margin(NEUTRAL, at(margin))
    assert (found.goes, found.sureness) == (goes, sureness)
    assert found.margin == pytest.approx(margin, abs=1e-12)
    assert found.balance_share == pytest.approx(NEUTRAL.share - margin, abs=1e-12)


def test_a_doubtful_balance_point_makes_the_verdict_less_sure() -> None:
    doubt_m = 0.05 * NEUTRAL.chord.length_m
    plain, doubtful = pitch_margin(NEUTRAL, at(0.1)), pitch_margin(NEUTRAL, at(0.1), doubt_m)
    assert (plain.sureness, doubtful.sureness) == ("sure", "likely")
    assert doubtful.doubt == pytest.approx(hypot(MODEL_DOUBT_SHARE, 0.05), rel=1e-12)
    normal = (1.0 + erf((0.1 - NEUTRAL_SHARE) / (doubtful.doubt * sqrt(2.0)))) / 2.0
    assert doubtful.chance == pytest.approx(normal, rel=1e-12)


def test_the_three_chances_add_up_to_one() -> None:
    # Mirrored about 0: what a margin of 0.02 gives to steady, one of -0.02 gives to running away.
    assert pitch_margin(NEUTRAL, at(0.02)).chance == pytest.approx(pitch_margin(NEUTRAL, at(-0.02)).chance, rel=1e-9)
    assert pitch_margin(NEUTRAL, at(0.0)).chance == pytest.approx(erf(NEUTRAL_SHARE / MODEL_DOUBT_SHARE / sqrt(2.0)))


def test_what_cannot_be_answered_is_refused() -> None:
    with pytest.raises(MechanicsError, match="lift slope is 0; without added lift there is no neutral point"):
        neutral_point_m(0.0, -0.1, 0.2)
    with pytest.raises(MechanicsError, match=r"mean chord is 0\.0 m; it must be a finite number above 0"):
        neutral_point_m(5.0, -0.1, 0.0)
    with pytest.raises(MechanicsError, match=r"doubt of the balance point is -1\.0 m; .* 0 or above"):
        pitch_margin(NEUTRAL, 0.1, -1.0)
    with pytest.raises(MechanicsError, match="place along is nan m"):
        pitch_margin(NEUTRAL, float("nan"))
    with pytest.raises(MechanicsError, match=r"aspect ratio of the wing is 0\.0 ; it must be a finite number above 0"):
        closed_shift(0.0, 5.0, 0.5)


def test_the_teaching_formula_knows_tails_foreplanes_and_wings_alone() -> None:
    assert closed_neutral_share([WING]) == 0.25
    tail = closed_neutral_share([WING, TAIL])
    assert tail == NEUTRAL.closed_share > 0.25
    assert NEUTRAL.closed_at_m == pytest.approx(NEUTRAL.chord.along_m(tail))
    foreplane = replace(TAIL, name="foreplane", at_m=(-0.4, 0.0, 0.0))
    assert closed_neutral_share([WING, foreplane]) < 0.25
    fin = replace(TAIL, name="fin", vertical=True)
    assert closed_neutral_share([WING, TAIL, fin]) == tail
    # Ahead nothing is taken off for downwash.
    assert closed_shift(10.0, 5.0, -0.5) == pytest.approx(-1.2 / 1.4 * 0.5, rel=1e-12)
