"""Puts the operations of a display list onto a pygame surface."""

import math
from collections.abc import Callable, Sequence
from itertools import pairwise
from pathlib import Path
from typing import Any

import pygame

from lab.ui.geometry import Point, Rect
from lab.ui.list_canvas import arc_points, body_list
from lab.ui.ops import (
    ArcOp,
    Body,
    BoxOp,
    CircleOp,
    HatchOp,
    LineOp,
    Op,
    PolygonOp,
    TextOp,
    TurnedOp,
    scaled,
)
from lab.ui.pygame_boxes import paint_box
from lab.ui.pygame_cache import MIB, SurfaceCache
from lab.ui.pygame_colors import multiplied, rgba
from lab.ui.pygame_shapes import (
    FINE,
    dashed,
    disc,
    fine,
    hatch_tile,
    quartered,
    segment_quad,
    sprite,
    thick_line,
)
from lab.ui.pygame_text import TextPainter

SHAPE_ROOM_BYTES = 32 * MIB
BODY_ROOM_BYTES = 48 * MIB
BODY_SCALE = 2
"""Bodies are kept twice as large and turned at half size: crisp at every angle."""
# Above this area (pixels) a shape that moves would cost more to shrink than it is worth: edges are then smoothed
# by pygame's one-pixel lines. Shapes on bodies are drawn once and always take the fine way.
_FINE_AREA = 60_000
_LEVEL_RAD = 2e-4
_MULTIPLIED = pygame.BLEND_PREMULTIPLIED


