"""The airframe that is built as a picture: every part and tank can be taken in hand in each of the three views."""

from __future__ import annotations

from lab.outline import Node
from lab.scenes.views.naming import thing_box
from lab.scenes.views.nodes import view_bounds, view_nodes
from lab.scenes.views.projections import Face
from lab.scenes.views.scene import draw_views
from lab.scenes.views.stage import Panel, views_stage
from lab.scenes.views.things import Thing, surface_of, things_of
from lab.screens.benches.airframe.body import room_of
from lab.screens.benches.airframe.build_view import (
    AXIS_INDEX,
    FACE_AXES,
    PART,
    REFERENCE,
    TANK,
    BuildView,
    fitted_view,
    panels_of,
)
from lab.screens.benches.airframe.build_words import symmetry_lines
from lab.screens.benches.layout import PICTURE
from lab.screens.benches.snapping import MARK_PULL_PX, snapped_m
from lab.screens.benches.strip_keys import GHOST
from lab.ui.canvas import Canvas
from lab.ui.geometry import Point, Rect
from lab.ui.paragraph import draw_text, text_height
from lab.ui.widgets.picture import Handle, Picture

Spot = tuple[float, float]
"""Places on the two axes that a face shows, m."""


def build_picture(view: BuildView) -> Picture:
    """The airframe from three sides."""
    words = view.look.words

    def nodes(rect: Rect) -> tuple[Node, ...]:
        own = ("view.part", "view.tank", "view.surface", "view.reference")
        found = view_nodes(fitted_view(view, room_of(view.look, rect)), room_of(view.look, rect))
        marks = tuple(node for node in found if not node.key.startswith(own))
        return (*marks, Node("view.symmetry", "mark", " ".join(symmetry_lines(view)), bounds=rect))

    return Picture(
        PICTURE,
        words.say("Airframe from three sides"),
        lambda canvas, rect: _draw(canvas, view, rect),
        handles=lambda rect: (*_reference(view, rect), *_things(view, rect), *_ghost(view, rect)),
        nodes=nodes,
        value=words.content(view.bench.title),
        least=(320.0, 260.0),
    )


def _draw(canvas: Canvas, view: BuildView, rect: Rect) -> None:
    """The three views, and what is said of the plane of symmetry in the quarter that they leave."""
    room, look = room_of(view.look, rect), view.look
    shown = fitted_view(view, room)
    draw_views(canvas, room, shown)
    spare = views_stage(shown, room).spare
    if spare is None:
        return
    inner = spare.inset(look.sizes.px(14))
    for text in symmetry_lines(view):
        tall = text_height(look, text, inner.w, "small")
        if tall > inner.h:
            return
        draw_text(canvas, look, text, inner, style="small")
        inner = inner.cut_top(tall + look.sizes.px(6))[1]


def _things(view: BuildView, rect: Rect) -> list[Handle]:
    shown = fitted_view(view, room_of(view.look, rect))
    boxes: list[tuple[float, Handle]] = []
    for face, panel in panels_of(view, rect).items():
        for thing in things_of(view.body):
            key = _key_of(view, thing)
            box = thing_box(shown, panel, thing)
            if key and box is not None:
                boxes.append((box.w * box.h, _handle(view, f"{key}@{face}", thing, box.common(rect))))
    # What is smaller lies above: one can reach what is inside a fuselage.
    return [handle for _, handle in sorted(boxes, key=lambda pair: -pair[0])]


def _handle(view: BuildView, key: str, thing: Thing, box: Rect) -> Handle:
    words, readings = view.look.words, view.readings
    weight, place = readings.weight_with_unit(thing.mass_kg), readings.length_with_unit(thing.at_m[0])
    told = words.say("{weight} at {place}", weight=weight, place=place) if view.bench.view != "plain" else ""
    selected = view.picked.partition("@")[0] == key.partition("@")[0]
    return Handle(
        key, words.content(thing.name), told, box, ("move", "press", "remove"), axis="both", selected=selected
    )


def _key_of(view: BuildView, thing: Thing) -> str:
    """The key of what a thing is drawn for: a surface stands for the part that is drawn as it."""
    bench = view.bench
    for number, tank in enumerate(bench.tanks):
        if thing.key == f"tank:{tank.name}":
            return f"{TANK}{number}"
    for each in bench.parts_on:
        if thing.key == f"part:{each.name}":
            return f"{PART}{each.id}"
        surface = surface_of(view.body, each.part)
        if surface is not None and thing.key == f"surface:{surface.name}":
            return f"{PART}{each.id}"
    return ""


def _reference(view: BuildView, rect: Rect) -> list[Handle]:
    if not view.told:
        return []
    box = view_bounds(fitted_view(view, room_of(view.look, rect)), room_of(view.look, rect)).get(REFERENCE)
    if box is None:
        return []
    bench = view.bench
    value = view.readings.length_with_unit(bench.reference_m[AXIS_INDEX[bench.axis]])
    name, upright = view.look.words.say("reference line"), box.h >= box.w
    return [Handle(REFERENCE, name, value, box, axis="along" if upright else "up", selected=view.picked == REFERENCE)]


def _ghost(view: BuildView, rect: Rect) -> list[Handle]:
    if view.coming is None:
        return []
    panels, target = panels_of(view, rect), view.look.sizes.target
    panel = panels.get("top") or next(iter(panels.values()))
    x, y = panel.px(view.coming.at_m)
    name = view.look.words.say("{name}, not put on yet", name=view.look.words.content(view.coming.name))
    box = Rect(x - target / 2, y - target / 2, target, target)
    return [Handle(GHOST, name, view.readings.length_with_unit(view.coming.at_m[0]), box, axis="both", selected=True)]


def panel_at(view: BuildView, rect: Rect, point: Point) -> Panel | None:
    """The view under a point."""
    return next((panel for panel in panels_of(view, rect).values() if panel.frame.contains(point)), None)


def spot_at(view: BuildView, panel: Panel, point: Point) -> Spot:
    """The places on a view's two axes that a pixel of it means."""
    pull_m = panel.camera.length_m(MARK_PULL_PX * view.look.sizes.unit)
    right, up = panel.camera.along_m(point[0]), panel.camera.up_m(point[1])
    if panel.face == "front":
        right = -right
    return snapped_m(right, view.readings, pull_m=pull_m), snapped_m(up, view.readings, pull_m=pull_m)


def moved_m(at_m: tuple[float, float, float], face: Face, spot: Spot) -> tuple[float, float, float]:
    """A place with the two axes that a view shows changed; the third stays."""
    place = list(at_m)
    for axis, value in zip(FACE_AXES[face], spot, strict=True):
        place[axis] = round(value, 9)
    return place[0], place[1], place[2]
