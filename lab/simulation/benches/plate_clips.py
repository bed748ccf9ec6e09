"""What each command does to the weights that are clipped on a plate."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from types import MappingProxyType

from lab.simulation.benches.bar_edits import BESIDE
from lab.simulation.benches.groups import copied_names, taken_names, tied_with
from lab.simulation.benches.hanging_bar import Hung
from lab.simulation.benches.named_edits import NAME_EDITS
from lab.simulation.benches.names import unused_name
from lab.simulation.benches.plate import HungPlate
from lab.simulation.benches.plate_builds import MOST_CLIPS
from lab.simulation.benches.plate_rings import Corner, bench_place, in_wood, on_grid
from lab.simulation.benches.shared_edits import NOT_A_DOUBT, Does, is_measured
from lab.simulation.commands import Measure, Remove
from lab.simulation.part_commands import Copy, Reweigh
from lab.simulation.plate_commands import ClipOn, MoveClip
from lab.simulation.refused import Refused, msg

HEAVIEST_KG = 1000.0
"""No weight is heavier, so that every sum stays a number."""

NO_SUCH_CLIP = Refused(template=msg("That weight is not on the plate any more."))
FULL_OF_CLIPS = Refused(template=msg("There is no room for one more weight. Take one off first."))
NO_WOOD_FOR_CLIP = Refused(template=msg("There is no wood there to clip it on, so it went back."))
NO_WOOD_BESIDE = Refused(template=msg("There is no wood beside it for one more."))
NO_MIRROR = Refused(template=msg("There is no wood on the other side of the pin."))
NOT_A_WEIGHT = Refused(template=msg("That is not a weight this plate can carry."))


def clip_on(state: HungPlate, command: ClipOn) -> HungPlate | Refused:
    """A new weight with an id and a name of its own."""
    if len(state.clips) >= MOST_CLIPS:
        return FULL_OF_CLIPS
    if not 0.0 < command.mass_kg <= HEAVIEST_KG:
        return NOT_A_WEIGHT
    place = bench_place(command.at_m, command.up_m)
    if place is None or not in_wood(place, state.outline_m, state.holes_m):
        return NO_WOOD_FOR_CLIP
    name = unused_name(command.name or f"brass {command.mass_kg * 1000.0:.4g}", state.names)
    along_m, up_m = place
    clip = Hung(id=state.next_id, name=name, mass_kg=command.mass_kg, at_m=along_m, up_m=up_m, hold="clamped")
    return replace(state.touched(), clips=(*state.clips, clip), next_id=state.next_id + 1)


def move_clip(state: HungPlate, command: MoveClip) -> HungPlate | Refused:
    """With all that is tied to it; off the wood they stay where they were."""
    clip = state.clip(command.id)
    if clip is None:
        return NO_SUCH_CLIP
    place = bench_place(command.at_m, command.up_m)
    if place is None or not in_wood(place, state.outline_m, state.holes_m):
        return NO_WOOD_FOR_CLIP
    if place == (clip.at_m, clip.up_m):
        return state
    by_m = place[0] - clip.at_m, place[1] - clip.up_m
    after = {each.id: (on_grid(each.at_m + by_m[0]), on_grid(each.up_m + by_m[1])) for each in _tied(state, clip)}
    after[clip.id] = place
    if not _all_in_wood(state, list(after.values())):
        return NO_WOOD_FOR_CLIP
    clips = tuple(_put(each, after[each.id]) if each.id in after else each for each in state.clips)
    return replace(state.touched(), clips=clips)


def _put(clip: Hung, place: Corner) -> Hung:
    return replace(clip, at_m=place[0], up_m=place[1])


def reweigh(state: HungPlate, command: Reweigh) -> HungPlate | Refused:
    """Another weight in its place."""
    clip = state.clip(command.id)
    if clip is None:
        return NO_SUCH_CLIP
    if not 0.0 < command.mass_kg <= HEAVIEST_KG:
        return NOT_A_WEIGHT
    return state if command.mass_kg == clip.mass_kg else _with_clip(state, replace(clip, mass_kg=command.mass_kg))


def remove(state: HungPlate, command: Remove) -> HungPlate | Refused:
    """Its id is not used again."""
    if command.id not in state.ids:
        return NO_SUCH_CLIP
    names = taken_names(state.names, state.ids.index(command.id))
    return replace(state.touched(), clips=tuple(clip for clip in state.clips if clip.id != command.id)).called(names)


def copy(state: HungPlate, command: Copy) -> HungPlate | Refused:
    """One more of the same and of all that is tied to it, beside it where there is wood.

    mirrored: as far on the other side of the upright through the pin.
    """
    clip = state.clip(command.id)
    if clip is None:
        return NO_SUCH_CLIP
    tied = _tied(state, clip)
    if len(state.clips) + len(tied) > MOST_CLIPS:
        return FULL_OF_CLIPS
    if command.mirrored:
        places = [(2 * state.pivot.at_m - each.at_m, each.up_m) for each in tied]
    else:
        places = next((found for found in _beside(state, tied) if _all_in_wood(state, found)), [])
    if not places or not _all_in_wood(state, places):
        return NO_MIRROR if command.mirrored else NO_WOOD_BESIDE
    names = copied_names(state.names, [each.name for each in tied])
    new = tuple(
        replace(each, id=state.next_id + number, name=name, at_m=on_grid(at_m), up_m=on_grid(up_m))
        for number, (each, name, (at_m, up_m)) in enumerate(zip(tied, names, places, strict=True))
    )
    return replace(state.touched(), clips=(*state.clips, *new), next_id=state.next_id + len(new))


def _beside(state: HungPlate, tied: list[Hung]) -> Iterator[list[Corner]]:
    """Where copies could go: right, left, above, below."""
    wide_m = max(at_m for at_m, _ in state.outline_m) - min(at_m for at_m, _ in state.outline_m)
    step_m = BESIDE * wide_m
    for along_m, up_m in ((step_m, 0.0), (-step_m, 0.0), (0.0, step_m), (0.0, -step_m)):
        yield [(each.at_m + along_m, each.up_m + up_m) for each in tied]


def _all_in_wood(state: HungPlate, places: list[Corner]) -> bool:
    return all(in_wood(place, state.outline_m, state.holes_m) for place in places)


def _tied(state: HungPlate, clip: Hung) -> list[Hung]:
    """The weights that move with one, itself among them."""
    numbers = tied_with(state.names, state.ids.index(clip.id))
    return [state.clips[number] for number in numbers if number < len(state.clips)]


def measure(state: HungPlate, command: Measure) -> HungPlate | Refused:
    """The plate and its weights are as doubtful as said, along and up alike."""
    if not is_measured(command):
        return NOT_A_DOUBT
    at_doubt_m = (command.at_m, 0.0, command.at_m)
    clips = tuple(replace(clip, mass_doubt_kg=command.mass_kg, at_doubt_m=at_doubt_m) for clip in state.clips)
    return replace(state, clips=clips, mass_doubt_kg=command.mass_kg, at_doubt_m=at_doubt_m)


def _with_clip(state: HungPlate, changed: Hung) -> HungPlate:
    return replace(state.touched(), clips=tuple(changed if one.id == changed.id else one for one in state.clips))


CLIP_EDITS: Mapping[type, Does] = MappingProxyType(
    {**NAME_EDITS, ClipOn: clip_on, MoveClip: move_clip, Reweigh: reweigh, Copy: copy, Remove: remove, Measure: measure}
)
"""What is done to a clipped weight, or to how well all is measured, by the class of the command."""
