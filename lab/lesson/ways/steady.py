"""Ways of thinking about whether an airframe is steady in pitch.

Each is a small function from where things are along, as numerals, to "steady", "neutral" or "runs away".
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from lab.lesson.messages import msg
from lab.lesson.ways.way import Way

Goes = Literal["steady", "neutral", "runs away"]

SAME_SHARE = 0.005
"""Places nearer to each other than this share of the mean chord are one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AlongAirframe:
    """Where things are.  neutral: the neutral point.  balance: the balance point.  quarter: the wing's quarter chord.

    chord: the wing's mean chord.  nose, tail: the ends of the body.  has_tail: whether a surface lies behind the wing.
    """

    neutral: float
    balance: float
    quarter: float
    chord: float
    nose: float
    tail: float
    has_tail: bool


def margin(seen: AlongAirframe) -> Goes:
    """Ahead of the neutral point it is steady: the truth."""
    return _ahead(seen, seen.neutral)


def wing_alone(seen: AlongAirframe) -> Goes:
    """The wing alone decides: ahead of its quarter chord it is steady, whatever the tail does."""
    return _ahead(seen, seen.quarter)


def middle_decides(seen: AlongAirframe) -> Goes | None:
    """Ahead of the middle of its length it is steady."""
    return _ahead(seen, (seen.nose + seen.tail) / 2) if seen.tail > seen.nose else None


def tail_does_it(seen: AlongAirframe) -> Goes:
    """With a tail it is steady, wherever it balances; without one it runs away."""
    return "steady" if seen.has_tail else "runs away"


def swapped(seen: AlongAirframe) -> Goes:
    """A heavy nose makes it run away."""
    turned: dict[Goes, Goes] = {"steady": "runs away", "runs away": "steady", "neutral": "neutral"}
    return turned[margin(seen)]


def _ahead(seen: AlongAirframe, place: float) -> Goes:
    if abs(place - seen.balance) <= SAME_SHARE * seen.chord:
        return "neutral"
    return "steady" if seen.balance < place else "runs away"


STEADY_WAYS: tuple[Way[AlongAirframe, Goes], ...] = (
    Way(name="margin", predict=margin, sentence=msg("Ahead of its neutral point it is steady.")),
    Way(
        name="wing_alone",
        predict=wing_alone,
        sentence=msg("That looks at the wing alone. The other surfaces shift the neutral point."),
    ),
    Way(
        name="middle_decides",
        predict=middle_decides,
        sentence=msg("That looks at the middle of its length. The neutral point depends on the surfaces alone."),
    ),
    Way(
        name="tail_does_it",
        predict=tail_does_it,
        sentence=msg("A tail only shifts the neutral point. With or without one, it matters where it balances."),
    ),
    Way(
        name="swapped",
        predict=swapped,
        sentence=msg("That is the other way round: weight farther ahead makes it steadier."),
    ),
)
"""Every way of thinking about steadiness; the first one is the truth."""
