"""How far off may the balance point be, given how it was measured?"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import ClassVar

from lab.files import Build
from lab.lesson.asked import Asked
from lab.lesson.contrast import Contrast
from lab.lesson.explanation import Explanation
from lab.lesson.forms import Answer, Number, same
from lab.lesson.kinds.kind import Fit, Found, Kind
from lab.lesson.kinds.numbers import clear_of, fits_of, is_sizeable, number, shown_miss, type_a_number
from lab.lesson.kinds.place import balance_quotient
from lab.lesson.kinds.places import body_m
from lab.lesson.messages import Amount, Message, length, mass, message, msg
from lab.lesson.task import Task
from lab.lesson.ways.doubt import DOUBT_WAYS, Doubts
from lab.mechanics import MechanicsError, Part, balance_point_doubt_m, moment_sum

NOTHING_SHARE = 1e-6
"""Of all the doubt: a measurement that does less to the balance point does nothing that could be seen."""

TEN_TIMES = 10.0
"""How much better the worst measurement is made in a contrast: enough that it no longer counts."""


class DoubtKind(Kind):
    """One standard uncertainty of the balance point along, from those of weights and places."""

    name = "doubt"
    quantity: ClassVar = "length"
    ways: ClassVar = tuple(way.name for way in DOUBT_WAYS[1:])

    def scene_faults(self, build: Build) -> Iterator[Found]:
        if not any(part.mass_doubt_kg or part.at_doubt_m[0] for part in build.all_parts):
            yield ("scene",), "no doubt is stated", "add `weight_doubt` or `at_doubt` to its parts"

    def truth(self, task: Task) -> Answer:
        doubt_m = balance_point_doubt_m(task.parts)
        if doubt_m is None or doubt_m[0] == 0.0:
            raise MechanicsError("the measurements leave no doubt along; state other doubts")
        return doubt_m[0]

    def amounts(self, task: Task) -> Mapping[str, Amount]:
        weights = {f"{part.name}.weight_doubt": mass(part.mass_doubt_kg) for part in task.parts if part.mass_doubt_kg}
        places = {f"{part.name}.at_doubt": length(part.at_doubt_m[0]) for part in task.parts if part.at_doubt_m[0]}
        return weights | places

    def predictions(self, task: Task) -> tuple[Fit, ...]:
        return fits_of(DOUBT_WAYS[1:], doubts_of(task), self.form(task), to_si=task.units.to_m, values={})

    def clear(self, task: Task, truth: Answer) -> float:
        return clear_of(task, truth)

    def size(self, task: Task, truth: Answer) -> tuple[float, str]:
        return number(truth), "a doubt"

    def is_sound(self, task: Task, truth: Answer, *, written: Answer) -> bool:
        return is_sizeable(task, truth)

    def form(self, task: Task) -> Number:
        whole_m = body_m(task)
        return Number(
            quantity="length",
            tolerance=task.within,
            decimals=task.decimals("length"),
            low=0.0,
            high=whole_m / 10,
            least=0.0,
            most=1000 * whole_m,
            example=whole_m,
            again=msg("I could not read that as a length. Type a number, for example {example}."),
            too_far=msg("That is longer than the workshop. Type a length, for example {example}."),
        )

    def prompt(self, task: Task) -> Message:
        return message(msg("How far off may the balance point be, plus or minus?"))

    def what_to_type(self, asked: Asked) -> Message:
        return type_a_number(asked, unit=asked.units.length_word)

    def given(self, asked: Asked) -> tuple[Message, ...]:
        return tuple(
            message(
                msg("{part}   weight ± {weight}, place ± {place}"),
                part=part.name,
                weight=mass(part.mass_doubt_kg),
                place=length(part.at_doubt_m[0]),
            )
            for part in asked.build.all_parts
            if part.mass_doubt_kg or part.at_doubt_m[0]
        )

    def explain(self, asked: Asked, value: Answer, fit: Fit | None, ways: tuple[str, ...]) -> Explanation:
        said_m, truth_m = number(value), number(asked.truth)
        right = same(said_m, truth_m, within=asked.tolerance or 0.0)
        summed = moment_sum(asked.build.all_parts, asked.build.reference_m)
        doubt, why = length(truth_m, decimals=asked.decimals), _why(asked)
        happened = message(
            msg("It balances at {place} ± {doubt}."),
            place=length(summed.balance_point_m[0], decimals=asked.decimals, unit=False),
            doubt=doubt,
        )
        off = msg("Too much by {miss}") if said_m > truth_m else msg("Too little by {miss}")
        return Explanation(
            right=right,
            goes="level",
            headline=message(
                msg("Plus or minus {doubt}, as you said") if right else off,
                doubt=doubt,
                miss=shown_miss(asked, said_m, truth_m, "length"),
            ),
            going=happened,
            happened=happened,
            said=message(msg("You said {doubt}."), doubt=length(said_m, decimals=asked.decimals)),
            sum=summed,
            quotient=balance_quotient(asked, summed),
            deciding=_worst(asked.build).name,
            idea=why if right else self.idea(asked, fit),
            why=why,
            ways=ways,
            contrast=_contrast(asked),
            working=_working(asked),
        )


def contributions_m(parts: tuple[Part, ...], *, of_weights: bool) -> dict[str, float]:
    """What each doubtful weight, or each doubtful place, does to the balance point, m, by part.

    Parts of one set go wrong together, so that they are one row under the set's name.
    """
    summed = moment_sum(parts)
    balance_m, whole_kg = summed.balance_point_m[0], summed.mass_kg
    rows: dict[str, float] = defaultdict(float)
    for part in parts:
        sign = -1.0 if part.cut else 1.0
        by_weight = sign * (part.at_m[0] - balance_m) / whole_kg * part.mass_doubt_kg
        by_place = part.signed_mass_kg / whole_kg * part.at_doubt_m[0]
        rows[part.set_name or part.name] += by_weight if of_weights else by_place
    return {name: row for name, row in rows.items() if row}


def doubts_of(task: Task) -> Doubts:
    """The doubts in numerals."""
    from_m, parts = task.units.from_m, task.parts
    return Doubts(
        weights=tuple(from_m(each) for each in contributions_m(parts, of_weights=True).values()),
        places=tuple(from_m(each) for each in contributions_m(parts, of_weights=False).values()),
        rulers=tuple(from_m(part.at_doubt_m[0]) for part in parts if part.at_doubt_m[0]),
    )


def _working(asked: Asked) -> tuple[Message, ...]:
    parts, fine = asked.build.all_parts, asked.decimals + 1
    lines = []
    for of_weights in (True, False):
        template = _BY_WEIGHT if of_weights else _BY_PLACE
        for name, row_m in contributions_m(parts, of_weights=of_weights).items():
            lines.append(message(template, part=name, shift=length(abs(row_m), decimals=fine)))
    if len(lines) == 1:
        return tuple(lines)
    doubt = length(number(asked.truth), decimals=asked.decimals)
    return (*lines, message(msg("each squared, added, and the root taken: ± {doubt}"), doubt=doubt))


_BY_WEIGHT = msg("{part}: its weight moves the balance point by {shift}")
_BY_PLACE = msg("{part}: its place moves the balance point by {shift}")


def _why(asked: Asked) -> Message:
    parts, truth_m = asked.build.all_parts, number(asked.truth)
    rows = [*contributions_m(parts, of_weights=True).items(), *contributions_m(parts, of_weights=False).items()]
    counting = [name for name, row_m in rows if abs(row_m) > NOTHING_SHARE * truth_m]
    if len(counting) > 1:
        return message(
            msg("Most of the doubt comes from the {part}. Doubts are squared, added, and the root is taken."),
            part=_worst(asked.build).name,
        )
    only = next((part for part in parts if part.name == counting[0]), None)
    if only is None:
        together = msg("One {tool} for all parts: they are off together, so their doubts add up.")
        return message(together, tool=counting[0])
    if not only.at_doubt_m[0]:
        return message(msg("All the doubt comes from the {part}'s weight, by how far out it sits."), part=only.name)
    return message(
        msg("Only the {part}'s place counts: its share of the weight, {weight} / {whole}, times {off} is {doubt}."),
        part=only.name,
        weight=mass(only.mass_kg, unit=False),
        whole=mass(sum(part.signed_mass_kg for part in parts), unit=False),
        off=length(only.at_doubt_m[0]),
        doubt=length(truth_m, decimals=asked.decimals),
    )


def _worst(build: Build) -> Part:
    """The part whose own doubts move the balance point most."""

    def moves_m(part: Part) -> float:
        alone = tuple(
            each if each is part else replace(each, mass_doubt_kg=0.0, at_doubt_m=(0.0, 0.0, 0.0))
            for each in build.all_parts
        )
        return (balance_point_doubt_m(alone) or (0.0, 0.0, 0.0))[0]

    return max(build.all_parts, key=moves_m)


def _contrast(asked: Asked) -> Contrast:
    build, worst = asked.build, _worst(asked.build)
    label = message(msg("What if the {part} were measured ten times as well?"), part=worst.name)
    if worst.set_name is not None:
        label = message(msg("What if the {tool} were ten times as good?"), tool=worst.set_name)

    def better(part: Part) -> Part:
        if part.name != worst.name and (part.set_name is None or part.set_name != worst.set_name):
            return part
        along, across, up = (each / TEN_TIMES for each in part.at_doubt_m)
        return replace(part, mass_doubt_kg=part.mass_doubt_kg / TEN_TIMES, at_doubt_m=(along, across, up))

    changed = replace(build, parts=tuple(better(part) for part in build.parts))
    doubt_m = (balance_point_doubt_m(changed.all_parts) or (0.0, 0.0, 0.0))[0]
    return Contrast(
        label=label,
        build=changed,
        balance_point_m=moment_sum(changed.all_parts).balance_point_m[0],
        goes="level",
        happened=message(
            msg("Then it would be plus or minus {doubt}."), doubt=length(doubt_m, decimals=asked.decimals)
        ),
    )


KIND = DoubtKind()
