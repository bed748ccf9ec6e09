"""How far things on an airframe can be moved: the box round the others, and a little beyond."""

from __future__ import annotations

from collections.abc import Collection

from lab.simulation.benches.airframe import AirframeBench
from lab.simulation.benches.airframe_places import Spans, spans_m

BEYOND = 0.15
"""So far beyond the box things reach, as a share of its longest side: nose weights go on sticks."""


def reach_m(state: AirframeBench, moved: Collection[str] = ()) -> Spans:
    """From where to where, along, across and up.

    moved: the names of what is moved: it does not hold its own reach open, but where it is it can stay.
    """
    own = {name.rsplit("/", 1)[-1] for name in moved}
    fixed = [part for part in state.parts if part.name not in moved]
    surfaces = [surface for surface in state.surfaces if surface.name not in own]
    if not fixed:
        fixed, surfaces = list(state.parts), list(state.surfaces)
    spans = spans_m(fixed, surfaces)
    beyond = BEYOND * max(high - low for low, high in spans)
    places = [part.at_m for part in state.parts] + [tank.at_m for tank in state.tanks]
    along, across, up = (
        (
            min(low - beyond, *(place[axis] for place in places)),
            max(high + beyond, *(place[axis] for place in places)),
        )
        for axis, (low, high) in enumerate(spans)
    )
    return along, across, up
