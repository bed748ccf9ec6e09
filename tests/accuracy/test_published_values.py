"""Published answers, each beside its source: we get what the book prints, to half its last digit.

Where a book is wrong in print, the row is kept as a trap: we get the right value and not the printed one.
"""

from collections.abc import Callable
from dataclasses import dataclass
from math import radians

import pytest

from lab.mechanics import (
    STANDARD_GRAVITY_M_S2,
    Cylinder,
    Part,
    Pivot,
    Rectangle,
    Rod,
    Swing,
    balance_point_doubt_m,
    inertia_about_kg_m2,
    moment_sum,
    pivoted,
    small_swing_period_s,
    swing_tick,
    turn_about,
    two_support_reactions_n,
)

LB_KG, IN_M = 0.45359237, 0.0254
FT_M = 12 * IN_M
LBF_N = LB_KG * STANDARD_GRAVITY_M_S2


@dataclass(frozen=True)
class Published:
    """id; source (in sources.toml); mark; ((ours, printed, half its last digit), ...)."""

    id: str
    source: str
    mark: str
    numbers: Callable[[], list[tuple[float, float, float]]]


def weights(*pairs: tuple[float, float], mass_kg: float = LB_KG, length_m: float = IN_M) -> list[Part]:
    """Parts from (weight, arm); a negative weight is one taken away."""
    return [
        Part(f"part {number}", abs(weight) * mass_kg, (arm * length_m, 0.0, 0.0), cut=weight < 0)
        for number, (weight, arm) in enumerate(pairs)
    ]


def totals_lb_in(*pairs: tuple[float, float]) -> tuple[float, float, float]:
    """Weight lb, moment lb in, balance point in."""
    total = moment_sum(weights(*pairs))
    return (
        total.mass_kg / LB_KG,
        total.moment_kg_m[0] / (LB_KG * IN_M),
        total.balance_point_m[0] / IN_M,
    )


def balance(*pairs: tuple[float, float]) -> float:
    """Balance point in the pairs' own length."""
    return moment_sum(weights(*pairs, mass_kg=1.0, length_m=1.0)).balance_point_m[0]


def effort(load: float, load_arm: float, effort_arm: float) -> float:
    """What holds a load level on the far side of a fulcrum, by the moment about it."""
    held = turn_about(weights((load, -load_arm), mass_kg=1.0, length_m=1.0), Pivot(0.0))
    answer = held.moment_kg_m / effort_arm
    both = weights((load, -load_arm), (answer, effort_arm), mass_kg=1.0, length_m=1.0)
    assert turn_about(both, Pivot(0.0)).goes == "level"
    return answer


def summed_sets(*pairs: tuple[float, float], first: float, second: float) -> tuple[float, float]:
    """Reactions at two supports in the weights' own unit."""
    found = two_support_reactions_n(weights(*pairs, mass_kg=1.0, length_m=1.0), first, second)
    assert found is not None
    return found[0] / STANDARD_GRAVITY_M_S2, found[1] / STANDARD_GRAVITY_M_S2


def added_doubt(*doubts: float, set_name: str | None = None) -> float:
    """The doubt of a sum of readings: of the mean place of as many equal parts, times their number."""
    parts = [
        Part(f"reading {n}", 1.0, (float(n), 0.0, 0.0), at_doubt_m=(doubt, 0.0, 0.0), set_name=set_name)
        for n, doubt in enumerate(doubts)
    ]
    found = balance_point_doubt_m(parts)
    assert found is not None
    return found[0] * len(doubts)


def about_y(parts: list[Part], at: tuple[float, float, float] = (0.0, 0.0, 0.0)) -> float:
    return float(inertia_about_kg_m2(parts, at)[1, 1])


def simple_period(length_m: float) -> float:
    period = small_swing_period_s(pivoted([Part("bob", 1.0, (0.0, 0.0, -length_m))], Pivot(0.0)))
    assert period is not None
    return period


