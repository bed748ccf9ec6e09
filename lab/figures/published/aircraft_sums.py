"""Aircraft weighed and loaded: moment sums, data lines, shifts, ballast, mean chord, fuel."""

from lab.figures.published.builds import GALLON_M3, LB_GALLON, LB_KG, balance, totals_lb_in
from lab.figures.published.check_values import CheckValue, Number
from lab.mechanics import (
    Burn,
    CannotBeDone,
    Part,
    Surface,
    Tank,
    balance_path,
    balance_shift_m,
    ballast_kg,
    loading_shift_m,
    mean_chord_percent,
    move_m,
    moved_mass_kg,
    tank_course,
)


def _tank_lb(gallons: float, lb_gallon: float) -> float:
    tank = Tank(
        name="tank",
        at_m=(0.0, 0.0, 0.0),
        capacity_m3=gallons * GALLON_M3,
        contents_m3=gallons * GALLON_M3,
        density_kg_m3=lb_gallon * LB_GALLON,
    )
    return tank.mass_kg / LB_KG


def _f01() -> list[Number]:
    weight, moment, at = totals_lb_in((1169, 10.6), (17, -49), (170, 16), (83, 22))
    return [Number(weight, 1439, 0.5), Number(moment, 16104, 1.0), Number(at, 11.2, 0.05)]


def _f02() -> list[Number]:
    weight, moment, at = totals_lb_in((1169, 10.6), (17, -49), (170, 16), (340, 48), (240, 22), (100, 75.5))
    return [Number(weight, 2036, 0.5), Number(moment, 43428, 1.0), Number(at, 21.3, 0.05)]


def _f03() -> list[Number]:
    """Wrong in print: 38 466 / 2100 is 18.3, not 18.6."""
    weight, moment, at = totals_lb_in((1169, 10.6), (17, -49), (170, 16), (170, 16), (340, 48), (234, 22))
    return [
        Number(weight, 2100, 0.5),
        Number(moment, 38466, 1.0),
        Number(at, 18.6, 0.00005, right=18.3173),
    ]


BAGGAGE = ((1169, 10.6), (17, -49), (170, 16), (170, 48), (170, 16), (100, 75.5))


def _f04() -> list[Number]:
    weight, moment, at = totals_lb_in(*BAGGAGE, (240, 22))
    return [Number(weight, 2036, 0.5), Number(moment, 37988, 1.0), Number(at, 18.7, 0.05)]


def _f05() -> list[Number]:
    """A twelfth of a gallon for each horsepower; 82.5 is printed as 83."""
    return [Number(165 / 12, 13.75, 0.005), Number(_tank_lb(165 / 12, 6.0), 83, 0.5)]


def _f06() -> list[Number]:
    """F04 while its fuel burns down: the path of the balance point beside two sums.  Travel -0.28 is ours."""
    start, end = balance(*BAGGAGE, (240, 22)), balance(*BAGGAGE, (83, 22))
    fuel = Tank(
        name="fuel", at_m=(22.0, 0.0, 0.0), capacity_m3=240.0, contents_m3=240.0, density_kg_m3=1.0
    )  # in pounds and inches: a cubic metre of it weighs one
    course = tank_course([fuel], [Burn(rate_m3_s=1.0, tanks=("fuel",), for_s=157.0)])
    path = balance_path([Part(f"p{n}", w, (x, 0.0, 0.0)) for n, (w, x) in enumerate(BAGGAGE)], course)
    there = path.point_at(157.0).balance_point_m[0]
    return [
        Number(path.point_at(0.0).balance_point_m[0], 18.66, 0.005),
        Number(there, 18.38, 0.005),
        Number(there - start, end - start, 1e-6),
        Number(there - start, -0.28, 0.005),
    ]


def _f07() -> list[Number]:
    weight, _, at = totals_lb_in((645, 70), (635, 70), (222.5, -30), (-30 * 5.9, 95), (6, 98))
    return [Number(weight, 1331.5, 0.05), Number(at, 50.1, 0.05)]


def _f08() -> list[Number]:
    full = _tank_lb(100, 6.0)
    return [Number(full - _tank_lb(100, 5.9), 10, 0.5), Number(full - _tank_lb(100, 5.85), 15, 0.5)]


def _f12() -> list[Number]:
    by = loading_shift_m(mass_kg=140, at_m=150, whole_kg=6860, balance_m=80.0)
    return [Number(balance((6860, 80), (140, 150)), 81.4, 0.05), Number(80.0 + by, 81.4, 0.05)]


def _f13() -> list[Number]:
    by = loading_shift_m(mass_kg=-100, at_m=150, whole_kg=6100, balance_m=80.0)
    return [Number(balance((6100, 80), (-100, 150)), 78.8, 0.05), Number(by, -1.2, 0.05)]


def _f14() -> list[Number]:
    one, other = totals_lb_in((100, -50))[1], totals_lb_in((200, 25))[1]
    both = totals_lb_in((100, -50), (200, 25))[1]
    return [Number(one, -5000, 0.5), Number(other, 5000, 0.5), Number(both, 0, 0.5)]


def _f17() -> list[Number]:
    return [Number(balance((100, 0), (200, 80), (200, 100)), 72, 0.5)]


