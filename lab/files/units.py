"""The unit systems of files and screens. Inside the lab everything is SI; these convert at the edge."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from lab.mechanics import STANDARD_GRAVITY_M_S2

# Both exact by the international yard and pound agreement of 1959 (NIST SP 811, appendix B).
POUND_KG = 0.45359237
INCH_M = 0.0254
# Exact: 231 cubic inches (NIST SP 811, appendix B).
US_GALLON_M3 = 0.003785411784


@dataclass(frozen=True, slots=True)
class Factor:
    """SI value = number × times ÷ over. But for one, one of the two is 1, so that reading rounds only once."""

    times: float = 1.0
    over: float = 1.0

    def to_si(self, number: float) -> float:
        """A number in this unit, in SI."""
        return number * self.times / self.over

    def from_si(self, value: float) -> float:
        """An SI value in this unit: the shortest number that ``to_si`` reads back to the last bit."""
        return written_back(self.to_si, value, guess=value * self.over / self.times)


def written_back(read: Callable[[float], float], value: float, *, guess: float) -> float:
    """The number that a file should hold so that ``read`` gives ``value`` again.

    Plain division would turn 120 g into 120.00000000000001. Numbers of up to 15 digits come back as
    they were written; of longer ones a neighbour that reads back the same is sought.
    guess: the number, to within a few units in the last place.  Returns guess where none reads back.
    """
    for digits in (12, 15, 16):
        number = float(f"{guess:.{digits}g}")
        if read(number) == value:
            return number
    for number in (guess, math.nextafter(guess, math.inf), math.nextafter(guess, -math.inf)):
        if read(number) == value:
            return number
    return guess


@dataclass(frozen=True, slots=True, kw_only=True)
class UnitSystem:
    """One way of writing weights and lengths. Words are symbols, the same in every language.

    Conversions take and give single floats. ``to_…`` reads a number in these units into SI; ``from_…``
    gives the number to show or write, such that reading it again gives the same SI value.
    """

    name: str
    weight_word: str
    length_word: str
    moment_word: str
    volume_word: str
    mass: Factor
    length: Factor
    moment: Factor
    inertia: Factor
    volume: Factor
    density: Factor

    def to_kg(self, weight: float) -> float:
        """Mass in kg of a weight in these units."""
        return self.mass.to_si(weight)

    def from_kg(self, mass_kg: float) -> float:
        """Weight in these units of a mass in kg."""
        return self.mass.from_si(mass_kg)

    def to_m(self, length: float) -> float:
        """Length in metres."""
        return self.length.to_si(length)

    def from_m(self, length_m: float) -> float:
        """Length in these units."""
        return self.length.from_si(length_m)

    def to_kg_m(self, moment: float) -> float:
        """Moment of mass in kg·m of a moment in these units."""
        return self.moment.to_si(moment)

    def from_kg_m(self, moment_kg_m: float) -> float:
        """Moment in these units of a moment of mass in kg·m."""
        return self.moment.from_si(moment_kg_m)

    def to_kg_m2(self, inertia: float) -> float:
        """Inertia in kg·m² of weight × length² in these units."""
        return self.inertia.to_si(inertia)

    def from_kg_m2(self, inertia_kg_m2: float) -> float:
        """Weight × length² in these units of an inertia in kg·m²."""
        return self.inertia.from_si(inertia_kg_m2)

    def to_m3(self, volume: float) -> float:
        """Volume in cubic metres."""
        return self.volume.to_si(volume)

    def from_m3(self, volume_m3: float) -> float:
        """Volume in these units."""
        return self.volume.from_si(volume_m3)

    def to_kg_m3(self, density: float) -> float:
        """Density in kg/m³ of weight per volume in these units."""
        return self.density.to_si(density)

    def from_kg_m3(self, density_kg_m3: float) -> float:
        """Weight per volume in these units of a density in kg/m³."""
        return self.density.from_si(density_kg_m3)


_GRAM_CENTIMETRE = UnitSystem(
    name="g-cm", weight_word="g", length_word="cm", moment_word="g·cm", volume_word="mL",
    mass=Factor(over=1e3), length=Factor(over=1e2), moment=Factor(over=1e5), inertia=Factor(over=1e7),
    volume=Factor(over=1e6), density=Factor(times=1e3),
)  # fmt: skip
_KILOGRAM_METRE = UnitSystem(
    name="kg-m", weight_word="kg", length_word="m", moment_word="kg·m", volume_word="L",
    mass=Factor(), length=Factor(), moment=Factor(), inertia=Factor(), volume=Factor(over=1e3),
    density=Factor(times=1e3),
)  # fmt: skip
_NEWTON_METRE = UnitSystem(
    name="N-m", weight_word="N", length_word="m", moment_word="N·m", volume_word="L",
    mass=Factor(over=STANDARD_GRAVITY_M_S2), length=Factor(), moment=Factor(over=STANDARD_GRAVITY_M_S2),
    inertia=Factor(over=STANDARD_GRAVITY_M_S2), volume=Factor(over=1e3),
    density=Factor(times=1e3, over=STANDARD_GRAVITY_M_S2),
)  # fmt: skip
_POUND_INCH = UnitSystem(
    name="lb-in", weight_word="lb", length_word="in", moment_word="lb·in", volume_word="US gal",
    mass=Factor(times=POUND_KG), length=Factor(times=INCH_M), moment=Factor(times=POUND_KG * INCH_M),
    inertia=Factor(times=POUND_KG * INCH_M**2), volume=Factor(times=US_GALLON_M3),
    density=Factor(times=POUND_KG / US_GALLON_M3),
)  # fmt: skip

UNITS: Mapping[str, UnitSystem] = MappingProxyType(
    {system.name: system for system in (_GRAM_CENTIMETRE, _KILOGRAM_METRE, _NEWTON_METRE, _POUND_INCH)}
)
"""Every unit system by the name that files use for it."""
