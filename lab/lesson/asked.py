"""A question as it is put to one learner: its numbers drawn, its truth computed by the mechanics."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from lab.files import Build, UnitSystem
from lab.lesson.lesson import Ask
from lab.lesson.messages import Message

Side = Literal["left", "right", "level"]
SIDES: tuple[Side, ...] = ("left", "level", "right")

Answer = Side | float
"""What can be given: the end that goes down, or a place in metres in the build's own coordinates."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """One question with its numbers.

    title, text, prompt: what is asked, what is given, what to do.  hints: in steps; none of them holds the number.
    build: the scene; a side question has its pivot, a place question none.
    truth: the end that goes down, or the balance point in metres.
    tolerance_m: half the width that counts as right, in metres (place only).
    pad_half_m: half the width of the finger's pad in metres, so that what counts as right is what stays up; 0 is a pin.
    decimals: figures after the point of a place in the build's length unit.
    left_m, right_m: the ends of the body along, in metres; a marker stops there.
    claims: ways of thinking the writer says this question tells apart.
    """

    lesson: str
    question_name: str
    index: int
    count: int
    kind: Ask
    seed: int
    round: int
    title: Message
    text: Message
    prompt: Message
    hints: tuple[Message, ...]
    build: Build
    units: UnitSystem
    truth: Answer
    tolerance_m: float | None
    pad_half_m: float
    decimals: int
    left_m: float
    right_m: float
    claims: tuple[str, ...]
    varied: bool
