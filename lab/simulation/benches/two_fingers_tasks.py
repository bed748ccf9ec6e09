"""Tasks that the two fingers set by themselves, from whatever lies on them."""

from __future__ import annotations

from dataclasses import replace

from lab.mechanics import extent_m
from lab.simulation.benches.tasks import Task, TaskKind, masses_of, one_more_kg, reaches
from lab.simulation.benches.two_fingers import TwoFingers
from lab.simulation.benches.two_fingers_builds import kept_apart_m
from lab.simulation.refused import msg

NEAR_SHARE = 0.01
"""Fingers that meet so near to a place met there, as a share of the length: what is seen without a ruler."""


def _middle_m(bench: TwoFingers) -> float:
    left_m, right_m = bench.beam_m
    return (left_m + right_m) / 2.0


def _near(bench: TwoFingers, place_m: float) -> bool:
    left_m, right_m = bench.beam_m
    return abs(bench.sum.balance_point_m[0] - place_m) <= NEAR_SHARE * (right_m - left_m)


def _made_of(bench: TwoFingers) -> tuple[tuple[str, float], ...]:
    return masses_of([(part.name, part.mass_kg) for part in bench.parts])


def _met(bench: TwoFingers) -> bool:
    return bench.outcome is not None


# --- in the middle -------------------------------------------------------------------------------------------


def _in_middle(bench: TwoFingers) -> float | None:
    """The middle of what weights stand on, if they can be moved until it balances there, and it does not yet."""
    low_m, high_m = bench.beam_m
    loose = [piece.part for piece in bench.pieces if bench.is_loose(piece)]
    halves = [extent_m(part.shape)[0] / 2.0 for part in loose]
    loads = [(part.mass_kg, low_m + half, high_m - half) for part, half in zip(loose, halves, strict=True)]
    whole, place_m = bench.sum, _middle_m(bench)
    fixed_kg_m = whole.mass_kg * whole.balance_point_m[0] - sum(part.mass_kg * part.at_m[0] for part in loose)
    if _near(bench, place_m) or not reaches(place_m, fixed_kg_m, whole.mass_kg, loads):
        return None
    return place_m


def _is_in_middle(task: Task[TwoFingers], bench: TwoFingers) -> bool:
    return _met(bench) and _near(bench, task.goal) and _made_of(bench) == _made_of(task.start)


def _one_more(bench: TwoFingers) -> float | None:
    """The middle, if one of the tray's weights can bring the balance point there."""
    place_m, (low_m, high_m) = _middle_m(bench), bench.beam_m
    missing_kg_m = bench.sum.mass_kg * (place_m - bench.sum.balance_point_m[0])
    if _near(bench, place_m) or one_more_kg(missing_kg_m, (place_m - low_m, high_m - place_m)) is None:
        return None
    return place_m


def _has_one_more(task: Task[TwoFingers], bench: TwoFingers) -> bool:
    same = all(piece in bench.pieces for piece in task.start.pieces)
    one = len(bench.pieces) == len(task.start.pieces) + 1
    return _met(bench) and _near(bench, task.goal) and same and one


# --- the other finger first ----------------------------------------------------------------------------------


def _first(bench: TwoFingers) -> float | None:
    """-1.0 where the left finger slips first, 1.0 where the right one does; None for both, and where it tips."""
    end = bench.stilled().released().at_end()
    return {"left": -1.0, "right": 1.0}.get(end.outcome or "")


def _other_first(bench: TwoFingers) -> float | None:
    """Which finger does not slip first now, if fingers can stand so that it does."""
    now = _first(bench)
    if now is None:
        return None
    low_m, high_m = bench.span_m
    balance_m = bench.sum.balance_point_m[0]
    # The finger far from the balance point carries little and slips; the other one stands near it.
    near_m = 0.1 * (high_m - low_m)
    wanted = (low_m, balance_m + near_m) if now > 0.0 else (balance_m - near_m, high_m)
    moved = replace(bench.stilled(), fingers_m=kept_apart_m(bench.stilled(), wanted))
    return -now if _first(moved) == -now else None


def _is_other_first(task: Task[TwoFingers], bench: TwoFingers) -> bool:
    same = (bench.pieces, bench.left, bench.right) == (task.start.pieces, task.start.left, task.start.right)
    return _met(bench) and same and bench.outcome == ("left" if task.goal < 0.0 else "right")


TASKS = (
    TaskKind(
        name="middle",
        sentence=msg("Make the fingers meet in the middle, with just what is on it."),
        goal=_in_middle,
        done=_is_in_middle,
    ),
    TaskKind(
        name="other-first",
        sentence=msg("Make the other finger slip first. Move the fingers alone."),
        goal=_other_first,
        done=_is_other_first,
    ),
    TaskKind(
        name="one-more",
        sentence=msg("Make the fingers meet in the middle with one more weight. All else stays."),
        goal=_one_more,
        done=_has_one_more,
    ),
)
"""Every kind of task of this bench, in the order in which they are set."""
