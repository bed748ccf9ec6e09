"""Tins of water, beads on a cord, a rod and a plate, as they are on the hanging bar and in its tray."""

from __future__ import annotations

from lab.mechanics import extent_m
from lab.scenes.rows import HIGH, NECK
from lab.scenes.tones import between
from lab.simulation import Hung
from lab.simulation.benches.bar_parts import TIN_HOLDS_KG, bead_count, kind_of, water_kg
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.look import Look

PX_PER_SCALE_M = 9.0
"""Pixels to the metre for each pixel that the side of a kilogram of brass has: as large as true to the bar, on a
usual window, and smaller with the brass where many hang."""
BEAD_M = 0.021
FAINT_SHARE, SHINE_SHARE = 0.45, 0.4
TIN_BAIL = 0.34
"""How high the bail of a tin stands over it, as a share of its height."""


def is_rod(weight: Hung) -> bool:
    """Whether it is a rod that lies along the bar."""
    kind = kind_of(weight)
    return kind is not None and kind.look == "rod"


def size_px(weight: Hung, scale: float) -> tuple[float, float]:
    """How wide and how high a hung weight is drawn.  scale: the side of a kilogram of brass, px."""
    true_m = size_m(weight)
    if true_m is None:
        side = scale * float(weight.mass_kg ** (1 / 3))
        return side, side * (NECK + HIGH)
    return true_m[0] * PX_PER_SCALE_M * scale, true_m[1] * PX_PER_SCALE_M * scale


def size_m(weight: Hung) -> tuple[float, float] | None:
    """How wide and how high it is, a tin with its bail; None for brass."""
    kind, beads = kind_of(weight), bead_count(weight)
    if kind is None:
        return None
    if beads is not None:
        return BEAD_M, BEAD_M * beads
    wide_m, _, high_m = extent_m(kind.shape)
    if kind.look == "tin":
        return wide_m, high_m * (1 + TIN_BAIL)
    return wide_m, max(high_m, BEAD_M / 2)


def draw_body(
    canvas: Canvas, look: Look, weight: Hung, body: Rect, *, picked: bool = False, faint: bool = False
) -> bool:
    """Draws a tin, beads, a plate or a rod into the rectangle; whether it is one of them."""
    kind, beads, water = kind_of(weight), bead_count(weight), water_kg(weight)
    if kind is None:
        return False
    if beads is not None:
        _beads(canvas, look, body, beads, picked=picked, faint=faint)
    elif water is not None:
        _tin(canvas, look, body, water / TIN_HOLDS_KG, picked=picked, faint=faint)
    elif kind.look == "rod":
        draw_rod(canvas, look, body, picked=picked, faint=faint)
    else:
        _plate(canvas, look, body, picked=picked, faint=faint)
    return True


def draw_rod(canvas: Canvas, look: Look, body: Rect, *, picked: bool = False, faint: bool = False) -> None:
    """A steel rod with the two brass straps that hold it."""
    theme, sizes = look.theme, look.sizes
    fill, edge, width = _tones(look, theme.steel, theme.steel_edge, picked=picked, faint=faint)
    radius = min(body.h / 2, sizes.px(5))
    canvas.box(body, fill=fill, radius=radius)
    if not faint:
        shine = Rect(body.x + body.w * 0.03, body.y + body.h * 0.2, body.w * 0.94, body.h * 0.2)
        canvas.box(shine, fill=between(theme.steel, "#FFFFFF", SHINE_SHARE), radius=1)
    canvas.box(body, outline=edge, width=width, radius=radius)
    strap, over = sizes.px(7), sizes.px(4)
    for share in (0.16, 0.84):
        x = body.x + body.w * share - strap / 2
        canvas.box(
            Rect(x, body.y - over, strap, body.h + 2 * over),
            fill=theme.brass,
            outline=theme.brass_edge,
            width=sizes.px(1),
            radius=sizes.px(2),
        )


