"""The mobile's screen at every size, text scale, language and theme: nothing clipped, nothing upon anything."""

import pytest

from lab.outline.words import Words
from lab.screens.benches.mobile.gallery import entries
from lab.ui.layout_check import faults_on
from lab.ui.list_canvas import ListCanvas
from lab.ui.look import Look
from lab.ui.sizes import Sizes
from lab.ui.theme import THEMES

ENTRIES = dict(entries())
SIZES = ((1280, 720), (1024, 600), (1080, 1920), (3840, 2160))
FEW = ("build-mobile-held", "build-mobile-deep-settled", "build-mobile-crowded", "build-mobile-bar-picked")


def faults(name: str, size: tuple[int, int], text_scale: float, language: str = "en", theme: str = "paper"):
    words = Words(language)
    look = Look(THEMES[theme], Sizes(*size, text_scale=text_scale, mirrored=words.mirrored), words)
    screen, canvas = ENTRIES[name].make(look), ListCanvas(size)
    screen.draw(canvas)
    return faults_on(canvas.ops, screen.outline(), look)


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("text_scale", [1.0, 1.5, 2.0])
@pytest.mark.parametrize("language", ["en", "xr"])
def test_no_text_is_clipped_covered_or_faint_and_no_target_too_small(
    size: tuple[int, int], text_scale: float, language: str
):
    for name in FEW:
        assert faults(name, size, text_scale, language) == [], name


@pytest.mark.parametrize("name", ENTRIES)
def test_every_state_has_room_in_a_small_window(name: str):
    for theme in THEMES:
        assert faults(name, (1024, 600), 1.0, theme=theme) == [], theme
    assert faults(name, (1024, 600), 2.0, "xx") == []
