"""What each command does to a mobile. Touching a bar or what hangs on it holds everything level first."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

from lab import files
from lab.simulation.benches.bar_edits import HEAVIEST_KG, NOT_A_WEIGHT, NOT_ITS_WEIGHT
from lab.simulation.benches.bar_parts import kind_of, of_look
from lab.simulation.benches.hanging_bar import Hung
from lab.simulation.benches.mobile import MOST_BARS, MOST_LEVELS, MOST_THINGS, Beam, Mobile, below
from lab.simulation.benches.mobile_builds import mobile_from_build, tidy
from lab.simulation.benches.mobile_changes import (
    FULL,
    FULL_OF_BARS,
    NOTHING_THERE,
    OFF_EVERY_BAR,
    TOPMOST,
    height_of,
    hung_below,
    level_of,
    names_of,
    on_bar_m,
    room_at,
    touched,
    with_beam,
)
from lab.simulation.benches.mobile_copies import copy, rename
from lab.simulation.benches.names import unused_name
from lab.simulation.benches.shared_edits import NOT_A_DOUBT, SHARED, Does, clamped, is_measured
from lab.simulation.benches.unfit import OPENED_TEXT, UnfitBuildError, unreadable
from lab.simulation.commands import Measure, OpenBuild, Remove
from lab.simulation.mobile_commands import HangBar, HangOn, Rehang, SlideBar
from lab.simulation.part_commands import Copy, Rename, Reweigh
from lab.simulation.refused import Refused, msg

LONGEST_M = 2.0
"""No bar from the tray is longer: it would dwarf all others."""

NO_SUCH_BAR = Refused(template=msg("That bar is not in the mobile any more."))
NOT_A_BAR = Refused(template=msg("That is not a bar that can hang in a mobile."))
TOO_LOW = Refused(template=msg("There is no room for a bar so far down. Hang it higher up."))
UNDER_ITSELF = Refused(template=msg("A bar can't hang from what hangs below it."))


def hang_on(state: Mobile, command: HangOn) -> Mobile | Refused:
    """A new weight with an id and a name of its own."""
    beam = state.beam(command.bar)
    if not 0.0 < command.mass_kg <= HEAVIEST_KG:
        return NOT_A_WEIGHT
    if state.things >= MOST_THINGS:
        return FULL
    at_m = room_at(state, beam, command.at_m)
    if isinstance(at_m, Refused) or beam is None:
        return at_m if isinstance(at_m, Refused) else NO_SUCH_BAR
    name = unused_name(command.name or f"brass {command.mass_kg * 1000.0:.4g}", names_of(state))
    # Whatever it is hangs by a hook and turns there: a rod too, which on the hanging bar is strapped on.
    like = of_look(command.look, command.mass_kg) or Hung(id=0, name="", mass_kg=command.mass_kg, at_m=0.0)
    weight = replace(like, id=state.next_id, name=name, at_m=at_m, hold="hung", look=command.look)
    return with_beam(state, replace(beam, weights=(*beam.weights, weight)), next_id=state.next_id + 1)


def hang_bar(state: Mobile, command: HangBar) -> Mobile | Refused:
    """A new bar that hangs by its middle."""
    above = state.beam(command.bar)
    if not (0.0 < command.length_m <= LONGEST_M and 0.0 < command.mass_kg <= HEAVIEST_KG):
        return NOT_A_BAR
    if len(state.beams) >= MOST_BARS or state.things >= MOST_THINGS:
        return FULL if state.things >= MOST_THINGS else FULL_OF_BARS
    hook_m = room_at(state, above, command.at_m)
    if isinstance(hook_m, Refused) or above is None:
        return hook_m if isinstance(hook_m, Refused) else NO_SUCH_BAR
    if level_of(state, above) >= MOST_LEVELS:
        return TOO_LOW
    length_m = tidy(command.length_m)
    if not length_m > 0.0:
        return NOT_A_BAR
    bar = Beam(
        id=state.next_id,
        name=unused_name(command.name or f"bar {length_m * 100.0:.4g}", names_of(state)),
        length_m=length_m,
        mass_kg=command.mass_kg,
        pin_m=tidy(length_m / 2),
        above=above.id,
        hook_m=hook_m,
    )
    beams = hung_below(state.beams, (bar,), above.id)
    return replace(touched(state), beams=beams, next_id=state.next_id + 1)


def rehang(state: Mobile, command: Rehang) -> Mobile | Refused:
    """A weight, or a bar with all below it, to another place on its bar or on another bar."""
    onto, beam = state.beam(command.bar), state.beam(command.id)
    carrier = state.carrier(command.id)
    if beam is None and carrier is None:
        return NOTHING_THERE
    if beam is not None and beam.above is None:
        return TOPMOST
    if beam is not None and onto in below(state.beams, beam.id):
        return UNDER_ITSELF
    stays = onto is not None and onto.id == (beam.above if beam is not None else carrier.id if carrier else None)
    at_m = on_bar_m(onto, command.at_m) if stays else room_at(state, onto, command.at_m)
    if isinstance(at_m, Refused) or onto is None:
        return at_m if isinstance(at_m, Refused) else NO_SUCH_BAR
    if beam is not None:
        return _bar_to(state, beam, onto, at_m)
    return _weight_to(state, command.id, onto, at_m)


def slide_bar(state: Mobile, command: SlideBar) -> Mobile | Refused:
    """A bar through its ring, which stops at its ends; it stays hung where it is."""
    beam = state.beam(command.bar)
    if beam is None:
        return NO_SUCH_BAR
    if not math.isfinite(command.at_m):
        return OFF_EVERY_BAR
    return with_beam(state, replace(beam, pin_m=tidy(clamped(command.at_m, (0.0, beam.length_m)))))


def reweigh(state: Mobile, command: Reweigh) -> Mobile | Refused:
    """Another weight of the same name and look, in the same place."""
    if not 0.0 < command.mass_kg <= HEAVIEST_KG:
        return NOT_A_WEIGHT
    beam, carrier = state.beam(command.id), state.carrier(command.id)
    if beam is not None:
        return with_beam(state, replace(beam, mass_kg=command.mass_kg))
    weight = None if carrier is None else carrier.weight(command.id)
    if carrier is None or weight is None:
        return NOTHING_THERE
    kind = kind_of(weight)
    if kind is not None and not kind.can_weigh(command.mass_kg):
        return NOT_ITS_WEIGHT
    weights = tuple(
        replace(each, mass_kg=command.mass_kg) if each.id == command.id else each for each in carrier.weights
    )
    return with_beam(state, replace(carrier, weights=weights))


def remove(state: Mobile, command: Remove) -> Mobile | Refused:
    """A weight, or a bar and all that hangs from it. Ids are not used again."""
    beam, carrier = state.beam(command.id), state.carrier(command.id)
    if beam is not None:
        if beam.above is None:
            return TOPMOST
        gone = below(state.beams, beam.id)
        return replace(touched(state), beams=tuple(each for each in state.beams if each not in gone))
    if carrier is None:
        return NOTHING_THERE
    return with_beam(state, replace(carrier, weights=tuple(each for each in carrier.weights if each.id != command.id)))


def measure(state: Mobile, command: Measure) -> Mobile | Refused:
    """The weights are as doubtful as said; the bars themselves were weighed with greater care."""
    if not is_measured(command):
        return NOT_A_DOUBT
    doubt_m = (command.at_m, 0.0, 0.0)
    beams = tuple(
        replace(
            beam,
            weights=tuple(replace(each, mass_doubt_kg=command.mass_kg, at_doubt_m=doubt_m) for each in beam.weights),
        )
        for beam in state.beams
    )
    return replace(state, beams=beams)


def open_mobile(_: Mobile, command: OpenBuild) -> Mobile | Refused:
    """The saved mobile takes the place of everything."""
    try:
        return mobile_from_build(files.read_build_text(command.text, file=OPENED_TEXT))
    except files.FileFaults as faults:
        return unreadable(faults)
    except UnfitBuildError as unfit:
        return unfit.why


def _bar_to(state: Mobile, beam: Beam, onto: Beam, hook_m: float) -> Mobile | Refused:
    moved = replace(beam, above=onto.id, hook_m=hook_m)
    if beam.above == onto.id:
        return with_beam(state, moved)
    whole = below(state.beams, beam.id)
    if level_of(state, onto) + height_of(whole, beam) > MOST_LEVELS:
        return TOO_LOW
    rest = tuple(each for each in state.beams if each not in whole)
    return replace(touched(state), beams=hung_below(rest, (moved, *whole[1:]), onto.id))


def _weight_to(state: Mobile, id: int, onto: Beam, at_m: float) -> Mobile | Refused:  # noqa: A002
    carrier = state.carrier(id)
    weight = None if carrier is None else carrier.weight(id)
    if carrier is None or weight is None:
        return NOTHING_THERE
    moved = replace(weight, at_m=at_m)
    if carrier.id == onto.id:
        return with_beam(state, replace(onto, weights=tuple(moved if each.id == id else each for each in onto.weights)))
    left = replace(carrier, weights=tuple(each for each in carrier.weights if each.id != id))
    # On the new bar another may have its name: those of opened files are unlike only bar by bar.
    others = {each.name for each in onto.weights} | {each.name for each in state.beams}
    moved = replace(moved, name=unused_name(moved.name, others))
    return with_beam(with_beam(state, left), replace(onto, weights=(*onto.weights, moved)))


EDITS: Mapping[type, Does] = MappingProxyType(
    {
        **SHARED,
        Remove: remove,
        Measure: measure,
        OpenBuild: open_mobile,
        HangOn: hang_on,
        HangBar: hang_bar,
        Rehang: rehang,
        SlideBar: slide_bar,
        Reweigh: reweigh,
        Copy: copy,
        Rename: rename,
    }
)
"""What it does to this bench, by the class of the command."""
