"""What a way of thinking is: a name, a rule from what is seen to an answer, and what to say when an answer fits it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from lab.lesson.asked import Side
from lab.lesson.situation import Load, Situation


@dataclass(frozen=True, slots=True, kw_only=True)
class SideWay:
    """A way of thinking about which side goes down.

    predict: the side it would say, or None where it has nothing to go by.  sentence: may name the {beam}.
    """

    name: str
    predict: Callable[[Situation], Side | None]
    sentence: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PlaceWay:
    """A way of thinking about where it balances, about the whole body at once.

    predict: the place it would say, as a numeral.  sentence: may name the {place}, the {beam} and the {heaviest}.
    """

    name: str
    predict: Callable[[Situation], float | None]
    sentence: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PartWay:
    """A way of thinking about where it balances that treats one part amiss, so it has an answer for each part.

    predict: the place it would say if it were that part.  sentence: may name the {place} and the {part}.
    """

    name: str
    predict: Callable[[Situation, Load], float | None]
    sentence: str
