"""What each command does to a body on scales.

A body that stands goes on standing while parts are moved on it, and the scales follow; it may begin to tip. Once it
tips nothing can be moved until it is set back.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

from lab import files
from lab.mechanics import Cylinder, Shape, Vector, extent_m
from lab.simulation.benches.bar_edits import HEAVIEST_KG
from lab.simulation.benches.groups import taken_names, together_m
from lab.simulation.benches.hanging_bar import Hung
from lab.simulation.benches.named_edits import NAME_EDITS, NO_SUCH_PART
from lab.simulation.benches.names import LONGEST_NAME, NOT_A_NAME, unused_name
from lab.simulation.benches.scales import MOST_LOADS, Scale, ScalesBench
from lab.simulation.benches.scales_builds import SCALE_NAMES, scales_from_build
from lab.simulation.benches.scales_copies import copy
from lab.simulation.benches.scales_loads import CARRIES_ALL, FULL, on_it, shifted, tied, touching
from lab.simulation.benches.scales_places import apart, between_m
from lab.simulation.benches.shared_edits import NOT_A_DOUBT, NOT_A_PLACE, SHARED, Does, clamped, is_measured
from lab.simulation.benches.tool_parts import LOOSE
from lab.simulation.benches.unfit import OPENED_TEXT, UnfitBuildError, unreadable
from lab.simulation.commands import Measure, OpenBuild, Remove
from lab.simulation.part_commands import Copy, Reweigh
from lab.simulation.refused import Refused, msg
from lab.simulation.scales_commands import GuessReading, MoveScale, PutOn, PutPart, Shift, StandOn

BRASS_KG_M3 = 8500.0
"""Weights from the tray are upright brass cylinders, as high as wide."""

LIGHTEST_KG = 1e-6
"""No weight is lighter: a milligram, that every unit system can write down."""

_EDGE_M = 1e-9


NEW_OFF_BODY = Refused(template=msg("There is nothing there to stand it on, so it went back."))
NOT_A_WEIGHT = Refused(template=msg("That is not a weight these scales can carry."))
NO_SUCH_SCALE = Refused(template=msg("That scale is not there any more."))
ONE_LINE = Refused(template=msg("Three scales in one line can't hold it steady."))
TOO_NARROW = Refused(template=msg("It is too narrow for three scales."))
NOT_A_KIND = Refused(template=msg("The tray has no such part."))
NOT_A_COUNT = Refused(template=msg("It stands on two scales or on three."))
NOT_A_READING = Refused(template=msg("That is not a reading of a scale."))


@touching
def put_on(state: ScalesBench, command: PutOn) -> ScalesBench | Refused:
    """A new weight with an id and a name of its own, standing on what carries."""
    if not LIGHTEST_KG <= command.mass_kg <= HEAVIEST_KG:
        return NOT_A_WEIGHT
    shape = brass(command.mass_kg)
    return _with_new(state, command, command.name or "brass", command.mass_kg, shape, "weight")


@touching
def put_part(state: ScalesBench, command: PutPart) -> ScalesBench | Refused:
    """A tin, beads, a rod or a plate, standing on what carries."""
    kind = LOOSE.get(command.kind)
    if kind is None:
        return NOT_A_KIND
    return _with_new(state, command, command.name or kind.called, kind.mass_kg, kind.shape, kind.look)


def _with_new(
    state: ScalesBench, command: PutOn | PutPart, name: str, mass_kg: float, shape: Shape, look: str | None
) -> ScalesBench | Refused:
    if len(state.loads) >= MOST_LOADS:
        return FULL
    if not on_it(state, command.along_m, command.across_m):
        return NEW_OFF_BODY
    if command.name is not None and not 0 < len(command.name) <= LONGEST_NAME:
        return NOT_A_NAME
    along, across = state.reach_m
    new = Hung(
        id=state.next_id,
        name=unused_name(name, state.names),
        mass_kg=mass_kg,
        at_m=clamped(command.along_m, along),
        hold="clamped",
        across_m=clamped(command.across_m, across),
        up_m=state.top_m + extent_m(shape)[2] / 2.0,
        shape=shape,
        look=look,
    )
    return replace(state, loads=(*state.loads, new), next_id=state.next_id + 1)


@touching
def shift(state: ScalesBench, command: Shift) -> ScalesBench | Refused:
    """It stops at the ends of the body."""
    load = state.load(command.id)
    if load is None:
        return NO_SUCH_PART
    if load is state.carrier:
        return CARRIES_ALL
    if not math.isfinite(command.along_m + command.across_m):
        return NOT_A_PLACE
    along, across = state.reach_m
    group = tied(state, load)
    by_along_m = together_m(command.along_m - load.at_m, [each.at_m for each in group], [along] * len(group))
    by_across_m = together_m(command.across_m - load.across_m, [each.across_m for each in group], [across] * len(group))
    moved = {each.id: shifted(each, by_along_m, by_across_m) for each in group}
    if len(group) == 1:
        # To the last bit where it was said, and not by way of a sum.
        at_m, across_m = clamped(command.along_m, along), clamped(command.across_m, across)
        moved[load.id] = replace(load, at_m=at_m, across_m=across_m)
    return replace(state, loads=tuple(moved.get(each.id, each) for each in state.loads))


@touching
def reweigh(state: ScalesBench, command: Reweigh) -> ScalesBench | Refused:
    """Its shape stays, and its inertia goes with its weight; one stated in numbers can't."""
    load = state.load(command.id)
    if load is None:
        return NO_SUCH_PART
    if not LIGHTEST_KG <= command.mass_kg <= HEAVIEST_KG:
        return NOT_A_WEIGHT
    if load.inertia_kg_m2 is not None:
        return Refused(template=msg("{name} is as heavy as its file says."), values={"name": load.name})
    return _with_load(state, replace(load, mass_kg=command.mass_kg))


