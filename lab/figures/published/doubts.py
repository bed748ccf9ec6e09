"""Doubts added in quadrature, or straight where they go together."""

from math import hypot, sqrt

import numpy as np

from lab.figures.published.builds import balance
from lab.figures.published.check_values import CheckValue, Number
from lab.mechanics import Part, balance_point_doubt_m, balance_point_m

TRIALS = 60_000
SEED = 1_995


def added_doubt(*doubts: float, set_name: str | None = None) -> float:
    """The doubt of a sum of readings: of the mean place of as many equal parts, times their number.

    Raises ArithmeticError where no doubt is stated.
    """
    parts = [
        Part(f"reading {n}", 1.0, (float(n), 0.0, 0.0), at_doubt_m=(doubt, 0.0, 0.0), set_name=set_name)
        for n, doubt in enumerate(doubts)
    ]
    found = balance_point_doubt_m(parts)
    if found is None:
        raise ArithmeticError("no doubt is stated")
    return found[0] * len(doubts)


def _q01() -> list[Number]:
    """1003 nm² from the parts as they are rounded; the source prints 1002."""
    found = added_doubt(25, 9.7, 2.9, 16.6)
    length_mm = 2.0 * balance((1, 50.000623), (1, 215e-6))
    return [Number(length_mm, 50.000838, 5e-7), Number(found, 32, 0.5), Number(found**2, 1002, 1.5)]


def _q03() -> list[Number]:
    parts = [0.1] * 10
    return [Number(added_doubt(*parts, set_name="one"), 1.0, 0.05), Number(added_doubt(*parts), 0.32, 0.005)]


def _q04() -> list[Number]:
    """Two of the parts are half-widths, 15 and 10 mg, over √3; the last is twice the doubt, in grams."""
    whole = added_doubt(22.5, 8.66, 14.2, 5.77, 5.77)
    return [
        Number(whole, 29.1, 0.1),
        Number(2.0 * whole / 1000.0, 0.058, 0.0005),
        Number(15.0 / sqrt(3.0), 8.66, 0.005),
        Number(10.0 / sqrt(3.0), 5.77, 0.005),
    ]


def _q05() -> list[Number]:
    """In micrometres; the resolution's half-width over √3 is itself over √12."""
    found = added_doubt(0.33, 0.29, 0.25)
    return [
        Number(found, 0.51, 0.005),
        Number(1.0 / sqrt(12.0), 0.29, 0.005),
        Number(2.0 * found / 1000.0, 0.0010, 5e-5),
    ]


def _q11() -> list[Number]:
    """Three scales, each in doubt by a pound and a tenth of an inch, beside 60 000 random trials."""
    readings = ((645.0, 70.0), (635.0, 70.0), (222.5, -30.0))
    parts = [
        Part(f"scale {n}", weight, (at, 0.0, 0.0), mass_doubt_kg=1.0, at_doubt_m=(0.1, 0.0, 0.0))
        for n, (weight, at) in enumerate(readings)
    ]
    found = balance_point_doubt_m(parts)
    if found is None:
        raise ArithmeticError("no doubt is stated")
    random = np.random.default_rng(SEED)
    mass = np.array([weight for weight, _ in readings]) + random.standard_normal((TRIALS, 3))
    at = np.zeros((TRIALS, 3, 3))
    at[:, :, 0] = np.array([place for _, place in readings]) + 0.1 * random.standard_normal((TRIALS, 3))
    spread = float(balance_point_m(mass, at)[:, 0].std())
    by_hand = hypot(*((place - 55.1931) / 1502.5 for _, place in readings), *(w * 0.1 / 1502.5 for w, _ in readings))
    return [
        Number(balance(*readings), 55.19, 0.005),
        Number(found[0], 0.085, 0.0005),
        Number(found[0], by_hand, 1e-6),
        Number(found[0], spread, 0.001),
    ]


DOUBTS = (
    CheckValue("Q01", "S-19", "seen", _q01),
    CheckValue("Q02", "S-19", "part", lambda: [Number(added_doubt(5.8, 3.9, 6.7), 9.7, 0.05)]),
    CheckValue("Q03", "S-19", "memory", _q03),
    CheckValue("Q04", "S-20", "seen", _q04),
    CheckValue("Q05", "S-20", "seen", _q05),
    CheckValue("Q11", "S-02", "ours", _q11),
)
