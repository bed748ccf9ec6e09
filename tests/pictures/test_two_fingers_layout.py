"""The two fingers' screen at every size, text scale, language and theme: nothing clipped, nothing upon anything."""

from dataclasses import replace
from typing import Any

import pytest

from lab.outline.node import find
from lab.outline.words import Words
from lab.screens.benches.gallery_parts import pressed
from lab.screens.benches.screen import FreeBuildScreen
from lab.screens.benches.two_fingers.gallery import PRESSED, STATES
from lab.screens.screen import BuildModel, Setting
from lab.simulation import LetGo, Session
from lab.simulation.benches.two_fingers import TwoFingers
from lab.simulation.benches.two_fingers_builds import workshop_pole
from lab.ui.layout_check import faults_on
from lab.ui.list_canvas import ListCanvas
from lab.ui.look import Look
from lab.ui.sizes import Sizes
from lab.ui.theme import THEMES

SIZES = ((1280, 720), (1024, 600), (1080, 1920), (3840, 2160))
HARD = ("said", "numbers-sliding", "met", "tipped", "crowded", "oar-met")
"""States that differ in what must find room."""


class Shown:
    """The screen in a state."""

    def __init__(
        self,
        bench: TwoFingers,
        *,
        size: tuple[int, int] = (1280, 720),
        text_scale: float = 1.0,
        language: str = "en",
        theme: str = "paper",
        units: Any = "",
        press_keys: tuple[str, ...] = (),
    ) -> None:
        words = Words(language)
        self.look = Look(THEMES[theme], Sizes(*size, text_scale=text_scale, mirrored=words.mirrored), words)
        setting = Setting(text_scale=text_scale, theme=theme, language=language, units=units)  # type: ignore[arg-type]
        self.screen = FreeBuildScreen(self.look)
        self.screen.show(BuildModel(setting=setting, bench=bench, previous=bench))
        pressed(self.screen, press_keys)
        self.canvas = ListCanvas(size)
        self.screen.draw(self.canvas)

    @property
    def faults(self) -> list[str]:
        return faults_on(self.canvas.ops, self.screen.outline(), self.look)


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize(("text_scale", "language"), [(1.0, "en"), (1.0, "xx"), (1.5, "xr"), (2.0, "xx")])
def test_no_text_is_clipped_covered_or_faint_and_no_target_too_small(
    size: tuple[int, int], text_scale: float, language: str
):
    for state in HARD:
        shown = Shown(STATES[state][1](), size=size, text_scale=text_scale, language=language)
        assert shown.faults == [], state


@pytest.mark.parametrize("theme", sorted(THEMES))
@pytest.mark.parametrize("state", sorted(STATES))
def test_every_theme_shows_every_state(theme: str, state: str):
    assert Shown(STATES[state][1](), theme=theme).faults == []


@pytest.mark.parametrize("units", ["kg-m", "N-m", "lb-in"])
@pytest.mark.parametrize("size", [(1280, 720), (1024, 600)])
def test_longer_units_have_room_too(units: str, size: tuple[int, int]):
    for state in ("numbers-sliding", "met", "crowded"):
        assert Shown(STATES[state][1](), units=units, size=size).faults == [], state


@pytest.mark.parametrize(("keys", "view"), [(keys, view) for _, keys, view, _ in PRESSED])
@pytest.mark.parametrize(("size", "language"), [((1280, 720), "en"), ((1024, 600), "xx"), ((1080, 1920), "xr")])
def test_what_is_picked_taken_up_or_asked_has_room(
    keys: tuple[str, ...], view: Any, size: tuple[int, int], language: str
):
    bench = replace(workshop_pole(), view=view)
    shown = Shown(bench, press_keys=keys, size=size, language=language)
    assert shown.faults == []
    # Under the strip for what is picked there is still a picture.
    picture = find(shown.screen.outline(), "picture")
    assert picture is not None
    assert picture.bounds[3] >= 200


def test_a_trace_stands_under_its_finger():
    shown = Shown(STATES["numbers-sliding"][1]())
    tree = shown.screen.outline()
    _, top, _, _ = find(tree, "areas").bounds
    for key in ("finger-left", "finger-right"):
        dots = [
            op.bounds.x + op.bounds.w / 2
            for op in shown.canvas.ops
            if type(op).__name__ == "CircleOp" and op.bounds.y > top
        ]
        box = find(tree, key).bounds
        # The foot reaches outwards from the finger: its inner edge is the finger's, half a finger from the place.
        inner = box[0] + box[2] if key == "finger-left" else box[0]
        assert min(abs(x - inner) for x in dots) <= 16


def test_nothing_but_the_pictures_is_laid_out_anew_in_a_moving_frame():
    session = Session(workshop_pole())
    look = Look(THEMES["paper"], Sizes(1280, 720), Words())
    screen = FreeBuildScreen(look)
    session.do(LetGo())
    frames = []
    for _ in range(3):
        session.advance(16_000_000)
        model = BuildModel(setting=Setting(), bench=session.state, previous=session.previous, fraction=session.fraction)
        screen.show(model)
        canvas = ListCanvas((1280, 720))
        screen.draw(canvas)
        frames.append(canvas.ops)
    panels = [[op for op in ops if op.bounds.x > 884] for ops in frames]
    assert panels[0] == panels[1] == panels[2]
    assert frames[0] != frames[2]
