"""A learner's way through the lessons: what is done, what comes next, what comes back.

No clock is read: rows carry their time, and whoever asks says what time it is now.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from lab.lesson.foretelling import KIND as CONTRAST
from lab.lesson.lesson import Lesson
from lab.lesson.probe.record import KIND as PROBE

HOUR_S, DAY_S = 3600.0, 86400.0

SOONER_S = 4 * HOUR_S
"""A class that meets a day or a week later may begin a little earlier than the last time."""

GAPS_S = (1 * DAY_S, 7 * DAY_S, 30 * DAY_S)
"""How long a lesson rests before it comes back the first, the second and any later time.

To recall after a gap teaches more than at once (g = 0.74 over 29 studies; whether gaps grow or stay alike matters
little, 0.034: growing ones ask for less of a learner's time).  The best gap is 20 to 40 % of the time until it is
needed where that is a week, 5 to 10 % where it is a year: one to three days, then weeks.
Sources: Latimier, Peyre and Ramus 2021, Educational Psychology Review 33; Cepeda and others 2008, Psychological
Science 19; at two days testing beats rereading: Roediger and Karpicke 2006, Psychological Science 17.
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """What a course needs of an answer in the record.

    round: 0 first.  ways: those that the answer fits.  at_s: when it was given, seconds from any one moment.
    """

    lesson: str
    question: str
    kind: str
    understood: str | float
    round: int
    right: bool
    sure: str | None
    hints: int
    ways: tuple[str, ...]
    locked: bool
    at_s: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Done:
    """What a learner has done of a lesson.

    answered, right_first: how many of its questions, and how many of those were right at the first try.
    ways: ways of thinking that answers fit, the most frequent first.  met_s: when it was last met; None if never.
    returned: how often it has come back and was met again.
    """

    lesson: str
    questions: int
    answered: int = 0
    right_first: int = 0
    ways: tuple[str, ...] = ()
    met_s: float | None = None
    returned: int = 0

    @property
    def complete(self) -> bool:
        """Whether every question has been answered."""
        return self.answered >= self.questions

    @property
    def comes_back_s(self) -> float | None:
        """When it is to be met again; None while it has not been met."""
        return None if self.met_s is None else self.met_s + _rest_s(self.returned)


@dataclass(frozen=True, slots=True, kw_only=True)
class Course:
    """All lessons in their order, and what a learner has done of each.  due: those that have come back, by name."""

    done: tuple[Done, ...]
    due: tuple[str, ...]

    @property
    def next(self) -> str | None:
        """The first lesson with questions left; None where all are answered."""
        return next((each.lesson for each in self.done if not each.complete), None)

    @property
    def begun(self) -> bool:
        """Whether any question has been answered."""
        return any(each.answered for each in self.done)


def course(lessons: Sequence[Lesson], rows: Iterable[Row], *, now_s: float) -> Course:
    """Return how far a learner has come.  rows: that learner's, in any order.  now_s: on the rows' clock."""
    kept = answers(rows)
    done = tuple(_done(lesson, kept) for lesson in lessons)
    due = tuple(each.lesson for each in done if each.comes_back_s is not None and each.comes_back_s <= now_s)
    return Course(done=done, due=due)


def answers(rows: Iterable[Row]) -> tuple[Row, ...]:
    """Return the locked answers to questions of lessons, oldest first: not those of probes, nor what was foretold."""
    kept = (row for row in rows if row.locked and row.kind not in (PROBE, CONTRAST))
    return tuple(sorted(kept, key=lambda row: row.at_s))


def apart(earlier: Row, later: Row) -> bool:
    """Whether two answers are far enough from each other that the later one was recalled, not just repeated."""
    return later.at_s - earlier.at_s >= _rest_s(0)


def _done(lesson: Lesson, kept: Iterable[Row]) -> Done:
    names = {question.name for question in lesson.questions}
    mine = [row for row in kept if row.lesson == lesson.name and row.question in names]
    first: dict[str, Row] = {}
    for row in mine:
        first.setdefault(row.question, row)
    times = [row.at_s for row in mine]
    said = [way for row in mine for way in row.ways]
    return Done(
        lesson=lesson.name,
        questions=len(names),
        answered=len(first),
        right_first=sum(row.right for row in first.values()),
        ways=tuple(sorted(dict.fromkeys(said), key=lambda way: -said.count(way))),
        met_s=times[-1] if times else None,
        returned=sum(_returns(times)),
    )


def _returns(times: Sequence[float]) -> Iterator[bool]:
    """Whether each answer but the first was given after its lesson had come back."""
    times_back = 0
    for earlier, later in pairwise(times):
        back = later - earlier >= _rest_s(times_back)
        times_back += back
        yield back


def _rest_s(returned: int) -> float:
    return GAPS_S[min(returned, len(GAPS_S) - 1)] - SOONER_S
