"""Shapes with smooth edges: drawn four times as large, shrunk once, with colours multiplied by alpha."""

import math
from collections.abc import Callable, Sequence
from functools import lru_cache
from itertools import pairwise

import pygame

from lab.ui.geometry import Point
from lab.ui.pygame_colors import multiplied

FINE = 4
"""How many times as large a shape is drawn before it is shrunk."""


def quartered(value: float) -> float:
    """To the nearest quarter of a pixel: finer than that cannot be told, and would fill the cache."""
    return round(value * FINE) / FINE


def sprite(size: tuple[int, int], draw: Callable[[pygame.Surface], None]) -> pygame.Surface:
    """A transparent surface of that size on which `draw` drew four times as large."""
    large = pygame.Surface((size[0] * FINE, size[1] * FINE), pygame.SRCALPHA, 32)
    draw(large)
    return pygame.transform.smoothscale(large, size)


def fine(points: Sequence[Point]) -> list[Point]:
    """Points in the large drawing."""
    return [(x * FINE, y * FINE) for x, y in points]


def thick_line(surface: pygame.Surface, points: Sequence[Point], color: str, width: float, *, round_ends: bool) -> None:
    """A line of any width with round joins, in the surface's own pixels."""
    tint, half = multiplied(color), width / 2
    for (x0, y0), (x1, y1) in pairwise(points):
        quad = segment_quad((x0, y0), (x1, y1), half)
        if quad:
            pygame.draw.polygon(surface, tint, quad)
    joins = points if round_ends else points[1:-1]
    if half >= 1.5:
        for x, y in joins:
            pygame.draw.circle(surface, tint, (x, y), half)


def segment_quad(start: Point, end: Point, half: float) -> list[Point]:
    """The corners of a line with a width; empty where it has no length."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    length = math.hypot(dx, dy)
    if length == 0:
        return []
    nx, ny = -dy / length * half, dx / length * half
    return [
        (start[0] + nx, start[1] + ny),
        (end[0] + nx, end[1] + ny),
        (end[0] - nx, end[1] - ny),
        (start[0] - nx, start[1] - ny),
    ]


@lru_cache(maxsize=64)
def dashed(points: tuple[Point, ...], dash: tuple[float, ...]) -> tuple[tuple[Point, Point], ...]:
    """The pieces of a line that are drawn, by lengths on, off, on, off... from its start."""
    pieces: list[tuple[Point, Point]] = []
    lengths = [max(0.5, length) for length in dash]
    which, left = 0, lengths[0]
    for (x0, y0), (x1, y1) in pairwise(points):
        length, gone = math.hypot(x1 - x0, y1 - y0), 0.0
        while length - gone > 1e-9:
            step = min(left, length - gone)
            if which % 2 == 0:
                a, b = gone / length, (gone + step) / length
                pieces.append(((x0 + (x1 - x0) * a, y0 + (y1 - y0) * a), (x0 + (x1 - x0) * b, y0 + (y1 - y0) * b)))
            gone, left = gone + step, left - step
            if left <= 1e-9:
                which = (which + 1) % len(lengths) if len(lengths) % 2 == 0 else which + 1
                left = lengths[which % len(lengths)]
    return tuple(pieces)


def round_box(
    surface: pygame.Surface,
    size: tuple[float, float],
    fill: str | None,
    outline: str | None,
    width: float,
    radius: float,
) -> None:
    """A box with round corners over the whole of a large drawing of a sprite of that size."""
    whole = pygame.Rect(0, 0, round(size[0] * FINE), round(size[1] * FINE))
    if outline:
        pygame.draw.rect(surface, multiplied(outline), whole, border_radius=round(radius * FINE))
        edge = round(width * FINE)
        whole = whole.inflate(-2 * edge, -2 * edge)
        radius = max(0.0, radius - width)
    # Without a fill the outline is hollow.
    tint = multiplied(fill) if fill else (0, 0, 0, 0)
    if (fill or outline) and whole.w > 0 and whole.h > 0:
        pygame.draw.rect(surface, tint, whole, border_radius=round(radius * FINE))


def disc(
    surface: pygame.Surface, center: Point, radius: float, fill: str | None, outline: str | None, width: float
) -> None:
    """A circle in a large drawing, its outline inside it."""
    middle = (center[0] * FINE, center[1] * FINE)
    if outline:
        pygame.draw.circle(surface, multiplied(outline), middle, radius * FINE)
        radius -= width
    tint = multiplied(fill) if fill else (0, 0, 0, 0)
    if radius > 0:
        pygame.draw.circle(surface, tint, middle, radius * FINE)


def hatch_tile(period: int, width: float, color: str, *, rising: bool) -> pygame.Surface:
    """A square that repeats without a seam: lines at 45 degrees, `period` apart along x and along y."""
    side = period * max(1, math.ceil(96 / period))

    def draw(large: pygame.Surface) -> None:
        for start in range(-side - period, 2 * side + period, period):
            ends = [(start - period, -period), (start + side + period, side + period)]
            if rising:
                ends = [(x, side - y) for x, y in ends]
            thick_line(large, fine(ends), color, width * FINE, round_ends=False)

    return sprite((side, side), draw)
