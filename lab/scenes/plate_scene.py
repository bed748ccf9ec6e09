"""The whole picture of a hung plate: what is drawn, in which order, and what in it can be grabbed."""

from __future__ import annotations

from collections.abc import Mapping
from math import hypot

from lab.scenes.boxwood import draw_boxwood
from lab.scenes.labels import LabelBoard
from lab.scenes.plate_marks import (
    draw_balance,
    draw_crossing,
    draw_pencil_lines,
    draw_pin,
    draw_plumb_bob,
    draw_reference,
    name_pin,
    pin_px,
    reference_knob,
)
from lab.scenes.plate_view import (
    CLIP,
    CORNER,
    EDGE,
    HOLE,
    PIN,
    REFERENCE,
    PlateGhost,
    PlateStage,
    PlateView,
    fitting_m,
    hole_radius_m,
)
from lab.scenes.ties import draw_ties
from lab.scenes.tones import between
from lab.simulation.benches import Hung
from lab.simulation.benches.plate_rings import Ring
from lab.ui.canvas import Canvas
from lab.ui.geometry import Point, Rect, bounding
from lab.ui.look import Look

CORNER_PX, EDGE_PX = 5.5, 4.0
LEAST_EDGE_PX = 54.0
"""An edge shorter than this has no knob of its own between those of its corners."""


def draw_plate(canvas: Canvas, rect: Rect, view: PlateView) -> None:
    """Draws the bench into a rectangle; nothing leaves it."""
    stage = view.stage(rect)
    with canvas.clipped(rect):
        canvas.box(rect, fill=view.look.theme.paper)
        _draw_bench(canvas, view, stage)


def _draw_bench(canvas: Canvas, view: PlateView, stage: PlateStage) -> None:
    board = LabelBoard(canvas, stage.frame.cut_bottom(view.foot_px)[1])
    _draw_rail(canvas, view, stage, board)
    if view.bench.held:
        _draw_holding_cord(canvas, view, stage)
    _draw_wood(canvas, view, stage)
    if view.outcome_shown:
        _draw_triangles(canvas, view, stage)
    _draw_edges(canvas, view, stage)
    with canvas.clipped(stage.frame.cut_bottom(stage.frame.bottom - stage.rule.bottom)[1]):
        draw_pencil_lines(canvas, view, stage)
    if view.outcome_shown and view.bench.held:
        draw_reference(canvas, view, stage, board)
    _draw_rule(canvas, view, stage, board)
    for clip in view.bench.clips:
        _draw_clip(canvas, view, stage, clip)
        board.keep_clear([_round(stage.px(view, (clip.at_m, clip.up_m)), stage.clip_radius_px(clip.mass_kg))])
    board.keep_clear(draw_ties(canvas, view.look, _tied_at(view, stage)))
    if not view.bench.held:
        draw_plumb_bob(canvas, view, stage)
    if view.bench.held:
        _draw_corners(canvas, view, stage, board)
    draw_pin(canvas, view, stage, board)
    if view.outcome_shown:
        draw_balance(canvas, view, stage, board)
    draw_crossing(canvas, view, stage, board)
    if view.numbers and not view.bench.moving and not stage.tight:
        name_pin(view, stage, board)
    if view.ghost is not None:
        _draw_ghost(canvas, view, stage, view.ghost)


def _tied_at(view: PlateView, stage: PlateStage) -> dict[str, Point]:
    """Where each weight is tied: at its edge, so that the knot hides no number."""
    found = {}
    for clip in view.bench.clips:
        x, y = stage.px(view, (clip.at_m, clip.up_m))
        found[clip.name] = (x, y - stage.clip_radius_px(clip.mass_kg))
    return found


def _draw_rail(canvas: Canvas, view: PlateView, stage: PlateStage, board: LabelBoard) -> None:
    theme, sizes, rail = view.look.theme, view.look.sizes, stage.rail
    canvas.box(rail, fill=theme.steel, radius=sizes.px(4))
    canvas.box(Rect(rail.x + 3, rail.y + 3, rail.w - 6, max(2.0, rail.h * 0.18)), fill="#FFFFFF50", radius=1)
    canvas.box(rail, outline=theme.steel_edge, width=sizes.stroke, radius=sizes.px(4))
    board.keep_clear([rail.grown(sizes.px(8))])


