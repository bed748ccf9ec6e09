"""Where must it hang so that it stays level?"""

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
from lab.lesson.kinds.numbers import fits_of, number, shown_miss
from lab.lesson.kinds.places import PLACE_CLEAR_SHARE, body_m, ends_m, place_form, type_a_place
from lab.lesson.kinds.side import deciding_side
from lab.lesson.kinds.sums import short_moment
from lab.lesson.messages import Amount, Message, length, mass, message, msg
from lab.lesson.resting import pivot_of
from lab.lesson.task import Task
from lab.lesson.ways.arm import ARM_WAYS
from lab.mechanics import MomentSum, moment_sum, turn_about

TWICE = 2.0
"""How many times as heavy what hangs becomes in a contrast: then half the arm does."""


class ArmKind(Kind):
    """Where to hang a given weight, as a place on the body."""

    name = "arm"
    quantity: ClassVar = "length"
    needs: ClassVar = ("hang",)
    ways: ClassVar = tuple(way.name for way in ARM_WAYS[1:])

    def detail(self, keys: Mapping[str, Any], build: Build) -> Hung:
        return hung_of(keys, build, given="weight")

    def scene_faults(self, build: Build) -> Iterator[Found]:
        yield from scene_faults_of(build)

    def amounts(self, task: Task) -> Mapping[str, Amount]:
        return {} if task.detail is None else hung_amounts(task.detail)

    def truth(self, task: Task) -> Answer:
        # What turns it left is made up for by as much to the right.
        hung: Hung = task.detail
        return pivot_of(task.build).at_m + turn_of(task.build).moment_kg_m / (hung.mass_kg or 0.0)

    def task_faults(self, task: Task, truth: Answer) -> Iterator[Found]:
        left_m, right_m = ends_m(task)
        if not left_m <= number(truth) <= right_m:
            at = task.units.from_m(number(truth))
            yield ("hang", "weight"), f"it would have to hang at {at:.6g}, off the body", "make it heavier"

    def predictions(self, task: Task) -> tuple[Fit, ...]:
        seen = lever(task)
        beam, pivot_m = task.seen.beam, pivot_of(task.build).at_m

        def place_m(arm: float) -> float:
            arm_m = task.units.to_m(arm)
            return pivot_m + arm_m if seen.right_of_pivot else pivot_m - arm_m

        names = {"beam": beam.name if beam else ""}
        return fits_of(ARM_WAYS[1:], seen, place_form(task), to_si=place_m, values={**names})

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

    def prompt(self, task: Task) -> Message:
        return message(msg("Where must the {part} hang, so that it stays level?"), part=task.detail.name)

    def what_to_type(self, asked: Asked) -> Message:
        return type_a_place(asked)

    def given(self, asked: Asked) -> tuple[Message, ...]:
        hung: Hung = asked.detail
        return (
            message(
                msg("{part}   {weight}, to be hung; the pin is at {pivot}"),
                part=hung.name,
                weight=mass(hung.mass_kg or 0.0),
                pivot=length(pivot_of(asked.build).at_m),
            ),
        )

    def scene_with(self, asked: Asked, value: Answer) -> Build:
        near_enough = abs(number(value) - number(asked.truth)) <= (asked.tolerance or 0.0)
        # What counts as right is not let down by the millimetre that it may be off.
        at_m = number(asked.truth) if near_enough else number(value)
        return with_hung(asked.build, asked.detail, mass_kg=asked.detail.mass_kg, at_m=at_m)

    def explain(self, asked: Asked, value: Answer, fit: Fit | None, ways: tuple[str, ...]) -> Explanation:
        pivot, said_m = pivot_of(asked.build), number(value)
        right = same(said_m, asked.truth, within=asked.tolerance or 0.0)
        goes = "level" if right else turn_about(self.scene_with(asked, said_m).all_parts, pivot).goes
        summed = moment_sum(asked.build.all_parts, (pivot.at_m, 0.0, 0.0))
        why = _sum_told(asked, summed, _WHY)
        return Explanation(
            right=right,
            goes=goes,
            headline=_off(asked, said_m, _KEEPS_LEVEL if right else _HEADLINES[said_m > number(asked.truth)]),
            going=end_drops(asked, goes, pivot.at_m),
            happened=message(
                msg("{end} The moment sum puts the {part} at {place}."),
                end=end_went(asked, goes),
                part=asked.detail.name,
                place=length(number(asked.truth), decimals=asked.decimals),
            ),
            said=_off(asked, said_m, _SAID_LEVEL if right else _SAID[said_m > number(asked.truth)]),
            sum=summed,
            quotient=_sum_told(asked, summed, msg("{moment} / {weight_number} = {arm} from the pin: at {place}")),
            deciding=deciding_side("left" if summed.moment_kg_m[0] < 0 else "right", summed),
            idea=why if right else self.idea(asked, fit),
            why=why,
            ways=ways,
            contrast=self._contrast(asked, said_m, fit),
            arms_from="pivot",
        )

    def _contrast(self, asked: Asked, said_m: float, fit: Fit | None) -> Contrast:
        hung: Hung = asked.detail
        build, mass_kg = asked.build, hung.mass_kg or 0.0
        if fit is not None and fit.way.startswith("bar_"):
            build, label = heavier_bar(build)
        else:
            mass_kg *= TWICE
            label = message(msg("What if the {part} weighed twice as much?"), part=hung.name)
        summed = moment_sum(build.all_parts, (pivot_of(build).at_m, 0.0, 0.0))
        at_m = pivot_of(build).at_m - summed.moment_kg_m[0] / mass_kg
        told = message(msg("Then it would have to hang at {place}."), place=length(at_m, decimals=asked.decimals))
        return contrast_of(label=label, hung=with_hung(build, hung, mass_kg=mass_kg, at_m=said_m), would_do=told)


_WHY = msg(
    "Without the {part}, weight × arm is {moment}. It weighs {weight}, so its arm must be {arm}: it hangs at {place}."
)
_KEEPS_LEVEL = msg("At {place} it stays level")
_SAID_LEVEL = msg("You said {place}: it stays level.")
_HEADLINES = {True: msg("Too far right by {miss}"), False: msg("Too far left by {miss}")}
_SAID = {True: msg("You said {place}: {miss} too far right."), False: msg("You said {place}: {miss} too far left.")}
"""By whether it was too far right."""


def _off(asked: Asked, said_m: float, template: str) -> Message:
    miss = shown_miss(asked, said_m, number(asked.truth), "length")
    return message(template, place=length(said_m, decimals=asked.decimals), miss=miss)


def _sum_told(asked: Asked, summed: MomentSum, template: str) -> Message:
    hung: Hung = asked.detail
    truth_m, mass_kg = number(asked.truth), hung.mass_kg or 0.0
    return message(
        template,
        part=hung.name,
        moment=short_moment(abs(summed.moment_kg_m[0]), asked.units),
        weight=mass(mass_kg),
        weight_number=mass(mass_kg, unit=False),
        arm=length(abs(truth_m - pivot_of(asked.build).at_m), decimals=asked.decimals),
        place=length(truth_m, decimals=asked.decimals),
    )


KIND = ArmKind()
