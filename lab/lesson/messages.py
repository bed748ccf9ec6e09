"""Sentences as values: a template and what goes into it, worded only when somebody is about to read them.

A lesson speaks in the language, the number style and the units of whoever listens, and it imports nothing of a screen.
So it hands out `Message` values; `render` words them through anything that has the four methods of `Wording`.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Literal, Protocol, TypeAlias

from lab.files import UnitSystem

AmountKind = Literal["mass", "length", "moment", "volume", "time", "number"]

MOST_DECIMALS = 3
"""Figures after the point that a given number may show; a lesson's numbers are read from rulers and kitchen scales."""

NOTHING: Mapping[str, Value] = MappingProxyType({})

_PLACEHOLDER = re.compile(r"\{([^{}]*)\}")


class Wording(Protocol):
    """What a catalogue of words must be able to do."""

    def say(self, msgid: str, /, **values: str) -> str:
        """Return our own sentence in the listener's language, its values put in."""
        ...

    def number(self, value: float, decimals: int) -> str:
        """Return a number as the listener writes it."""
        ...

    def content(self, text: str) -> str:
        """Return a lesson writer's own text."""
        ...


@dataclass(frozen=True, slots=True, kw_only=True)
class Amount:
    """A number with its kind, kept in SI until it is shown.

    value: kg, m, kg·m, m³, s or a bare number, by `kind`.
    decimals: figures after the point; None shows as many as it needs.
    unit: whether the unit's word follows.
    """

    kind: AmountKind
    value: float
    decimals: int | None = None
    unit: bool = True


Value: TypeAlias = "str | Amount | Message"
"""A str is a lesson writer's own text (a part's name); our own words stand in the template, or in a message in it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Message:
    """One sentence or more, not yet worded.

    template: our own text with {named} places, or a writer's text with {part.weight} places if `written`.
    """

    template: str
    values: Mapping[str, Value] = field(default_factory=lambda: NOTHING)
    written: bool = False


def msg(template: str) -> str:
    """Mark a template of our own, so that a translator's tools find it; returns it unchanged."""
    return template


def message(template: str, /, **values: Value) -> Message:
    """Return one of our own sentences with its values."""
    return Message(template=template, values=MappingProxyType(values))


def written(text: str, values: Mapping[str, Value] = NOTHING) -> Message:
    """Return a lesson writer's sentence with the amounts that its places name."""
    return Message(template=text, values=values, written=True)


def length(value_m: float, *, decimals: int | None = None, unit: bool = True) -> Amount:
    """Return a length in metres, to be shown in the listener's unit."""
    return Amount(kind="length", value=value_m, decimals=decimals, unit=unit)


def mass(value_kg: float, *, decimals: int | None = None, unit: bool = True) -> Amount:
    """Return a weight, kept in kilograms, to be shown in the listener's unit."""
    return Amount(kind="mass", value=value_kg, decimals=decimals, unit=unit)


def moment(value_kg_m: float, *, decimals: int | None = None, unit: bool = False) -> Amount:
    """Return a moment, kept in kg·m, to be shown in the listener's unit (without its word, as in a sum)."""
    return Amount(kind="moment", value=value_kg_m, decimals=decimals, unit=unit)


def volume(value_m3: float, *, decimals: int | None = None, unit: bool = True) -> Amount:
    """Return a volume in cubic metres, to be shown in the listener's unit."""
    return Amount(kind="volume", value=value_m3, decimals=decimals, unit=unit)


def seconds(value_s: float, *, decimals: int | None = None, unit: bool = True) -> Amount:
    """Return a time in seconds."""
    return Amount(kind="time", value=value_s, decimals=decimals, unit=unit)


def number(value: float, *, decimals: int | None = 0) -> Amount:
    """Return a bare number."""
    return Amount(kind="number", value=value, decimals=decimals, unit=False)


def placeholders(text: str) -> tuple[str, ...]:
    """Return what stands between braces in a writer's text, in order."""
    return tuple(found.group(1) for found in _PLACEHOLDER.finditer(text))


def words_in(text: str) -> int:
    """Return how many words a learner reads in a text; an amount is one."""
    return len(_PLACEHOLDER.sub("0", text).split())


def decimals_needed(value: float, *, most: int = MOST_DECIMALS) -> int:
    """Return how many figures after the point a number needs, up to `most`."""
    figures = f"{value:.{most}f}".rstrip("0")
    return len(figures) - figures.index(".") - 1


def shown_amount(amount: Amount, words: Wording, units: UnitSystem) -> str:
    """Return an amount as the listener reads it, in `units`."""
    value, unit_word = _in_units(amount, units)
    decimals = decimals_needed(value) if amount.decimals is None else amount.decimals
    figures = words.number(value, decimals)
    if not amount.unit:
        return figures
    # TRANSLATORS: a number and its unit, as in "120 g".
    return words.say(msg("{number} {unit}"), number=figures, unit=unit_word)


def render(sentence: Message, words: Wording, units: UnitSystem) -> str:
    """Return a message as text: worded by `words`, its amounts in `units`."""
    shown = {key: _shown(value, words, units) for key, value in sentence.values.items()}
    if sentence.written:
        return words.content(_PLACEHOLDER.sub(lambda at: shown.get(at.group(1), at.group(0)), sentence.template))
    return words.say(sentence.template, **shown)


def _shown(value: Value, words: Wording, units: UnitSystem) -> str:
    if isinstance(value, Message):
        return render(value, words, units)
    return words.content(value) if isinstance(value, str) else shown_amount(value, words, units)


def _in_units(amount: Amount, units: UnitSystem) -> tuple[float, str]:
    shown_in: dict[AmountKind, tuple[Callable[[float], float], str]] = {
        "mass": (units.from_kg, units.weight_word),
        "length": (units.from_m, units.length_word),
        "moment": (units.from_kg_m, units.moment_word),
        "volume": (units.from_m3, units.volume_word),
        "time": (float, "s"),
        "number": (float, ""),
    }
    convert, word = shown_in[amount.kind]
    return convert(amount.value), word
