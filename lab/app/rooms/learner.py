"""Whose answers they are: the code, a new one, or one that was used before."""

from __future__ import annotations

from typing import Any, Literal

from lab.app.course import seconds_of
from lab.app.rooms.room import House, StillRoom
from lab.lesson.course_telling import how_long_ago
from lab.screens.intents import Intent
from lab.screens.learner import LearnerScreen
from lab.screens.screen import LearnerModel, Screen, UsedCode
from lab.ui.look import Look

MOST = 12
"""Codes that are offered; who was here longer ago types theirs."""


class LearnerRoom(StillRoom):
    """Where a learner says who it is.  above: the place one came from."""

    def __init__(self, house: House, *, above: Literal["start", "lessons"]) -> None:
        self._house = house
        self.above = above
        now_s = house.calendar_s()
        self._known = house.record.codes()
        self._used = tuple(
            UsedCode(code=used.code, when=how_long_ago(max(0.0, now_s - seconds_of(used.last_at))))
            for used in self._known[:MOST]
        )

    def make_screen(self, look: Look) -> Screen[Any]:
        """The page."""
        return LearnerScreen(look)

    def model(self) -> LearnerModel:
        """The code in force and those that were used here."""
        house = self._house
        return LearnerModel(
            setting=house.setting,
            learner=house.settings.learner,
            used=self._used,
            known=tuple(used.code for used in self._known),
            notice=house.notice,
        )

    def perform(self, intent: Intent) -> bool:
        """Everything that can be asked for here concerns the whole lab."""
        return False
