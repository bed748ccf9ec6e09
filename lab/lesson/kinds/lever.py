"""Something is to be hung so that it stays level: of its weight and its place one is given, the other asked for."""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any, ClassVar, Literal

from lab.files import Build
from lab.lesson.asked import Asked
from lab.lesson.contrast import Contrast
from lab.lesson.ends import end_drops, end_went
from lab.lesson.explanation import Explanation
from lab.lesson.forms import Answer, Number, Quantity, same
from lab.lesson.kinds.hanging import Hung, hung_amounts, hung_of, lever, scene_faults_of, with_hung
from lab.lesson.kinds.kind import Fit, Found, Kind
from lab.lesson.kinds.numbers import fits_of, number, shown_miss
from lab.lesson.kinds.side import deciding_side
from lab.lesson.kinds.sums import short_moment
from lab.lesson.messages import Amount, Message, Value, length, mass, message
from lab.lesson.resting import pivot_of
from lab.lesson.task import Task
from lab.lesson.ways.lever import Lever
from lab.lesson.ways.way import Way
from lab.mechanics import moment_sum, turn_about

Answered = Literal["right", "more", "less"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Sentences:
    """What is said of it.  headline, said: by whether an answer is right, more than the truth, or less.

    Each may name the {part}, the {moment} without it, its {weight}, {arm} and {place}, the {pivot} and, in `headline`
    and `said`, the {miss}; {weight_number} and {arm_number} stand without their units, and `happened` names the {end}.
    """

    prompt: str
    given: str
    headline: Mapping[Answered, str]
    said: Mapping[Answered, str]
    happened: str
    quotient: str
    why: str


class LeverKind(Kind):
    """One of a weight and its place is given; weight times arm finds the other.

    given_key: the one that `hang` has.  lever_ways: its ways of thinking, the truth first.
    """

    needs: ClassVar = ("hang",)
    quantity: ClassVar[Quantity]
    given_key: ClassVar[Literal["at", "weight"]]
    lever_ways: ClassVar[tuple[Way[Lever, float], ...]]
    sentences: ClassVar[Sentences]

    @abstractmethod
    def form(self, task: Task) -> Number:
        """The form of its answers."""

    @abstractmethod
    def hung_by(self, hung: Hung, value: float) -> Hung:
        """What is to be hung, with an answer filled in: both its weight and its place are known."""

    @abstractmethod
    def from_numerals(self, task: Task, seen: Lever, value: float) -> float:
        """What a way of thinking gives of what it sees, as an answer in SI."""

    @abstractmethod
    def contrast(self, asked: Asked, said: float, fit: Fit | None) -> Contrast:
        """One thing changed, with the same answer, and what would do then."""

    def detail(self, keys: Mapping[str, Any], build: Build) -> Hung:
        return hung_of(keys, build, given=self.given_key)

    def scene_faults(self, build: Build) -> Iterator[Found]:
        yield from scene_faults_of(build)

    def amounts(self, task: Task) -> Mapping[str, Amount]:
        return {} if task.detail is None else hung_amounts(task.detail)

    def predictions(self, task: Task) -> tuple[Fit, ...]:
        beam, seen = task.seen.beam, lever(task)
        return fits_of(
            self.lever_ways[1:],
            seen,
            self.form(task),
            to_si=lambda given: self.from_numerals(task, seen, given),
            values={"beam": beam.name if beam else ""},
        )

    def prompt(self, task: Task) -> Message:
        return message(self.sentences.prompt, part=task.detail.name)

    def given(self, asked: Asked) -> tuple[Message, ...]:
        return (message(self.sentences.given, **self._told(asked, number(asked.truth))),)

    def scene_with(self, asked: Asked, value: Answer) -> Build:
        near_enough = abs(number(value) - number(asked.truth)) <= (asked.tolerance or 0.0)
        # What counts as right is not let down by the millimetre or the gram that it may be off.
        return with_hung(asked.build, self.hung_by(asked.detail, number(asked.truth if near_enough else value)))

    def explain(self, asked: Asked, value: Answer, fit: Fit | None, ways: tuple[str, ...]) -> Explanation:
        pivot, said, truth, say = pivot_of(asked.build), number(value), number(asked.truth), self.sentences
        right = same(said, truth, within=asked.tolerance or 0.0)
        answered: Answered = "right" if right else "more" if said > truth else "less"
        goes = "level" if right else turn_about(self.scene_with(asked, said).all_parts, pivot).goes
        summed = moment_sum(asked.build.all_parts, (pivot.at_m, 0.0, 0.0))
        told, solved = self._told(asked, said), self._told(asked, truth)
        why = message(say.why, **solved)
        return Explanation(
            right=right,
            goes=goes,
            headline=message(say.headline[answered], **told),
            going=end_drops(asked, goes, pivot.at_m),
            happened=message(say.happened, **solved, end=end_went(asked, goes)),
            said=message(say.said[answered], **told),
            sum=summed,
            quotient=message(say.quotient, **solved),
            deciding=deciding_side("left" if summed.moment_kg_m[0] < 0 else "right", summed),
            idea=why if right else self.idea(asked, fit),
            why=why,
            ways=ways,
            contrast=self.contrast(asked, said, fit),
            arms_from="pivot",
        )

    def _told(self, asked: Asked, value: float) -> dict[str, Value]:
        """What the sentences may name, with `value` for the answer: what is asked for in its own figures."""
        hung, pivot = self.hung_by(asked.detail, value), pivot_of(asked.build)
        place_decimals = asked.decimals if self.quantity == "length" else None
        weight_decimals = asked.decimals if self.quantity == "weight" else None
        arm_m = abs((hung.at_m or 0.0) - pivot.at_m)
        return {
            "part": hung.name,
            "pivot": length(pivot.at_m),
            "moment": short_moment(abs(turn_about(asked.build.all_parts, pivot).moment_kg_m), asked.units),
            "weight": mass(hung.mass_kg or 0.0, decimals=weight_decimals),
            "weight_number": mass(hung.mass_kg or 0.0, decimals=weight_decimals, unit=False),
            "arm": length(arm_m, decimals=place_decimals),
            "arm_number": length(arm_m, decimals=place_decimals, unit=False),
            "place": length(hung.at_m or 0.0, decimals=place_decimals),
            "miss": shown_miss(asked, value, number(asked.truth), self.quantity),
        }
