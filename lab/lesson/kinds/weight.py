"""How much must hang there so that it stays level?"""

from __future__ import annotations

from dataclasses import replace
from typing import ClassVar

from lab.lesson.asked import Asked
from lab.lesson.contrast import Contrast
from lab.lesson.forms import Answer, Number
from lab.lesson.kinds.hanging import Hung, contrast_of, heavier_bar, turn_of, with_hung
from lab.lesson.kinds.kind import Fit
from lab.lesson.kinds.lever import LeverKind, Sentences
from lab.lesson.kinds.numbers import clear_of, is_sizeable, number, type_a_number, weight_form
from lab.lesson.messages import Message, mass, message, msg
from lab.lesson.resting import pivot_of
from lab.lesson.task import Task
from lab.lesson.ways.lever import Lever
from lab.lesson.ways.weight import WEIGHT_WAYS
from lab.mechanics import CannotBeDone, MechanicsError, ballast_kg


class WeightKind(LeverKind):
    """What to hang at a given place, so that the whole balances on the pivot."""

    name = "weight"
    quantity: ClassVar = "weight"
    given_key: ClassVar = "at"
    lever_ways: ClassVar = WEIGHT_WAYS
    ways: ClassVar = tuple(way.name for way in WEIGHT_WAYS[1:])
    sentences: ClassVar = Sentences(
        prompt=msg("How much must the {part} weigh to keep everything level?"),
        given=msg("{part}   at {place}; the pin is at {pivot}"),
        headline={
            "right": msg("{weight} keeps it level"),
            "more": msg("Too much by {miss}"),
            "less": msg("Too little by {miss}"),
        },
        said={
            "right": msg("You said {weight}: that keeps it level."),
            "more": msg("You said {weight}: {miss} too much."),
            "less": msg("You said {weight}: {miss} too little."),
        },
        happened=msg("{end} The moment sum asks for {weight}."),
        quotient=msg("{moment} / {arm_number} = {weight}"),
        why=msg(
            "Without the {part}, weight × arm comes to {moment}. "
            "The {part} hangs {arm} from the pin, so it must weigh {weight}."
        ),
    )

    def truth(self, task: Task) -> Answer:
        turn_of(task.build)
        missing = ballast_kg(
            whole_kg=sum(part.signed_mass_kg for part in task.parts),
            now_m=task.balance_m,
            target_m=pivot_of(task.build).at_m,
            at_m=task.detail.at_m,
        )
        if isinstance(missing, CannotBeDone):
            raise MechanicsError(
                "it is heavier already on the side where something is to hang; put `hang` on the other"
            )
        return missing

    def hung_by(self, hung: Hung, value: float) -> Hung:
        return replace(hung, mass_kg=value)

    def from_numerals(self, task: Task, seen: Lever, value: float) -> float:
        return task.units.to_kg(value)

    def clear(self, task: Task, truth: Answer) -> float:
        return clear_of(task, truth)

    def size(self, task: Task, truth: Answer) -> tuple[float, str]:
        return number(truth), "a weight"

    def is_sound(self, task: Task, truth: Answer, *, written: Answer) -> bool:
        return is_sizeable(task, truth)

    def form(self, task: Task) -> Number:
        return weight_form(task, high_times=10.0)

    def what_to_type(self, asked: Asked) -> Message:
        return type_a_number(asked, unit=asked.units.weight_word)

    def contrast(self, asked: Asked, said: float, fit: Fit | None) -> Contrast:
        build, hung = asked.build, asked.detail
        if fit is not None and "bar" in fit.way:
            build, label = heavier_bar(build)
        else:
            hung = replace(hung, at_m=(hung.at_m + pivot_of(build).at_m) / 2)
            label = message(msg("What if the {part} hung half as far out?"), part=hung.name)
        changed = Task(kind=self.name, build=build, detail=hung, tolerance=asked.tolerance)
        try:
            would = mass(number(self.truth(changed)), decimals=asked.decimals)
            told = message(msg("It would take {weight} to keep it level."), weight=would)
        except MechanicsError:
            told = message(msg("No weight there would keep it level."))
        return contrast_of(label=label, hung=with_hung(build, self.hung_by(hung, said)), would_do=told)


KIND = WeightKind()
