"""The shapes of parts as points in space, and how they look from a face: their silhouettes, in metres."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import cos, pi, sin

import numpy as np
from numpy.typing import NDArray

from lab.mechanics import (
    Axis,
    Box,
    Cone,
    Cylinder,
    Disc,
    HalfDisc,
    Hemisphere,
    Point,
    Polygon,
    Rectangle,
    Rod,
    Shape,
    Sphere,
    Triangle,
    Turned,
)
from lab.mechanics.bodies import convex_outline_m
from lab.scenes.views.projections import Face, Flat, flat_m

Floats = NDArray[np.float64]
Rings = tuple[tuple[Flat, ...], ...]
"""An outline and then its holes, each a ring of places in a face."""

ROUND_STEPS = 40
DOME_STEPS = 8
_INDEX: dict[Axis, int] = {"along": 0, "across": 1, "up": 2}
EDGE_ON = 1e-3
"""A sheet that shows less of its square than this is seen by its edge."""


@dataclass(frozen=True, slots=True)
class Form:
    """A shape about its own centre: (n, 3) points, m.

    sheet: flat, with rings of points (an outline and its holes); else its silhouette is what wraps its points.
    """

    rings: tuple[Floats, ...]
    sheet: bool


def silhouette_m(shape: Shape, face: Face, *, thin_m: float) -> Rings:
    """What a shape covers in a face, about its own centre.

    thin_m: how thick a rod or a sheet seen by its edge is drawn.  A point covers nothing: ().
    """
    return _silhouette(shape, face, thin_m)


@lru_cache(maxsize=512)
def _silhouette(shape: Shape, face: Face, thin_m: float) -> Rings:
    bare, turn = _untwisted(shape)
    if isinstance(bare, Point):
        return ()
    form = _form(bare, thin_m)
    if form.sheet:
        rings = tuple(tuple(flat_m(face, _vector(row)) for row in ring @ turn.T) for ring in form.rings)
        if _area_m2(rings[0]) > EDGE_ON * _span_m(rings[0]) ** 2:
            return rings
        half = np.array((0.0, thin_m / 2.0, 0.0))
        cloud = np.vstack((form.rings[0] + half, form.rings[0] - half))
    else:
        cloud = form.rings[0]
    return (convex_outline_m(flat_m(face, _vector(row)) for row in cloud @ turn.T),)


def _vector(row: Floats) -> tuple[float, float, float]:
    return float(row[0]), float(row[1]), float(row[2])


def _untwisted(shape: Shape) -> tuple[Shape, Floats]:
    """The shape inside every turn, and the turn that takes it to where it lies."""
    turn = np.eye(3)
    while isinstance(shape, Turned):
        turn = turn @ np.array(shape.rotation)
        shape = shape.shape
    return shape, turn


def _form(shape: Shape, thin_m: float) -> Form:
    match shape:
        case Rod():
            return _block(*(shape.length_m if axis == shape.axis else thin_m for axis in _INDEX))
        case Box():
            return _block(*shape.size_m)
        case Rectangle():
            x, z = shape.length_m / 2.0, shape.width_m / 2.0
            return _sheet((((-x, -z), (x, -z), (x, z), (-x, z)),), (0.0, 0.0))
        case Polygon() | Triangle():
            holes = shape.holes_m if isinstance(shape, Polygon) else ()
            return _sheet((shape.outline_m, *holes), shape.moments.centre_m)
        case Disc():
            return _sheet((_circle(shape.radius_m),), (0.0, 0.0))
        case HalfDisc():
            turns = (pi * step / ROUND_STEPS for step in range(ROUND_STEPS + 1))
            arc = tuple((shape.radius_m * cos(turn), shape.radius_m * sin(turn)) for turn in turns)
            return _sheet((arc,), (0.0, shape.centre_m[2]))
        case _:
            return Form((_round_cloud(shape),), sheet=False)


def _round_cloud(shape: Shape) -> Floats:
    """Points of a round solid about its own centre: circles on its axis."""
    match shape:
        case Cylinder():
            half = shape.length_m / 2.0
            return _stacked(shape.axis, ((shape.radius_m, -half), (shape.radius_m, half)))
        case Cone():
            base = -shape.length_m / 4.0
            return _stacked(shape.axis, ((shape.radius_m, base), (0.0, base + shape.length_m)))
        case Sphere():
            turns = [pi * step / (2 * DOME_STEPS) for step in range(-DOME_STEPS, DOME_STEPS + 1)]
            return _stacked("up", tuple((shape.radius_m * cos(turn), shape.radius_m * sin(turn)) for turn in turns))
        case Hemisphere():
            turns = [pi * step / (2 * DOME_STEPS) for step in range(DOME_STEPS + 1)]
            rise = 0.375 * shape.radius_m
            circles = tuple((shape.radius_m * cos(turn), shape.radius_m * sin(turn) - rise) for turn in turns)
            return _stacked(shape.axis, circles)
        case _:
            return np.zeros((1, 3))


def _block(along_m: float, across_m: float, up_m: float) -> Form:
    half = np.array((along_m, across_m, up_m)) / 2.0
    corners = np.array([(x, y, z) for x in (-1, 1) for y in (-1, 1) for z in (-1, 1)], dtype=float)
    return Form((corners * half,), sheet=False)


def _sheet(rings: tuple[tuple[Flat, ...], ...], centre_m: Flat) -> Form:
    placed = tuple(np.array([(x - centre_m[0], 0.0, z - centre_m[1]) for x, z in ring]) for ring in rings)
    return Form(placed, sheet=True)


def _circle(radius_m: float) -> tuple[Flat, ...]:
    turns = (2.0 * pi * step / ROUND_STEPS for step in range(ROUND_STEPS))
    return tuple((radius_m * cos(turn), radius_m * sin(turn)) for turn in turns)


def _stacked(axis: Axis, circles: tuple[tuple[float, float], ...]) -> Floats:
    """Circles, each (radius, place on the axis)."""
    on = _INDEX[axis]
    first, second = (index for index in range(3) if index != on)
    rows = []
    for radius_m, place_m in circles:
        for a, b in _circle(radius_m) if radius_m > 0.0 else ((0.0, 0.0),):
            row = [0.0, 0.0, 0.0]
            row[on], row[first], row[second] = place_m, a, b
            rows.append(row)
    return np.array(rows)


def _area_m2(ring: tuple[Flat, ...]) -> float:
    pairs = zip(ring, (*ring[1:], ring[0]), strict=True)
    return abs(sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairs)) / 2.0


def _span_m(ring: tuple[Flat, ...]) -> float:
    xs, ys = zip(*ring, strict=True)
    return float(max(max(xs) - min(xs), max(ys) - min(ys)))
