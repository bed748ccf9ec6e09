"""A body on its way from one tick to the next: where down lies in it, and the room that its swing needs."""

from __future__ import annotations

from math import atan2, pi

from lab.mechanics import Vector

ROOM_SHARE = 1.5
"""Of the angle at which it comes to rest: how far it swings out, for at a quarter of the critical damping of our swings
it goes four tenths beyond."""


def room_rad(along: float, up: float, *, sense: float) -> tuple[float, float]:
    """From where to where a body that is let go level turns in a face on its way to rest, anticlockwise as seen.

    along, up: of the direction of down at rest, in the face.  sense: −1 where down to the right is clockwise.
    """
    rest = atan2(along, -up)
    far = sense * max(-pi, min(pi, ROOM_SHARE * rest))
    return min(0.0, far), max(0.0, far)


def between_downs(before: Vector, now: Vector, fraction: float) -> Vector:
    """The direction of down between two ticks; of any length.  They are so near each other that none is nought."""
    if fraction >= 1.0 or before == now:
        return now
    x, y, z = (start + fraction * (end - start) for start, end in zip(before, now, strict=True))
    return (x, y, z) if x or y or z else now
