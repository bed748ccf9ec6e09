"""What a lesson's writer is told: faults that stop it, and warnings about what it cannot tell apart."""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from dataclasses import dataclass
from math import comb
from pathlib import Path

from lab.files import Fault, Keyed, KeyPath, shown
from lab.lesson.fault_places import FaultPlaces
from lab.lesson.kinds import kind_of
from lab.lesson.lesson import Lesson, Question
from lab.lesson.matching import Blur, blurs
from lab.lesson.messages import words_in
from lab.lesson.telling_apart import ToldApart, never_apart, told_apart
from lab.lesson.variation import Draw, Drawing

SEEDS = 60
"""How many seeds a varied question is tried with where the first few leave anything to say, each asked for the first
time and again."""

FIRST_ASKINGS = 6
"""After how many askings it is looked at for the first time whether they leave anything to say."""

RARE = 1 / 28
"""A question in which fewer draws than this share will do may have a seed that finds none: of MOST_DRAWS all fail with
odds of one in two million."""

BY_LUCK = 0.008
"""The odds allowed for that the askings only seem to show a share above RARE: those beyond 2.4 standard deviations."""

ENOUGH = 3
"""Blurred drawings of one question after which no more are made: what is wrong with its ranges is known by then."""

MOST_WORDS = 40
"""Words on the screen before a learner can act; more are not read."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Report:
    """Everything that is to be said about a lesson file.

    faults: what stops it.  warnings: what it cannot do that it should.  apart: for each question, which ways of
    thinking it tells apart; none where there are faults.
    """

    faults: tuple[Fault, ...]
    warnings: tuple[Fault, ...] = ()
    apart: tuple[ToldApart, ...] = ()


def check_lesson(path: Path) -> tuple[tuple[Fault, ...], tuple[Fault, ...]]:
    """Return (faults, warnings) of a lesson file; never raises for what is in the file."""
    report = lesson_report(Path(path))
    return report.faults, report.warnings


def lesson_report(path: Path, keyed: Keyed | None = None) -> Report:
    """Return everything that is to be said about a lesson file; never raises for what is in the file.

    keyed: what is in the file, where it has been read already.
    """
    # Imported here for pydantic's sake: see `reading`.
    from lab.lesson.making import lesson_or_faults

    lesson, faults, lines = lesson_or_faults(path, keyed)
    if lesson is None:
        return Report(faults=faults)
    places = FaultPlaces(str(path), lines)
    unsolvable: list[Fault] = []
    warnings: list[Fault] = []
    apart: list[ToldApart] = []
    for index, question in enumerate(lesson.questions):
        at: KeyPath = ("question", index)
        draws = _draws(lesson, question)
        if any(draw.quality == "none found" for draw in draws):
            what = "some seeds find no numbers that keep the truth off ties and off the claimed ways"
            cure = "widen the ranges, or claim fewer ways of thinking"
            unsolvable.append(places.fault((*at, "vary"), what, cure))
        warnings += [places.fault((*at, *key), what, cure) for key, what, cure in _warnings(question, draws)]
        apart.append(told_apart(question.name, [draw.task for draw in draws]))
    return Report(faults=tuple(unsolvable), warnings=tuple(warnings), apart=() if unsolvable else tuple(apart))


def _draws(lesson: Lesson, question: Question) -> list[Draw]:
    """Return the numbers of some seeds, of the first asking and of the first *again*.

    Of few where they leave nothing to say, else of many; and of fewer again once the fault is plain.
    """
    drawing = Drawing(question, lesson=lesson.name, units=lesson.units)
    if not question.ranges:
        return [drawing.draw(seed=0, round_=0)]
    made: list[Draw] = []
    # Where nothing is said of ways, all of them are compared over all askings: that is not done after each.
    every = FIRST_ASKINGS if question.is_silent else 1
    for seed, round_ in itertools.product(range(SEEDS), (0, 1)):
        made.append(drawing.draw(seed=seed, round_=round_))
        if made[-1].quality == "none found" or [draw.quality for draw in made].count("blurred") >= ENOUGH:
            break
        if len(made) >= FIRST_ASKINGS and len(made) % every == 0 and _says_nothing(question, made):
            break
    return made


def _says_nothing(question: Question, draws: list[Draw]) -> bool:
    """Whether these askings leave nothing to say that more of them might take back or add to."""
    if any(draw.quality == "blurred" for draw in draws):
        return False
    drawn = [draw.tries for draw in draws if draw.tries]
    if _by_luck(len(drawn), sum(drawn)) > BY_LUCK:
        return False
    return not (question.is_silent and never_apart([draw.task for draw in draws]))


def _by_luck(found: int, tries: int) -> float:
    """The odds that so many of so many draws or more will do where only the share RARE of them does."""
    fewer = (comb(tries, count) * RARE**count * (1 - RARE) ** (tries - count) for count in range(found))
    return 1 - sum(fewer)


def _warnings(question: Question, draws: list[Draw]) -> Iterator[tuple[KeyPath, str, str]]:
    prompt = kind_of(draws[0].task).prompt(draws[0].task).template
    words = sum(words_in(text) for text in (question.title, question.say, prompt))
    if words > MOST_WORDS:
        yield ("say",), f"{words} words before a learner can act", f"write at most {MOST_WORDS}"
    found: dict[Blur, None] = {}
    for draw in draws:
        if draw.quality != "clear":
            found |= dict.fromkeys(blurs(draw.task, question.claims))
    if question.is_silent:
        for group in never_apart([draw.task for draw in draws]):
            what = "no answer tells apart: " + ", ".join(group)
            yield ("ways",), what, "name in `ways` what it should tell apart, or write `ways = []`"
    for blur in found:
        yield ("ways",), _blurred(blur), "change the scene or its ranges, or claim another way"


def _blurred(blur: Blur) -> str:
    if blur.other == "":
        return f"{shown(blur.claim)} has no answer here, so it cannot show"
    if blur.other == "truth":
        return f"{shown(blur.claim)} cannot be told apart from the right answer"
    return f"{shown(blur.claim)} cannot be told apart from {blur.other}"
