"""From a question as written to a question with numbers: draw, build, compute the truth, word the text."""

from __future__ import annotations

from lab.files import UNITS
from lab.lesson.amounts import amounts_of
from lab.lesson.asked import Asked
from lab.lesson.forms import Form, Number, Numbers
from lab.lesson.kinds import KINDS
from lab.lesson.lesson import Borrowed, Lesson
from lab.lesson.messages import Message, written
from lab.lesson.situation import situation_of
from lab.lesson.variation import drawn


def ask(lesson: Lesson, index: int, *, seed: int, round: int = 0) -> Asked:  # noqa: A002 - its name everywhere
    """Return question `index` of a lesson with its numbers drawn and its truth computed.

    seed: fixes the numbers.  round: 0 first, or where a borrowed question begins; each *again* adds one and draws new
    numbers.
    Raises IndexError if there is no such question.
    """
    question = lesson.questions[index]
    home = question.borrowed or Borrowed(lesson=lesson.name, units=lesson.units)
    task = drawn(question, lesson=home.lesson, units=home.units, seed=seed, round_=round).task
    kind, build = KINDS[task.kind], task.build
    units = UNITS[build.units]
    amounts = amounts_of(task)
    seen = situation_of(build)
    form = kind.form(task)
    quantity = kind.quantity_of(question.keys)

    def worded(text: str) -> Message:
        return written(text, amounts)

    return Asked(
        lesson=home.lesson,
        question_name=question.name,
        index=index,
        count=len(lesson.questions),
        kind=task.kind,
        seed=seed,
        round=round,
        title=worded(question.title),
        text=worded(question.say),
        prompt=kind.prompt(task),
        hints=tuple(worded(hint) for hint in question.hints),
        build=build,
        units=units,
        detail=task.detail,
        form=form,
        truth=kind.truth(task),
        tolerance=task.tolerance,
        tolerance_m=task.tolerance if quantity == "length" else None,
        pad_half_m=kind.pad_half_m(task),
        decimals=_decimals(form),
        left_m=units.to_m(seen.left),
        right_m=units.to_m(seen.right),
        claims=question.claims,
        varied=bool(question.ranges),
    )


def _decimals(form: Form) -> int:
    """Figures after the point of a number that is given; those of the first of several, of one where one chooses."""
    if isinstance(form, Numbers):
        form = form.numbers[0]
    return form.decimals if isinstance(form, Number) else 1
