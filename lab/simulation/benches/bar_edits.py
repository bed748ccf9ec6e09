"""What each command does to a hanging bar. Touching the bar or what hangs on it holds it level first."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import get_args

from lab import files
from lab.simulation.benches import bar_parts
from lab.simulation.benches.bar_builds import hanging_bar_from_build
from lab.simulation.benches.groups import copied_names, taken_names, tied_with, together_m
from lab.simulation.benches.hanging_bar import MOST_WEIGHTS, HangingBar, Hung
from lab.simulation.benches.named_edits import NAME_EDITS
from lab.simulation.benches.names import unused_name
from lab.simulation.benches.shared_edits import NOT_A_DOUBT, NOT_A_PLACE, SHARED, Does, clamped, is_measured
from lab.simulation.benches.unfit import OPENED_TEXT, UnfitBuildError, unreadable
from lab.simulation.commands import Hang, Hold, Measure, Move, MovePivot, OpenBuild, Remove, SetHold
from lab.simulation.part_commands import Copy, Reweigh
from lab.simulation.refused import Refused, msg
from lab.simulation.tool_commands import FitPart

BESIDE = 0.05
"""How far beside a weight its copy hangs, as a share of the bar: so that both can be seen."""

HEAVIEST_KG = 1000.0
"""No weight is heavier, so that every sum stays a number."""

_EDGE_M = 1e-9
"""A hook this far off the end is on it: pixels turned into metres miss by round-off."""

BAR_FULL = Refused(template=msg("The bar has no room for one more weight. Take one off first."))
NEW_OFF_BAR = Refused(template=msg("There is no bar there to hang it from, so it went back."))
NOT_A_WEIGHT = Refused(template=msg("That is not a weight this bar can carry."))
NO_SUCH_WEIGHT = Refused(template=msg("That weight is not on the bar any more."))
NO_MIRROR = Refused(template=msg("On the other side of the pivot the bar does not reach so far."))
NOT_A_KIND = Refused(template=msg("That is not a part that the tray has."))
ONLY_SO = Refused(template=msg("That cannot be held in any other way."))
NOT_ITS_WEIGHT = Refused(template=msg("A tin holds up to 400 mL of water, a cord 1 to 10 beads."))
NOT_A_HOLD = Refused(template=msg("A weight is either hung or clamped."))


def hang(state: HangingBar, command: Hang) -> HangingBar | Refused:
    """A new weight with an id and a name of its own."""
    if len(state.weights) >= MOST_WEIGHTS:
        return BAR_FULL
    if not 0.0 < command.mass_kg <= HEAVIEST_KG:
        return NOT_A_WEIGHT
    if command.hold not in get_args(Hold):
        return NOT_A_HOLD
    at_m = _on_bar_m(state, command.at_m)
    if at_m is None:
        return NEW_OFF_BAR
    name = unused_name(command.name or f"brass {command.mass_kg * 1000.0:.4g}", state.names)
    weight = Hung(id=state.next_id, name=name, mass_kg=command.mass_kg, at_m=at_m, hold=command.hold)
    return replace(_touched(state), weights=(*state.weights, weight), next_id=state.next_id + 1)


def fit(state: HangingBar, command: FitPart) -> HangingBar | Refused:
    """A tin, beads, a rod or a plate, with an id and a name of its own."""
    kind = bar_parts.KINDS.get(command.kind)
    if kind is None:
        return NOT_A_KIND
    if len(state.weights) >= MOST_WEIGHTS:
        return BAR_FULL
    at_m = _on_bar_m(state, command.at_m)
    if at_m is None:
        return NEW_OFF_BAR
    name = unused_name(command.name or kind.called, state.names)
    new = kind.part(state.next_id, name, at_m)
    new = replace(new, at_m=clamped(at_m, bar_parts.span_m(state.bar, new)))
    return replace(_touched(state), weights=(*state.weights, new), next_id=state.next_id + 1)


def move(state: HangingBar, command: Move) -> HangingBar | Refused:
    """Along the bar, with all that is tied to it; off the bar it stays where it was."""
    if command.id not in state.ids:
        return NO_SUCH_WEIGHT
    index = state.ids.index(command.id)
    weight, at_m = state.weights[index], _on_bar_m(state, command.at_m)
    if at_m is None:
        return Refused(
            template=msg("{name} would be off the bar, so it went back to where it was."),
            values={"name": weight.name},
        )
    tied = _tied(state, index)
    if len(tied) == 1:
        return _with_weight(state, replace(weight, at_m=clamped(at_m, bar_parts.span_m(state.bar, weight))))
    spans_m = [bar_parts.span_m(state.bar, each) for each in tied]
    by_m = together_m(at_m - weight.at_m, [each.at_m for each in tied], spans_m)
    after = {each.id: clamped(each.at_m + by_m, span_m) for each, span_m in zip(tied, spans_m, strict=True)}
    return _with_weights(state, tuple(replace(each, at_m=after.get(each.id, each.at_m)) for each in state.weights))


def remove(state: HangingBar, command: Remove) -> HangingBar | Refused:
    """Its id is not used again."""
    if command.id not in state.ids:
        return NO_SUCH_WEIGHT
    index = state.ids.index(command.id)
    rest = tuple(weight for weight in state.weights if weight.id != command.id)
    after = replace(_touched(state), weights=rest)
    return after.called(taken_names(state.names, index))


def set_hold(state: HangingBar, command: SetHold) -> HangingBar | Refused:
    """By its cord, or fast to the bar."""
    weight = state.weight(command.id)
    if weight is None:
        return NO_SUCH_WEIGHT
    if command.hold not in get_args(Hold):
        return NOT_A_HOLD
    if bar_parts.kind_of(weight) is not None:
        return state if weight.hold == command.hold else ONLY_SO
    return _with_weight(state, replace(weight, hold=command.hold))


def reweigh(state: HangingBar, command: Reweigh) -> HangingBar | Refused:
    """A brass weight with its stamp struck anew; a tin with more water or less, a cord with other beads."""
    weight = state.weight(command.id)
    if weight is None:
        return NO_SUCH_WEIGHT
    if not 0.0 < command.mass_kg <= HEAVIEST_KG:
        return NOT_A_WEIGHT
    kind = bar_parts.kind_of(weight)
    if kind is not None and not kind.can_weigh(command.mass_kg):
        return NOT_ITS_WEIGHT
    return _with_weight(state, replace(weight, mass_kg=command.mass_kg))


def copy(state: HangingBar, command: Copy) -> HangingBar | Refused:
    """One more of the same with all that is tied to it, as far beside it as there is room.

    mirrored: on the other side of the pivot.
    """
    if command.id not in state.ids:
        return NO_SUCH_WEIGHT
    index = state.ids.index(command.id)
    tied = _tied(state, index)
    if len(state.weights) + len(tied) > MOST_WEIGHTS:
        return BAR_FULL
    spans_m = [bar_parts.span_m(state.bar, each) for each in tied]
    at_m = [each.at_m for each in tied]
    if command.mirrored:
        places_m = [2 * state.pivot.at_m - place_m for place_m in at_m]
        if any(_off(place_m, span_m) for place_m, span_m in zip(places_m, spans_m, strict=True)):
            return NO_MIRROR
    else:
        beside_m = BESIDE * state.bar.length_m
        by_m = together_m(beside_m, at_m, spans_m)
        # Where there is no room to the right, to the left.
        by_m = by_m if by_m >= beside_m else together_m(-beside_m, at_m, spans_m)
        places_m = [place_m + by_m for place_m in at_m]
    names = copied_names(state.names, [each.name for each in tied])
    new = tuple(
        replace(each, id=state.next_id + number, name=name, at_m=clamped(place_m, span_m))
        for number, (each, name, place_m, span_m) in enumerate(zip(tied, names, places_m, spans_m, strict=True))
    )
    return replace(_touched(state), weights=(*state.weights, *new), next_id=state.next_id + len(new))


def move_pivot(state: HangingBar, command: MovePivot) -> HangingBar | Refused:
    """The carriage stops at the ends of the bar."""
    if not math.isfinite(command.at_m):
        return NOT_A_PLACE
    at_m = clamped(command.at_m, (state.bar.left_m, state.bar.right_m))
    if at_m == state.pivot.at_m:
        return state
    return replace(_touched(state), pivot=replace(state.pivot, at_m=at_m))


def measure(state: HangingBar, command: Measure) -> HangingBar | Refused:
    """The weights are as doubtful as said; the bar itself was weighed with greater care."""
    if not is_measured(command):
        return NOT_A_DOUBT
    doubt_m = (command.at_m, 0.0, 0.0)
    weights = tuple(replace(weight, mass_doubt_kg=command.mass_kg, at_doubt_m=doubt_m) for weight in state.weights)
    return replace(state, weights=weights)


def open_build(_: HangingBar, command: OpenBuild) -> HangingBar | Refused:
    """The saved build takes the place of everything."""
    try:
        return hanging_bar_from_build(files.read_build_text(command.text, file=OPENED_TEXT))
    except files.FileFaults as faults:
        return unreadable(faults)
    except UnfitBuildError as unfit:
        return unfit.why


def _on_bar_m(state: HangingBar, at_m: float) -> float | None:
    low_m, high_m = state.bar.left_m, state.bar.right_m
    if not low_m - _EDGE_M <= at_m <= high_m + _EDGE_M:
        return None
    return clamped(at_m, (low_m, high_m))


def _tied(state: HangingBar, index: int) -> list[Hung]:
    """The weights that move with one, itself among them. A bar is tied to nothing, whatever it is called."""
    return [state.weights[number] for number in tied_with(state.names, index) if number < len(state.weights)]


def _off(at_m: float, span_m: tuple[float, float]) -> bool:
    return not span_m[0] - _EDGE_M <= at_m <= span_m[1] + _EDGE_M


def _with_weight(state: HangingBar, changed: Hung) -> HangingBar:
    return _with_weights(state, tuple(changed if weight.id == changed.id else weight for weight in state.weights))


def _with_weights(state: HangingBar, weights: tuple[Hung, ...]) -> HangingBar:
    return state if weights == state.weights else replace(_touched(state), weights=weights)


def _touched(state: HangingBar) -> HangingBar:
    """Held level, and the guess taken back: it was about the bar as it was."""
    return replace(state.stilled(), guess=None)


EDITS: Mapping[type, Does] = MappingProxyType(
    {
        **SHARED,
        **NAME_EDITS,
        Hang: hang,
        FitPart: fit,
        Move: move,
        Remove: remove,
        SetHold: set_hold,
        Reweigh: reweigh,
        Copy: copy,
        MovePivot: move_pivot,
        Measure: measure,
        OpenBuild: open_build,
    }
)
"""What it does to this bench, by the class of the command."""
