"""Published answers about moving, adding, taking away, burning and ballast, each beside its source."""

from collections.abc import Callable
from dataclasses import dataclass

import pytest

from lab.figures.change_cases import balance_trials_m
from lab.mechanics import (
    Burn,
    Part,
    Tank,
    balance_path,
    balance_point_doubt_m,
    balance_shift_m,
    balancing_ways,
    ballast_kg,
    loading_shift_m,
    moment_sum,
    move_m,
    moved_mass_kg,
    tank_course,
    with_part_moved,
)

LB_KG, IN_M = 0.45359237, 0.0254
GAL_M3 = 231 * IN_M**3

Numbers = list[tuple[float, float, float]]


@dataclass(frozen=True)
class Published:
    """id; source (in sources.toml); mark; ((ours, printed, half its last digit), ...)."""

    id: str
    source: str
    mark: str
    numbers: Callable[[], Numbers]


def loads(*pairs: tuple[float, float], mass_kg: float = LB_KG, length_m: float = IN_M) -> list[Part]:
    return [Part(f"load {n}", weight * mass_kg, (arm * length_m, 0.0, 0.0)) for n, (weight, arm) in enumerate(pairs)]


def f12() -> Numbers:
    shift = loading_shift_m(mass_kg=140 * LB_KG, at_m=150 * IN_M, whole_kg=6860 * LB_KG, balance_m=80 * IN_M)
    return [(80 + shift / IN_M, 81.4, 0.05)]


def f13() -> Numbers:
    shift = loading_shift_m(mass_kg=-100 * LB_KG, at_m=150 * IN_M, whole_kg=6100 * LB_KG, balance_m=80 * IN_M)
    return [(80 + shift / IN_M, 78.8, 0.05), (-shift / IN_M, 1.2, 0.05)]


def f18() -> Numbers:
    lever = loads((100, 0), (200, 80), (200, 100))
    distance = move_m(mass_kg=200 * LB_KG, balance_shift_m=(50 - 72) * IN_M, whole_kg=500 * LB_KG)
    moved = moment_sum(with_part_moved(lever, "load 1", (distance, 0.0, 0.0))).balance_point_m[0]
    way, *_ = balancing_ways(lever, target_m=50 * IN_M, movable={"load 1": None})
    return [(-distance / IN_M, 55, 0.5), (moved / IN_M, 50, 0.5), (-way.by_m / IN_M, 55, 0.5)]


def f25() -> Numbers:
    ballast = ballast_kg(whole_kg=1876 * LB_KG, now_m=32.2 * IN_M, target_m=33.0 * IN_M, at_m=228 * IN_M)
    assert isinstance(ballast, float)
    with_it = moment_sum(loads((1876, 32.2), (ballast / LB_KG, 228))).balance_point_m[0]
    return [(ballast / LB_KG, 7.7, 0.05), (with_it / IN_M, 33.0, 1e-6)]


def f27() -> Numbers:
    whole, at = 2886.0, 101673.78 / 2886
    numbers = [(at, 35.23, 0.005)]
    for weight, arm in ((-30, 71), (97, 71), (20, 71), (30, 94)):
        at += loading_shift_m(mass_kg=weight, at_m=arm, whole_kg=whole, balance_m=at)
        whole += weight
    return [*numbers, (at, 36.85, 0.005), (at - 101673.78 / 2886, 1.62, 0.005)]


def f31() -> Numbers:
    at = 78000.2 / 945
    shift = loading_shift_m(mass_kg=35, at_m=43.8, whole_kg=945, balance_m=at)
    # The page cuts 81.156 to 81.15, hence 0.01.
    return [(at + shift, 81.15, 0.01), (-shift, 1.38, 0.005)]


def f34() -> Numbers:
    moved = moved_mass_kg(by_m=2.9, balance_shift_m=2.9 - 2.8, whole_kg=6603)
    assert moved is not None
    return [(moved, 227.7, 0.05)]


