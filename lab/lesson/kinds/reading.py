"""What will each scale read?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from functools import partial
from math import hypot
from typing import ClassVar

from lab.files import Build, Support
from lab.lesson.asked import Asked
from lab.lesson.contrast import HALF_AS_HEAVY, HEAVY, TWICE_AS_HEAVY, Contrast, weighed, with_part
from lab.lesson.explanation import Explanation
from lab.lesson.forms import Answer, Number, Numbers, same
from lab.lesson.kinds.kind import Fit, Found, Kind
from lab.lesson.kinds.numbers import clear_of, fits_of, is_sizeable, largest, number, shown_miss
from lab.lesson.kinds.sums import short_moment
from lab.lesson.messages import Amount, Message, length, mass, message, msg
from lab.lesson.task import Task
from lab.lesson.ways.reading import READING_WAYS, Lying, OnScales
from lab.mechanics import (
    STANDARD_GRAVITY_M_S2,
    MechanicsError,
    MomentSum,
    Part,
    Vector,
    extent_m,
    moment_sum,
    support_reactions_n,
)

SMALL_SHARE = 0.25
"""Of the body's length: what reaches farther is a part of the body, nothing aboard it."""


class ReadingKind(Kind):
    """What two or three scales under a body read, as weights."""

    name = "reading"
    quantity: ClassVar = "weight"
    ways: ClassVar = tuple(way.name for way in READING_WAYS[1:])

    def scene_faults(self, build: Build) -> Iterator[Found]:
        if not build.supports:
            yield ("scene",), "no scales to read", "add two or three `[[question.scene.support]]` with `name` and `at`"

    def amounts(self, task: Task) -> Mapping[str, Amount]:
        return {"balance.at": length(task.balance_m, decimals=1)}

    def truth(self, task: Task) -> Answer:
        forces_n = support_reactions_n(task.parts, [support.at_m for support in task.build.supports])
        if forces_n is None:
            raise MechanicsError("it tips off its supports; set them farther apart, or move a weight between them")
        return tuple(force_n / STANDARD_GRAVITY_M_S2 for force_n in forces_n)

    def predictions(self, task: Task) -> tuple[Fit, ...]:
        beam = task.seen.beam
        names = {"beam": beam.name if beam else ""}

        def in_kg(readings: tuple[float, ...]) -> Answer:
            return tuple(task.units.to_kg(each) for each in readings)

        return fits_of(READING_WAYS[1:], _scales(task), self.form(task), to_si=in_kg, values={**names})

    def clear(self, task: Task, truth: Answer) -> float:
        return clear_of(task, truth)

    def size(self, task: Task, truth: Answer) -> tuple[float, str]:
        return largest(truth), "a reading"

    def is_sound(self, task: Task, truth: Answer, *, written: Answer) -> bool:
        return is_sizeable(task, truth)

    def form(self, task: Task) -> Numbers:
        whole_kg = sum(part.mass_kg for part in task.parts)
        return Numbers(
            numbers=tuple(
                Number(
                    name=support.name,
                    quantity="weight",
                    tolerance=task.within,
                    decimals=task.decimals("weight", least=0),
                    low=0.0,
                    high=whole_kg,
                    least=0.0,
                    most=1000 * whole_kg,
                    # All that lies there: not each scale can read it.
                    example=whole_kg,
                    again=_AGAIN[len(task.build.supports)],
                    too_far=msg("A scale here reads between {low} and {high}. Type the weights again."),
                )
                for support in task.build.supports
            )
        )

    def prompt(self, task: Task) -> Message:
        return message(msg("What will each scale read?"))

    def what_to_type(self, asked: Asked) -> Message:
        names = [support.name for support in asked.build.supports]
        third = names[2] if len(names) > 2 else ""
        return message(
            _TYPE[len(names)],
            unit=asked.units.weight_word,
            within=mass(asked.tolerance or 0.0),
            first=names[0],
            second=names[1],
            third=third,
        )

    def given(self, asked: Asked) -> tuple[Message, ...]:
        return tuple(
            message(
                _STANDS[(support.at_m[1] > 0) - (support.at_m[1] < 0)],
                support=support.name,
                place=length(support.at_m[0]),
                across=length(abs(support.at_m[1])),
            )
            for support in asked.build.supports
        )

    def explain(self, asked: Asked, value: Answer, fit: Fit | None, ways: tuple[str, ...]) -> Explanation:
        right = same(value, asked.truth, within=asked.tolerance or 0.0)
        first = asked.build.supports[0]
        summed = moment_sum(asked.build.all_parts, first.at_m)
        why = _why(asked, summed)
        read = message(msg("The scales read {readings}."), readings=asked.form.shown(asked.truth))
        return Explanation(
            right=right,
            goes="level",
            headline=message(msg("The scales read as you said")) if right else _off(asked, value),
            going=read,
            happened=read,
            said=message(msg("You said {readings}."), readings=asked.form.shown(value)),
            sum=summed,
            quotient=_quotient(asked, summed),
            deciding=max(summed.rows, key=lambda row: abs(row.moment_kg_m[0])).name,
            idea=why if right else self.idea(asked, fit),
            why=why,
            ways=ways,
            contrast=self._contrast(asked),
            working=_working(asked, summed),
        )

    def _contrast(self, asked: Asked) -> Contrast | None:
        """The first change under which it still stands; None where it tips whatever is changed."""
        for label, changed in _changes(asked):
            try:
                readings = asked.form.shown(self.truth(replace(asked.task, build=changed)))
            except MechanicsError:
                continue
            return Contrast(
                label=label,
                build=changed,
                balance_point_m=moment_sum(changed.all_parts).balance_point_m[0],
                goes="level",
                happened=message(msg("Then the scales would read {readings}."), readings=readings),
            )
        return None


