"""A rigid body in the plane that can lie on a finger pad: its frame, its corners, where it is.

The body's own frame has its CG as zero; u points along its underside, n away from it.  Turned by an angle,
u = (cos, sin) and n = (−sin, cos).
"""

from collections.abc import Iterable
from dataclasses import dataclass
from math import cos, sin

from lab.mechanics.checks import MechanicsError, finite, not_negative, positive
from lab.mechanics.moments import balance_of, inertia_about_kg_m2
from lab.mechanics.parts import Part, checked, total_mass_kg
from lab.mechanics.shapes import bounds_m

Place = tuple[float, float]
"""Along and up, or u and n in a body's own frame, m."""

PAD_FRICTION = 0.4
"""Coulomb friction of a wooden tool on a fingertip, still and moving alike.  More, and it turns farther
before it slides.  A round number of common practice."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PadBody:
    """A body that can lie on a pad.

    mass_kg, inertia_kg_m2: the latter about its CG, on the axis across.  cg_m: along and up.
    underside_m: height of the straight face that rests on the pad; it reaches from left_m to right_m.
    outline_m: the corners of its convex outline, anticlockwise, along and up; the face's two ends unless said.
    friction: Coulomb's coefficient.  Raises MechanicsError.
    """

    mass_kg: float
    inertia_kg_m2: float
    cg_m: Place
    underside_m: float
    left_m: float
    right_m: float
    outline_m: tuple[Place, ...] = ()
    friction: float = PAD_FRICTION

    def __post_init__(self) -> None:
        positive("mass of the body", self.mass_kg, "kg")
        positive("inertia of the body", self.inertia_kg_m2, "kg m²")
        not_negative("friction of the body", self.friction, "(no unit)")
        finite("underside of the body", self.underside_m, "m")
        if not self.left_m < self.right_m:
            raise MechanicsError(
                f"the body reaches from {self.left_m} to {self.right_m} m; its right end must be right of its left"
            )
        if not self.left_m <= self.cg_m[0] <= self.right_m:
            raise MechanicsError(
                f"the body balances at {self.cg_m[0]} m; that must lie from its left end, {self.left_m} m, "
                f"to its right end, {self.right_m} m"
            )

    @property
    def rise_m(self) -> float:
        """How far the CG is above the underside; below 0 where the weights hang under it."""
        return self.cg_m[1] - self.underside_m

    @property
    def ends_m(self) -> Place:
        """The underside's two ends in the body's own frame, along u."""
        return self.left_m - self.cg_m[0], self.right_m - self.cg_m[0]

    @property
    def corners_m(self) -> tuple[Place, ...]:
        """The corners of its outline in its own frame (u, n), anticlockwise."""
        ends = (self.left_m, self.underside_m), (self.right_m, self.underside_m)
        return tuple((x - self.cg_m[0], z - self.cg_m[1]) for x, z in self.outline_m or ends)


@dataclass(frozen=True, slots=True, kw_only=True)
class Course:
    """Where a body is and how it moves: its CG, its angle, and their rates."""

    x_m: float
    z_m: float
    angle_rad: float
    vx_m_s: float = 0.0
    vz_m_s: float = 0.0
    rate_rad_s: float = 0.0

    def place_m(self, corner_m: Place) -> Place:
        """Where a point of the body's own frame (u, n) is now, along and up."""
        along, up = self.arm_m(corner_m)
        return self.x_m + along, self.z_m + up

    def arm_m(self, corner_m: Place) -> Place:
        """From the CG to a point of the body's own frame, along and up."""
        c, s = cos(self.angle_rad), sin(self.angle_rad)
        return corner_m[0] * c - corner_m[1] * s, corner_m[0] * s + corner_m[1] * c

    def lowest_m(self, corners_m: tuple[Place, ...]) -> tuple[float, int]:
        """How low the lowest of some corners of the body's own frame is, and which it is."""
        c, s = cos(self.angle_rad), sin(self.angle_rad)
        return min((self.z_m + u * s + n * c, number) for number, (u, n) in enumerate(corners_m))

    def seen_m(self, place_m: Place) -> Place:
        """A place along and up as the body's own frame (u, n) has it."""
        c, s = cos(self.angle_rad), sin(self.angle_rad)
        along, up = place_m[0] - self.x_m, place_m[1] - self.z_m
        return along * c + up * s, up * c - along * s


def pad_body(
    parts: Iterable[Part],
    *,
    underside_m: float,
    left_m: float,
    right_m: float,
    friction: float = PAD_FRICTION,
) -> PadBody:
    """The body that parts make, lying with its underside on a pad.

    underside_m: height of the face that rests.  left_m, right_m: how far that face reaches.  A hung part is
    taken as swinging with its hook, a point there.  Raises MechanicsError.  Source: S-04.
    """
    build = checked(parts)
    balance = balance_of(build)
    inertia = float(inertia_about_kg_m2(build, balance)[1, 1])
    inertia -= sum(part.own_inertia_kg_m2[1][1] for part in build if part.hold == "hung")
    boxes = [_box(part) for part in build if not part.cut]
    ends = [(left_m, underside_m), (right_m, underside_m)]
    return PadBody(
        mass_kg=total_mass_kg(build),
        inertia_kg_m2=inertia,
        cg_m=(balance[0], balance[2]),
        underside_m=underside_m,
        left_m=left_m,
        right_m=right_m,
        outline_m=convex_outline_m([*ends, *(corner for box in boxes for corner in box)]),
        friction=friction,
    )


def _box(part: Part) -> tuple[Place, ...]:
    """The four corners of the upright box that a part fills."""
    x, _, z = part.at_m
    low, high = bounds_m(part.shape)
    return tuple((x + along, z + up) for along in (low[0], high[0]) for up in (low[2], high[2]))


def convex_outline_m(points: Iterable[Place]) -> tuple[Place, ...]:
    """The corners of the least convex outline round some points, anticlockwise from the leftmost.  Source: S-54."""
    ordered = sorted(set(points))
    lower = _half_outline(ordered)
    upper = _half_outline(ordered[::-1])
    return tuple(lower[:-1] + upper[:-1]) or tuple(ordered)


def _half_outline(ordered: list[Place]) -> list[Place]:
    chain: list[Place] = []
    for point in ordered:
        while len(chain) > 1 and turn_m2(chain[-2], chain[-1], point) <= 0.0:
            chain.pop()
        chain.append(point)
    return chain


def turn_m2(first: Place, second: Place, third: Place) -> float:
    """Above 0 where the way from first to second to third turns anticlockwise; twice the area between.

    Source: S-41.
    """
    return (second[0] - first[0]) * (third[1] - first[1]) - (second[1] - first[1]) * (third[0] - first[0])
