"""Where would one finger hold it level?"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import ClassVar

from lab.lesson.asked import Asked, Side
from lab.lesson.ends import end_dropped, end_drops
from lab.lesson.explanation import Explanation
from lab.lesson.forms import Answer, Number
from lab.lesson.kinds.kind import Fit, Kind
from lab.lesson.kinds.place_contrast import place_contrast
from lab.lesson.kinds.places import PLACE_CLEAR_SHARE, body_m, place_form, type_a_place
from lab.lesson.kinds.sums import FROM_ORIGIN_M, both_sides, short_moment
from lab.lesson.messages import Message, length, mass, message, moment, msg
from lab.lesson.resting import goes_at
from lab.lesson.situation import Situation, situation_of
from lab.lesson.task import Task
from lab.lesson.ways.part import CUT_SENTENCES, PART_WAYS
from lab.lesson.ways.place import PLACE_WAYS
from lab.lesson.ways.way import PartWay, Way
from lab.mechanics import MomentSum, moment_sum


class PlaceKind(Kind):
    """The balance point along."""

    name = "place"
    quantity: ClassVar = "length"
    part_ways: ClassVar = tuple(way.name for way in PART_WAYS)
    ways: ClassVar = (*(way.name for way in PLACE_WAYS[1:]), *part_ways)

    def truth(self, task: Task) -> Answer:
        return task.balance_m

    def predictions(self, task: Task) -> tuple[Fit, ...]:
        return (*_whole(task, PLACE_WAYS[1:]), *_by_part(task, PART_WAYS))

    def claimed(self, task: Task, claims: tuple[str, ...]) -> tuple[Fit, ...]:
        # Most drawn numbers fail by one claimed way: not all two dozen need be asked for that.
        names = {claim.partition(":")[0] for claim in claims}
        whole = [way for way in PLACE_WAYS[1:] if way.name in names]
        by_part = _by_part(task, [way for way in PART_WAYS if way.name in names])
        return (*_whole(task, whole), *(fit for fit in by_part if any(fit.claimed_by(claim) for claim in claims)))

    def clear(self, task: Task, truth: Answer) -> float:
        return max(PLACE_CLEAR_SHARE * body_m(task), 2 * task.within)

    def size(self, task: Task, truth: Answer) -> tuple[float, str]:
        return body_m(task), "a body"

    def is_sound(self, task: Task, truth: Answer, *, written: Answer) -> bool:
        seen, to_m = task.seen, task.units.to_m
        return isinstance(truth, float) and to_m(seen.left) + task.within <= truth <= to_m(seen.right) - task.within

    def form(self, task: Task) -> Number:
        return place_form(task)

    def prompt(self, task: Task) -> Message:
        return message(msg("Where would one finger hold it level?"))

    def what_to_type(self, asked: Asked) -> Message:
        return type_a_place(asked)

    def pad_half_m(self, task: Task) -> float:
        # What counts as right is what stays up on the finger.
        return task.within

    def explain(self, asked: Asked, value: Answer, fit: Fit | None, ways: tuple[str, ...]) -> Explanation:
        if not isinstance(value, float):
            raise TypeError(f"a place is a number, not {value!r}")
        summed = moment_sum(asked.build.all_parts, asked.build.reference_m)
        goes = goes_at(asked.build, value, pad_half_m=asked.pad_half_m)
        right = goes == "level"
        why = _why(asked, summed)
        return Explanation(
            right=right,
            goes=goes,
            headline=_miss(asked, value, goes, _HEADLINES),
            going=end_drops(asked, goes, value),
            happened=end_dropped(asked, goes, value),
            said=_miss(asked, value, goes, _SAID),
            sum=summed,
            quotient=balance_quotient(asked, summed),
            deciding=_deciding(asked, value, fit, summed),
            idea=why if right else self.idea(asked, fit),
            why=why,
            ways=ways,
            contrast=place_contrast(asked, value, fit),
        )


def _whole(task: Task, ways: Sequence[Way[Situation, float]]) -> Iterator[Fit]:
    seen, decimals = task.seen, task.decimals("length")
    names = {"beam": seen.beam.name if seen.beam else "", "heaviest": seen.heaviest.name if seen.heaviest else ""}
    for way in ways:
        place = way.predict(seen)
        if place is not None:
            at_m = task.units.to_m(place)
            shown = length(at_m, decimals=decimals, unit=False)
            yield Fit(way=way.name, answer=at_m, sentence=way.sentence, values={"place": shown, **names})


def _by_part(task: Task, ways: Sequence[PartWay]) -> Iterator[Fit]:
    seen, decimals = task.seen, task.decimals("length")
    for way in ways:
        for load in seen.everything:
            place = way.predict(seen, load)
            if place is not None:
                at_m = task.units.to_m(place)
                shown = length(at_m, decimals=decimals, unit=False)
                sentence = CUT_SENTENCES.get(way.name, way.sentence) if load.weight < 0 else way.sentence
                yield Fit(way=way.name, part=load.name, answer=at_m, sentence=sentence, values={"place": shown})


_HEADLINES: dict[Side, str] = {
    "level": msg("It stays level at {place}"),
    "left": msg("Too far right by {miss}"),
    "right": msg("Too far left by {miss}"),
}
_SAID: dict[Side, str] = {
    "level": msg("You said {place}: it stays level there."),
    "left": msg("You said {place}: {miss} too far right."),
    "right": msg("You said {place}: {miss} too far left."),
}


def _miss(asked: Asked, value: float, goes: Side, sentences: dict[Side, str]) -> Message:
    place = length(value, decimals=asked.decimals)
    if goes == "level" or not isinstance(asked.truth, float):
        return message(sentences[goes], place=place)
    # The difference of the figures that are shown, so that a learner who subtracts them agrees.
    shown = [round(asked.units.from_m(each), asked.decimals) for each in (value, asked.truth)]
    miss = length(asked.units.to_m(abs(shown[0] - shown[1])), decimals=asked.decimals)
    if "{place}" in sentences[goes]:
        return message(sentences[goes], place=place, miss=miss)
    return message(sentences[goes], miss=miss)


def balance_quotient(asked: Asked, summed: MomentSum) -> Message:
    """Return the last step of the sum: all the moments, shared by all the weight."""
    turning, weight = moment(summed.moment_kg_m[0]), mass(summed.mass_kg, unit=False)
    place = length(summed.balance_point_m[0], decimals=asked.decimals)
    if abs(summed.reference_m[0]) < FROM_ORIGIN_M:
        return message(msg("{moment} / {weight} = {place}"), moment=turning, weight=weight, place=place)
    arm = length(summed.balance_point_m[0] - summed.reference_m[0], decimals=asked.decimals)
    return message(
        msg("{moment} / {weight} = {arm} from the line: at {place}"),
        moment=turning,
        weight=weight,
        arm=arm,
        place=place,
    )


def _deciding(asked: Asked, value: float, fit: Fit | None, summed: MomentSum) -> str:
    """Return the row to point at: the part the idea is about, else what turned it most where it was held."""
    seen = situation_of(asked.build)
    if fit is not None and fit.part is not None:
        return fit.part
    if fit is not None and fit.way.startswith("bar_") and seen.bar is not None:
        return seen.bar.name
    at_m = {part.name: part.at_m[0] for part in asked.build.all_parts}
    return max(summed.rows, key=lambda row: abs(row.mass_kg * (at_m[row.name] - value))).name


def _why(asked: Asked, summed: MomentSum) -> Message:
    """Return why it balances where it does: both sides turn it alike there."""
    if len(summed.rows) == 1:
        return message(
            msg("The {part} is the same on both sides of its middle, so it balances there."), part=summed.rows[0].name
        )
    balance_m = summed.balance_point_m[0]
    at_m = {part.name: part.at_m[0] for part in asked.build.all_parts}
    left, right = both_sides(row.mass_kg * (balance_m - at_m[row.name]) for row in summed.rows)
    return message(
        msg("At {place} both sides pull alike: weight × arm is {left} on the left and {right} on the right."),
        place=length(balance_m, decimals=asked.decimals),
        left=short_moment(left, asked.units),
        right=short_moment(right, asked.units),
    )


KIND = PlaceKind()
