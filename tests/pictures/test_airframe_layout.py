"""The airframe bench in every state, size, text scale, language and theme: nothing clipped, nothing covered."""

from typing import Any

import pytest

from lab.outline.words import Words
from lab.screens.benches.airframe.gallery import entries
from lab.ui.layout_check import faults_on
from lab.ui.list_canvas import ListCanvas
from lab.ui.look import Look
from lab.ui.sizes import Sizes
from lab.ui.theme import THEMES

ENTRIES = dict(entries())
SIZES = ((1280, 720), (1024, 600), (1080, 1920))


def faults(name: str, *, size: Any = (1280, 720), text_scale: float = 1.0, language: str = "en", theme: str = "paper"):
    words = Words(language)
    look = Look(THEMES[theme], Sizes(*size, text_scale=text_scale, mirrored=words.mirrored), words)
    screen, canvas = ENTRIES[name].make(look), ListCanvas(size)
    screen.draw(canvas)
    return faults_on(canvas.ops, screen.outline(), look)


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize(("text_scale", "language"), [(1.0, "en"), (1.0, "xx"), (1.5, "xr"), (2.0, "en"), (2.0, "xx")])
def test_no_text_is_clipped_covered_or_faint_and_no_target_too_small(size: Any, text_scale: float, language: str):
    for name in ENTRIES:
        assert faults(name, size=size, text_scale=text_scale, language=language) == [], name


@pytest.mark.parametrize("theme", sorted(THEMES))
@pytest.mark.parametrize("name", sorted(ENTRIES))
def test_every_theme_shows_every_state(name: str, theme: str):
    assert faults(name, theme=theme) == []
