"""Where things of the hanging bar are, and the commands that move them."""

from __future__ import annotations

from lab.files import UNITS
from lab.scenes.hanging_scene import along_at_m
from lab.scenes.hanging_view import HANGING, PIVOT, REFERENCE, HangingView, weight_key
from lab.screens.benches import snapping
from lab.screens.benches.snapping import MARK_PULL_PX
from lab.simulation import Command, Hung, Move, MovePivot, MoveReference
from lab.simulation.part_commands import Reweigh
from lab.ui.geometry import Rect


def snapped_m(along_m: float, view: HangingView, rect: Rect) -> float:
    """The place that a pointer means."""
    m_per_px = along_at_m(view, rect, (1.0, 0.0)) - along_at_m(view, rect, (0.0, 0.0))
    pull_m = MARK_PULL_PX * view.look.sizes.unit * m_per_px
    return snapping.snapped_m(along_m, view.readings, pull_m=pull_m)


def weight_of(view: HangingView, key: str) -> Hung | None:
    """The weight of a key, if it is there."""
    return next((weight for weight in view.bench.weights if weight_key(weight) == key), None)


def where_is(key: str, view: HangingView) -> tuple[float | None, Hung | None]:
    """Where a thing of the picture is now, and what it is if it is a weight."""
    if key == PIVOT:
        return view.bench.pivot.at_m, None
    if key == REFERENCE:
        return view.bench.reference_m, None
    weight = weight_of(view, key)
    return (None, None) if weight is None else (weight.at_m, weight)


def move_of(key: str, at_m: float, view: HangingView, *, joins: bool) -> Command | None:
    """The command that moves a thing of the picture; a weight never past the ends of the bar."""
    weight = weight_of(view, key)
    if weight is not None:
        bar = view.bench.bar
        at_m = min(max(at_m, bar.left_m), bar.right_m)
    moves = moves_of(key, round(at_m, 9), joins=joins)
    return moves[0] if moves else None


def moves_of(key: str, at_m: float, *, joins: bool) -> tuple[Command, ...]:
    """The command that puts a thing of the picture to a place; none for anything else."""
    if key == PIVOT:
        return (MovePivot(at_m, joins=joins),)
    if key == REFERENCE:
        return (MoveReference(at_m, joins=joins),)
    number = key.removeprefix(HANGING)
    return (Move(int(number), at_m, joins=joins),) if number.isdigit() else ()


def x_of(at_m: float, view: HangingView, rect: Rect) -> float:
    """The x of a place along, from what an x shows."""
    zero, one = along_at_m(view, rect, (0.0, 0.0)), along_at_m(view, rect, (1.0, 0.0))
    return (at_m - zero) / (one - zero)


def reweighed(key: str, shown: float, view: HangingView) -> tuple[Command, ...]:
    """The command that gives a weight another weight, in the units that are shown; none for anything else."""
    weight = weight_of(view, key)
    return () if weight is None else (Reweigh(weight.id, UNITS[view.readings.units.name].to_kg(shown)),)
