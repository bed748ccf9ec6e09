"""Round solids: cone, sphere, hemisphere.

A solid's own centre, which is what a part's place names, is its centre of volume.  `centre_m` says where that
lies from the middle of its flat face.
"""

from dataclasses import dataclass
from math import hypot

from lab.mechanics.axes import Axis, axis_index, on_axis
from lab.mechanics.checks import Vector, positive


def beside(direction: Vector, axis: Axis) -> float:
    """How much of a direction of length one lies off an axis."""
    others = [value for index, value in enumerate(direction) if index != axis_index(axis)]
    return hypot(*others)


@dataclass(frozen=True, slots=True)
class Cone:
    """A solid cone; its tip points the positive way of its axis.  radius_m: of its base.  length_m: base to tip.
    Both above 0.  Raises MechanicsError.  Source: S-42."""

    radius_m: float
    length_m: float
    axis: Axis = "along"

    def __post_init__(self) -> None:
        axis_index(self.axis)
        object.__setattr__(self, "radius_m", positive("radius of the cone", self.radius_m, "m"))
        object.__setattr__(self, "length_m", positive("length of the cone", self.length_m, "m"))

    @property
    def centre_m(self) -> Vector:
        """A quarter of the length from the middle of the base."""
        return on_axis(self.axis, self.length_m / 4.0, 0.0)

    @property
    def extent_m(self) -> Vector:
        """The length on its axis, the diameter beside it."""
        return on_axis(self.axis, self.length_m, 2.0 * self.radius_m)

    @property
    def unit_inertia_m2(self) -> Vector:
        """3 r² / 10 about its axis; half of that and 3 L² / 80 across it."""
        round_part = 0.3 * self.radius_m**2
        return on_axis(self.axis, round_part, round_part / 2.0 + 3.0 / 80.0 * self.length_m**2)

    def reach_m(self, direction: Vector) -> float:
        """How far it reaches from its own centre in a direction of length one."""
        ahead = direction[axis_index(self.axis)]
        base = self.radius_m * beside(direction, self.axis) - ahead * self.length_m / 4.0
        return max(base, ahead * self.length_m * 0.75)


@dataclass(frozen=True, slots=True)
class Sphere:
    """A solid ball.  radius_m: above 0.  Raises MechanicsError.  Source: S-04."""

    radius_m: float

    def __post_init__(self) -> None:
        object.__setattr__(self, "radius_m", positive("radius of the sphere", self.radius_m, "m"))

    @property
    def extent_m(self) -> Vector:
        """The diameter on every axis."""
        return 2.0 * self.radius_m, 2.0 * self.radius_m, 2.0 * self.radius_m

    @property
    def unit_inertia_m2(self) -> Vector:
        """Two fifths of r² about every axis."""
        return 0.4 * self.radius_m**2, 0.4 * self.radius_m**2, 0.4 * self.radius_m**2

    def reach_m(self, direction: Vector) -> float:
        """How far it reaches from its own centre in a direction of length one."""
        return self.radius_m * hypot(*direction)


@dataclass(frozen=True, slots=True)
class Hemisphere:
    """A solid half ball; its dome points the positive way of its axis.  radius_m: above 0.
    Raises MechanicsError.  Source: S-42."""

    radius_m: float
    axis: Axis = "up"

    def __post_init__(self) -> None:
        axis_index(self.axis)
        object.__setattr__(self, "radius_m", positive("radius of the hemisphere", self.radius_m, "m"))

    @property
    def centre_m(self) -> Vector:
        """Three eighths of r from the middle of the flat face."""
        return on_axis(self.axis, 0.375 * self.radius_m, 0.0)

    @property
    def extent_m(self) -> Vector:
        """The radius on its axis, the diameter beside it."""
        return on_axis(self.axis, self.radius_m, 2.0 * self.radius_m)

    @property
    def unit_inertia_m2(self) -> Vector:
        """2 r² / 5 about its axis; 83 r² / 320 across it."""
        return on_axis(self.axis, 0.4 * self.radius_m**2, 83.0 / 320.0 * self.radius_m**2)

    def reach_m(self, direction: Vector) -> float:
        """How far it reaches from its own centre in a direction of length one."""
        ahead, off = direction[axis_index(self.axis)], beside(direction, self.axis)
        rim = hypot(ahead, off) if ahead > 0.0 else off
        return self.radius_m * rim - ahead * self.radius_m * 0.375
