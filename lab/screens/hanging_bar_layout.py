"""How the hanging bar's screen is laid out: beside each other, below each other, or with a scroll column."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from lab.outline import Node
from lab.scenes.camera import Camera
from lab.scenes.hanging_scene import draw_hanging_bar, grab_bounds
from lab.scenes.hanging_view import PIVOT, REFERENCE, HangingView, stage_for, weight_key
from lab.scenes.turning_areas import draw_turning_areas, side_sums_kg_m
from lab.scenes.weights import GHOST_ID, hung_places
from lab.screens.hanging_bar_hands import GHOST
from lab.screens.hanging_bar_panel import PanelParts, panel_width
from lab.screens.hanging_bar_words import picture_said, weight_said
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.widgets.arrange import Column, Row, Sized, Spacer
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.picture import Handle, Picture
from lab.ui.widgets.scroll import Scroll
from lab.ui.widgets.widget import Mood, Plain, Widget

_PAD_PX, _SIDE_PX, _SUMS_GAP_PX = 18.0, 10.0, 4.0
"""Margins of the panel, the part of them that belongs to what scrolls, and the gap between title and table."""
_LARGE_TEXT = 1.2
_MOST_BELOW = 0.52
"""Of a high window's room: what lies under the picture takes no more."""
_FLAT_STRIP = 1.8
"""In targets: a strip higher than that has wrapped, and lies under the picture instead of upon it."""
PICTURE, AREAS, SIDE = "picture", "areas", "side"


@dataclass(frozen=True, slots=True)
class Above(Plain):
    """A strip that lies on the lower edge of a picture, no wider than it needs to be."""

    below: Widget
    strip: Widget | None
    key: str = ""

    def least_width(self, look: Look) -> float:
        """The picture's."""
        return self.below.least_width(look)

    def natural_width(self, look: Look) -> float:
        """The picture's."""
        return self.below.natural_width(look)

    def height(self, look: Look, width: float) -> float:
        """The picture's."""
        return self.below.height(look, width)

    def place(self, look: Look, rect: Rect) -> tuple[tuple[Widget, Rect], ...]:
        """The picture in all of it, the strip above its lower edge."""
        if self.strip is None:
            return ((self.below, rect),)
        margin = look.sizes.px(8)
        wide = min(self.strip.natural_width(look), rect.w - 2 * margin)
        tall = self.strip.height(look, wide)
        box = Rect(round(rect.center[0] - wide / 2), rect.bottom - tall - margin, wide, tall)
        return (self.below, rect), (self.strip, box)

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> None:
        """Only arranges."""


