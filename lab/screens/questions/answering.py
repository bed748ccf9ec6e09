"""How an answer is given: a row of options, a number, or one number for each of several."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping

from lab.files import UnitSystem
from lab.lesson import Set
from lab.lesson.forms import NANO, Answer, Choice, Number, Numbers, Quantity, from_si, to_si
from lab.lesson.messages import message
from lab.outline.words import msg
from lab.screens.questions.scope import Scope
from lab.ui.widgets.arrange import Column, Row
from lab.ui.widgets.choice import ChoiceRow, option_key
from lab.ui.widgets.label import Label
from lab.ui.widgets.number_field import NumberField
from lab.ui.widgets.widget import Widget

_SAID_SIDES: Mapping[str, str] = {
    "left": msg("the left end drops"),
    "level": msg("it stays level"),
    "right": msg("the right end drops"),
}
_FIRST: Mapping[str, str] = {"side": msg("First say which end."), "place": msg("First put the finger somewhere.")}


def answer_widgets(scope: Scope) -> tuple[Widget, ...]:
    """What an answer is given with; the widget's key is the kind of the question."""
    form = scope.asked.form
    if isinstance(form, Choice):
        return (_choice(scope, form),)
    if isinstance(form, Number):
        return (Column((_field(scope, form, 0), *_sign(scope, form), *_counts(scope, form)), gap=2),)
    rows = [_named_field(scope, number, place) for place, number in enumerate(form.numbers)]
    return (Column((*rows, *_counts(scope, form.numbers[0])), gap=6),)


def first_key(scope: Scope) -> str:
    """What the keyboard is put on when a question comes up."""
    form = scope.asked.form
    if isinstance(form, Choice):
        return option_key(scope.asked.kind, _options(scope, form)[0][0])
    return _key(scope, 0)


def chosen(scope: Scope, key: str, value: str) -> Set | None:
    """What choosing an option means; None where it is no option of the answer."""
    form = scope.asked.form
    if key != scope.asked.kind or not isinstance(form, Choice) or value not in form.keys:
        return None
    return Set(value=value, given=value)


def drafted(scope: Scope, key: str, shown: float) -> tuple[float | None, ...] | None:
    """The numbers of an answer, in SI, when one of its fields shows a number; None where it is no field of it."""
    form = scope.asked.form
    numbers = _numbers(form)
    for place, number in enumerate(numbers):
        if key == _key(scope, place):
            draft = list(scope.numbers)
            draft[place] = round(to_si(number.quantity, shown, scope.units), NANO)
            return tuple(draft)
    return None


def given(scope: Scope, draft: tuple[float | None, ...]) -> Set | None:
    """The answer that is given with these numbers; None while one of them is missing."""
    whole = tuple(number for number in draft if number is not None)
    if len(whole) < len(draft) or not whole:
        return None
    value: Answer = whole if isinstance(scope.asked.form, Numbers) else whole[0]
    return None if value == scope.run.value else Set(value=value, given=said(scope, value))


def said(scope: Scope, value: Answer) -> str:
    """An answer as it is said back, in the units that are shown."""
    form = scope.asked.form
    if isinstance(form, Choice):
        template = _SAID_SIDES.get(str(value)) if scope.asked.kind == "side" else None
        return scope.text(form.shown(value)) if template is None else scope.say(template)
    if isinstance(value, float) and form.quantity == "length" and not (isinstance(form, Number) and form.sided):
        return scope.shown_place(value)
    return scope.text(form.shown(value))


def why_not(scope: Scope) -> str:
    """What is still to be done before an answer can be locked in."""
    if scope.run.value is not None:
        return scope.say("Now say how sure you are.")
    form = scope.asked.form
    if scope.asked.kind in _FIRST:
        return scope.say(_FIRST[scope.asked.kind])
    if isinstance(form, Choice):
        return scope.say("First choose an answer.")
    return scope.say("First set a number.") if isinstance(form, Number) else scope.say("First set every number.")


# --- options -------------------------------------------------------------------------------------------------