def rod_speed_at_bottom() -> float:
    rod = [Part("rod", 1.0, (0.0, 0.0, -0.15), Rod(0.30, "up"))]
    pin = Pivot(0.0, stop_rad=radians(90.0))
    body, swing, fastest = pivoted(rod, pin), Swing(radians(30.0)), 0.0
    for _ in range(200):
        swing = swing_tick(body, pin, swing)
        fastest = max(fastest, abs(swing.rate_rad_s))
    return fastest


def at_heights(*pairs: tuple[float, float]) -> float:
    parts = [Part(f"load {n}", abs(weight), (0.0, 0.0, up), cut=weight < 0) for n, (weight, up) in enumerate(pairs)]
    return moment_sum(parts).balance_point_m[2]


def f01() -> list[tuple[float, float, float]]:
    weight, moment, at = totals_lb_in((1169, 10.6), (17, -49), (170, 16), (83, 22))
    return [(weight, 1439, 0.5), (moment, 16104, 1.0), (at, 11.2, 0.05)]


def f02() -> list[tuple[float, float, float]]:
    weight, moment, at = totals_lb_in((1169, 10.6), (17, -49), (170, 16), (340, 48), (240, 22), (100, 75.5))
    return [(weight, 2036, 0.5), (moment, 43428, 1.0), (at, 21.3, 0.05)]


def f04() -> list[tuple[float, float, float]]:
    weight, moment, at = totals_lb_in((1169, 10.6), (17, -49), (170, 16), (170, 48), (170, 16), (240, 22), (100, 75.5))
    return [(weight, 2036, 0.5), (moment, 37988, 1.0), (at, 18.7, 0.05)]


def f07() -> list[tuple[float, float, float]]:
    weight, _, at = totals_lb_in((645, 70), (635, 70), (222.5, -30), (-30 * 5.9, 95), (6, 98))
    return [(weight, 1331.5, 0.05), (at, 50.1, 0.05)]


def f18() -> list[tuple[float, float, float]]:
    before = balance((100, 0), (200, 80), (200, 100))
    after = balance((100, 0), (200, 80 - 55), (200, 100))
    return [(after, 50, 0.5), (before - after, 22, 0.5)]


def f20() -> list[tuple[float, float, float]]:
    _, moment, at = totals_lb_in((1666, 128), (340, 50))
    return [(moment, 230248, 0.5), (at, 114.8, 0.05)]


def f27() -> list[tuple[float, float, float]]:
    old = (2886, 101673.78 / 2886)
    new = balance(old, (-30, 71), (97, 71), (20, 71), (30, 94))
    return [(balance(old), 35.23, 0.005), (new, 36.85, 0.005), (new - balance(old), 1.62, 0.005)]


def f31() -> list[tuple[float, float, float]]:
    old = (945, 78000.2 / 945)
    new = balance(old, (35, 43.8))
    # The page cuts 81.156 to 81.15, hence 0.01.
    return [(new, 81.15, 0.01), (balance(old) - new, 1.38, 0.005)]


def f34() -> list[tuple[float, float, float]]:
    moved_kg, whole_kg, by_m = 100.0, 6603.0, 2.9
    rest = (whole_kg - moved_kg, 2.8)
    shift = balance(rest, (moved_kg, 2.8 + by_m)) - balance(rest, (moved_kg, 2.8))
    return [(moved_kg * 0.1 / shift, 227.7, 0.05)]


def f37() -> list[tuple[float, float, float]]:
    shift = balance((2350, 80), (100, 120)) - balance((2350, 80), (100, 70))
    return [(shift, 2.04, 0.005)]


def c01() -> list[tuple[float, float, float]]:
    total = moment_sum(weights((26.0, -1.6), (32.0, 1.3), mass_kg=1.0, length_m=1.0))
    # The book's g is 9.80: 0.4 N of 568.
    return [(effort(26.0, 1.60, 32.0), 1.30, 0.005), (total.mass_kg * 9.80, 568, 0.5)]


def wheelbarrow(mass_kg: float, load_m: float, lift: float, ground: float) -> list[tuple[float, float, float]]:
    """Wheel at 0, hands at 1.02 m, both on the load's side; the lift is beyond, so the ground carries all."""
    lifted = effort(mass_kg, load_m, 1.02)
    return [(lifted * 9.80, lift, 0.05), ((mass_kg - lifted) * 9.80, ground, 0.5)]


