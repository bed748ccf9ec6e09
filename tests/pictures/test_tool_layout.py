"""The tool's screen at every size, text scale, language and theme: nothing clipped, nothing upon anything."""

from collections.abc import Mapping
from dataclasses import replace

import pytest

from lab.outline.node import find
from lab.outline.words import Words
from lab.screens.benches.screen import FreeBuildScreen
from lab.screens.benches.tool.gallery import crowded, entries
from lab.screens.gallery_parts import SETTING, Drawn, Entry
from lab.screens.screen import BuildModel
from lab.simulation import LetGo, Session
from lab.simulation.benches.tool_builds import workshop_tool
from lab.ui.geometry import Rect
from lab.ui.layout_check import faults_on
from lab.ui.list_canvas import ListCanvas
from lab.ui.look import Look
from lab.ui.sizes import Sizes
from lab.ui.theme import THEMES

SIZES = ((1280, 720), (1024, 600), (1080, 1920), (3840, 2160))
ENTRIES: Mapping[str, Entry] = dict(entries())
TELLING = ("held", "all", "crowded", "fallen", "doubt", "pole-picked", "brass-picked", "taken-up", "handles", "more")
"""States that between them show everything there is."""


def drawn(
    name: str, *, size: tuple[int, int] = (1280, 720), scale: float = 1.0, language: str = "en", theme: str = "paper"
) -> tuple[Drawn, list[str]]:
    words = Words(language)
    look = Look(THEMES[theme], Sizes(*size, text_scale=scale, mirrored=words.mirrored), words)
    screen = ENTRIES[f"build-tool-{name}"].make(look)
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
    faults = {name: drawn(name.removeprefix("build-tool-"), theme=theme)[1] for name in ENTRIES}
    assert not {name: found for name, found in faults.items() if found}


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("name", ["held", "all", "crowded", "pole-picked"])
def test_every_body_can_be_grabbed_within_the_picture(size: tuple[int, int], name: str):
    screen, _ = drawn(name, size=size)
    picture = find(screen.outline(), "picture")
    assert picture is not None
    handles = [node for node in picture.children if node.role == "handle"]
    assert len(handles) >= 4
    for node in handles:
        assert Rect(*picture.bounds).holds(Rect(*node.bounds), 1.0), node.key


@pytest.mark.parametrize("units", ["kg-m", "N-m", "lb-in"])
@pytest.mark.parametrize("size", [(1280, 720), (1024, 600)])
def test_longer_units_have_room_too(units: str, size: tuple[int, int]):
    look = Look(THEMES["paper"], Sizes(*size), Words())
    bench = replace(crowded(), units=units)
    screen = FreeBuildScreen(look)
    screen.show(BuildModel(setting=replace(SETTING, units=units), bench=bench, previous=bench))
    canvas = ListCanvas(size)
    screen.draw(canvas)
    assert faults_on(canvas.ops, screen.outline(), look) == []


def test_nothing_is_drawn_anew_in_a_moving_frame_but_what_moves():
    session = Session(workshop_tool(view="numbers"))
    look = Look(THEMES["paper"], Sizes(1280, 720), Words())
    screen = FreeBuildScreen(look)
    session.do(LetGo())
    frames = []
    for _ in range(3):
        session.advance(16_000_000)
        screen.show(
            BuildModel(setting=SETTING, bench=session.state, previous=session.previous, fraction=session.fraction)
        )
        canvas = ListCanvas((1280, 720))
        screen.draw(canvas)
        frames.append(canvas.ops)
    panels = [[op for op in ops if op.bounds.x > 882] for ops in frames]
    assert panels[0] == panels[1] == panels[2]
    assert frames[0] != frames[2]
