"""How the hanging bar's screen is laid out: beside each other, below each other, or with a scroll column."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from lab.scenes.hanging_scene import draw_hanging_bar, grab_bounds
from lab.scenes.hanging_view import PIVOT, REFERENCE, HangingView, stage_for, weight_key
from lab.scenes.weights import GHOST_ID, hung_places
from lab.screens.hanging_bar_hands import GHOST
from lab.screens.hanging_bar_panel import PanelParts, panel_width
from lab.screens.hanging_bar_places import Above, AreasPlot, Inset
from lab.screens.hanging_bar_words import picture_said, weight_said
from lab.ui.geometry import Rect
from lab.ui.widgets.arrange import Column, Row, Sized, Spacer
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.picture import Handle, Picture
from lab.ui.widgets.scroll import Scroll
from lab.ui.widgets.widget import Widget

_PAD_PX, _SIDE_PX, _SUMS_GAP_PX = 18.0, 10.0, 4.0
"""Margins of the panel, the part of them that belongs to what scrolls, and the gap between title and table."""
_LARGE_TEXT = 1.2
_MOST_BELOW = 0.52
"""Of a high window's room: what lies under the picture takes no more."""
_FLAT_STRIP = 1.8
"""In targets: a strip higher than that has wrapped, and lies under the picture instead of upon it."""
PICTURE, AREAS, SIDE = "picture", "areas", "side"


@dataclass(frozen=True, slots=True, kw_only=True)
class Pieces:
    """All that the screen is made of.  rect_of_picture, angle_rad: asked for when it is drawn."""

    bar: Widget
    view: HangingView
    parts: PanelParts
    strip: Panel | None
    areas: bool
    rect_of_picture: Callable[[], Rect | None]
    angle_rad: Callable[[], float]


def picture(view: HangingView, angle_rad: Callable[[], float]) -> Picture:
    """The bench as a picture with bodies in it.  angle_rad: asked for each time it is drawn."""
    say, words, readings, bench = view.look.words.say, view.look.words, view.readings, view.bench

    def handles(rect: Rect) -> tuple[Handle, ...]:
        bounds = grab_bounds(view, rect)
        place = readings.length_with_unit
        found = [Handle(PIVOT, say("pivot"), place(bench.pivot.at_m), bounds[PIVOT], selected=view.picked == PIVOT)]
        if REFERENCE in bounds:
            box, value = bounds[REFERENCE], place(bench.reference_m)
            found.append(Handle(REFERENCE, say("reference line"), value, box, selected=view.picked == REFERENCE))
        for weight in sorted(bench.weights, key=lambda one: one.at_m):
            key = weight_key(weight)
            said = weight_said(words, weight, readings)
            name, picked = words.content(weight.name), view.picked == key
            found.append(Handle(key, name, said, bounds[key], ("move", "press", "remove"), selected=picked))
        ghost = view.ghost
        if ghost is not None and ghost.at_m is not None and ghost.pointer is None:
            name = say("{weight}, not hung yet", weight=readings.weight_with_unit(ghost.mass_kg))
            found.append(Handle(GHOST, name, place(ghost.at_m), _ghost_rect(view, rect), selected=True))
        return tuple(found)

    return Picture(
        PICTURE,
        say("Hanging bar"),
        lambda canvas, rect: draw_hanging_bar(canvas, rect, replace(view, angle_rad=angle_rad())),
        handles=handles,
        value=picture_said(words, bench, readings),
        least=(320.0, 260.0),
    )


def _ghost_rect(view: HangingView, rect: Rect) -> Rect:
    place = hung_places(view, stage_for(view.bench, rect, view.look))[GHOST_ID]
    target = view.look.sizes.target
    return place.body.at_least(target, target)


def laid_out(pieces: Pieces) -> Widget:
    """The whole screen."""
    sizes = pieces.view.look.sizes
    if sizes.portrait:
        body = _below(pieces)
    elif sizes.text_scale > _LARGE_TEXT:
        body = _with_scroll_column(pieces)
    else:
        body = _beside(pieces)
    return Column((pieces.bar, body), gap=0, weights=(0.0, 1.0))


def _room(pieces: Pieces) -> float:
    look = pieces.view.look
    return look.sizes.height - pieces.bar.height(look, look.sizes.width)


def _beside(pieces: Pieces) -> Widget:
    """Picture and areas at one side, the panel at the other."""
    look = pieces.view.look
    left: list[Widget] = [_picture_with_strip(pieces, look.sizes.width - panel_width(look))]
    if pieces.areas:
        tall = 178.0 if look.sizes.height >= look.sizes.px(680) else 150.0
        areas = AreasPlot(AREAS, pieces.view, tall, pieces.rect_of_picture)
        left.append(Panel("areas-edge", children=(areas,), pad=0, edge="top"))
    column = Column(tuple(left), gap=0, weights=(1.0, 0.0)[: len(left)])
    return Row((column, _side_panel(pieces)), gap=0, weights=(1.0, 0.0), wraps=False)


