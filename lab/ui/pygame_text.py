"""Lines of text as surfaces, from the shipped fonts; where those are missing, from pygame's own."""

import re
from collections import OrderedDict
from pathlib import Path

import pygame

from lab.ui.assets import font_file
from lab.ui.metrics import text_width
from lab.ui.pygame_cache import MIB, SurfaceCache
from lab.ui.pygame_colors import rgba

MOST_FONTS = 24  # each keeps its own glyphs, so many fonts are what makes memory grow
TEXT_ROOM_BYTES = 32 * MIB
_SMOOTH = True
_FALLBACK_GROWTH = 1.4  # pygame's own font is drawn smaller than asked for


_JOINING = re.compile("f(?=[fijl])")


def unjoined(text: str) -> str:
    """The text with f kept apart from what follows: joined letters (fi, fl) would be narrower than measured."""
    return _JOINING.sub("f\u200c", text)


class TextPainter:
    """Draws lines of text whose place was worked out from the width table."""

    def __init__(self, *, fonts: Path | None = None) -> None:
        """fonts: the assets folder, where it is not the shipped one."""
        pygame.font.init()
        self._folder = fonts
        self._fonts: OrderedDict[tuple[int, bool], pygame.font.Font] = OrderedDict()
        self._lines = SurfaceCache(TEXT_ROOM_BYTES)
        self.missing = [file for bold in (False, True) if not (file := font_file(bold=bold, folder=fonts)).is_file()]

    def line(self, text: str, *, size: float, bold: bool, color: str) -> tuple[pygame.Surface, int]:
        """(one line with its colours multiplied by alpha, pixels from its top to its baseline)."""
        whole = max(1, round(size))
        font = self._font(whole, bold=bold)
        surface = self._lines.get(
            (text, whole, bold, color), lambda: self._made(font, text, size=whole, bold=bold, color=color)
        )
        return surface, font.get_ascent()

    def _made(self, font: pygame.font.Font, text: str, *, size: int, bold: bool, color: str) -> pygame.Surface:
        rendered = font.render(unjoined(text), _SMOOTH, rgba(color))
        # A rendered line has padded rows, which pygame 2.6's premul_alpha scrambles: onto plain rows first.
        plain = pygame.Surface(rendered.get_size(), pygame.SRCALPHA, 32)
        plain.blit(rendered, (0, 0))
        made = plain.premul_alpha()
        room = round(text_width(text, size=size, bold=bold))
        if self.missing and room > 0:
            # Another font than the one measured: it must take the same room.
            made = pygame.transform.smoothscale(made, (room, made.get_height()))
        return made

    def _font(self, size: int, *, bold: bool) -> pygame.font.Font:
        key = (size, bold)
        font = self._fonts.get(key)
        if font is None:
            font = self._fonts[key] = self._opened(size, bold=bold)
            if len(self._fonts) > MOST_FONTS:
                self._fonts.popitem(last=False)
        else:
            self._fonts.move_to_end(key)
        return font

    def _opened(self, size: int, *, bold: bool) -> pygame.font.Font:
        file = font_file(bold=bold, folder=self._folder)
        if file.is_file():
            return pygame.font.Font(str(file), size)
        return pygame.font.Font(None, round(size * _FALLBACK_GROWTH))