def _draw_rule(canvas: Canvas, view: PlateView, stage: PlateStage, board: LabelBoard) -> None:
    """The boxwood rule below, its marks plumb under the held plate; left out where a strip covers it."""
    if view.foot_px or stage.tight:
        return
    look, rule, camera = view.look, stage.rule, stage.camera
    cap = look.sizes.px(30)
    span_m = camera.along_m(rule.x + cap), camera.along_m(rule.right - cap)
    units = view.readings.units
    key = ("plate-rule", look, units.name, rule, camera)
    canvas.kept(key, lambda: draw_boxwood(canvas, look, rule, units, x_px=camera.x_px, span_m=span_m))
    board.keep_clear([rule.grown(2.0)])


def _draw_holding_cord(canvas: Canvas, view: PlateView, stage: PlateStage) -> None:
    """What keeps the plate from turning: a cord to the corner that stands farthest from the pin."""
    pin = view.bench.pivot
    far = max(view.bench.outline_m, key=lambda corner: (abs(corner[0] - pin.at_m), corner[1]))
    x, y = stage.px(view, far)
    dash = (view.look.sizes.px(3), view.look.sizes.px(5))
    canvas.line(((x, stage.rail.bottom), (x, y)), view.look.theme.edge, width=view.look.sizes.px(1.5), dash=dash)


def _draw_wood(canvas: Canvas, view: PlateView, stage: PlateStage) -> None:
    theme = view.look.theme
    canvas.polygon(stage.ring_px(view, view.bench.outline_m), fill=theme.wood)
    for hole in view.bench.holes_m:
        canvas.polygon(stage.ring_px(view, hole), fill=theme.paper)


def _draw_edges(canvas: Canvas, view: PlateView, stage: PlateStage) -> None:
    theme, sizes = view.look.theme, view.look.sizes
    for number, ring in enumerate(view.bench.rings_m):
        picked = number > 0 and view.picked == f"{HOLE}{number}"
        points = stage.ring_px(view, ring)
        if picked:
            canvas.line([*points, points[0]], theme.held, width=sizes.px(9))
        canvas.line([*points, points[0]], theme.wood_edge, width=sizes.px(2.5))


def _draw_triangles(canvas: Canvas, view: PlateView, stage: PlateStage) -> None:
    """How the sum cuts the plate up, and the piece whose row is picked."""
    theme, sizes = view.look.theme, view.look.sizes
    cut = between(theme.wood, theme.wood_edge, 0.45)
    for piece in view.bench.pieces:
        if not piece.ring:
            continue
        ring = stage.ring_px(view, piece.ring)
        if piece.key == view.row:
            canvas.polygon(ring, fill=theme.held)
        elif piece.kind == "triangle":
            canvas.line([*ring, ring[0]], cut, width=max(1.0, sizes.px(1)))
    # What was filled may lie over a hole: triangles are cut without regard to them.
    for number, hole in enumerate(view.bench.holes_m, start=1):
        if view.row != f"{HOLE}{number}":
            canvas.polygon(stage.ring_px(view, hole), fill=theme.paper)
    for piece in view.bench.pieces:
        if piece.key == view.row and piece.ring:
            middle = stage.px(view, (piece.part.at_m[0], piece.part.at_m[2]))
            canvas.circle(middle, sizes.px(5), fill=theme.ink)


def _draw_clip(canvas: Canvas, view: PlateView, stage: PlateStage, clip: Hung) -> None:
    key = f"{CLIP}{clip.id}"
    rings = fitting_m(clip)
    if rings:
        _draw_fitting(canvas, view, stage, rings, picked=key in (view.picked, view.row))
        return
    at = stage.px(view, (clip.at_m, clip.up_m))
    radius = stage.clip_radius_px(clip.mass_kg)
    picked = key in (view.picked, view.row)
    stamp = "" if stage.tight else view.readings.stamp(clip.mass_kg)
    draw_disc_weight(canvas, view.look, at, radius, stamp, picked=picked)


def _draw_fitting(canvas: Canvas, view: PlateView, stage: PlateStage, rings: tuple[Ring, ...], *, picked: bool) -> None:
    """A rod or another sheet that is fast to the plate, seen as it is."""
    theme, sizes = view.look.theme, view.look.sizes
    outline, *holes = (stage.ring_px(view, ring) for ring in rings)
    width = sizes.px(3) if picked else sizes.px(1.5)
    canvas.polygon(outline, fill=theme.steel, outline=theme.ink if picked else theme.steel_edge, width=width)
    for hole in holes:
        canvas.polygon(hole, fill=theme.paper, outline=theme.steel_edge, width=sizes.px(1.5))


