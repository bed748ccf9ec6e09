"""What a learner's words or figures mean."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from itertools import pairwise

from lab.files import UNITS, UnitSystem
from lab.lesson.asked import Asked
from lab.lesson.forms import NANO, Answer, Choice, Number, Numbers, Option, Quantity, to_si
from lab.lesson.messages import Message, message, msg
from lab.mechanics import STANDARD_GRAVITY_M_S2

LONGEST_ANSWER = 60
"""Characters; nobody needs more for an answer, and a pasted book is not searched for one."""

FIGURES = r"[+\-\u2212]?(?:[0-9]+(?:[.,][0-9]*)?|[.,][0-9]+)"

_NUMBER = re.compile(rf"(?:at|about|around|by|~|=)?\s*(?P<figures>{FIGURES})\s*(?P<unit>[a-z\"]*)\.?")
_WHERE_FROM = re.compile(r"(?<=[0-9a-z\".]) from (?:the )?left(?: end)?\.?$")
"""Places are typed from the left end; whoever says so too has said nothing else."""
_CLOCK = re.compile(r"(?P<minutes>\d+)\s*(?::|m|min|minutes?)\s*(?P<seconds>\d+(?:[.,]\d+)?)\s*(?:s|sec|seconds?)?")
_MANY = re.compile(rf"(?P<figures>{FIGURES})(?:\s*(?P<unit>[a-z\"]+))?")

_MARKED_THOUSANDS = re.compile(r"(?<![0-9.,])[0-9]{1,3}(?:[\u00a0\u202f][0-9]{3})+(?![0-9])")
"""Figures parted in threes as a screen writes them, by a space that holds them together: 3 620."""
_SPACED_THOUSANDS = re.compile(r"(?<![0-9.,])[0-9]{1,3}(?: [0-9]{3})+(?![0-9])")
"""The same with a plain space, as one types it; of several numbers it would make one."""
_UNSURE_THOUSANDS = re.compile(r"(?<![0-9.,])([1-9][0-9]{0,2})[.,]([0-9]{3})(?![0-9.,])")
"""`3,200` and `3.200`: three thousand two hundred to some, a little over three to others."""

_POUND_KG, _INCH_M = UNITS["lb-in"].to_kg(1.0), UNITS["lb-in"].to_m(1.0)
_UNIT_WORDS: dict[Quantity, dict[float, str]] = {
    "length": {
        0.001: "mm millimetre millimetres millimeter millimeters",
        0.01: "cm centimetre centimetres centimeter centimeters",
        1.0: "m metre metres meter meters",
        _INCH_M: 'in inch inches "',
    },
    "weight": {
        0.001: "g gram grams gramme grammes",
        1.0: "kg kilo kilos kilogram kilograms",
        1.0 / STANDARD_GRAVITY_M_S2: "n newton newtons",
        _POUND_KG: "lb lbs pound pounds",
        _POUND_KG / 16: "oz ounce ounces",
    },
    "time": {1.0: "s sec secs second seconds", 60.0: "min mins minute minutes", 3600.0: "h hr hour hours"},
}
_UNIT_SI: dict[Quantity, dict[str, float]] = {
    quantity: {word: factor for factor, words in words_of.items() for word in words.split()}
    for quantity, words_of in _UNIT_WORDS.items()
}
"""What one of each unit is in SI, by every word that people have for it."""

_SENSES = {
    **dict.fromkeys(("left", "l", "forward", "forwards", "fore"), -1.0),
    **dict.fromkeys(("right", "r", "aft", "rearward", "rearwards", "backwards"), 1.0),
}
_SENSE_FILLERS = re.compile(r"\b(?:to|the|it|goes|moves|towards?|by)\b")
_NOT_AT_ALL = frozenset(("not", "not at all", "nothing", "none", "stays", "it stays", "nowhere", "zero"))


@dataclass(frozen=True, slots=True, kw_only=True)
class Understood:
    """An answer that was understood.  value: of the question's form.  shown: the same, to say back."""

    value: Answer
    shown: Message


