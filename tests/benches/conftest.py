"""Benches played by a pointer and by the keyboard, with no window and no sleep."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from lab.outline.words import Words
from lab.screens.benches.screen import FreeBuildScreen
from lab.screens.intents import Do
from lab.screens.screen import BuildModel, Setting
from lab.simulation import Session
from lab.ui.events import Key, PointerDown, PointerUp
from lab.ui.list_canvas import ListCanvas
from lab.ui.look import Look
from lab.ui.sizes import Sizes
from lab.ui.theme import THEMES


class Played:
    """The bench's screen, and a session that does what it asks for."""

    def __init__(self, bench: Any) -> None:
        self.session = Session(bench)
        self.screen = FreeBuildScreen(Look(THEMES["paper"], Sizes(1280, 720), Words()))
        self._show()

    def _show(self) -> None:
        model = BuildModel(setting=Setting(), bench=self.session.state, previous=self.session.previous)
        self.screen.show(model)
        self.screen.draw(ListCanvas((1280, 720)))

    @property
    def bench(self) -> Any:
        return self.session.state

    def send(self, *events: Any) -> None:
        for event in events:
            for intent in self.screen.handle(event).intents:
                if isinstance(intent, Do):
                    self.session.do(intent.command)
            self._show()

    def keys(self, *names: str) -> None:
        self.send(*(Key(name) for name in names))

    def middle(self, key: str) -> tuple[float, float]:
        x, y, wide, high = next(node for node in _walk(self.screen.outline()) if node.key == key).bounds
        return x + wide / 2, y + high / 2

    def press(self, key: str) -> None:
        x, y = self.middle(key)
        self.send(PointerDown(0, x, y), PointerUp(0, x, y))

    def tab_to(self, key: str) -> None:
        for _ in range(80):
            node = next((node for node in _walk(self.screen.outline()) if "focused" in node.state), None)
            if node is not None and node.key == key:
                return
            self.keys("tab")
        raise AssertionError(key)


def _walk(node: Any) -> Any:
    yield node
    for child in node.children:
        yield from _walk(child)


@pytest.fixture
def play() -> Callable[[Any], Played]:
    """The bench's screen, and a session that does what it asks for."""
    return Played
