"""What comes of a learner's action: an answer for the record, a question back, or a refusal."""

from __future__ import annotations

from dataclasses import dataclass

from lab.lesson.messages import Message


@dataclass(frozen=True, slots=True, kw_only=True)
class Answered:
    """One answer, in plain values, as the record keeps it.

    scene: the build as TOML text.  given: as typed or shown.  understood, truth: the key of an option, or one number
    or several in the scene's own unit (times in seconds).  tolerance: in that unit, None where one chooses.
    sure: None if it was never said.
    ways: every way of thinking that fits.  locked: False when the learner left with an answer given but not locked in.
    """

    lesson: str
    question: str
    kind: str
    seed: int
    round: int
    scene: str
    given: str
    understood: str
    truth: str
    tolerance: float | None
    right: bool
    sure: str | None
    seconds: float
    hints: int
    ways: tuple[str, ...]
    locked: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Unclear:
    """The answer was not understood.  message: asks again, with an example."""

    message: Message


@dataclass(frozen=True, slots=True, kw_only=True)
class Refusal:
    """The action cannot be done now.  message: what would do."""

    message: Message


RunEvent = Answered | Unclear | Refusal