@dataclass(frozen=True, slots=True, kw_only=True)
class Unclear:
    """An answer that was not understood.  message: asks again, kindly, with an example."""

    message: Message


Heard = Understood | Unclear


def understand(asked: Asked, text: str) -> Heard:
    """Return what `text` means as an answer to `asked`; never raises, whatever was typed."""
    said = " ".join(_together(_MARKED_THOUSANDS, text).split()).casefold()
    form, units = asked.form, asked.units
    hear: Callable[[str], Heard]
    if isinstance(form, Choice):
        hear = partial(_chosen, form)
    elif isinstance(form, Number):
        hear = partial(_number, form, units)
    else:
        hear = partial(_numbers, form, units)
    return hear(said if len(said) <= LONGEST_ANSWER else "")


def shown(asked: Asked, value: Answer) -> Message:
    """Return an answer as it is said back to the learner."""
    return asked.form.shown(value)


# --- one of some options -------------------------------------------------------------------------------------


def _chosen(form: Choice, said: str) -> Heard:
    key = option_meant(form, said)
    return Unclear(message=form.again) if key is None else Understood(value=key, shown=form.shown(key))


def option_meant(form: Choice, said: str) -> str | None:
    """Return the key of the option that words mean, whole or shortened; None where they name none, or two."""
    if len(said) > LONGEST_ANSWER:
        return None
    spoken = said.casefold()
    words = re.findall(r"[^\s.,!?]+", spoken)
    whole = {option.key for option in form.options if " ".join(words) in (*option.spoken, _name(option))}
    if len(whole) == 1:
        return whole.pop()
    begun = {option.key for option in form.options if words and _name(option).startswith(" ".join(words))}
    if len(begun) == 1:
        return begun.pop()
    telling = [word for word in words if word not in form.fillers]
    phrase = {option.key for option in form.options if " ".join(telling) in option.spoken}
    if len(phrase) == 1:
        return phrase.pop()
    meant = {_option_of_word(form, word) for word in telling}
    return meant.pop() if len(meant) == 1 else None


def _option_of_word(form: Choice, word: str) -> str | None:
    for option in form.options:
        if word in option.spoken:
            return option.key
    found = [option.key for option in form.options if any(each.startswith(word) for each in _words(form, option))]
    return found[0] if len(found) == 1 else None


def _words(form: Choice, option: Option) -> list[str]:
    return [word for word in _name(option).split() if word not in form.fillers]


def _name(option: Option) -> str:
    return option.plain.casefold()


# --- a number ------------------------------------------------------------------------------------------------


def _number(form: Number, units: UnitSystem, said: str) -> Heard:
    read = _sided if form.sided else _plain
    value, large = read(form, units, said), read(form, units, _as_thousands(said))
    if value is None:
        return Unclear(message=message(form.again, example=form.amount(form.example, exact=True)))
    if not form.least <= value <= form.most:
        low, high, example = (form.amount(each, exact=True) for each in (form.low, form.high, form.example))
        return Unclear(message=message(form.too_far, low=low, high=high, example=example))
    if large is not None and _may_be(form, value, large):
        return _which(form, value, large)
    value = round(value, NANO)
    return Understood(value=value, shown=form.shown(value))


def _plain(form: Number, units: UnitSystem, said: str) -> float | None:
    """Return a number in SI, with its unit or in the scene's own; None where it is none."""
    if form.quantity == "time" and (clock := _CLOCK.fullmatch(said)):
        return 60 * float(clock["minutes"]) + _figures(clock["seconds"])
    found = _NUMBER.fullmatch(_together(_SPACED_THOUSANDS, _WHERE_FROM.sub("", said)))
    return None if found is None else _in_si(form.quantity, units, found["figures"], found["unit"])


