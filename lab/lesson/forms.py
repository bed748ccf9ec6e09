"""The forms that an answer can have: one of some options, a number of something, or several numbers.

Whoever asks (a screen, a terminal) and whoever keeps the answer knows these forms, and not what is asked about.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from lab.files import UnitSystem
from lab.lesson.messages import Amount, AmountKind, Message, length, mass, message, msg, seconds

Answer = str | float | tuple[float, ...]
"""What can be given: the key of an option, a number in SI, or one number in SI for each of several."""

Quantity = Literal["length", "weight", "time"]

SLACK = 1e-9
"""A number this much beyond the tolerance still counts: it is what turning centimetres into metres may cost."""

NANO = 9
"""Figures after the point, in SI, that are kept of a number: without rounding, 56 mm and 5.6 cm would differ in their
last bit."""

_AMOUNT_KIND: dict[Quantity, AmountKind] = {"length": "length", "weight": "mass", "time": "time"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Option:
    """One answer to choose.

    key: as it is recorded.  text, values: as it is shown: a template of ours, and a writer's names that go into it.
    spoken: other words, or whole phrases, that mean it too.
    """

    key: str
    text: str
    spoken: frozenset[str] = frozenset()
    values: tuple[tuple[str, str], ...] = ()

    @property
    def shown(self) -> Message:
        """The option as it is shown."""
        return message(self.text, **dict(self.values))

    @property
    def plain(self) -> str:
        """The option in words of one language, to hear answers by."""
        return self.text.format(**dict(self.values))


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """One of some options.

    fillers: words that mean nothing here (`the`, `end`).  again: what to say where nothing was understood.
    """

    options: tuple[Option, ...]
    fillers: frozenset[str]
    again: Message

    @property
    def quantity(self) -> None:
        """Options measure nothing."""
        return

    @property
    def keys(self) -> tuple[str, ...]:
        """The options' keys."""
        return tuple(option.key for option in self.options)

    def takes(self, value: Answer) -> bool:
        """Whether a value is one of these."""
        return value in self.keys

    def shown(self, value: Answer) -> Message:
        """An option as it is said back."""
        return next(option.shown for option in self.options if option.key == value)

    def recorded(self, value: Answer, units: UnitSystem) -> str:
        """The option's key."""
        return str(value)


@dataclass(frozen=True, slots=True, kw_only=True)
class Number:
    """A number of some quantity, in SI.

    tolerance: half the width that counts.  decimals: figures after the point, in the scene's own unit.
    low, high: where a slider or field stops.  least, most: what lies outside is taken for a slip, and asked again.
    example: shows how to write one, and gives nothing away.  sided: + is to the right, − to the left.
    name: whose number it is, where there are several; "" where there is one.
    """

    quantity: Quantity
    tolerance: float
    decimals: int
    low: float
    high: float
    least: float
    most: float
    example: float
    again: str
    too_far: str
    sided: bool = False
    name: str = ""

    def takes(self, value: Answer) -> bool:
        """Whether a value is a number."""
        return isinstance(value, float)

    def amount(self, value: float, *, unit: bool = True, exact: bool = False) -> Amount:
        """A value of this quantity, to be shown.  exact: with as many figures as it needs."""
        return Amount(
            kind=_AMOUNT_KIND[self.quantity], value=value, decimals=None if exact else self.decimals, unit=unit
        )

    def shown(self, value: Answer) -> Message:
        """A number as it is said back."""
        if not isinstance(value, float):
            raise TypeError(f"a number is shown, not {value!r}")
        if not self.sided:
            return message(msg("{place}"), place=self.amount(value))
        if value == 0 or abs(value) < SLACK:
            return message(msg("not at all"))
        side = msg("{distance} to the right") if value > 0 else msg("{distance} to the left")
        return message(side, distance=self.amount(abs(value)))

    def recorded(self, value: Answer, units: UnitSystem) -> str:
        """The number in the scene's own unit."""
        # Nine figures hold any ruler's reading and drop what the unit change leaves behind (5.6000000000000005).
        return f"{self.from_si(float(value), units):.9g}"  # type: ignore[arg-type]

    def from_si(self, value: float, units: UnitSystem) -> float:
        """A value in the scene's own unit."""
        return from_si(self.quantity, value, units)


@dataclass(frozen=True, slots=True, kw_only=True)
class Numbers:
    """One number for each of several things: what each scale reads."""

    numbers: tuple[Number, ...]

    @property
    def quantity(self) -> Quantity:
        """What they measure."""
        return self.numbers[0].quantity

    def takes(self, value: Answer) -> bool:
        """Whether a value is as many numbers."""
        return (
            isinstance(value, tuple)
            and len(value) == len(self.numbers)
            and all(isinstance(each, float) for each in value)
        )

    def shown(self, value: Answer) -> Message:
        """The numbers as they are said back."""
        if not isinstance(value, tuple):
            raise TypeError(f"several numbers are shown, not {value!r}")
        amounts = [number.amount(each) for number, each in zip(self.numbers, value, strict=True)]
        if len(amounts) == 2:
            return message(msg("{first} and {second}"), first=amounts[0], second=amounts[1])
        return message(msg("{first}, {second} and {third}"), first=amounts[0], second=amounts[1], third=amounts[2])

    def recorded(self, value: Answer, units: UnitSystem) -> str:
        """The numbers in the scene's own unit, a blank between them."""
        if not isinstance(value, tuple):
            raise TypeError(f"several numbers are recorded, not {value!r}")
        return " ".join(number.recorded(each, units) for number, each in zip(self.numbers, value, strict=True))


Form = Choice | Number | Numbers


def same(left: Answer, right: Answer, *, within: float) -> bool:
    """Whether two answers cannot be told apart: the same option, or every number within so much in SI."""
    if isinstance(left, float) and isinstance(right, float):
        return abs(left - right) <= within + SLACK
    if isinstance(left, tuple) and isinstance(right, tuple):
        return all(abs(a - b) <= within + SLACK for a, b in zip(left, right, strict=True))
    return left == right


def to_si(quantity: Quantity, value: float, units: UnitSystem) -> float:
    """A number in a unit system, in SI; seconds are seconds everywhere."""
    return {"length": units.to_m, "weight": units.to_kg, "time": float}[quantity](value)


def from_si(quantity: Quantity, value: float, units: UnitSystem) -> float:
    """A number in SI, in a unit system."""
    return {"length": units.from_m, "weight": units.from_kg, "time": float}[quantity](value)


def decimals_for(tolerance: float, *, least: int = 1) -> int:
    """How many figures after the point show a number well enough for a tolerance."""
    return max(least, math.ceil(-math.log10(tolerance)))


def amount_of(quantity: Quantity, value: float, *, decimals: int | None = None, unit: bool = True) -> Amount:
    """An amount of a quantity in SI, to be shown."""
    return {"length": length, "weight": mass, "time": seconds}[quantity](value, decimals=decimals, unit=unit)
