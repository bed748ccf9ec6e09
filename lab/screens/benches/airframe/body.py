"""The airframe of the bench as the views draw it."""

from __future__ import annotations

from functools import lru_cache
from types import MappingProxyType

from lab.mechanics import Surface, Tank, tank_parts
from lab.scenes.scales.stage import strip_px
from lab.scenes.views.body import Body
from lab.simulation.benches.airframe import AirframePart
from lab.ui.geometry import Rect
from lab.ui.look import Look


def room_of(look: Look, rect: Rect) -> Rect:
    """The part of the picture that is drawn in: the strip of what is picked lies below, and moves nothing."""
    return rect.cut_bottom(strip_px(look, rect))[1]


@lru_cache(maxsize=16)
def airframe_body(
    title: str, parts_on: tuple[AirframePart, ...], tanks: tuple[Tank, ...], surfaces: tuple[Surface, ...]
) -> Body:
    """All that is drawn.  While something moves, every frame asks for the same."""
    return Body(
        name=title,
        parts=(*(each.part for each in parts_on), *tank_parts(tanks)),
        surfaces=surfaces,
        tanks=tanks,
        looks=MappingProxyType({each.name: each.look for each in parts_on if each.look is not None}),
    )
