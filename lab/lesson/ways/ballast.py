"""Ways of thinking about ballast: where it goes, and how much of it there must be.

Each is a small function from what is seen, as numerals, to a place's name or to a weight.
"""

from __future__ import annotations

from dataclasses import dataclass

from lab.lesson.messages import msg
from lab.lesson.situation import SAME
from lab.lesson.ways.way import Way


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """Where ballast may go.  at: the end of it that helps most."""

    name: str
    at: float


@dataclass(frozen=True, slots=True, kw_only=True)
class OutOfLimits:
    """A body that balances outside its limits.

    weight, balance: all of it, and where it balances.  low, high: the limits.  reference: the line.
    spots: where ballast may go.  chosen: where it does go, once that is known.
    """

    weight: float
    balance: float
    low: float
    high: float
    reference: float
    spots: tuple[Spot, ...]
    chosen: Spot | None = None

    @property
    def edge(self) -> float:
        """The limit that it has to come to."""
        return self.low if self.balance < self.low else self.high

    @property
    def miss(self) -> float:
        """How far it is from there, with its sign."""
        return self.balance - self.edge


def nearest_to_limit(seen: OutOfLimits) -> str | None:
    """Right where it should balance."""
    return _nearest(seen, seen.edge)


def nearest_to_balance(seen: OutOfLimits) -> str | None:
    """Right where it balances now."""
    return _nearest(seen, seen.balance)


def heavy_side(seen: OutOfLimits) -> str | None:
    """Far out, but on the side that is too heavy already."""
    away = [(spot.at - seen.balance) * (1 if seen.miss > 0 else -1) for spot in seen.spots]
    farthest = max(away)
    return seen.spots[away.index(farthest)].name if farthest > 0 and away.count(farthest) == 1 else None


def moment(seen: OutOfLimits) -> float | None:
    """All the weight times how far it must come, shared by the arm from where it comes to: the truth."""
    return None if seen.chosen is None else _above_0(seen.weight * seen.miss, seen.edge - seen.chosen.at)


def arm_from_balance(seen: OutOfLimits) -> float | None:
    """The ballast's arm measured from where it balances now: its own weight is left out of the new total."""
    return None if seen.chosen is None else _above_0(seen.weight * seen.miss, seen.balance - seen.chosen.at)


def arm_from_line(seen: OutOfLimits) -> float | None:
    """The ballast's arm measured from the reference line."""
    if seen.chosen is None or abs(seen.chosen.at - seen.reference) <= SAME * abs(seen.miss):
        return None
    return abs(seen.weight * seen.miss / (seen.chosen.at - seen.reference))


def to_the_middle(seen: OutOfLimits) -> float | None:
    """As much as brings it to the middle between the limits."""
    middle = (seen.low + seen.high) / 2
    if seen.chosen is None or seen.low == seen.high:
        return None
    return _above_0(seen.weight * (seen.balance - middle), middle - seen.chosen.at)


def all_the_way(seen: OutOfLimits) -> float | None:
    """As large a share of all the weight as the way is of the limit's own distance from the line."""
    arm = abs(seen.edge - seen.reference)
    return None if seen.chosen is None or arm == 0 else seen.weight * abs(seen.miss) / arm


def _nearest(seen: OutOfLimits, place: float) -> str | None:
    """The spot nearest to a place; none where two are as near."""
    away = [abs(spot.at - place) for spot in seen.spots]
    nearest = min(away)
    return seen.spots[away.index(nearest)].name if away.count(nearest) == 1 else None


def _above_0(moment_: float, arm: float) -> float | None:
    return moment_ / arm if arm != 0 and moment_ / arm > 0 else None


BALLAST_PLACE_WAYS: tuple[Way[OutOfLimits, str], ...] = (
    Way(
        name="nearest_to_limit",
        predict=nearest_to_limit,
        sentence=msg("The {given} is near where it should balance. There its arm is short, so it takes more."),
    ),
    Way(
        name="nearest_to_balance",
        predict=nearest_to_balance,
        sentence=msg("The {given} is near where it balances now. Weight there hardly turns anything."),
    ),
    Way(
        name="heavy_side",
        predict=heavy_side,
        sentence=msg("The {given} is on the side that is too heavy already. Weight goes to the other side."),
    ),
)
"""Ways about where ballast goes."""

BALLAST_WEIGHT_WAYS: tuple[Way[OutOfLimits, float], ...] = (
    Way(name="moment", predict=moment, sentence=msg("All the weight times how far, shared by the arm.")),
    Way(
        name="arm_from_balance",
        predict=arm_from_balance,
        sentence=msg("{given} leaves the ballast out of the new weight. Measure its arm from the limit."),
    ),
    Way(
        name="arm_from_line",
        predict=arm_from_line,
        sentence=msg("{given} comes out when its arm starts at the line. Measure it from the limit."),
    ),
    Way(
        name="to_the_middle",
        predict=to_the_middle,
        sentence=msg("{given} brings it to the middle of the limits. The nearer limit is enough."),
    ),
    Way(
        name="all_the_way",
        predict=all_the_way,
        sentence=msg("{given} does not look where the ballast goes. Farther out it takes less."),
    ),
)
"""Ways about how much ballast there must be; the first one is the truth."""
