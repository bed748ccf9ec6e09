"""Brass hook weights: hung by a cord, or clamped to the bar."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import lru_cache

from lab.mechanics import extent_m
from lab.scenes.bar_bodies import draw_body, draw_rod, is_rod
from lab.scenes.hanging_view import GHOST_ID, ROW_GAP_PX, HangingView, Stage, weight_key
from lab.scenes.labels import LabelBoard
from lab.scenes.rows import HIGH, NECK, hung_weights, row_heights, rows_of
from lab.scenes.tones import between
from lab.simulation import HangingBar, Hung
from lab.ui.canvas import Canvas
from lab.ui.geometry import Point, Rect
from lab.ui.look import Look
from lab.ui.metrics import text_width

ROD_SHARE = 0.42
"""How thick a rod is drawn, as a share of the bar."""
FAINT_SHARE = 0.25
"""How far a weight on its way goes from brass towards the paper."""
SHINE_SHARE, SHADE_SHARE = 0.32, 0.3
"""How far the lit band goes from brass towards white, and the dark one towards the edge."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Where a hung weight hangs: its hook on the bar, and its whole body below, in pixels."""

    hook: Point
    body: Rect

    @property
    def cord(self) -> Rect:
        """The cord between them, with a little room."""
        return Rect(self.hook[0] - 3, self.hook[1], 6, self.body.y - self.hook[1])


def brass_rect(top: Point, side: float) -> Rect:
    """Neck and body of a weight whose ring is at `top`."""
    return Rect(top[0] - side / 2, top[1], side, side * (NECK + HIGH))


def with_ghost(view: HangingView) -> HangingBar:
    """The bench as it would be with the weight that is on its way."""
    ghost = view.ghost
    if ghost is None or ghost.at_m is None:
        return view.bench
    return replace(view.bench, weights=(*view.bench.weights, ghost.coming))


def hung_places(view: HangingView, stage: Stage) -> Mapping[int, Place]:
    """Where each hung weight is now: its cord hangs straight down whatever the tilt.

    A weight on its way has its place too, under GHOST_ID: the others make room for it as they will.
    """
    bench = with_ghost(view)
    gap = view.look.sizes.px(ROW_GAP_PX)
    rows = rows_of(bench, stage.camera, stage.size_px, gap)
    row_h = row_heights(bench, rows, stage.size_px, 2 * gap)
    places: dict[int, Place] = {}
    for weight in hung_weights(bench):
        hook = stage.hook_px(view, weight.at_m, weight.up_m)
        above = sum(row_h[row] for row in range(rows[weight.id]))
        wide, high = stage.size_px(weight)
        top = hook[1] + stage.bar.h / 2 + stage.cord_px + above
        # Where the bar tips further than the picture reaches, the cord is drawn shorter; its length moves nothing.
        lowest = stage.frame.bottom - high - gap
        places[weight.id] = Place(hook=hook, body=Rect(hook[0] - wide / 2, min(top, lowest), wide, high))
    return places


def clamp_rect(stage: Stage, weight: Hung) -> Rect:
    """A clamped weight on the level bar: its brass and the jaw that holds it."""
    x, y = stage.camera.at(weight.at_m, weight.up_m)
    if is_rod(weight):
        wide, thick = stage.camera.length_px(extent_m(weight.shape)[0]), stage.bar.h * ROD_SHARE
        return Rect(x - wide / 2, y - thick / 2, wide, thick)
    side = max(stage.side_px(weight.mass_kg), stage.bar.h * 0.5)
    high = max(side, stage.bar.h + 8)
    return Rect(x - side / 2, y - high / 2, side, high)


def level_rect(view: HangingView, stage: Stage, weight: Hung) -> Rect:
    """Where a clamped weight is now, as if it lay level there."""
    x, y = stage.hook_px(view, weight.at_m, weight.up_m)
    flat = clamp_rect(stage, weight)
    return Rect(x - flat.w / 2, y - flat.h / 2, flat.w, flat.h)


def weight_bounds(view: HangingView, stage: Stage) -> Mapping[str, Rect]:
    """What can be grabbed of each weight, by key, large enough for a finger."""
    target = view.look.sizes.target
    places = hung_places(view, stage)
    bounds: dict[str, Rect] = {}
    for weight in view.bench.weights:
        if weight.id in places:
            rect = places[weight.id].body
        else:
            rect = level_rect(view, stage, weight)
        bounds[weight_key(weight)] = rect.at_least(target, target)
    return bounds


