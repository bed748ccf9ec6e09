"""The course and the learner's code in high and small windows: they fit, and all of them can be reached."""

import pytest

from lab.outline import Words, find
from lab.screens.gallery import GALLERY
from lab.ui.events import Key, PointerDown, PointerMove, PointerUp, Wheel
from lab.ui.layout_check import faults_on
from lab.ui.list_canvas import ListCanvas
from lab.ui.look import Look
from lab.ui.sizes import Sizes
from lab.ui.theme import THEMES

NAMES = [name for name in GALLERY if name.startswith(("lessons", "learner"))]
WINDOWS = {
    "high": ((720, 1280), 1.0, "paper", "xr"),
    "high, large text": ((720, 1280), 2.0, "contrast", "en"),
    "small": ((1024, 600), 1.0, "print", "xx"),
    "small, large text": ((1024, 600), 2.0, "paper", "xr"),
}


def look_of(size, scale=1.0, theme="paper", language="en") -> Look:
    words = Words(language)
    sizes = Sizes(*size, text_scale=scale, mirrored=words.mirrored)
    return Look(theme=THEMES[theme], sizes=sizes, words=words)


@pytest.mark.parametrize("window", WINDOWS)
def test_nothing_is_clipped_covered_or_too_small(window):
    look = look_of(*WINDOWS[window])
    found = []
    for name in NAMES:
        screen, canvas = GALLERY[name].make(look), ListCanvas((int(look.sizes.width), int(look.sizes.height)))
        screen.draw(canvas)
        found += [f"{name}: {fault}" for fault in faults_on(canvas.ops, screen.outline(), look)]
    assert found == []


def test_all_groups_are_surveyed_at_once_in_the_usual_window():
    outline = GALLERY["lessons-next"].make(look_of((1280, 720))).outline()
    tops = {find(outline, f"group-{number}").bounds[1] for number in range(3)}
    assert len(tops) == 1, "the groups stand beside each other"


def top_of(screen, key: str) -> float:
    return float(find(screen.outline(), key).bounds[1])


def test_the_list_scrolls_by_wheel_and_by_finger():
    screen = GALLERY["lessons-next"].make(look_of((1024, 600), 2.0))
    before = top_of(screen, "offer-panel")
    screen.handle(Wheel(500, 400, -3))
    after_wheel = top_of(screen, "offer-panel")
    assert after_wheel < before
    screen.handle(PointerDown(1, 500, 500))
    for y in range(490, 200, -10):
        screen.handle(PointerMove(1, 500, y))
    screen.handle(PointerUp(1, 500, 200))
    assert top_of(screen, "offer-panel") < after_wheel


def test_by_keys_the_last_thing_on_the_page_comes_into_view():
    screen = GALLERY["lessons-next"].make(look_of((1024, 600), 2.0))
    for _ in range(80):
        screen.handle(Key("tab"))
        node = find(screen.outline(), "learner")
        if "focused" in node.state:
            break
    assert "focused" in node.state
    assert 0 <= node.bounds[1] <= 600 - node.bounds[3]
