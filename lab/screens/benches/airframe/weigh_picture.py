"""The weighed airframe as a picture: its scales can be taken in hand in each of the three views."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from lab.outline import Node
from lab.scenes.views.holding import scale_boxes
from lab.scenes.views.nodes import view_nodes
from lab.scenes.views.scene import draw_views
from lab.scenes.views.stage import Panel, fitted, views_stage
from lab.screens.benches.airframe.body import room_of
from lab.screens.benches.airframe.weigh_view import SCALE, WeighView, body_view
from lab.screens.benches.airframe.weigh_words import scale_said, stands_said
from lab.screens.benches.layout import PICTURE
from lab.screens.benches.snapping import MARK_PULL_PX, snapped_m
from lab.simulation.benches.airframe_weighing import AirframeWeighing
from lab.simulation.benches.scales import Scale
from lab.ui.geometry import Point, Rect
from lab.ui.widgets.picture import Handle, Picture

Spot = tuple[float, float]
"""A place along and across, m."""


def weigh_picture(view: WeighView, weighing: Callable[[], AirframeWeighing]) -> Picture:
    """The airframe on its scales.  weighing: how it stands, asked for each time it is drawn."""
    words = view.look.words

    def handles(rect: Rect) -> tuple[Handle, ...]:
        return tuple(
            Handle(
                f"{SCALE}{scale.id}-{face}",
                words.content(scale.name),
                scale_said(words, view, number),
                box,
                ("move", "press"),
                axis="both" if face == "top" else "along",
                selected=view.picked == f"{SCALE}{scale.id}-{face}",
            )
            for face, panel in panels_of(view, rect).items()
            for number, (scale, box) in enumerate(_boxes(view, panel, rect))
        )

    def nodes(rect: Rect) -> tuple[Node, ...]:
        return tuple(
            node
            for node in view_nodes(body_view(view), room_of(view.look, rect))
            if not node.key.startswith("view.scale")
        )

    return Picture(
        PICTURE,
        words.say("Airframe on scales"),
        lambda canvas, rect: draw_views(
            canvas, room_of(view.look, rect), body_view(replace(view, weighing=weighing()))
        ),
        handles=handles,
        nodes=nodes,
        value=stands_said(words, view),
        least=(320.0, 260.0),
    )


def panels_of(view: WeighView, rect: Rect) -> dict[str, Panel]:
    """The views that the rectangle has room for, by name."""
    room = room_of(view.look, rect)
    shown = fitted(body_view(view), room)
    return dict(views_stage(shown, room).panels)  # type: ignore[arg-type]


def _boxes(view: WeighView, panel: Panel, rect: Rect) -> list[tuple[Scale, Rect]]:
    """From above the ring where it stands, else the case of each scale."""
    target, scales = view.look.sizes.target, view.weighing.scales
    if panel.face == "top":
        spots = (panel.px(scale.at_m) for scale in scales)
        boxes = [Rect(x - target / 2, y - target / 2, target, target).common(rect) for x, y in spots]
    else:
        cases = scale_boxes(fitted(body_view(view), room_of(view.look, rect)), panel)
        boxes = [cases[str(scale.id)] for scale in scales]
    return list(zip(scales, boxes, strict=True))


def spot_px(view: WeighView, rect: Rect, face: str, at_m: tuple[float, float, float]) -> Point:
    """The pixel of a scale's place in a view."""
    return panels_of(view, rect)[face].px(at_m)


def spot_at(view: WeighView, rect: Rect, face: str, point: Point, now_m: Spot) -> Spot:
    """The place of a scale that a pixel of a view means; what the view does not show of it stays as it is."""
    panel = panels_of(view, rect)[face]
    pull_m = panel.camera.length_m(MARK_PULL_PX * view.look.sizes.unit)
    right = panel.camera.along_m(point[0])
    if face == "front":
        return now_m[0], snapped_m(-right, view.readings, pull_m=pull_m)
    along = snapped_m(right, view.readings, pull_m=pull_m)
    if face == "side":
        return along, now_m[1]
    return along, snapped_m(panel.camera.up_m(point[1]), view.readings, pull_m=pull_m)
