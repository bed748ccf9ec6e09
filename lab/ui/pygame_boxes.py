"""Boxes: filled directly, with small smooth sprites for their corners only, so that a large one costs little."""

import math

import pygame

from lab.ui.ops import BoxOp
from lab.ui.pygame_cache import SurfaceCache
from lab.ui.pygame_colors import multiplied, rgba
from lab.ui.pygame_shapes import round_box, sprite

# Up to this area (pixels) one sprite of the whole box is quicker than nine pieces.
_WHOLE_AREA = 12_000
_MULTIPLIED = pygame.BLEND_PREMULTIPLIED


def paint_box(op: BoxOp, surface: pygame.Surface, sprites: SurfaceCache) -> None:
    """Draws a box with round or sharp corners, its outline inside it."""
    area = pygame.Rect(*map(round, op.bounds))
    corner = math.ceil(max(op.radius, op.width if op.outline else 0.0))
    if op.radius <= 0 and not op.outline:
        _fill(surface, area, op.fill, sprites)
    elif area.w * area.h <= _WHOLE_AREA or 2 * corner + 1 >= min(area.w, area.h):
        key = ("box", area.size, op.fill, op.outline, op.width, op.radius)
        surface.blit(sprites.get(key, lambda: _whole(area.size, op)), area.topleft, special_flags=_MULTIPLIED)
    else:
        _nine(op, surface, sprites, area, corner)


def _whole(size: tuple[int, int], op: BoxOp) -> pygame.Surface:
    return sprite(size, lambda large: round_box(large, size, op.fill, op.outline, op.width, op.radius))


def _nine(op: BoxOp, surface: pygame.Surface, sprites: SurfaceCache, area: pygame.Rect, corner: int) -> None:
    """Four corners from a small box, four edges, one middle."""
    side = 2 * corner + 1
    key = ("box", (side, side), op.fill, op.outline, op.width, op.radius)
    small = sprites.get(key, lambda: _whole((side, side), op))
    far = corner + 1
    for source_x, x in ((0, area.x), (far, area.right - corner)):
        for source_y, y in ((0, area.y), (far, area.bottom - corner)):
            part = (source_x, source_y, corner, corner)
            surface.blit(small, (x, y), part, special_flags=_MULTIPLIED)
    across, down = area.w - 2 * corner, area.h - 2 * corner
    for source_y, y in ((0, area.y), (far, area.bottom - corner)):
        strip = _stretched(small, (corner, source_y, 1, corner), (across, corner), key, sprites)
        surface.blit(strip, (area.x + corner, y), special_flags=_MULTIPLIED)
    for source_x, x in ((0, area.x), (far, area.right - corner)):
        strip = _stretched(small, (source_x, corner, corner, 1), (corner, down), key, sprites)
        surface.blit(strip, (x, area.y + corner), special_flags=_MULTIPLIED)
    _fill(surface, pygame.Rect(area.x + corner, area.y + corner, across, down), op.fill, sprites)


def _stretched(
    small: pygame.Surface,
    part: tuple[int, int, int, int],
    size: tuple[int, int],
    key: tuple[object, ...],
    sprites: SurfaceCache,
) -> pygame.Surface:
    """One row or column of the small box, as long as the edge."""
    return sprites.get(("edge", part, size, key), lambda: pygame.transform.scale(small.subsurface(part).copy(), size))


def _fill(surface: pygame.Surface, area: pygame.Rect, fill: str | None, sprites: SurfaceCache) -> None:
    if not fill:
        return
    if rgba(fill)[3] == 255:
        surface.fill(rgba(fill), area)
        return

    def veil() -> pygame.Surface:
        made = pygame.Surface(area.size, pygame.SRCALPHA, 32)
        made.fill(multiplied(fill))
        return made

    surface.blit(sprites.get(("veil", area.size, fill), veil), area.topleft, special_flags=_MULTIPLIED)
