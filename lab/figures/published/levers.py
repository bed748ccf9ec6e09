"""Levers, beams and ship's loads: moments about a fulcrum, two supports, heights."""

from math import radians, sin

from lab.figures.published.builds import balance, effort, height, moment, moment_sum_of, reactions, weights
from lab.figures.published.check_values import CheckValue, Number
from lab.mechanics import Pivot, turn_about, two_support_reactions_n


def _f40() -> list[Number]:
    wheel, hands = reactions((200, 1), first=0, second=4)
    return [Number(hands, 50, 0.5), Number(wheel + hands, 200, 1e-9)]


def _u05() -> list[Number]:
    """The plank is at the point of tipping where its far support carries nothing; a gram more tips it."""
    tips = effort((30, 4.2 - 3.0), arm=1.8)
    far, edge = reactions((30, 3.0), (tips, 6.0), first=0.0, second=4.2)
    over = two_support_reactions_n(weights((30, 3.0), (tips + 0.001, 6.0)), 0.0, 4.2)
    return [
        Number(tips, 20, 1e-9),
        Number(far, 0, 1e-9),
        Number(edge, 50, 1e-9),
        Number(float(over is None), 1.0, 0.5),
    ]


def _wheelbarrow(mass_kg: float, load_m: float) -> tuple[float, float, float]:
    """Wheel at zero, hands at 1.02 m on the load's side.  Lift N, ground N, load over lift; their g is 9.80."""
    lifted = effort((mass_kg, load_m), arm=1.02)
    return lifted * 9.80, (mass_kg - lifted) * 9.80, mass_kg / lifted


def _c01() -> list[Number]:
    total = moment_sum_of((26.0, -1.6), (32.0, 1.3))
    return [Number(moment((26.0, 1.60)) / 32.0, 1.30, 0.005), Number(total.mass_kg * 9.80, 568, 0.5)]


def _c04() -> list[Number]:
    lift, ground, gain = _wheelbarrow(45.0, 0.0750)
    return [Number(lift, 32.4, 0.05), Number(ground, 409, 0.5), Number(gain, 13.6, 0.05)]


def _c05() -> list[Number]:
    lift, ground, gain = _wheelbarrow(55.0, 0.0550)
    return [Number(gain, 18.5, 0.05), Number(lift, 29.1, 0.05), Number(ground, 510, 0.5)]


def _c06() -> list[Number]:
    pull = effort((1250, 1.8), arm=45)
    return [Number(1250 / pull, 25, 0.5), Number(pull, 50, 0.5)]


def _c09() -> list[Number]:
    left, other = reactions((10, 2.5), first=0.0, second=25 / 7)
    return [Number(left, 3, 1e-12), Number(other, 7, 1e-12)]


def _c10() -> list[Number]:
    near, far = reactions((1000, 5), first=0, second=20)
    half, other = reactions((1000, 10), first=0, second=20)
    return [
        Number(near * 9.8, 7350, 0.5),
        Number(far * 9.8, 2450, 0.5),
        Number(half * 9.8, 4900, 0.5),
        Number(other * 9.8, 4900, 0.5),
    ]


def _scale_classes() -> dict[str, int]:
    """Which side drops in all 5⁴ cases of a weight and an arm of 1 to 5 on each side."""
    seen = {"left": 0, "level": 0, "right": 0}
    five = range(1, 6)
    for case in ((a, b, c, d) for a in five for b in five for c in five for d in five):
        left_weight, left_arm, right_weight, right_arm = case
        build = weights((0.01 * left_weight, -0.1 * left_arm), (0.01 * right_weight, 0.1 * right_arm))
        seen[turn_about(build, Pivot(0.0)).goes] += 1
    return seen


def _b01() -> list[Number]:
    seen = _scale_classes()
    return [
        Number(sum(seen.values()), 625, 0.5),
        Number(seen["left"], 288, 0.5),
        Number(seen["level"], 49, 0.5),
        Number(seen["right"], 288, 0.5),
    ]


def _b02() -> list[Number]:
    share = {name: 100.0 * count / 625 for name, count in _scale_classes().items()}
    return [
        Number(share["left"], 46.08, 0.005),
        Number(share["level"], 7.84, 0.005),
        Number(share["right"], 46.08, 0.005),
    ]


def _u23() -> list[Number]:
    """Net torque of four forces, each by its arm across it; anticlockwise is positive, so arms go to the left."""
    across = (-4.0, 3.0, -5.0 * sin(radians(53.0)), -1.0 * sin(radians(30.0)))
    return [Number(-moment(*zip((40, 20, 30, 20), across, strict=True)), 230, 0.5)]


