"""How much must hang there so that it stays level?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, ClassVar

from lab.files import Build
from lab.lesson.asked import Asked
from lab.lesson.contrast import Contrast
from lab.lesson.ends import end_drops, end_went
from lab.lesson.explanation import Explanation
from lab.lesson.forms import Answer, Number, same
from lab.lesson.kinds.hanging import (
    HALF_AS_FAR_OUT,
    Hung,
    contrast_of,
    heavier_bar,
    hung_amounts,
    hung_of,
    lever,
    scene_faults_of,
    turn_of,
    with_hung,
)
from lab.lesson.kinds.kind import Fit, Found, Kind
from lab.lesson.kinds.numbers import clear_of, fits_of, is_sizeable, number, shown_miss, type_a_number
from lab.lesson.kinds.side import deciding_side
from lab.lesson.kinds.sums import short_moment
from lab.lesson.messages import Amount, Message, length, mass, message, msg
from lab.lesson.resting import pivot_of
from lab.lesson.task import Task
from lab.lesson.ways.weight import WEIGHT_WAYS
from lab.mechanics import CannotBeDone, MechanicsError, MomentSum, ballast_kg, moment_sum, turn_about


class WeightKind(Kind):
    """What to hang at a given place, so that the whole balances on the pivot."""

    name = "weight"
    quantity: ClassVar = "weight"
    needs: ClassVar = ("hang",)
    ways: ClassVar = tuple(way.name for way in WEIGHT_WAYS[1:])

    def detail(self, keys: Mapping[str, Any], build: Build) -> Hung:
        return hung_of(keys, build, given="at")

    def scene_faults(self, build: Build) -> Iterator[Found]:
        yield from scene_faults_of(build)

    def amounts(self, task: Task) -> Mapping[str, Amount]:
        return {} if task.detail is None else hung_amounts(task.detail)

    def truth(self, task: Task) -> Answer:
        turn_of(task.build)
        parts = task.parts
        missing = ballast_kg(
            whole_kg=sum(part.signed_mass_kg for part in parts),
            now_m=task.balance_m,
            target_m=pivot_of(task.build).at_m,
            at_m=task.detail.at_m,
        )
        if isinstance(missing, CannotBeDone):
            raise MechanicsError(
                "it is heavier already on the side where something is to hang; put `hang` on the other"
            )
        return missing

    def predictions(self, task: Task) -> tuple[Fit, ...]:
        beam = task.seen.beam
        names = {"beam": beam.name if beam else ""}
        return fits_of(WEIGHT_WAYS[1:], lever(task), self.form(task), to_si=task.units.to_kg, values={**names})

    def clear(self, task: Task, truth: Answer) -> float:
        return clear_of(task, truth)

    def size(self, task: Task, truth: Answer) -> tuple[float, str]:
        return number(truth), "a weight"

    def is_sound(self, task: Task, truth: Answer, *, written: Answer) -> bool:
        return is_sizeable(task, truth)

    def form(self, task: Task) -> Number:
        whole_kg = sum(part.mass_kg for part in task.parts)
        return Number(
            quantity="weight",
            tolerance=task.within,
            decimals=task.decimals("weight", least=0),
            low=0.0,
            high=10 * whole_kg,
            least=0.0,
            most=1000 * whole_kg,
            # All that is there already: as a rule more than is missing.
            example=whole_kg,
            again=msg("I could not read that as a weight. Type a number, for example {example}."),
            too_far=msg("No such weight is in the workshop. Type one between {low} and {high}, for example {example}."),
        )

    def prompt(self, task: Task) -> Message:
        return message(msg("How much must the {part} weigh, so that it stays level?"), part=task.detail.name)

    def what_to_type(self, asked: Asked) -> Message:
        return type_a_number(asked, unit=asked.units.weight_word)

    def given(self, asked: Asked) -> tuple[Message, ...]:
        hung: Hung = asked.detail
        where = length(hung.at_m or 0.0)
        return (
            message(
                msg("{part}   at {place}; the pin is at {pivot}"),
                part=hung.name,
                place=where,
                pivot=length(pivot_of(asked.build).at_m),
            ),
        )

    def scene_with(self, asked: Asked, value: Answer) -> Build:
        hung: Hung = asked.detail
        near_enough = abs(number(value) - number(asked.truth)) <= (asked.tolerance or 0.0)
        # What counts as right is not let down by the gram that it may be off.
        kg = number(asked.truth) if near_enough else number(value)
        return with_hung(asked.build, hung, mass_kg=kg, at_m=hung.at_m or 0.0)

    def explain(self, asked: Asked, value: Answer, fit: Fit | None, ways: tuple[str, ...]) -> Explanation:
        pivot, said_kg = pivot_of(asked.build), number(value)
        right = same(said_kg, asked.truth, within=asked.tolerance or 0.0)
        goes = "level" if right else turn_about(self.scene_with(asked, said_kg).all_parts, pivot).goes
        summed = moment_sum(asked.build.all_parts, (pivot.at_m, 0.0, 0.0))
        why = _sum_told(asked, summed, _WHY)
        truth = mass(number(asked.truth), decimals=asked.decimals)
        return Explanation(
            right=right,
            goes=goes,
            headline=_off(asked, said_kg, _KEEPS_LEVEL if right else _HEADLINES[said_kg > number(asked.truth)]),
            going=end_drops(asked, goes, pivot.at_m),
            happened=message(msg("{end} The moment sum asks for {weight}."), end=end_went(asked, goes), weight=truth),
            said=_off(asked, said_kg, _SAID_LEVEL if right else _SAID[said_kg > number(asked.truth)]),
            sum=summed,
            quotient=_sum_told(asked, summed, msg("{moment} / {arm_number} = {weight}")),
            deciding=deciding_side("left" if summed.moment_kg_m[0] < 0 else "right", summed),
            idea=why if right else self.idea(asked, fit),
            why=why,
            ways=ways,
            contrast=self._contrast(asked, said_kg, fit),
            arms_from="pivot",
        )

    def _contrast(self, asked: Asked, said_kg: float, fit: Fit | None) -> Contrast | None:
        hung: Hung = asked.detail
        at_m = hung.at_m or 0.0
        if fit is not None and "bar" in fit.way:
            build, label = heavier_bar(asked.build)
        else:
            build, label = asked.build, message(HALF_AS_FAR_OUT, part=hung.name)
            at_m = (at_m + pivot_of(build).at_m) / 2
        changed = Task(kind=self.name, build=build, detail=Hung(name=hung.name, at_m=at_m), tolerance=asked.tolerance)
        try:
            would = mass(number(self.truth(changed)), decimals=asked.decimals)
            told = message(msg("Then it would take {weight}."), weight=would)
        except MechanicsError:
            told = message(msg("Then no weight there would keep it level."))
        return contrast_of(label=label, hung=with_hung(build, hung, mass_kg=said_kg, at_m=at_m), would_do=told)


_WHY = msg("Without the {part}, weight × arm is {moment}. It hangs {arm} from the pin, so it must weigh {weight}.")
_KEEPS_LEVEL = msg("{weight} keeps it level")
_SAID_LEVEL = msg("You said {weight}: that keeps it level.")
_HEADLINES = {True: msg("Too much by {miss}"), False: msg("Too little by {miss}")}
_SAID = {True: msg("You said {weight}: {miss} too much."), False: msg("You said {weight}: {miss} too little.")}
"""By whether it was too much."""


def _off(asked: Asked, said_kg: float, template: str) -> Message:
    miss = shown_miss(asked, said_kg, number(asked.truth), "weight")
    return message(template, weight=mass(said_kg, decimals=asked.decimals), miss=miss)


def _sum_told(asked: Asked, summed: MomentSum, template: str) -> Message:
    hung: Hung = asked.detail
    arm_m = abs((hung.at_m or 0.0) - pivot_of(asked.build).at_m)
    return message(
        template,
        part=hung.name,
        moment=short_moment(abs(summed.moment_kg_m[0]), asked.units),
        arm=length(arm_m),
        arm_number=length(arm_m, unit=False),
        weight=mass(number(asked.truth), decimals=asked.decimals),
    )


KIND = WeightKind()