def c10() -> list[tuple[float, float, float]]:
    near, far = summed_sets((1000, 5), first=0, second=20)
    half, other = summed_sets((1000, 10), first=0, second=20)
    return [(near * 9.8, 7350, 0.5), (far * 9.8, 2450, 0.5), (half * 9.8, 4900, 0.5), (other * 9.8, 4900, 0.5)]


def c11() -> list[tuple[float, float, float]]:
    disc = Part("disc", 50.0, (0.0, 0.0, 0.0), Cylinder(1.50, 0.1, axis="across"))
    child = Part("child", 18.0, (1.25, 0.0, 0.0))
    return [(about_y([disc]), 56.25, 0.005), (about_y([disc, child]), 84.38, 0.0051)]


def u17() -> list[tuple[float, float, float]]:
    places = (-0.25, -0.15, -0.05, 0.05, 0.15, 0.25)
    washers = [Part(f"washer {x}", 0.020, (x, 0.0, 0.0)) for x in places]
    outer = [part for part in washers if abs(part.at_m[0]) > 0.1]
    return [(about_y(washers), 0.0035, 5e-5), (about_y(outer), 0.0034, 5e-5)]


def u18() -> list[tuple[float, float, float]]:
    disc = Part("disc", 500.0, (0.0, 0.0, 0.0), Cylinder(2.0, 0.1, axis="across"))
    return [(about_y([disc, Part("child", 25.0, (1.0, 0.0, 0.0))]), 1025, 0.5)]


def i02() -> list[tuple[float, float, float]]:
    turned = [Part("cylinder", 1.0, (0.0, 0.0, 0.0), Cylinder(1.0, 2.0, axis="across"))]
    lying = [Part("cylinder", 1.0, (0.0, 0.0, 0.0), Cylinder(1.0, 2.0))]
    return [(about_y(turned), 1 / 2, 1e-12), (about_y(lying), 1 / 4 + 4 / 12, 1e-12)]


def i03() -> list[tuple[float, float, float]]:
    ring = [Part("ring", 1.0, (0.0, 0.0, 0.0), Cylinder(1.0, 0.1, 0.5, axis="across"))]
    hoop = Cylinder(1.0, 1e-9, 1.0 - 1e-9, axis="across")
    thin = [Part("hoop", 1.0, (0.0, 0.0, 0.0), hoop)]
    across = float(inertia_about_kg_m2(thin, (0.0, 0.0, 0.0))[0, 0])
    # A hoop has no thickness; a wall of 1e-9 takes 1e-9 off.
    return [(about_y(ring), (0.25 + 1.0) / 2, 1e-12), (about_y(thin), 1.0, 2e-9), (across, 0.5, 2e-9)]


def i01() -> list[tuple[float, float, float]]:
    rod = [Part("rod", 1.0, (0.0, 0.0, 0.0), Rod(1.0))]
    return [(about_y(rod), 1 / 12, 1e-12), (about_y(rod, (0.5, 0.0, 0.0)), 1 / 3, 1e-12)]


def b01() -> list[tuple[float, float, float]]:
    seen = {"left": 0, "level": 0, "right": 0}
    five = range(1, 6)
    for case in ((a, b, c, d) for a in five for b in five for c in five for d in five):
        left_weight, left_arm, right_weight, right_arm = case
        build = weights((left_weight, -left_arm), (right_weight, right_arm), mass_kg=0.01, length_m=0.1)
        seen[turn_about(build, Pivot(0.0)).goes] += 1
    return [(seen["left"], 288, 0.5), (seen["level"], 49, 0.5), (seen["right"], 288, 0.5)]


def n11() -> list[tuple[float, float, float]]:
    rows = moment_sum(
        weights((500, 150), (67, 88), (125, 23), (370, -100), (150, -152), mass_kg=1.0, length_m=1.0)
    ).rows
    moments = [row.moment_kg_m[0] for row in rows]
    return [
        (sum(m for m in moments if m > 0), 83771, 0.5),
        (-sum(m for m in moments if m < 0), 59800, 0.5),
        (sum(moments), 23971, 0.5),
    ]


