"""Benches played by a pointer and by the keyboard, with no window and no sleep; and by dice, in any order."""

from __future__ import annotations

import random
from collections.abc import Callable, Iterator
from typing import Any

import pytest

from lab.outline.words import Words
from lab.screens.benches.screen import FreeBuildScreen
from lab.screens.intents import Do
from lab.screens.screen import BuildModel, Setting
from lab.simulation import TICK_NS, Same, Session, Tape, Undo, read_tape, replay
from lab.simulation.records import flat, recorded
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


class AnyOrder:
    """A bench at which whatever the dice say is done, a moment later the next."""

    def __init__(
        self, first: Callable[[], Any], command: Callable[[random.Random], Any], *, ticks: int = 3, done: float = 0.25
    ) -> None:
        """first: makes the bench.  ticks: there are fewer between two commands.  done: more than that share is."""
        self.first, self.command, self.ticks, self.done = first, command, ticks, done

    def played(self, seed: int, steps: int, *, tape: Tape | None = None) -> Iterator[Session]:
        """The session after each of so many commands."""
        dice = random.Random(seed)
        session, done = Session(self.first(), tape=tape), 0
        for _ in range(steps):
            done += session.do(self.command(dice)) is None
            session.advance(dice.randrange(self.ticks * TICK_NS))
            yield session
        assert done > self.done * steps

    def taken_back(self, seed: int, steps: int, *, check: Callable[[Any], None] = lambda state: None) -> None:
        """So many commands raise nothing, and can all be taken back.  check: what holds of every state."""
        session = Session(self.first())
        for session in self.played(seed, steps):
            check(session.state)
        while session.can_undo:
            assert session.do(Undo()) is None
        # Every value, floats in hex: unlike ==, that tells −0.0 from 0.0.
        assert flat(recorded(session.state)) == flat(recorded(self.first()))

    def replayed(self, seed: int, steps: int) -> Session:
        """The session after so many commands, its tape replayed to the last bit."""
        tape = Tape()
        *_, last = self.played(seed, steps, tape=tape)
        result = replay(read_tape(tape.text()))
        assert isinstance(result, Same), result.as_text()
        assert result.exact
        return last


@pytest.fixture
def any_order() -> type[AnyOrder]:
    """A bench at which whatever the dice say is done."""
    return AnyOrder
