"""The bodies of a mobile: wooden bars in brass rings, brass weights, cut-out gulls, net floats."""

from __future__ import annotations

from lab.scenes.bar_bodies import draw_body
from lab.scenes.mobile.stage import MobileStage
from lab.scenes.mobile.view import MobileView
from lab.scenes.tones import between
from lab.scenes.weights import brass_rect, draw_brass, stamp_size
from lab.simulation.benches import Beam
from lab.simulation.benches.bar_parts import of_look
from lab.ui.canvas import Canvas
from lab.ui.geometry import Point, Rect
from lab.ui.look import Look

FAINT_SHARE, SHINE_SHARE, GRAIN_SHARE = 0.45, 0.4, 0.22
RING_PX, BAIL_PX, MARGIN_PX = 6.5, 15.0, 12.0
"""A ring's radius, half the width of the bail under it, and the room round a bar's picture."""
_GULL = (
    (-1.0, -0.10), (-0.72, -0.52), (-0.42, -0.46), (-0.12, -0.02), (0.0, 0.06), (0.12, -0.02), (0.42, -0.46),
    (0.72, -0.52), (1.0, -0.10), (0.66, -0.22), (0.40, 0.06), (0.22, 0.40), (0.0, 0.62), (-0.22, 0.40),
    (-0.40, 0.06), (-0.66, -0.22),
)  # fmt: skip
"""A gull with its wings up, as sawn from a thin board: in half widths from the middle, y down."""


def draw_bar(canvas: Canvas, view: MobileView, stage: MobileStage, beam: Beam, ring: Point, angle_rad: float) -> None:
    """One bar with its bail, turned about its ring."""
    look = view.look
    theme, sizes = look.theme, look.sizes
    wide, half = beam.length_m * stage.sizing.px_per_m, stage.sizing.half_bar
    down, margin = stage.sizing.ring(beam), sizes.px(MARGIN_PX)
    pin = beam.pin_m * stage.sizing.px_per_m
    over, under = max(down, 0.0), max(-down, 0.0)
    middle = margin + over
    picked, faint = view.picked == f"bar-{beam.id}", view.coming == beam.id

    def make(body: Canvas) -> None:
        at = (margin + pin, middle - down)
        spread = sizes.px(BAIL_PX) * max(stage.shrunk[0], 0.5)
        edge = theme.ink if picked else theme.brass_edge
        for side in (-1, 1):
            foot = (min(max(at[0] + side * spread, margin + 2), margin + wide - 2), middle)
            body.line([at, foot], edge, width=sizes.px(4))
            body.line([at, foot], theme.brass, width=sizes.px(2))
        _wood(body, look, Rect(margin, middle - half, wide, 2 * half), picked=picked, faint=faint)

    name = ("mobile-bar", theme.name, sizes.unit, round(wide), round(pin, 1), round(down), half, picked, faint)
    canvas.turned(
        name,
        (wide + 2 * margin, over + under + 2 * margin),
        make,
        at=ring,
        grip=(margin + pin, middle - down),
        angle_rad=angle_rad,
    )


def _wood(canvas: Canvas, look: Look, plank: Rect, *, picked: bool, faint: bool) -> None:
    theme, sizes = look.theme, look.sizes
    fill = between(theme.wood, theme.paper, FAINT_SHARE) if faint else theme.wood
    radius = sizes.px(3)
    canvas.box(plank, fill=fill, radius=radius)
    if not faint:
        shine = between(theme.wood, "#FFFFFF", SHINE_SHARE)
        grain = between(theme.wood, theme.wood_edge, GRAIN_SHARE)
        canvas.box(Rect(plank.x + 3, plank.y + 2, plank.w - 6, plank.h * 0.18), fill=shine, radius=1)
        y = plank.y + plank.h * 0.62
        canvas.line([(plank.x + plank.w * 0.05, y), (plank.x + plank.w * 0.7, y)], grain, width=sizes.px(1))
    for x in (plank.x, plank.right - sizes.px(5)):
        cap = Rect(x, plank.y, sizes.px(5), plank.h)
        canvas.box(cap, fill=theme.brass, outline=theme.brass_edge, width=sizes.px(1), radius=radius)
    edge = theme.ink if picked else theme.wood_edge
    canvas.box(plank, outline=edge, width=sizes.px(3) if picked else sizes.stroke * 0.8, radius=radius)