VALUES = (
    Published("F01", "S-10", "seen", f01),
    Published("F02", "S-10", "part", f02),
    Published("F04", "S-10", "seen", f04),
    Published("F07", "S-11", "part", f07),
    Published("F12", "S-12", "memory", lambda: [(balance((6860, 80), (140, 150)), 81.4, 0.05)]),
    Published("F13", "S-12", "memory", lambda: [(balance((6100, 80), (-100, 150)), 78.8, 0.05)]),
    Published("F14", "S-03", "memory", lambda: [(totals_lb_in((100, -50), (200, 25))[1], 0, 0.5)]),
    Published("F17", "S-03", "part", lambda: [(balance((100, 0), (200, 80), (200, 100)), 72, 0.5)]),
    Published("F18", "S-03", "part", f18),
    Published("F19", "S-13", "seen", lambda: [(-balance((340, -78), (2006 - 340, 0)), 13.2, 0.05)]),
    Published("F20", "S-13", "part", f20),
    Published("F21", "S-13", "part", lambda: [(balance((1666, -75), (340, -75 - 78)), -88.2, 0.05)]),
    Published("F22", "S-13", "memory", lambda: [(balance((67, 7.5 + 222), (1151, 7.5)), 19.7, 0.05)]),
    Published("F23", "S-13", "memory", lambda: [(balance((67, 222 - 80), (1151, -80)), -67.8, 0.05)]),
    Published("F27", "S-14", "seen", f27),
    Published("F31", "S-14", "seen", f31),
    Published("F33", "S-15", "seen", lambda: [(balance((285, 0), (1465 + 1395, 92)), 83.7, 0.05)]),
    Published("F34", "S-15", "seen", f34),
    Published("F35", "S-15", "seen", lambda: [(balance((1000, 0), (24000, 10)), 9.6, 0.05)]),
    Published("F37", "S-15", "seen", f37),
    Published("F39", "S-16", "seen", lambda: [(effort(50, 1, 5), 10, 0.5)]),
    Published("F40", "S-16", "seen", lambda: [(summed_sets((200, 1), first=0, second=4)[1], 50, 0.5)]),
    Published("F41", "S-16", "part", lambda: [(effort(10, 18, 1), 180, 0.5)]),
    Published("U02", "S-17", "seen", lambda: [(balance((52, 2.5), (48, 0)), 1.3, 0.05)]),
    Published("U03", "S-17", "seen", lambda: [(effort(40.0, 4.0, 2.0), 80.0, 0.05)]),
    Published("U17", "S-17", "seen", u17),
    Published("U18", "S-17", "seen", u18),
    Published(
        "U20",
        "S-17",
        "seen",
        lambda: [(about_y([Part("rod", 1.0, (0.5, 0.0, 0.0), Rod(1.0))], (1 / 6, 0.0, 0.0)), 7 / 36, 1e-12)],
    ),
    Published("U21", "S-17", "seen", lambda: [(rod_speed_at_bottom(), 3.6, 0.05)]),
    Published("U24", "S-17", "seen", lambda: [(effort(17.5, 0.600, 0.450), 23.3, 0.05)]),
    Published("C01", "S-18", "seen", c01),
    Published("C04", "S-18", "seen", lambda: wheelbarrow(45.0, 0.0750, 32.4, 409)),
    Published("C05", "S-18", "seen", lambda: wheelbarrow(55.0, 0.0550, 29.1, 510)),
    Published("C10", "S-08", "seen", c10),
    Published("C11", "S-18", "seen", c11),
    Published("P04", "S-05", "seen", lambda: [(simple_period(4.00), 4.01, 0.005)]),
    Published("P05", "S-05", "seen", lambda: [(1 / simple_period(0.100), 1.58, 0.005)]),
    Published(
        "P07", "S-18", "seen", lambda: [(simple_period(1.0), 2.01, 0.005), (1 / simple_period(0.05), 2.23, 0.005)]
    ),
    Published("I01", "S-04", "seen", i01),
    Published("I02", "S-04", "seen", i02),
    Published("I03", "S-04", "seen", i03),
    Published(
        "I05",
        "S-04",
        "seen",
        lambda: [(about_y([Part("slab", 1.0, (0.0, 0.0, 0.0), Rectangle(3.0, 2.0))]), (9 + 4) / 12, 1e-12)],
    ),
    Published("Q01", "S-19", "seen", lambda: [(added_doubt(25, 9.7, 2.9, 16.6), 32, 0.5)]),
    Published("Q02", "S-19", "part", lambda: [(added_doubt(5.8, 3.9, 6.7), 9.7, 0.05)]),
    Published(
        "Q03",
        "S-19",
        "memory",
        lambda: [(added_doubt(*[0.1] * 10, set_name="one"), 1.0, 0.05), (added_doubt(*[0.1] * 10), 0.32, 0.005)],
    ),
    Published("Q04", "S-20", "seen", lambda: [(added_doubt(22.5, 8.66, 14.2, 5.77, 5.77), 29.1, 0.1)]),
    Published("Q05", "S-20", "seen", lambda: [(added_doubt(0.33, 0.29, 0.25), 0.51, 0.005)]),
    Published("B01", "S-21", "seen", b01),
    Published("N01", "S-22", "seen", lambda: [(effort(1, 12, 4), 3, 1e-9)]),
    Published(
        "N03",
        "S-22",
        "seen",
        lambda: [
            (load, right, 0.5) for load, right in zip(summed_sets((105, 4), first=0, second=6), (35, 70), strict=True)
        ],
    ),
    Published(
        "N08",
        "S-22",
        "seen",
        lambda: [(balance((10, 2), (5, 8)), 4, 0.05), (balance((10, 2), (5, 8), (10, 7)) * 25, 130, 0.5)],
    ),
    Published("N11", "S-22", "seen", n11),
    Published(
        "N16",
        "S-23",
        "seen",
        lambda: [
            (at_heights((8800, 6.2), (200, 1.7)), 6.1, 0.05),
            (at_heights((12600, 6), (-600, 11)), 5.75, 0.005),
            (at_heights((9000, 10.5), (-300, 5), (300, 14)), 10.8, 0.05),
        ],
    ),
    Published("N17", "S-23", "seen", lambda: [(at_heights((9900, 4), (100, 15)), 4.11, 0.005)]),
    Published(
        "N18",
        "S-24",
        "seen",
        lambda: [(balance((100, 0), (60, 33)), 12.375, 0.0005), (balance((75, 0), (45, 12)), 4.5, 0.05)],
    ),
)


