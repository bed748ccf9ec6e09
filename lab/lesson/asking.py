"""From a question as written to a question with numbers: draw, build, compute the truth, word the text."""

from __future__ import annotations

import math

from lab.files import UNITS
from lab.lesson.amounts import amounts_of
from lab.lesson.asked import Asked
from lab.lesson.lesson import Ask, Lesson
from lab.lesson.messages import Message, message, msg, written
from lab.lesson.situation import situation_of
from lab.lesson.truth import truth_of
from lab.lesson.variation import drawn, tolerance_m

PROMPTS: dict[Ask, str] = {
    "side": msg("Which end drops when you let go, or does it stay level?"),
    "place": msg("Where would one finger hold it level?"),
}


def ask(lesson: Lesson, index: int, *, seed: int, round: int = 0) -> Asked:  # noqa: A002 - its name everywhere
    """Return question `index` of a lesson with its numbers drawn and its truth computed.

    seed: fixes the numbers.  round: 0 first; each *again* adds one and draws new numbers.
    Raises IndexError if there is no such question.
    """
    question = lesson.questions[index]
    build = drawn(question, lesson=lesson.name, units=lesson.units, seed=seed, round_=round).build
    units = UNITS[build.units]
    amounts = amounts_of(build)
    seen = situation_of(build)
    within_m = tolerance_m(question, build)
    pad_half_m = build.pivot.pad_m if build.pivot is not None else 0.0

    def worded(text: str) -> Message:
        return written(text, amounts)

    return Asked(
        lesson=lesson.name,
        question_name=question.name,
        index=index,
        count=len(lesson.questions),
        kind=question.ask,
        seed=seed,
        round=round,
        title=worded(question.title),
        text=worded(question.say),
        prompt=message(PROMPTS[question.ask]),
        hints=tuple(worded(hint) for hint in question.hints),
        build=build,
        units=units,
        truth=truth_of(question.ask, build),
        tolerance_m=within_m,
        pad_half_m=pad_half_m if within_m is None else within_m,
        decimals=1 if question.tolerance is None else decimals_for(question.tolerance),
        left_m=units.to_m(seen.left),
        right_m=units.to_m(seen.right),
        claims=question.claims,
        varied=bool(question.ranges),
    )


def decimals_for(tolerance: float) -> int:
    """Return how many figures after the point show a place well enough for a tolerance, at least one."""
    return max(1, math.ceil(-math.log10(tolerance)))
