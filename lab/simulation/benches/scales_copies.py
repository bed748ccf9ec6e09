"""One more of what stands on scales: beside it, or on the other side."""

from __future__ import annotations

from dataclasses import replace

from lab.simulation.benches.bar_edits import BESIDE
from lab.simulation.benches.groups import copied_names, together_m
from lab.simulation.benches.hanging_bar import Hung
from lab.simulation.benches.named_edits import NO_SUCH_PART
from lab.simulation.benches.scales import MOST_LOADS, ScalesBench
from lab.simulation.benches.scales_loads import CARRIES_ALL, FULL, on_it, shifted, tied, touching
from lab.simulation.benches.shared_edits import clamped
from lab.simulation.part_commands import Copy
from lab.simulation.refused import Refused, msg

NO_MIRROR = Refused(template=msg("There is nothing on the other side to stand it on."))


@touching
def copy(state: ScalesBench, command: Copy) -> ScalesBench | Refused:
    """One more of the same beside it, with all that is tied to it; mirrored, beyond the middle of the scales.

    On three scales that is the other side of the plane of symmetry, across 0; on two it is along.
    """
    load = state.load(command.id)
    if load is None:
        return NO_SUCH_PART
    if load is state.carrier:
        return CARRIES_ALL
    group = tied(state, load)
    if len(state.loads) + len(group) > MOST_LOADS:
        return FULL
    copies = [_mirrored(state, each) for each in group] if command.mirrored else _beside(state, group)
    if not all(on_it(state, each.at_m, each.across_m) for each in copies):
        return NO_MIRROR
    names = copied_names(state.names, [each.name for each in group])
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


def _beside(state: ScalesBench, group: list[Hung]) -> list[Hung]:
    """To the right of them, or to the left where there is no room."""
    beside_m, (along, _) = BESIDE * state.size_m, state.reach_m
    at_m, spans_m = [each.at_m for each in group], [along] * len(group)
    by_m = together_m(beside_m, at_m, spans_m)
    by_m = by_m if by_m >= beside_m else together_m(-beside_m, at_m, spans_m)
    return [shifted(each, by_m, 0.0) for each in group]
