"""A body that tips off two or three supports: over which edge, and what the supports that are left still bear."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import hypot

import numpy as np

from lab.mechanics.bodies import PadBody, convex_outline_m
from lab.mechanics.checks import STANDARD_GRAVITY_M_S2, Vector
from lab.mechanics.moments import balance_of, inertia_about_kg_m2
from lab.mechanics.motions import PadMotion, course_of
from lab.mechanics.parts import Part, checked, total_mass_kg

TOUCHING_SHARE = 1e-6
"""Of its length: nearer than this to what it leans on, the body touches it. Above round-off, below sight."""

Spot = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Toppling:
    """How a body tips, worked out once.

    way: the level direction of its plane, along and across, of length one: with three supports the one it tips in.
    edge_m: how far that way the edge lies that it turns about.  body: as one body in the plane of `way` and up.
    bears: each support's share of what still presses on that edge.  floor_m: the height of the table.
    """

    way: Spot
    edge_m: float
    body: PadBody
    bears: tuple[float, ...]
    floor_m: float


def toppling_of(parts: Iterable[Part], supports_m: Sequence[Vector], *, underside_m: float, floor_m: float) -> Toppling:
    """How a body tips whose balance point lies beyond its supports.

    supports_m: two, taken as edges that run across, or three: of their triangle it turns about what lies nearest to
    the balance point, a side or a corner.  underside_m: the height of what stands on them.  It then moves as by
    `pad_tick` on a pad without width at `edge_m`.  Raises MechanicsError.  Source: S-09, S-46.
    """
    build = checked(parts)
    balance = balance_of(build)
    if len(supports_m) == 2:
        nearest = min(range(2), key=lambda number: abs(supports_m[number][0] - balance[0]))
        way, edge_m = (1.0, 0.0), supports_m[nearest][0]
        bears = tuple(float(number == nearest) for number in range(2))
    else:
        way, foot, bears = _nearest_of_triangle(supports_m, balance)
        edge_m = _that_way(way, foot)
    body = _body(build, balance, way, underside_m)
    return Toppling(way=way, edge_m=edge_m, body=body, bears=bears, floor_m=floor_m)


def _nearest_of_triangle(corners_m: Sequence[Vector], place: Vector) -> tuple[Spot, Spot, tuple[float, ...]]:
    """Of the places on a triangle's sides the nearest to one outside it: which way out, where, how it is shared."""
    found: list[tuple[float, Spot, Spot, tuple[float, ...]]] = []
    for first, second in ((0, 1), (1, 2), (2, 0)):
        start, end, third = corners_m[first], corners_m[second], corners_m[3 - first - second]
        side = (end[0] - start[0], end[1] - start[1])
        to = (place[0] - start[0], place[1] - start[1])
        share = min(1.0, max(0.0, (to[0] * side[0] + to[1] * side[1]) / (side[0] ** 2 + side[1] ** 2)))
        foot = (start[0] + share * side[0], start[1] + share * side[1])
        off = (place[0] - foot[0], place[1] - foot[1])
        away_m = hypot(*off)
        # Over a side it goes square to it, however little it is past it; over a corner straight outwards.
        way = _outward(side, (third[0] - start[0], third[1] - start[1])) if 0.0 < share < 1.0 or not away_m else (
            off[0] / away_m, off[1] / away_m)  # fmt: skip
        bears = [0.0, 0.0, 0.0]
        bears[first], bears[second] = 1.0 - share, share
        found.append((away_m, way, foot, tuple(bears)))
    _, way, foot, bears_ = min(found)
    return way, foot, bears_


def _outward(side: Spot, to_third: Spot) -> Spot:
    long = hypot(*side)
    normal = (side[1] / long, -side[0] / long)
    return (-normal[0], -normal[1]) if _that_way(normal, to_third) > 0.0 else normal


def _that_way(way: Spot, place: Sequence[float]) -> float:
    return way[0] * place[0] + way[1] * place[1]


def _body(parts: tuple[Part, ...], balance: Vector, way: Spot, underside_m: float) -> PadBody:
    """The parts as one body in the plane of a level direction and up, as `pad_body` makes it along."""
    axis = np.array((-way[1], way[0], 0.0))
    inertia = float(axis @ inertia_about_kg_m2(parts, balance) @ axis)
    inertia -= sum(float(axis @ np.array(part.own_inertia_kg_m2) @ axis) for part in parts if part.hold == "hung")
    boxes = [_box(part, way) for part in parts]
    left_m, right_m = min(low for low, *_ in boxes), max(high for _, high, *_ in boxes)
    corners = [(s, z) for low, high, bottom, top in boxes for s in (low, high) for z in (bottom, top)]
    return PadBody(
        mass_kg=total_mass_kg(parts),
        inertia_kg_m2=inertia,
        cg_m=(_that_way(way, balance), balance[2]),
        underside_m=underside_m,
        left_m=left_m,
        right_m=right_m,
        outline_m=convex_outline_m([(left_m, underside_m), (right_m, underside_m), *corners]),
    )


def _box(part: Part, way: Spot) -> tuple[float, float, float, float]:
    """How far a part reaches: least and most along a level direction, then lowest and highest."""
    at_m, up_m, reach = _that_way(way, part.at_m), part.at_m[2], part.shape.reach_m
    back, ahead = (-way[0], -way[1], 0.0), (way[0], way[1], 0.0)
    return at_m - reach(back), at_m + reach(ahead), up_m - reach((0.0, 0.0, -1.0)), up_m + reach((0.0, 0.0, 1.0))


def pressed_kg(toppling: Toppling, before: PadMotion, after: PadMotion, dt_s: float) -> float:
    """What the edge bore between two motions, as the mass that would press so at rest.

    While the body touches nothing else, that is its weight and what lifts it the quicker: m (g + z̈) / g, the mean over
    the time.  Where it leans on edge and table at rest, the lever's share: both push straight up.  Source: S-08, S-09.
    """
    mass_kg = toppling.body.mass_kg
    if after.phase == "down":
        return mass_kg * _leaning_share(toppling, after)
    if after.phase == "falls":
        return 0.0
    quicker_m_s2 = (after.vz_m_s - before.vz_m_s) / dt_s
    return max(0.0, mass_kg * (1.0 + quicker_m_s2 / STANDARD_GRAVITY_M_S2))


def _leaning_share(toppling: Toppling, motion: PadMotion) -> float:
    body, course = toppling.body, course_of(toppling.body, motion)
    near_m = TOUCHING_SHARE * (body.right_m - body.left_m)
    run_m, off_m = course.seen_m((toppling.edge_m, body.underside_m))
    first_m, last_m = body.ends_m
    if abs(off_m + body.rise_m) > near_m or not first_m - near_m <= run_m <= last_m + near_m:
        return 0.0
    low_m, corner = course.lowest_m(body.corners_m)
    if low_m > toppling.floor_m + near_m:
        return 1.0
    table_m = course.place_m(body.corners_m[corner])[0]
    apart_m = table_m - toppling.edge_m
    if abs(apart_m) <= near_m:
        return 0.0
    return min(1.0, max(0.0, (table_m - course.x_m) / apart_m))
