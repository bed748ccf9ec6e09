"""Tasks that the scales set by themselves, from whatever stands on them."""

from __future__ import annotations

from lab.simulation.benches.scales import ScalesBench
from lab.simulation.benches.tasks import Task, TaskKind, masses_of, reaches
from lab.simulation.refused import msg

SAME_SHARE = 0.01
"""Readings that differ by less than this share of the weight are called the same: a hand's width of a finger."""


def _made_of(bench: ScalesBench) -> tuple[tuple[str, float], ...]:
    return masses_of([(part.name, part.mass_kg) for part in bench.parts])


def _can_balance(bench: ScalesBench, axis: int, place_m: float) -> bool:
    """Whether loads can be moved until all of it balances at a place along (0) or across (1)."""
    carrier, reach = bench.carrier, bench.reach_m[axis]
    moving = [load for load in bench.loads if load is not carrier]
    whole = bench.sum
    loads_kg_m = sum(load.mass_kg * load.part.at_m[axis] for load in moving)
    fixed_kg_m = whole.mass_kg * whole.balance_point_m[axis] - loads_kg_m
    return reaches(place_m, fixed_kg_m, whole.mass_kg, [(load.mass_kg, *reach) for load in moving])


def _off(bench: ScalesBench, shares: tuple[float, ...]) -> float:
    """How far the readings are from being shared so, as a share of the weight.  shares: of each scale, in all 1."""
    readings = bench.reactions_kg
    if readings is None:
        return 1.0
    whole_kg = sum(readings)
    return max(abs(reading / whole_kg - share) for reading, share in zip(readings, shares, strict=True))


def _shared(task: Task[ScalesBench], bench: ScalesBench, shares: tuple[float, ...]) -> bool:
    """Let down and steady, with the same things on the same scales."""
    steady = not bench.held and not bench.moving and bench.tipping is None
    same = bench.scales == task.start.scales and _made_of(bench) == _made_of(task.start)
    return steady and same and _off(bench, shares) <= SAME_SHARE


def _even(bench: ScalesBench) -> tuple[float, ...]:
    return (1.0 / len(bench.scales),) * len(bench.scales)


def _same(bench: ScalesBench) -> float | None:
    """Midway between the scales, along, if loads can be moved until it balances there, and it does not yet."""
    count = len(bench.scales)
    middle = [sum(scale.at_m[axis] for scale in bench.scales) / count for axis in (0, 1)]
    axes = (0,) if count == 2 else (0, 1)
    can = all(_can_balance(bench, axis, middle[axis]) for axis in axes)
    return middle[0] if can and _off(bench, _even(bench)) > SAME_SHARE else None


def _is_same(task: Task[ScalesBench], bench: ScalesBench) -> bool:
    return _shared(task, bench, _even(bench))


TWICE = (2.0 / 3.0, 1.0 / 3.0)


def _twice(bench: ScalesBench) -> float | None:
    """A third of the way from the left scale to the right one, if it can be brought to balance there."""
    if len(bench.scales) != 2:
        return None
    left_m, right_m = (scale.at_m[0] for scale in bench.scales)
    place_m = left_m + (right_m - left_m) / 3.0
    return place_m if _can_balance(bench, 0, place_m) and _off(bench, TWICE) > SAME_SHARE else None


def _is_twice(task: Task[ScalesBench], bench: ScalesBench) -> bool:
    return len(bench.scales) == 2 and _shared(task, bench, TWICE)


def _slid(bench: ScalesBench) -> float | None:
    """Where it balances, if two scales can stand as far from that on either side, and do not yet."""
    if len(bench.scales) != 2 or _off(bench, _even(bench)) <= SAME_SHARE:
        return None
    left_m, right_m = bench.reach_m[0]
    balance_m = bench.sum.balance_point_m[0]
    room_m = 0.1 * (right_m - left_m)
    return balance_m if left_m + room_m <= balance_m <= right_m - room_m else None


def _is_slid(task: Task[ScalesBench], bench: ScalesBench) -> bool:
    steady = not bench.held and not bench.moving and bench.tipping is None
    same = bench.loads == task.start.loads and bench.bar == task.start.bar and len(bench.scales) == 2
    return steady and same and _off(bench, _even(bench)) <= SAME_SHARE


TASKS = (
    TaskKind(
        name="same",
        sentence=msg("Make all scales read the same with just what is on them. The scales stay."),
        goal=_same,
        done=_is_same,
    ),
    TaskKind(
        name="twice",
        sentence=msg("Make the left scale read twice the right one. Nothing is added."),
        goal=_twice,
        done=_is_twice,
    ),
    TaskKind(
        name="slid",
        sentence=msg("Make both scales read the same by sliding the scales alone."),
        goal=_slid,
        done=_is_slid,
    ),
)
"""Every kind of task of this bench, in the order in which they are set."""
