"""From a question as written to a question with numbers: draw, build, compute the truth, word the text."""

from __future__ import annotations

from lab.lesson.asked import Asked
from lab.lesson.lesson import Lesson


def ask(lesson: Lesson, index: int, *, seed: int, round: int = 0) -> Asked:
    """Return question `index` of a lesson with its numbers drawn and its truth computed.

    seed: fixes the numbers.  round: 0 first; each *again* adds one and draws new numbers.
    Raises IndexError if there is no such question.
    """
    raise NotImplementedError
