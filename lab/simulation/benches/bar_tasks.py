"""Tasks that the hanging bar sets by itself, from whatever hangs on it."""

from __future__ import annotations

from lab.simulation.benches.bar_parts import kind_of, span_m
from lab.simulation.benches.hanging_bar import HangingBar
from lab.simulation.benches.tasks import NEAR_M, TRAY_KG, Task, TaskKind, masses_of, one_more_kg, reaches
from lab.simulation.refused import msg


def _hung_kg(bar: HangingBar) -> float:
    return sum(weight.mass_kg for weight in bar.weights)


def _hangs(bar: HangingBar) -> tuple[tuple[str, float], ...]:
    return masses_of([(weight.name, weight.mass_kg) for weight in bar.weights])


def _all_brass(bar: HangingBar) -> bool:
    return all(kind_of(weight) is None for weight in bar.weights)


def _same_pivot(task: Task[HangingBar], bar: HangingBar) -> bool:
    return bar.pivot == task.start.pivot and bar.bar == task.start.bar


def _near(task: Task[HangingBar], bar: HangingBar) -> bool:
    return abs(bar.sum.balance_point_m[0] - task.goal) <= NEAR_M


def _at_rest(bar: HangingBar) -> bool:
    return not bar.held and not bar.moving


# --- level with what is on it --------------------------------------------------------------------------------


def _level(bar: HangingBar) -> float | None:
    """Where the pivot is, if the weights can be moved so that it balances there, and it does not yet."""
    if not bar.weights or abs(bar.sum.balance_point_m[0] - bar.pivot.at_m) <= NEAR_M:
        return None
    own_kg_m = bar.bar.mass_kg * (bar.bar.left_m + bar.bar.length_m / 2)
    loads = [(weight.mass_kg, *span_m(bar.bar, weight)) for weight in bar.weights]
    return bar.pivot.at_m if reaches(bar.pivot.at_m, own_kg_m, bar.sum.mass_kg, loads) else None


def _is_level(task: Task[HangingBar], bar: HangingBar) -> bool:
    return _at_rest(bar) and _same_pivot(task, bar) and _hangs(bar) == _hangs(task.start) and _near(task, bar)


# --- level with one more -------------------------------------------------------------------------------------


def _one_more(bar: HangingBar) -> float | None:
    """Where the pivot is, if one of the tray's weights can make up what is missing on the lighter side."""
    missing_kg_m = bar.sum.mass_kg * (bar.pivot.at_m - bar.sum.balance_point_m[0])
    arms_m = bar.pivot.at_m - bar.bar.left_m, bar.bar.right_m - bar.pivot.at_m
    return None if one_more_kg(missing_kg_m, arms_m) is None else bar.pivot.at_m


def _has_one_more(task: Task[HangingBar], bar: HangingBar) -> bool:
    kept = {weight.id: weight for weight in bar.weights}
    same = all(kept.get(weight.id) == weight for weight in task.start.weights)
    one = len(bar.weights) == len(task.start.weights) + 1
    return _at_rest(bar) and _same_pivot(task, bar) and same and one and _near(task, bar)


# --- half the brass ------------------------------------------------------------------------------------------


def _half(bar: HangingBar) -> float | None:
    """Where it balances, if half of the brass can be made of the tray's weights and has a place on the bar."""
    if not _all_brass(bar):
        return None
    half_kg = _hung_kg(bar) / 2
    pieces = half_kg / TRAY_KG[0]
    if half_kg < TRAY_KG[0] * 0.999 or abs(pieces - round(pieces)) > 1e-6:
        return None
    own_kg = bar.sum.mass_kg - _hung_kg(bar)
    middle_m, goal_m = bar.bar.left_m + bar.bar.length_m / 2, bar.sum.balance_point_m[0]
    at_m = (goal_m * (own_kg + half_kg) - own_kg * middle_m) / half_kg
    return goal_m if bar.bar.left_m <= at_m <= bar.bar.right_m else None


def _has_half(task: Task[HangingBar], bar: HangingBar) -> bool:
    half_kg = _hung_kg(task.start) / 2
    same = bar.bar == task.start.bar and _all_brass(bar)
    return same and abs(_hung_kg(bar) - half_kg) <= 1e-9 and _near(task, bar)


TASKS = (
    TaskKind(
        name="level",
        sentence=msg("Make it hang level with just what is on it. The pivot stays."),
        goal=_level,
        done=_is_level,
    ),
    TaskKind(
        name="one-more",
        sentence=msg("Make it hang level with one more weight. All else stays."),
        goal=_one_more,
        done=_has_one_more,
    ),
    TaskKind(name="half", sentence=msg("Keep the balance point, with half the brass."), goal=_half, done=_has_half),
)
"""Every kind of task of this bench, in the order in which they are set."""
