"""The list of lessons."""

from __future__ import annotations

from typing import Any

from lab.app.rooms.room import House, StillRoom
from lab.app.shelf import shelf_of
from lab.outline.words import msg
from lab.screens.intents import Intent
from lab.screens.lessons import LessonsScreen
from lab.screens.screen import LessonEntry, LessonsModel, Screen
from lab.ui.look import Look


class LessonsRoom(StillRoom):
    """Where a lesson is chosen."""

    def __init__(self, house: House) -> None:
        self._house = house
        lessons, faults = shelf_of(house.paths).read_all()
        done = house.record.progress(house.settings.learner)
        self._entries = tuple(
            LessonEntry(
                name=lesson.name,
                title=lesson.title,
                level=lesson.level,
                aim=lesson.aim,
                questions=len(lesson.questions),
                answered=done.get(lesson.name, 0),
            )
            for lesson in lessons
        )
        if faults:
            house.say(msg("A lesson cannot be used: {fault}"), {"fault": faults[0].faults[0].as_text()})

    def make_screen(self, look: Look) -> Screen[Any]:
        """The list."""
        return LessonsScreen(look)

    def model(self) -> LessonsModel:
        """The lessons and how far this learner has come."""
        house = self._house
        return LessonsModel(setting=house.setting, lessons=self._entries, notice=house.notice)

    def perform(self, intent: Intent) -> bool:
        """Everything that can be asked for here concerns the whole lab."""
        return False
