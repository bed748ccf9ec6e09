"""The airframe bench in every state, size, text scale, language and theme: nothing clipped, nothing covered."""

from typing import Any

import pytest

from lab.screens.benches.airframe.gallery import entries
from lab.ui.theme import THEMES

ENTRIES = dict(entries())
SIZES = ((1280, 720), (1024, 600), (1080, 1920))


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize(("text_scale", "language"), [(1.0, "en"), (1.0, "xx"), (1.5, "xr"), (2.0, "en"), (2.0, "xx")])
def test_no_text_is_clipped_covered_or_faint_and_no_target_too_small(
    size: Any, text_scale: float, language: str, seen: Any
):
    for name, entry in ENTRIES.items():
        assert seen(entry.make, size=size, text_scale=text_scale, language=language).faults == [], name


@pytest.mark.parametrize("theme", sorted(THEMES))
@pytest.mark.parametrize("name", sorted(ENTRIES))
def test_every_theme_shows_every_state(name: str, theme: str, seen: Any):
    assert seen(ENTRIES[name].make, theme=theme).faults == []
