"""A few questions from earlier lessons, asked again among each other.

Kinds that take turns are learned better than one kind after the other: one must first see which sum it is.
Source: Rohrer, Dedrick and Stershic 2015, Journal of Educational Psychology 107 (d = 0.42 after a day, 0.79 after 30);
Brunmair and Richter 2019, Psychological Bulletin 145 (g = 0.34 in mathematics).
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from lab.lesson.course import Course, Row, answers
from lab.lesson.lesson import Borrowed, Lesson, Question
from lab.lesson.messages import msg

NAME = "mixed"
"""What commands call it, in place of a lesson's name."""

TITLE = msg("A few from before")
AIM = msg("What you met some days ago, mixed. What is recalled stays.")

FEWEST, MOST = 3, 5
"""How many are asked: minutes, not another lesson."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Candidate:
    """A question that was answered once.  trouble: how much it needs another look, 0 for none.  is_due: it is time."""

    lesson: Lesson
    question: Question
    trouble: int
    last_s: float
    is_due: bool


def mixed(lessons: Sequence[Lesson], rows: Iterable[Row], so_far: Course) -> Lesson | None:
    """Return what has come back as a lesson of its own; None where nothing has.

    What went wrong comes first, and before that what was sure and wrong; lessons and kinds take turns.
    Each question keeps its own lesson's name in the record, and is asked with fresh numbers where they vary.
    """
    if not so_far.due:
        return None
    candidates = list(_candidates(lessons, answers(rows), so_far))
    # Each lesson that has come back brings one; one that comes alone brings as few as make a set.
    wanted = min(MOST, max(FEWEST, 2 + len(so_far.due)))
    picked: list[_Candidate] = []
    while candidates and len(picked) < wanted:
        best = min(candidates, key=lambda each: _rank(each, picked))
        picked.append(best)
        candidates.remove(best)
    first = picked[0].lesson
    return Lesson(
        name=NAME,
        title=TITLE,
        level=picked[-1].lesson.level,
        aim=AIM,
        units=first.units,
        questions=tuple(_borrowed(each) for each in picked),
        file="",
    )


def _candidates(lessons: Sequence[Lesson], kept: Sequence[Row], so_far: Course) -> Iterable[_Candidate]:
    latest: Mapping[tuple[str, str], Row] = {(row.lesson, row.question): row for row in kept}
    for lesson in lessons:
        for question in lesson.questions:
            row = latest.get((lesson.name, question.name))
            if row is not None:
                is_due = lesson.name in so_far.due
                yield _Candidate(
                    lesson=lesson, question=question, trouble=_trouble(row), last_s=row.at_s, is_due=is_due
                )


_WRONG = 2
"""Trouble from here on is an answer that was wrong."""


def _trouble(row: Row) -> int:
    """How much a question needs another look, by its last answer: most where somebody was sure and wrong."""
    if not row.right:
        return {"certain": _WRONG + 2, "fairly": _WRONG + 1}.get(row.sure or "", _WRONG)
    return int(row.sure == "guess" or row.hints > 0)


def _rank(each: _Candidate, picked: Sequence[_Candidate]) -> tuple[bool, bool, bool, int, int, float]:
    """The lower, the sooner it is asked: another kind than before, what went wrong, another lesson, the longest ago."""
    same_kind = bool(picked) and picked[-1].question.ask == each.question.ask
    used = sum(other.lesson.name == each.lesson.name for other in picked)
    return (not each.is_due, same_kind, each.trouble < _WRONG, used, -each.trouble, each.last_s)


def _borrowed(each: _Candidate) -> Question:
    return replace(each.question, borrowed=Borrowed(lesson=each.lesson.name, units=each.lesson.units))
