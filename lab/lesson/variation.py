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
from lab.lesson.matching import hidden, mixed_up, predictions, truth_of
from lab.lesson.redrawing import Redrawing
from lab.lesson.task import Task, tolerance_si
from lab.lesson.varied_values import put_in_keys, put_in_scene, scene_names
from lab.mechanics import MechanicsError

MOST_DRAWS = 400
"""How often numbers are drawn anew, every second time from the wrong half (see `_candidates`), before the best
of them is taken.  A range in which one number in ten will do fails less than once in a hundred million times."""

Quality = Literal["as written", "clear", "blurred", "none found"]
Verdict = Literal["clear", "blurred", "unsound"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Draw:
    """The numbers of one asking.

    quality: `clear` where every claimed way is told apart, `blurred` where one claimed way is like another,
    `none found` where no numbers drawn made a sound question, so that the written ones are asked.
    tries: how many draws it took, those from the wrong half among them.
    """

    task: Task
    quality: Quality
    tries: int = 0


def drawn(question: Question, *, lesson: str, units: str, seed: int, round_: int) -> Draw:
    """Return the task of a question with its numbers.

    units: the lesson's, for a scene that names none.  Raises FileFaults only where the scene as written is unsound.
    """
    return Drawing(question, lesson=lesson, units=units).draw(seed=seed, round_=round_)


class Drawing:
    """Draws the numbers of one question, any number of times.  written: its task as it was written."""

    def __init__(self, question: Question, *, lesson: str, units: str) -> None:
        """Read the scene once.  Raises FileFaults where it is unsound."""
        if question.build is not None:
            self.written = task_about(question, question.build, question.keys)
        else:
            self.written = task_of(question, question.scene.table, question.keys, units=units)
        self._question = question
        self._key = f"{lesson}/{question.name}"
        self._units = units
        named = frozenset(name for each in question.ranges for name in each.keys)
        table = question.scene.table
        self._scene_names = named & frozenset(scene_names(table))
        suits = Redrawing.suits(table, self.written.build, named)
        self._redrawing = Redrawing(table, self.written.build) if suits else None
        self._meant = truth_of(self.written)
        self._known: dict[tuple[int, ...], tuple[Task | None, Verdict]] = {}

    def draw(self, *, seed: int, round_: int) -> Draw:
        """Return the task with its numbers."""
        question, written = self._question, self.written
        if not question.ranges or (question.as_written_first and round_ == 0):
            return Draw(task=written, quality="as written")
        fallback = None
        for tries, picks in self._candidates(f"{self._key}/{seed}", round_=round_):
            task, verdict = self._judged(picks)
            if task is None or (question.as_written_first and task == written):
                continue
            if verdict == "clear":
                return Draw(task=task, quality="clear", tries=tries)
            if verdict == "blurred" and fallback is None:
                fallback = task
        if fallback is not None:
            return Draw(task=fallback, quality="blurred", tries=MOST_DRAWS)
        return Draw(task=written, quality="none found", tries=MOST_DRAWS)

    def _candidates(self, key: str, *, round_: int) -> Iterator[tuple[int, tuple[int, ...]]]:
        """Yield which numbers of the ranges are drawn, and how many draws it took."""
        chance = Random(f"{key}/{round_}")
        for tries in range(1, MOST_DRAWS + 1):
            picks = tuple(int(chance.random() * each.count) for each in self._question.ranges)
            # Odd and even rounds draw from two halves of the numbers, so that *again* never brings the same ones.
            if sum(picks) % 2 == round_ % 2:
                yield tries, picks

    def _judged(self, picks: tuple[int, ...]) -> tuple[Task | None, Verdict]:
        """The task with these numbers, and what it is good for; numbers that come up again are not judged again."""
        if picks not in self._known:
            ranges = zip(self._question.ranges, picks, strict=True)
            task = self._task({name: each.value(pick) for each, pick in ranges for name in each.keys})
            self._known[picks] = (task, "unsound" if task is None else self._verdict(task))
        return self._known[picks]

    def _verdict(self, task: Task) -> Verdict:
        try:
            truth = truth_of(task)
            if not KINDS[task.kind].is_sound(task, truth, written=self._meant):
                return "unsound"
        except MechanicsError:
            return "unsound"
        claims = self._question.claims
        if not claims:
            return "clear"
        few = KINDS[task.kind].claimed(task, claims)
        if hidden(task, claims, truth, predictions(task) if few is None else few):
            return "unsound"
        return "blurred" if mixed_up(task, claims, predictions(task)) else "clear"

    def _task(self, values: Mapping[str, float]) -> Task | None:
        """The task with these values, None where the scene, or what is said beside it, does not allow them."""
        question = self._question
        in_scene = {name: value for name, value in values.items() if name in self._scene_names}
        keys: dict[str, Any] = dict(question.keys)
        if len(in_scene) < len(values):
            keys = copy.deepcopy(keys)
            for name in values.keys() - in_scene.keys():
                put_in_keys(keys, name, values[name])
        try:
            if self._redrawing is not None:
                build = self._redrawing.build(in_scene)
                return None if build is None else task_about(question, build, keys)
            table = copy.deepcopy(dict(question.scene.table))
            for name, value in in_scene.items():
                put_in_scene(table, name, value)
            return task_of(question, table, keys, units=self._units)
        except (FileFaults, DetailRefusedError):
            return None


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
