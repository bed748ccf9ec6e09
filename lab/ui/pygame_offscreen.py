"""Pictures without a display: a display list onto a surface, a surface into a file."""

import os
from collections.abc import Sequence
from pathlib import Path

import pygame

from lab.ui.geometry import Rect
from lab.ui.ops import Op
from lab.ui.pygame_painter import Painter


def picture_of(ops: Sequence[Op], size: tuple[int, int], *, fonts: Path | None = None) -> pygame.Surface:
    """The operations on a fresh opaque surface. Opens no window and needs none."""
    os.environ.setdefault("SDL_VIDEODRIVER", "dummy")
    surface = pygame.Surface(size, 0, 32)
    Painter(fonts=fonts).paint(ops, surface, Rect(0.0, 0.0, *size))
    return surface


def save_picture(ops: Sequence[Op], size: tuple[int, int], file: Path, *, fonts: Path | None = None) -> None:
    """The operations as a PNG file.  Raises OSError if it cannot be written."""
    try:
        pygame.image.save(picture_of(ops, size, fonts=fonts), str(file))
    except pygame.error as error:
        raise OSError(f"{file}: cannot be written: {error}") from error
