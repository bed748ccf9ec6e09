"""Tanks: what is in them, where, and how the contents change as they are burned and pumped across.

The contents of a tank are taken to stay centred at its place however full it is.  Rates are volumes per
second; between two events every rate is constant, so contents are linear in time and nothing is stepped.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import inf
from typing import Literal

from lab.mechanics.checks import MechanicsError, Vector, not_negative, positive, vector
from lab.mechanics.parts import Part

BurnOrder = Literal["together", "in order"]
BURN_ORDERS: tuple[BurnOrder, ...] = ("together", "in order")


@dataclass(frozen=True, slots=True, kw_only=True)
class Tank:
    """A tank and its contents.

    name: what messages call it, and the name of its row in a sum.  at_m: centre of the contents.
    capacity_m3: above 0.  contents_m3: from 0 to the capacity.  density_kg_m3: of the contents, above 0.
    Raises MechanicsError.
    """

    name: str
    at_m: Vector
    capacity_m3: float
    contents_m3: float
    density_kg_m3: float

    def __post_init__(self) -> None:
        called = f"tank {self.name!r}"
        put = object.__setattr__
        put(self, "at_m", vector(f"place of {called}", self.at_m, "m"))
        put(self, "capacity_m3", positive(f"capacity of {called}", self.capacity_m3, "m³"))
        put(self, "contents_m3", not_negative(f"contents of {called}", self.contents_m3, "m³"))
        put(self, "density_kg_m3", positive(f"density of {called}", self.density_kg_m3, "kg/m³"))
        if self.contents_m3 > self.capacity_m3:
            raise MechanicsError(
                f"contents of {called} are {self.contents_m3} m³; they must be at most its capacity, "
                f"{self.capacity_m3} m³"
            )

    @property
    def mass_kg(self) -> float:
        """Mass of the contents, kg."""
        return self.contents_m3 * self.density_kg_m3


@dataclass(frozen=True, slots=True, kw_only=True)
class Burn:
    """One stretch of a burn plan: so much a second, out of these tanks.

    rate_m3_s: 0 or above; 0 waits, while pumps may run.  tanks: names.  order: `together` draws the same from
    each, and a tank that runs empty leaves its share to the others; `in order` empties one after the other.
    for_s: how long; None goes on to the end.  Raises MechanicsError.
    """

    rate_m3_s: float
    tanks: tuple[str, ...] = ()
    order: BurnOrder = "together"
    for_s: float | None = None

    def __post_init__(self) -> None:
        put = object.__setattr__
        put(self, "rate_m3_s", not_negative("rate of a burn", self.rate_m3_s, "m³/s"))
        if self.for_s is not None:
            put(self, "for_s", positive("duration of a burn", self.for_s, "s"))
        if self.order not in BURN_ORDERS:
            raise MechanicsError(f"order of a burn is {self.order!r}; it must be one of {', '.join(BURN_ORDERS)}")
        if self.rate_m3_s > 0.0 and not self.tanks:
            raise MechanicsError(f"a burn of {self.rate_m3_s} m³/s names no tank; it must draw from one at least")
        if len(set(self.tanks)) != len(self.tanks):
            raise MechanicsError(f"a burn draws from {', '.join(self.tanks)}; each tank may be named once")


@dataclass(frozen=True, slots=True, kw_only=True)
class Pump:
    """Contents pumped across, from one tank to another, at a rate, from one instant until another.

    It stands still while its source is empty or its target full, and slows to what passes through them.
    rate_m3_s: above 0.  Raises MechanicsError.
    """

    source: str
    target: str
    rate_m3_s: float
    from_s: float = 0.0
    until_s: float = inf

    def __post_init__(self) -> None:
        called = f"pump from {self.source!r} to {self.target!r}"
        put = object.__setattr__
        put(self, "rate_m3_s", positive(f"rate of the {called}", self.rate_m3_s, "m³/s"))
        put(self, "from_s", not_negative(f"start of the {called}", self.from_s, "s"))
        if not self.until_s > self.from_s:
            raise MechanicsError(f"the {called} runs from {self.from_s} s until {self.until_s} s; it must end later")
        put(self, "until_s", float(self.until_s))
        if self.source == self.target:
            raise MechanicsError(f"the {called} goes nowhere; its target must be another tank")


def tank_parts(tanks: Iterable[Tank]) -> tuple[Part, ...]:
    """The contents as parts of a sum, points at the tanks' places; an empty tank has none.

    Raises MechanicsError.  Source: S-03.
    """
    return tuple(Part(tank.name, tank.mass_kg, tank.at_m) for tank in tanks if tank.mass_kg > 0.0)


def tank_indices(tanks: Sequence[Tank], names: Iterable[str]) -> tuple[int, ...]:
    """Which tanks the names mean.  Raises MechanicsError where there is none of that name."""
    known = [tank.name for tank in tanks]
    found = []
    for name in names:
        if name not in known:
            raise MechanicsError(f"there is no tank {name!r}; there are {', '.join(known) or 'none'}")
        found.append(known.index(name))
    return tuple(found)
