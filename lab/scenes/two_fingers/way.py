"""What two fingers feel on their way in: the data of the strip below the picture."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache

from lab.mechanics import FingerForces, FingerSlide

STEPS_A_LEG = 10
"""Places of a leg that are worked out: the loads are curved, and so many pieces look it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WayPoint:
    """One instant. gap_m: how far apart the fingers are; left_m, right_m: where.  forces: what they feel."""

    gap_m: float
    left_m: float
    right_m: float
    forces: FingerForces


def way_points(slide: FingerSlide, *, to_gap_m: float = 0.0) -> tuple[WayPoint, ...]:
    """The way from its start until the fingers are so far apart; left out, to its end. None where it is yet to begin.

    Where one finger stops and the other starts there are two points: the friction falls there.
    """
    whole = _whole(slide)
    if to_gap_m <= whole[-1].gap_m:
        return whole
    on = next((leg for leg in slide.legs if leg.gap_m[0] > to_gap_m >= leg.gap_m[1]), None)
    if on is None:
        return ()
    past = tuple(point for point in whole if point.gap_m > to_gap_m)
    return (*past, _point(replace(slide, legs=(on,)), to_gap_m))


@lru_cache(maxsize=8)
def _whole(slide: FingerSlide) -> tuple[WayPoint, ...]:
    points = []
    for leg in slide.legs:
        # By itself, so that its first point has its own friction and not what was before the fall.
        alone, (start_m, end_m) = replace(slide, legs=(leg,)), leg.gap_m
        steps = (start_m + (end_m - start_m) * step / STEPS_A_LEG for step in range(STEPS_A_LEG + 1))
        points += [_point(alone, gap_m) for gap_m in steps]
    return tuple(points)


def _point(leg: FingerSlide, gap_m: float) -> WayPoint:
    """leg: a slide of this leg alone."""
    left_m, right_m = leg.places_m(gap_m)
    return WayPoint(gap_m=gap_m, left_m=left_m, right_m=right_m, forces=leg.forces_at(gap_m))