def _tones(look: Look, fill: str, edge: str, *, picked: bool, faint: bool) -> tuple[str, str, float]:
    """Fill, edge and its width."""
    shown = between(fill, look.theme.paper, FAINT_SHARE) if faint else fill
    return shown, look.theme.ink if picked else edge, look.sizes.px(3) if picked else look.sizes.stroke * 0.8


def _beads(canvas: Canvas, look: Look, body: Rect, count: int, *, picked: bool, faint: bool) -> None:
    """Equal wooden beads one below the other; each fifth is darker, so that they can be counted at a glance."""
    theme = look.theme
    side = body.h / count
    middle = body.center[0]
    canvas.line([(middle, body.y - look.sizes.px(5)), (middle, body.bottom)], theme.ink, width=look.sizes.px(2))
    radius = side / 2 - look.sizes.px(0.5)
    for number in range(count):
        tone = theme.wood_edge if number % 5 == 4 else theme.wood
        fill, edge, width = _tones(look, tone, theme.wood_edge, picked=picked, faint=faint)
        center = (body.center[0], body.y + side * (number + 0.5))
        canvas.circle(center, radius, fill=fill, outline=edge, width=width)
        if not faint:
            lit = (center[0] - radius * 0.3, center[1] - radius * 0.3)
            canvas.circle(lit, radius * 0.24, fill=between(tone, "#FFFFFF", SHINE_SHARE))


def _tin(canvas: Canvas, look: Look, body: Rect, full: float, *, picked: bool, faint: bool) -> None:
    """An open tin on its bail, with a window that shows how high the water stands."""
    theme, sizes = look.theme, look.sizes
    fill, edge, width = _tones(look, theme.steel, theme.steel_edge, picked=picked, faint=faint)
    wall = body.cut_top(body.h * TIN_BAIL / (1 + TIN_BAIL))[1]
    top = (body.center[0], body.y - sizes.px(4))
    canvas.line([(wall.x + 2, wall.y + 3), top, (wall.right - 2, wall.y + 3)], edge, width=sizes.px(2))
    radius = sizes.px(4)
    canvas.box(wall, fill=fill, radius=radius)
    window = Rect(wall.x + wall.w * 0.3, wall.y + wall.h * 0.06, wall.w * 0.4, wall.h * 0.86)
    canvas.box(window, fill=theme.panel, radius=sizes.px(2))
    level = window.h * min(max(full, 0.0), 1.0)
    if level > 0:
        water = between(theme.anticlockwise, theme.panel, FAINT_SHARE if not faint else 0.7)
        canvas.box(Rect(window.x, window.bottom - level, window.w, level), fill=water)
        line = [(window.x, window.bottom - level), (window.right, window.bottom - level)]
        canvas.line(line, theme.ink, width=sizes.px(1.5))
    canvas.box(window, outline=edge, width=sizes.px(1), radius=sizes.px(2))
    rim = Rect(wall.x - sizes.px(2), wall.y, wall.w + sizes.px(4), sizes.px(4))
    canvas.box(wall, outline=edge, width=width, radius=radius)
    canvas.box(rim, fill=fill, outline=edge, width=sizes.px(1), radius=sizes.px(2))


def _plate(canvas: Canvas, look: Look, body: Rect, *, picked: bool, faint: bool) -> None:
    """A steel plate, hung by the hole in its middle."""
    theme, sizes = look.theme, look.sizes
    fill, edge, width = _tones(look, theme.steel, theme.steel_edge, picked=picked, faint=faint)
    radius = sizes.px(4)
    canvas.box(body, fill=fill, radius=radius)
    if not faint:
        shine = Rect(body.x + body.w * 0.06, body.y + body.h * 0.1, body.w * 0.12, body.h * 0.8)
        canvas.box(shine, fill=between(theme.steel, "#FFFFFF", SHINE_SHARE), radius=1)
    canvas.box(body, outline=edge, width=width, radius=radius)
    canvas.line([(body.center[0], body.y - sizes.px(4)), body.center], theme.ink, width=sizes.px(2))
    canvas.circle(body.center, sizes.px(4), fill=theme.paper, outline=theme.ink, width=sizes.px(1))
