"""Writes the shapes of parts as the inline tables of a build file."""

from __future__ import annotations

from collections.abc import Callable

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
    Turned,
)

Length = Callable[[float], str]
Ring = tuple[tuple[float, float], ...]


def shape_text(shape: Shape, length: Length) -> str | None:
    """The table of a shape; None for a point, and for one that lies askew, which no file can say but by its inertia.

    length: writes a length in the file's units.
    """
    if isinstance(shape, Point | Turned):
        return None
    keys = _plate_keys(shape, length) or _solid_keys(shape, length)
    return "{ " + ", ".join(f"{key} = {value}" for key, value in keys.items()) + " }"


def _plate_keys(shape: Shape, length: Length) -> dict[str, str]:
    """The keys of what is thin; none of another shape."""
    match shape:
        case Rod(length_m=length_m, axis=axis):
            return {"kind": '"rod"', "length": length(length_m), "axis": f'"{axis}"'}
        case Rectangle(length_m=length_m, width_m=width_m):
            return {"kind": '"rectangle"', "length": length(length_m), "width": length(width_m)}
        case Triangle(outline_m=outline):
            return {"kind": '"triangle"', "outline": _ring(outline, length)}
        case Polygon(outline_m=outline, holes_m=holes):
            cut = {"holes": f"[{', '.join(_ring(hole, length) for hole in holes)}]"} if holes else {}
            return {"kind": '"polygon"', "outline": _ring(outline, length), **cut}
        case Disc(radius_m=radius_m):
            return {"kind": '"disc"', "radius": length(radius_m)}
        case HalfDisc(radius_m=radius_m):
            return {"kind": '"half-disc"', "radius": length(radius_m)}
        case _:
            return {}


def _solid_keys(shape: Shape, length: Length) -> dict[str, str]:
    match shape:
        case Box(size_m=size_m):
            return {"kind": '"box"', "size": f"[{', '.join(map(length, size_m))}]"}
        case Cylinder(radius_m=radius_m, length_m=length_m, inner_m=inner_m, axis=axis):
            sizes = {"radius": length(radius_m), "length": length(length_m), "inner": length(inner_m)}
            return {"kind": '"cylinder"', **sizes, "axis": f'"{axis}"'}
        case Cone(radius_m=radius_m, length_m=length_m, axis=axis):
            return {"kind": '"cone"', "radius": length(radius_m), "length": length(length_m), "axis": f'"{axis}"'}
        case Sphere(radius_m=radius_m):
            return {"kind": '"sphere"', "radius": length(radius_m)}
        case Hemisphere(radius_m=radius_m, axis=axis):
            return {"kind": '"hemisphere"', "radius": length(radius_m), "axis": f'"{axis}"'}
        case _:
            # Written without its sizes it would come back as something else.
            kind = type(shape).__name__
            raise ValueError(f"a build file of format 1 has no shape {kind}; give the part's inertia by numbers")


def _ring(corners: Ring, length: Length) -> str:
    return f"[{', '.join(f'[{length(along)}, {length(up)}]' for along, up in corners)}]"
