"""Where must it hang so that it stays level?"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import ClassVar

from lab.lesson.asked import Asked
from lab.lesson.contrast import TWICE_AS_HEAVY, Contrast
from lab.lesson.forms import Answer, Number
from lab.lesson.kinds.hanging import Hung, contrast_of, heavier_bar, turn_of, with_hung
from lab.lesson.kinds.kind import Fit, Found
from lab.lesson.kinds.lever import LeverKind, Sentences
from lab.lesson.kinds.numbers import number
from lab.lesson.kinds.places import PLACE_CLEAR_SHARE, body_m, ends_m, place_form, type_a_place
from lab.lesson.messages import Message, length, message, msg
from lab.lesson.resting import pivot_of
from lab.lesson.task import Task
from lab.lesson.ways.arm import ARM_WAYS
from lab.lesson.ways.lever import Lever
from lab.mechanics import turn_about

TWICE = 2.0
"""How many times as heavy what hangs becomes in a contrast: then half the arm does."""


class ArmKind(LeverKind):
    """Where to hang a given weight, as a place on the body."""

    name = "arm"
    quantity: ClassVar = "length"
    given_key: ClassVar = "weight"
    lever_ways: ClassVar = ARM_WAYS
    ways: ClassVar = tuple(way.name for way in ARM_WAYS[1:])
    sentences: ClassVar = Sentences(
        prompt=msg("Where must the {part} hang to keep everything level?"),
        given=msg("{part}   {weight}, to be hung; the pin is at {pivot}"),
        headline={
            "right": msg("At {place} it stays level"),
            "more": msg("Too far right by {miss}"),
            "less": msg("Too far left by {miss}"),
        },
        said={
            "right": msg("You said {place}: hung there, it stays level."),
            "more": msg("You said {place}: {miss} too far right."),
            "less": msg("You said {place}: {miss} too far left."),
        },
        happened=msg("{end} The moment sum puts the {part} at {place}."),
        quotient=msg("{moment} / {weight_number} = {arm} from the pin: at {place}"),
        why=msg(
            "Without the {part}, weight × arm comes to {moment}. "
            "The {part} weighs {weight}, so its arm must be {arm}: it hangs at {place}."
        ),
    )

    def truth(self, task: Task) -> Answer:
        # What turns it left is made up for by as much to the right.
        hung: Hung = task.detail
        return pivot_of(task.build).at_m + turn_of(task.build).moment_kg_m / (hung.mass_kg or 0.0)

    def hung_by(self, hung: Hung, value: float) -> Hung:
        return replace(hung, at_m=value)

    def from_numerals(self, task: Task, seen: Lever, value: float) -> float:
        arm_m, pivot_m = task.units.to_m(value), pivot_of(task.build).at_m
        return pivot_m + arm_m if seen.right_of_pivot else pivot_m - arm_m

    def task_faults(self, task: Task, truth: Answer) -> Iterator[Found]:
        left_m, right_m = ends_m(task)
        if not left_m <= number(truth) <= right_m:
            at = task.units.from_m(number(truth))
            yield ("hang", "weight"), f"it would have to hang at {at:.6g}, off the body", "make it heavier"

    def clear(self, task: Task, truth: Answer) -> float:
        return max(PLACE_CLEAR_SHARE * body_m(task), 2 * task.within)

    def size(self, task: Task, truth: Answer) -> tuple[float, str]:
        return body_m(task), "a body"

    def is_sound(self, task: Task, truth: Answer, *, written: Answer) -> bool:
        left_m, right_m = ends_m(task)
        away_m = abs(number(truth) - pivot_of(task.build).at_m)
        return left_m + task.within <= number(truth) <= right_m - task.within and away_m >= 2 * task.within

    def form(self, task: Task) -> Number:
        return place_form(task)

    def what_to_type(self, asked: Asked) -> Message:
        return type_a_place(asked)

    def contrast(self, asked: Asked, said: float, fit: Fit | None) -> Contrast:
        build, hung = asked.build, self.hung_by(asked.detail, said)
        if fit is not None and fit.way.startswith("bar_"):
            build, label = heavier_bar(build)
        else:
            hung = replace(hung, mass_kg=TWICE * (hung.mass_kg or 0.0))
            label = message(TWICE_AS_HEAVY, part=hung.name)
        pivot = pivot_of(build)
        at_m = pivot.at_m + turn_about(build.all_parts, pivot).moment_kg_m / (hung.mass_kg or 0.0)
        told = message(
            msg("To stay level it would have to hang at {place}."), place=length(at_m, decimals=asked.decimals)
        )
        if not asked.left_m <= at_m <= asked.right_m:
            told = message(msg("Nowhere along it could the {part} keep it level."), part=hung.name)
        return contrast_of(label=label, hung=with_hung(build, hung), would_do=told)


KIND = ArmKind()
