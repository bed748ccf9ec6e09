"""What two fingers feel on their way in: the data of the strip below the picture."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from lab.mechanics import FingerForces, FingerLeg, FingerSlide

STEPS_A_LEG = 16
"""Places of a leg that are worked out: the loads are curved, and so many pieces look it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WayPoint:
    """One instant. gap_m: how far apart the fingers are; left_m, right_m: where.  forces: what they feel."""

    gap_m: float
    left_m: float
    right_m: float
    forces: FingerForces


def way_points(slide: FingerSlide, *, to_gap_m: float = 0.0) -> tuple[WayPoint, ...]:
    """The way from its start until the fingers are so far apart; left out, to its end.

    Where one finger stops and the other starts there are two points: the friction falls there.
    """
    return tuple(point for leg in slide.legs if leg.gap_m[0] > to_gap_m for point in _leg_points(slide, leg, to_gap_m))


def _leg_points(slide: FingerSlide, leg: FingerLeg, to_gap_m: float) -> Iterator[WayPoint]:
    # By itself, so that its first point has its own friction and not what was before the fall.
    alone = replace(slide, legs=(leg,))
    start_m, end_m = leg.gap_m[0], max(leg.gap_m[1], to_gap_m)
    for step in range(STEPS_A_LEG + 1):
        gap_m = start_m + (end_m - start_m) * step / STEPS_A_LEG
        left_m, right_m = leg.places_m(gap_m)
        yield WayPoint(gap_m=gap_m, left_m=left_m, right_m=right_m, forces=alone.forces_at(gap_m))
