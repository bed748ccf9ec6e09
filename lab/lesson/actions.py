"""What a learner can do in a lesson."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from lab.lesson.forms import Answer

Sureness = Literal["guess", "fairly", "certain"]
SURENESS: tuple[Sureness, ...] = ("guess", "fairly", "certain")


@dataclass(frozen=True, slots=True, kw_only=True)
class Give:
    """Say an answer in words or figures."""

    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Set:
    """Show an answer on the picture.  value: of the question's form.  given: as the screen showed it."""

    value: Answer
    given: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Sure:
    """Say how sure one is."""

    how: Sureness


@dataclass(frozen=True, slots=True, kw_only=True)
class Hint:
    """Ask for the next hint."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LockIn:
    """Commit the answer.  seconds: since the question was put."""

    seconds: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Watched:
    """Say that it has come to rest."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Foresee:
    """Say what the changed scene will do, before it is shown.

    key: of an option.  given: as it was typed or shown.  seconds: since the explanation was there.
    """

    key: str
    given: str
    seconds: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Again:
    """Ask for the same question with new numbers.  seconds: since this one was put."""

    seconds: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Next:
    """Go on to the next question."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Skip:
    """Go on without answering.  seconds: since the question was put."""

    seconds: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Leave:
    """Leave the lesson.  seconds: since the question was put."""

    seconds: float = 0.0


Action = Give | Set | Sure | Hint | LockIn | Watched | Foresee | Again | Next | Skip | Leave
