"""Flat outlines with holes: area, centre and second moments, and what is no outline.

Corners are pairs (along, up) in the outline's own coordinates, in either sense of going round.
"""

from dataclasses import dataclass
from functools import lru_cache
from math import fsum

from lab.mechanics.checks import MechanicsError, finite
from lab.mechanics.ring_crossings import holders, meeting_sides

Corner = tuple[float, float]
Ring = tuple[Corner, ...]

MOST_CORNERS = 500
"""Most corners of one outline with its holes.  Every side is held against every other, so the time grows with
the square; 500 trace a curve to a thousandth of its size."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlaneMoments:
    """area_m2.  centre_m: along and up, in the outline's own coordinates.  along2_m2, up2_m2, product_m2: the
    means over the area of x², z² and x z about that centre."""

    area_m2: float
    centre_m: Corner
    along2_m2: float
    up2_m2: float
    product_m2: float


@lru_cache(maxsize=256)
def polygon_moments(outline_m: Ring, holes_m: tuple[Ring, ...] = ()) -> PlaneMoments:
    """Area, centre and second moments of a simple outline less its holes, exact but for round-off.

    outline_m: at least three corners (along, up).  holes_m: outlines inside it.  Both as `checked_rings`
    gives them.  Raises MechanicsError where nothing is left.  Source: S-41.
    """
    # Sums are taken about the outline's middle: far from it, the difference of two large sums is noise.
    middle = tuple((min(c[axis] for c in outline_m) + max(c[axis] for c in outline_m)) / 2.0 for axis in (0, 1))
    rings = [(outline_m, 1.0), *((hole, -1.0) for hole in holes_m)]
    sums = [_ring_sums(ring, (middle[0], middle[1]), sign) for ring, sign in rings]
    area, first_x, first_z, second_x, second_z, product = (fsum(terms) for terms in zip(*sums, strict=True))
    if area <= 0.0:
        raise MechanicsError(f"area of the outline less its holes is {area} m²; it must be above 0")
    x, z = first_x / area, first_z / area
    return PlaneMoments(
        area_m2=area,
        centre_m=(middle[0] + x, middle[1] + z),
        along2_m2=second_x / area - x * x,
        up2_m2=second_z / area - z * z,
        product_m2=product / area - x * z,
    )


def _ring_sums(ring: Ring, origin: Corner, sign: float) -> tuple[float, float, float, float, float, float]:
    """∫ of 1, x, z, x², z², x z over a ring about an origin, by Green's theorem; times the sign."""
    corners = [(x - origin[0], z - origin[1]) for x, z in ring]
    terms: list[tuple[float, ...]] = []
    for (x0, z0), (x1, z1) in zip(corners, [*corners[1:], corners[0]], strict=True):
        cross = x0 * z1 - x1 * z0
        terms.append(
            (
                cross / 2.0,
                cross * (x0 + x1) / 6.0,
                cross * (z0 + z1) / 6.0,
                cross * (x0 * x0 + x0 * x1 + x1 * x1) / 12.0,
                cross * (z0 * z0 + z0 * z1 + z1 * z1) / 12.0,
                cross * (2.0 * (x0 * z0 + x1 * z1) + x0 * z1 + x1 * z0) / 24.0,
            )
        )
    area, *others = (fsum(column) for column in zip(*terms, strict=True))
    if area < 0.0:  # gone round clockwise
        sign = -sign
    first_x, first_z, second_x, second_z, product = (sign * other for other in others)
    return sign * area, first_x, first_z, second_x, second_z, product


def checked_rings(
    called: str, outline_m: Ring, holes_m: tuple[Ring, ...] = (), *, corners: int | None = None
) -> tuple[Ring, tuple[Ring, ...]]:
    """The outline and its holes as plain floats, fit for `polygon_moments`.

    called: what messages call the shape.  corners: how many corners the outline must have, where it matters.
    A last corner that repeats the first is dropped.  Raises MechanicsError if a ring has under three corners
    or no area, meets itself, or a hole meets the outline or another hole, or lies outside or inside of it.
    """
    outline = _ring(f"outline of {called}", outline_m)
    if corners is not None and len(outline) != corners:
        raise MechanicsError(f"outline of {called} has {len(outline)} corners; it must have {corners}")
    holes = tuple(_ring(f"hole {number} of {called}", hole) for number, hole in enumerate(holes_m, start=1))
    count = len(outline) + sum(len(hole) for hole in holes)
    if count > MOST_CORNERS:
        raise MechanicsError(f"outline of {called} has {count} corners with its holes; use at most {MOST_CORNERS}")
    names = [f"outline of {called}", *(f"hole {number} of {called}" for number in range(1, len(holes) + 1))]
    rings = (outline, *holes)
    for name, ring in zip(names, rings, strict=True):
        _no_corner_twice(name, ring)
    _apart(names, rings)
    return outline, holes


def _ring(what: str, corners: Ring) -> Ring:
    ring = []
    for number, corner in enumerate(corners, start=1):
        if len(corner) != 2:
            raise MechanicsError(f"corner {number} of the {what} has {len(corner)} numbers; it must have two")
        ring.append(tuple(finite(f"corner {number} of the {what}", value, "m") for value in corner))
    if len(ring) > 1 and ring[0] == ring[-1]:
        ring.pop()
    if len(ring) < 3:
        raise MechanicsError(f"the {what} has {len(ring)} corners; it must have three or more")
    return tuple((x, z) for x, z in ring)


def _no_corner_twice(what: str, ring: Ring) -> None:
    for number, (corner, after) in enumerate(zip(ring, (*ring[1:], ring[0]), strict=True)):
        if corner == after:
            raise MechanicsError(
                f"corners {number + 1} and {(number + 1) % len(ring) + 1} of the {what} are at one place; leave one out"
            )


def _apart(names: list[str], rings: tuple[Ring, ...]) -> None:
    """Raise where a ring meets itself or another, or a hole is not inside the outline and out of other holes."""
    if (met := meeting_sides(rings)) is not None:
        (first, side), (second, other) = met
        if first == second:
            raise MechanicsError(
                f"the {names[first]} crosses or touches itself: its side {_side(side, rings[first])} meets its side "
                f"{_side(other, rings[first])}; give the corners in order, once round"
            )
        raise MechanicsError(
            f"the {names[second]} meets the {names[first]}, at its side {_side(other, rings[second])}; "
            "a hole must lie inside the outline and apart from other holes"
        )
    for number, around in enumerate(holders(rings)):
        if number and around != (0,):
            where = f"outside the {names[0]}" if 0 not in around else f"inside the {names[around[1]]}"
            raise MechanicsError(
                f"the {names[number]} lies {where}; a hole must lie inside the outline and apart from other holes"
            )


def _side(number: int, ring: Ring) -> str:
    return f"{number + 1}–{(number + 1) % len(ring) + 1}"