def _changes(asked: Asked) -> Iterator[tuple[Message, Build]]:
    """The heaviest thing aboard put right over one scale, which carries all of it then; else that thing heavier."""
    build = asked.build
    heaviest = max(_aboard(asked) or build.parts or build.all_parts, key=lambda part: part.mass_kg).name
    for support in build.supports:
        changed = with_part(build, heaviest, partial(_over, support))
        if changed != build:
            label = msg("What if the {part} lay right over the {support}?")
            yield message(label, part=heaviest, support=support.name), changed
    yield message(TWICE_AS_HEAVY, part=heaviest), weighed(build, heaviest, times=HEAVY)
    yield message(HALF_AS_HEAVY, part=heaviest), weighed(build, heaviest, times=0.5)


def _over(support: Support, part: Part) -> Part:
    return replace(part, at_m=(support.at_m[0], support.at_m[1], part.at_m[2]))


def _aboard(asked: Asked) -> tuple[Part, ...]:
    """The parts that one could lift and put elsewhere: all but what reaches far along or across."""
    most_m = SMALL_SHARE * (asked.right_m - asked.left_m)
    return tuple(part for part in asked.build.parts if max(extent_m(part.shape)[:2]) <= most_m)


_STANDS = {
    -1: msg("{support}   a scale at {place}, {across} left of the middle"),
    0: msg("{support}   a scale at {place}"),
    1: msg("{support}   a scale at {place}, {across} right of the middle"),
}
"""By the side across."""
_AGAIN = {
    2: msg("I could not read two weights in that. Type them with a blank between, as in {example} {example}."),
    3: msg("I could not read three weights. Type them with blanks between: {example} {example} {example}."),
}
_TYPE = {
    2: msg("Type two weights in {unit}, {first} then {second}. Within {within} counts."),
    3: msg("Type three weights in {unit}: {first}, {second}, {third}. Within {within} counts."),
}