def draw_ring(canvas: Canvas, look: Look, at: Point, *, held: bool) -> None:
    """The ring that a bar turns in: filled with the colour of what is held while it may not turn."""
    theme, sizes = look.theme, look.sizes
    fill = theme.held if held else theme.panel
    canvas.circle(at, sizes.px(RING_PX), fill=fill, outline=theme.ink, width=sizes.stroke)


def draw_cord(canvas: Canvas, look: Look, hook: Point, end: Point, *, picked: bool = False) -> None:
    """A cord straight down from a hook, the hook drawn too."""
    theme, sizes = look.theme, look.sizes
    canvas.line([hook, end], theme.ink, width=sizes.px(2))
    fill, edge = (theme.held, theme.ink) if picked else (theme.steel, theme.steel_edge)
    canvas.circle(hook, sizes.px(6 if picked else 4), fill=fill, outline=edge, width=sizes.px(1))


def draw_load(
    canvas: Canvas,
    look: Look,
    thing: tuple[str | None, float],
    box: Rect,
    stamp: str,
    *,
    picked: bool = False,
    faint: bool = False,
) -> bool:
    """A weight in its box; returns whether the stamp found room on it.  thing: its look, and its mass, kg."""
    loose = of_look(*thing)
    if loose is not None:
        draw_body(canvas, look, loose, box, picked=picked, faint=faint)
        return False
    kind = thing[0]
    if kind == "gull":
        _gull(canvas, look, box, picked=picked, faint=faint)
        return False
    if kind == "float":
        return _float(canvas, look, box, stamp, picked=picked, faint=faint)
    return draw_brass(canvas, look, brass_rect((box.center[0], box.y), box.w), stamp, picked=picked, faint=faint)


def _gull(canvas: Canvas, look: Look, box: Rect, *, picked: bool, faint: bool) -> None:
    theme, sizes = look.theme, look.sizes
    half, (x, y) = box.w / 2, box.center
    points = [(x + along * half, y + down * half * 0.72) for along, down in _GULL]
    fill = between(theme.wood, theme.paper, FAINT_SHARE) if faint else theme.wood
    edge = theme.ink if picked else theme.wood_edge
    knot = (x, y + 0.06 * half * 0.72)
    canvas.line([(x, box.y), knot], theme.ink, width=sizes.px(2))
    canvas.polygon(points, fill=fill, outline=edge, width=sizes.px(3) if picked else sizes.stroke)
    tip = [points[i] for i in (0, 1, 15)], [points[i] for i in (8, 7, 9)]
    for wing in tip:
        canvas.polygon(wing, fill=between(theme.wood, theme.wood_edge, 0.6))
    canvas.circle(knot, max(2.0, half * 0.07), fill=theme.brass, outline=theme.brass_edge, width=sizes.px(1))


def _float(canvas: Canvas, look: Look, box: Rect, stamp: str, *, picked: bool, faint: bool) -> bool:
    theme, sizes = look.theme, look.sizes
    ring = box.h * 0.12
    radius = min(box.w, box.h - ring) / 2
    center = (box.center[0], box.y + ring + radius)
    fill = between(theme.brass, theme.paper, FAINT_SHARE) if faint else between(theme.wood, "#FFFFFF", 0.35)
    edge = theme.ink if picked else theme.wood_edge
    canvas.circle((center[0], box.y + ring / 2), max(3.0, ring), outline=edge, width=sizes.px(2))
    canvas.circle(center, radius, fill=fill, outline=edge, width=sizes.px(3) if picked else sizes.stroke)
    band = Rect(center[0] - radius * 0.94, center[1] - radius * 0.34, radius * 1.88, radius * 0.68)
    canvas.box(band, fill=theme.brass if not faint else fill, outline=edge, width=sizes.px(1), radius=sizes.px(2))
    size = stamp_size(look, box.w, stamp)
    if size is None or size > band.h * 1.1:
        return False
    canvas.text(stamp, center, size=size, color=theme.on_material, bold=True, anchor="center middle")
    return True
