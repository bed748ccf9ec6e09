"""What a way of thinking is: a name, a rule from what is seen to an answer, and what to say when an answer fits it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Generic, TypeVar

from lab.lesson.situation import Load, Situation

Seen_contra = TypeVar("Seen_contra", contravariant=True)
Given_co = TypeVar("Given_co", covariant=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class Way(Generic[Seen_contra, Given_co]):
    """A way of thinking about what is seen.

    predict: the answer it would give, or None where it has nothing to go by.  sentence: what such an answer is the
    answer to; may name what the kind of question puts into it.
    """

    name: str
    predict: Callable[[Seen_contra], Given_co | None]
    sentence: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PartWay:
    """A way of thinking about where it balances that treats one part amiss, so it has an answer for each part.

    predict: the place it would say if it were that part.  sentence: may name the {place} and the {part}.
    """

    name: str
    predict: Callable[[Situation, Load], float | None]
    sentence: str
