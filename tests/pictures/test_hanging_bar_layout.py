"""The hanging bar's screen at every size, text scale, language and theme: nothing clipped, nothing upon anything."""

from collections.abc import Callable
from typing import Any

import pytest

from lab.simulation import Guess, Hang, LetGo, MovePivot, MoveReference, Session, SetHold
from lab.simulation.benches.bar_builds import workshop_bar
from lab.simulation.benches.bar_parts import filled_kg, strung_kg
from lab.simulation.part_commands import Reweigh
from lab.simulation.tool_commands import FitPart
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


Shown = Callable[..., Any]


@pytest.fixture
def shown(seen: Any, bench_of: Any) -> Shown:
    """The screen in a state."""

    def drawn(*press_keys: str, view: Any = "all", units: Any = "", state: str = "held", **window: Any) -> Any:
        session = Session(workshop_bar(view=view))
        for command in STATES[state]:
            assert session.do(command) is None
        return seen(bench_of(session.state, *press_keys, units=units), **window)

    return drawn


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("text_scale", [1.0, 1.5, 2.0])
@pytest.mark.parametrize("language", ["en", "xx", "xr"])
def test_no_text_is_clipped_covered_or_faint_and_no_target_too_small(
    size: tuple[int, int], text_scale: float, language: str, shown: Shown
):
    for view, state in (
        ("plain", "held"),
        ("all", "held"),
        ("numbers", "tipped"),
        ("all", "crowded"),
        ("plain", "other parts"),
    ):
        drawn = shown(size=size, text_scale=text_scale, language=language, view=view, state=state)
        assert drawn.faults == [], (view, state)


@pytest.mark.parametrize("theme", sorted(THEMES))
@pytest.mark.parametrize("state", sorted(STATES))
def test_every_theme_shows_every_state(theme: str, state: str, shown: Shown):
    assert shown(theme=theme, state=state).faults == []


@pytest.mark.parametrize("units", ["kg-m", "N-m", "lb-in"])
@pytest.mark.parametrize("size", [(1280, 720), (1024, 600)])
def test_longer_units_have_room_too(units: str, size: tuple[int, int], shown: Shown):
    assert shown(units=units, size=size, state="crowded").faults == []


@pytest.mark.parametrize("press", ["weight-2", "pivot", "tray-200", "builds", "looks", "help"])
@pytest.mark.parametrize("view", ["plain", "all"])
@pytest.mark.parametrize(("size", "language"), [((1280, 720), "en"), ((1024, 600), "xx"), ((1080, 1920), "xr")])
def test_what_is_picked_taken_up_or_asked_has_room(
    press: str, view: str, size: tuple[int, int], language: str, shown: Shown
):
    assert shown(press, view=view, size=size, language=language).faults == []


@pytest.mark.parametrize("press", ["weight-4", "weight-5", "weight-6", "weight-7", "shelf.tins", "shelf.more"])
@pytest.mark.parametrize("text_scale", [1.0, 1.5, 2.0])
@pytest.mark.parametrize(("size", "language"), [((1280, 720), "en"), ((1024, 600), "xx"), ((1080, 1920), "xr")])
def test_other_parts_and_their_shelves_have_room(
    press: str, text_scale: float, size: tuple[int, int], language: str, shown: Shown
):
    drawn = shown(press, view="plain", size=size, language=language, state="other parts", text_scale=text_scale)
    assert drawn.faults == []


@pytest.mark.parametrize("part", ["weight-4", "weight-5", "weight-6", "weight-7"])
@pytest.mark.parametrize("then", [("picked-more",), ("picked-more", "picked-tie")])
@pytest.mark.parametrize("text_scale", [1.0, 2.0])
@pytest.mark.parametrize(("size", "language"), [((1280, 720), "en"), ((1024, 600), "xx"), ((1080, 1920), "xr")])
def test_what_else_can_be_done_to_each_kind_has_room(
    part: str, then: tuple[str, ...], text_scale: float, size: tuple[int, int], language: str, shown: Shown
):
    drawn = shown(part, *then, view="plain", size=size, language=language, state="other parts", text_scale=text_scale)
    assert drawn.faults == []


def test_in_a_mirrored_language_the_panel_changes_sides_and_the_bar_does_not(shown: Shown):
    usual, mirrored = shown(), shown(language="xr")
    assert usual.bounds("let-go")[0] > usual.bounds("pivot")[0]
    assert mirrored.bounds("let-go")[0] < mirrored.bounds("pivot")[0]
    for drawn in (usual, mirrored):
        assert drawn.bounds("weight-1")[0] < drawn.bounds("pivot")[0] < drawn.bounds("weight-3")[0]
        assert drawn.bounds("guess.left")[0] < drawn.bounds("guess.right")[0]


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("text_scale", [1.0, 2.0])
def test_the_picture_keeps_a_usable_size(size: tuple[int, int], text_scale: float, shown: Shown):
    _, _, width, height = shown(size=size, text_scale=text_scale).bounds("picture")
    assert width >= 0.45 * size[0]
    # Less than that leaves no room for the bar to tip.
    assert height >= 380


def test_nothing_is_drawn_anew_in_a_moving_frame_but_what_turns(moving_frames: Any):
    frames = moving_frames(workshop_bar(view="all"))
    areas = [[op for op in ops if op.bounds.y > 545 and op.bounds.right < 880] for ops in frames]
    assert areas[0] == areas[1] == areas[2]
    assert frames[0] != frames[2]
