"""Ways of thinking about tanks: which to burn first, which way to pump, and when a limit is reached.

Each is a small function from what is seen, as numerals, to a name or to a time in seconds.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from lab.lesson.messages import msg
from lab.lesson.ways.way import Way


@dataclass(frozen=True, slots=True, kw_only=True)
class TankSeen:
    """A tank.  weight: of its contents.  drawn: weight it loses a second at the start."""

    name: str
    at: float
    weight: float
    drawn: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class PumpSeen:
    """A pump that may run.  source, target: the places of its tanks; source_weight: of what is in the first."""

    name: str
    source: float
    target: float
    source_weight: float


@dataclass(frozen=True, slots=True, kw_only=True)
class TanksSeen:
    """Tanks in a body.  weight, balance: all of it at the start.  low, high: the limits along.

    all_burned: when nothing is left to burn, s.
    """

    weight: float
    balance: float
    low: float
    high: float
    tanks: tuple[TankSeen, ...]
    pumps: tuple[PumpSeen, ...] = ()
    all_burned: float | None = None


def fullest(seen: TanksSeen) -> str | None:
    """The tank with most in it."""
    return _one([tank.weight for tank in seen.tanks], [tank.name for tank in seen.tanks])


def emptiest(seen: TanksSeen) -> str | None:
    """The tank with least in it."""
    return _one([-tank.weight for tank in seen.tanks], [tank.name for tank in seen.tanks])


def nearest(seen: TanksSeen) -> str | None:
    """The tank nearest to the balance point."""
    return _one([-abs(tank.at - seen.balance) for tank in seen.tanks], [tank.name for tank in seen.tanks])


def farthest(seen: TanksSeen) -> str | None:
    """The tank farthest from the balance point."""
    return _one([abs(tank.at - seen.balance) for tank in seen.tanks], [tank.name for tank in seen.tanks])


def out_of_fullest(seen: TanksSeen) -> str | None:
    """The pump that draws from the tank with most in it."""
    return _one([pump.source_weight for pump in seen.pumps], [pump.name for pump in seen.pumps])


def to_heavy_side(seen: TanksSeen) -> str | None:
    """The pump that carries most to the side on which it is too heavy already."""
    if seen.low <= seen.balance <= seen.high:
        return None
    sense = 1 if seen.balance > seen.high else -1
    return _one([sense * (pump.target - pump.source) for pump in seen.pumps], [pump.name for pump in seen.pumps])


def weight_stays(seen: TanksSeen) -> float | None:
    """The balance point moves as fast as at the start all along: the weight that is lost still counts."""
    rate = -sum(tank.drawn * (tank.at - seen.balance) for tank in seen.tanks) / seen.weight
    if rate == 0 or not seen.low <= seen.balance <= seen.high:
        return None
    return ((seen.high if rate > 0 else seen.low) - seen.balance) / rate


def when_empty(seen: TanksSeen) -> float | None:
    """Only when all is burned."""
    return seen.all_burned


def halfway(seen: TanksSeen) -> float | None:
    """When half is burned."""
    return None if seen.all_burned is None else seen.all_burned / 2


def _one(scores: Sequence[float], names: Sequence[str]) -> str | None:
    """The name with the highest score; none where two have it."""
    if not scores:
        return None
    best = max(scores)
    return names[scores.index(best)] if sum(score == best for score in scores) == 1 else None


TANK_FIRST_WAYS: tuple[Way[TanksSeen, str], ...] = (
    Way(
        name="fullest",
        predict=fullest,
        sentence=msg("The {given} holds the most. What counts is where it is, and where the rest is then."),
    ),
    Way(
        name="emptiest",
        predict=emptiest,
        sentence=msg("The {given} holds the least. What counts is where it is, and where the rest is then."),
    ),
    Way(
        name="nearest",
        predict=nearest,
        sentence=msg("The {given} is nearest to the balance point. The others move it all the more, later on."),
    ),
    Way(
        name="farthest",
        predict=farthest,
        sentence=msg("The {given} is farthest from the balance point. Burning it moves the balance point most."),
    ),
)
"""Ways about which tank to burn first."""

TANK_PUMP_WAYS: tuple[Way[TanksSeen, str], ...] = (
    Way(
        name="out_of_fullest",
        predict=out_of_fullest,
        sentence=msg("That empties the fullest tank. What counts is to which side the weight goes."),
    ),
    Way(
        name="to_heavy_side",
        predict=to_heavy_side,
        sentence=msg("That is the other way round: it carries weight to the side that is too heavy already."),
    ),
)
"""Ways about which way to pump."""

TANK_INSTANT_WAYS: tuple[Way[TanksSeen, float], ...] = (
    Way(
        name="weight_stays",
        predict=weight_stays,
        sentence=msg("{given} would be right if nothing got lighter. The rest weighs less and less: it goes faster."),
    ),
    Way(
        name="when_empty",
        predict=when_empty,
        sentence=msg("{given} is when all is burned. The limit comes before that."),
    ),
    Way(
        name="halfway",
        predict=halfway,
        sentence=msg("{given} is when half is burned. The limit knows nothing of halves."),
    ),
)
"""Ways about when a limit is reached."""
