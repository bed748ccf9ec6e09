"""The two fingers' screen at every size, text scale, language and theme: nothing clipped, nothing upon anything."""

from dataclasses import replace
from typing import Any

import pytest

from lab.screens.benches.two_fingers.gallery import PRESSED, STATES
from lab.simulation.benches.two_fingers_builds import workshop_pole
from lab.ui.theme import THEMES

SIZES = ((1280, 720), (1024, 600), (1080, 1920), (3840, 2160))
HARD = ("said", "numbers-sliding", "met", "tipped", "crowded", "oar-met")
"""States that differ in what must find room."""


@pytest.fixture
def shown(seen: Any, bench_of: Any) -> Any:
    """The screen in a state."""

    def drawn(bench: Any, *press_keys: str, units: Any = "", **window: Any) -> Any:
        return seen(bench_of(bench, *press_keys, units=units), **window)

    return drawn


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize(("text_scale", "language"), [(1.0, "en"), (1.0, "xx"), (1.5, "xr"), (2.0, "xx")])
def test_no_text_is_clipped_covered_or_faint_and_no_target_too_small(
    size: tuple[int, int], text_scale: float, language: str, shown: Any
):
    for state in HARD:
        drawn = shown(STATES[state][1](), size=size, text_scale=text_scale, language=language)
        assert drawn.faults == [], state


@pytest.mark.parametrize("theme", sorted(THEMES))
@pytest.mark.parametrize("state", sorted(STATES))
def test_every_theme_shows_every_state(theme: str, state: str, shown: Any):
    assert shown(STATES[state][1](), theme=theme).faults == []


@pytest.mark.parametrize("units", ["kg-m", "N-m", "lb-in"])
@pytest.mark.parametrize("size", [(1280, 720), (1024, 600)])
def test_longer_units_have_room_too(units: str, size: tuple[int, int], shown: Any):
    for state in ("numbers-sliding", "met", "crowded"):
        assert shown(STATES[state][1](), units=units, size=size).faults == [], state


@pytest.mark.parametrize(("keys", "view"), [(keys, view) for _, keys, view, _ in PRESSED])
@pytest.mark.parametrize(("size", "language"), [((1280, 720), "en"), ((1024, 600), "xx"), ((1080, 1920), "xr")])
def test_what_is_picked_taken_up_or_asked_has_room(
    keys: tuple[str, ...], view: Any, size: tuple[int, int], language: str, shown: Any
):
    drawn = shown(replace(workshop_pole(), view=view), *keys, size=size, language=language)
    assert drawn.faults == []
    # Under the strip for what is picked there is still a picture.
    assert drawn.bounds("picture")[3] >= 200


def test_a_trace_stands_under_its_finger(shown: Any):
    drawn = shown(STATES["numbers-sliding"][1]())
    _, top, _, _ = drawn.bounds("areas")
    for key in ("finger-left", "finger-right"):
        dots = [
            op.bounds.x + op.bounds.w / 2
            for op in drawn.canvas.ops
            if type(op).__name__ == "CircleOp" and op.bounds.y > top
        ]
        box = drawn.bounds(key)
        # The foot reaches outwards from the finger: its inner edge is the finger's, half a finger from the place.
        inner = box[0] + box[2] if key == "finger-left" else box[0]
        assert min(abs(x - inner) for x in dots) <= 16


def test_nothing_but_the_pictures_is_laid_out_anew_in_a_moving_frame(moving_frames: Any):
    frames = moving_frames(workshop_pole())
    panels = [[op for op in ops if op.bounds.x > 884] for ops in frames]
    assert panels[0] == panels[1] == panels[2]
    assert frames[0] != frames[2]
