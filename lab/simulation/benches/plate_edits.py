"""What each command does to a plate. Cutting or loading it holds it as it was cut, and rubs out the lines on it."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

from lab import files
from lab.mechanics import MechanicsError, Polygon
from lab.simulation.benches.plate import HungPlate, PencilLine
from lab.simulation.benches.plate_builds import (
    BLANKS,
    MOST_CORNERS,
    MOST_HOLES,
    plate_from_build,
    rounded_area_weight,
)
from lab.simulation.benches.plate_clips import CLIP_EDITS
from lab.simulation.benches.plate_rings import FARTHEST_M, Ring, bench_place, in_wood, on_grid, ring_on_grid
from lab.simulation.benches.shared_edits import NOT_A_PLACE, SHARED, Does
from lab.simulation.benches.unfit import OPENED_TEXT, UnfitBuildError, unreadable
from lab.simulation.commands import OpenBuild
from lab.simulation.plate_commands import (
    AddCorner,
    CutHole,
    DrawPlumbLine,
    FillHole,
    MoveCorner,
    MoveHole,
    MovePin,
    RemoveCorner,
    RubOutLines,
    SetAreaWeight,
    TakeBlank,
)
from lab.simulation.refused import Refused, msg

HOLE_CORNERS = 12
"""Corners of a new hole: round to the eye, and few enough to drag each."""

LEAST_AREA_M2 = 1e-6
"""A plate under a square millimetre is lost to the eye."""

AREA_WEIGHTS_KG_M2 = (0.01, 1000.0)
"""From thin paper to a slab of lead as thick as a hand is wide."""

MOST_LINES = 8

CROSSES = Refused(template=msg("An outline can't cross or touch itself, so it stays as it was."))
HOLE_OUT = Refused(template=msg("A hole needs wood all round it, so the plate stays as it was."))
TOO_SMALL = Refused(template=msg("Too little of the plate would be left, so it stays as it was."))
NO_SUCH_CORNER = Refused(template=msg("That corner is not there any more."))
NO_SUCH_HOLE = Refused(template=msg("That hole is not there any more."))
NO_SUCH_BLANK = Refused(template=msg("There is no such plate to begin with."))
LAST_CORNERS = Refused(template=msg("A ring needs three corners, so this one stays."))
FULL_OF_CORNERS = Refused(template=msg("There is no room for one more corner. Take one away first."))
FULL_OF_HOLES = Refused(template=msg("There is no room for one more hole. Fill one first."))
NO_WOOD_FOR_PIN = Refused(template=msg("There is no wood there to put the pin through."))
PIN_IN_AIR = Refused(template=msg("The pin would lose its wood. Hang the plate by another place first."))
NOT_A_SHEET = Refused(template=msg("A sheet weighs something, and not that much."))
STILL_FIRST = Refused(template=msg("Let it go and let it hang still first: only then is the line plumb."))
NO_PLUMB_LINE = Refused(template=msg("Hung by its balance point it hangs any way: there is no line to draw."))
DRAWN_ALREADY = Refused(template=msg("This line is drawn already. Hang the plate by another place."))
FULL_OF_LINES = Refused(template=msg("There are enough lines. Rub them out first."))
NOTHING_DRAWN = Refused(template=msg("There is no line to rub out."))


def take_blank(state: HungPlate, command: TakeBlank) -> HungPlate | Refused:
    """Another outline of the same sheet, with nothing on it."""
    blank = BLANKS.get(command.name)
    if blank is None:
        return NO_SUCH_BLANK
    return replace(blank, area_kg_m2=state.area_kg_m2, units=state.units, view=state.view, next_id=state.next_id)


def move_pin(state: HungPlate, command: MovePin) -> HungPlate | Refused:
    """The lines stay: they are on the plate. A guess was about another pin."""
    place = bench_place(command.at_m, command.up_m)
    if place is None:
        return NOT_A_PLACE
    if not in_wood(place, state.outline_m, state.holes_m):
        return NO_WOOD_FOR_PIN
    if place == (state.pivot.at_m, state.pivot.up_m):
        return state
    return replace(state.stilled(), pivot=replace(state.pivot, at_m=place[0], up_m=place[1]), guess=None)


def add_corner(state: HungPlate, command: AddCorner) -> HungPlate | Refused:
    """After the corner at which its edge begins."""
    ring, place = _ring(state, command.ring), bench_place(command.at_m, command.up_m)
    if ring is None or not 0 <= command.after < len(ring):
        return NO_SUCH_CORNER
    if place is None:
        return NOT_A_PLACE
    if len(ring) >= MOST_CORNERS:
        return FULL_OF_CORNERS
    at = command.after + 1
    return _with_ring(state, command.ring, (*ring[:at], place, *ring[at:]))


def move_corner(state: HungPlate, command: MoveCorner) -> HungPlate | Refused:
    """Where the outline would cross itself it stays."""
    ring, place = _ring(state, command.ring), bench_place(command.at_m, command.up_m)
    if ring is None or not 0 <= command.corner < len(ring):
        return NO_SUCH_CORNER
    if place is None:
        return NOT_A_PLACE
    at = command.corner
    return _with_ring(state, command.ring, (*ring[:at], place, *ring[at + 1 :]))


def remove_corner(state: HungPlate, command: RemoveCorner) -> HungPlate | Refused:
    """Its neighbours are joined."""
    ring = _ring(state, command.ring)
    if ring is None or not 0 <= command.corner < len(ring):
        return NO_SUCH_CORNER
    if len(ring) <= 3:
        return LAST_CORNERS
    return _with_ring(state, command.ring, (*ring[: command.corner], *ring[command.corner + 1 :]))


def cut_hole(state: HungPlate, command: CutHole) -> HungPlate | Refused:
    """A ring of corners round a place."""
    place = bench_place(command.at_m, command.up_m)
    if place is None or not 0.0 < command.radius_m <= FARTHEST_M:
        return NOT_A_PLACE
    if len(state.holes_m) >= MOST_HOLES:
        return FULL_OF_HOLES
    turns = (2.0 * math.pi * (corner + 0.5) / HOLE_CORNERS for corner in range(HOLE_CORNERS))
    ring = tuple(
        (place[0] + command.radius_m * math.cos(turn), place[1] + command.radius_m * math.sin(turn)) for turn in turns
    )
    return _cut(state, state.outline_m, (*state.holes_m, ring_on_grid(ring)))


def move_hole(state: HungPlate, command: MoveHole) -> HungPlate | Refused:
    """As it is, elsewhere."""
    ring, place = _hole(state, command.ring), bench_place(command.at_m, command.up_m)
    if ring is None:
        return NO_SUCH_HOLE
    if place is None:
        return NOT_A_PLACE
    middle = Polygon(ring).moments.centre_m
    off = on_grid(place[0] - middle[0]), on_grid(place[1] - middle[1])
    return _with_ring(state, command.ring, ring_on_grid(tuple((x + off[0], z + off[1]) for x, z in ring)))


def fill_hole(state: HungPlate, command: FillHole) -> HungPlate | Refused:
    """There is wood again."""
    if _hole(state, command.ring) is None:
        return NO_SUCH_HOLE
    return _cut(state, state.outline_m, (*state.holes_m[: command.ring - 1], *state.holes_m[command.ring :]))


def set_area_weight(state: HungPlate, command: SetAreaWeight) -> HungPlate | Refused:
    """The same outline of another sheet."""
    low, high = AREA_WEIGHTS_KG_M2
    if not low <= command.area_kg_m2 <= high:
        return NOT_A_SHEET
    area_kg_m2 = rounded_area_weight(command.area_kg_m2)
    return state if area_kg_m2 == state.area_kg_m2 else replace(state.touched(), area_kg_m2=area_kg_m2)


def draw_plumb_line(state: HungPlate, _: DrawPlumbLine) -> HungPlate | Refused:
    """As it hangs: straight down from the pin, on the plate."""
    if state.held or not state.swing.settled:
        return STILL_FIRST
    if len(state.lines) >= MOST_LINES:
        return FULL_OF_LINES
    balance, pin = state.sum.balance_point_m, (state.pivot.at_m, state.pivot.up_m)
    if state.fall is None and on_grid(balance[0]) == pin[0] and on_grid(balance[2]) == pin[1]:
        return NO_PLUMB_LINE
    line = PencilLine(through_m=pin, down=(-math.sin(state.angle_rad), -math.cos(state.angle_rad)))
    return DRAWN_ALREADY if line in state.lines else replace(state, lines=(*state.lines, line))


def rub_out_lines(state: HungPlate, _: RubOutLines) -> HungPlate | Refused:
    """All of them."""
    return replace(state, lines=()) if state.lines else NOTHING_DRAWN


def open_plate(_: HungPlate, command: OpenBuild) -> HungPlate | Refused:
    """The saved build takes the place of everything."""
    try:
        return plate_from_build(files.read_build_text(command.text, file=OPENED_TEXT))
    except files.FileFaults as faults:
        return unreadable(faults)
    except UnfitBuildError as unfit:
        return unfit.why


def _ring(state: HungPlate, number: int) -> Ring | None:
    return state.rings_m[number] if 0 <= number < len(state.rings_m) else None


def _hole(state: HungPlate, number: int) -> Ring | None:
    return state.holes_m[number - 1] if 1 <= number <= len(state.holes_m) else None


def _with_ring(state: HungPlate, number: int, ring: Ring) -> HungPlate | Refused:
    rings = state.rings_m
    if ring == rings[number]:
        return state
    changed = (*rings[:number], ring, *rings[number + 1 :])
    return _cut(state, changed[0], changed[1:])


def _cut(state: HungPlate, outline: Ring, holes: tuple[Ring, ...]) -> HungPlate | Refused:
    """The plate with another outline or other holes, if they can be cut and everything on it keeps its wood."""
    if any(ring[0] == ring[-1] for ring in (outline, *holes)):
        return CROSSES  # elsewhere a ring that is closed by its first corner is let pass
    try:
        for ring in (outline, *holes):
            Polygon(ring)
    except MechanicsError:
        return CROSSES
    try:
        area_m2 = Polygon(outline, holes).moments.area_m2
    except MechanicsError:
        return HOLE_OUT
    if area_m2 < LEAST_AREA_M2:
        return TOO_SMALL
    if not in_wood((state.pivot.at_m, state.pivot.up_m), outline, holes):
        return PIN_IN_AIR
    for clip in state.clips:
        if not in_wood((clip.at_m, clip.up_m), outline, holes):
            return Refused(template=msg("{name} would lose its wood. Move it away first."), values={"name": clip.name})
    return replace(state.touched(), outline_m=outline, holes_m=holes)


EDITS: Mapping[type, Does] = MappingProxyType(
    {
        **SHARED,
        **CLIP_EDITS,
        OpenBuild: open_plate,
        TakeBlank: take_blank,
        MovePin: move_pin,
        AddCorner: add_corner,
        MoveCorner: move_corner,
        RemoveCorner: remove_corner,
        CutHole: cut_hole,
        MoveHole: move_hole,
        FillHole: fill_hole,
        SetAreaWeight: set_area_weight,
        DrawPlumbLine: draw_plumb_line,
        RubOutLines: rub_out_lines,
    }
)
"""What it does to this bench, by the class of the command."""