def _scales(task: Task) -> OnScales:
    """The scene in numerals."""
    units, build = task.units, task.build
    bar = None if build.bar is None else build.bar.name
    return OnScales(
        loads=tuple(
            Lying(
                weight=units.from_kg(part.signed_mass_kg),
                at=(units.from_m(part.at_m[0]), units.from_m(part.at_m[1])),
                is_bar=part.name == bar,
            )
            for part in build.all_parts
        ),
        scales=tuple((units.from_m(each.at_m[0]), units.from_m(each.at_m[1])) for each in build.supports),
    )


def _off(asked: Asked, value: Answer) -> Message:
    """How far off the reading is that is farthest off."""
    pairs = list(zip(asked.build.supports, _readings(value), _readings(asked.truth), strict=True))
    support, said, truth = max(pairs, key=lambda pair: abs(pair[1] - pair[2]))
    off = msg("Too much by {miss} at the {support}") if said > truth else msg("Too little by {miss} at the {support}")
    return message(off, miss=shown_miss(asked, said, truth, "weight"), support=support.name)


def _readings(value: Answer) -> tuple[float, ...]:
    return value if isinstance(value, tuple) else (number(value),)


def _why(asked: Asked, summed: MomentSum) -> Message:
    supports, truth = asked.build.supports, _readings(asked.truth)
    if len(supports) > 2:
        return message(
            msg("Together they carry {whole}. The nearer the balance point is to a scale, the more it carries."),
            whole=mass(summed.mass_kg),
        )
    return message(
        msg("About the {first}, weight × arm is {moment}. Share it by {gap}: the {second} reads {reading}."),
        first=supports[0].name,
        moment=short_moment(summed.moment_kg_m[0], asked.units),
        gap=length(abs(supports[1].at_m[0] - supports[0].at_m[0])),
        second=supports[1].name,
        reading=mass(truth[1], decimals=asked.decimals),
    )


def _working(asked: Asked, summed: MomentSum) -> tuple[Message, ...]:
    """How each of three scales is worked out: about the line through the two others.  None of it for two scales."""
    supports, truth = asked.build.supports, _readings(asked.truth)
    if len(supports) < 3:
        return ()
    lines = [message(msg("Each scale by its moments about the line through the two others:"))]
    for index, support in enumerate(supports):
        first, second = (other.at_m for other in supports if other is not support)
        balance, gap = (_away_m(at_m, first, second) for at_m in (summed.balance_point_m, support.at_m))
        lines.append(
            message(
                msg("{support}: {whole} × {away} / {gap} = {reading}"),
                support=support.name,
                whole=mass(summed.mass_kg),
                away=length(balance, decimals=2),
                gap=length(gap, decimals=1),
                reading=mass(truth[index], decimals=asked.decimals),
            )
        )
    return (*lines, _quotient(asked, summed))


def _away_m(at_m: Vector, first: Vector, second: Vector) -> float:
    """How far a place is from the line through two others, as seen from above, m."""
    along, across = second[0] - first[0], second[1] - first[1]
    return abs(along * (at_m[1] - first[1]) - across * (at_m[0] - first[0])) / hypot(along, across)


def _quotient(asked: Asked, summed: MomentSum) -> Message:
    supports, truth = asked.build.supports, _readings(asked.truth)
    if len(supports) > 2:
        return message(
            msg("{readings}, together {whole}"), readings=asked.form.shown(truth), whole=mass(summed.mass_kg)
        )
    first, second = (mass(each, decimals=asked.decimals) for each in truth)
    return message(
        msg("{moment} / {gap} = {second}, and {whole} − {second_number} = {first}"),
        moment=short_moment(summed.moment_kg_m[0], asked.units),
        gap=length(supports[1].at_m[0] - supports[0].at_m[0], unit=False),
        first=first,
        second=second,
        second_number=mass(truth[1], decimals=asked.decimals, unit=False),
        whole=mass(summed.mass_kg, unit=False),
    )


KIND = ReadingKind()
