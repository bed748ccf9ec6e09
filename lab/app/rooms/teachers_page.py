"""The teacher's page of a lesson."""

from __future__ import annotations

from typing import Any

from lab.app.rooms.room import House, StillRoom
from lab.app.shelf import UnknownLessonError, shelf_of
from lab.files import FileFaults
from lab.lesson import Lesson, read_lesson
from lab.lesson.teaching import PAGE_SEED, teaching_sheet
from lab.outline.words import msg
from lab.screens.intents import Intent
from lab.screens.screen import Screen, TeachersPageModel
from lab.screens.teachers_page import TeachersPageScreen
from lab.ui.look import Look


def teachers_page_room(house: House, name: str) -> TeachersPageRoom | None:
    """The room of a lesson's page by the lesson's name or file; None where it cannot be read, and why is said."""
    try:
        return TeachersPageRoom(house, read_lesson(shelf_of(house.paths).file(name)))
    except UnknownLessonError as unknown:
        house.say(msg("There is no lesson {name}."), {"name": unknown.name})
    except FileFaults as faults:
        house.say(msg("A lesson cannot be used: {fault}"), {"fault": faults.faults[0].as_text()})
    return None


class TeachersPageRoom(StillRoom):
    """Where a teacher reads what a lesson is about."""

    def __init__(self, house: House, lesson: Lesson) -> None:
        self._house = house
        self._name = lesson.name
        self._sheet = teaching_sheet(lesson, seed=PAGE_SEED)

    def make_screen(self, look: Look) -> Screen[Any]:
        """The page."""
        return TeachersPageScreen(look)

    def model(self) -> TeachersPageModel:
        """What the page says."""
        house = self._house
        return TeachersPageModel(setting=house.setting, name=self._name, sheet=self._sheet, notice=house.notice)

    def perform(self, intent: Intent) -> bool:
        """Everything that can be asked for here concerns the whole lab."""
        return False
