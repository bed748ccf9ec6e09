"""Plates out of saved builds and into them, and the plates that the lab starts with."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

from lab.files import Build, View
from lab.mechanics import MechanicsError, Part, Pivot, Polygon, Rectangle, Triangle
from lab.simulation.benches.groups import as_groups
from lab.simulation.benches.hanging_bar import Hung
from lab.simulation.benches.plate import HungPlate
from lab.simulation.benches.plate_rings import Corner, Ring, in_wood, on_grid, ring_on_grid, triangles_of
from lab.simulation.benches.unfit import UnfitBuildError
from lab.simulation.refused import Refused, msg

MOST_CLIPS = 12
MOST_CORNERS = 64
"""Corners of one ring. More cannot be told apart or grabbed at any window size."""
MOST_HOLES = 6

PLYWOOD_KG_M2 = 2.4
"""What a square metre of 4 mm birch plywood weighs, kg: 600 kg/m³. A usual sheet for the workshop's patterns."""

PIN_SHARE = 0.25
"""How far from the highest corner toward the middle of its triangle the first pin goes: well inside, near the edge."""

NO_PLATE = Refused(template=msg("This build has no flat plate with straight edges to hang."))
ON_SUPPORTS = Refused(template=msg("This build stands on supports, so it can't hang."))
TOO_MANY = Refused(template=msg("This build has more weights than the plate has room for."))
TOO_MANY_CORNERS = Refused(template=msg("The plate of this build has more corners or holes than can be grabbed."))
PIN_OFF_PLATE = Refused(template=msg("The pin of this build is not on its plate."))


def plate_from_build(build: Build) -> HungPlate:
    """The bench as the build says, held, with nothing guessed or drawn. Clips get the ids 1, 2, … in file order.

    The heaviest polygon, triangle or rectangle is the plate; all else is fast to it, wherever the build puts it. A
    build without a pivot hangs by its highest corner. Raises UnfitBuildError where there is no plate, or where a part
    is a hole.
    """
    build = build.loose()
    if build.supports:
        raise UnfitBuildError(ON_SUPPORTS)
    flat = [part for part in build.all_parts if not part.cut and isinstance(part.shape, Polygon | Triangle | Rectangle)]
    if not flat:
        raise UnfitBuildError(NO_PLATE)
    plate = max(flat, key=lambda part: part.mass_kg)
    others = [part for part in build.all_parts if part is not plate]
    if len(others) > MOST_CLIPS:
        raise UnfitBuildError(TOO_MANY)
    try:
        return _hung(build, plate, others)
    except MechanicsError as error:
        raise UnfitBuildError(
            Refused(template=msg("This build can't hang: {why}."), values={"why": str(error)})
        ) from error


def _hung(build: Build, plate: Part, others: list[Part]) -> HungPlate:
    outline, holes = _rings(plate)
    if max(len(ring) for ring in (outline, *holes)) > MOST_CORNERS or len(holes) > MOST_HOLES:
        raise UnfitBuildError(TOO_MANY_CORNERS)
    area_m2 = Polygon(outline, holes).moments.area_m2
    pivot = _pin(build.pivot, outline, holes)
    looks = build.looks
    state = HungPlate(
        name=plate.name,
        outline_m=outline,
        holes_m=holes,
        across_m=plate.at_m[1],
        area_kg_m2=rounded_area_weight(plate.mass_kg / area_m2),
        clips=tuple(_clip(number, part, looks.get(part.name)) for number, part in enumerate(others, start=1)),
        pivot=pivot,
        reference_m=build.reference_m[0],
        mass_doubt_kg=plate.mass_doubt_kg,
        at_doubt_m=plate.at_doubt_m,
        set_name=plate.set_name,
        look=looks.get(plate.name),
        title=build.title,
        units=build.units,
        view=build.view,
        next_id=len(others) + 1,
    )
    # Whatever the bench will be asked for later must have an answer now.
    _ = state.sum, state.sum_of_pieces, state.turn, state.released()
    return state


def build_from_plate(state: HungPlate) -> Build:
    """The build that a file keeps. What happened to it, and lines drawn on it, are not kept."""
    named = [(state.name, state.look), *((clip.name, clip.look) for clip in state.clips)]
    looks = {name: look for name, look in named if look}
    parts, groups = as_groups(state.parts)
    return Build(
        title=state.title,
        units=state.units,
        reference_m=(state.reference_m, 0.0, 0.0),
        view=state.view,
        parts=parts,
        groups=groups,
        pivot=state.pivot,
        looks=MappingProxyType(looks),
    )


