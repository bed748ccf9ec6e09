"""What has come back, as a lesson in the ordinary lesson room."""

from __future__ import annotations

from lab.app.course import standing
from lab.app.rooms.lesson import LessonRoom, lesson_room
from lab.app.rooms.room import House
from lab.lesson.course_mixed import NAME
from lab.outline.words import msg


def lesson_or_mixed(house: House, name: str, *, seed: int | None) -> LessonRoom | None:
    """The room of a lesson by its name or file, or of what has come back; None where there is none, and why is said."""
    if name != NAME:
        return lesson_room(house, name, seed=seed)
    again = standing(house.paths, house.record, house.settings.learner, now_s=house.calendar_s()).again
    if again is None:
        house.say(msg("Nothing has come back yet: lessons do, a day or more after they were met."))
        return None
    return LessonRoom(house, again, seed=house.fresh_seed() if seed is None else seed)