def draw_brass(
    canvas: Canvas, look: Look, body: Rect, stamp: str, *, picked: bool = False, faint: bool = False
) -> bool:
    """One weight with its ring and its stamp; returns whether the stamp found room on it.

    faint: on its way, not yet on the bar.
    """
    size = stamp_size(look, body.w, stamp)
    margin = look.sizes.px(3)
    ring = look.sizes.px(5) + max(look.sizes.px(4), body.w * 0.09)
    whole = (body.w + 2 * margin, body.h + ring + margin)

    def make(sprite: Canvas) -> None:
        shape = Rect(margin, ring, body.w, body.h)
        _draw_shape(sprite, look, shape, picked=picked, faint=faint)
        if size is not None:
            middle = shape.cut_top(body.w * NECK)[1].center
            sprite.text(stamp, middle, size=size, color=look.theme.on_material, bold=True, anchor="center middle")

    name = ("brass", look.theme.name, look.sizes.unit, stamp, size, picked, faint)
    canvas.turned(name, whole, make, at=(body.x, body.y), grip=(margin, ring), angle_rad=0.0)
    return size is not None


def _draw_shape(canvas: Canvas, look: Look, body: Rect, *, picked: bool, faint: bool) -> None:
    """Ring, neck and block, lit from the left."""
    theme, sizes = look.theme, look.sizes
    side, middle = body.w, body.center[0]
    stroke = sizes.stroke * 0.8
    edge = theme.ink if picked else theme.brass_edge
    fill = between(theme.brass, theme.paper, FAINT_SHARE) if faint else theme.brass
    canvas.circle((middle, body.y - sizes.px(1)), max(sizes.px(4), side * 0.09), outline=edge, width=stroke)
    half_top, half_low = side * 0.17, side * 0.26
    block = body.cut_top(side * NECK)[1]
    canvas.polygon(
        [(middle - half_top, body.y + sizes.px(2)), (middle + half_top, body.y + sizes.px(2)),
         (middle + half_low, block.y + 2), (middle - half_low, block.y + 2)],
        fill=fill, outline=edge, width=stroke,
    )  # fmt: skip
    radius = min(sizes.px(5), side * 0.16)
    canvas.box(block, fill=fill, radius=radius)
    if not faint:
        rim = block.inset(stroke)
        shine = between(theme.brass, "#FFFFFF", SHINE_SHARE)
        shade = between(theme.brass, theme.brass_edge, SHADE_SHARE)
        canvas.box(Rect(rim.right - side * 0.14, rim.y, side * 0.14, rim.h), fill=shade, radius=radius / 2)
        canvas.box(Rect(rim.x + side * 0.08, rim.y, side * 0.12, rim.h), fill=shine)
    canvas.box(block, outline=edge, width=sizes.px(3) if picked else stroke, radius=radius)


@lru_cache(maxsize=256)
def stamp_size(look: Look, side: float, stamp: str) -> float | None:
    """The text size of the number on a weight, smaller where it must be; None where even that has no room."""
    usual = (("small", 1.0), ("small", 0.86))
    large = side >= look.sizes.px(40) * look.sizes.text_scale**0.5
    for style, shrink in (("body", 1.0), *usual) if large else usual:
        size = look.sizes.text(style) * shrink
        if text_width(stamp, size=round(size), bold=True) <= side - 4 and size * 0.9 <= side * HIGH:
            return size
    return None