def _u24() -> list[Number]:
    """46.75 lies on the rounding edge."""
    return [Number(moment((55.0, 0.850)), 46.8, 0.05), Number(effort((17.5, 0.600), arm=0.450), 23.3, 0.05)]


def _n01() -> list[Number]:
    three = effort((1, 12), arm=4)
    return [Number(three, 3, 1e-9), Number(moment((1, 12)), 12, 1e-9), Number(moment((three, 4)), 12, 1e-9)]


def _n02() -> list[Number]:
    corner = effort((150, 6), arm=2)
    near, far = reactions((900, 0.5), first=0, second=1)
    return [Number(corner, 450, 0.5), Number(near, 450, 0.5), Number(near + far, 900, 0.5)]


def _n03() -> list[Number]:
    far, near = reactions((105, 4), first=0, second=6)
    return [Number(far, 35, 0.5), Number(near, 70, 0.5)]


def _n04() -> list[Number]:
    """Eight bars share the capstan's 747, as it is rounded in print."""
    capstan = effort((4480, 1), arm=6)
    return [
        Number(effort((100, 18), arm=6), 300, 0.5),
        Number(capstan, 747, 0.5),
        Number(round(capstan) / 8, 93.375, 0.0005),
    ]


def _n08() -> list[Number]:
    both = moment_sum_of((10, 2), (5, 8))
    three = moment_sum_of((10, 2), (5, 8), (10, 7))
    return [Number(both.balance_point_m[0], 4, 0.05), Number(three.moment_kg_m[0], 130, 0.5)]


def _n11() -> list[Number]:
    table = moment_sum_of((500, 150), (67, 88), (125, 23), (370, -100), (150, -152))
    moments = [row.moment_kg_m[0] for row in table.rows]
    net = sum(moments)
    return [
        Number(sum(each for each in moments if each > 0), 83771, 0.5),
        Number(-sum(each for each in moments if each < 0), 59800, 0.5),
        Number(net, 23971, 0.5),
        Number(net / 1423, 16.8, 0.05),
    ]


def _n15() -> list[Number]:
    """A build with the totals that are given: 7000 in all, 44 330 in moment."""
    up = height((6999, 0), (1, 44330))
    return [Number(up, 6.33, 0.005), Number(7.33 - up, 1.00, 0.005)]


def _n16() -> list[Number]:
    return [
        Number(height((8800, 6.2), (200, 1.7)), 6.1, 0.05),
        Number(height((12600, 6), (-600, 11)), 5.75, 0.005),
        Number(height((9000, 10.5), (-300, 5), (300, 14)), 10.8, 0.05),
    ]


def _n18() -> list[Number]:
    return [
        Number(balance((100, 0), (60, 33)), 12.375, 0.0005),
        Number(balance((75, 0), (45, 12)), 4.5, 0.05),
    ]


LEVERS = (
    CheckValue("F39", "S-16", "seen", lambda: [Number(effort((50, 1), arm=5), 10, 0.5)]),
    CheckValue("F40", "S-16", "seen", _f40),
    CheckValue("F41", "S-16", "part", lambda: [Number(effort((10, 18), arm=1), 180, 0.5)]),
    CheckValue("U02", "S-17", "seen", lambda: [Number(balance((52, 2.5), (48, 0)), 1.3, 0.05)]),
    CheckValue("U03", "S-17", "seen", lambda: [Number(effort((40.0, 4.0), arm=2.0), 80.0, 0.05)]),
    CheckValue("U05", "S-17", "ours", _u05),
    CheckValue("U23", "S-17", "seen", _u23),
    CheckValue("U24", "S-17", "seen", _u24),
    CheckValue("C01", "S-18", "seen", _c01),
    CheckValue("C04", "S-18", "seen", _c04),
    CheckValue("C05", "S-18", "seen", _c05),
    CheckValue("C06", "S-18", "seen", _c06),
    CheckValue("C09", "S-08", "part", _c09),
    CheckValue("C10", "S-08", "seen", _c10),
    CheckValue("B01", "S-21", "seen", _b01),
    CheckValue("B02", "S-21", "seen", _b02),
    CheckValue("N01", "S-22", "seen", _n01),
    CheckValue("N02", "S-22", "seen", _n02),
    CheckValue("N03", "S-22", "seen", _n03),
    CheckValue("N04", "S-22", "seen", _n04),
    CheckValue("N08", "S-22", "seen", _n08),
    CheckValue("N11", "S-22", "seen", _n11),
    CheckValue("N15", "S-27", "seen", _n15),
    CheckValue("N16", "S-23", "seen", _n16),
    CheckValue("N17", "S-23", "seen", lambda: [Number(height((9900, 4), (100, 15)), 4.11, 0.005)]),
    CheckValue("N18", "S-24", "seen", _n18),
)
