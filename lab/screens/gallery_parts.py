"""What an entry of the gallery is, and how its screens are brought into a state."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Protocol, TypeVar

from lab.outline import Node
from lab.outline.node import find
from lab.screens.screen import Outcome, Screen, Setting
from lab.ui.canvas import Canvas
from lab.ui.events import Event, PointerDown, PointerUp
from lab.ui.look import Look

SETTING = Setting()
M = TypeVar("M")


class Drawn(Protocol):
    """A screen that has been shown its model."""

    def handle(self, event: Event) -> Outcome:
        """Answer an event."""

    def draw(self, canvas: Canvas) -> None:
        """Draw it."""

    def outline(self) -> Node:
        """Say what is on it."""


@dataclass(frozen=True, slots=True)
class Entry:
    """One state of one screen.  says: what it shows, a template.  make: the screen, ready to be drawn."""

    says: str
    make: Callable[[Look], Drawn]


def shown(screen: Screen[M], model: M) -> Drawn:
    """A screen with its model."""
    screen.show(model)
    return screen


def press(screen: Drawn, key: str) -> Drawn:
    """The screen after a press on one of its buttons.  Raises KeyError if there is none of that key."""
    node = find(screen.outline(), key)
    if node is None:
        raise KeyError(f"there is no {key!r} on this screen")
    x, y, w, h = node.bounds
    screen.handle(PointerDown(0, x + w / 2, y + h / 2))
    screen.handle(PointerUp(0, x + w / 2, y + h / 2))
    return screen
