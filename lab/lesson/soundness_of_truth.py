"""What a question says about its own answer: how exact it must be, what it expects, what its hints give away."""

from __future__ import annotations

import re
from collections.abc import Iterator

from lab.files import shown
from lab.lesson.forms import Answer, Quantity, from_si
from lab.lesson.kinds import KINDS, Found
from lab.lesson.lesson import Question
from lab.lesson.messages import decimals_needed
from lab.lesson.task import Task

NARROWEST = 0.002
"""The least tolerance, as a share of the body's length: about one pixel of the narrowest screen."""

WIDEST = 0.2
"""The largest: with more, a finger's pad would be nearly half as wide as the body."""

_NUMBER = re.compile(r"\d+(?:[.,]\d+)?")


def width_faults(question: Question, task: Task, *, size: float, of: str) -> Iterator[Found]:
    """Yield what is wrong with a tolerance beside the size of what is asked for.

    size: in SI.  of: what has that size, such as "a body".
    """
    quantity = KINDS[task.kind].quantity_of(question.keys)
    if question.tolerance is None or quantity is None:
        return
    size = from_si(quantity, size, task.units)
    if question.tolerance < NARROWEST * size:
        cure = f"write at least {NARROWEST * size:g}, for {of} of {size:g}"
        yield ("tolerance",), f"{question.tolerance:g} is finer than a screen can show", cure
    elif question.tolerance > WIDEST * size:
        cure = f"write at most {WIDEST * size:g}, for {of} of {size:g}"
        yield ("tolerance",), f"with {question.tolerance:g} nearly every place would be right", cure


def expect_faults(question: Question, task: Task, truth: Answer) -> Iterator[Found]:
    """Yield what is wrong with what the writer expects the truth to be."""
    expected = question.expect
    if expected is None:
        return
    if isinstance(truth, str):
        if expected != truth:
            cure = "see which of the two is meant"
            yield ("expect",), f"{shown(expected)} is expected, but the sum says {truth}", cure
        return
    numbers = _in_units(question, task, truth)
    said = " and ".join(f"{number:.6g}" for number in numbers)
    given = expected if isinstance(expected, tuple) else (expected,)
    if len(given) != len(numbers) or not all(isinstance(each, float) for each in given):
        what = f"{shown(expected)} is no place" if len(numbers) == 1 else f"{shown(expected)} is no list of numbers"
        yield ("expect",), what, f"write a number; the sum says {said}"
        return
    if any(not _agrees(float(each), number, question) for each, number in zip(given, numbers, strict=True)):
        written = " and ".join(f"{each:g}" for each in given)
        yield ("expect",), f"{written} is expected, but the sum says {said}", "see which of the two is meant"


def _agrees(expected: float, number: float, question: Question) -> bool:
    # As many figures as the writer gave, and never more slack than a learner has.
    slack = min(0.5 * 10.0 ** -decimals_needed(expected, most=9), question.tolerance or 0.0)
    return abs(expected - number) <= slack + 1e-9


def hint_faults(question: Question, task: Task, truth: Answer) -> Iterator[Found]:
    """Yield hints that hold the answer."""
    if isinstance(truth, str):
        return
    numbers = _in_units(question, task, truth)
    for index, hint in enumerate(question.hints):
        for figures in _NUMBER.findall(hint):
            given = float(figures.replace(",", "."))
            if any(abs(given - abs(number)) <= (question.tolerance or 0.0) for number in numbers):
                yield ("hints", index), f"the hint gives the answer away: {figures}", "say how to find it instead"


def _in_units(question: Question, task: Task, truth: Answer) -> tuple[float, ...]:
    """The truth in the scene's own units."""
    quantity: Quantity = KINDS[task.kind].quantity_of(question.keys) or "length"
    values = truth if isinstance(truth, tuple) else (float(truth),)
    return tuple(from_si(quantity, value, task.units) for value in values)
