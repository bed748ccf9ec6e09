"""The probe being taken."""

from __future__ import annotations

from dataclasses import asdict
from typing import Any

import lab
from lab.app.course import gain_of
from lab.app.rooms.room import NS, House, StillRoom
from lab.attempts import attempt_of
from lab.lesson import Message, Side
from lab.lesson.course_gain import Gain
from lab.lesson.course_telling import gain_lines
from lab.lesson.probe.items import Item, build_of_item
from lab.lesson.probe.probe import Form, answered, go_on, start_probe
from lab.lesson.probe.record import recorded
from lab.outline.words import msg
from lab.screens import intents
from lab.screens.intents import Intent
from lab.screens.probe import ProbeScreen
from lab.screens.screen import ProbeModel, Screen
from lab.simulation import HangingBar
from lab.simulation.benches.bar_builds import hanging_bar_from_build
from lab.ui.look import Look


class ProbeRoom(StillRoom):
    """Where bars are asked about one after the other, and nothing is told in between."""

    def __init__(self, house: House, *, seed: int, form: Form = "full") -> None:
        self._house = house
        self._probe = start_probe(seed=seed, form=form)
        self._bench = _bench(self._probe.item)
        self._asked_at_ns = house.now_ns
        self._gain: tuple[Message, ...] = ()

    def make_screen(self, look: Look) -> Screen[Any]:
        """The probe's screen."""
        return ProbeScreen(look)

    def model(self) -> ProbeModel:
        """What is asked, or what the answers fit."""
        house = self._house
        return ProbeModel(
            setting=house.setting,
            probe=self._probe,
            bench=self._bench,
            learner=house.settings.learner,
            gain=self._gain,
            notice=house.notice,
        )

    def perform(self, intent: Intent) -> bool:
        """Take an answer, or ask more."""
        match intent:
            case intents.SaySide():
                self._answer(intent.side)
            case intents.AskMore():
                self._probe = go_on(self._probe)
            case _:
                return False
        self._bench = _bench(self._probe.item)
        self._asked_at_ns = self._house.now_ns
        return True

    def _answer(self, side: Side) -> None:
        if self._probe.finished:
            return
        house = self._house
        seconds = max(0, house.now_ns - self._asked_at_ns) / NS
        row = recorded(self._probe, side, given=side, seconds=seconds)
        self._probe = answered(self._probe, side)
        if not house.record.keep(attempt_of(asdict(row), learner=house.settings.learner, version=lab.__version__)):
            house.warn(msg("Your answer is not saved yet: {why}"), {"why": house.record.trouble or ""}, retry=True)
        if self._probe.finished:
            # Of rules alone: of questions that came back the course tells.
            found = gain_of(house.record, house.settings.learner)
            self._gain = gain_lines(Gain(rule=found.rule, share=None))


def _bench(item: Item | None) -> HangingBar | None:
    return None if item is None else hanging_bar_from_build(build_of_item(item))
