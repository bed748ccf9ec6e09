"""What an answer is told: what happened, the sum that decides, the idea it fits, one change where that idea fails."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from lab.lesson.asked import Side
from lab.lesson.contrast import Contrast
from lab.lesson.messages import Message
from lab.mechanics import MomentSum


@dataclass(frozen=True, slots=True, kw_only=True)
class Explanation:
    """Everything that follows a locked answer.

    right: within what counts.  goes: which end dropped with the learner's answer carried out, or `level`.
    headline: how far off, never a verdict.  going: what is seen as it is let go, for text.
    happened: what was seen and what the sum says.  said: the answer beside the truth, for text.
    sum: the moment sum, arms measured from the build's reference line or from the pivot, as `arms_from` says.
    quotient: the last line of the sum.  deciding: the name of the row that decides.
    working: the little sum that decides, a line each, where it is another than the moment sum; else none.
    idea: what the answer is the answer to, when exactly one way of thinking fits; for a right answer, why.
    why: what decides, whatever was answered.
    ways: names of every way of thinking that fits.  contrast: one thing changed; None where nothing can be.
    """

    right: bool
    goes: Side
    headline: Message
    going: Message
    happened: Message
    said: Message
    sum: MomentSum
    quotient: Message
    deciding: str
    idea: Message | None
    why: Message
    ways: tuple[str, ...]
    contrast: Contrast | None
    arms_from: Literal["line", "pivot"] = "line"
    working: tuple[Message, ...] = ()
