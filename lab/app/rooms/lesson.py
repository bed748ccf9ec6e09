"""A lesson being taken."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict
from typing import Any

import lab
from lab.app.rooms.room import House
from lab.app.shelf import UnknownLessonError, shelf_of
from lab.app.sitting import Sitting
from lab.attempts import attempt_of
from lab.files import UNITS, FileFaults
from lab.lesson import Answered, Leave, Lesson, Message, read_lesson, render
from lab.outline.words import msg
from lab.screens import intents
from lab.screens.intents import Intent
from lab.screens.questions.screen import QuestionScreen
from lab.screens.screen import QuestionModel, Screen
from lab.ui.look import Look


def lesson_room(house: House, name: str, *, seed: int | None) -> LessonRoom | None:
    """The room of a lesson by its name or file, "" for the first; None where it cannot be used, and why is said."""
    shelf = shelf_of(house.paths)
    try:
        lesson = read_lesson(shelf.file(name or shelf.first_name))
    except UnknownLessonError as unknown:
        house.say(msg("There is no lesson {name}."), {"name": unknown.name})
        return None
    except FileFaults as faults:
        house.say(msg("A lesson cannot be used: {fault}"), {"fault": faults.faults[0].as_text()})
        return None
    return LessonRoom(house, lesson, seed=house.fresh_seed() if seed is None else seed)


class LessonRoom:
    """Where questions are asked, let go and explained."""

    wake_at_ns: int | None = None

    def __init__(self, house: House, lesson: Lesson, *, seed: int) -> None:
        self._house = house
        self._sitting = Sitting(lesson, seed=seed, now_ns=house.now_ns, keep=self._keep)

    @property
    def moving(self) -> bool:
        """Whether a body moves, or is being watched."""
        return self._sitting.moving

    def make_screen(self, look: Look) -> Screen[Any]:
        """The question's screen."""
        return QuestionScreen(look)

    def model(self) -> QuestionModel:
        """The question as it stands."""
        sitting, house = self._sitting, self._house
        over = sitting.run.phase == "finished"
        return QuestionModel(
            setting=house.setting,
            run=sitting.run,
            bench=None if over else sitting.session.state,
            previous=None if over else sitting.session.previous,
            fraction=sitting.session.fraction,
            contrast=sitting.contrast,
            learner=house.settings.learner,
            notice=house.notice,
        )

    def perform(self, intent: Intent) -> bool:
        """Give answers to the run, commands to the bench that is shown."""
        self._sitting.reduced_motion = self._house.settings.reduced_motion
        if isinstance(intent, intents.Answer):
            self._say(self._sitting.act(intent.action))
        elif isinstance(intent, intents.ShowContrast):
            self._sitting.show_contrast(shown=intent.shown)
        elif isinstance(intent, intents.Do):
            refused = self._sitting.session.do(intent.command)
            if refused is not None:
                self._house.say(refused.template, refused.values)
        else:
            return False
        return True

    def turn(self, now_ns: int) -> bool:
        """Let the body move."""
        return self._sitting.turn(now_ns)

    def close(self) -> None:
        """Keep an answer that was given and not locked in."""
        if self._sitting.run.phase != "finished":
            self._sitting.act(Leave())

    def _keep(self, answer: Answered) -> None:
        house = self._house
        attempt = attempt_of(asdict(answer), learner=house.settings.learner, version=lab.__version__)
        if not house.record.keep(attempt):
            house.warn(msg("Your answer is not saved yet: {why}"), {"why": house.record.trouble or ""}, retry=True)

    def _say(self, message: Message | None) -> None:
        if message is None:
            return
        house = self._house
        units = UNITS[house.settings.units] if house.settings.units else self._sitting.run.asked.units
        sentence: Mapping[str, str] = {"sentence": render(message, house.words, units)}
        house.say("{sentence}", sentence)
