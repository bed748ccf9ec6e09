"""What an answer is told: what happened, the sum that decides, the idea it fits, and one bar where that idea fails."""

from __future__ import annotations

from dataclasses import dataclass

from lab.files import Build
from lab.lesson.asked import Answer, Asked, Side
from lab.lesson.messages import Message
from lab.mechanics import MomentSum


@dataclass(frozen=True, slots=True, kw_only=True)
class Contrast:
    """The same picture with one thing changed.

    label: the question it asks.  build: the changed scene, whole.  balance_point_m: along, in metres.
    goes: which end drops in the changed scene where it rests now.  happened: what that shows, as a sentence.
    """

    label: Message
    build: Build
    balance_point_m: float
    goes: Side
    happened: Message


@dataclass(frozen=True, slots=True, kw_only=True)
class Explanation:
    """Everything that follows a locked answer.

    right: within what counts.  goes: which end dropped at the learner's place, or `level`.
    headline: how far off, never a verdict.  happened: what was seen and where the sum puts it.
    going: the same in the present, for text ("the hook end drops").
    sum: the moment sum, from the build's reference line (place) or from the pivot (side).
    deciding: the name of the row that decides.  quotient: the last line of the sum, worded.
    idea: what the answer is the answer to, when exactly one way of thinking fits; for a right answer, why it is so.
    ways: names of every way of thinking that fits.  contrast: one thing changed, or None where nothing can be.
    """

    right: bool
    goes: Side
    headline: Message
    going: Message
    happened: Message
    sum: MomentSum
    quotient: Message
    deciding: str
    idea: Message | None
    ways: tuple[str, ...]
    contrast: Contrast | None


def explain(asked: Asked, value: Answer) -> Explanation:
    """Return what a learner is told after `value` was locked in.

    value: a side, or a place in metres.  Raises MechanicsError only if the build itself is unsound.
    """
    raise NotImplementedError
