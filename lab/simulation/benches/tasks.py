"""Tasks that a bench sets by itself, from whatever is on it: each can be done, and is not done already."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Generic, TypeVar

from lab.simulation.benches.shared_edits import LetsGo

NEAR_M = 0.005
"""So near to a place counts as there: what a hand and a ruler can do."""

TRAY_KG = (0.05, 0.1, 0.2, 0.5)
"""The brass of the tray, lightest first. Tasks that need one weight more can be done with one of them."""

S = TypeVar("S", bound=LetsGo)


@dataclass(frozen=True, slots=True, kw_only=True)
class TaskKind(Generic[S]):
    """One kind of task.

    name: unlike the other kinds' of its bench.  sentence: what is to be done, a template.
    goal: what is to be reached, as a number; None where that cannot be done or is done already.
    done: whether a bench does it; where something is to hang or stand, once it was let go and has come to rest.
    """

    name: str
    sentence: str
    goal: Callable[[S], float | None]
    done: Callable[[Task[S], S], bool]


@dataclass(frozen=True, slots=True, kw_only=True)
class Task(Generic[S]):
    """One task.  start: the bench as it was set on, held.  goal: what is to be reached."""

    kind: TaskKind[S]
    start: S
    goal: float

    @property
    def sentence(self) -> str:
        """What is to be done, a template."""
        return self.kind.sentence

    def is_done(self, bench: S) -> bool:
        """Whether a bench does it."""
        return self.kind.done(self, bench)


def next_task(kinds: Sequence[TaskKind[S]], bench: S, *, after: str | None = None) -> Task[S] | None:
    """A task for a bench, another kind than the one before where there is another; None where nothing can be set."""
    names = [kind.name for kind in kinds]
    first = names.index(after) + 1 if after in names else 0
    for kind in (*kinds[first:], *kinds[:first]):
        goal = kind.goal(bench)
        if goal is not None:
            return Task(kind=kind, start=bench.stilled(), goal=goal)
    return None


def one_more_kg(missing_kg_m: float, arms_m: tuple[float, float]) -> float | None:
    """The lightest brass of the tray that makes up a moment; None where none does, or nothing is missing.

    missing_kg_m: to the right where above 0.  arms_m: how far a weight can be put to the left and to the right.
    """
    if abs(missing_kg_m) <= TRAY_KG[0] * NEAR_M:
        return None
    arm_m = arms_m[1] if missing_kg_m > 0.0 else arms_m[0]
    return next((mass_kg for mass_kg in TRAY_KG if abs(missing_kg_m) <= mass_kg * arm_m), None)


def reaches(place_m: float, fixed_kg_m: float, whole_kg: float, loads: Sequence[tuple[float, float, float]]) -> bool:
    """Whether moving loads can bring the balance point to a place.

    fixed_kg_m: the moment of what stays.  whole_kg: of all.  loads: weight, leftmost and rightmost place of each.
    """
    low_m, high_m = ((fixed_kg_m + sum(load[0] * load[end] for load in loads)) / whole_kg for end in (1, 2))
    return bool(loads) and low_m <= place_m <= high_m


def masses_of(named: Sequence[tuple[str, float]]) -> tuple[tuple[str, float], ...]:
    """What is there, by name and weight, in whatever order: unchanged while things are only moved."""
    return tuple(sorted(named))
