"""The hung plate's screen at every size, text scale, language and theme: nothing clipped, nothing upon anything."""

from collections.abc import Mapping
from typing import Any

import pytest

from lab.screens.benches.plate.gallery import entries
from lab.screens.gallery_parts import Entry
from lab.ui.geometry import Rect
from lab.ui.theme import THEMES

SIZES = ((1280, 720), (1024, 600), (1080, 1920), (3840, 2160))
ENTRIES: Mapping[str, Entry] = dict(entries())
TELLING = ("held", "all", "crossed", "crossed-held", "hole-picked", "clip-picked", "taken-up", "sheet")
"""States that between them show everything there is."""


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("scale", [1.0, 1.5, 2.0])
@pytest.mark.parametrize("language", ["en", "xx", "xr"])
def test_no_text_is_clipped_covered_or_faint_and_no_target_too_small(
    size: tuple[int, int], scale: float, language: str, seen: Any
):
    for name in TELLING:
        shown = seen(ENTRIES[f"build-plate-{name}"].make, size=size, text_scale=scale, language=language)
        assert shown.faults == [], name


@pytest.mark.parametrize("theme", sorted(THEMES))
@pytest.mark.parametrize("name", sorted(ENTRIES))
def test_every_theme_shows_every_state(name: str, theme: str, seen: Any):
    assert seen(ENTRIES[name].make, theme=theme).faults == []


@pytest.mark.parametrize("size", [(1280, 720), (1024, 600)])
@pytest.mark.parametrize("name", ["held", "crossed-held", "hole-picked"])
def test_every_body_can_be_grabbed_within_the_picture(size: tuple[int, int], name: str, seen: Any):
    shown = seen(ENTRIES[f"build-plate-{name}"].make, size=size)
    handles = shown.handles
    assert len(handles) > 8
    for node in handles:
        assert Rect(*shown.bounds("picture")).holds(Rect(*node.bounds)), node.key
