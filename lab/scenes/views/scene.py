"""The picture of a body: panels, the body in each, then all its marks."""

from __future__ import annotations

from dataclasses import replace

from lab.scenes.camera import Camera
from lab.scenes.labels import LabelBoard
from lab.scenes.views.changes import draw_ghosts, draw_pencil, draw_turning
from lab.scenes.views.holding import draw_footprints, draw_hook, draw_rail, draw_scales
from lab.scenes.views.margins import is_titled
from lab.scenes.views.naming import draw_names, thing_rings_px
from lab.scenes.views.paint import draw_thing
from lab.scenes.views.place_marks import (
    draw_balance,
    draw_bands,
    draw_neutral,
    draw_reference,
    draw_ruler,
    draw_sides,
    draw_symmetry,
    name_reference,
    name_unit,
)
from lab.scenes.views.projections import Face, faces_away_m
from lab.scenes.views.stage import Panel, fitted, views_stage
from lab.scenes.views.things import Thing, things_of
from lab.scenes.views.told_mark import draw_told
from lab.scenes.views.view import BodyView
from lab.ui.canvas import Anchor, Canvas
from lab.ui.geometry import Point, Rect, bounding
from lab.ui.look import Look

SPRITE_PX = 8.0
"""Kept free round a body that is drawn to be turned."""


def draw_views(canvas: Canvas, rect: Rect, view: BodyView) -> None:
    """Draw the body from its sides into a rectangle; nothing leaves it."""
    view = fitted(view, rect)
    stage = views_stage(view, rect)
    with canvas.clipped(rect):
        canvas.box(rect, fill=view.look.theme.paper)
        for panel in stage.panels.values():
            _draw_panel(canvas, view, panel, framed=len(stage.panels) > 1)


def face_name(look: Look, face: Face) -> str:
    """What a panel is called."""
    say = look.words.say
    return {"side": say("side, from the left"), "top": say("top"), "front": say("front")}[face]


def _draw_panel(canvas: Canvas, view: BodyView, panel: Panel, *, framed: bool) -> None:
    sizes = view.look.sizes
    board = LabelBoard(canvas, panel.frame.inset(sizes.px(3)))
    if framed:
        canvas.box(panel.frame, outline=view.look.theme.hair, width=max(1.0, sizes.px(1.5)), radius=sizes.px(10))
    if is_titled(view):
        _name_face(view, panel, board)
    with canvas.clipped(panel.frame):
        draw_reference(canvas, view, panel, board)
        draw_rail(canvas, view, panel, board)
        draw_ruler(canvas, view, panel, board)
        draw_scales(canvas, view, panel, board)
        draw_bands(canvas, view, panel, board)
        draw_body(canvas, view, panel)
        draw_symmetry(canvas, view, panel, board)
        draw_footprints(canvas, view, panel, board)
        draw_pencil(canvas, view, panel)
        draw_ghosts(canvas, view, panel, board)
        draw_told(canvas, view, panel, board)
        name_reference(view, panel, board)
        name_unit(view, panel, board)
        draw_balance(canvas, view, panel, board)
        draw_neutral(canvas, view, panel, board)
        draw_hook(canvas, view, panel, board)
        draw_turning(canvas, view, panel, board)
        draw_sides(canvas, view, panel, board)
        draw_names(canvas, view, panel, board)


def _name_face(view: BodyView, panel: Panel, board: LabelBoard) -> None:
    look, frame = view.look, panel.frame
    sizes = look.sizes
    inset, y = sizes.px(14), panel.frame.y + _covered_px(view, panel) + sizes.px(8)
    mirrored = sizes.mirrored
    anchor: Anchor = "right top" if mirrored else "left top"
    at = (frame.right - inset if mirrored else frame.x + inset, y)
    board.place(face_name(look, panel.face), [(at, anchor)], size=sizes.text("small"), color=look.theme.soft)


