"""How the screen of a bench is laid out: beside each other, below each other, or with a scroll column."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Protocol

from lab.screens.benches.panel import PanelParts, panel_width
from lab.screens.benches.places import Above, Inset
from lab.ui.look import Look
from lab.ui.widgets.arrange import Column, Row, Sized, Spacer
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.scroll import Scroll
from lab.ui.widgets.widget import Widget

_PAD_PX, _SIDE_PX, _SUMS_GAP_PX = 18.0, 10.0, 4.0
"""Margins of the panel, the part of them that belongs to what scrolls, and the gap between title and table."""
_LEAST_SUMS_PX = 150.0
"""With less room for them than that, title and a few rows, the sums stand below what acts."""
_LARGE_TEXT = 1.2
_MOST_BELOW = 0.52
"""Of a high window's room: what lies under the picture takes no more."""
_FLAT_STRIP = 1.8
"""In targets: a strip higher than that has wrapped, and lies under the picture instead of upon it."""
PICTURE, AREAS, SIDE = "picture", "areas", "side"


class Areas(Protocol):
    """Makes the drawing below the picture."""

    def __call__(self, tall: float, *, to_scale: bool) -> Widget:
        """tall: in design pixels.  to_scale: whether it lies right below the picture, and shares its scale."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Pieces:
    """All that the screen is made of.

    bar: the header.  picture: the bench as a picture, so many pixels at its foot being covered by something else.
    parts: of the panel.  strip: for what is picked; None where nothing is.
    areas: a drawing below the picture that says the same in areas; None where there is none now.
    """

    look: Look
    bar: Widget
    picture: Callable[[float], Widget]
    parts: PanelParts
    strip: Panel | None
    areas: Areas | None = None


def laid_out(pieces: Pieces) -> Widget:
    """The whole screen."""
    sizes = pieces.look.sizes
    if sizes.portrait:
        body = _below(pieces)
    elif sizes.text_scale > _LARGE_TEXT:
        body = _with_scroll_column(pieces)
    else:
        body = _beside(pieces)
    return Column((pieces.bar, body), gap=0, weights=(0.0, 1.0))


def _room(pieces: Pieces) -> float:
    look = pieces.look
    return look.sizes.height - pieces.bar.height(look, look.sizes.width)


def _beside(pieces: Pieces) -> Widget:
    """Picture and areas at one side, the panel at the other."""
    look = pieces.look
    left: list[Widget] = [_picture_with_strip(pieces, look.sizes.width - panel_width(look))]
    if pieces.areas is not None:
        tall = 178.0 if look.sizes.height >= look.sizes.px(680) else 150.0
        areas = pieces.areas(tall, to_scale=True)
        left.append(Panel("areas-edge", children=(areas,), pad=0, edge="top"))
    column = Column(tuple(left), gap=0, weights=(1.0, 0.0)[: len(left)])
    return Row((column, _side_panel(pieces)), gap=0, weights=(1.0, 0.0), wraps=False)


def _picture_with_strip(pieces: Pieces, wide: float) -> Widget:
    """The picture, the strip upon its lower edge; what is drawn there makes room for it."""
    if pieces.strip is None:
        return pieces.picture(0.0)
    look, margin = pieces.look, pieces.look.sizes.px(8)
    taken = min(pieces.strip.natural_width(look), wide - 2 * margin)
    tall = pieces.strip.height(look, taken)
    if tall > _FLAT_STRIP * look.sizes.target:
        return Column((pieces.picture(0.0), pieces.strip), gap=0, weights=(1.0, 0.0))
    foot_px = tall + margin
    return Above(pieces.picture(foot_px), pieces.strip)


def _side_panel(pieces: Pieces) -> Widget:
    """The sums scroll where there are many; what acts stays where it is, while there is room for both."""
    look, parts = pieces.look, pieces.parts
    wide = panel_width(look)
    acting = (*parts.action, *parts.tray, *parts.task)
    fixed = (*parts.result, *acting)
    inner = wide - 2 * look.sizes.px(_PAD_PX)
    gaps = look.sizes.gap * (len(parts.head) + len(fixed) + 3)
    standing = (*parts.head, *fixed, *parts.view)
    fixed_h = sum(widget.height(look, inner) for widget in standing) + gaps + look.sizes.px(24)
    room_for_sums = _room(pieces) - fixed_h
    wanted = sum(widget.height(look, inner) for widget in parts.sums) + look.sizes.px(_SUMS_GAP_PX) * len(parts.sums)
    if parts.sums and room_for_sums >= min(wanted, look.sizes.px(_LEAST_SUMS_PX)):
        sums = Scroll("sums", Inset(Column(parts.sums, gap=_SUMS_GAP_PX), _SIDE_PX))
        rest = tuple(Inset(widget, _SIDE_PX) for widget in (*fixed, *parts.view))
        head = tuple(Inset(widget, _SIDE_PX) for widget in parts.head)
        weights = (0.0,) * len(head) + (1.0,) + (0.0,) * len(rest)
        children: tuple[Widget, ...] = (*head, sums, *rest)
        panel: Widget = Panel(SIDE, children=children, edge="left", weights=weights, pad=_PAD_PX - _SIDE_PX)
    elif not parts.sums and room_for_sums >= 0:
        children = (*parts.head, *fixed, Spacer(), *parts.view)
        weights = (0.0,) * (len(parts.head) + len(fixed)) + (1.0,) + (0.0,) * len(parts.view)
        panel = Panel(SIDE, children=children, edge="left", weights=weights, pad=_PAD_PX)
    else:
        children = (*parts.head, *acting, *parts.sums, *parts.result, *parts.view)
        panel = Scroll(SIDE, Panel("side-panel", children=children, edge="left", pad=_PAD_PX))
    return Sized(panel, width=wide / look.sizes.unit)


def _with_scroll_column(pieces: Pieces) -> Widget:
    """Large text: the picture keeps its half, everything else is one column that scrolls."""
    look = pieces.look
    panel = Scroll(SIDE, Panel("side-panel", children=_one_column(pieces), edge="left", pad=20))
    side = Sized(panel, width=panel_width(look) / look.sizes.unit)
    return Row((pieces.picture(0.0), side), gap=0, weights=(1.0, 0.0), wraps=False)


def _one_column(pieces: Pieces) -> tuple[Widget, ...]:
    """Everything but the picture: first what is in hand, then what acts, then what can be read."""
    parts = pieces.parts
    children: list[Widget] = [*parts.head, *parts.action, *parts.tray, *parts.task, *parts.sums, *parts.result]
    if pieces.strip is not None:
        children.insert(0, pieces.strip)
    if pieces.areas is not None:
        tall = 200.0 * pieces.look.sizes.text_scale
        children.append(pieces.areas(tall, to_scale=False))
    return (*children, *parts.view)


def _below(pieces: Pieces) -> Widget:
    """A high window: picture, areas, and under them sums and actions beside each other."""
    look, parts = pieces.look, pieces.parts
    if look.sizes.text_scale > _LARGE_TEXT:
        return _below_in_large(pieces)
    upper: list[Widget] = [_picture_with_strip(pieces, look.sizes.width)]
    if pieces.areas is not None:
        areas = pieces.areas(200.0, to_scale=True)
        upper.append(Panel("areas-edge", children=(areas,), pad=0, edge="top"))
    acting = Column((*parts.head, *parts.action, *parts.tray, *parts.task, *parts.view))
    columns: tuple[Widget, ...] = (Column((*parts.sums, *parts.result)), acting) if parts.sums else (acting,)
    lower = Panel("side-panel", children=(Row(columns, gap=32),), edge="top")
    return _over_scrolling(pieces, tuple(upper), lower)


def _below_in_large(pieces: Pieces) -> Widget:
    """Large text in a high window: the picture above, everything else in one column that scrolls."""
    lower = Panel("side-panel", children=_one_column(pieces), edge="top")
    return _over_scrolling(pieces, (pieces.picture(0.0),), lower)


def _over_scrolling(pieces: Pieces, upper: tuple[Widget, ...], lower: Widget) -> Widget:
    look = pieces.look
    tall = min(lower.height(look, look.sizes.width), _MOST_BELOW * _room(pieces))
    scroll = Sized(Scroll(SIDE, lower), tall=tall / look.sizes.unit)
    return Column((*upper, scroll), gap=0, weights=(1.0,) + (0.0,) * len(upper))