def _choice(scope: Scope, form: Choice) -> Widget:
    value = scope.run.value if isinstance(scope.run.value, str) else None
    return ChoiceRow(scope.asked.kind, scope.text(scope.asked.prompt), tuple(_options(scope, form)), value)


def _options(scope: Scope, form: Choice) -> list[tuple[str, str]]:
    options = [(option.key, scope.text(option.shown)) for option in form.options]
    if scope.asked.kind == "side" and scope.look.sizes.mirrored:
        # Left and right are those of the picture, which is never mirrored.
        options.reverse()
    return options


# --- numbers -------------------------------------------------------------------------------------------------


def _numbers(form: object) -> tuple[Number, ...]:
    if isinstance(form, Numbers):
        return form.numbers
    return (form,) if isinstance(form, Number) else ()


def _key(scope: Scope, place: int) -> str:
    several = isinstance(scope.asked.form, Numbers)
    return f"{scope.asked.kind}-{place + 1}" if several else scope.asked.kind


def _named_field(scope: Scope, number: Number, place: int) -> Widget:
    """A number with its name beside it: three of them leave room for the rest."""
    name = Label(f"{_key(scope, place)}.name", scope.look.words.content(number.name), style="small", middle=True)
    return Row((name, _field(scope, number, place)), weights=(1.0, 0.0))


def _field(scope: Scope, number: Number, place: int) -> NumberField:
    units, quantity = scope.units, number.quantity
    value = scope.numbers[place]
    decimals = _decimals(scope, number)
    low, high = (from_si(quantity, each, units) for each in (number.low, number.high))
    return NumberField(
        _key(scope, place),
        scope.look.words.content(number.name) if number.name else _name(scope),
        None if value is None else round(from_si(quantity, value, units), decimals),
        _unit(scope, quantity),
        low=low,
        high=high,
        step=_step(number, units, decimals),
        decimals=decimals,
        show_name=False,
        start=_start(scope, number, decimals),
    )


def _name(scope: Scope) -> str:
    """What a field is called that shows no name: it is spoken."""
    if scope.asked.kind == "place":
        return scope.say("place of the finger")
    return scope.text(scope.asked.prompt)


def _unit(scope: Scope, quantity: Quantity) -> str:
    if quantity == "time":
        return scope.say("s")
    return scope.units.weight_word if quantity == "weight" else scope.units.length_word


def _decimals(scope: Scope, number: Number) -> int:
    """Figures after the point, in the units that are shown."""
    if scope.units.name == scope.asked.units.name or number.quantity == "time":
        return number.decimals
    fine = scope.readings.fineness
    return fine.weight if number.quantity == "weight" else fine.length


def _step(number: Number, units: UnitSystem, decimals: int) -> float:
    """What − and + are worth: the last figure of a length; of other numbers a round step within the tolerance."""
    last = float(10.0**-decimals)
    if number.quantity == "length" or number.tolerance <= 0:
        return last
    within = from_si(number.quantity, number.tolerance, units)
    decade = 10.0 ** math.floor(math.log10(within))
    return max(last, max(times * decade for times in (1.0, 2.0, 5.0) if times * decade <= within * (1.0 + 1e-9)))


def _start(scope: Scope, number: Number, decimals: int) -> float:
    """Where − and + begin: at the finger, else at nothing where that is possible, else in the middle."""
    if scope.asked.kind == "place" and scope.finger is not None:
        at = scope.finger.finger_at_m
    elif scope.asked.kind == "arm" or not number.low <= 0.0 <= number.high:
        at = (number.low + number.high) / 2
    else:
        at = 0.0
    return round(from_si(number.quantity, at, scope.units), decimals)


def _sign(scope: Scope, form: Number) -> Iterator[Widget]:
    if form.sided:
        yield Label("sign", scope.say("To the left is below 0: press −."), style="small", color="soft")


def _counts(scope: Scope, number: Number) -> Iterator[Widget]:
    if number.tolerance <= 0:
        return
    if number.quantity == "length":
        within = scope.shown_place(number.tolerance)
    else:
        within = scope.text(message(msg("{amount}"), amount=number.amount(number.tolerance, exact=True)))
    yield Label("counts", scope.say("within {length} counts", length=within), style="small", color="soft")
