"""Every question, list and start screen in the sizes, text scales, themes and languages that are promised."""

import pytest

from lab.outline import Words, walk
from lab.screens.gallery import GALLERY
from lab.ui.layout_check import faults_on
from lab.ui.list_canvas import ListCanvas
from lab.ui.look import Look
from lab.ui.sizes import Sizes
from lab.ui.theme import THEMES

# Free build is drawn by its own tests. What flies through the picture may pass in front of a figure.
NAMES = [name for name in GALLERY if not name.startswith("build-") and not name.endswith("-locked")]
MOVING = [name for name in GALLERY if name.endswith("-locked")]
# Each promised size, scale, theme and language at least once, and the worst of them together.
WINDOWS = {
    "usual": ((1280, 720), 1.0, "paper", "en"),
    "small, large text, long words": ((1024, 600), 2.0, "contrast", "xx"),
    "high, mirrored": ((1080, 1920), 1.5, "print", "xr"),
}
STRIDES = {"usual": 3, "small, large text, long words": 1, "high, mirrored": 3}
FEW = {
    "small": ((1024, 600), 1.0, "paper", "en"),
    "small, larger text": ((1024, 600), 1.5, "paper", "xx"),
    "very large": ((3840, 2160), 1.0, "contrast", "en"),
    "high, large text": ((1080, 1920), 2.0, "paper", "xx"),
    "mirrored": ((1280, 720), 1.5, "paper", "xr"),
}


def look_of(size: tuple[int, int], scale: float, theme: str, language: str) -> Look:
    words = Words(language)
    sizes = Sizes(*size, text_scale=scale, mirrored=words.mirrored)
    return Look(theme=THEMES[theme], sizes=sizes, words=words)


def faults(name: str, look: Look) -> list[str]:
    screen = GALLERY[name].make(look)
    canvas = ListCanvas((int(look.sizes.width), int(look.sizes.height)))
    screen.draw(canvas)
    return [f"{name}: {fault}" for fault in faults_on(canvas.ops, screen.outline(), look)]


@pytest.mark.parametrize("window", WINDOWS)
def test_no_text_is_clipped_covered_or_faint_and_no_target_too_small(window):
    # All of them in the hardest window; in the others every third, so that with eight states each comes up.
    look, stride = look_of(*WINDOWS[window]), STRIDES[window]
    assert [fault for name in NAMES[::stride] for fault in faults(name, look)] == []


@pytest.mark.parametrize("window", FEW)
def test_nor_is_it_in_any_other_window(window):
    # Every nineteenth state: the kinds of state are eight, so each comes up with another question.
    look = look_of(*FEW[window])
    assert [fault for name in NAMES[::19] for fault in faults(name, look)] == []


def test_while_something_moves_nothing_but_the_picture_changes_place():
    look = look_of((1280, 720), 1.0, "paper", "en")
    for name in MOVING:
        assert [fault for fault in faults(name, look) if "covered" not in fault and "lies on text" not in fault] == []


@pytest.mark.parametrize("scale", [1.0, 2.0])
def test_the_one_action_is_on_the_screen_without_scrolling(scale):
    look = look_of((1024, 600), scale, "paper", "xx")
    for name in NAMES[:: 3 if scale == 1.0 else 1]:
        for node in walk(GALLERY[name].make(look).outline()):
            if node.key in ("lock", "next", "go-on", "to-lessons") and node.role == "button" and name != "start":
                x, y, w, h = node.bounds
                if name.startswith("start"):
                    continue
                assert y >= 0, name
                assert y + h <= 600.5, name
                assert x + w <= 1024.5, name


def test_every_entry_of_the_gallery_says_what_it_shows_and_has_a_name_of_one_word():
    for name, entry in GALLERY.items():
        assert name == name.strip()
        assert " " not in name
        assert entry.says
