"""The teacher's page: what the writer says to the teacher, and for every question its answers, worked out.

Nothing here knows a terminal or a screen; both put the same sections in the same order.
"""

from __future__ import annotations

from dataclasses import dataclass

from lab.files import UNITS, UnitSystem
from lab.lesson.asked import Asked
from lab.lesson.asking import ask
from lab.lesson.forms import same
from lab.lesson.kinds import Fit, kind_of
from lab.lesson.lesson import Lesson, TeachersPage
from lab.lesson.matching import fits, named, predictions, way_names
from lab.lesson.messages import Message, message, msg, number, written

MISSING = msg("This lesson's file has no [teacher] table, so time, things, steps and cautions are not known.")
NUMBERS_VARY = msg("Other seeds draw other numbers. Those here are of seed {seed}: with it the lesson asks the same.")

PAGE_SEED = 0
"""The seed of a page that nobody gave one, so that it reads the same each time."""

MOST_OTHERS = 3
"""Other ways with the same answer that are named; of more it is said how many."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """One part of the page.  heading: a template.  numbered: its lines are steps."""

    key: str
    heading: str
    lines: tuple[Message, ...]
    numbered: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Thought:
    """A claimed way of thinking.  answer: what it gives here.  told: the sentence that a learner gets for it."""

    way: str
    answer: Message
    told: Message


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyedQuestion:
    """One question with its answers.

    lines: what is said, what is given beside it, what is asked.  answer: the right one.  why: what decides.
    varies: other seeds draw other numbers.
    """

    name: str
    title: Message
    lines: tuple[Message, ...]
    answer: Message
    why: Message
    thoughts: tuple[Thought, ...]
    units: UnitSystem
    varies: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class TeachingSheet:
    """The whole page.  before, after: the sections around the questions.  note: what holds for all of them, or None."""

    title: Message
    level: str
    before: tuple[Section, ...]
    note: Message | None
    questions: tuple[KeyedQuestion, ...]
    after: tuple[Section, ...]
    units: UnitSystem


def teaching_sheet(lesson: Lesson, *, seed: int) -> TeachingSheet:
    """Return the teacher's page of a lesson with the numbers of a seed."""
    said = lesson.teacher
    aim = Section(key="aim", heading=msg("Aim"), lines=(written(lesson.aim),))
    questions = tuple(_keyed(ask(lesson, index, seed=seed)) for index in range(len(lesson.questions)))
    missing = Section(key="missing", heading=msg("What is missing"), lines=(message(MISSING),))
    varies = any(question.varies for question in questions)
    return TeachingSheet(
        title=written(lesson.title),
        level=lesson.level,
        before=(aim, missing) if said is None else (aim, *_before(said)),
        # A seed is typed as it stands, so it is not grouped by thousands.
        note=message(NUMBERS_VARY, seed=str(seed)) if varies else None,
        questions=questions,
        after=() if said is None else _after(said),
        units=UNITS[lesson.units],
    )


def _before(said: TeachersPage) -> tuple[Section, ...]:
    minutes = message(msg("{minutes} minutes, talk included."), minutes=number(said.minutes))
    return (
        Section(key="time", heading=msg("Time"), lines=(minutes,)),
        Section(key="have", heading=msg("What to have on the table"), lines=_sentences(said.have)),
        Section(key="do", heading=msg("Do it with real things"), lines=_sentences(said.do), numbered=True),
    )


def _after(said: TeachersPage) -> tuple[Section, ...]:
    return (
        Section(key="expect", heading=msg("What learners commonly say"), lines=_sentences(said.expect)),
        Section(key="cautions", heading=msg("Cautions"), lines=_sentences(said.cautions)),
    )


def _sentences(texts: tuple[str, ...]) -> tuple[Message, ...]:
    return tuple(written(text) for text in texts)


def _keyed(asked: Asked) -> KeyedQuestion:
    kind = kind_of(asked.task)
    said = predictions(asked.task)
    thoughts: list[Thought] = []
    for claim in asked.claims:
        mine = [fit for fit in said if fit.claimed_by(claim)]
        thoughts += [_thought(asked, fit) for fit in mine] or [_silent(claim)]
    return KeyedQuestion(
        name=asked.question_name,
        title=asked.title,
        lines=(asked.text, *kind.given(asked), asked.prompt),
        answer=asked.form.shown(asked.truth),
        why=kind.explain(asked, asked.truth, None, ()).why,
        thoughts=tuple(thoughts),
        units=asked.units,
        varies=asked.varied,
    )


def _thought(asked: Asked, fit: Fit) -> Thought:
    return Thought(way=fit.name, answer=asked.form.shown(fit.answer), told=_told(asked, fit))


def _silent(claim: str) -> Thought:
    silent = message(msg("no answer with these numbers"))
    return Thought(way=claim, answer=silent, told=message(msg("It has nothing to go by here.")))


def _told(asked: Asked, fit: Fit) -> Message:
    """What the learner reads who gives this answer: the idea it fits, where it fits no other."""
    if same(fit.answer, asked.truth, within=asked.tolerance or 0.0):
        return message(msg("With these numbers that is right."))
    found = fits(asked, fit.answer)
    told = kind_of(asked.task).explain(asked, fit.answer, fit, (fit.way,))
    idea = told.idea or told.why
    chosen = named(asked, found)
    if chosen is not None and chosen.name == fit.name:
        return idea
    others = tuple(name for name in way_names(found) if name != fit.way) or (fit.way,)
    if chosen is not None:
        return message(msg("{idea} The same is said by {other}, and that one is named."), idea=idea, other=chosen.name)
    if len(others) > MOST_OTHERS:
        return message(
            msg("{idea} The same is said by {count} other ways, so none is named."),
            idea=idea,
            count=number(len(others)),
        )
    return message(msg("{idea} The same is said by {others}, so none is named."), idea=idea, others=", ".join(others))
