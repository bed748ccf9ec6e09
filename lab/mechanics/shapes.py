"""Shapes of parts: how far they reach, and how hard they are to turn.

Each shape is centred on its part's own centre.  Masses are spread evenly.  A new shape is a frozen
dataclass with `extent_m`, `unit_inertia_m2` and `reach_m`, added to `Shape`; one whose own centre is not the
middle of its box has `centre_m` too.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from lab.mechanics.axes import Axis, Tensor, as_tensor, as_vector, axis_index, on_axis
from lab.mechanics.checks import MechanicsError, Vector, not_negative, positive, vector
from lab.mechanics.plates import Disc, HalfDisc, Polygon, Triangle
from lab.mechanics.solids import Cone, Hemisphere, Sphere, beside


def _box_reach_m(extent_m: Vector, direction: Vector) -> float:
    return sum(abs(ahead) * size for ahead, size in zip(direction, extent_m, strict=True)) / 2.0


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

    def reach_m(self, direction: Vector) -> float:
        """How far it reaches from its own centre in a direction of length one."""
        return _box_reach_m(self.extent_m, direction)


POINT = Point()


@dataclass(frozen=True, slots=True)
class Rod:
    """A thin straight rod.  length_m: above 0.  Raises MechanicsError.  Source: S-04."""

    length_m: float
    axis: Axis = "along"

    def __post_init__(self) -> None:
        axis_index(self.axis)
        object.__setattr__(self, "length_m", positive("length of the rod", self.length_m, "m"))

    @property
    def extent_m(self) -> Vector:
        """The length on the rod's axis, nothing beside it."""
        return on_axis(self.axis, self.length_m, 0.0)

    @property
    def unit_inertia_m2(self) -> Vector:
        """A twelfth of the length squared, and nothing about its own axis."""
        return on_axis(self.axis, 0.0, self.length_m**2 / 12.0)

    def reach_m(self, direction: Vector) -> float:
        """How far it reaches from its own centre in a direction of length one."""
        return _box_reach_m(self.extent_m, direction)


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

    def reach_m(self, direction: Vector) -> float:
        """How far it reaches from its own centre in a direction of length one."""
        return _box_reach_m(self.extent_m, direction)


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

    def reach_m(self, direction: Vector) -> float:
        """How far it reaches from its own centre in a direction of length one."""
        return _box_reach_m(self.extent_m, direction)


@dataclass(frozen=True, slots=True)
class Cylinder:
    """A round bar or tube.  radius_m, length_m: above 0; inner_m: 0 or above, under radius_m.
    Raises MechanicsError.  Source: S-04."""

    radius_m: float
    length_m: float
    inner_m: float = 0.0
    axis: Axis = "along"

    def __post_init__(self) -> None:
        axis_index(self.axis)
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
        return on_axis(self.axis, self.length_m, 2.0 * self.radius_m)

    @property
    def unit_inertia_m2(self) -> Vector:
        """(R² + r²) / 2 about its axis; half of that and a twelfth of L² across it."""
        round_part = (self.radius_m**2 + self.inner_m**2) / 2.0
        return on_axis(self.axis, round_part, round_part / 2.0 + self.length_m**2 / 12.0)

    def reach_m(self, direction: Vector) -> float:
        """How far it reaches from its own centre in a direction of length one."""
        ahead = abs(direction[axis_index(self.axis)])
        return ahead * self.length_m / 2.0 + self.radius_m * beside(direction, self.axis)


@dataclass(frozen=True, slots=True)
class Turned:
    """A shape turned about its own centre.  rotation: takes the shape's own coordinates into the build's."""

    shape: "Shape"
    rotation: Tensor

    @property
    def extent_m(self) -> Vector:
        """The size of its bounding box as it lies."""
        low, high = bounds_m(self)
        return high[0] - low[0], high[1] - low[1], high[2] - low[2]

    @property
    def unit_inertia_m2(self) -> Tensor:
        """The shape's own, turned."""
        turn = np.array(self.rotation)
        return as_tensor(turn @ unit_inertia_m2(self.shape) @ turn.T)

    @property
    def centre_m(self) -> Vector:
        """The shape's own, turned."""
        return as_vector(np.array(self.rotation) @ centre_m(self.shape))

    def reach_m(self, direction: Vector) -> float:
        """How far it reaches from its own centre in a direction of length one."""
        return self.shape.reach_m(as_vector(np.array(direction) @ np.array(self.rotation)))


Shape = (
    Point
    | Rod
    | Rectangle
    | Triangle
    | Polygon
    | Disc
    | HalfDisc
    | Box
    | Cylinder
    | Cone
    | Sphere
    | Hemisphere
    | Turned
)

Offset = Triangle | Polygon | HalfDisc | Cone | Hemisphere | Turned
"""Shapes whose own centre is not where they are drawn from."""


def extent_m(shape: Shape) -> Vector:
    """How far a shape reaches in all: its size along, across and up, in metres."""
    return shape.extent_m


def bounds_m(shape: Shape) -> tuple[Vector, Vector]:
    """The lowest and the highest place of a shape on each axis, from its own centre, in metres.

    Of a triangle, say, that is not half its size either way.
    """
    low = (-shape.reach_m((-1.0, 0.0, 0.0)), -shape.reach_m((0.0, -1.0, 0.0)), -shape.reach_m((0.0, 0.0, -1.0)))
    high = (shape.reach_m((1.0, 0.0, 0.0)), shape.reach_m((0.0, 1.0, 0.0)), shape.reach_m((0.0, 0.0, 1.0)))
    return low, high


def centre_m(shape: Shape) -> Vector:
    """Where a shape's own centre lies from where it is drawn from, in metres.

    Drawn from: an outline's own zero, the middle of a half disc's straight edge, of a cone's base, of a
    hemisphere's flat face; of every other shape its own centre, so (0, 0, 0).  Source: S-42.
    """
    return shape.centre_m if isinstance(shape, Offset) else (0.0, 0.0, 0.0)


def unit_inertia_m2(shape: Shape) -> NDArray[np.float64]:
    """The inertia of one kilogram of a shape about its own centre: (3, 3), m².  Source: S-04."""
    own = np.array(shape.unit_inertia_m2)
    return np.diag(own) if own.ndim == 1 else own