def _f18() -> list[Number]:
    after = balance((100, 0), (200, 80 - 55), (200, 100))
    by = move_m(mass_kg=200, balance_shift_m=50 - 72, whole_kg=500)
    shift = balance((100, 0), (200, 80), (200, 100)) - after
    return [Number(by, -55, 0.5), Number(after, 50, 0.5), Number(shift, 22, 0.5)]


def _f20() -> list[Number]:
    _, moment, at = totals_lb_in((1666, 128), (340, 50))
    return [Number(moment, 230248, 0.5), Number(at, 114.8, 0.05)]


def _f24() -> list[Number]:
    chord = Surface(name="chord", root_chord_m=62.0, tip_chord_m=62.0, span_m=300.0, at_m=(144.0, 0.0, 0.0))
    return [Number(mean_chord_percent([chord], 161.0), 27.4, 0.05)]


def _f25() -> list[Number]:
    found = ballast_kg(whole_kg=1876, now_m=32.2, target_m=33.0, at_m=228.0)
    if isinstance(found, CannotBeDone):
        raise ArithmeticError(found.why)
    return [Number(found, 7.7, 0.05), Number(balance((1876, 32.2), (found, 228)), 33.0, 1e-6)]


def _f27() -> list[Number]:
    old = (2886, 101673.78 / 2886)
    new = balance(old, (-30, 71), (97, 71), (20, 71), (30, 94))
    return [
        Number(balance(old), 35.23, 0.005),
        Number(new, 36.85, 0.005),
        Number(new - balance(old), 1.62, 0.005),
    ]


def _f31() -> list[Number]:
    """The page cuts 81.156 to 81.15, hence 0.01."""
    old = (945, 78000.2 / 945)
    new = balance(old, (35, 43.8))
    return [Number(new, 81.15, 0.01), Number(balance(old) - new, 1.38, 0.005)]


def _f34() -> list[Number]:
    found = moved_mass_kg(by_m=2.9, balance_shift_m=0.1, whole_kg=6603)
    if found is None:
        raise ArithmeticError("no mass does it")
    rest = 6603 - found
    after = balance((rest, 2.8), (found, 2.8 + 2.9))
    return [Number(found, 227.7, 0.05), Number(found, 228, 0.5), Number(after, 2.9, 1e-9)]


def _f35() -> list[Number]:
    at = balance((2 * 500, 0), (4 * 6000, 10))
    return [Number(at, 9.6, 0.05), Number(10 - at, 0.4, 0.05)]


def _f37() -> list[Number]:
    sums = balance((2350, 80), (100, 120)) - balance((2350, 80), (100, 70))
    return [Number(sums, 2.04, 0.005), Number(balance_shift_m(mass_kg=100, by_m=50, whole_kg=2450), 2.04, 0.005)]


def _f38() -> list[Number]:
    """A build with the totals that are given: 2055 in all, 193 193 in moment."""
    return [Number(balance((2054, 0), (1, 193193)), 94.01, 0.005)]


def _d02() -> list[Number]:
    return [Number(_tank_lb(9 / 4, 7.5), 17, 0.5)]


def _d03() -> list[Number]:
    return [Number(_tank_lb(40, 6.0), 240, 0.5), Number(_tank_lb(39, 6.0), 234, 0.5)]


AIRCRAFT = (
    CheckValue("F01", "S-10", "seen", _f01),
    CheckValue("F02", "S-10", "part", _f02),
    CheckValue("F03", "S-10", "seen", _f03),
    CheckValue("F04", "S-10", "seen", _f04),
    CheckValue("F05", "S-10", "seen", _f05),
    CheckValue("F06", "S-10", "ours", _f06),
    CheckValue("F07", "S-11", "part", _f07),
    CheckValue("F08", "S-11", "seen", _f08),
    CheckValue("F12", "S-12", "memory", _f12),
    CheckValue("F13", "S-12", "memory", _f13),
    CheckValue("F14", "S-03", "memory", _f14),
    CheckValue("F17", "S-03", "part", _f17),
    CheckValue("F18", "S-03", "part", _f18),
    CheckValue("F19", "S-13", "seen", lambda: [Number(-balance((340, -78), (2006 - 340, 0)), 13.2, 0.05)]),
    CheckValue("F20", "S-13", "part", _f20),
    CheckValue("F21", "S-13", "part", lambda: [Number(balance((1666, -75), (340, -75 - 78)), -88.2, 0.05)]),
    CheckValue("F22", "S-13", "memory", lambda: [Number(balance((67, 7.5 + 222), (1151, 7.5)), 19.7, 0.05)]),
    CheckValue("F23", "S-13", "memory", lambda: [Number(balance((67, 222 - 80), (1151, -80)), -67.8, 0.05)]),
    CheckValue("F24", "S-13", "memory", _f24),
    CheckValue("F25", "S-53", "part", _f25),
    CheckValue("F27", "S-14", "seen", _f27),
    CheckValue("F31", "S-14", "seen", _f31),
    CheckValue("F33", "S-15", "seen", lambda: [Number(balance((285, 0), (1465 + 1395, 92)), 83.7, 0.05)]),
    CheckValue("F34", "S-15", "seen", _f34),
    CheckValue("F35", "S-15", "seen", _f35),
    CheckValue("F37", "S-15", "seen", _f37),
    CheckValue("F38", "S-26", "seen", _f38),
    CheckValue("D02", "S-10", "seen", _d02),
    CheckValue("D03", "S-10", "seen", _d03),
)
