"""Varied numbers: drawn from a seed, tidy, always solvable, never on an accidental tie."""

from __future__ import annotations

import copy
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from random import Random
from typing import Any, Literal

from lab.files import UNITS, Build, FileFaults, build_from_table
from lab.lesson.kinds import KINDS, DetailRefusedError
from lab.lesson.lesson import Question
from lab.lesson.matching import blurs, truth_of
from lab.lesson.task import Task, tolerance_si
from lab.lesson.varied_values import put_value
from lab.mechanics import MechanicsError

MOST_DRAWS = 400
"""How often numbers are drawn anew, every second time from the wrong half (see `_candidates`), before the best
of them is taken.  A range in which one number in ten will do fails less than once in a hundred million times."""

Quality = Literal["as written", "clear", "blurred", "none found"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Draw:
    """The numbers of one asking.

    quality: `clear` where every claimed way is told apart, `blurred` where one claimed way is like another,
    `none found` where no numbers drawn made a sound question, so that the written ones are asked.
    """

    task: Task
    quality: Quality


def drawn(question: Question, *, lesson: str, units: str, seed: int, round_: int) -> Draw:
    """Return the task of a question with its numbers.

    units: the lesson's, for a scene that names none.  Raises FileFaults only where the scene as written is unsound.
    """
    written = task_of(question, question.scene.table, question.keys, units=units)
    if not question.ranges or (question.as_written_first and round_ == 0):
        return Draw(task=written, quality="as written")
    fallback, meant = None, truth_of(written)
    for task in _candidates(question, written, units=units, key=f"{lesson}/{question.name}/{seed}", round_=round_):
        try:
            sound = KINDS[task.kind].is_sound(task, truth_of(task), written=meant)
        except MechanicsError:
            continue
        if not sound:
            continue
        faint = blurs(task, question.claims)
        if not faint:
            return Draw(task=task, quality="clear")
        if fallback is None and all(blur.other not in ("", "truth") for blur in faint):
            fallback = task
    if fallback is not None:
        return Draw(task=fallback, quality="blurred")
    return Draw(task=written, quality="none found")


def task_of(question: Question, table: Mapping[str, Any], keys: Mapping[str, Any], *, units: str) -> Task:
    """Return the task of a question.

    table, keys: its scene and what it says beside it, as written or with numbers drawn.
    Raises FileFaults with everything that is wrong with the scene, DetailRefusedError with what does not fit it.
    """
    source, kind = question.scene, KINDS[question.ask]
    build = build_from_table(dict(table), source.lines, source.file, at=source.at, title=question.title, units=units)
    return task_about(question, build.loose() if kind.holds_loose else build, keys)


def task_about(question: Question, build: Build, keys: Mapping[str, Any]) -> Task:
    """Return the task of a question about a build.  Raises DetailRefusedError where the keys do not fit the build."""
    kind = KINDS[question.ask]
    return Task(
        kind=question.ask,
        build=build,
        detail=kind.detail(keys, build),
        tolerance=tolerance_si(kind.quantity_of(keys), question.tolerance, UNITS[build.units]),
    )


def _candidates(question: Question, written: Task, *, units: str, key: str, round_: int) -> Iterator[Task]:
    """Yield tasks with numbers drawn, only such as the scene's own rules allow."""
    chance = Random(f"{key}/{round_}")
    for _ in range(MOST_DRAWS):
        picks = [int(chance.random() * each.count) for each in question.ranges]
        # Odd and even rounds draw from two halves of the numbers, so that *again* never brings the same ones.
        if sum(picks) % 2 != round_ % 2:
            continue
        table, keys = copy.deepcopy(dict(question.scene.table)), copy.deepcopy(dict(question.keys))
        for each, pick in zip(question.ranges, picks, strict=True):
            for name in each.keys:
                put_value(table, keys, name, each.value(pick))
        try:
            task = task_of(question, table, keys, units=units)
        except (FileFaults, DetailRefusedError):
            continue
        if not (question.as_written_first and task == written):
            yield task
