"""Which ways of thinking an answer fits, and which of them a question can tell apart."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from lab.lesson.asked import Asked
from lab.lesson.forms import Answer, same
from lab.lesson.kinds import Fit, kind_of
from lab.lesson.task import Task


@dataclass(frozen=True, slots=True, kw_only=True)
class Blur:
    """A claimed way that the numbers cannot tell apart.  other: a way's name, "truth", or "" for no answer."""

    claim: str
    other: str


def truth_of(task: Task) -> Answer:
    """Return the answer to a question, by the mechanics and never read from a lesson.

    Raises MechanicsError where the parts are no body, and ValueError where the scene lacks what is asked about.
    """
    known = task.worked_out
    if "truth" not in known:
        known["truth"] = kind_of(task).truth(task)
    truth: Answer = known["truth"]
    return truth


def predictions(task: Task) -> tuple[Fit, ...]:
    """Return what every way of thinking but the right one would answer."""
    known = task.worked_out
    if "said" not in known:
        known["said"] = kind_of(task).predictions(task)
    said: tuple[Fit, ...] = known["said"]
    return said


def fits(asked: Asked, value: Answer) -> tuple[Fit, ...]:
    """Return every way of thinking that an answer fits: within the tolerance, and not also right.

    A right answer fits none.
    """
    within = asked.tolerance or 0.0
    if same(value, asked.truth, within=within):
        return ()
    return tuple(
        each
        for each in predictions(asked.task)
        if same(each.answer, value, within=within) and not same(each.answer, asked.truth, within=within)
    )


def named(asked: Asked, found: tuple[Fit, ...]) -> Fit | None:
    """Return the one way of thinking to name to the learner: where exactly one fits, else None.

    A reversed side fits every answer on the other side by its making, so beside another way it speaks for nothing.
    """
    mute = kind_of(asked.task).mute
    telling = tuple(each for each in found if each.way not in mute)
    one = telling or found
    return one[0] if len(one) == 1 else None


def way_names(found: Iterable[Fit]) -> tuple[str, ...]:
    """Return the names of the ways, each once, in order."""
    return tuple(dict.fromkeys(each.way for each in found))


def blurs(task: Task, claims: tuple[str, ...]) -> tuple[Blur, ...]:
    """Return which claimed ways these numbers cannot tell apart, from the truth or from another way.

    A number must be as far from the truth as its kind asks, and more than the tolerance away from any other way; what
    is chosen must be another option than the truth and than any other claimed way.
    """
    if not claims:
        return ()
    truth, said = truth_of(task), predictions(task)
    return (*hidden(task, claims, truth, said), *mixed_up(task, claims, said))


def hidden(task: Task, claims: tuple[str, ...], truth: Answer, said: tuple[Fit, ...]) -> tuple[Blur, ...]:
    """Return which claimed ways have no answer here, or one too near to the truth.

    truth, said: the truth, and what every way says.
    """
    clear = kind_of(task).clear(task, truth)
    found: list[Blur] = []
    for claim in claims:
        mine, _ = _parted(claim, said)
        if not mine:
            found.append(Blur(claim=claim, other=""))
        if any(same(each.answer, truth, within=clear) for each in mine):
            found.append(Blur(claim=claim, other="truth"))
    return tuple(found)


def mixed_up(task: Task, claims: tuple[str, ...], said: tuple[Fit, ...]) -> tuple[Blur, ...]:
    """Return which claimed ways have the answer of another way: of any, or of a claimed one where one chooses."""
    chosen = bool(said) and isinstance(said[0].answer, str)
    rivals = tuple(each for each in said if any(each.claimed_by(claim) for claim in claims)) if chosen else said
    found: list[Blur] = []
    for claim in claims:
        mine, others = _parted(claim, rivals)
        alike = (
            other.way for other in others if any(same(each.answer, other.answer, within=task.within) for each in mine)
        )
        found.extend(Blur(claim=claim, other=name) for name in dict.fromkeys(alike))
    return tuple(found)


def _parted(claim: str, said: tuple[Fit, ...]) -> tuple[list[Fit], list[Fit]]:
    """The answers of a claimed way, and those of the others."""
    way, _, part = claim.partition(":")
    mine: list[Fit] = []
    others: list[Fit] = []
    for each in said:
        (mine if each.way == way and part in ("", each.part) else others).append(each)
    return mine, others
