"""Tasks that the hung plate sets by itself, from whatever is cut and clipped on."""

from __future__ import annotations

from math import radians

from lab.simulation.benches.plate import HungPlate
from lab.simulation.benches.plate_rings import in_wood
from lab.simulation.benches.tasks import Task, TaskKind
from lab.simulation.refused import msg

UPRIGHT_RAD = radians(1.0)
"""A plate that hangs so near to how it was held hangs as it was held: the eye tells no better."""

CLIPS_KG = (0.01, 0.02, 0.05)
"""The weights of the tray."""

CROSSES_BY = 0.5
"""The sine of the angle at which lines cross widely, 30°: flatter, and the crossing is a smear along both."""

TRIES = 40
"""Heights at which wood is looked for on an upright. More would find only slivers."""


def _tilt_rad(plate: HungPlate) -> float | None:
    """How far it comes to hang from how it is held; None where nothing makes it turn."""
    along_m, _, up_m = plate.sum.balance_point_m
    if (along_m, up_m) == (plate.pivot.at_m, plate.pivot.up_m):
        return None
    fall = plate.stilled().released().fall
    return None if fall is None else fall.rest_rad


def _upright(plate: HungPlate) -> bool:
    tilt_rad = _tilt_rad(plate)
    return tilt_rad is not None and abs(tilt_rad) <= UPRIGHT_RAD


def _wood_at(plate: HungPlate, along_m: float, low_m: float, high_m: float) -> bool:
    """Whether there is wood somewhere on an upright between two heights."""
    heights = (low_m + (high_m - low_m) * (step + 0.5) / TRIES for step in range(TRIES))
    return any(in_wood((along_m, up_m), plate.outline_m, plate.holes_m) for up_m in heights)


def _heights_m(plate: HungPlate) -> tuple[float, float]:
    ups = [up_m for _, up_m in plate.outline_m]
    return min(ups), max(ups)


def _at_rest(plate: HungPlate) -> bool:
    return not plate.held and not plate.moving


# --- by one more weight --------------------------------------------------------------------------------------


def _one_more(plate: HungPlate) -> float | None:
    """The lightest weight of the tray that has wood where it brings the balance point under the pin."""
    if _upright(plate):
        return None
    whole, pin = plate.sum, plate.pivot
    missing_kg_m = whole.mass_kg * (pin.at_m - whole.balance_point_m[0])
    low_m, high_m = _heights_m(plate)
    for mass_kg in CLIPS_KG:
        # Low enough that the whole still hangs below its pin.
        most_m = ((whole.mass_kg + mass_kg) * pin.up_m - whole.mass_kg * whole.balance_point_m[2]) / mass_kg
        top_m = min(high_m, most_m)
        if top_m > low_m and _wood_at(plate, pin.at_m + missing_kg_m / mass_kg, low_m, top_m):
            return mass_kg
    return None


def _has_one_more(task: Task[HungPlate], plate: HungPlate) -> bool:
    start = task.start
    same = (plate.rings_m, plate.pivot, plate.area_kg_m2) == (start.rings_m, start.pivot, start.area_kg_m2)
    one = len(plate.clips) == len(start.clips) + 1 and all(clip in plate.clips for clip in start.clips)
    return _at_rest(plate) and same and one and _upright(plate)


# --- by another pin ------------------------------------------------------------------------------------------


def _other_pin(plate: HungPlate) -> float | None:
    """Where it balances along, if there is wood to hang it by straight above that, and it does not hang so yet."""
    along_m, _, up_m = plate.sum.balance_point_m
    above_m = up_m + 0.05 * (_heights_m(plate)[1] - _heights_m(plate)[0])
    top_m = _heights_m(plate)[1]
    if _upright(plate) or top_m <= above_m or not _wood_at(plate, along_m, above_m, top_m):
        return None
    return along_m


def _has_other_pin(task: Task[HungPlate], plate: HungPlate) -> bool:
    start = task.start
    same = (plate.rings_m, plate.clips, plate.area_kg_m2) == (start.rings_m, start.clips, start.area_kg_m2)
    return _at_rest(plate) and same and _upright(plate)


# --- where plumb lines cross ---------------------------------------------------------------------------------


def _widest(plate: HungPlate) -> float:
    """The sine of the widest angle between two of its plumb lines; 0 where there are none."""
    ways = [line.down for line in plate.lines]
    return max((abs(x * other_z - z * other_x) for x, z in ways for other_x, other_z in ways), default=0.0)


def _cross(plate: HungPlate) -> float | None:
    """How widely lines are to cross, if they do not yet.  Any plate can be hung by two pins so that they do."""
    return CROSSES_BY if _widest(plate) < CROSSES_BY else None


def _crosses(task: Task[HungPlate], plate: HungPlate) -> bool:
    return _widest(plate) >= task.goal


TASKS = (
    TaskKind(
        name="cross",
        sentence=msg("Find the balance point: draw two plumb lines that cross widely."),
        goal=_cross,
        done=_crosses,
    ),
    TaskKind(
        name="other-pin",
        sentence=msg("Find a pin from which it hangs just as it is held now."),
        goal=_other_pin,
        done=_has_other_pin,
    ),
    TaskKind(
        name="one-more",
        sentence=msg("Make it hang just as it is held now with one weight more. The pin stays."),
        goal=_one_more,
        done=_has_one_more,
    ),
)
"""Every kind of task of this bench, in the order in which they are set."""
