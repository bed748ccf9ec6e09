"""What an airframe's balance point means: against its neutral point, its plane of symmetry and its limits.

All of it is worked out from the airframe alone, and from what its tanks hold now.
"""

from __future__ import annotations

from functools import lru_cache

from lab.mechanics import (
    MechanicsError,
    NeutralPoint,
    Part,
    PitchMargin,
    Standing,
    Surface,
    SymmetryPlane,
    Tank,
    balance_point_doubt_m,
    neutral_point,
    pitch_margin,
    standing,
    symmetry_planes,
)
from lab.simulation.benches.airframe import AirframeBench
from lab.simulation.commands import Side

LEVEL_SHARE = 1e-9
"""Nearer to where it is held up than this share of the way along that there is, it stays level."""


def neutral_of(state: AirframeBench) -> NeutralPoint | None:
    """Its neutral point; None where it has no wing."""
    return _neutral(state.surfaces)


def margin_of(state: AirframeBench) -> PitchMargin | None:
    """How far ahead of its neutral point it balances; with how sure that is, by its doubts."""
    neutral = neutral_of(state)
    if neutral is None:
        return None
    doubt_m = balance_point_doubt_m(state.parts)
    return pitch_margin(neutral, state.sum.balance_point_m[0], 0.0 if doubt_m is None else doubt_m[0])


def plane_of(state: AirframeBench) -> SymmetryPlane | None:
    """The plane of symmetry that stands upright along it, if there is one or nearly one."""
    return _plane(state.parts)


def standing_of(state: AirframeBench) -> Standing | None:
    """How it stands to its limits; None where it has none."""
    return None if state.limits is None else standing(state.limits, state.sum.balance_point_m, state.sum.mass_kg)


def fuller_tank(state: AirframeBench, *, left: bool) -> Tank | None:
    """The tank on one side that holds more than its twin of the same size on the other; None for none."""
    for tank in state.tanks_now:
        along, across = tank.at_m[:2]
        if (across < 0.0) != left or across == 0.0:
            continue
        twin = next(
            (each for each in state.tanks_now if abs(each.at_m[1] + across) + abs(each.at_m[0] - along) < 1e-6), None
        )
        if twin is not None and tank.mass_kg > twin.mass_kg:
            return tank
    return None


def held_up_at_m(state: AirframeBench) -> float | None:
    """Where it is held up for the guess: at its neutral point, else in the middle of its limits; None for neither."""
    neutral = neutral_of(state)
    if neutral is not None:
        return neutral.at_m
    found = standing_of(state)
    if found is None or not found.along_spans_m:
        return None
    return (found.along_spans_m[0][0] + found.along_spans_m[-1][1]) / 2.0


def drops(state: AirframeBench) -> Side | None:
    """Which end drops of what is so held up, the nose being at the left."""
    at_m = held_up_at_m(state)
    if at_m is None:
        return None
    low, high = state.rail_m
    off_m = state.sum.balance_point_m[0] - at_m
    if abs(off_m) <= LEVEL_SHARE * (high - low):
        return "level"
    return "left" if off_m < 0.0 else "right"


@lru_cache(maxsize=32)
def _neutral(surfaces: tuple[Surface, ...]) -> NeutralPoint | None:
    if all(surface.vertical for surface in surfaces):
        return None
    try:
        return neutral_point(surfaces)
    except MechanicsError:
        return None


@lru_cache(maxsize=32)
def _plane(parts: tuple[Part, ...]) -> SymmetryPlane | None:
    return next((plane for plane in symmetry_planes(parts) if plane.saves == "across"), None)
