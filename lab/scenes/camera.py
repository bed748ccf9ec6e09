"""The camera: the one place where metres become pixels and y is turned over."""

from __future__ import annotations

import math
from dataclasses import dataclass

from lab.ui.geometry import Point


@dataclass(frozen=True, slots=True, kw_only=True)
class Camera:
    """How a bench lies in a window.

    px_per_m: pixels for a metre, the same along and up.  origin: the pixel of along 0, up 0.
    """

    px_per_m: float
    origin: Point

    def at(self, along_m: float, up_m: float = 0.0) -> Point:
        """The pixel of a place on the bench."""
        return self.x_px(along_m), self.y_px(up_m)

    def x_px(self, along_m: float) -> float:
        """The x of a place along."""
        return self.origin[0] + along_m * self.px_per_m

    def y_px(self, up_m: float) -> float:
        """The y of a height: up is less."""
        return self.origin[1] - up_m * self.px_per_m

    def length_px(self, length_m: float) -> float:
        """How long a length is on the screen."""
        return length_m * self.px_per_m

    def along_m(self, x_px: float) -> float:
        """The place along that an x shows."""
        return (x_px - self.origin[0]) / self.px_per_m

    def up_m(self, y_px: float) -> float:
        """The height that a y shows."""
        return (self.origin[1] - y_px) / self.px_per_m

    def length_m(self, length_px: float) -> float:
        """The length that so many pixels show."""
        return length_px / self.px_per_m


def turned_m(place_m: tuple[float, float], about_m: tuple[float, float], angle_rad: float) -> tuple[float, float]:
    """Where a place (along, up) of a body is when the body has turned about a point, anticlockwise positive."""
    along, up = place_m[0] - about_m[0], place_m[1] - about_m[1]
    cos, sin = math.cos(angle_rad), math.sin(angle_rad)
    return about_m[0] + along * cos - up * sin, about_m[1] + along * sin + up * cos