def draw_disc_weight(
    canvas: Canvas, look: Look, at: Point, radius: float, stamp: str, *, picked: bool = False, faint: bool = False
) -> None:
    """A round brass weight that is clipped on, with its stamp where there is room for it."""
    theme, sizes = look.theme, look.sizes
    if picked:
        canvas.circle(at, radius + sizes.px(5), fill=theme.held, outline=theme.ink, width=sizes.px(1.5))
    fill = between(theme.brass, theme.paper, 0.4) if faint else theme.brass
    canvas.circle(at, radius, fill=fill, outline=theme.brass_edge, width=sizes.px(2))
    size = sizes.text("small")
    wide, _ = canvas.text_size(stamp, size=size, bold=True)
    if not faint and wide <= 1.7 * radius:
        canvas.text(stamp, at, size=size, color=theme.on_material, bold=True, anchor="center middle")


def _draw_corners(canvas: Canvas, view: PlateView, stage: PlateStage, board: LabelBoard) -> None:
    """Knobs at the corners, and a small one on each edge from which a new corner is drawn."""
    theme, sizes = view.look.theme, view.look.sizes
    for key, at in knobs_px(view, stage).items():
        picked = key == view.picked
        if key.startswith(EDGE):
            canvas.circle(at, sizes.px(EDGE_PX), fill=theme.paper, outline=theme.wood_edge, width=sizes.px(1.5))
            continue
        radius = sizes.px(CORNER_PX)
        board.keep_clear([Rect(at[0] - radius, at[1] - radius, 2 * radius, 2 * radius)])
        if picked:
            canvas.circle(at, radius + sizes.px(5), fill=theme.held, outline=theme.ink, width=sizes.px(1.5))
        canvas.circle(at, radius, fill=theme.panel, outline=theme.ink, width=sizes.stroke)


def knobs_px(view: PlateView, stage: PlateStage) -> Mapping[str, Point]:
    """Where the knobs of corners and edges are, by key: of the outline always, of a hole while it is picked."""
    found: dict[str, Point] = {}
    for number, ring in enumerate(view.bench.rings_m):
        if number and not _on_ring(view.picked, number):
            continue
        points = stage.ring_px(view, ring)
        for index, (start, end) in enumerate(zip(points, [*points[1:], points[0]], strict=True)):
            if hypot(end[0] - start[0], end[1] - start[1]) >= view.look.sizes.px(LEAST_EDGE_PX):
                found[f"{EDGE}{number}-{index}"] = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
        for index, point in enumerate(points):
            found[f"{CORNER}{number}-{index}"] = point
    return found


def _on_ring(key: str, number: int) -> bool:
    return key == f"{HOLE}{number}" or key.startswith((f"{CORNER}{number}-", f"{EDGE}{number}-"))


def grab_bounds(view: PlateView, rect: Rect) -> Mapping[str, Rect]:
    """What can be grabbed in the picture, by key, as it is drawn: a pointer that comes near it will do."""
    stage, bench = view.stage(rect), view.bench
    bounds: dict[str, Rect] = {}
    if bench.held:
        for number, hole in enumerate(bench.holes_m, start=1):
            bounds[f"{HOLE}{number}"] = bounding(stage.ring_px(view, hole))
        for key, at in knobs_px(view, stage).items():
            bounds[key] = _round(at, view.look.sizes.px(EDGE_PX if key.startswith(EDGE) else CORNER_PX))
        if view.outcome_shown:
            bounds[REFERENCE] = reference_knob(view, stage)
        for clip in bench.clips:
            at = stage.px(view, (clip.at_m, clip.up_m))
            bounds[f"{CLIP}{clip.id}"] = _round(at, stage.clip_radius_px(clip.mass_kg))
    bounds[PIN] = pin_px(view, stage)
    seen = rect.cut_bottom(view.foot_px)[1]
    return {key: box.common(seen) if box.intersects(seen) else box for key, box in bounds.items()}


def _round(at: Point, radius: float) -> Rect:
    return Rect(at[0] - radius, at[1] - radius, 2 * radius, 2 * radius)


def _draw_ghost(canvas: Canvas, view: PlateView, stage: PlateStage, ghost: PlateGhost) -> None:
    """A weight or a hole on its way: at its place on the plate, or at the pointer."""
    at = stage.px(view, ghost.at_m) if ghost.at_m is not None else ghost.pointer
    if at is None:
        return
    theme, sizes = view.look.theme, view.look.sizes
    if ghost.mass_kg is None:
        radius = stage.camera.length_px(hole_radius_m(view.bench))
        canvas.circle(at, radius, fill=theme.paper, outline=theme.wood_edge, width=sizes.px(2))
        return
    stamp = view.readings.stamp(ghost.mass_kg)
    draw_disc_weight(canvas, view.look, at, stage.clip_radius_px(ghost.mass_kg), stamp, faint=True)