def draw_clamped(canvas: Canvas, view: HangingView, stage: Stage, weight: Hung, *, picked: bool) -> None:
    """A clamped weight: brass round the bar with a screw below; it turns with the bar."""
    look = view.look
    theme, sizes = look.theme, look.sizes
    flat = clamp_rect(stage, weight)
    if is_rod(weight):
        _draw_rod(canvas, view, stage, weight, picked=picked)
        return
    screw = sizes.px(12)
    margin = sizes.px(3)
    size = (flat.w + 2 * margin, flat.h + screw + 2 * margin)
    stamp = view.readings.stamp(weight.mass_kg)

    text_px = stamp_size(look, flat.w, stamp)
    shine = between(theme.brass, "#FFFFFF", SHINE_SHARE)

    def make(body: Canvas) -> None:
        block = Rect(margin, margin, flat.w, flat.h)
        middle = block.center[0]
        body.line([(middle, block.bottom), (middle, block.bottom + screw - 3)], theme.ink, width=sizes.px(4))
        bolt = sizes.px(8)
        body.line(
            [(middle - bolt, block.bottom + screw - 3), (middle + bolt, block.bottom + screw - 3)],
            theme.ink, width=sizes.px(3),
        )  # fmt: skip
        edge = theme.ink if picked else theme.brass_edge
        body.box(block, fill=theme.brass, radius=sizes.px(3))
        body.box(Rect(block.x + block.w * 0.1, block.y + 2, block.w * 0.12, block.h - 4), fill=shine)
        body.box(block, outline=edge, width=sizes.px(3) if picked else sizes.stroke, radius=sizes.px(3))
        if text_px is not None:
            body.text(stamp, block.center, size=text_px, color=theme.on_material, bold=True, anchor="center middle")

    pivot = view.bench.pivot
    dx = stage.camera.length_px(pivot.at_m - weight.at_m)
    dy = stage.camera.length_px(weight.up_m - pivot.up_m)
    grip = (size[0] / 2 + dx, margin + flat.h / 2 + dy)
    name = ("clamped", theme.name, stamp, picked, round(flat.w), round(flat.h), sizes.text_scale)
    canvas.turned(name, size, make, at=stage.camera.at(pivot.at_m, pivot.up_m), grip=grip, angle_rad=view.angle_rad)


def _draw_rod(canvas: Canvas, view: HangingView, stage: Stage, weight: Hung, *, picked: bool) -> None:
    """A rod strapped along the bar; it turns with the bar."""
    look, flat = view.look, clamp_rect(stage, weight)
    margin = look.sizes.px(8)

    def make(body: Canvas) -> None:
        draw_rod(body, look, Rect(margin, margin, flat.w, flat.h), picked=picked)

    pivot = view.bench.pivot
    dx = stage.camera.length_px(pivot.at_m - weight.at_m)
    dy = stage.camera.length_px(weight.up_m - pivot.up_m)
    size = (flat.w + 2 * margin, flat.h + 2 * margin)
    name = ("rod", look.theme.name, look.sizes.unit, picked, round(flat.w), round(flat.h))
    at = stage.camera.at(pivot.at_m, pivot.up_m)
    canvas.turned(name, size, make, at=at, grip=(size[0] / 2 + dx, size[1] / 2 + dy), angle_rad=view.angle_rad)


def draw_weights(
    canvas: Canvas, view: HangingView, stage: Stage, board: LabelBoard, places: Mapping[int, Place]
) -> None:
    """Every weight on the bar: clamped ones first, then cords, then what hangs on them.  places: of the hung ones."""
    look = view.look
    for weight in view.bench.weights:
        if weight.id not in places:
            draw_clamped(canvas, view, stage, weight, picked=view.picked == weight_key(weight))
    for key, place in places.items():
        if key != GHOST_ID:
            draw_cord(canvas, look, place)
    for weight in view.bench.weights:
        if weight.id in places:
            _draw_hung(canvas, view, weight, places[weight.id], board)


def draw_cord(canvas: Canvas, look: Look, place: Place) -> None:
    """The hook through the bar and the cord down to the weight's ring."""
    x, y = place.hook
    sizes = look.sizes
    canvas.line([(x, y), (x, place.body.y - sizes.px(4))], look.theme.ink, width=sizes.px(2))
    canvas.circle((x, y), sizes.px(4), fill=look.theme.steel, outline=look.theme.steel_edge, width=sizes.px(1))


def _draw_hung(canvas: Canvas, view: HangingView, weight: Hung, place: Place, board: LabelBoard) -> None:
    look = view.look
    stamp = view.readings.stamp(weight.mass_kg)
    picked = view.picked == weight_key(weight)
    drawn = draw_body(canvas, look, weight, place.body, picked=picked)
    fits = drawn or draw_brass(canvas, look, place.body, stamp, picked=picked)
    board.keep_clear([place.body])
    if not fits:
        body, gap = place.body, look.sizes.px(4)
        board.place(
            stamp,
            [((body.center[0], body.bottom + gap), "center top"), ((body.right + gap, body.center[1]), "left middle"),
             ((body.x - gap, body.center[1]), "right middle")],
            size=look.sizes.text("small"), color=look.theme.ink, bold=True,
        )  # fmt: skip
