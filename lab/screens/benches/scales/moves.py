"""Where things on the scales bench are, and the commands that move them."""

from __future__ import annotations

from lab.scenes.scales.stage import stage_of
from lab.scenes.scales.view import LOAD, REFERENCE, SCALE, ScalesView
from lab.screens.benches.snapping import MARK_PULL_PX, snapped_m
from lab.simulation import Command, Hung, MoveReference
from lab.simulation.benches.scales import Scale
from lab.simulation.scales_commands import MoveScale, Shift
from lab.ui.geometry import Point, Rect

Spot = tuple[float, float]
"""A place along and across, m."""

SLACK_PX = 18.0


def load_of(view: ScalesView, key: str) -> Hung | None:
    """The part of a key, if it is there."""
    return next((load for load in view.bench.loads if f"{LOAD}{load.id}" == key), None)


def scale_of(view: ScalesView, key: str) -> Scale | None:
    """The scale of a key, if it is there."""
    return next((scale for scale in view.bench.scales if f"{SCALE}{scale.id}" == key), None)


def where_is(key: str, view: ScalesView) -> Spot | None:
    """Where a thing of the picture is now."""
    if key == REFERENCE:
        return view.bench.reference_m, 0.0
    load, scale = load_of(view, key), scale_of(view, key)
    if load is not None:
        return load.at_m, load.across_m
    return None if scale is None else (scale.at_m[0], scale.at_m[1])


def move_of(key: str, at_m: Spot, view: ScalesView, *, joins: bool) -> Command | None:
    """The command that puts a thing of the picture to a place; None for anything that stays where it is."""
    along_m, across_m = round(at_m[0], 9), round(at_m[1], 9)
    if key == REFERENCE:
        return MoveReference(along_m, joins=joins)
    load, scale = load_of(view, key), scale_of(view, key)
    if view.tips or load is view.bench.carrier:
        return MoveScale(scale.id, along_m, across_m, joins=joins) if scale is not None and not view.tips else None
    if load is not None:
        return Shift(load.id, along_m, across_m, joins=joins)
    return None if scale is None else MoveScale(scale.id, along_m, across_m, joins=joins)


def spot_px(at_m: Spot, view: ScalesView, rect: Rect) -> Point:
    """The pixel of a place; of its height only where it is seen from above."""
    camera = stage_of(view, rect).camera
    return camera.at(at_m[0], at_m[1] if view.three else 0.0)


def spot_at(point: Point, view: ScalesView, rect: Rect, *, across_m: float = 0.0) -> Spot:
    """The place that a pixel means, a mark of the rule where it is near one, else to the last shown decimal.

    across_m: where it lies across, which only a view from above can change.
    """
    camera = stage_of(view, rect).camera
    across = _snapped_m(camera.up_m(point[1]), view, camera.px_per_m) if view.three else across_m
    return _snapped_m(camera.along_m(point[0]), view, camera.px_per_m), across


def body_spot(point: Point, view: ScalesView, rect: Rect) -> Spot | None:
    """The place on the body under a point; None where it is too far off to mean it."""
    stage = stage_of(view, rect)
    slack = stage.camera.length_m(view.look.sizes.px(SLACK_PX))
    (left, right), (low, high) = view.bench.reach_m
    along, across = stage.camera.along_m(point[0]), stage.camera.up_m(point[1])
    if not left - slack <= along <= right + slack:
        return None
    if view.three and not low - slack <= across <= high + slack:
        return None
    if not view.three and not rect.y <= point[1] < stage.floor_y:
        return None
    spot = spot_at(point, view, rect, across_m=min(max(0.0, low), high))
    return min(max(spot[0], left), right), min(max(spot[1], low), high)


def _snapped_m(value_m: float, view: ScalesView, px_per_m: float) -> float:
    return snapped_m(value_m, view.readings, pull_m=MARK_PULL_PX * view.look.sizes.unit / px_per_m)
