"""The dialog that leads to the benches: a card and a picture for each, and the one where one is stands out."""

from typing import Any

import pytest

from lab.outline.node import walk
from lab.outline.words import Words
from lab.screens.benches.bench_pictures import bench_picture
from lab.screens.gallery import GALLERY
from lab.simulation.benches.catalogue import BENCHES
from lab.ui.geometry import Rect
from lab.ui.layout_check import faults_on
from lab.ui.list_canvas import ListCanvas
from lab.ui.look import Look
from lab.ui.sizes import Sizes
from lab.ui.theme import THEMES

SHAPES = ((1280, 720, 1.0, "en"), (1024, 600, 1.0, "xx"), (1280, 720, 1.5, "xr"), (1080, 1920, 2.0, "en"))


def _cards(pilot: Any) -> dict[str, Any]:
    return {node.key: node for node in walk(pilot.outline) if node.key in {f"bench-{name}" for name in BENCHES}}


def test_every_bench_has_its_card_and_the_present_one_is_told_by_words(pilot: Any):
    pilot.press("to-build")
    pilot.press("benches")
    assert len(_cards(pilot)) == len(BENCHES)
    assert [key for key, node in _cards(pilot).items() if "selected" in node.state] == ["bench-bar"]
    assert pilot.draw().text_lines().count("You are here.") == 1


def test_a_card_leads_to_its_bench_and_is_the_present_one_there(pilot: Any):
    pilot.press("to-build")
    for name in BENCHES:
        pilot.press("benches")
        pilot.press(f"bench-{name}")
        pilot.press("benches")
        assert [key for key, node in _cards(pilot).items() if "selected" in node.state] == [f"bench-{name}"]
        pilot.press("benches-done")


def test_no_two_benches_have_the_same_picture():
    look = Look(THEMES["paper"], Sizes(1280, 720), Words())
    pictures = []
    for name in BENCHES:
        canvas = ListCanvas((100, 100))
        bench_picture(look, name)(canvas, Rect(0, 0, 100, 100))
        assert len(canvas.ops) > 3
        pictures.append(tuple(canvas.ops))
    assert len(set(pictures)) == len(BENCHES)


@pytest.mark.parametrize("theme", ["paper", "contrast", "print"])
@pytest.mark.parametrize(("width", "height", "scale", "language"), SHAPES)
def test_the_cards_lie_well(width: int, height: int, scale: float, language: str, theme: str):
    words = Words(language)
    sizes = Sizes(width, height, text_scale=scale, mirrored=words.mirrored)
    look = Look(THEMES[theme], sizes, words)
    screen = GALLERY["build-benches"].make(look)
    canvas = ListCanvas((width, height))
    screen.draw(canvas)
    assert faults_on(canvas.ops, screen.outline(), look) == []
