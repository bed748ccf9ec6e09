"""Varied numbers: drawn from a seed, tidy, always solvable, never on an accidental tie."""

from __future__ import annotations

import copy
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from random import Random
from typing import Any, Literal

from lab.files import UNITS, Build, FileFaults, build_from_table
from lab.lesson.asked import Answer
from lab.lesson.lesson import Question, SceneSource
from lab.lesson.matching import blurs
from lab.lesson.situation import situation_of
from lab.lesson.truth import goes_at, pivot_of, truth_of
from lab.mechanics import MechanicsError, turn_about

MOST_DRAWS = 400
"""How often numbers are drawn anew, every second time from the wrong half (see `_candidates`), before the best
of them is taken.  A range in which one number in ten will do fails less than once in a hundred million times."""

CLEAR_SHARE = 0.03
"""A side must drop by at least this share of all that pulls, or it is a tie by accident."""

Quality = Literal["as written", "clear", "blurred", "none found"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Draw:
    """The numbers of one asking.

    quality: `clear` where every claimed way is told apart, `blurred` where one claimed way is like another,
    `none found` where no numbers drawn made a sound question, so that the written ones are asked.
    """

    build: Build
    quality: Quality


def drawn(question: Question, *, lesson: str, units: str, seed: int, round_: int) -> Draw:
    """Return the build of a question with its numbers.

    units: the lesson's, for a scene that names none.  Raises FileFaults only where the scene as written is unsound.
    """
    written = built(question, question.scene.table, units=units)
    if not question.ranges or (question.as_written_first and round_ == 0):
        return Draw(build=written, quality="as written")
    fallback = None
    for build in _candidates(question, written, units=units, key=f"{lesson}/{question.name}/{seed}", round_=round_):
        if not _sound(question, build, written):
            continue
        faint = blurs(question.ask, build, question.claims, tolerance_m=tolerance_m(question, build))
        if not faint:
            return Draw(build=build, quality="clear")
        if fallback is None and all(blur.other not in ("", "truth") for blur in faint):
            fallback = build
    if fallback is not None:
        return Draw(build=fallback, quality="blurred")
    return Draw(build=written, quality="none found")


def built(question: Question, table: Mapping[str, Any], *, units: str) -> Build:
    """Return the build of a question's scene.  Raises FileFaults with everything that is wrong with it."""
    source: SceneSource = question.scene
    build = build_from_table(dict(table), source.lines, source.file, at=source.at, title=question.title, units=units)
    return build.loose()


def tolerance_m(question: Question, build: Build) -> float | None:
    """Return half the width that counts, in metres; None for a side."""
    return None if question.tolerance is None else UNITS[build.units].to_m(question.tolerance)


def _candidates(question: Question, written: Build, *, units: str, key: str, round_: int) -> Iterator[Build]:
    """Yield builds with numbers drawn, only such as the scene's own rules allow."""
    chance = Random(f"{key}/{round_}")
    for _ in range(MOST_DRAWS):
        picks = [int(chance.random() * each.count) for each in question.ranges]
        # Odd and even rounds draw from two halves of the numbers, so that *again* never brings the same ones.
        if sum(picks) % 2 != round_ % 2:
            continue
        table = copy.deepcopy(dict(question.scene.table))
        for each, pick in zip(question.ranges, picks, strict=True):
            for name in each.keys:
                put_value(table, name, each.value(pick))
        try:
            build = built(question, table, units=units)
        except FileFaults:
            continue
        if not (question.as_written_first and build == written):
            yield build


def _sound(question: Question, build: Build, written: Build) -> bool:
    """Whether the question can be answered, and is no tie unless it was written as one."""
    try:
        truth = truth_of(question.ask, build)
        return _clear_place(question, build, truth) and _clear_side(question, build, written, truth)
    except MechanicsError:
        return False


def _clear_place(question: Question, build: Build, truth: Answer) -> bool:
    if not isinstance(truth, float):
        return True
    seen, to_m = situation_of(build), UNITS[build.units].to_m
    room_m = tolerance_m(question, build) or 0.0
    return to_m(seen.left) + room_m <= truth <= to_m(seen.right) - room_m


def _clear_side(question: Question, build: Build, written: Build, truth: Answer) -> bool:
    if isinstance(truth, float):
        return True
    if truth_of(question.ask, written) == "level":
        return truth == "level"
    pivot = pivot_of(build)
    turn = turn_about(build.all_parts, pivot)
    if truth == "level" or abs(turn.moment_kg_m) < CLEAR_SHARE * turn.scale_kg_m:
        return False
    # On a pad a near miss rests on its edge: it must drop just as clearly with the pad twice as wide.
    return pivot.pad_m == 0 or goes_at(build, pivot.at_m, pad_half_m=2 * pivot.pad_m) == truth


def value_names(table: Mapping[str, Any]) -> tuple[str, ...]:
    """Return the names of the values of a sound scene that may vary, such as `pole.weight`."""
    names = []
    if "bar" in table:
        names += ["bar.length", "bar.weight"]
    for part in table.get("part", ()):
        names += [f"{part['name']}.weight", f"{part['name']}.at"]
        if "length" in part.get("shape", {}):
            names.append(f"{part['name']}.length")
    if "pivot" in table:
        names.append("pivot.at")
    return tuple(names)


def put_value(table: dict[str, Any], name: str, value: float) -> None:
    """Put a value into a sound scene's table in place.  name: one of `value_names`."""
    owner, _, key = name.rpartition(".")
    if owner in ("bar", "pivot") and owner in table:
        table[owner][key] = value
        return
    part = next(part for part in table["part"] if part["name"] == owner)
    if key == "length":
        part["shape"]["length"] = value
    elif key == "at" and isinstance(part["at"], list):
        part["at"][0] = value
    else:
        part[key] = value