@dataclass(frozen=True, slots=True)
class Inset(Plain):
    """A child with a margin at its sides, so that a scroll column does not cut what reaches a little beyond it."""

    child: Widget
    side: float
    key: str = ""

    def least_width(self, look: Look) -> float:
        """The child's and the margins."""
        return self.child.least_width(look) + 2 * look.sizes.px(self.side)

    def natural_width(self, look: Look) -> float:
        """The child's and the margins."""
        return self.child.natural_width(look) + 2 * look.sizes.px(self.side)

    def height(self, look: Look, width: float) -> float:
        """The child's."""
        return self.child.height(look, width - 2 * look.sizes.px(self.side))

    def place(self, look: Look, rect: Rect) -> tuple[tuple[Widget, Rect], ...]:
        """The child between the margins."""
        return ((self.child, rect.inset(look.sizes.px(self.side), 0)),)

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> None:
        """Only arranges."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Pieces:
    """All that the screen is made of."""

    bar: Widget
    view: HangingView
    parts: PanelParts
    strip: Panel | None
    areas: bool
    rect_of_picture: Callable[[], Rect | None]


def picture(view: HangingView) -> Picture:
    """The bench as a picture with bodies in it."""
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
        lambda canvas, rect: draw_hanging_bar(canvas, rect, view),
        handles=handles,
        value=picture_said(words, bench, readings),
        least=(320.0, 260.0),
    )


def _ghost_rect(view: HangingView, rect: Rect) -> Rect:
    place = hung_places(view, stage_for(view.bench, rect, view.look))[GHOST_ID]
    target = view.look.sizes.target
    return place.body.at_least(target, target)


def areas_picture(view: HangingView, camera: Callable[[], Camera | None], *, tall: float) -> Picture:
    """The turning areas, read out as their two sums."""
    say = view.look.words.say
    left, right = (view.readings.moment_with_unit(total) for total in side_sums_kg_m(view.bench))

    def draw(canvas: Canvas, rect: Rect) -> None:
        draw_turning_areas(canvas, rect, view, camera=camera())

    return Picture(
        AREAS,
        say("Turning areas about the pivot"),
        draw,
        value=say("anticlockwise {left}, clockwise {right}", left=left, right=right),
        least=(240.0, tall),
        tappable=False,
    )


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


def _camera(pieces: Pieces) -> Camera | None:
    rect = pieces.rect_of_picture()
    return None if rect is None else stage_for(pieces.view.bench, rect, pieces.view.look).camera


def _room(pieces: Pieces) -> float:
    look = pieces.view.look
    return look.sizes.height - pieces.bar.height(look, look.sizes.width)


def _beside(pieces: Pieces) -> Widget:
    """Picture and areas at one side, the panel at the other."""
    look = pieces.view.look
    left: list[Widget] = [_picture_with_strip(pieces, look.sizes.width - panel_width(look))]
    if pieces.areas:
        tall = 178.0 if look.sizes.height >= look.sizes.px(680) else 150.0
        areas = areas_picture(pieces.view, lambda: _camera(pieces), tall=tall)
        left.append(Panel("areas-edge", children=(areas,), pad=0, edge="top"))
    column = Column(tuple(left), gap=0, weights=(1.0, 0.0)[: len(left)])
    return Row((column, _side_panel(pieces)), gap=0, weights=(1.0, 0.0), wraps=False)


def _picture_with_strip(pieces: Pieces, wide: float) -> Widget:
    """The picture, the strip upon its lower edge; what is drawn there makes room for it."""
    if pieces.strip is None:
        return picture(pieces.view)
    look, margin = pieces.view.look, pieces.view.look.sizes.px(8)
    taken = min(pieces.strip.natural_width(look), wide - 2 * margin)
    tall = pieces.strip.height(look, taken)
    if tall > _FLAT_STRIP * look.sizes.target:
        return Column((picture(pieces.view), pieces.strip), gap=0, weights=(1.0, 0.0))
    foot_px = tall + margin
    return Above(picture(replace(pieces.view, foot_px=foot_px)), pieces.strip)


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
    return Row((picture(pieces.view), side), gap=0, weights=(1.0, 0.0), wraps=False)


def _one_column(pieces: Pieces) -> tuple[Widget, ...]:
    """Everything but the picture: first what is in hand, then what acts, then what can be read."""
    parts = pieces.parts
    children: list[Widget] = [*parts.action, *parts.tray, *parts.sums, *parts.result]
    if pieces.strip is not None:
        children.insert(0, pieces.strip)
    if pieces.areas:
        tall = 200.0 * pieces.view.look.sizes.text_scale
        children.append(areas_picture(pieces.view, lambda: None, tall=tall))
    return (*children, *parts.view)


def _below(pieces: Pieces) -> Widget:
    """A high window: picture, areas, and under them sums and actions beside each other."""
    look, parts = pieces.view.look, pieces.parts
    if look.sizes.text_scale > _LARGE_TEXT:
        return _below_in_large(pieces)
    upper: list[Widget] = [_picture_with_strip(pieces, look.sizes.width)]
    if pieces.areas:
        areas = areas_picture(pieces.view, lambda: _camera(pieces), tall=200.0)
        upper.append(Panel("areas-edge", children=(areas,), pad=0, edge="top"))
    acting = Column((*parts.action, *parts.tray, *parts.view))
    columns: tuple[Widget, ...] = (Column((*parts.sums, *parts.result)), acting) if parts.sums else (acting,)
    lower = Panel("side-panel", children=(Row(columns, gap=32),), edge="top")
    return _over_scrolling(pieces, tuple(upper), lower)


def _below_in_large(pieces: Pieces) -> Widget:
    """Large text in a high window: the picture above, everything else in one column that scrolls."""
    lower = Panel("side-panel", children=_one_column(pieces), edge="top")
    return _over_scrolling(pieces, (picture(pieces.view),), lower)


def _over_scrolling(pieces: Pieces, upper: tuple[Widget, ...], lower: Widget) -> Widget:
    look = pieces.view.look
    tall = min(lower.height(look, look.sizes.width), _MOST_BELOW * _room(pieces))
    scroll = Sized(Scroll(SIDE, lower), tall=tall / look.sizes.unit)
    return Column((*upper, scroll), gap=0, weights=(1.0,) + (0.0,) * len(upper))
