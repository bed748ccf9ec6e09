"""The course: the lessons, what has come back, what has changed."""

from __future__ import annotations

from typing import Any

from lab.app.course import Standing, standing
from lab.app.rooms.room import House, StillRoom
from lab.lesson.course_telling import gain_lines
from lab.outline.words import msg
from lab.screens.intents import Intent
from lab.screens.lessons import LessonsScreen
from lab.screens.screen import LessonEntry, LessonsModel, Offer, Screen
from lab.ui.look import Look


class LessonsRoom(StillRoom):
    """Where a lesson is chosen."""

    def __init__(self, house: House) -> None:
        self._house = house
        self._standing = standing(house.paths, house.record, house.settings.learner, now_s=house.calendar_s())
        if self._standing.faults:
            fault = self._standing.faults[0].faults[0].as_text()
            house.say(msg("A lesson cannot be used: {fault}"), {"fault": fault})

    def make_screen(self, look: Look) -> Screen[Any]:
        """The course."""
        return LessonsScreen(look)

    def model(self) -> LessonsModel:
        """The lessons and how far this learner has come."""
        house, now = self._house, self._standing
        return LessonsModel(
            setting=house.setting,
            lessons=_entries(now),
            offer=offer_of(now),
            again=0 if now.again is None else len(now.again.questions),
            gain=gain_lines(now.gain),
            learner=house.settings.learner,
            notice=house.notice,
        )

    def perform(self, intent: Intent) -> bool:
        """Everything that can be asked for here concerns the whole lab."""
        return False


def _entries(now: Standing) -> tuple[LessonEntry, ...]:
    return tuple(
        LessonEntry(
            name=lesson.name,
            title=lesson.title,
            level=lesson.level,
            aim=lesson.aim,
            questions=done.questions,
            answered=done.answered,
            right_first=done.right_first,
            is_next=lesson.name == now.course.next,
            has_page=lesson.teacher is not None,
        )
        for lesson, done in zip(now.lessons, now.course.done, strict=True)
    )


def offer_of(now: Standing) -> Offer:
    """The next best thing to do: how one thinks before anything is learned, what has come back, what is next."""
    if not now.course.begun and not now.probed:
        return "first probe"
    if now.again is not None:
        return "again"
    if now.course.next is not None:
        return "next"
    # Only who has answered before has something to compare with.
    return "last probe" if now.lessons and now.probed and not now.probed_last else "nothing"
