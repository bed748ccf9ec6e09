"""What a pixel means: places of an axis, for tapping and for dragging."""

from __future__ import annotations

from lab.mechanics import Axis
from lab.scenes.views.projections import right_axis
from lab.scenes.views.stage import fitted, views_stage
from lab.scenes.views.view import BodyView
from lab.ui.geometry import Point, Rect


def axis_m(view: BodyView, rect: Rect, point: Point, axis: Axis = "along", *, held: bool = False) -> float | None:
    """The place of an axis that a pixel means, kept within the body's reach.

    held: of something carried: the nearest panel that shows the axis counts, wherever the pointer is.
    None where nothing under the point shows that axis.
    """
    view = fitted(view, rect)
    shown = [panel for panel in views_stage(view, rect).panels.values() if panel.value_m(axis, point) is not None]
    inside = [panel for panel in shown if panel.frame.contains(point)]
    if not inside and not (held and shown):
        return None
    panel = inside[0] if inside else min(shown, key=lambda one: _away(one.frame, point))
    value = panel.value_m(axis, point)
    if value is None:
        return None
    ends = (panel.bounds_m[0], panel.bounds_m[2]) if panel.lies_level(axis) else (panel.bounds_m[1], panel.bounds_m[3])
    sense = right_axis(panel.face)[1] if panel.lies_level(axis) else 1.0
    low, high = sorted(sense * end for end in ends)
    return min(max(value, low), high)


def _away(frame: Rect, point: Point) -> float:
    dx = max(frame.x - point[0], 0.0, point[0] - frame.right)
    dy = max(frame.y - point[1], 0.0, point[1] - frame.bottom)
    return dx + dy