class Painter:
    """Draws operations; keeps sprites of shapes, texts and bodies for the next time."""

    def __init__(self, *, fonts: Path | None = None) -> None:
        """fonts: the assets folder, where it is not the shipped one."""
        self.texts = TextPainter(fonts=fonts)
        self._shapes = SurfaceCache(SHAPE_ROOM_BYTES)
        self._bodies = SurfaceCache(BODY_ROOM_BYTES)
        self._turned: dict[Body, tuple[float, pygame.Surface]] = {}
        self._still = False
        self._ways: dict[type, Callable[[Any, pygame.Surface], None]] = {
            BoxOp: self._box,
            LineOp: self._line,
            PolygonOp: self._polygon,
            CircleOp: self._circle,
            ArcOp: self._arc,
            HatchOp: self._hatch,
            TextOp: self._text,
            TurnedOp: self._turned_body,
        }

    def paint(self, ops: Sequence[Op], surface: pygame.Surface, within: Rect) -> None:
        """Draws the operations in order, nothing outside the rectangle."""
        whole = pygame.Rect(*map(round, within))
        surface.set_clip(whole)
        clip: Rect | None = None
        for op in ops:
            bounds = op.bounds
            if (
                bounds.x > within.right
                or bounds.y > within.bottom
                or bounds.x + bounds.w < within.x
                or bounds.y + bounds.h < within.y
            ):
                continue
            if op.clip is not clip:
                clip = op.clip
                surface.set_clip(whole if clip is None else whole.clip(pygame.Rect(*map(round, clip))))
            self._ways[type(op)](op, surface)
        surface.set_clip(None)

    def _box(self, op: BoxOp, surface: pygame.Surface) -> None:
        paint_box(op, surface, self._shapes)

    def _line(self, op: LineOp, surface: pygame.Surface) -> None:
        pieces: list[tuple[Point, ...]] = list(dashed(op.points, op.dash)) if op.dash else [op.points]
        if len(op.points) == 2 and (op.points[0][0] == op.points[1][0] or op.points[0][1] == op.points[1][1]):
            for piece in pieces:
                _straight(surface, piece[0], piece[1], op.width, op.color)
        elif self._is_fine(op):
            self._pieces(op, pieces, op.color, op.width, surface)
        else:
            for piece in pieces:
                _quick_line(surface, piece, op.color, op.width)

    def _arc(self, op: ArcOp, surface: pygame.Surface) -> None:
        points = tuple(arc_points(op.center, op.radius, op.start_rad, op.sweep_rad))
        self._pieces(op, [points], op.color, op.width, surface)

    def _polygon(self, op: PolygonOp, surface: pygame.Surface) -> None:
        if not self._is_fine(op):
            _quick_polygon(surface, op)
            return
        x, y, size, (points,) = _local(op.bounds, [op.points])
        closed = [*points, points[0]]

        def draw(large: pygame.Surface) -> None:
            if op.fill:
                pygame.draw.polygon(large, multiplied(op.fill), fine(points))
            if op.outline:
                thick_line(large, fine(closed), op.outline, op.width * FINE, round_ends=True)

        key = ("polygon", points, op.fill, op.outline, op.width)
        self._blit(surface, self._shapes.get(key, lambda: sprite(size, draw)), x, y)

    def _circle(self, op: CircleOp, surface: pygame.Surface) -> None:
        x, y, size, (centers,) = _local(op.bounds, [(op.center,)])
        key = ("circle", centers, op.radius, op.fill, op.outline, op.width)

        def draw(large: pygame.Surface) -> None:
            disc(large, centers[0], op.radius, op.fill, op.outline, op.width)

        self._blit(surface, self._shapes.get(key, lambda: sprite(size, draw)), x, y)

    def _hatch(self, op: HatchOp, surface: pygame.Surface) -> None:
        period = max(2, round(op.spacing * math.sqrt(2)))
        key = ("hatch", period, op.width, op.color, op.rising)
        tile = self._shapes.get(key, lambda: hatch_tile(period, op.width, op.color, rising=op.rising))
        before = surface.get_clip()
        area = pygame.Rect(*map(round, op.bounds))
        seen = area.clip(before)
        surface.set_clip(seen)
        side = tile.get_width()
        # Laid from the rectangle's own corner, so that the lines go along when it moves.
        for y in range(area.y + (seen.y - area.y) // side * side, seen.bottom, side):
            for x in range(area.x + (seen.x - area.x) // side * side, seen.right, side):
                self._blit(surface, tile, x, y)
        surface.set_clip(before)

    def _text(self, op: TextOp, surface: pygame.Surface) -> None:
        line, ascent = self.texts.line(op.text, size=op.size, bold=op.bold, color=op.color)
        self._blit(surface, line, round(op.x), round(op.baseline) - ascent)

    def _turned_body(self, op: TurnedOp, surface: pygame.Surface) -> None:
        shown = self._shown(op.body, op.angle_rad)
        cos, sin = math.cos(op.angle_rad), math.sin(op.angle_rad)
        dx, dy = op.body.size[0] / 2 - op.grip[0], op.body.size[1] / 2 - op.grip[1]
        middle_x, middle_y = op.at[0] + dx * cos + dy * sin, op.at[1] - dx * sin + dy * cos
        x, y = middle_x - shown.get_width() / 2, middle_y - shown.get_height() / 2
        self._blit(surface, shown, round(x), round(y))

    def _shown(self, body: Body, angle_rad: float) -> pygame.Surface:
        last = self._turned.get(body)
        if last is not None and last[0] == angle_rad:
            return last[1]
        large = self._bodies.get(body, lambda: self._made(body))
        if abs(angle_rad) < _LEVEL_RAD:
            size = (large.get_width() // BODY_SCALE, large.get_height() // BODY_SCALE)
            shown = pygame.transform.smoothscale(large, size)
        else:
            shown = pygame.transform.rotozoom(large, math.degrees(angle_rad), 1 / BODY_SCALE)
        if len(self._turned) > 128:
            self._turned.clear()
        self._turned[body] = (angle_rad, shown)
        return shown

    def _made(self, body: Body) -> pygame.Surface:
        """A body's picture, twice as large."""
        size = (math.ceil(body.size[0]) * BODY_SCALE, math.ceil(body.size[1]) * BODY_SCALE)
        surface = pygame.Surface(size, pygame.SRCALPHA, 32)
        still, self._still = self._still, True
        ops = [scaled(op, BODY_SCALE) for op in body_list(body).ops]
        self.paint(ops, surface, Rect(0, 0, *size))
        self._still = still
        return surface

    def _pieces(
        self, op: Op, pieces: Sequence[Sequence[Point]], color: str, width: float, surface: pygame.Surface
    ) -> None:
        x, y, size, local = _local(op.bounds, pieces)

        def draw(large: pygame.Surface) -> None:
            for piece in local:
                thick_line(large, fine(piece), color, width * FINE, round_ends=width >= 2.5)

        self._blit(surface, self._shapes.get(("line", local, color, width), lambda: sprite(size, draw)), x, y)

    def _is_fine(self, op: Op) -> bool:
        return self._still or op.bounds.w * op.bounds.h <= _FINE_AREA

    @staticmethod
    def _blit(surface: pygame.Surface, shown: pygame.Surface, x: int, y: int) -> None:
        surface.blit(shown, (x, y), special_flags=_MULTIPLIED)


def _local(
    bounds: Rect, pieces: Sequence[Sequence[Point]]
) -> tuple[int, int, tuple[int, int], tuple[tuple[Point, ...], ...]]:
    """(x, y, size of a sprite that holds the bounds, the points in it to a quarter of a pixel)."""
    x, y = math.floor(bounds.x), math.floor(bounds.y)
    size = (math.ceil(bounds.right) - x + 1, math.ceil(bounds.bottom) - y + 1)
    local = tuple(tuple((quartered(px - x), quartered(py - y)) for px, py in piece) for piece in pieces)
    return x, y, size, local


def _straight(surface: pygame.Surface, start: Point, end: Point, width: float, color: str) -> None:
    """A level or upright line, on whole pixels and so crisp."""
    wide = max(1, round(width))
    (x0, x1), (y0, y1) = sorted((start[0], end[0])), sorted((start[1], end[1]))
    if y1 == y0:
        area = pygame.Rect(round(x0), math.floor(y0 - wide / 2 + 0.5), max(1, round(x1) - round(x0)), wide)
    else:
        area = pygame.Rect(math.floor(x0 - wide / 2 + 0.5), round(y0), wide, max(1, round(y1) - round(y0)))
    surface.fill(rgba(color), area)


def _quick_line(surface: pygame.Surface, points: Sequence[Point], color: str, width: float) -> None:
    """A long line, smoothed at its edges by pygame."""
    tint = rgba(color)
    for start, end in pairwise(points):
        quad = segment_quad(start, end, max(0.5, width / 2 - 0.5))
        if quad:
            pygame.draw.polygon(surface, tint, quad)
            pygame.draw.aalines(surface, tint, closed=True, points=quad)


def _quick_polygon(surface: pygame.Surface, op: PolygonOp) -> None:
    """A large shape, smoothed at its edges by pygame."""
    if op.fill:
        pygame.draw.polygon(surface, rgba(op.fill), op.points)
        pygame.draw.aalines(surface, rgba(op.fill), closed=True, points=op.points)
    if op.outline:
        _quick_line(surface, (*op.points, op.points[0]), op.outline, op.width)
