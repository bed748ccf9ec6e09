"""A question as it is put to one learner: its numbers drawn, its truth computed by the mechanics."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Literal

from lab.files import Build, UnitSystem
from lab.lesson.forms import Answer, Form
from lab.lesson.messages import Message
from lab.lesson.task import Task

Side = Literal["left", "right", "level"]
SIDES: tuple[Side, ...] = ("left", "level", "right")


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """One question with its numbers.

    title, text, prompt: what is asked, what is given, what to do.  hints: in steps; none of them holds the number.
    build: the scene; a side question has its pivot, a place question none.
    detail: what the question says beside its scene, in SI; None where the scene is all.
    form: the form of its answer.  truth: an answer of that form.
    tolerance: half the width that counts, in SI; None where one chooses.
    tolerance_m: the same where the answer is a length.
    pad_half_m: half the width of the finger's pad in metres, so that what counts as right is what stays up; 0 is a pin.
    decimals: figures after the point of a number in the build's own unit.
    left_m, right_m: the ends of the body along, in metres; a marker stops there.
    claims: ways of thinking the writer says this question tells apart.
    """

    lesson: str
    question_name: str
    index: int
    count: int
    kind: str
    seed: int
    round: int
    title: Message
    text: Message
    prompt: Message
    hints: tuple[Message, ...]
    build: Build
    units: UnitSystem
    detail: Any
    form: Form
    truth: Answer
    tolerance: float | None
    tolerance_m: float | None
    pad_half_m: float
    decimals: int
    left_m: float
    right_m: float
    claims: tuple[str, ...]
    varied: bool

    @property
    def task(self) -> Task:
        """What the truth depends on."""
        return Task(kind=self.kind, build=self.build, detail=self.detail, tolerance=self.tolerance)
