"""One more of what hangs in a mobile: a weight, or a bar with all below it; as it is, or turned left for right.

And what each is called.
"""

from __future__ import annotations

from dataclasses import replace

from lab.simulation.benches.bar_edits import BESIDE
from lab.simulation.benches.groups import without_number
from lab.simulation.benches.hanging_bar import Hung
from lab.simulation.benches.mobile import MOST_BARS, MOST_THINGS, Beam, Mobile, below
from lab.simulation.benches.mobile_builds import tidy
from lab.simulation.benches.mobile_changes import (
    FULL,
    FULL_OF_BARS,
    NOTHING_THERE,
    TOPMOST,
    hung_below,
    names_of,
    room_at,
    touched,
    with_beam,
)
from lab.simulation.benches.names import NOT_A_NAME, typed_name, unused_name
from lab.simulation.part_commands import Copy, Rename
from lab.simulation.refused import Refused, msg

NO_MIRROR = Refused(template=msg("On the other side of the ring the bar does not reach so far."))


def copy(state: Mobile, command: Copy) -> Mobile | Refused:
    """As far beside it as there is room; mirrored, on the other side of the ring of the bar that carries it."""
    beam, carrier = state.beam(command.id), state.carrier(command.id)
    if beam is not None:
        return _bar_copied(state, beam, mirrored=command.mirrored)
    weight = None if carrier is None else carrier.weight(command.id)
    if carrier is None or weight is None:
        return NOTHING_THERE
    if state.things >= MOST_THINGS:
        return FULL
    at_m = _copied_to(state, carrier, weight.at_m, mirrored=command.mirrored)
    if isinstance(at_m, Refused):
        return at_m
    new = replace(weight, id=state.next_id, name=_fresh(weight.name, names_of(state)), at_m=at_m)
    return with_beam(state, replace(carrier, weights=(*carrier.weights, new)), next_id=state.next_id + 1)


def rename(state: Mobile, command: Rename) -> Mobile | Refused:
    """A bar or a weight; nothing moves, so the guess stands."""
    beam, carrier = state.beam(command.id), state.carrier(command.id)
    weight = None if carrier is None else carrier.weight(command.id)
    before = weight if beam is None else beam
    if before is None:
        return NOTHING_THERE
    wanted = typed_name(command.name)
    if wanted is None:
        return NOT_A_NAME
    name = wanted if wanted == before.name else unused_name(wanted, names_of(state) - {before.name})
    beams = tuple(
        replace(
            each,
            name=name if each is beam else each.name,
            weights=tuple(replace(one, name=name) if one is weight else one for one in each.weights),
        )
        for each in state.beams
    )
    return state if beams == state.beams else replace(state, beams=beams)


def _bar_copied(state: Mobile, beam: Beam, *, mirrored: bool) -> Mobile | Refused:
    above, whole = state.beam(beam.above), below(state.beams, beam.id)
    if above is None:
        return TOPMOST
    if len(state.beams) + len(whole) > MOST_BARS:
        return FULL_OF_BARS
    if state.things + sum(1 + len(each.weights) for each in whole) > MOST_THINGS:
        return FULL
    hook_m = _copied_to(state, above, beam.hook_m, mirrored=mirrored)
    if isinstance(hook_m, Refused):
        return hook_m
    renewed = _Renewed(state)
    bars = [renewed.bar(each) for each in whole]
    if mirrored:
        lengths = {bar.id: bar.length_m for bar in bars}
        bars = [_turned(bar, lengths.get(bar.above or 0)) for bar in bars]
    bars[0] = replace(bars[0], above=above.id, hook_m=hook_m)
    return replace(touched(state), beams=hung_below(state.beams, tuple(bars), above.id), next_id=renewed.next_id)


def _copied_to(state: Mobile, beam: Beam, at_m: float, *, mirrored: bool) -> float | Refused:
    """Where a copy of what hangs at a place of a bar would hang."""
    if mirrored:
        place_m = room_at(state, beam, tidy(2 * beam.pin_m - at_m))
        off = not 0.0 <= tidy(2 * beam.pin_m - at_m) <= beam.length_m
        return NO_MIRROR if off else place_m
    beside_m = BESIDE * beam.length_m
    return room_at(state, beam, at_m + (beside_m if at_m + beside_m <= beam.length_m else -beside_m))


def _turned(bar: Beam, above_m: float | None) -> Beam:
    """A bar turned left for right, with its weights.  above_m: the length of the bar above, where that turns too."""
    weights = tuple(replace(each, at_m=tidy(bar.length_m - each.at_m)) for each in bar.weights)
    hook_m = bar.hook_m if above_m is None else tidy(above_m - bar.hook_m)
    return replace(bar, pin_m=tidy(bar.length_m - bar.pin_m), hook_m=hook_m, weights=weights)


def _fresh(name: str, taken: set[str]) -> str:
    return unused_name(without_number(name), taken)


class _Renewed:
    """Gives copies ids and names of their own."""

    def __init__(self, state: Mobile) -> None:
        self.next_id = state.next_id
        self._names = names_of(state)
        self._ids: dict[int | None, int] = {}

    def bar(self, bar: Beam) -> Beam:
        """A copy of a bar; what it hangs from is copied before it."""
        number, name = self._new(bar.name)
        self._ids[bar.id] = number
        weights = tuple(self._weight(each) for each in bar.weights)
        return replace(bar, id=number, name=name, above=self._ids.get(bar.above), weights=weights)

    def _weight(self, weight: Hung) -> Hung:
        number, name = self._new(weight.name)
        return replace(weight, id=number, name=name)

    def _new(self, name: str) -> tuple[int, str]:
        fresh = _fresh(name, self._names)
        self._names.add(fresh)
        self.next_id += 1
        return self.next_id - 1, fresh