def n16() -> Numbers:
    return [
        (6.2 + loading_shift_m(mass_kg=200, at_m=1.7, whole_kg=8800, balance_m=6.2), 6.1, 0.05),
        (6.0 + loading_shift_m(mass_kg=-600, at_m=11, whole_kg=12600, balance_m=6.0), 5.75, 0.005),
        (10.5 + balance_shift_m(mass_kg=300, by_m=9, whole_kg=9000), 10.8, 0.05),
    ]


VALUES = (
    Published("F12", "S-12", "memory", f12),
    Published("F13", "S-12", "memory", f13),
    Published("F18", "S-03", "part", f18),
    Published("F25", "S-53", "part", f25),
    Published("F27", "S-14", "seen", f27),
    Published("F31", "S-14", "seen", f31),
    Published("F34", "S-15", "seen", f34),
    Published("F37", "S-15", "seen", lambda: [(balance_shift_m(mass_kg=100, by_m=50, whole_kg=2450), 2.04, 0.005)]),
    Published("N16", "S-23", "seen", n16),
    Published(
        "N17",
        "S-23",
        "seen",
        lambda: [(4 + loading_shift_m(mass_kg=100, at_m=15, whole_kg=9900, balance_m=4), 4.11, 0.005)],
    ),
)


@pytest.mark.parametrize("value", VALUES, ids=lambda value: value.id)
def test_changes_give_what_the_source_prints(value: Published) -> None:
    for ours, printed, tolerance in value.numbers():
        # A printed 5 in the next digit may round either way; 1e-9 keeps round-off out of that.
        assert ours == pytest.approx(printed, rel=0.0, abs=tolerance + 1e-9)


def test_burning_down_to_the_least_fuel_moves_the_balance_point_as_two_sums_say() -> None:
    """Inputs of S-10, Fig 10-14 (seen); no printed answer for the travel, two plain sums agree (F06)."""
    dry = loads((1169, 10.6), (17, -49), (170, 16), (170, 48), (170, 16), (100, 75.5))
    fuel = Tank(
        name="fuel",
        at_m=(22 * IN_M, 0.0, 0.0),
        capacity_m3=40 * GAL_M3,
        contents_m3=40 * GAL_M3,
        density_kg_m3=6.0 * LB_KG / GAL_M3,
    )
    rate = 157 / 6.0 * GAL_M3 / 3600
    course = tank_course([fuel], [Burn(rate_m3_s=rate, tanks=("fuel",), for_s=3600.0)])
    start, end = (balance_path(dry, course).point_at(at_s) for at_s in (0.0, 3600.0))
    # The two sums: 37 988 lb in over 2036 lb, and the same less 157 lb at 22 in.
    assert start.balance_point_m[0] / IN_M == pytest.approx(37988.4 / 2036, abs=1e-6)
    assert end.balance_point_m[0] / IN_M == pytest.approx((37988.4 - 157 * 22) / (2036 - 157), abs=1e-6)
    assert (end.balance_point_m[0] - start.balance_point_m[0]) / IN_M == pytest.approx(-0.28, abs=0.005)
    assert end.mass_kg / LB_KG == pytest.approx(2036 - 157, abs=1e-6)


def test_the_doubt_of_a_weighing_is_that_of_sixty_thousand_trials() -> None:
    """Readings of S-11 (part); no printed answer: the law of propagation (S-02) beside random trials (S-52) (Q11)."""
    scales = tuple(
        Part(
            f"scale {n}",
            weight * LB_KG,
            (arm * IN_M, 0.0, 0.0),
            mass_doubt_kg=1.0 * LB_KG,
            at_doubt_m=(0.1 * IN_M, 0.0, 0.0),
        )
        for n, (weight, arm) in enumerate(((645, 70), (635, 70), (222.5, -30)))
    )
    doubt = balance_point_doubt_m(scales)
    assert doubt is not None
    assert moment_sum(scales).balance_point_m[0] / IN_M == pytest.approx(55.19, abs=0.005)
    assert doubt[0] / IN_M == pytest.approx(0.085, abs=0.0005)
    trials = balance_trials_m(scales, 4711, 60_000)[:, 0] / IN_M
    # Their own scatter is 0.085 / √120 000 = 0.00025; four of those.
    assert trials.std() == pytest.approx(doubt[0] / IN_M, abs=0.001)
