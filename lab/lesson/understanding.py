"""What a learner's words or figures mean."""

from __future__ import annotations

from dataclasses import dataclass

from lab.lesson.asked import Answer, Asked
from lab.lesson.messages import Message


@dataclass(frozen=True, slots=True, kw_only=True)
class Understood:
    """An answer that was understood.  value: a side, or metres along.  shown: the same, to say back."""

    value: Answer
    shown: Message


@dataclass(frozen=True, slots=True, kw_only=True)
class Unclear:
    """An answer that was not understood.  message: asks again, kindly, with an example."""

    message: Message


def understand(asked: Asked, text: str) -> Understood | Unclear:
    """Return what `text` means as an answer to `asked`; never raises, whatever was typed."""
    raise NotImplementedError