@pytest.mark.parametrize("value", VALUES, ids=lambda value: value.id)
def test_we_get_what_the_source_prints(value: Published) -> None:
    for ours, printed, tolerance in value.numbers():
        # A printed 5 in the next digit may round either way; 1e-9 keeps round-off out of that.
        assert ours == pytest.approx(printed, rel=0.0, abs=tolerance + 1e-9)


@dataclass(frozen=True)
class Trap:
    """A row that is wrong in print: what is printed, and what its own inputs give."""

    id: str
    source: str
    mark: str
    ours: Callable[[], float]
    printed: float
    right: float
    tolerance: float


TRAPS = (
    Trap(
        "F03",
        "S-10",
        "seen",
        lambda: balance((1169, 10.6), (17, -49), (170, 16), (170, 16), (340, 48), (234, 22)),
        printed=18.6,
        right=18.3173,
        tolerance=0.00005,
    ),
    Trap(
        "U16",
        "S-17",
        "seen",
        lambda: balance((5.97e24, 0.0), (7.36e22, 3.82e8)) / 1e6,
        printed=4.64,
        right=4.65206,
        tolerance=0.000005,
    ),
)


@pytest.mark.parametrize("trap", TRAPS, ids=lambda trap: trap.id)
def test_where_print_is_wrong_we_get_what_its_inputs_give(trap: Trap) -> None:
    ours = trap.ours()
    assert ours == pytest.approx(trap.right, rel=0.0, abs=trap.tolerance)
    assert abs(ours - trap.printed) > 0.005


def test_at_least_thirty_published_values_are_held() -> None:
    assert len({value.id for value in VALUES}) >= 30
    assert all(value.mark in {"seen", "part", "memory"} for value in (*VALUES, *TRAPS))
