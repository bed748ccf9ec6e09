"""Turns the shapes of a file into those of the mechanics."""

from __future__ import annotations

from collections.abc import Callable

from lab.files.shape_tables import (
    BoxTable,
    ConeTable,
    CylinderTable,
    DiscTable,
    HalfDiscTable,
    HemisphereTable,
    PointTable,
    PolygonTable,
    RectangleTable,
    RodTable,
    ShapeTable,
    SphereTable,
    TriangleTable,
)
from lab.files.shape_values import Ring
from lab.mechanics import (
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
)

ToMetres = Callable[[float], float]


def made_shape(table: ShapeTable, to_m: ToMetres) -> Shape:
    """The shape of a part, in SI.  to_m: reads a length of the file."""
    match table:
        case PointTable():
            return Point()
        case RodTable():
            return Rod(to_m(table.length), axis=table.axis)
        case RectangleTable():
            return Rectangle(to_m(table.length), to_m(table.width))
        case TriangleTable() | PolygonTable():
            return _plate(table, to_m)
        case DiscTable():
            return Disc(to_m(table.radius))
        case HalfDiscTable():
            return HalfDisc(to_m(table.radius))
        case BoxTable():
            along, across, up = map(to_m, table.size)
            return Box((along, across, up))
        case _:
            return _round_solid(table, to_m)


def _plate(table: TriangleTable | PolygonTable, to_m: ToMetres) -> Shape:
    outline = _ring(table.outline, to_m)
    if isinstance(table, TriangleTable) and not table.holes:
        return Triangle(outline)
    return Polygon(outline, tuple(_ring(hole, to_m) for hole in table.holes))


def _ring(corners: Ring, to_m: ToMetres) -> Ring:
    return tuple((to_m(along), to_m(up)) for along, up in corners)


def _round_solid(table: CylinderTable | ConeTable | SphereTable | HemisphereTable, to_m: ToMetres) -> Shape:
    radius_m = to_m(table.radius)
    match table:
        case CylinderTable():
            return Cylinder(radius_m, to_m(table.length), inner_m=to_m(table.inner), axis=table.axis)
        case ConeTable():
            return Cone(radius_m, to_m(table.length), axis=table.axis)
        case HemisphereTable():
            return Hemisphere(radius_m, axis=table.axis)
        case SphereTable():
            return Sphere(radius_m)
