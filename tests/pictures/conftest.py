"""Screens seen in a window of any size, in any text scale, language and theme, without one."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

import pytest

from lab.outline.node import Node, find
from lab.outline.words import Words
from lab.screens.benches.gallery_parts import pressed
from lab.screens.benches.screen import FreeBuildScreen
from lab.screens.gallery_parts import Drawn
from lab.screens.screen import BuildModel, Setting
from lab.simulation import LetGo, Session
from lab.ui.layout_check import faults_on
from lab.ui.list_canvas import ListCanvas
from lab.ui.look import Look
from lab.ui.sizes import Sizes
from lab.ui.theme import THEMES


class Seen:
    """A screen as it is drawn."""

    def __init__(
        self,
        make: Callable[[Look], Drawn],
        *,
        size: tuple[int, int] = (1280, 720),
        text_scale: float = 1.0,
        language: str = "en",
        theme: str = "paper",
    ) -> None:
        """make: the screen, ready to be drawn, as entries of the gallery make theirs."""
        words = Words(language)
        self.look = Look(THEMES[theme], Sizes(*size, text_scale=text_scale, mirrored=words.mirrored), words)
        self.screen, self.canvas = make(self.look), ListCanvas(size)
        self.screen.draw(self.canvas)

    @property
    def outline(self) -> Node:
        """What is on it."""
        return self.screen.outline()

    @property
    def faults(self) -> list[str]:
        """What nobody could read or press."""
        return faults_on(self.canvas.ops, self.outline, self.look)

    def bounds(self, key: str) -> tuple[float, float, float, float]:
        """Where one thing on it is."""
        node = find(self.outline, key)
        if node is None:
            raise AssertionError(f"no {key} on the screen")
        return node.bounds

    @property
    def handles(self) -> list[Node]:
        """What can be grabbed in its picture."""
        picture = find(self.outline, "picture")
        return [] if picture is None else [node for node in picture.children if node.role == "handle"]


def bench_of(bench: Any, *press_keys: str, units: Any = "") -> Callable[[Look], Drawn]:
    """Makes free build with a bench, after one press after the other.  units: what is chosen, "" for the bench's."""

    def make(look: Look) -> Drawn:
        screen = FreeBuildScreen(look)
        screen.show(BuildModel(setting=Setting(units=units), bench=bench, previous=bench))
        return pressed(screen, press_keys)

    return make


def moving_frames(bench: Any) -> Sequence[Sequence[Any]]:
    """What is drawn in three frames after a bench was let go."""
    session = Session(bench)
    screen = FreeBuildScreen(Look(THEMES["paper"], Sizes(1280, 720), Words()))
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
    return frames


@pytest.fixture(name="seen")
def _seen() -> type[Seen]:
    """A screen as it is drawn."""
    return Seen


@pytest.fixture(name="bench_of")
def _bench_of() -> Callable[..., Callable[[Look], Drawn]]:
    """Makes free build with a bench."""
    return bench_of


@pytest.fixture(name="moving_frames")
def _moving_frames() -> Callable[[Any], Sequence[Sequence[Any]]]:
    """What is drawn in three frames after a bench was let go."""
    return moving_frames
