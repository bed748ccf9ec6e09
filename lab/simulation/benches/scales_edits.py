"""What each command does to a body on scales.

A body that stands goes on standing while parts are moved on it, and the scales follow; it may begin to tip. Once it
tips nothing can be moved until it is set back.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import replace
from functools import wraps
from types import MappingProxyType
from typing import Any

from lab import files
from lab.mechanics import Cylinder, MechanicsError, Vector
from lab.simulation.benches.bar_edits import BESIDE, HEAVIEST_KG
from lab.simulation.benches.groups import copied_names, taken_names, tied_with, together_m
from lab.simulation.benches.hanging_bar import Hung
from lab.simulation.benches.named_edits import NAME_EDITS, NO_SUCH_PART
from lab.simulation.benches.names import LONGEST_NAME, NOT_A_NAME, unused_name
from lab.simulation.benches.scales import MOST_LOADS, Scale, ScalesBench
from lab.simulation.benches.scales_builds import SCALE_NAMES, scales_from_build
from lab.simulation.benches.scales_places import apart, between_m
from lab.simulation.benches.shared_edits import NOT_A_DOUBT, NOT_A_PLACE, SHARED, Does, clamped, is_measured
from lab.simulation.benches.unfit import OPENED_TEXT, UnfitBuildError, unreadable
from lab.simulation.commands import Measure, OpenBuild, Remove
from lab.simulation.part_commands import Copy, Reweigh
from lab.simulation.refused import Refused, msg
from lab.simulation.scales_commands import GuessReading, MoveScale, PutOn, Shift, StandOn

BRASS_KG_M3 = 8500.0
"""Weights from the tray are upright brass cylinders, as high as wide."""

LIGHTEST_KG = 1e-6
"""No weight is lighter: a milligram, that every unit system can write down."""

_EDGE_M = 1e-9


FULL = Refused(template=msg("There is no room for one more weight. Take one off first."))
NEW_OFF_BODY = Refused(template=msg("There is nothing there to stand it on, so it went back."))
NOT_A_WEIGHT = Refused(template=msg("That is not a weight these scales can carry."))
NO_SUCH_SCALE = Refused(template=msg("That scale is not there any more."))
CARRIES_ALL = Refused(template=msg("Everything else lies on that part, so it stays where it is."))
NO_MIRROR = Refused(template=msg("There is nothing on the other side to stand it on."))
TIPPED = Refused(template=msg("It has tipped. Set it back first."))
ONE_LINE = Refused(template=msg("Three scales in one line can't hold it steady."))
TOO_NARROW = Refused(template=msg("It is too narrow for three scales."))
NOT_A_COUNT = Refused(template=msg("It stands on two scales or on three."))
NOT_A_READING = Refused(template=msg("That is not a reading of a scale."))

Edited = Callable[[ScalesBench, Any], ScalesBench | Refused]


def _touching(edit: Edited) -> Edited:
    """An edit that is refused once the body tips or the sums can't be done, and takes guesses back."""

    @wraps(edit)
    def done(state: ScalesBench, command: Any) -> ScalesBench | Refused:
        if state.tipping is not None:
            return TIPPED
        try:
            after = edit(state, command)
            if isinstance(after, Refused) or after == state:
                return after if isinstance(after, Refused) else state
            after = replace(after, guess=None, guessed_kg=None)
            _ = after.at_rest()
            return after.set_down()
        except MechanicsError as error:
            return Refused(template=msg("This can't stand on scales: {why}."), values={"why": str(error)})

    return done


@_touching
def put_on(state: ScalesBench, command: PutOn) -> ScalesBench | Refused:
    """A new weight with an id and a name of its own, standing on what carries."""
    if len(state.loads) >= MOST_LOADS:
        return FULL
    if not LIGHTEST_KG <= command.mass_kg <= HEAVIEST_KG:
        return NOT_A_WEIGHT
    along, across = state.reach_m
    if not _on_it(state, command.along_m, command.across_m):
        return NEW_OFF_BODY
    if command.name is not None and not 0 < len(command.name) <= LONGEST_NAME:
        return NOT_A_NAME
    shape = brass(command.mass_kg)
    weight = Hung(
        id=state.next_id,
        name=unused_name(command.name or "brass", state.names),
        mass_kg=command.mass_kg,
        at_m=clamped(command.along_m, along),
        hold="clamped",
        across_m=clamped(command.across_m, across),
        up_m=state.top_m + shape.length_m / 2.0,
        shape=shape,
        look="weight",
    )
    return replace(state, loads=(*state.loads, weight), next_id=state.next_id + 1)


