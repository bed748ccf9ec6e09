"""Where things of the tool are, and the commands that move them."""

from __future__ import annotations

from lab.mechanics import Part
from lab.scenes.tool.view import FINGER, PART, REFERENCE, ToolView
from lab.screens.benches import snapping
from lab.screens.benches.snapping import MARK_PULL_PX
from lab.simulation import Command, Move, MoveFinger, MoveReference
from lab.ui.geometry import Rect


def snapped_m(along_m: float, view: ToolView, rect: Rect) -> float:
    """The place that a pointer means."""
    pull_m = view.stage(rect).camera.length_m(MARK_PULL_PX * view.look.sizes.unit)
    return snapping.snapped_m(along_m, view.readings, pull_m=pull_m)


def id_of(key: str) -> int | None:
    """The id of the part that a key means; None for any other key."""
    number = key.removeprefix(PART)
    return int(number) if key.startswith(PART) and number.isdigit() else None


def part_of(view: ToolView, key: str) -> Part | None:
    """The part of a key, if it is there."""
    number = id_of(key)
    return None if number is None else view.bench.part(number)


def where_is(key: str, view: ToolView) -> float | None:
    """Where a thing of the picture is now, along; None where there is no such thing."""
    if key == FINGER:
        return view.bench.finger_at_m
    if key == REFERENCE:
        return view.bench.reference_m
    part = part_of(view, key)
    return None if part is None else part.at_m[0]


def moves_of(key: str, at_m: float, *, joins: bool) -> tuple[Command, ...]:
    """The command that puts a thing of the picture to a place; none for anything else."""
    at_m = round(at_m, 9)
    if key == FINGER:
        return (MoveFinger(at_m, joins=joins),)
    if key == REFERENCE:
        return (MoveReference(at_m, joins=joins),)
    number = id_of(key)
    return () if number is None else (Move(number, at_m, joins=joins),)
