"""Shapes of parts: how far they reach, and how hard they are to turn.

Each shape is centred on its part's own centre.  Masses are spread evenly.  A new shape is a frozen
dataclass with `extent_m` and `unit_inertia_m2`, added to `Shape`.
"""

from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from lab.mechanics.checks import MechanicsError, Vector, not_negative, positive, vector

Axis = Literal["along", "across", "up"]
AXES: tuple[Axis, ...] = ("along", "across", "up")


def _axis_index(axis: str) -> int:
    if axis not in AXES:
        raise MechanicsError(f"axis is {axis!r}; it must be one of {', '.join(AXES)}")
    return AXES.index(axis)


def _on_axis(axis: Axis, on_axis: float, off_axis: float) -> Vector:
    """Three numbers: one value on the axis, the other on the two beside it."""
    first, second, third = (on_axis if name == axis else off_axis for name in AXES)
    return first, second, third


@dataclass(frozen=True, slots=True)
class Point:
    """All the mass in one place."""

    @property
    def extent_m(self) -> Vector:
        """Nothing on any axis."""
        return 0.0, 0.0, 0.0

    @property
    def unit_inertia_m2(self) -> Vector:
        """Nothing about any axis."""
        return 0.0, 0.0, 0.0


POINT = Point()


@dataclass(frozen=True, slots=True)
class Rod:
    """A thin straight rod.  length_m: above 0.  Raises MechanicsError.  Source: S-04."""

    length_m: float
    axis: Axis = "along"

    def __post_init__(self) -> None:
        _axis_index(self.axis)
        object.__setattr__(self, "length_m", positive("length of the rod", self.length_m, "m"))

    @property
    def extent_m(self) -> Vector:
        """The length on the rod's axis, nothing beside it."""
        return _on_axis(self.axis, self.length_m, 0.0)

    @property
    def unit_inertia_m2(self) -> Vector:
        """A twelfth of the length squared, and nothing about its own axis."""
        return _on_axis(self.axis, 0.0, self.length_m**2 / 12.0)


@dataclass(frozen=True, slots=True)
class Rectangle:
    """A thin plate seen from the side: length_m along, width_m up.  Raises MechanicsError.  Source: S-04."""

    length_m: float
    width_m: float

    def __post_init__(self) -> None:
        object.__setattr__(self, "length_m", positive("length of the rectangle", self.length_m, "m"))
        object.__setattr__(self, "width_m", positive("width of the rectangle", self.width_m, "m"))

    @property
    def extent_m(self) -> Vector:
        """Length along, no thickness across, width up."""
        return self.length_m, 0.0, self.width_m

    @property
    def unit_inertia_m2(self) -> Vector:
        """A twelfth of the squares of the sides that lie off each axis."""
        length2, width2 = self.length_m**2 / 12.0, self.width_m**2 / 12.0
        return width2, length2 + width2, length2


@dataclass(frozen=True, slots=True)
class Box:
    """A solid block.  size_m: along, across, up, each above 0.  Raises MechanicsError.  Source: S-04."""

    size_m: Vector

    def __post_init__(self) -> None:
        size = vector("size of the box", self.size_m, "m")
        along, across, up = (positive("size of the box", side, "m") for side in size)
        object.__setattr__(self, "size_m", (along, across, up))

    @property
    def extent_m(self) -> Vector:
        """The block's own size."""
        return self.size_m

    @property
    def unit_inertia_m2(self) -> Vector:
        """A twelfth of the squares of the sides that lie off each axis."""
        along, across, up = (side**2 / 12.0 for side in self.size_m)
        return across + up, along + up, along + across


@dataclass(frozen=True, slots=True)
class Cylinder:
    """A round bar or tube.  radius_m, length_m: above 0; inner_m: 0 or above, under radius_m.
    Raises MechanicsError.  Source: S-04."""

    radius_m: float
    length_m: float
    inner_m: float = 0.0
    axis: Axis = "along"

    def __post_init__(self) -> None:
        _axis_index(self.axis)
        object.__setattr__(self, "radius_m", positive("radius of the cylinder", self.radius_m, "m"))
        object.__setattr__(self, "length_m", positive("length of the cylinder", self.length_m, "m"))
        object.__setattr__(self, "inner_m", not_negative("inner radius of the cylinder", self.inner_m, "m"))
        if self.inner_m >= self.radius_m:
            raise MechanicsError(
                f"inner radius of the cylinder is {self.inner_m} m; it must be under its radius, {self.radius_m} m"
            )

    @property
    def extent_m(self) -> Vector:
        """The length on its axis, the diameter beside it."""
        return _on_axis(self.axis, self.length_m, 2.0 * self.radius_m)

    @property
    def unit_inertia_m2(self) -> Vector:
        """(R² + r²) / 2 about its axis; half of that and a twelfth of L² across it."""
        round_part = (self.radius_m**2 + self.inner_m**2) / 2.0
        return _on_axis(self.axis, round_part, round_part / 2.0 + self.length_m**2 / 12.0)


Shape = Point | Rod | Rectangle | Box | Cylinder


def extent_m(shape: Shape) -> Vector:
    """How far a shape reaches in all: its size along, across and up, in metres."""
    return shape.extent_m


def unit_inertia_m2(shape: Shape) -> NDArray[np.float64]:
    """The inertia of one kilogram of a shape about its own centre: (3, 3), m².  Source: S-04."""
    return np.diag(shape.unit_inertia_m2)