def rounded_area_weight(area_kg_m2: float) -> float:
    """To nine figures: dividing a weight by an area then gives back what it was multiplied from."""
    return float(f"{area_kg_m2:.9g}")


def first_pin(outline: Ring) -> Corner:
    """Where a plate is hung to begin with: near its highest corner, the leftmost of several."""
    top = max(outline, key=lambda corner: (corner[1], -corner[0]))
    triangle = next((triangle for triangle in triangles_of(outline) if top in triangle), triangles_of(outline)[0])
    middle = tuple(sum(corner[axis] for corner in triangle) / 3.0 for axis in (0, 1))
    at, up = (on_grid(top[axis] + PIN_SHARE * (middle[axis] - top[axis])) for axis in (0, 1))
    return at, up


def _rings(plate: Part) -> tuple[Ring, tuple[Ring, ...]]:
    """The plate's corners where they lie on the bench."""
    shape = plate.shape
    if isinstance(shape, Rectangle):
        x, z = shape.length_m / 2.0, shape.width_m / 2.0
        rings: tuple[Ring, ...] = (((-x, -z), (x, -z), (x, z), (-x, z)),)
        centre = (0.0, 0.0)
    elif isinstance(shape, Polygon | Triangle):
        rings = (shape.outline_m, *(shape.holes_m if isinstance(shape, Polygon) else ()))
        centre = shape.moments.centre_m
    else:
        raise UnfitBuildError(NO_PLATE)
    off = plate.at_m[0] - centre[0], plate.at_m[2] - centre[1]
    placed = tuple(ring_on_grid(tuple((x + off[0], z + off[1]) for x, z in ring)) for ring in rings)
    on_grid_too = Polygon(placed[0], placed[1:])
    return on_grid_too.outline_m, on_grid_too.holes_m


def _pin(pivot: Pivot | None, outline: Ring, holes: tuple[Ring, ...]) -> Pivot:
    if pivot is None:
        at_m, up_m = first_pin(outline)
        return Pivot(at_m=at_m, up_m=up_m)
    at_m, up_m = on_grid(pivot.at_m), on_grid(pivot.up_m)
    if not in_wood((at_m, up_m), outline, holes):
        raise UnfitBuildError(PIN_OFF_PLATE)
    return replace(pivot, at_m=at_m, up_m=up_m, pad_m=0.0)


def _clip(number: int, part: Part, look: str | None) -> Hung:
    along_m, across_m, up_m = on_grid(part.at_m[0]), part.at_m[1], on_grid(part.at_m[2])
    if part.cut:
        why = Refused(template=msg("{name} is a hole, and a hole can't hang."), values={"name": part.name})
        raise UnfitBuildError(why)
    return Hung(
        id=number,
        name=part.name,
        mass_kg=part.mass_kg,
        at_m=along_m,
        up_m=up_m,
        hold=part.hold,
        across_m=across_m,
        shape=part.shape,
        inertia_kg_m2=part.inertia_kg_m2,
        mass_doubt_kg=part.mass_doubt_kg,
        at_doubt_m=part.at_doubt_m,
        set_name=part.set_name,
        look=look,
    )


def _blank(title: str, outline_cm: tuple[Corner, ...], *holes_cm: tuple[Corner, ...]) -> HungPlate:
    outline, *holes = (ring_on_grid(tuple((x / 100.0, z / 100.0) for x, z in ring)) for ring in (outline_cm, *holes_cm))
    at_m, up_m = first_pin(outline)
    pivot = Pivot(at_m=at_m, up_m=up_m)
    return HungPlate(outline_m=outline, holes_m=tuple(holes), area_kg_m2=PLYWOOD_KG_M2, pivot=pivot, title=title)


BLANKS: Mapping[str, HungPlate] = MappingProxyType(
    {
        "corner": _blank("Rudder pattern", ((0, 0), (34, 0), (34, 12), (12, 12), (12, 30), (0, 30))),
        "crescent": _blank(
            "Landing-net bow",
            ((0, 18), (3, 9), (9, 3), (18, 0), (27, 3), (33, 9), (36, 18), (28, 18), (26, 12), (18, 8), (10, 12),
             (8, 18)),
        ),
        "window": _blank(
            "Nest-box front",
            ((0, 0), (26, 0), (26, 32), (0, 38)),
            ((14, 14), (22, 14), (22, 24), (14, 24)),
        ),
    }
)  # fmt: skip
"""Plates to begin with, by name."""


def workshop_plate(*, view: View = "plain") -> HungPlate:
    """The plate that free build starts with: an L, as the pattern of a rudder."""
    return replace(BLANKS["corner"], view=view)
