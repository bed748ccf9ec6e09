"""Which room lies behind which place.

Rooms are loaded when they are first entered, so that the start screen need not wait for them.
"""

from __future__ import annotations

from lab.app.rooms.room import House, Room
from lab.app.rooms.start import StartRoom
from lab.screens.intents import Go


def room_at(house: House, to: Go, *, seed: int | None = None) -> Room | None:
    """The room of a place; None where it cannot be used, and why is said.  seed: of what is asked; None draws one."""
    match to.place:
        case "start":
            return StartRoom(house)
        case "lessons":
            from lab.app.rooms.lessons import LessonsRoom

            return LessonsRoom(house)
        case "lesson":
            from lab.app.rooms.course import lesson_or_mixed

            return lesson_or_mixed(house, to.name, seed=seed)
        case "page":
            from lab.app.rooms.teachers_page import teachers_page_room

            return teachers_page_room(house, to.name)
        case "probe":
            from lab.app.rooms.probe import ProbeRoom

            return ProbeRoom(house, seed=house.fresh_seed() if seed is None else seed)
        case "learner":
            from lab.app.rooms.learner import LearnerRoom

            return LearnerRoom(house, above="lessons" if to.name == "lessons" else "start")
        case "build":
            from lab.app.rooms.build import build_room

            return build_room(house, to.name)


def way_back(room: Room) -> Go:
    """One place up: from what belongs to the lessons to their list, from anywhere else to the start screen."""
    from lab.app.rooms.learner import LearnerRoom
    from lab.app.rooms.lesson import LessonRoom
    from lab.app.rooms.probe import ProbeRoom
    from lab.app.rooms.teachers_page import TeachersPageRoom

    if isinstance(room, LearnerRoom):
        return Go(place=room.above)
    return Go(place="lessons" if isinstance(room, LessonRoom | ProbeRoom | TeachersPageRoom) else "start")
