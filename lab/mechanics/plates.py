"""Thin plates seen from the side: triangle, polygon with holes, disc, half disc.  All lie along and up.

A plate's own centre, which is what a part's place names, is its centre of area.  `centre_m` says where that
lies from the plate's drawing zero: the outline's own (0, 0), a disc's middle, the middle of a half disc's
straight edge.  So a plate whose zero is to lie at a place has its part there plus `centre_m`.
"""

from dataclasses import dataclass, field
from math import hypot, pi

from lab.mechanics.axes import Tensor
from lab.mechanics.checks import Vector, positive
from lab.mechanics.polygons import PlaneMoments, Ring, checked_rings, polygon_moments


@dataclass(frozen=True, slots=True)
class Polygon:
    """A flat plate with straight sides, with or without holes.

    outline_m: three or more corners (along, up), in order, in coordinates of their own.  holes_m: more such
    outlines, inside it.  called: what messages call it.  Raises MechanicsError if it crosses or touches itself.
    Source: S-41.
    """

    outline_m: Ring
    holes_m: tuple[Ring, ...] = ()
    called: str = field(default="the polygon", kw_only=True, compare=False, repr=False)

    def __post_init__(self) -> None:
        outline, holes = checked_rings(self.called, self.outline_m, self.holes_m)
        object.__setattr__(self, "outline_m", outline)
        object.__setattr__(self, "holes_m", holes)
        polygon_moments(outline, holes)

    @property
    def moments(self) -> PlaneMoments:
        """Area, centre and second moments."""
        return polygon_moments(self.outline_m, self.holes_m)

    @property
    def centre_m(self) -> Vector:
        """The centre of area, in the outline's own coordinates."""
        along, up = self.moments.centre_m
        return along, 0.0, up

    @property
    def extent_m(self) -> Vector:
        """The size of its bounding box; no thickness across."""
        return _outline_extent(self.outline_m)

    @property
    def unit_inertia_m2(self) -> Tensor:
        """Second moments of its area, each over the area."""
        return _plate_inertia(self.moments)

    def reach_m(self, direction: Vector) -> float:
        """How far it reaches from its own centre in a direction of length one."""
        return _outline_reach(self.outline_m, self.moments.centre_m, direction)


@dataclass(frozen=True, slots=True)
class Triangle:
    """A flat triangular plate.  outline_m: three corners (along, up), in coordinates of their own.
    called: what messages call it.  Raises MechanicsError.  Source: S-41."""

    outline_m: Ring
    called: str = field(default="the triangle", kw_only=True, compare=False, repr=False)

    def __post_init__(self) -> None:
        outline, _ = checked_rings(self.called, self.outline_m, corners=3)
        object.__setattr__(self, "outline_m", outline)
        polygon_moments(outline)

    @property
    def moments(self) -> PlaneMoments:
        """Area, centre and second moments."""
        return polygon_moments(self.outline_m)

    @property
    def centre_m(self) -> Vector:
        """The mean of the corners, in the outline's own coordinates."""
        along, up = self.moments.centre_m
        return along, 0.0, up

    @property
    def extent_m(self) -> Vector:
        """The size of its bounding box; no thickness across."""
        return _outline_extent(self.outline_m)

    @property
    def unit_inertia_m2(self) -> Tensor:
        """Second moments of its area, each over the area."""
        return _plate_inertia(self.moments)

    def reach_m(self, direction: Vector) -> float:
        """How far it reaches from its own centre in a direction of length one."""
        return _outline_reach(self.outline_m, self.moments.centre_m, direction)


def _plate_inertia(moments: PlaneMoments) -> Tensor:
    along2, up2, product = moments.along2_m2, moments.up2_m2, moments.product_m2
    return (up2, 0.0, -product), (0.0, along2 + up2, 0.0), (-product, 0.0, along2)


def _outline_extent(outline: Ring) -> Vector:
    along, up = (max(corner[axis] for corner in outline) - min(corner[axis] for corner in outline) for axis in (0, 1))
    return along, 0.0, up


def _outline_reach(outline: Ring, centre: tuple[float, float], direction: Vector) -> float:
    return max((x - centre[0]) * direction[0] + (z - centre[1]) * direction[2] for x, z in outline)


@dataclass(frozen=True, slots=True)
class Disc:
    """A thin round plate.  radius_m: above 0.  Raises MechanicsError.  Source: S-04."""

    radius_m: float

    def __post_init__(self) -> None:
        object.__setattr__(self, "radius_m", positive("radius of the disc", self.radius_m, "m"))

    @property
    def extent_m(self) -> Vector:
        """The diameter along and up."""
        return 2.0 * self.radius_m, 0.0, 2.0 * self.radius_m

    @property
    def unit_inertia_m2(self) -> Vector:
        """Half of r² about its axis, a quarter about a diameter."""
        return self.radius_m**2 / 4.0, self.radius_m**2 / 2.0, self.radius_m**2 / 4.0

    def reach_m(self, direction: Vector) -> float:
        """How far it reaches from its own centre in a direction of length one."""
        return self.radius_m * hypot(direction[0], direction[2])


@dataclass(frozen=True, slots=True)
class HalfDisc:
    """A thin half-round plate, its straight edge along and below.  radius_m: above 0.
    Raises MechanicsError.  Source: S-42."""

    radius_m: float

    def __post_init__(self) -> None:
        object.__setattr__(self, "radius_m", positive("radius of the half disc", self.radius_m, "m"))

    @property
    def centre_m(self) -> Vector:
        """4 r / 3π above the middle of the straight edge."""
        return 0.0, 0.0, 4.0 * self.radius_m / (3.0 * pi)

    @property
    def extent_m(self) -> Vector:
        """The diameter along, the radius up."""
        return 2.0 * self.radius_m, 0.0, self.radius_m

    @property
    def unit_inertia_m2(self) -> Vector:
        """A quarter of r² about each diameter, less the way to the centre where that lies across it."""
        quarter, rise = self.radius_m**2 / 4.0, self.centre_m[2]
        return quarter - rise * rise, 2.0 * quarter - rise * rise, quarter

    def reach_m(self, direction: Vector) -> float:
        """How far it reaches from its own centre in a direction of length one."""
        along, _, up = direction
        rim = hypot(along, up) if up > 0.0 else abs(along)
        return self.radius_m * rim - up * self.centre_m[2]
