"""Ways of thinking about how far the balance point goes when one thing is changed.

Each is a small function from the change to a distance along, as a numeral, to the right positive.
"""

from __future__ import annotations

from dataclasses import dataclass

from lab.lesson.messages import msg
from lab.lesson.ways.way import Way


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One change, in numerals.

    weight: what is moved, added or taken off; 0 where only the line moves.  by: how far it moves, or how far from the
    balance point it is added; taken off, how far from it to the balance point; with the line, how far the line moves.
    whole, not_whole: the weight to divide by, and the one that it is taken for: without what is moved, or as it was
    before something was added or taken off.
    """

    weight: float
    by: float
    whole: float
    not_whole: float


def moment(seen: Change) -> float:
    """Weight times how far, shared by all the weight: the truth."""
    return seen.weight * seen.by / seen.whole


def whole_way(seen: Change) -> float | None:
    """As far as the part."""
    return seen.by if seen.weight else None


def half_way(seen: Change) -> float | None:
    """Half as far as the part."""
    return seen.by / 2 if seen.weight else None


def stays(seen: Change) -> float | None:
    """Not at all."""
    return 0.0 if seen.weight else None


def wrong_total(seen: Change) -> float | None:
    """By the share of the wrong weight: all but the part, or all as it was before."""
    return seen.weight * seen.by / seen.not_whole if seen.weight and seen.not_whole > 0 else None


def wrong_way(seen: Change) -> float | None:
    """As far as it does go, the other way."""
    return -moment(seen) if seen.weight else None


def adds(seen: Change) -> float | None:
    """Weight and distance added, not multiplied."""
    return (seen.weight + seen.by) / seen.whole if seen.weight else None


def with_the_line(seen: Change) -> float | None:
    """The reference line moves, and takes the balance point along."""
    return None if seen.weight else seen.by


def against_the_line(seen: Change) -> float | None:
    """The reference line moves, and the balance point goes the other way."""
    return None if seen.weight else -seen.by


SHIFT_WAYS: tuple[Way[Change, float], ...] = (
    Way(name="moment", predict=moment, sentence=msg("Weight times how far, shared by all the weight.")),
    Way(
        name="whole_way",
        predict=whole_way,
        sentence=msg(
            "{given} is the whole way. All the rest stays where it is, so the balance point goes only a share of it."
        ),
    ),
    Way(
        name="half_way",
        predict=half_way,
        sentence=msg("{given} is half-way. The share is the {part}'s weight out of all the weight."),
    ),
    Way(
        name="stays",
        predict=stays,
        sentence=msg(
            "It would stay if the {part} had no weight. It has some, so the balance point goes a share of the way."
        ),
    ),
    Way(
        name="wrong_total",
        predict=wrong_total,
        sentence=msg("{given} comes out when you divide by another weight. Divide by all that is there in the end."),
    ),
    Way(
        name="wrong_way",
        predict=wrong_way,
        sentence=msg("{given} is how far, the other way round. It goes to where there is more weight now."),
    ),
    Way(
        name="adds",
        predict=adds,
        sentence=msg("{given} comes out when weight and distance are added. Multiply them."),
    ),
    Way(
        name="with_the_line",
        predict=with_the_line,
        sentence=msg("{given} is how far the line moved. The line is only where you measure from."),
    ),
    Way(
        name="against_the_line",
        predict=against_the_line,
        sentence=msg("{given} is how much each arm changed. The body itself stays as it is."),
    ),
)
"""Every way of thinking about a shift; the first one is the truth."""
