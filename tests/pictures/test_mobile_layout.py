"""The mobile's screen at every size, text scale, language and theme: nothing clipped, nothing upon anything."""

from typing import Any

import pytest

from lab.screens.benches.mobile.gallery import entries
from lab.ui.theme import THEMES

ENTRIES = dict(entries())
SIZES = ((1280, 720), (1024, 600), (1080, 1920), (3840, 2160))
FEW = ("build-mobile-held", "build-mobile-deep-settled", "build-mobile-crowded", "build-mobile-bar-picked")


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("text_scale", [1.0, 1.5, 2.0])
@pytest.mark.parametrize("language", ["en", "xr"])
def test_no_text_is_clipped_covered_or_faint_and_no_target_too_small(
    size: tuple[int, int], text_scale: float, language: str, seen: Any
):
    for name in FEW:
        shown = seen(ENTRIES[name].make, size=size, text_scale=text_scale, language=language)
        assert shown.faults == [], name


@pytest.mark.parametrize("name", ENTRIES)
def test_every_state_has_room_in_a_small_window(name: str, seen: Any):
    make = ENTRIES[name].make
    for theme in THEMES:
        assert seen(make, size=(1024, 600), theme=theme).faults == [], theme
    assert seen(make, size=(1024, 600), text_scale=2.0, language="xx").faults == []
