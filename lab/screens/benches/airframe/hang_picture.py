"""The hung airframe as a picture: its hook can be taken in hand in each of the three views."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from lab.mechanics import Vector
from lab.outline import Node
from lab.scenes.views.nodes import view_nodes
from lab.scenes.views.scene import draw_views
from lab.scenes.views.stage import Panel, fitted, views_stage
from lab.screens.benches.airframe.body import room_of
from lab.screens.benches.airframe.hang_view import HOOK, HangView, body_view
from lab.screens.benches.airframe.hang_words import hangs_said, place_said
from lab.screens.benches.layout import PICTURE
from lab.screens.benches.snapping import MARK_PULL_PX, snapped_m
from lab.ui.geometry import Point, Rect
from lab.ui.widgets.picture import Handle, Picture

SIDEWAYS: dict[str, tuple[int, float]] = {"side": (0, 1.0), "top": (0, 1.0), "front": (1, -1.0)}
UPRIGHT: dict[str, tuple[int, float]] = {"side": (2, 1.0), "top": (1, 1.0), "front": (2, 1.0)}
"""Which axis lies to the right and upwards in each view, and with which sign."""


def hang_picture(view: HangView, down: Callable[[], Vector]) -> Picture:
    """The airframe on its cord.  down: where down lies in it, asked for each time it is drawn."""
    say = view.look.words.say

    def handles(rect: Rect) -> tuple[Handle, ...]:
        target = view.look.sizes.target
        value = place_said(view.look.words, view.readings, view.hanging.hook_m)
        found = []
        for face, panel in panels_of(view, rect).items():
            x, y = panel.px(view.hanging.hook_m)
            key = f"{HOOK}-{face}"
            box = Rect(x - target / 2, y - target / 2, target, target).common(rect)
            name = {"side": say("hook, seen from the side"), "top": say("hook, seen from above"),
                    "front": say("hook, seen from the front")}[face]  # fmt: skip
            found.append(Handle(key, name, value, box, ("move", "press"), axis="both", selected=view.picked == key))
        return tuple(found)

    def nodes(rect: Rect) -> tuple[Node, ...]:
        return tuple(node for node in view_nodes(body_view(view), room_of(view.look, rect)) if node.key != "view.hook")

    return Picture(
        PICTURE,
        say("Hung airframe"),
        lambda canvas, rect: draw_views(canvas, room_of(view.look, rect), body_view(replace(view, down=down()))),
        handles=handles,
        nodes=nodes,
        value=hangs_said(view.look.words, view.readings, view.hanging),
        least=(320.0, 260.0),
    )


def panels_of(view: HangView, rect: Rect) -> dict[str, Panel]:
    """The views that the rectangle has room for, by name."""
    room = room_of(view.look, rect)
    shown = fitted(body_view(view), room)
    return dict(views_stage(shown, room).panels)  # type: ignore[arg-type]


def hook_at(view: HangView, rect: Rect, face: str, point: Point) -> Vector:
    """The place of the hook that a pixel of a view means; its third axis stays as it is."""
    panel = panels_of(view, rect)[face]
    (level, sense), (upright, up) = SIDEWAYS[face], UPRIGHT[face]
    hook = list(view.hanging.hook_m)
    pull_m = panel.camera.length_m(MARK_PULL_PX * view.look.sizes.unit)
    hook[level] = snapped_m(sense * panel.camera.along_m(point[0]), view.readings, pull_m=pull_m)
    hook[upright] = snapped_m(up * panel.camera.up_m(point[1]), view.readings, pull_m=pull_m)
    return hook[0], hook[1], hook[2]
