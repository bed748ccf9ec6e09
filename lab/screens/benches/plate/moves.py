"""Where things of the hung plate are, and the commands that move, add and remove them."""

from __future__ import annotations

from lab.mechanics import Polygon
from lab.scenes.plate_view import CLIP, CORNER, EDGE, HOLE, PIN, REFERENCE, PlateView, hole_radius_m
from lab.screens.benches.snapping import MARK_PULL_PX, snapped_m
from lab.simulation import Command, MoveReference, Remove
from lab.simulation.benches import Hung
from lab.simulation.plate_commands import (
    AddCorner,
    ClipOn,
    CutHole,
    FillHole,
    MoveClip,
    MoveCorner,
    MoveHole,
    MovePin,
    RemoveCorner,
)
from lab.ui.geometry import Point, Rect

Place = tuple[float, float]


def place_under(view: PlateView, rect: Rect, point: Point) -> Place:
    """The place of the plate that a pointer means: on a mark where it is near one, else to the last shown decimal."""
    stage = view.stage(rect)
    along, up = stage.on_plate_m(view, point)
    pull_m = stage.camera.length_m(MARK_PULL_PX * view.look.sizes.unit)
    return snapped_m(along, view.readings, pull_m=pull_m), snapped_m(up, view.readings, pull_m=pull_m)


def numbers_of(key: str, kind: str) -> tuple[int, ...]:
    """The numbers in a key of a kind, such as ring and corner; none for any other key."""
    numbers = key.removeprefix(kind).split("-")
    return tuple(map(int, numbers)) if key.startswith(kind) and all(one.isdigit() for one in numbers) else ()


def clip_of(view: PlateView, key: str) -> Hung | None:
    """The weight of a key, if it is there."""
    numbers = numbers_of(key, CLIP)
    return view.bench.clip(numbers[0]) if len(numbers) == 1 else None


def corner_of(view: PlateView, key: str) -> tuple[int, int] | None:
    """Ring and corner of a key, if they are there."""
    numbers = numbers_of(key, CORNER)
    rings = view.bench.rings_m
    if len(numbers) != 2 or numbers[0] >= len(rings) or numbers[1] >= len(rings[numbers[0]]):
        return None
    return numbers[0], numbers[1]


def hole_of(view: PlateView, key: str) -> int | None:
    """The number of a hole of a key, if it is there."""
    numbers = numbers_of(key, HOLE)
    return numbers[0] if len(numbers) == 1 and 1 <= numbers[0] <= len(view.bench.holes_m) else None


def where_is(view: PlateView, key: str) -> Place | None:
    """Where a thing of the picture is now, along and up; None where it is not there."""
    bench = view.bench
    if key == PIN:
        return bench.pivot.at_m, bench.pivot.up_m
    if key == REFERENCE:
        return bench.reference_m, 0.0
    corner, hole, clip = corner_of(view, key), hole_of(view, key), clip_of(view, key)
    if corner is not None:
        return bench.rings_m[corner[0]][corner[1]]
    if hole is not None:
        return Polygon(bench.holes_m[hole - 1]).moments.centre_m
    return None if clip is None else (clip.at_m, clip.up_m)


def move_to(view: PlateView, key: str, place: Place, *, joins: bool) -> tuple[Command, ...]:
    """The command that puts a thing of the picture to a place; none for what is not there."""
    along, up = round(place[0], 9), round(place[1], 9)
    if key == PIN:
        return (MovePin(along, up, joins=joins),)
    if key == REFERENCE:
        return (MoveReference(along, joins=joins),)
    corner, hole, clip = corner_of(view, key), hole_of(view, key), clip_of(view, key)
    if corner is not None:
        return (MoveCorner(*corner, along, up, joins=joins),)
    if hole is not None:
        return (MoveHole(hole, along, up, joins=joins),)
    return () if clip is None else (MoveClip(clip.id, along, up, joins=joins),)


def removed(view: PlateView, key: str) -> tuple[Command, ...]:
    """The command that takes a thing of the picture away; none for what stays."""
    corner, hole, clip = corner_of(view, key), hole_of(view, key), clip_of(view, key)
    if corner is not None:
        return (RemoveCorner(*corner),)
    if hole is not None:
        return (FillHole(hole),)
    return () if clip is None else (Remove(clip.id),)


def new_corner(view: PlateView, key: str) -> AddCorner | None:
    """The command that puts a corner in the middle of the edge of a key."""
    numbers = numbers_of(key, EDGE)
    rings = view.bench.rings_m
    if len(numbers) != 2 or numbers[0] >= len(rings) or numbers[1] >= len(rings[numbers[0]]):
        return None
    ring = rings[numbers[0]]
    (x, z), (a, b) = ring[numbers[1]], ring[(numbers[1] + 1) % len(ring)]
    return AddCorner(numbers[0], numbers[1], round((x + a) / 2, 9), round((z + b) / 2, 9))


def put_down(view: PlateView, mass_kg: float | None, place: Place) -> Command:
    """The command that clips a weight on, or cuts a hole."""
    if mass_kg is None:
        return CutHole(place[0], place[1], hole_radius_m(view.bench))
    return ClipOn(mass_kg, place[0], place[1])
