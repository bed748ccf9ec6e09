"""What changes of a mobile have in common: whether there is room, the order of reading, what is taken."""

from __future__ import annotations

from dataclasses import replace

from lab.simulation.benches.mobile import MOST_ON_A_BAR, Beam, Mobile, below
from lab.simulation.benches.mobile_builds import tidy
from lab.simulation.benches.shared_edits import clamped
from lab.simulation.refused import Refused, msg

_EDGE_M = 1e-9
"""A hook this far off the end is on it: pixels turned into metres miss by round-off."""

OFF_EVERY_BAR = Refused(template=msg("There is no bar there to hang it from, so it went back."))
NOTHING_THERE = Refused(template=msg("That does not hang in the mobile any more."))
FULL_OF_BARS = Refused(template=msg("The mobile has no room for one more bar. Take one off first."))
FULL = Refused(template=msg("The mobile has no room for one more thing. Take one off first."))
TOPMOST = Refused(template=msg("All the others hang from this bar, so it stays."))


def room_at(state: Mobile, beam: Beam | None, at_m: float) -> float | Refused:
    """The place on a bar where one more thing can hang."""
    place_m = on_bar_m(beam, at_m)
    if beam is None or isinstance(place_m, Refused):
        return place_m
    hung = len(beam.weights) + sum(each.above == beam.id for each in state.beams)
    if hung >= MOST_ON_A_BAR:
        return Refused(
            template=msg("{name} has no room for one more. Take something off first."), values={"name": beam.name}
        )
    return place_m


def on_bar_m(beam: Beam | None, at_m: float) -> float | Refused:
    """The place on a bar, or why it is none."""
    if beam is None or not -_EDGE_M <= at_m <= beam.length_m + _EDGE_M:
        return OFF_EVERY_BAR
    return tidy(clamped(at_m, (0.0, beam.length_m)))


def level_of(state: Mobile, beam: Beam) -> int:
    """1 for the topmost bar."""
    level, each = 1, beam
    while (over := state.beam(each.above)) is not None:
        level, each = level + 1, over
    return level


def height_of(beams: tuple[Beam, ...], top: Beam) -> int:
    """How many levels a bar and what hangs from it take."""
    depth = {top.id: 1}
    for each in beams:
        if each.above in depth and each.id != top.id:
            depth[each.id] = depth[each.above] + 1
    return max(depth.values())


def hung_below(beams: tuple[Beam, ...], whole: tuple[Beam, ...], id: int) -> tuple[Beam, ...]:  # noqa: A002
    """The bars with more of them after all that hangs from one bar: so order stays that of reading."""
    last = below(beams, id)[-1]
    place = beams.index(last) + 1
    return (*beams[:place], *whole, *beams[place:])


def names_of(state: Mobile) -> set[str]:
    """Every name that is taken, `bar` too, as files call each bar's own wood."""
    return {"bar", *(beam.name for beam in state.beams), *(each.name for beam in state.beams for each in beam.weights)}


def with_beam(state: Mobile, changed: Beam, *, next_id: int | None = None) -> Mobile:
    """The mobile with one bar changed; as it is where nothing is."""
    if changed == state.beam(changed.id):
        return state
    beams = tuple(changed if beam.id == changed.id else beam for beam in state.beams)
    return replace(touched(state), beams=beams, next_id=next_id or state.next_id)


def touched(state: Mobile) -> Mobile:
    """Held level, and the guess taken back: it was about the mobile as it was."""
    return replace(state.stilled(), guess=None)
