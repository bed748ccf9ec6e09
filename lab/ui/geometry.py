"""Rectangles and points in window pixels: x to the right, y downwards."""

from collections.abc import Iterable
from typing import NamedTuple

Point = tuple[float, float]


class Rect(NamedTuple):
    """A rectangle by its left top corner and its size, in pixels."""

    x: float
    y: float
    w: float
    h: float

    @property
    def right(self) -> float:
        """The x of its right edge."""
        return self.x + self.w

    @property
    def bottom(self) -> float:
        """The y of its lower edge."""
        return self.y + self.h

    @property
    def center(self) -> Point:
        """Its middle."""
        return (self.x + self.w / 2, self.y + self.h / 2)

    @property
    def area(self) -> float:
        """Its area; 0 where a side is negative."""
        return max(0.0, self.w) * max(0.0, self.h)

    def inset(self, dx: float, dy: float | None = None) -> "Rect":
        """Smaller by dx at the left and right and dy (dx if not given) above and below; never negative."""
        down = dx if dy is None else dy
        w, h = max(0.0, self.w - 2 * dx), max(0.0, self.h - 2 * down)
        middle = self.center
        return Rect(middle[0] - w / 2, middle[1] - h / 2, w, h)

    def grown(self, d: float) -> "Rect":
        """Larger by d on every side."""
        return Rect(self.x - d, self.y - d, self.w + 2 * d, self.h + 2 * d)

    def at_least(self, w: float, h: float) -> "Rect":
        """Grown about its middle so that it is at least w by h."""
        wide, high = max(self.w, w), max(self.h, h)
        return Rect(self.x - (wide - self.w) / 2, self.y - (high - self.h) / 2, wide, high)

    def moved(self, dx: float, dy: float) -> "Rect":
        """The same size, elsewhere."""
        return Rect(self.x + dx, self.y + dy, self.w, self.h)

    def contains(self, point: Point) -> bool:
        """Whether the point lies inside; the right and lower edges do not belong to it."""
        return self.x <= point[0] < self.x + self.w and self.y <= point[1] < self.y + self.h

    def holds(self, other: "Rect", slack: float = 0.0) -> bool:
        """Whether the other lies wholly inside, give or take `slack` pixels."""
        return (
            self.x <= other.x + slack
            and self.y <= other.y + slack
            and self.right >= other.right - slack
            and self.bottom >= other.bottom - slack
        )

    def intersects(self, other: "Rect") -> bool:
        """Whether they share any area."""
        left, top, w, h = self
        x, y, wide, high = other
        return left < x + wide and x < left + w and top < y + high and y < top + h

    def common(self, other: "Rect") -> "Rect":
        """The area both share; of no size where there is none."""
        # Spelled out: it is asked for some hundred times a frame.
        left, top, w, h = self
        x, y, wide, high = other
        right = left + w if left + w < x + wide else x + wide
        bottom = top + h if top + h < y + high else y + high
        left = left if left > x else x
        top = top if top > y else y
        return Rect(left, top, right - left if right > left else 0.0, bottom - top if bottom > top else 0.0)

    def union(self, other: "Rect") -> "Rect":
        """The smallest rectangle that holds both."""
        x, y = min(self.x, other.x), min(self.y, other.y)
        return Rect(x, y, max(self.right, other.right) - x, max(self.bottom, other.bottom) - y)

    def cut_left(self, w: float) -> tuple["Rect", "Rect"]:
        """(the left piece, w wide; the rest)."""
        return Rect(self.x, self.y, w, self.h), Rect(self.x + w, self.y, max(0.0, self.w - w), self.h)

    def cut_right(self, w: float) -> tuple["Rect", "Rect"]:
        """(the right piece, w wide; the rest)."""
        return Rect(self.right - w, self.y, w, self.h), Rect(self.x, self.y, max(0.0, self.w - w), self.h)

    def cut_top(self, h: float) -> tuple["Rect", "Rect"]:
        """(the upper piece, h high; the rest)."""
        return Rect(self.x, self.y, self.w, h), Rect(self.x, self.y + h, self.w, max(0.0, self.h - h))

    def cut_bottom(self, h: float) -> tuple["Rect", "Rect"]:
        """(the lower piece, h high; the rest)."""
        return Rect(self.x, self.bottom - h, self.w, h), Rect(self.x, self.y, self.w, max(0.0, self.h - h))

    def mirrored_in(self, frame: "Rect") -> "Rect":
        """Where it lies when the frame is read from right to left."""
        return Rect(frame.x + frame.right - self.right, self.y, self.w, self.h)


def bounding(points: Iterable[Point], margin: float = 0.0) -> Rect:
    """The smallest rectangle round the points, with a margin.  Raises ValueError if there are none."""
    xs, ys = zip(*points, strict=True)
    x, y = min(xs) - margin, min(ys) - margin
    return Rect(x, y, max(xs) + margin - x, max(ys) + margin - y)
