"""A lesson as it was written: its questions, each with its scene still open to varied numbers."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Any, Literal

from lab.files import Build

Level = Literal["early", "middle", "later"]
KeyPath = tuple[str | int, ...]
NO_KEYS: Mapping[str, Any] = MappingProxyType({})


@dataclass(frozen=True, slots=True, kw_only=True)
class Range:
    """What may vary in a question: one or more values of the scene, drawn together.

    keys: such as ("hook.weight",), several when they must stay alike.  low, high, step: in the file's own units.
    """

    keys: tuple[str, ...]
    low: float
    high: float
    step: float

    @property
    def count(self) -> int:
        """How many tidy numbers the range holds."""
        return int((self.high - self.low) / self.step + 1e-9) + 1

    def value(self, index: int) -> float:
        """Return the tidy number at `index`, 0 to count − 1."""
        return round(self.low + index * self.step, 9)


@dataclass(frozen=True, slots=True, kw_only=True)
class SceneSource:
    """Where a question's build stands: the table as written and the line of every key in it.

    at: the path of the table inside its file, () for a file of its own.
    """

    table: Mapping[str, Any]
    lines: Mapping[KeyPath, int]
    file: str
    at: KeyPath


@dataclass(frozen=True, slots=True, kw_only=True)
class Borrowed:
    """Where a question is from that is asked again among others: its numbers and its record are those of its home.

    lesson: the name of its own lesson.  units: that lesson's.  round: what it is asked with first; a later one than 0
    brings other numbers than those that were written.
    """

    lesson: str
    units: str
    round: int = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """One question as written.

    keys: what the question says beside its scene, as written: where something hangs, what is moved.
    tolerance: half the width that still counts, in the scene's own unit; None where one chooses.
    claims: the ways of thinking that the writer says this question tells apart.
    is_silent: nothing is said of ways, not even that there are none; then all of them are looked at.
    expect: what the writer expects the truth to be; only ever compared.
    as_written_first: the numbers as they stand are asked first, and varied ones only after *again*.
    build: the scene as it was read; None where it has not been.
    """

    name: str
    ask: str
    title: str
    say: str
    scene: SceneSource
    keys: Mapping[str, Any] = field(default_factory=lambda: NO_KEYS)
    tolerance: float | None = None
    claims: tuple[str, ...] = ()
    is_silent: bool = False
    hints: tuple[str, ...] = ()
    ranges: tuple[Range, ...] = ()
    as_written_first: bool = False
    expect: str | float | tuple[float, ...] | None = None
    borrowed: Borrowed | None = None
    build: Build | None = field(default=None, compare=False, repr=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class TeachersPage:
    """What a writer tells the teacher; each of the lists in sentences.

    minutes: of a class, talk included.  have: what to have on the table, to do it with real things.
    do: the real-table version, a step each.  expect: what learners commonly say, and what it means.
    """

    minutes: int
    have: tuple[str, ...]
    do: tuple[str, ...]
    expect: tuple[str, ...]
    cautions: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Lesson:
    """A lesson that has been read and found sound.

    name: the stem of its file, which commands use.  units: those of scenes that name none.
    teacher: None where the file has no `[teacher]`.
    """

    name: str
    title: str
    level: Level
    aim: str
    units: str
    questions: tuple[Question, ...]
    file: str
    teacher: TeachersPage | None = None
