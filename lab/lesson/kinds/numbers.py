"""What kinds whose answers are numbers have in common: how far an idea must lie from the truth, how far off one is."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TypeVar

from lab.lesson.asked import Asked
from lab.lesson.forms import Answer, Number, Numbers, Quantity, amount_of, from_si
from lab.lesson.kinds.kind import Fit
from lab.lesson.messages import Amount, Message, Value, message, msg
from lab.lesson.task import Task
from lab.lesson.ways.way import Way

CLEAR_SHARE = 0.03
"""A claimed way nearer to the truth than this share of it cannot show itself in an answer."""

WIDEST_SHARE = 0.2
"""A tolerance wider than this share of the truth lets nearly everything count."""

Seen = TypeVar("Seen")
Given = TypeVar("Given", float, tuple[float, ...])


def largest(truth: Answer) -> float:
    """The size of a truth: its largest number without its sign."""
    numbers = truth if isinstance(truth, tuple) else (number(truth),)
    return max(abs(each) for each in numbers)


def number(value: Answer) -> float:
    """An answer as the number that it is.  Raises TypeError for another."""
    if not isinstance(value, float):
        raise TypeError(f"a number is needed, not {value!r}")
    return value


def clear_of(task: Task, truth: Answer) -> float:
    """How far from the truth a claimed way must lie: 3 % of it, and twice the tolerance."""
    return max(CLEAR_SHARE * largest(truth), 2 * task.within)


def is_sizeable(task: Task, truth: Answer) -> bool:
    """Whether a drawn truth is large enough beside the tolerance."""
    return task.within <= WIDEST_SHARE * largest(truth)


def fits_of(
    ways: Iterable[Way[Seen, Given]],
    seen: Seen,
    form: Number | Numbers,
    *,
    to_si: Callable[[Given], Answer],
    values: dict[str, Value],
) -> tuple[Fit, ...]:
    """Return what each way answers, in SI; those with nothing to go by left out.

    values: what the sentences may name beside the {given} answer.
    """
    found = []
    for way in ways:
        given = way.predict(seen)
        if given is not None:
            answer = to_si(given)
            words = {**values, "given": form.shown(answer)}
            found.append(Fit(way=way.name, answer=answer, sentence=way.sentence, values=words))
    return tuple(found)


def shown_miss(asked: Asked, value: float, truth: float, quantity: Quantity) -> Amount:
    """How far off, as the difference of the figures that are shown, so that a learner who subtracts them agrees."""
    figures = [round(from_si(quantity, each, asked.units), asked.decimals) for each in (value, truth)]
    off = abs(figures[0] - figures[1])
    si = {"length": asked.units.to_m, "weight": asked.units.to_kg, "time": float}[quantity](off)
    return amount_of(quantity, si, decimals=asked.decimals)


def weight_form(task: Task, *, high_times: float = 1.0) -> Number:
    """The form of a weight.  high_times: where a field stops, beside all that is there already."""
    whole_kg = sum(part.mass_kg for part in task.parts)
    return Number(
        quantity="weight",
        tolerance=task.within,
        decimals=task.decimals("weight", least=0),
        low=0.0,
        high=high_times * whole_kg,
        least=0.0,
        most=1000 * whole_kg,
        # All that is there already: as a rule more than is missing.
        example=whole_kg,
        again=msg("I could not read that as a weight. Type a number, for example {example}."),
        too_far=msg("No such weight is in the workshop. Type one between {low} and {high}, for example {example}."),
    )


def type_a_number(asked: Asked, *, unit: str) -> Message:
    """What to type for one number.  unit: its word."""
    within = amount_of(asked.form.quantity or "length", asked.tolerance or 0.0)
    if asked.form.quantity == "weight":
        return message(msg("Type a weight in {unit}. Within {within} counts."), unit=unit, within=within)
    if asked.form.quantity == "time":
        return message(msg("Type a time in {unit}. Within {within} counts."), unit=unit, within=within)
    return message(msg("Type a length in {unit}. Within {within} counts."), unit=unit, within=within)
