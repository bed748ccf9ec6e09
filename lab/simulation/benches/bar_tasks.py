"""Tasks that the hanging bar sets by itself, from whatever hangs on it: each can be done, and is not done already."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

from lab.simulation.benches.bar_parts import kind_of, span_m
from lab.simulation.benches.hanging_bar import HangingBar
from lab.simulation.refused import msg

TaskKind = Literal["level", "one-more", "half"]

NEAR_M = 0.005
"""So near to a place counts as there: what a hand and a ruler can do."""

SMALLEST_KG = 0.05
"""The smallest weight in the tray, of which all others are multiples."""


LARGEST_KG = 0.5
"""The largest weight in the tray."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BarTask:
    """One task.  start: the bar as it was set on.  goal_m: the balance point to be reached, along."""

    kind: TaskKind
    start: HangingBar
    goal_m: float

    @property
    def sentence(self) -> str:
        """What is to be done, a template."""
        return _SENTENCES[self.kind]

    def is_done(self, bar: HangingBar) -> bool:
        """Whether a bar does it; of one that is to be level, once it has been let go and has come to rest."""
        return _DONE[self.kind](self, bar)


def next_task(bar: HangingBar, *, after: TaskKind | None = None) -> BarTask | None:
    """A task for a bar, another kind than the one before where there is another; None where nothing can be set."""
    kinds = list(_GOALS)
    if after is not None:
        place = kinds.index(after) + 1
        kinds = kinds[place:] + kinds[:place]
    for kind in kinds:
        goal_m = _GOALS[kind](bar)
        if goal_m is not None:
            return BarTask(kind=kind, start=bar.stilled(), goal_m=goal_m)
    return None


_SENTENCES: Mapping[TaskKind, str] = MappingProxyType(
    {
        "level": msg("Make it hang level with just what is on it. The pivot stays."),
        "one-more": msg("Make it hang level with one more weight. All else stays."),
        "half": msg("Keep the balance point, with half the brass."),
    }
)


def _hung_kg(bar: HangingBar) -> float:
    return sum(weight.mass_kg for weight in bar.weights)


def _hangs(bar: HangingBar) -> tuple[tuple[str, float], ...]:
    return tuple(sorted((weight.name, weight.mass_kg) for weight in bar.weights))


def _all_brass(bar: HangingBar) -> bool:
    return all(kind_of(weight) is None for weight in bar.weights)


def _same_pivot(task: BarTask, bar: HangingBar) -> bool:
    return bar.pivot == task.start.pivot and bar.bar == task.start.bar


def _near(task: BarTask, bar: HangingBar) -> bool:
    return abs(bar.sum.balance_point_m[0] - task.goal_m) <= NEAR_M


def _at_rest(bar: HangingBar) -> bool:
    return not bar.held and not bar.moving


# --- level with what is on it --------------------------------------------------------------------------------


def _level(bar: HangingBar) -> float | None:
    """Where the pivot is, if the weights can be moved so that it balances there, and it does not yet."""
    if not bar.weights or abs(bar.sum.balance_point_m[0] - bar.pivot.at_m) <= NEAR_M:
        return None
    whole_kg, middle_m = bar.sum.mass_kg, bar.bar.left_m + bar.bar.length_m / 2
    own_kg_m = (whole_kg - _hung_kg(bar)) * middle_m
    spans = [(weight.mass_kg, span_m(bar.bar, weight)) for weight in bar.weights]
    low_m, high_m = ((own_kg_m + sum(kg * ends_m[end] for kg, ends_m in spans)) / whole_kg for end in (0, 1))
    return bar.pivot.at_m if low_m <= bar.pivot.at_m <= high_m else None


def _is_level(task: BarTask, bar: HangingBar) -> bool:
    return _at_rest(bar) and _same_pivot(task, bar) and _hangs(bar) == _hangs(task.start) and _near(task, bar)


# --- level with one more -------------------------------------------------------------------------------------


def _one_more(bar: HangingBar) -> float | None:
    """Where the pivot is, if one of the tray's weights can make up what is missing on the lighter side."""
    missing_kg_m = bar.sum.mass_kg * (bar.pivot.at_m - bar.sum.balance_point_m[0])
    if abs(missing_kg_m) <= SMALLEST_KG * NEAR_M:
        return None
    end_m = bar.bar.right_m if missing_kg_m > 0 else bar.bar.left_m
    arm_m = abs(end_m - bar.pivot.at_m)
    return bar.pivot.at_m if abs(missing_kg_m) <= LARGEST_KG * arm_m else None


def _has_one_more(task: BarTask, bar: HangingBar) -> bool:
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
    pieces = half_kg / SMALLEST_KG
    if half_kg < SMALLEST_KG * 0.999 or abs(pieces - round(pieces)) > 1e-6:
        return None
    own_kg = bar.sum.mass_kg - _hung_kg(bar)
    middle_m, goal_m = bar.bar.left_m + bar.bar.length_m / 2, bar.sum.balance_point_m[0]
    at_m = (goal_m * (own_kg + half_kg) - own_kg * middle_m) / half_kg
    return goal_m if bar.bar.left_m <= at_m <= bar.bar.right_m else None


def _has_half(task: BarTask, bar: HangingBar) -> bool:
    half_kg = _hung_kg(task.start) / 2
    same = bar.bar == task.start.bar and _all_brass(bar)
    return same and abs(_hung_kg(bar) - half_kg) <= 1e-9 and _near(task, bar)


_GOALS: Mapping[TaskKind, Callable[[HangingBar], float | None]] = MappingProxyType(
    {"level": _level, "one-more": _one_more, "half": _half}
)
_DONE: Mapping[TaskKind, Callable[[BarTask, HangingBar], bool]] = MappingProxyType(
    {"level": _is_level, "one-more": _has_one_more, "half": _has_half}
)
