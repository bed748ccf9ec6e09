"""The hanging bar's screen at every size, text scale, language and theme: nothing clipped, nothing upon anything."""

from typing import Any

import pytest

from lab.outline.words import Words
from lab.screens.benches.screen import FreeBuildScreen
from lab.screens.screen import BuildModel, Setting
from lab.simulation import Guess, Hang, LetGo, MovePivot, MoveReference, Session, SetHold
from lab.simulation.benches.bar_builds import workshop_bar
from lab.simulation.benches.bar_parts import filled_kg, strung_kg
from lab.simulation.part_commands import Reweigh
from lab.simulation.tool_commands import FitPart
from lab.ui.events import PointerDown, PointerUp
from lab.ui.layout_check import faults_on
from lab.ui.list_canvas import ListCanvas
from lab.ui.look import Look
from lab.ui.sizes import Sizes
from lab.ui.theme import THEMES

SIZES = ((1280, 720), (1024, 600), (1080, 1920), (3840, 2160))
STATES: dict[str, tuple[Any, ...]] = {
    "held": (),
    "tipped": (Guess("level"), LetGo(at_once=True)),
    "level": (MovePivot(0.444), LetGo(at_once=True)),
    "crowded": (
        Hang(0.5, 0.15), Hang(0.05, 0.16), Hang(0.2, 0.17), Hang(0.1, 0.5, "clamped"), Hang(0.5, 0.98),
        Hang(0.05, 0.0), SetHold(2, "clamped"), MoveReference(0.55),
    ),
    "other parts": (
        FitPart("tin", 0.2), FitPart("beads", 0.36), FitPart("rod", 0.62), FitPart("plate", 0.86),
        Reweigh(4, filled_kg(250.0)), Reweigh(5, strung_kg(10)),
    ),
    "at the end": (MovePivot(0.02), MoveReference(1.02), LetGo(at_once=True)),
}  # fmt: skip


class Shown:
    """The screen in a state."""

    def __init__(
        self,
        *,
        size: tuple[int, int] = (1280, 720),
        text_scale: float = 1.0,
        language: str = "en",
        theme: str = "paper",
        view: Any = "all",
        units: Any = "",
        state: str = "held",
        press: str = "",
    ) -> None:
        words = Words(language)
        sizes = Sizes(*size, text_scale=text_scale, mirrored=words.mirrored)
        self.look = Look(THEMES[theme], sizes, words)
        session = Session(workshop_bar(view=view))
        for command in STATES[state]:
            assert session.do(command) is None
        setting = Setting(text_scale=text_scale, theme=theme, language=language, units=units)  # type: ignore[arg-type]
        self.screen = FreeBuildScreen(self.look)
        self.screen.show(BuildModel(setting=setting, bench=session.state, previous=session.previous))
        if press:
            x, y, width, height = next(n for n in _walk(self.screen.outline()) if n.key == press).bounds
            for event in (PointerDown, PointerUp):
                self.screen.handle(event(0, x + width / 2, y + height / 2))
        self.canvas = ListCanvas(size)
        self.screen.draw(self.canvas)

    @property
    def faults(self) -> list[str]:
        return faults_on(self.canvas.ops, self.screen.outline(), self.look)


def _walk(node: Any) -> Any:
    yield node
    for child in node.children:
        yield from _walk(child)


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("text_scale", [1.0, 1.5, 2.0])
@pytest.mark.parametrize("language", ["en", "xx", "xr"])
def test_no_text_is_clipped_covered_or_faint_and_no_target_too_small(
    size: tuple[int, int], text_scale: float, language: str
):
    for view, state in (
        ("plain", "held"),
        ("all", "held"),
        ("numbers", "tipped"),
        ("all", "crowded"),
        ("plain", "other parts"),
    ):
        shown = Shown(size=size, text_scale=text_scale, language=language, view=view, state=state)
        assert shown.faults == [], (view, state)


@pytest.mark.parametrize("theme", sorted(THEMES))
@pytest.mark.parametrize("state", sorted(STATES))
def test_every_theme_shows_every_state(theme: str, state: str):
    assert Shown(theme=theme, state=state).faults == []


@pytest.mark.parametrize("units", ["kg-m", "N-m", "lb-in"])
@pytest.mark.parametrize("size", [(1280, 720), (1024, 600)])
def test_longer_units_have_room_too(units: str, size: tuple[int, int]):
    assert Shown(units=units, size=size, state="crowded").faults == []


@pytest.mark.parametrize("press", ["weight-2", "pivot", "tray-200", "builds", "looks", "help"])
@pytest.mark.parametrize("view", ["plain", "all"])
@pytest.mark.parametrize(("size", "language"), [((1280, 720), "en"), ((1024, 600), "xx"), ((1080, 1920), "xr")])
def test_what_is_picked_taken_up_or_asked_has_room(press: str, view: str, size: tuple[int, int], language: str):
    assert Shown(press=press, view=view, size=size, language=language).faults == []


@pytest.mark.parametrize("press", ["weight-4", "weight-5", "weight-6", "weight-7", "shelf.tins", "shelf.more"])
@pytest.mark.parametrize("text_scale", [1.0, 1.5, 2.0])
@pytest.mark.parametrize(("size", "language"), [((1280, 720), "en"), ((1024, 600), "xx"), ((1080, 1920), "xr")])
def test_other_parts_and_their_shelves_have_room(press: str, text_scale: float, size: tuple[int, int], language: str):
    shown = Shown(press=press, view="plain", size=size, language=language, state="other parts", text_scale=text_scale)
    assert shown.faults == []


def test_in_a_mirrored_language_the_panel_changes_sides_and_the_bar_does_not():
    usual, mirrored = Shown(), Shown(language="xr")

    def find(shown: Shown, key: str) -> Any:
        return next(node for node in _walk(shown.screen.outline()) if node.key == key).bounds

    assert find(usual, "let-go")[0] > find(usual, "pivot")[0]
    assert find(mirrored, "let-go")[0] < find(mirrored, "pivot")[0]
    for shown in (usual, mirrored):
        assert find(shown, "weight-1")[0] < find(shown, "pivot")[0] < find(shown, "weight-3")[0]
        assert find(shown, "guess.left")[0] < find(shown, "guess.right")[0]


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("text_scale", [1.0, 2.0])
def test_the_picture_keeps_a_usable_size(size: tuple[int, int], text_scale: float):
    shown = Shown(size=size, text_scale=text_scale)
    _, _, width, height = next(n for n in _walk(shown.screen.outline()) if n.key == "picture").bounds
    assert width >= 0.45 * size[0]
    # Less than that leaves no room for the bar to tip.
    assert height >= 380


def test_nothing_is_drawn_anew_in_a_moving_frame_but_what_turns():
    session = Session(workshop_bar(view="all"))
    words = Words()
    look = Look(THEMES["paper"], Sizes(1280, 720), words)
    screen = FreeBuildScreen(look)
    session.do(LetGo())
    frames = []
    for _ in range(3):
        session.advance(16_000_000)
        screen.show(
            BuildModel(setting=Setting(), bench=session.state, previous=session.previous, fraction=session.fraction)
        )
        canvas = ListCanvas((1280, 720))
        screen.draw(canvas)
        frames.append(canvas.ops)
    areas = [[op for op in ops if op.bounds.y > 545 and op.bounds.right < 880] for ops in frames]
    assert areas[0] == areas[1] == areas[2]
    assert frames[0] != frames[2]