@touching
def remove(state: ScalesBench, command: Remove) -> ScalesBench | Refused:
    """Its id is not used again."""
    load = state.load(command.id)
    if load is None:
        return NO_SUCH_PART
    if load is state.carrier:
        return CARRIES_ALL
    names = taken_names(state.names, state.ids.index(command.id))
    return replace(state, loads=tuple(each for each in state.loads if each.id != command.id)).called(names)


@touching
def move_scale(state: ScalesBench, command: MoveScale) -> ScalesBench | Refused:
    """Two scales slide along and never past each other; three anywhere in the plane, but not into one line."""
    scale = state.scale(command.id)
    if scale is None:
        return NO_SUCH_SCALE
    if not math.isfinite(command.along_m + command.across_m):
        return NOT_A_PLACE
    along, across = state.reach_m
    if len(state.scales) == 2:
        number, places = state.scales.index(scale), [each.at_m[0] for each in state.scales]
        at_m: Vector = (between_m(command.along_m, places, number, along), *scale.at_m[1:])
    else:
        at_m = (clamped(command.along_m, along), clamped(command.across_m, across), scale.at_m[2])
    moved = replace(scale, at_m=at_m)
    scales = tuple(moved if each is scale else each for each in state.scales)
    return replace(state, scales=scales) if apart(each.at_m for each in scales) else ONE_LINE


@touching
def stand_on(state: ScalesBench, command: StandOn) -> ScalesBench | Refused:
    """A third scale goes beside the second, which makes room for it; taken away, two stand where they stood."""
    if command.count not in (2, 3):
        return NOT_A_COUNT
    if command.count == len(state.scales):
        return state
    if command.count == 2:
        return replace(state, scales=_numbered(sorted(state.scales[:2], key=lambda scale: scale.at_m[0])))
    first, second = state.scales
    low, high = state.reach_m[1]
    middle, reach = (low + high) / 2.0, 0.3 * (high - low)
    name = unused_name(SCALE_NAMES[2], {first.name, second.name})
    at_m = second.at_m[0], second.at_m[2]
    scales = (
        replace(first, at_m=(first.at_m[0], middle, first.at_m[2])),
        replace(second, at_m=(at_m[0], middle - reach, at_m[1])),
        Scale(id=3, name=name, at_m=(at_m[0], middle + reach, at_m[1])),
    )
    return replace(state, scales=scales) if apart(scale.at_m for scale in scales) else TOO_NARROW


def guess_reading(state: ScalesBench, command: GuessReading) -> ScalesBench | Refused:
    """A guess is kept until what was guessed about changes."""
    if command.mass_kg is not None and not 0.0 <= command.mass_kg <= HEAVIEST_KG * MOST_LOADS:
        return NOT_A_READING
    return replace(state, guessed_kg=command.mass_kg)


def measure(state: ScalesBench, command: Measure) -> ScalesBench | Refused:
    """What lies on the body is as doubtful as said; the bar itself was weighed with greater care."""
    if not is_measured(command):
        return NOT_A_DOUBT
    doubt_m = (command.at_m, 0.0, 0.0)
    loads = tuple(replace(load, mass_doubt_kg=command.mass_kg, at_doubt_m=doubt_m) for load in state.loads)
    return replace(state, loads=loads)


def open_build(_: ScalesBench, command: OpenBuild) -> ScalesBench | Refused:
    """The saved build takes the place of everything."""
    try:
        return scales_from_build(files.read_build_text(command.text, file=OPENED_TEXT))
    except files.FileFaults as faults:
        return unreadable(faults)
    except UnfitBuildError as unfit:
        return unfit.why


def brass(mass_kg: float) -> Cylinder:
    """An upright brass cylinder of a mass."""
    radius_m = (mass_kg / (2.0 * math.pi * BRASS_KG_M3)) ** (1.0 / 3.0)
    return Cylinder(radius_m=radius_m, length_m=2.0 * radius_m, axis="up")


def _with_load(state: ScalesBench, changed: Hung) -> ScalesBench:
    if changed == state.load(changed.id):
        return state
    return replace(state, loads=tuple(changed if load.id == changed.id else load for load in state.loads))


def _numbered(scales: list[Scale]) -> tuple[Scale, ...]:
    return tuple(replace(scale, id=number) for number, scale in enumerate(scales, start=1))


EDITS: Mapping[type, Does] = MappingProxyType(
    {
        **SHARED,
        **NAME_EDITS,
        Remove: remove,
        Measure: measure,
        OpenBuild: open_build,
        Reweigh: reweigh,
        Copy: copy,
        PutOn: put_on,
        PutPart: put_part,
        Shift: shift,
        MoveScale: move_scale,
        StandOn: stand_on,
        GuessReading: guess_reading,
    }
)
"""What it does to this bench, by the class of the command."""
