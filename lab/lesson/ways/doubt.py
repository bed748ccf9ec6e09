"""Ways of thinking about how far off a balance point may be.

Each is a small function from what every measurement does to the balance point to a distance, as a numeral.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import hypot

from lab.lesson.messages import msg
from lab.lesson.ways.way import Way


@dataclass(frozen=True, slots=True, kw_only=True)
class Doubts:
    """What each doubt does to the balance point, in numerals of length.

    weights, places: one each part or set of parts, by its doubtful weight and its doubtful place.
    rulers: the doubts of the places as they are, each at its own part.
    """

    weights: tuple[float, ...]
    places: tuple[float, ...]
    rulers: tuple[float, ...]

    @property
    def all(self) -> tuple[float, ...]:
        """Every contribution, none below 0."""
        return tuple(abs(each) for each in (*self.weights, *self.places) if each)


def quadrature(seen: Doubts) -> float:
    """Squares added, and the root taken: the truth."""
    return hypot(*seen.all)


def adds_up(seen: Doubts) -> float | None:
    """All of them added, as if they all went wrong the same way."""
    return sum(seen.all) if len(seen.all) > 1 else None


def largest_only(seen: Doubts) -> float | None:
    """The largest alone."""
    return max(seen.all) if len(seen.all) > 1 else None


def weights_left_out(seen: Doubts) -> float | None:
    """Only the places are in doubt."""
    return hypot(*seen.places) if any(seen.weights) and any(seen.places) else None


def places_left_out(seen: Doubts) -> float | None:
    """Only the weights are in doubt."""
    return hypot(*seen.weights) if any(seen.weights) and any(seen.places) else None


def not_shared(seen: Doubts) -> float | None:
    """A place that is off moves the balance point as far, however little the part weighs."""
    return hypot(*seen.weights, *seen.rulers) if any(seen.rulers) else None


DOUBT_WAYS: tuple[Way[Doubts, float], ...] = (
    Way(name="quadrature", predict=quadrature, sentence=msg("Each doubt squared, added, and the root taken.")),
    Way(
        name="adds_up",
        predict=adds_up,
        sentence=msg("{given} comes out when all go wrong the same way at once. Add the squares, then take the root."),
    ),
    Way(
        name="largest_only",
        predict=largest_only,
        sentence=msg("{given} is the largest doubt alone. The others add to it."),
    ),
    Way(
        name="weights_left_out",
        predict=weights_left_out,
        sentence=msg("{given} is what the ruler leaves in doubt. The scale leaves some too."),
    ),
    Way(
        name="places_left_out",
        predict=places_left_out,
        sentence=msg("{given} is what the scale leaves in doubt. The ruler leaves some too."),
    ),
    Way(
        name="not_shared",
        predict=not_shared,
        sentence=msg("{given} counts each place in full. A part moves the balance point only by its share of weight."),
    ),
)
"""Every way of thinking about a doubt; the first one is the truth."""
