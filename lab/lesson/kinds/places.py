"""Places along a body: the form of such an answer, and how far from the truth an idea must lie."""

from __future__ import annotations

from lab.lesson.asked import Asked
from lab.lesson.forms import Number
from lab.lesson.messages import Message, length, message, msg
from lab.lesson.task import Task

PLACE_CLEAR_SHARE = 0.03
"""A claimed way nearer to the truth than this share of the body's length cannot show itself in an answer."""

AT_ORIGIN_M = 1e-9
"""A left end nearer to the zero of the rule than this, a nanometre, is that zero."""


def body_m(task: Task) -> float:
    """How long the body is, m."""
    left_m, right_m = ends_m(task)
    return right_m - left_m


def ends_m(task: Task) -> tuple[float, float]:
    """Where the body's ends are along, m."""
    return task.units.to_m(task.seen.left), task.units.to_m(task.seen.right)


def place_form(task: Task) -> Number:
    """The form of a place along the body."""
    left_m, right_m = ends_m(task)
    return Number(
        quantity="length",
        tolerance=task.within,
        decimals=task.decimals("length"),
        low=left_m,
        high=right_m,
        # Past an end is an answer like any other (some ways of thinking land there); a length past it is a slip.
        least=left_m - (right_m - left_m),
        most=right_m + (right_m - left_m),
        # The far end shows how to write a place and gives nothing away: it is never the answer.
        example=right_m,
        again=msg("I could not read that as a place. Type a number, for example {example}."),
        too_far=msg("That is far off. It lies between {low} and {high}: type a place there, for example {example}."),
    )


def type_a_place(asked: Asked) -> Message:
    """What to type for a place."""
    within, unit = length(asked.tolerance_m or 0.0), asked.units.length_word
    if abs(asked.left_m) < AT_ORIGIN_M:
        return message(
            msg("Type a place in {unit} from the left end. Within {within} counts."), unit=unit, within=within
        )
    return message(msg("Type a place in {unit} on the rule. Within {within} counts."), unit=unit, within=within)