def _picture_with_strip(pieces: Pieces, wide: float) -> Widget:
    """The picture, the strip upon its lower edge; what is drawn there makes room for it."""
    if pieces.strip is None:
        return picture(pieces.view, pieces.angle_rad)
    look, margin = pieces.view.look, pieces.view.look.sizes.px(8)
    taken = min(pieces.strip.natural_width(look), wide - 2 * margin)
    tall = pieces.strip.height(look, taken)
    if tall > _FLAT_STRIP * look.sizes.target:
        return Column((picture(pieces.view, pieces.angle_rad), pieces.strip), gap=0, weights=(1.0, 0.0))
    foot_px = tall + margin
    return Above(picture(replace(pieces.view, foot_px=foot_px), pieces.angle_rad), pieces.strip)


def _side_panel(pieces: Pieces) -> Widget:
    """The sums scroll where there are many; what acts stays where it is, while there is room for both."""
    look, parts = pieces.view.look, pieces.parts
    wide = panel_width(look)
    acting = (*parts.action, *parts.tray)
    fixed = (*parts.result, *acting)
    inner = wide - 2 * look.sizes.px(_PAD_PX)
    gaps = look.sizes.gap * (len(fixed) + 3)
    fixed_h = sum(widget.height(look, inner) for widget in (*fixed, *parts.view)) + gaps + look.sizes.px(24)
    room_for_sums = _room(pieces) - fixed_h
    wanted = sum(widget.height(look, inner) for widget in parts.sums) + look.sizes.px(_SUMS_GAP_PX) * len(parts.sums)
    if parts.sums and room_for_sums >= min(wanted, look.sizes.px(210)):
        sums = Scroll("sums", Inset(Column(parts.sums, gap=_SUMS_GAP_PX), _SIDE_PX))
        rest = tuple(Inset(widget, _SIDE_PX) for widget in (*fixed, *parts.view))
        weights = (1.0,) + (0.0,) * len(rest)
        panel: Widget = Panel(SIDE, children=(sums, *rest), edge="left", weights=weights, pad=_PAD_PX - _SIDE_PX)
    elif not parts.sums and room_for_sums >= 0:
        children = (*fixed, Spacer(), *parts.view)
        weights = (0.0,) * len(fixed) + (1.0, 0.0)
        panel = Panel(SIDE, children=children, edge="left", weights=weights, pad=_PAD_PX)
    else:
        children = (*acting, *parts.sums, *parts.result, *parts.view)
        panel = Scroll(SIDE, Panel("side-panel", children=children, edge="left", pad=_PAD_PX))
    return Sized(panel, width=wide / look.sizes.unit)


def _with_scroll_column(pieces: Pieces) -> Widget:
    """Large text: the picture keeps its half, everything else is one column that scrolls."""
    look = pieces.view.look
    panel = Scroll(SIDE, Panel("side-panel", children=_one_column(pieces), edge="left", pad=20))
    side = Sized(panel, width=panel_width(look) / look.sizes.unit)
    return Row((picture(pieces.view, pieces.angle_rad), side), gap=0, weights=(1.0, 0.0), wraps=False)


def _one_column(pieces: Pieces) -> tuple[Widget, ...]:
    """Everything but the picture: first what is in hand, then what acts, then what can be read."""
    parts = pieces.parts
    children: list[Widget] = [*parts.action, *parts.tray, *parts.sums, *parts.result]
    if pieces.strip is not None:
        children.insert(0, pieces.strip)
    if pieces.areas:
        tall = 200.0 * pieces.view.look.sizes.text_scale
        children.append(AreasPlot(AREAS, pieces.view, tall))
    return (*children, *parts.view)


def _below(pieces: Pieces) -> Widget:
    """A high window: picture, areas, and under them sums and actions beside each other."""
    look, parts = pieces.view.look, pieces.parts
    if look.sizes.text_scale > _LARGE_TEXT:
        return _below_in_large(pieces)
    upper: list[Widget] = [_picture_with_strip(pieces, look.sizes.width)]
    if pieces.areas:
        areas = AreasPlot(AREAS, pieces.view, 200.0, pieces.rect_of_picture)
        upper.append(Panel("areas-edge", children=(areas,), pad=0, edge="top"))
    acting = Column((*parts.action, *parts.tray, *parts.view))
    columns: tuple[Widget, ...] = (Column((*parts.sums, *parts.result)), acting) if parts.sums else (acting,)
    lower = Panel("side-panel", children=(Row(columns, gap=32),), edge="top")
    return _over_scrolling(pieces, tuple(upper), lower)


def _below_in_large(pieces: Pieces) -> Widget:
    """Large text in a high window: the picture above, everything else in one column that scrolls."""
    lower = Panel("side-panel", children=_one_column(pieces), edge="top")
    return _over_scrolling(pieces, (picture(pieces.view, pieces.angle_rad),), lower)


def _over_scrolling(pieces: Pieces, upper: tuple[Widget, ...], lower: Widget) -> Widget:
    look = pieces.view.look
    tall = min(lower.height(look, look.sizes.width), _MOST_BELOW * _room(pieces))
    scroll = Sized(Scroll(SIDE, lower), tall=tall / look.sizes.unit)
    return Column((*upper, scroll), gap=0, weights=(1.0,) + (0.0,) * len(upper))
