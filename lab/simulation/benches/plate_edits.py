"""What each command does to a plate. Cutting or loading it holds it as it was cut, and rubs out the lines on it."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

from lab import files
from lab.mechanics import MechanicsError, Polygon
from lab.simulation.benches.bar_edits import unused_name
from lab.simulation.benches.plate import Clip, HungPlate, PencilLine
from lab.simulation.benches.plate_builds import (
    BLANKS,
    MOST_CLIPS,
    MOST_CORNERS,
    MOST_HOLES,
    plate_from_build,
    rounded_area_weight,
)
from lab.simulation.benches.plate_rings import Corner, Ring, in_wood, on_grid, ring_on_grid
from lab.simulation.benches.shared_edits import NOT_A_DOUBT, NOT_A_PLACE, SHARED, Does, is_measured
from lab.simulation.benches.unfit import OPENED_TEXT, UnfitBuildError, unreadable
from lab.simulation.commands import Measure, OpenBuild, Remove
from lab.simulation.part_commands import Rename, Reweigh
from lab.simulation.plate_commands import (
    AddCorner,
    ClipOn,
    CutHole,
    DrawPlumbLine,
    FillHole,
    MoveClip,
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

FARTHEST_M = 10.0
"""No corner lies farther from zero along or up, so that every sum stays a number."""

LEAST_AREA_M2 = 1e-6
"""A plate under a square millimetre is lost to the eye."""

AREA_WEIGHTS_KG_M2 = (0.01, 1000.0)
"""From thin paper to a slab of lead as thick as a hand is wide."""

HEAVIEST_KG = 1000.0
MOST_LINES = 8

CROSSES = Refused(template=msg("An outline can't cross or touch itself, so it stays as it was."))
HOLE_OUT = Refused(template=msg("A hole needs wood all round it, so the plate stays as it was."))
TOO_SMALL = Refused(template=msg("Too little of the plate would be left, so it stays as it was."))
NO_SUCH_CORNER = Refused(template=msg("That corner is not there any more."))
NO_SUCH_HOLE = Refused(template=msg("That hole is not there any more."))
NO_SUCH_BLANK = Refused(template=msg("There is no such plate to begin with."))
NO_SUCH_CLIP = Refused(template=msg("That weight is not on the plate any more."))
LAST_CORNERS = Refused(template=msg("A ring needs three corners, so this one stays."))
FULL_OF_CORNERS = Refused(template=msg("There is no room for one more corner. Take one away first."))
FULL_OF_HOLES = Refused(template=msg("There is no room for one more hole. Fill one first."))
FULL_OF_CLIPS = Refused(template=msg("There is no room for one more weight. Take one off first."))
NO_WOOD_FOR_PIN = Refused(template=msg("There is no wood there to put the pin through."))
NO_WOOD_FOR_CLIP = Refused(template=msg("There is no wood there to clip it on, so it went back."))
PIN_IN_AIR = Refused(template=msg("The pin would lose its wood. Hang the plate by another place first."))
NOT_A_WEIGHT = Refused(template=msg("That is not a weight this plate can carry."))
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
    place = _place(command.at_m, command.up_m)
    if place is None:
        return NOT_A_PLACE
    if not in_wood(place, state.outline_m, state.holes_m):
        return NO_WOOD_FOR_PIN
    if place == (state.pivot.at_m, state.pivot.up_m):
        return state
    return replace(state.stilled(), pivot=replace(state.pivot, at_m=place[0], up_m=place[1]), guess=None)


def add_corner(state: HungPlate, command: AddCorner) -> HungPlate | Refused:
    """After the corner at which its edge begins."""
    ring, place = _ring(state, command.ring), _place(command.at_m, command.up_m)
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
    ring, place = _ring(state, command.ring), _place(command.at_m, command.up_m)
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
    place = _place(command.at_m, command.up_m)
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
    ring, place = _hole(state, command.ring), _place(command.at_m, command.up_m)
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
    return state if area_kg_m2 == state.area_kg_m2 else replace(_touched(state), area_kg_m2=area_kg_m2)


def clip_on(state: HungPlate, command: ClipOn) -> HungPlate | Refused:
    """A new weight with an id and a name of its own."""
    if len(state.clips) >= MOST_CLIPS:
        return FULL_OF_CLIPS
    if not 0.0 < command.mass_kg <= HEAVIEST_KG:
        return NOT_A_WEIGHT
    place = _place(command.at_m, command.up_m)
    if place is None or not in_wood(place, state.outline_m, state.holes_m):
        return NO_WOOD_FOR_CLIP
    taken = {state.name, *(clip.name for clip in state.clips)}
    name = unused_name(command.name or f"brass {command.mass_kg * 1000.0:.4g}", taken)
    clip = Clip(id=state.next_id, name=name, mass_kg=command.mass_kg, at_m=place[0], up_m=place[1])
    return replace(_touched(state), clips=(*state.clips, clip), next_id=state.next_id + 1)


def move_clip(state: HungPlate, command: MoveClip) -> HungPlate | Refused:
    """Off the wood it stays where it was."""
    clip = state.clip(command.id)
    if clip is None:
        return NO_SUCH_CLIP
    place = _place(command.at_m, command.up_m)
    if place is None or not in_wood(place, state.outline_m, state.holes_m):
        return NO_WOOD_FOR_CLIP
    if place == (clip.at_m, clip.up_m):
        return state
    return _with_clip(state, replace(clip, at_m=place[0], up_m=place[1]))


def reweigh(state: HungPlate, command: Reweigh) -> HungPlate | Refused:
    """Another weight in its place."""
    clip = state.clip(command.id)
    if clip is None:
        return NO_SUCH_CLIP
    if not 0.0 < command.mass_kg <= HEAVIEST_KG:
        return NOT_A_WEIGHT
    return state if command.mass_kg == clip.mass_kg else _with_clip(state, replace(clip, mass_kg=command.mass_kg))


def rename(state: HungPlate, command: Rename) -> HungPlate | Refused:
    """Only what it is called changes; blank, it keeps its name."""
    clip, wanted = state.clip(command.id), command.name.strip()
    if clip is None:
        return NO_SUCH_CLIP
    if not wanted or wanted == clip.name:
        return state
    taken = {state.name, *(other.name for other in state.clips if other.id != clip.id)}
    renamed = replace(clip, name=unused_name(wanted, taken))
    return replace(state, clips=tuple(renamed if one.id == clip.id else one for one in state.clips))


def remove(state: HungPlate, command: Remove) -> HungPlate | Refused:
    """Its id is not used again."""
    if state.clip(command.id) is None:
        return NO_SUCH_CLIP
    return replace(_touched(state), clips=tuple(clip for clip in state.clips if clip.id != command.id))


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


def measure(state: HungPlate, command: Measure) -> HungPlate | Refused:
    """The plate and its weights are as doubtful as said, along and up alike."""
    if not is_measured(command):
        return NOT_A_DOUBT
    at_doubt_m = (command.at_m, 0.0, command.at_m)
    clips = tuple(replace(clip, mass_doubt_kg=command.mass_kg, at_doubt_m=at_doubt_m) for clip in state.clips)
    return replace(state, clips=clips, mass_doubt_kg=command.mass_kg, at_doubt_m=at_doubt_m)


def open_plate(_: HungPlate, command: OpenBuild) -> HungPlate | Refused:
    """The saved build takes the place of everything."""
    try:
        return plate_from_build(files.read_build_text(command.text, file=OPENED_TEXT))
    except files.FileFaults as faults:
        return unreadable(faults)
    except UnfitBuildError as unfit:
        return unfit.why


def _place(at_m: float, up_m: float) -> Corner | None:
    """A place on the grid; None where it is none on this bench."""
    if not (abs(at_m) <= FARTHEST_M and abs(up_m) <= FARTHEST_M):
        return None
    return on_grid(at_m), on_grid(up_m)


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
    return replace(_touched(state), outline_m=outline, holes_m=holes)


def _with_clip(state: HungPlate, changed: Clip) -> HungPlate:
    return replace(_touched(state), clips=tuple(changed if one.id == changed.id else one for one in state.clips))


def _touched(state: HungPlate) -> HungPlate:
    """Held, with what was guessed or drawn about it before forgotten."""
    return replace(state.stilled(), guess=None, lines=())


EDITS: Mapping[type, Does] = MappingProxyType(
    {
        **SHARED,
        Remove: remove,
        Measure: measure,
        OpenBuild: open_plate,
        Reweigh: reweigh,
        Rename: rename,
        TakeBlank: take_blank,
        MovePin: move_pin,
        AddCorner: add_corner,
        MoveCorner: move_corner,
        RemoveCorner: remove_corner,
        CutHole: cut_hole,
        MoveHole: move_hole,
        FillHole: fill_hole,
        SetAreaWeight: set_area_weight,
        ClipOn: clip_on,
        MoveClip: move_clip,
        DrawPlumbLine: draw_plumb_line,
        RubOutLines: rub_out_lines,
    }
)
"""What it does to this bench, by the class of the command."""
