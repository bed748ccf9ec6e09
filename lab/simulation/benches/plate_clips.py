"""What each command does to the weights that are clipped on a plate."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

from lab.simulation.benches.hanging_bar import Hung
from lab.simulation.benches.names import unused_name
from lab.simulation.benches.plate import HungPlate
from lab.simulation.benches.plate_builds import MOST_CLIPS
from lab.simulation.benches.plate_rings import bench_place, in_wood
from lab.simulation.benches.shared_edits import NOT_A_DOUBT, Does, is_measured
from lab.simulation.commands import Measure, Remove
from lab.simulation.part_commands import Rename, Reweigh
from lab.simulation.plate_commands import ClipOn, MoveClip
from lab.simulation.refused import Refused, msg

HEAVIEST_KG = 1000.0
"""No weight is heavier, so that every sum stays a number."""

NO_SUCH_CLIP = Refused(template=msg("That weight is not on the plate any more."))
FULL_OF_CLIPS = Refused(template=msg("There is no room for one more weight. Take one off first."))
NO_WOOD_FOR_CLIP = Refused(template=msg("There is no wood there to clip it on, so it went back."))
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
    taken = {state.name, *(clip.name for clip in state.clips)}
    name = unused_name(command.name or f"brass {command.mass_kg * 1000.0:.4g}", taken)
    along_m, up_m = place
    clip = Hung(id=state.next_id, name=name, mass_kg=command.mass_kg, at_m=along_m, up_m=up_m, hold="clamped")
    return replace(state.touched(), clips=(*state.clips, clip), next_id=state.next_id + 1)


def move_clip(state: HungPlate, command: MoveClip) -> HungPlate | Refused:
    """Off the wood it stays where it was."""
    clip = state.clip(command.id)
    if clip is None:
        return NO_SUCH_CLIP
    place = bench_place(command.at_m, command.up_m)
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
    return replace(state.touched(), clips=tuple(clip for clip in state.clips if clip.id != command.id))


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
    {ClipOn: clip_on, MoveClip: move_clip, Reweigh: reweigh, Rename: rename, Remove: remove, Measure: measure}
)
"""What is done to a clipped weight, or to how well all is measured, by the class of the command."""
