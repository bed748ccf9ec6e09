"""Outlines of plates as whole numbers of nanometres: what lies inside, and how an outline falls into triangles.

Corners are kept to the nanometre, so every question about them has an exact answer, whatever the round-off.
"""

from __future__ import annotations

from functools import lru_cache

Corner = tuple[float, float]
Ring = tuple[Corner, ...]
Spot = tuple[int, int]

PER_M = 10**9
DECIMALS = 9

FARTHEST_M = 10.0
"""No corner lies farther from zero along or up, so that every sum stays a number."""


def on_grid(value_m: float) -> float:
    """The nearest whole nanometre, m; never −0.0, for equal places must be the same bits."""
    return round(value_m, DECIMALS) + 0.0


def bench_place(at_m: float, up_m: float) -> Corner | None:
    """A place on the grid; None where it is none on this bench."""
    if not (abs(at_m) <= FARTHEST_M and abs(up_m) <= FARTHEST_M):
        return None
    return on_grid(at_m), on_grid(up_m)


def ring_on_grid(ring: Ring) -> Ring:
    """The ring with each corner at the nearest whole nanometre."""
    return tuple((on_grid(x), on_grid(z)) for x, z in ring)


def in_wood(place: Corner, outline: Ring, holes: tuple[Ring, ...]) -> bool:
    """Whether a place lies on a plate; on its edge counts."""
    spot = _spot(place)
    return _side_of(spot, _spots(outline)) >= 0 and all(_side_of(spot, _spots(hole)) <= 0 for hole in holes)


@lru_cache(maxsize=256)
def triangles_of(outline: Ring) -> tuple[Ring, ...]:
    """The outline cut into triangles, each with its corners anticlockwise.

    outline: simple, at least three corners, of any sense.  Ears are cut off one after the other, of those that there
    are always the one with the shortest cut.  Corners on a straight edge make no triangle.
    """
    spots = _spots(outline)
    if _doubled_area(spots) < 0:
        spots = spots[::-1]
    spots = _without_straight(spots)
    found: list[tuple[Spot, Spot, Spot]] = []
    while len(spots) > 3:
        index = _best_ear(spots)
        found.append((spots[index - 1], spots[index], spots[(index + 1) % len(spots)]))
        spots = _without_straight([*spots[:index], *spots[index + 1 :]])
    if len(spots) == 3:
        found.append((spots[0], spots[1], spots[2]))
    places = {_spot(corner): corner for corner in outline}
    return tuple(tuple(places[spot] for spot in triangle) for triangle in found)


def _spot(place: Corner) -> Spot:
    return round(place[0] * PER_M), round(place[1] * PER_M)


def _spots(ring: Ring) -> list[Spot]:
    return [_spot(corner) for corner in ring]


def _cross(a: Spot, b: Spot, c: Spot) -> int:
    """Twice the area of a triangle, positive where it goes round anticlockwise."""
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _doubled_area(spots: list[Spot]) -> int:
    return sum(a[0] * b[1] - a[1] * b[0] for a, b in zip(spots, [*spots[1:], spots[0]], strict=True))


def _without_straight(spots: list[Spot]) -> list[Spot]:
    """Without the corners at which the ring does not turn, nor those that the loss of others makes so."""
    kept = list(spots)
    while len(kept) >= 3:
        turning = [
            spot for index, spot in enumerate(kept) if _cross(kept[index - 1], spot, kept[(index + 1) % len(kept)]) != 0
        ]
        if len(turning) == len(kept):
            return kept
        kept = turning
    return []


def _best_ear(spots: list[Spot]) -> int:
    """The corner whose cutting off leaves a simple ring, with the shortest cut; there always is one."""
    ears = [index for index in range(len(spots)) if _is_ear(spots, index)]
    return min(ears, key=lambda index: (_squared(spots[index - 1], spots[(index + 1) % len(spots)]), index))


def _is_ear(spots: list[Spot], index: int) -> bool:
    a, b, c = spots[index - 1], spots[index], spots[(index + 1) % len(spots)]
    if _cross(a, b, c) <= 0:
        return False
    return not any(
        _cross(a, b, spot) >= 0 and _cross(b, c, spot) >= 0 and _cross(c, a, spot) >= 0
        for spot in spots
        if spot not in (a, b, c)
    )


def _squared(a: Spot, b: Spot) -> int:
    return (b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2


def _side_of(spot: Spot, ring: list[Spot]) -> int:
    """1 inside a ring, 0 on its edge, −1 outside."""
    inside = False
    for start, end in zip(ring, [*ring[1:], ring[0]], strict=True):
        turn = _cross(start, end, spot)
        if turn == 0 and _between(start, end, spot):
            return 0
        if (start[1] > spot[1]) != (end[1] > spot[1]) and (turn > 0) == (end[1] > start[1]):
            inside = not inside
    return 1 if inside else -1


def _between(start: Spot, end: Spot, spot: Spot) -> bool:
    return all(min(start[axis], end[axis]) <= spot[axis] <= max(start[axis], end[axis]) for axis in (0, 1))