def _covered_px(view: BodyView, panel: Panel) -> float:
    return view.covered_px if panel.face == view.faces[0] else 0.0


def draw_body(canvas: Canvas, view: BodyView, panel: Panel) -> None:
    """The body as it lies now.  What stays as it is is drawn once and kept; levels and what is carried are not."""
    things = [thing for thing in _in_order(view, panel.face) if not thing.hung]
    level = panel.angle_rad == 0.0
    loose = [thing for thing in things if level and (thing.level is not None or thing.name == view.picked)]
    _draw_kept(canvas, view, panel, [thing for thing in things if thing not in loose])
    dx, dy = panel.moved_px
    origin = (panel.camera.origin[0] + dx, panel.camera.origin[1] + dy)
    _draw_things(canvas, view, panel.face, loose, replace(panel.camera, origin=origin))
    for thing in things_of(view.body):
        if thing.hung:
            _draw_hung(canvas, view, panel, thing)


def _in_order(view: BodyView, face: Face) -> list[Thing]:
    """Farther things first; what lies inside another comes after it, large before small."""

    def area(thing: Thing) -> float:
        places = [place for rings in thing.patches[face] for place in rings[0]]
        if not places:
            return 0.0
        box = bounding(places)
        return box.w * box.h

    return sorted(
        things_of(view.body),
        key=lambda thing: (thing.layer, -round(area(thing), 9) if thing.layer == 4 else faces_away_m(face, thing.at_m)),
    )


def _draw_things(canvas: Canvas, view: BodyView, face: Face, things: list[Thing], camera: Camera) -> None:
    for thing in things:
        lit = thing.name in view.highlighted
        draw_thing(
            canvas, view.look, thing, face, lambda place: camera.at(*place), ground=view.look.theme.paper,
            highlighted=lit,
        )  # fmt: skip


def _draw_kept(canvas: Canvas, view: BodyView, panel: Panel, things: list[Thing]) -> None:
    face, camera, look = panel.face, panel.camera, view.look
    places = [camera.at(*place) for thing in things for rings in thing.patches[face] for place in rings[0]]
    if not places:
        return
    box = bounding(places, look.sizes.px(SPRITE_PX))

    def make(sprite: Canvas) -> None:
        origin = (camera.origin[0] - box.x, camera.origin[1] - box.y)
        _draw_things(sprite, view, face, things, Camera(px_per_m=camera.px_per_m, origin=origin))

    hook: Point = camera.at(*panel.hook_m)
    moved_to: Point = panel.flat_px(panel.hook_m)
    drawn = tuple((thing.key, thing.look, thing.level, thing.patches[face]) for thing in things)
    lit = frozenset(thing.name for thing in things if thing.name in view.highlighted)
    shift = (box.x - round(box.x), box.y - round(box.y))
    name = ("body", drawn, lit, face, camera.px_per_m, look.theme.name, look.sizes.unit, shift)
    grip = (hook[0] - box.x, hook[1] - box.y)
    canvas.turned(name, (box.w, box.h), make, at=moved_to, grip=grip, angle_rad=panel.angle_rad)


def _draw_hung(canvas: Canvas, view: BodyView, panel: Panel, thing: Thing) -> None:
    """What hangs by its own cord hangs straight down, however the body lies."""
    sizes, theme = view.look.sizes, view.look.theme
    x, y = panel.px(thing.at_m)
    scale = panel.camera.px_per_m
    draw_thing(
        canvas, view.look, thing, panel.face, lambda place: (x + scale * place[0], y - scale * place[1]),
        ground=theme.paper, highlighted=thing.name in view.highlighted,
    )  # fmt: skip
    tops = [point[1] for ring in thing_rings_px(view, panel, thing) for point in ring]
    if panel.face != "top" and tops:
        canvas.line(((x, y), (x, min(tops))), theme.ink, width=sizes.px(2))
        canvas.circle((x, y), sizes.px(4), fill=theme.steel, outline=theme.steel_edge, width=sizes.px(1))