def _sided(form: Number, units: UnitSystem, said: str) -> float | None:
    """Return how far, to the right positive: `2 left`, `right 2 cm`, `-2`, `not at all`."""
    if said in _NOT_AT_ALL:
        return 0.0
    words = _SENSE_FILLERS.sub(" ", said).split()
    senses = {_SENSES[word] for word in words if word in _SENSES}
    value = _plain(form, units, " ".join(word for word in words if word not in _SENSES))
    if value is None or len(senses) > 1 or (senses and value < 0):
        return None
    return value * senses.pop() if senses else value


def _in_si(quantity: Quantity, units: UnitSystem, figures: str, unit: str) -> float | None:
    known = _UNIT_SI[quantity]
    if unit:
        return _figures(figures) * known[unit] if unit in known else None
    return to_si(quantity, _figures(figures), units)


def _as_thousands(said: str) -> str:
    return _UNSURE_THOUSANDS.sub(r"\1\2", said)


def _may_be(form: Number, value: float, large: float) -> bool:
    """Whether figures may as well be meant as thousands: that is another number, and one that can be set here."""
    return large != value and form.low <= large <= form.high


def _which(form: Number, value: float, large: float) -> Unclear:
    """Ask which of two numbers is meant."""
    ask = msg("Is that {large} or {small}? Type it again; between thousands leave out comma and point.")
    amounts = {"large": form.amount(large, exact=True), "small": form.amount(value, exact=True)}
    return Unclear(message=message(ask, **amounts))


def _together(thousands: re.Pattern[str], text: str) -> str:
    """Return the text with figures that are parted in threes closed up."""
    return thousands.sub(lambda found: re.sub(r"\s", "", found[0]), text)


def _figures(text: str) -> float:
    return float(text.replace(",", ".").replace("\u2212", "-"))


# --- several numbers -----------------------------------------------------------------------------------------


def _numbers(form: Numbers, units: UnitSystem, said: str) -> Heard:
    values = _as_many(form, units, said)
    if values is None:
        first = form.numbers[0]
        return Unclear(message=message(first.again, example=first.amount(first.example, exact=True)))
    for number, value in zip(form.numbers, values, strict=True):
        if not number.least <= value <= number.most:
            low, high, example = (number.amount(each, exact=True) for each in (number.low, number.high, number.example))
            return Unclear(message=message(number.too_far, low=low, high=high, example=example))
    for number, value, large in zip(
        form.numbers, values, _as_many(form, units, _as_thousands(said)) or (), strict=False
    ):
        if _may_be(number, value, large):
            return _which(number, value, large)
    kept = tuple(round(value, NANO) for value in values)
    return Understood(value=kept, shown=form.shown(kept))


def _as_many(form: Numbers, units: UnitSystem, said: str) -> tuple[float, ...] | None:
    """Return as many numbers as are asked for, in the order in which they are asked; None where there are not."""
    plain = re.sub(r"\band\b", ";", _without_names(form, said))
    # A comma is a decimal comma, unless that leaves too few numbers: `120,480` for two scales are two.
    for text in (re.sub(r",(?=\s)", " ", plain), plain.replace(",", " ")):
        found = list(_MANY.finditer(text))
        ends = [0, *(each.end() for each in found)]
        between = [text[end : each.start()] for end, each in zip(ends, found, strict=False)] + [text[ends[-1] :]]
        values = [_in_si(number.quantity, units, each["figures"], each["unit"] or "")
                  for number, each in zip(form.numbers, found, strict=False)]  # fmt: skip
        sound = tuple(value for value in values if value is not None)
        if not all(between[1:-1]) or any(_is_odd(gap) for gap in between):
            continue
        if len(found) == len(form.numbers) == len(sound):
            return sound
    return None


def _is_odd(gap: str) -> bool:
    """Whether something stands between the numbers that is no way to part them."""
    return gap.strip(" ,;/:|") != ""


def _without_names(form: Numbers, said: str) -> str:
    """Return the text without the things' names, where they come in the order in which they are asked for."""
    names = [number.name.casefold() for number in form.numbers]
    places = [said.find(name) for name in names]
    if all(place >= 0 for place in places) and all(a < b for a, b in pairwise(places)):
        for name in names:
            said = said.replace(name, " ", 1)
    return said
