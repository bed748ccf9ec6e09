"""The hung plate's screen at every size, text scale, language and theme: nothing clipped, nothing upon anything."""

from collections.abc import Mapping

import pytest

from lab.outline.node import find
from lab.outline.words import Words
from lab.screens.benches.plate.gallery import entries
from lab.screens.gallery_parts import Drawn, Entry
from lab.ui.geometry import Rect
from lab.ui.layout_check import faults_on
from lab.ui.list_canvas import ListCanvas
from lab.ui.look import Look
from lab.ui.sizes import Sizes
from lab.ui.theme import THEMES

SIZES = ((1280, 720), (1024, 600), (1080, 1920), (3840, 2160))
ENTRIES: Mapping[str, Entry] = dict(entries())
TELLING = ("held", "all", "crossed", "crossed-held", "hole-picked", "clip-picked", "taken-up", "sheet")
"""States that between them show everything there is."""


def drawn(
    name: str, *, size: tuple[int, int] = (1280, 720), scale: float = 1.0, language: str = "en", theme: str = "paper"
) -> tuple[Drawn, list[str]]:
    words = Words(language)
    look = Look(THEMES[theme], Sizes(*size, text_scale=scale, mirrored=words.mirrored), words)
    screen = ENTRIES[f"build-plate-{name}"].make(look)
    canvas = ListCanvas(size)
    screen.draw(canvas)
    return screen, faults_on(canvas.ops, screen.outline(), look)


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("scale", [1.0, 1.5, 2.0])
@pytest.mark.parametrize("language", ["en", "xx", "xr"])
def test_no_text_is_clipped_covered_or_faint_and_no_target_too_small(
    size: tuple[int, int], scale: float, language: str
):
    faults = {name: drawn(name, size=size, scale=scale, language=language)[1] for name in TELLING}
    assert not {name: found for name, found in faults.items() if found}


@pytest.mark.parametrize("theme", sorted(THEMES))
def test_every_theme_shows_every_state(theme: str):
    faults = {name: drawn(name.removeprefix("build-plate-"), theme=theme)[1] for name in ENTRIES}
    assert not {name: found for name, found in faults.items() if found}


@pytest.mark.parametrize("size", [(1280, 720), (1024, 600)])
@pytest.mark.parametrize("name", ["held", "crossed-held", "hole-picked"])
def test_every_body_can_be_grabbed_within_the_picture(size: tuple[int, int], name: str):
    screen, _ = drawn(name, size=size)
    picture = find(screen.outline(), "picture")
    assert picture is not None
    handles = [node for node in picture.children if node.role == "handle"]
    assert len(handles) > 8
    for node in handles:
        assert Rect(*picture.bounds).holds(Rect(*node.bounds)), node.key
