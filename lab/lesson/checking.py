"""What a lesson's writer is told: faults that stop it, and warnings about what it cannot tell apart."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from lab.files import Fault, KeyPath, load, shown
from lab.lesson.asking import PROMPTS
from lab.lesson.lesson import Lesson, Question
from lab.lesson.matching import Blur, blurs
from lab.lesson.reading import lesson_or_faults
from lab.lesson.schema import FaultPlaces
from lab.lesson.variation import drawn, tolerance_m

SEEDS = 60
"""How many seeds a varied question is tried with, each asked for the first time and again."""

MOST_WORDS = 40
"""Words on the screen before a learner can act; more are not read."""


def check_lesson(path: Path) -> tuple[tuple[Fault, ...], tuple[Fault, ...]]:
    """Return (faults, warnings) of a lesson file; never raises for what is in the file."""
    lesson, faults = lesson_or_faults(Path(path))
    if lesson is None:
        return faults, ()
    places = FaultPlaces(str(path), load(path).lines)
    unsolvable: list[Fault] = []
    warnings: list[Fault] = []
    for index, question in enumerate(lesson.questions):
        at: KeyPath = ("question", index)
        drawing = _drawing_fault(lesson, question)
        if drawing is not None:
            unsolvable.append(places.fault((*at, "vary"), *drawing))
        warnings += [places.fault((*at, *key), what, cure) for key, what, cure in _warnings(lesson, question)]
    return tuple(unsolvable), tuple(warnings)


def _drawing_fault(lesson: Lesson, question: Question) -> tuple[str, str] | None:
    """Return what is wrong where some seed finds no numbers that make a sound question."""
    if not question.ranges:
        return None
    for seed in range(SEEDS):
        for round_ in (0, 1):
            draw = drawn(question, lesson=lesson.name, units=lesson.units, seed=seed, round_=round_)
            if draw.quality == "as written, nothing drawn would do":
                cure = "widen the ranges, or claim fewer ways of thinking"
                return f"seed {seed} finds no numbers that keep the truth off ties and off the claimed ways", cure
    return None


def _warnings(lesson: Lesson, question: Question) -> Iterator[tuple[KeyPath, str, str]]:
    words = sum(len(text.split()) for text in (question.title, question.say, PROMPTS[question.ask]))
    if words > MOST_WORDS:
        yield ("say",), f"{words} words before a learner can act", f"write at most {MOST_WORDS}"
    found = dict.fromkeys(_blurs(lesson, question))
    for blur in found:
        yield ("ways",), _blurred(blur), "change the scene or its ranges, or claim another way"


def _blurs(lesson: Lesson, question: Question) -> Iterator[Blur]:
    """Yield what the question cannot tell apart as written, where that is asked, and with any numbers drawn."""
    asked_as_written = not question.ranges or question.as_written_first
    rounds = [(0, 0)] if asked_as_written else []
    if question.ranges:
        rounds += [(seed, 1 if question.as_written_first else 0) for seed in range(SEEDS)]
    for seed, round_ in rounds:
        draw = drawn(question, lesson=lesson.name, units=lesson.units, seed=seed, round_=round_)
        if draw.quality != "clear":
            build = draw.build
            yield from blurs(question.ask, build, question.claims, tolerance_m=tolerance_m(question, build))


def _blurred(blur: Blur) -> str:
    if blur.other == "":
        return f"{shown(blur.claim)} has no answer here, so it cannot show"
    if blur.other == "truth":
        return f"{shown(blur.claim)} cannot be told apart from the right answer"
    return f"{shown(blur.claim)} cannot be told apart from {blur.other}"