@_touching
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
    tied = _tied(state, load)
    by_along_m = together_m(command.along_m - load.at_m, [each.at_m for each in tied], [along] * len(tied))
    by_across_m = together_m(command.across_m - load.across_m, [each.across_m for each in tied], [across] * len(tied))
    moved = {each.id: _shifted(each, by_along_m, by_across_m) for each in tied}
    if len(tied) == 1:
        # To the last bit where it was said, and not by way of a sum.
        at_m, across_m = clamped(command.along_m, along), clamped(command.across_m, across)
        moved[load.id] = replace(load, at_m=at_m, across_m=across_m)
    return replace(state, loads=tuple(moved.get(each.id, each) for each in state.loads))


@_touching
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


@_touching
def remove(state: ScalesBench, command: Remove) -> ScalesBench | Refused:
    """Its id is not used again."""
    load = state.load(command.id)
    if load is None:
        return NO_SUCH_PART
    if load is state.carrier:
        return CARRIES_ALL
    names = taken_names(state.names, state.ids.index(command.id))
    return replace(state, loads=tuple(each for each in state.loads if each.id != command.id)).called(names)


@_touching
def copy(state: ScalesBench, command: Copy) -> ScalesBench | Refused:
    """One more of the same beside it, with all that is tied to it; mirrored, beyond the middle of the scales.

    On three scales that is the other side of the plane of symmetry, across 0; on two it is along.
    """
    load = state.load(command.id)
    if load is None:
        return NO_SUCH_PART
    if load is state.carrier:
        return CARRIES_ALL
    tied = _tied(state, load)
    if len(state.loads) + len(tied) > MOST_LOADS:
        return FULL
    copies = [_mirrored(state, each) for each in tied] if command.mirrored else _beside(state, tied)
    if not all(_on_it(state, each.at_m, each.across_m) for each in copies):
        return NO_MIRROR
    names = copied_names(state.names, [each.name for each in tied])
    along, across = state.reach_m
    new = tuple(
        replace(
            each,
            id=state.next_id + number,
            name=name,
            at_m=clamped(each.at_m, along),
            across_m=clamped(each.across_m, across),
        )
        for number, (each, name) in enumerate(zip(copies, names, strict=True))
    )
    return replace(state, loads=(*state.loads, *new), next_id=state.next_id + len(new))


def _mirrored(state: ScalesBench, load: Hung) -> Hung:
    if len(state.scales) == 3:
        return replace(load, across_m=-load.across_m + 0.0)
    return replace(load, at_m=state.scales[0].at_m[0] + state.scales[1].at_m[0] - load.at_m)


def _beside(state: ScalesBench, tied: list[Hung]) -> list[Hung]:
    """To the right of them, or to the left where there is no room."""
    beside_m, (along, _) = BESIDE * state.size_m, state.reach_m
    at_m, spans_m = [each.at_m for each in tied], [along] * len(tied)
    by_m = together_m(beside_m, at_m, spans_m)
    by_m = by_m if by_m >= beside_m else together_m(-beside_m, at_m, spans_m)
    return [_shifted(each, by_m, 0.0) for each in tied]


@_touching
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


@_touching
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


def _tied(state: ScalesBench, load: Hung) -> list[Hung]:
    """What moves with a part, itself among it. What carries all stays where it is, whatever it is called."""
    numbers = tied_with(state.names, state.ids.index(load.id))
    tied = [state.loads[number] for number in numbers if number < len(state.loads)]
    return [each for each in tied if each is not state.carrier]


def _shifted(load: Hung, along_m: float, across_m: float) -> Hung:
    return replace(load, at_m=load.at_m + along_m + 0.0, across_m=load.across_m + across_m + 0.0)


def _on_it(state: ScalesBench, along_m: float, across_m: float) -> bool:
    (left, right), (low, high) = state.reach_m
    return left - _EDGE_M <= along_m <= right + _EDGE_M and low - _EDGE_M <= across_m <= high + _EDGE_M


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
        Shift: shift,
        MoveScale: move_scale,
        StandOn: stand_on,
        GuessReading: guess_reading,
    }
)
"""What it does to this bench, by the class of the command."""
