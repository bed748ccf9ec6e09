"""How fast the mechanics are, each beside a named reference taken in the same run."""

from collections.abc import Callable
from time import perf_counter

import numpy as np
from numpy.typing import NDArray

from lab.figures import swinging_bar
from lab.figures.rows import Row, row
from lab.mechanics import TICK_S, Swing, swing_tick
from lab.mechanics.assemblies import assembly_sums

Floats = NDArray[np.float64]
SEED = 4711
ROUNDS = 7
QUICK_ROUNDS = 3


def moment_sum_one(*, quick: bool = False) -> Row:
    """One build of 10⁶ parts: mass, moment, balance point, inertia."""
    return _sums("moment sum with inertia, 10⁶ parts", (1_000_000,), quick=quick)


def moment_sum_many(*, quick: bool = False) -> Row:
    """10⁵ builds of 10 parts: the same."""
    return _sums("moment sum with inertia, 10⁵ assemblies of 10", (100_000, 10), quick=quick)


def one_tick(*, quick: bool = False) -> Row:
    """One 5 ms tick of the swinging bar beside one pymunk step of it."""
    ticks = 2000
    bar, pivot = swinging_bar.body(), swinging_bar.PIVOT

    def ours() -> None:
        swing = Swing(swinging_bar.LET_GO_RAD)
        for _ in range(ticks):
            swing = swing_tick(bar, pivot, swing)

    space, _ = swinging_bar.pymunk_bar()

    def theirs() -> None:
        for _ in range(ticks):
            space.step(TICK_S)

    ours_s, theirs_s = _side_by_side(ours, theirs, rounds=QUICK_ROUNDS if quick else ROUNDS)
    return row("one 5 ms tick", ours_s / ticks, theirs_s / ticks, goal=6.0, beside="one pymunk step")


def speed_rows(*, quick: bool = False) -> tuple[Row, ...]:
    """Every speed of the mechanics."""
    return moment_sum_one(quick=quick), moment_sum_many(quick=quick), one_tick(quick=quick)


def _sums(name: str, shape: tuple[int, ...], *, quick: bool) -> Row:
    random = np.random.default_rng(SEED)
    mass = random.uniform(0.05, 0.5, shape)
    at = random.normal(size=(*shape, 3))
    own = np.tile(np.eye(3) * 1e-4, (*shape, 1, 1))
    ours_s, bare_s = _side_by_side(
        lambda: assembly_sums(mass, at, own),
        lambda: _bare_sums(mass, at, own),
        rounds=QUICK_ROUNDS if quick else ROUNDS,
    )
    return row(name, ours_s, bare_s, goal=1.5, beside="the bare numpy products")


def _bare_sums(mass: Floats, at: Floats, own: Floats) -> tuple[Floats, Floats]:
    """The fastest products for the same numbers that we found, with nothing checked and nothing named."""
    total = mass.sum(axis=-1)
    balance = (mass[..., np.newaxis, :] @ at)[..., 0, :] / total[..., np.newaxis]
    away = at - balance[..., np.newaxis, :]
    second = np.swapaxes(away, -1, -2) @ (mass[..., np.newaxis] * away)
    spread = np.trace(second, axis1=-2, axis2=-1)[..., np.newaxis, np.newaxis] * np.eye(3)
    return balance, spread - second + np.einsum("...nij->...ij", own)


def _side_by_side(ours: Callable[[], object], reference: Callable[[], object], *, rounds: int) -> tuple[float, float]:
    """The best time of each, s, taken in turn so that a busy machine slows both."""
    best = [float("inf"), float("inf")]
    for _ in range(rounds):
        for which, work in enumerate((ours, reference)):
            started = perf_counter()
            work()
            best[which] = min(best[which], perf_counter() - started)
    return best[0], best[1]
