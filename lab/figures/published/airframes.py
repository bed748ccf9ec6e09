"""Neutral points and margins.  S05's usual band is compared with, no more."""

from math import sqrt

from lab.figures.published.builds import IN_M
from lab.figures.published.check_values import CheckValue, Number
from lab.mechanics import Surface, balance_for_margin_m, closed_neutral_share, neutral_point_m
from lab.mechanics.neutral_points import USUAL_MARGIN, closed_shift


def _s02() -> list[Number]:
    return [Number(-balance_for_margin_m(0.0, 5.0 * IN_M, 0.10) / IN_M, 0.5, 0.05)]


def _s03() -> list[Number]:
    """CL = 0.1 a + ..., CM0 = -0.02 a + ..., 1.5 m; the answers are ours from the printed inputs."""
    neutral = neutral_point_m(0.1, -0.02, 1.5)
    return [Number(neutral, 0.30, 1e-9), Number(balance_for_margin_m(neutral, 1.5, 0.04), 0.24, 1e-9)]


def _s04() -> list[Number]:
    """Aspects 10 and 5, tail volume 0.5: by the formula, and by whole surfaces, a tail two chords behind."""
    wing = Surface(name="wing", root_chord_m=1.0, tip_chord_m=1.0, span_m=10.0)
    chord = sqrt(0.5 / 2.0 * wing.area_m2 / 5.0)
    behind = (0.25 + 2.0 - chord / 4.0, 0.0, 0.0)
    tail = Surface(name="tail", root_chord_m=chord, tip_chord_m=chord, span_m=5.0 * chord, at_m=behind)
    return [
        Number(0.25 + closed_shift(10.0, 5.0, 0.5), 0.25 + 1.2 / 1.4 * (2.0 / 3.0) * 0.5, 1e-12),
        Number(closed_neutral_share([wing, tail]), 0.536, 0.0005),
    ]


def _s05() -> list[Number]:
    return [Number(USUAL_MARGIN[0], 0.05, 1e-9), Number(USUAL_MARGIN[1], 0.15, 1e-9)]


AIRFRAMES = (
    CheckValue("S02", "S-60", "seen", _s02),
    CheckValue("S03", "S-60", "ours", _s03),
    CheckValue("S04", "S-64", "memory", _s04),
    CheckValue("S05", "S-63", "part", _s05),
)
