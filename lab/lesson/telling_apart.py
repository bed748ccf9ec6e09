"""Which ways of thinking a question can tell apart, whatever numbers are drawn, with some numbers, or never."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from lab.lesson.forms import SLACK, Answer, same
from lab.lesson.kinds import kind_of
from lab.lesson.matching import predictions, truth_of
from lab.lesson.task import Task

RIGHT = "the right answer"
"""What the truth is called among the ways."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ToldApart:
    """What a question's answers tell about how somebody thinks; ways by the names that a writer claims them by.

    always: an answer that no other way and not the truth has, with all numbers drawn.  sometimes: with some of them.
    never: groups whose answers are the same with all of them; RIGHT may be one of a group.
    mixed: with each of them like another, but not always the same one.
    """

    question: str
    always: tuple[str, ...]
    sometimes: tuple[str, ...]
    never: tuple[tuple[str, ...], ...]
    mixed: tuple[str, ...]


def told_apart(question: str, tasks: Sequence[Task]) -> ToldApart:
    """Return which ways one question tells apart.  tasks: it with several drawings of its numbers, at least one."""
    drawn = [(answers_of(task), task.within) for task in tasks]
    lone = [_lone(answers, within=within) for answers, within in drawn]
    times = Counter(name for names in lone for name in names)
    known = Counter(name for answers, _ in drawn for name in answers)
    never = _alike(drawn)
    grouped = {name for group in never for name in group}
    ways = [name for name in known if name != RIGHT]
    return ToldApart(
        question=question,
        always=tuple(name for name in ways if times[name] == known[name]),
        sometimes=tuple(name for name in ways if 0 < times[name] < known[name]),
        never=never,
        mixed=tuple(name for name in ways if times[name] == 0 and name not in grouped),
    )


def never_apart(tasks: Sequence[Task]) -> tuple[tuple[str, ...], ...]:
    """Return groups of ways of thinking whose answers are the same whatever numbers are drawn."""
    return _alike([(answers_of(task), task.within) for task in tasks])


def answers_of(task: Task) -> dict[str, Answer]:
    """The truth, and what every way of thinking says, by name; ways that fit any answer say nothing of their own."""
    mute = kind_of(task).mute
    said = {each.name: each.answer for each in predictions(task) if each.way not in mute}
    return {RIGHT: truth_of(task)} | said


def _alike(drawn: Sequence[tuple[dict[str, Answer], float]]) -> tuple[tuple[str, ...], ...]:
    names = [name for name in drawn[0][0] if all(name in answers for answers, _ in drawn)]
    groups: list[list[str]] = []
    for name in names:
        for group in groups:
            if all(same(answers[group[0]], answers[name], within=within) for answers, within in drawn):
                group.append(name)
                break
        else:
            groups.append([name])
    return tuple(tuple(group) for group in groups if len(group) > 1)


def _lone(answers: dict[str, Answer], *, within: float) -> list[str]:
    """The names whose answer is nobody else's."""
    if all(isinstance(answer, str) for answer in answers.values()):
        times = Counter(answers.values())
        return [name for name, answer in answers.items() if times[answer] == 1]
    if all(isinstance(answer, float) for answer in answers.values()):
        return _lone_numbers(answers, within=within)
    return [
        name
        for name, answer in answers.items()
        if not any(same(answer, other, within=within) for key, other in answers.items() if key != name)
    ]


def _lone_numbers(answers: dict[str, Answer], *, within: float) -> list[str]:
    """The same for single numbers: in order, only neighbours need be looked at."""
    order = sorted((float(answer), name) for name, answer in answers.items() if isinstance(answer, float))
    far = [after[0] - before[0] > within + SLACK for before, after in pairwise(order)]
    return [
        name for (_, name), before, after in zip(order, [True, *far], [*far, True], strict=True) if before and after
    ]
