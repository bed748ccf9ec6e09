"""How a scene writes weights, lengths and moments: numbers by language, in the units that are shown."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Protocol

from lab.outline import Words


class Units(Protocol):
    """What a scene needs to know of a unit system."""

    @property
    def name(self) -> str:
        """Which system: "g-cm", "kg-m", "N-m", "lb-in"."""
        ...

    @property
    def weight_word(self) -> str:
        """The unit of weight."""
        ...

    @property
    def length_word(self) -> str:
        """The unit of length."""
        ...

    @property
    def moment_word(self) -> str:
        """The unit of moment."""
        ...

    def from_kg(self, mass_kg: float) -> float:
        """A mass as weight in these units."""
        ...

    def from_m(self, length_m: float) -> float:
        """A length in these units."""
        ...

    def to_m(self, length: float) -> float:
        """A length in metres."""
        ...

    def from_kg_m(self, moment_kg_m: float) -> float:
        """A moment of mass in these units."""
        ...


@dataclass(frozen=True, slots=True)
class Fineness:
    """Decimals shown for each quantity, and the steps of a place in the system's own lengths.

    mark: what dragging snaps to.  step: of − and + and the arrow keys.
    """

    weight: int
    length: int
    moment: int
    mark: float
    step: float


# A ruler is read to a millimetre; the smallest brass weight moved by a step must show in the moment.
FINENESS: Mapping[str, Fineness] = {
    "g-cm": Fineness(weight=0, length=1, moment=0, mark=1.0, step=0.5),
    "kg-m": Fineness(weight=3, length=3, moment=4, mark=0.01, step=0.005),
    "N-m": Fineness(weight=2, length=3, moment=3, mark=0.01, step=0.005),
    "lb-in": Fineness(weight=3, length=2, moment=2, mark=0.5, step=0.25),
}
MOST_DECIMALS = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Readings:
    """Writes quantities given in SI."""

    words: Words
    units: Units

    @property
    def fineness(self) -> Fineness:
        """Decimals and steps of the units that are shown."""
        return FINENESS.get(self.units.name, FINENESS["g-cm"])

    def length(self, length_m: float) -> str:
        """A length without its unit."""
        return self.words.number(self.units.from_m(length_m), self.fineness.length)

    def weight(self, mass_kg: float) -> str:
        """A weight without its unit; more decimals than usual where it would otherwise be rounded."""
        return self._as_needed(self.units.from_kg(mass_kg), self.fineness.weight, MOST_DECIMALS)

    def moment(self, moment_kg_m: float) -> str:
        """A moment without its unit."""
        return self.words.number(self.units.from_kg_m(moment_kg_m), self.fineness.moment)

    def short_length(self, length_m: float) -> str:
        """A length with no more decimals than it needs: 25, 32.5."""
        return self._as_needed(self.units.from_m(length_m), 0, self.fineness.length)

    def length_with_unit(self, length_m: float) -> str:
        """A length and its unit: 40.0 cm."""
        return self.words.say("{number} {unit}", number=self.length(length_m), unit=self.units.length_word)

    def weight_with_unit(self, mass_kg: float) -> str:
        """A weight and its unit: 200 g."""
        return self.words.say("{number} {unit}", number=self.weight(mass_kg), unit=self.units.weight_word)

    def moment_with_unit(self, moment_kg_m: float) -> str:
        """A moment and its unit: 5 000 g·cm."""
        return self.words.say("{number} {unit}", number=self.moment(moment_kg_m), unit=self.units.moment_word)

    def stamp(self, mass_kg: float) -> str:
        """What is struck into a brass weight: grams, as the maker did, whatever units are shown.

        A weight that is no whole number of grams, or of many kilograms, carries the shown units instead.
        """
        grams = mass_kg * 1000.0
        if grams < 9999.5 and abs(grams - round(grams)) < 5e-4:
            return f"{round(grams)}"
        return self._as_needed(self.units.from_kg(mass_kg), 0, 2)

    def _as_needed(self, value: float, least: int, most: int) -> str:
        for decimals in range(least, most):
            if abs(round(value, decimals) - value) < 0.5 * 10.0**-most:
                return self.words.number(value, decimals)
        return self.words.number(value, max(least, most))
