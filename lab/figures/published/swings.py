"""Inertia and swinging: washers, discs, rods and pendulums."""

from math import pi, radians, sqrt

from lab.figures.published.builds import about_across, balance, bob, hanging_rod, period_s
from lab.figures.published.check_values import CheckValue, Number
from lab.mechanics import Cylinder, Part, Pivot, Rod, Swing, pivoted, swing_tick

CENTRE = (0.0, 0.0, 0.0)


def _u16() -> list[Number]:
    """Wrong in print: the inputs give 4.65, not 4.64."""
    return [Number(balance((5.97e24, 0.0), (7.36e22, 3.82e8)) / 1e6, 4.64, 0.000005, right=4.65206)]


def _u17() -> list[Number]:
    places = (-0.25, -0.15, -0.05, 0.05, 0.15, 0.25)
    washers = [Part(f"washer {x}", 0.020, (x, 0.0, 0.0)) for x in places]
    outer = [part for part in washers if abs(part.at_m[0]) > 0.1]
    return [Number(about_across(*washers), 0.0035, 5e-5), Number(about_across(*outer), 0.0034, 5e-5)]


def _u18() -> list[Number]:
    disc = Part("disc", 500.0, CENTRE, Cylinder(2.0, 0.1, axis="across"))
    return [Number(about_across(disc, Part("child", 25.0, (1.0, 0.0, 0.0))), 1025, 0.5)]


def _u20() -> list[Number]:
    rod = Part("rod", 1.0, (0.5, 0.0, 0.0), Rod(1.0))
    slices = [Part(f"slice {n}", 1e-4, ((n + 0.5) * 1e-4, 0.0, 0.0)) for n in range(10_000)]
    # Ten thousand points leave out their own inertia, (10⁻⁴)² / 12.
    return [
        Number(about_across(rod, at_m=1 / 6), 7 / 36, 1e-12),
        Number(about_across(*slices, at_m=1 / 6), 7 / 36, 1e-8),
    ]


def _u21() -> list[Number]:
    pin = Pivot(0.0, stop_rad=radians(90.0))
    body, swing, fastest = pivoted([hanging_rod(0.30, 0.0)], pin), Swing(radians(30.0)), 0.0
    for _ in range(200):
        swing = swing_tick(body, pin, swing)
        fastest = max(fastest, abs(swing.rate_rad_s))
    return [Number(fastest, 3.6, 0.05)]


def _c11() -> list[Number]:
    disc = Part("disc", 50.0, CENTRE, Cylinder(1.50, 0.1, axis="across"))
    alone, both = about_across(disc), about_across(disc, Part("child", 18.0, (1.25, 0.0, 0.0)))
    # 250 N at the rim; 84.375 lies on the rounding edge.
    return [
        Number(alone, 56.25, 0.005),
        Number(both, 84.38, 0.0051),
        Number(250 * 1.50 / alone, 6.67, 0.005),
        Number(250 * 1.50 / both, 4.44, 0.005),
    ]


def _gravity_m_s2(length_m: float, period: float) -> float:
    return (period_s(bob(length_m), gravity_m_s2=1.0) / period) ** 2


def _length_m(period: float, *, gravity_m_s2: float) -> float:
    return (period / period_s(bob(1.0), gravity_m_s2=gravity_m_s2)) ** 2


def _p01() -> list[Number]:
    return [Number(_gravity_m_s2(0.75000, 1.7357), 9.8281, 5e-5)]


def _p03() -> list[Number]:
    """The book cuts 4.737 to 4.73, hence 0.01."""
    rod = Part("rod", 4.00, CENTRE, Rod(0.30))
    return [Number(about_across(rod) * (2.0 * pi / 0.50) ** 2, 4.73, 0.01)]


def _p04() -> list[Number]:
    length = _length_m(1.00, gravity_m_s2=9.80)
    return [
        Number(100.0 * length, 24.8, 0.05),
        Number(period_s(bob(length), gravity_m_s2=9.80), 1.00, 1e-9),
        Number(period_s(bob(4.00), gravity_m_s2=9.80), 4.01, 0.005),
    ]


def _p05() -> list[Number]:
    """Printed in seconds; it is hertz."""
    return [Number(1.0 / period_s(bob(0.100), gravity_m_s2=9.80), 1.58, 0.005)]


def _p06() -> list[Number]:
    return [Number(_gravity_m_s2(_length_m(2.00000, gravity_m_s2=9.80), 1.99796), 9.82002, 1e-5)]


def _p07() -> list[Number]:
    carried = _length_m(3.00000, gravity_m_s2=9.79)
    return [
        Number(100.0 * _length_m(0.500, gravity_m_s2=9.80), 6.21, 0.005),
        Number(period_s(bob(1.00), gravity_m_s2=9.80), 2.01, 0.005),
        Number(1.0 / period_s(bob(0.0500), gravity_m_s2=9.80), 2.23, 0.005),
        Number(period_s(bob(carried), gravity_m_s2=9.82), 2.99541, 1e-5),
    ]


def _p08() -> list[Number]:
    """A metre stick from one end, and from a sixth of its length: beside 2π √(2L/3g) and 2π √(7L/12g)."""
    end = period_s(hanging_rod(1.0, 0.0), gravity_m_s2=9.80)
    sixth = period_s(hanging_rod(1.0, 1.0 / 6.0), gravity_m_s2=9.80)
    return [
        Number(end, 2.0 * pi * sqrt(2.0 / 3.0 / 9.80), 1e-12),
        Number(end, 1.64, 0.005),
        Number(sixth, 2.0 * pi * sqrt(7.0 / 12.0 / 9.80), 1e-12),
        Number(sixth, 1.53, 0.005),
    ]


SWINGS = (
    CheckValue("U16", "S-17", "seen", _u16),
    CheckValue("U17", "S-17", "seen", _u17),
    CheckValue("U18", "S-17", "seen", _u18),
    CheckValue("U20", "S-17", "seen", _u20),
    CheckValue("U21", "S-17", "seen", _u21),
    CheckValue("C11", "S-18", "seen", _c11),
    CheckValue("P01", "S-05", "seen", _p01),
    CheckValue("P03", "S-05", "seen", _p03),
    CheckValue("P04", "S-05", "seen", _p04),
    CheckValue("P05", "S-05", "seen", _p05),
    CheckValue("P06", "S-05", "seen", _p06),
    CheckValue("P07", "S-18", "seen", _p07),
    CheckValue("P08", "S-05", "ours", _p08),
)
