"""What a display list is made of. Operations are tuples: made by the hundred each frame, compared, hashed."""

from collections.abc import Callable, Hashable
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any, NamedTuple

from lab.ui.geometry import Point, Rect

if TYPE_CHECKING:
    from lab.ui.canvas import Canvas


class BoxOp(NamedTuple):
    """A rectangle; its outline lies inside it."""

    bounds: Rect
    clip: Rect | None
    fill: str | None
    outline: str | None
    width: float
    radius: float


class LineOp(NamedTuple):
    """A line through points, whole or dashed."""

    bounds: Rect
    clip: Rect | None
    points: tuple[Point, ...]
    color: str
    width: float
    dash: tuple[float, ...]


class PolygonOp(NamedTuple):
    """A closed shape; its outline straddles the edge."""

    bounds: Rect
    clip: Rect | None
    points: tuple[Point, ...]
    fill: str | None
    outline: str | None
    width: float


class CircleOp(NamedTuple):
    """A circle; its outline lies inside it."""

    bounds: Rect
    clip: Rect | None
    center: Point
    radius: float
    fill: str | None
    outline: str | None
    width: float


class ArcOp(NamedTuple):
    """Part of a circle, anticlockwise positive as seen."""

    bounds: Rect
    clip: Rect | None
    center: Point
    radius: float
    start_rad: float
    sweep_rad: float
    color: str
    width: float


class HatchOp(NamedTuple):
    """Slanted lines over a rectangle (its bounds)."""

    bounds: Rect
    clip: Rect | None
    color: str
    rising: bool
    spacing: float
    width: float


class TextOp(NamedTuple):
    """One line of text. bounds: all its ink; box: its line box."""

    bounds: Rect
    clip: Rect | None
    text: str
    x: float
    baseline: float
    size: float
    color: str
    bold: bool
    box: Rect


@dataclass(frozen=True, slots=True)
class Body:
    """A picture of something that is drawn turned: known by name and size, made when first needed."""

    name: Hashable
    size: tuple[float, float]
    make: Callable[["Canvas"], None] = field(compare=False, repr=False)


class TurnedOp(NamedTuple):
    """A body shown turned, anticlockwise positive as seen, with its point `grip` at `at`."""

    bounds: Rect
    clip: Rect | None
    body: Body
    at: Point
    grip: Point
    angle_rad: float


Op = BoxOp | LineOp | PolygonOp | CircleOp | ArcOp | HatchOp | TextOp | TurnedOp


def visible_part(op: Op) -> Rect:
    """Where an operation can leave ink: its bounds within its clip."""
    return op.bounds if op.clip is None else op.bounds.common(op.clip)


def _times(rect: Rect | None, k: float) -> Rect | None:
    return None if rect is None else Rect(rect.x * k, rect.y * k, rect.w * k, rect.h * k)


def _point(point: Point, k: float) -> Point:
    return (point[0] * k, point[1] * k)


_LENGTHS = frozenset({"width", "radius", "spacing", "x", "baseline", "size"})


def scaled(op: Op, k: float) -> Op:
    """The same operation, everything k times as large.

    Raises ValueError for a turned body: a body upon a body is not drawn.
    """
    if isinstance(op, TurnedOp):
        raise ValueError(f"body {op.body.name!r} lies on another body; draw what is on it directly")
    changes: dict[str, Any] = {"bounds": _times(op.bounds, k), "clip": _times(op.clip, k)}
    for name in op._fields:
        value = getattr(op, name)
        if name in _LENGTHS:
            changes[name] = value * k
        elif name == "points":
            changes[name] = tuple(_point(point, k) for point in value)
        elif name in ("center", "at", "grip"):
            changes[name] = _point(value, k)
        elif name == "dash":
            changes[name] = tuple(length * k for length in value)
        elif name == "box":
            changes[name] = _times(value, k)
    return op._replace(**changes)
