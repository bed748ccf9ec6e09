"""What a kind of question is: everything that is known of `side`, `place` or any other, behind one face.

The run, the record, the screens and the terminal ask a kind and never look at its name.
"""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any, ClassVar

from lab.files import Build, KeyPath
from lab.lesson.asked import Asked
from lab.lesson.explanation import Explanation
from lab.lesson.forms import Answer, Form, Quantity
from lab.lesson.messages import NOTHING, Amount, Message, Value, message
from lab.lesson.task import Task

Found = tuple[KeyPath, str, str]
"""What is wrong with a question: (key path in it, what, cure)."""


class DetailRefusedError(Exception):
    """What a question says beside its scene does not fit the scene.  found: everything that is wrong with it."""

    def __init__(self, *found: Found) -> None:
        """found: at least one."""
        super().__init__("; ".join(what for _, what, _ in found))
        self.found = found


@dataclass(frozen=True, slots=True, kw_only=True)
class Fit:
    """One way of thinking and the answer it gives here.

    part: the part it treats amiss, for ways that are about one part.  answer: in the question's own form.
    sentence: the template that says what such an answer is the answer to.
    values: what goes into it beside the {part} and the answer as {place}.
    """

    way: str
    answer: Answer
    sentence: str
    part: str | None = None
    values: Mapping[str, Value] = field(default_factory=lambda: NOTHING)

    @property
    def name(self) -> str:
        """The way as a writer claims it: `middle`, or `far_end:pole`."""
        return self.way if self.part is None else f"{self.way}:{self.part}"

    def claimed_by(self, claim: str) -> bool:
        """Whether a writer's claim, `far_end` or `far_end:pole`, means this."""
        way, _, part = claim.partition(":")
        return way == self.way and part in ("", self.part)


class Kind(ABC):
    """One kind of question.

    name: as `ask` has it.  quantity: what its numbers measure; None where one chooses.
    needs, takes: the keys of a question's table that it must have and may have, beyond those of every question.
    ways, part_ways: the names of its ways of thinking; those about one part may be claimed as `way:part`.
    mute: ways that speak for nothing beside another, since they fit every other answer.
    is_along: whether its answers lie along a body, which then needs a length.  holds_loose: whether groups and tanks
    are plain parts to it.
    """

    name: ClassVar[str]
    quantity: ClassVar[Quantity | None] = None
    needs: ClassVar[tuple[str, ...]] = ()
    takes: ClassVar[tuple[str, ...]] = ()
    ways: ClassVar[tuple[str, ...]]
    part_ways: ClassVar[tuple[str, ...]] = ()
    mute: ClassVar[frozenset[str]] = frozenset()
    is_along: ClassVar[bool] = True
    holds_loose: ClassVar[bool] = True

    # --- what the question says -------------------------------------------------------------------------------

    def quantity_of(self, keys: Mapping[str, Any]) -> Quantity | None:
        """What its numbers measure, None where one chooses.  keys: what the question says beside its scene."""
        return self.quantity

    def detail(self, keys: Mapping[str, Any], build: Build) -> Any:
        """What the question says beside its scene, in SI.  Raises DetailRefusedError where it does not fit."""
        return None

    def scene_faults(self, build: Build) -> Iterator[Found]:
        """What a scene lacks to be asked about so."""
        yield from ()

    def task_faults(self, task: Task, truth: Answer) -> Iterator[Found]:
        """What is wrong with a question whose truth is known."""
        yield from ()

    def amounts(self, task: Task) -> Mapping[str, Amount]:
        """Amounts that a text may name beside those of the scene, such as {hang.at}."""
        return {}

    # --- what is so -------------------------------------------------------------------------------------------

    @abstractmethod
    def truth(self, task: Task) -> Answer:
        """The answer, by the mechanics.  Raises MechanicsError where there is none."""

    @abstractmethod
    def predictions(self, task: Task) -> tuple[Fit, ...]:
        """What every way of thinking but the right one would answer."""

    def claimed(self, task: Task, claims: tuple[str, ...]) -> tuple[Fit, ...] | None:
        """What the claimed ways alone would answer; None where asking them all is as little work."""
        return None

    def size(self, task: Task, truth: Answer) -> tuple[float, str] | None:
        """What a tolerance is measured beside, in SI, and what that is the size of; None where one chooses."""
        return None

    def clear(self, task: Task, truth: Answer) -> float:
        """How far from the truth a claimed way must lie to show itself, in SI."""
        return 0.0

    @abstractmethod
    def is_sound(self, task: Task, truth: Answer, *, written: Answer) -> bool:
        """Whether drawn numbers make a question that can be answered and is no tie by accident.

        written: the truth of the numbers as they were written.
        """

    # --- how it is asked and answered -------------------------------------------------------------------------

    @abstractmethod
    def form(self, task: Task) -> Form:
        """The form of its answers."""

    @abstractmethod
    def prompt(self, task: Task) -> Message:
        """What to do, in one sentence."""

    @abstractmethod
    def what_to_type(self, asked: Asked) -> Message:
        """What to type where there is only text."""

    def given(self, asked: Asked) -> tuple[Message, ...]:
        """What is given beside the weights of the scene and where they sit, a line each."""
        return ()

    def pad_half_m(self, task: Task) -> float:
        """Half the width of what the scene rests on, m: its pivot's, where it has one."""
        return 0.0 if task.build.pivot is None else task.build.pivot.pad_m

    def scene_with(self, asked: Asked, value: Answer) -> Build:
        """The scene with an answer carried out: hung there, moved there.  As it was where an answer changes nothing."""
        return asked.build

    @abstractmethod
    def explain(self, asked: Asked, value: Answer, fit: Fit | None, ways: tuple[str, ...]) -> Explanation:
        """What a learner is told after `value` was locked in.

        fit: the one way of thinking that it fits, if one does.  ways: the names of all that it fits.
        """

    def idea(self, asked: Asked, fit: Fit | None) -> Message | None:
        """What the answer is the answer to; None where no one way of thinking fits."""
        if fit is None:
            return None
        return message(fit.sentence, **{"part": fit.part or "", **fit.values})
