"""The start screen."""

from __future__ import annotations

from typing import Any

from lab.app.rooms.room import BenchRoom, House
from lab.screens import intents
from lab.screens.intents import Intent
from lab.screens.screen import Screen, StartModel
from lab.screens.start import StartScreen
from lab.simulation import HangingBar, Session
from lab.simulation.benches.bar_builds import workshop_bar
from lab.ui.look import Look


class StartRoom(BenchRoom):
    """Where the lab opens, with a bar that can be let go at once."""

    def __init__(self, house: House) -> None:
        super().__init__(house, Session(workshop_bar()))

    def make_screen(self, look: Look) -> Screen[Any]:
        """The start screen."""
        return StartScreen(look)

    def model(self) -> StartModel:
        """Who is here, and the bar."""
        house, session = self._house, self._session
        bench, previous = session.state, session.previous
        return StartModel(
            setting=house.setting,
            learner=house.settings.learner,
            first_lesson="",
            bench=bench if isinstance(bench, HangingBar) else None,
            previous=previous if isinstance(previous, HangingBar) else None,
            fraction=session.fraction,
            notice=house.notice,
        )

    def perform(self, intent: Intent) -> bool:
        """Give commands to the bar; all else concerns the whole lab."""
        if not isinstance(intent, intents.Do):
            return False
        self.do(intent.command)
        return True
