"""What each command does to a tool that is built on a finger. Touching a part holds the tool level first."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import get_args

from lab import files
from lab.mechanics import Box, Cylinder, MechanicsError, Part, Rectangle, Rod, Shape, extent_m, pad_body
from lab.simulation.benches.bar_edits import BESIDE, HEAVIEST_KG, NOT_A_HOLD
from lab.simulation.benches.finger_builds import lie_of, span_m
from lab.simulation.benches.finger_edits import measure, move_finger
from lab.simulation.benches.groups import copied_names, taken_names, tied_with, together_m
from lab.simulation.benches.named_edits import NAME_EDITS
from lab.simulation.benches.names import unused_name
from lab.simulation.benches.poles import is_pole
from lab.simulation.benches.shared_edits import NOT_A_PLACE, SHARED, Does, clamped
from lab.simulation.benches.tool import MOST_PARTS, BuiltTool, handle_index
from lab.simulation.benches.tool_builds import tool_from_build
from lab.simulation.benches.tool_parts import KINDS
from lab.simulation.benches.tool_places import held_together, places_m, touches
from lab.simulation.benches.unfit import OPENED_TEXT, UnfitBuildError, unreadable
from lab.simulation.commands import Hang, Hold, Measure, Move, MoveFinger, OpenBuild, Remove, SetHold
from lab.simulation.part_commands import Copy, Reweigh
from lab.simulation.refused import Refused, msg
from lab.simulation.tool_commands import FitPart, SetLength

SHORTEST_M, LONGEST_M = 0.05, 10.0
"""How long a part can be made."""

LIGHTEST_KG = 1e-6
"""No part is lighter: a milligram still is a number in a build file in any units."""

TOOL_FULL = Refused(template=msg("The tool has no room for one more part. Take one off first."))
NEW_OFF_TOOL = Refused(template=msg("There is no tool there to put it on, so it went back."))
NO_SUCH_PART = Refused(template=msg("That part is not on the tool any more."))
NO_SUCH_KIND = Refused(template=msg("The workshop has no such part."))
NOT_A_WEIGHT = Refused(template=msg("That is not a weight that a part can have."))
NOT_A_LENGTH = Refused(template=msg("A part can be made from 5 cm to 10 m long."))
HANDLE_STAYS = Refused(template=msg("Everything sits on the handle, so it stays. It can be made longer or shorter."))
LENGTH_STAYS = Refused(template=msg("That part comes in one length only."))
NO_MIRROR = Refused(template=msg("On the other side of the finger the tool does not reach so far."))
ONLY_WEIGHTS_HANG = Refused(template=msg("Only a weight can hang by a cord."))
TOO_LIGHT = Refused(template=msg("With that the tool would have nothing left to weigh, so nothing was changed."))


def fit(state: BuiltTool, command: FitPart) -> BuiltTool | Refused:
    """A new part with an id and a name of its own."""
    kind = KINDS.get(command.kind)
    if kind is None:
        return NO_SUCH_KIND
    if not math.isfinite(command.at_m):
        return NOT_A_PLACE
    return _with_new(state, kind.part(command.name or kind.called, command.at_m), kind.look)


def hang(state: BuiltTool, command: Hang) -> BuiltTool | Refused:
    """A brass weight, clipped on or on a cord."""
    if not LIGHTEST_KG <= command.mass_kg <= HEAVIEST_KG:
        return NOT_A_WEIGHT
    if command.hold not in get_args(Hold):
        return NOT_A_HOLD
    if not math.isfinite(command.at_m):
        return NOT_A_PLACE
    name = command.name or f"brass {command.mass_kg * 1000.0:.4g}"
    part = Part(name=name, mass_kg=command.mass_kg, at_m=(command.at_m, 0.0, 0.0), hold=command.hold)
    return _with_new(state, part, "weight")


def move(state: BuiltTool, command: Move) -> BuiltTool | Refused:
    """Along the tool, with all that is tied to it, past an end as far as it still touches; there it stops."""
    if command.id not in state.ids:
        return NO_SUCH_PART
    if not math.isfinite(command.at_m):
        return NOT_A_PLACE
    index = state.ids.index(command.id)
    tied = tied_with(state.names, index)
    at_m = [state.parts[number].at_m[0] for number in tied]
    spans_m = [places_m(state.parts, number, tied=tied) for number in tied]
    by_m = together_m(command.at_m - state.parts[index].at_m[0], at_m, spans_m)
    goals_m = dict(zip(tied, (place_m + by_m + 0.0 for place_m in at_m), strict=True))
    if len(tied) == 1:
        # To the last bit where it was said, and not by way of a sum.
        goals_m[index] = clamped(command.at_m, spans_m[0])
    parts = tuple(
        replace(part, at_m=(goals_m[number], *part.at_m[1:])) if number in goals_m else part
        for number, part in enumerate(state.parts)
    )
    return state if parts == state.parts else _rebuilt(state, parts, state.ids, state.looks)


def remove(state: BuiltTool, command: Remove) -> BuiltTool | Refused:
    """Its id is not used again. The handle stays, unless another pole can take its place."""
    if command.id not in state.ids:
        return NO_SUCH_PART
    index = state.ids.index(command.id)
    rest = (*state.parts[:index], *state.parts[index + 1 :])
    if index == handle_index(state.parts) and not any(is_pole(part) for part in rest):
        return HANDLE_STAYS
    looks = {name: look for name, look in state.looks.items() if name != state.parts[index].name}
    after = _rebuilt(state, rest, (*state.ids[:index], *state.ids[index + 1 :]), looks)
    return after if isinstance(after, Refused) else after.called(taken_names(state.names, index))


def copy(state: BuiltTool, command: Copy) -> BuiltTool | Refused:
    """One more of the same and of all that is tied to it, a little beside it.

    mirrored: on the other side of the finger.
    """
    if command.id not in state.ids:
        return NO_SUCH_PART
    tied = [state.parts[number] for number in tied_with(state.names, state.ids.index(command.id))]
    beside_m = BESIDE * (state.right_m - state.left_m)
    copies = _copies(state, tied, None if command.mirrored else beside_m)
    if not all(touches(part, state.parts) for part in copies):
        if command.mirrored:
            return NO_MIRROR
        copies = _copies(state, tied, -beside_m)
    after = state
    for part, like in zip(copies, tied, strict=True):
        more = _with_new(after, part, state.looks.get(like.name))
        if isinstance(more, Refused):
            return more
        after = more
    return after


def _copies(state: BuiltTool, tied: list[Part], by_m: float | None) -> list[Part]:
    """Parts like these, so far along; None for on the other side of the finger."""
    names = copied_names(state.names, [part.name for part in tied])
    places_m = [2 * state.finger_at_m - part.at_m[0] if by_m is None else part.at_m[0] + by_m for part in tied]
    return [
        replace(part, name=name, at_m=(at_m + 0.0, *part.at_m[1:]))
        for part, name, at_m in zip(tied, names, places_m, strict=True)
    ]


def set_hold(state: BuiltTool, command: SetHold) -> BuiltTool | Refused:
    """By a cord, or fast to the tool."""
    part = state.part(command.id)
    if part is None:
        return NO_SUCH_PART
    if command.hold not in get_args(Hold):
        return NOT_A_HOLD
    if command.hold == "hung" and any(extent_m(part.shape)):
        return ONLY_WEIGHTS_HANG
    return _with_part(state, command.id, replace(part, hold=command.hold))


def set_length(state: BuiltTool, command: SetLength) -> BuiltTool | Refused:
    """Longer or shorter at its right end, of the same wood."""
    part = state.part(command.id)
    if part is None:
        return NO_SUCH_PART
    if not SHORTEST_M <= command.length_m <= LONGEST_M:
        return NOT_A_LENGTH
    shape = _lengthened(part.shape, command.length_m)
    if shape is None:
        return LENGTH_STAYS
    before_m = extent_m(part.shape)[0]
    if command.length_m == before_m:
        return state
    mass_kg = float(f"{part.mass_kg * command.length_m / before_m:.4g}")
    at_m = (span_m(part)[0] + command.length_m / 2 + 0.0, *part.at_m[1:])
    return _with_part(state, command.id, replace(part, shape=shape, mass_kg=mass_kg, at_m=at_m, inertia_kg_m2=None))


def reweigh(state: BuiltTool, command: Reweigh) -> BuiltTool | Refused:
    """Heavier or lighter, spread out as it is."""
    part = state.part(command.id)
    if part is None:
        return NO_SUCH_PART
    if not LIGHTEST_KG <= command.mass_kg <= HEAVIEST_KG:
        return NOT_A_WEIGHT
    given = part.inertia_kg_m2
    if given is not None:
        share = command.mass_kg / part.mass_kg
        given = tuple(tuple(share * value for value in row) for row in part.own_inertia_kg_m2)  # type: ignore[assignment]
    return _with_part(state, command.id, replace(part, mass_kg=command.mass_kg, inertia_kg_m2=given))


def open_build(_: BuiltTool, command: OpenBuild) -> BuiltTool | Refused:
    """The saved build takes the place of the tool."""
    try:
        return tool_from_build(files.read_build_text(command.text, file=OPENED_TEXT))
    except files.FileFaults as faults:
        return unreadable(faults)
    except UnfitBuildError as unfit:
        return unfit.why


def _lengthened(shape: Shape, length_m: float) -> Shape | None:
    """The shape with another length along; None where it has none that can be changed."""
    match shape:
        case Rod(axis="along") | Cylinder(axis="along") | Rectangle():
            return replace(shape, length_m=length_m)
        case Box(size_m=(_, across_m, up_m)):
            return Box((length_m, across_m, up_m))
    return None


def _with_new(state: BuiltTool, part: Part, look: str | None) -> BuiltTool | Refused:
    if len(state.parts) >= MOST_PARTS:
        return TOOL_FULL
    if not touches(part, state.parts):
        return NEW_OFF_TOOL
    part = replace(part, name=unused_name(part.name, {other.name for other in state.parts}))
    parts = (*state.parts, part)
    at_m = clamped(part.at_m[0], places_m(parts, len(parts) - 1))
    parts = (*state.parts, replace(part, at_m=(at_m, *part.at_m[1:])))
    looks = dict(state.looks) if look is None else {**state.looks, part.name: look}
    after = _rebuilt(state, parts, (*state.ids, state.next_id), looks)
    return after if isinstance(after, Refused) else replace(after, next_id=state.next_id + 1)


def _with_part(state: BuiltTool, id: int, changed: Part) -> BuiltTool | Refused:  # noqa: A002 - the field's own name
    if changed == state.part(id):
        return state
    parts = tuple(changed if each == id else part for each, part in zip(state.ids, state.parts, strict=True))
    return _rebuilt(state, parts, state.ids, state.looks)


def _rebuilt(
    state: BuiltTool, parts: tuple[Part, ...], ids: tuple[int, ...], looks: Mapping[str, str]
) -> BuiltTool | Refused:
    """The tool of these parts, held, and the guess taken back: it was about the tool as it was."""
    try:
        parts = held_together(parts)
        lie = lie_of(parts)
        pad_body(parts, underside_m=lie.underside_m, left_m=lie.left_m, right_m=lie.right_m)
    except UnfitBuildError as unfit:
        return unfit.why
    except MechanicsError:
        return TOO_LIGHT
    ends_m = (lie.left_m, lie.right_m)
    return replace(
        state.stilled(),
        parts=parts,
        ids=ids,
        looks=MappingProxyType(dict(looks)),
        left_m=lie.left_m,
        right_m=lie.right_m,
        underside_m=lie.underside_m,
        floor_m=lie.floor_m,
        finger_at_m=clamped(state.finger_at_m, ends_m),
        reference_m=clamped(state.reference_m, ends_m),
        guess=None,
    )


EDITS: Mapping[type, Does] = MappingProxyType(
    {
        **SHARED,
        **NAME_EDITS,
        Hang: hang,
        Move: move,
        Remove: remove,
        Copy: copy,
        SetHold: set_hold,
        MoveFinger: move_finger,
        Measure: measure,
        OpenBuild: open_build,
        FitPart: fit,
        SetLength: set_length,
        Reweigh: reweigh,
    }
)
"""What it does to this bench, by the class of the command."""
