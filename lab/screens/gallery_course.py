"""The course and the learner's code in every state."""

from __future__ import annotations

from collections.abc import Iterator

from lab.lesson import Message
from lab.lesson.course_gain import Gain, RuleGain, ShareGain
from lab.lesson.course_telling import gain_lines
from lab.lesson.probe.items import situation_of_item, truth_of_item
from lab.lesson.probe.probe import Finding, answered, finding, start_probe
from lab.lesson.ways.side import weight_only
from lab.outline.words import msg
from lab.screens.gallery_parts import SETTING, Drawn, Entry, press, shown
from lab.screens.learner import USE, LearnerScreen
from lab.screens.lessons import LessonsScreen
from lab.screens.questions.gallery import shipped_lessons
from lab.screens.screen import LearnerModel, LessonEntry, LessonsModel, Notice, Offer, UsedCode
from lab.ui.look import Look

LEARNER, OTHER, STRANGE = "K7M4T9X3", "R3WNJH74", "PT4C9MK6"
USED = (
    UsedCode(code=LEARNER, when=msg("within the last hour")),
    UsedCode(code=OTHER, when=msg("a day or two ago")),
    UsedCode(code="34679CFM", when=msg("more than a month ago")),
)
SHARE = ShareGain(questions=9, right_first=4, right_later=8, gained=5, lost=1)


def course_entries(not_saved: Notice) -> Iterator[tuple[str, Entry]]:
    """All states.  not_saved: what is shown over the course where an answer could not be written."""
    yield "lessons", Entry(msg("the course, nothing done yet"), lambda look: _course(look, "first probe"))
    yield "lessons-next", Entry(msg("the course, on the way"), lambda look: _course(look, "next", done=4))
    yield (
        "lessons-again",
        Entry(msg("the course, something has come back"), lambda look: _course(look, "again", done=6)),
    )
    yield (
        "lessons-gain",
        Entry(msg("the course done, and what has changed"), lambda look: _course(look, "nothing", done=99, gains=True)),
    )
    yield "lessons-end", Entry(msg("the course done"), lambda look: _course(look, "last probe", done=99))
    yield (
        "lessons-trouble",
        Entry(msg("the course, and what could not be saved"), lambda look: _course(look, "next", notice=not_saved)),
    )
    yield "lessons-help", Entry(msg("the course: what to do here"), lambda look: press(_course(look, "next"), "help"))
    yield "learner", Entry(msg("the learner's code, others to pick"), lambda look: _learner(look))
    yield "learner-first", Entry(msg("the learner's code, the first here"), lambda look: _learner(look, used=()))
    yield "learner-typed", Entry(msg("a code, half typed"), lambda look: _learner(look, typed=OTHER[:5]))
    yield (
        "learner-unread",
        Entry(msg("a code with a wrong letter"), lambda look: _learner(look, typed=f"{OTHER[:-1]}9", use=True)),
    )
    yield "learner-short", Entry(msg("a code that is too short"), lambda look: _learner(look, typed="R3W", use=True))
    yield "learner-strange", Entry(msg("a code not used here"), lambda look: _learner(look, typed=STRANGE, use=True))


def _course(look: Look, offer: Offer, *, done: int = 0, gains: bool = False, notice: Notice | None = None) -> Drawn:
    """done: how many lessons are answered to the end; the next one is begun."""
    entries = tuple(
        LessonEntry(
            name=lesson.name,
            title=lesson.title,
            level=lesson.level,
            aim=lesson.aim,
            questions=len(lesson.questions),
            answered=len(lesson.questions) if number < done else 2 if number == done > 0 else 0,
            right_first=len(lesson.questions) - 2 if number < done else 1 if number == done > 0 else 0,
            is_next=number == done,
            has_page=True,
        )
        for number, lesson in enumerate(shipped_lessons())
    )
    model = LessonsModel(
        setting=SETTING,
        lessons=entries,
        offer=offer,
        again=4,
        gain=_gain() if gains else (),
        learner=LEARNER,
        notice=notice,
    )
    return shown(LessonsScreen(look), model)


def _gain() -> tuple[Message, ...]:
    rule = RuleGain(before=_probed(right=False), after=_probed(right=True))
    return gain_lines(Gain(rule=rule, share=SHARE))


def _probed(*, right: bool) -> Finding:
    probe = start_probe(seed=4711)
    while probe.item is not None:
        probe = answered(probe, truth_of_item(probe.item) if right else weight_only(situation_of_item(probe.item)))
    return finding(probe.given)


def _learner(look: Look, *, used: tuple[UsedCode, ...] = USED, typed: str = "", use: bool = False) -> Drawn:
    known = tuple(each.code for each in used)
    screen = LearnerScreen(look)
    screen.show(LearnerModel(setting=SETTING, learner=LEARNER, used=used, known=known))
    for letter in typed:
        screen.write(letter)
    return press(screen, USE) if use else screen
