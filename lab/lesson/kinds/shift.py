"""How far does the balance point go when one thing is changed?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any, ClassVar, Literal

from lab.files import UNITS, Build
from lab.lesson.asked import Asked
from lab.lesson.contrast import HEAVY, TWICE_AS_HEAVY, Contrast, weighed
from lab.lesson.explanation import Explanation
from lab.lesson.forms import Answer, Number, same
from lab.lesson.kinds.kind import DetailRefusedError, Fit, Found, Kind
from lab.lesson.kinds.numbers import CLEAR_SHARE, WIDEST_SHARE, fits_of, number, shown_miss
from lab.lesson.kinds.place import balance_quotient
from lab.lesson.kinds.places import body_m
from lab.lesson.messages import Amount, Message, length, mass, message, msg
from lab.lesson.task import Task
from lab.lesson.ways.shift import SHIFT_WAYS, Change
from lab.mechanics import MomentSum, Part, moment_sum

What = Literal["move", "add", "take", "reference"]
_WHATS: tuple[What, ...] = ("move", "add", "take", "reference")


@dataclass(frozen=True, slots=True, kw_only=True)
class Shift:
    """What is changed.

    part: the part that is moved, added or taken off; "" for the reference line.
    mass_kg: its mass.  at_m: where it comes to be, or where the line comes to be; None where it is taken off.
    by_m: how far it is moved, to the right positive; 0 where nothing moves.
    """

    what: What
    part: str = ""
    mass_kg: float = 0.0
    at_m: float | None = None
    by_m: float = 0.0


class ShiftKind(Kind):
    """How far the balance point goes, to the right positive, when a part is changed or the reference line moved."""

    name = "shift"
    quantity: ClassVar = "length"
    needs: ClassVar = ("change",)
    ways: ClassVar = tuple(way.name for way in SHIFT_WAYS[1:])

    def detail(self, keys: Mapping[str, Any], build: Build) -> Shift:
        table = keys["change"]
        found = list(_change_faults(table, build))
        if found:
            raise DetailRefusedError(*found)
        return _shift(table, build)

    def amounts(self, task: Task) -> Mapping[str, Amount]:
        shift: Shift | None = task.detail
        if shift is None:
            return {}
        named = {"change.weight": mass(shift.mass_kg), "change.by": length(abs(shift.by_m))}
        named["balance.at"] = length(task.balance_m, decimals=1)
        return named if shift.at_m is None else {**named, "change.at": length(shift.at_m)}

    def truth(self, task: Task) -> Answer:
        before, after = (moment_sum(build.all_parts).balance_point_m[0] for build in (task.build, changed(task)))
        return after - before

    def predictions(self, task: Task) -> tuple[Fit, ...]:
        values = {"part": task.detail.part}
        return fits_of(SHIFT_WAYS[1:], _in_numerals(task), self.form(task), to_si=task.units.to_m, values={**values})

    def clear(self, task: Task, truth: Answer) -> float:
        return max(CLEAR_SHARE * abs(number(truth)), 2 * task.within)

    def size(self, task: Task, truth: Answer) -> tuple[float, str]:
        shift: Shift = task.detail
        return (abs(shift.by_m), "a move") if shift.what == "reference" else (abs(number(truth)), "a shift")

    def is_sound(self, task: Task, truth: Answer, *, written: Answer) -> bool:
        return task.detail.what == "reference" or task.within <= WIDEST_SHARE * abs(number(truth))

    def form(self, task: Task) -> Number:
        # The line may be moved from far off, and some think that the balance point goes as far.
        whole_m = max(body_m(task), abs(task.detail.by_m))
        return Number(
            quantity="length",
            sided=True,
            tolerance=task.within,
            decimals=task.decimals("length"),
            low=-whole_m,
            high=whole_m,
            least=-1000 * whole_m,
            most=1000 * whole_m,
            # A whole length: no change of one part does that.
            example=whole_m,
            again=msg("I could not read that. Type how far and which way, for example {example} right."),
            too_far=msg(
                "That is farther than the workshop is long. Type how far and which way, as in {example} right."
            ),
        )

    def prompt(self, task: Task) -> Message:
        return message(_PROMPTS[task.detail.what], part=task.detail.part)

    def what_to_type(self, asked: Asked) -> Message:
        return message(
            msg("Type how far in {unit}, and left or right. Within {within} counts."),
            unit=asked.units.length_word,
            within=length(asked.tolerance or 0.0),
        )

    def given(self, asked: Asked) -> tuple[Message, ...]:
        shift: Shift = asked.detail
        return (
            message(
                _CHANGES[shift.what],
                part=shift.part,
                weight=mass(shift.mass_kg),
                place=length(shift.at_m or 0.0),
                by=length(abs(shift.by_m)),
            ),
        )

    def scene_with(self, asked: Asked, value: Answer) -> Build:
        return changed(asked.task)

    def explain(self, asked: Asked, value: Answer, fit: Fit | None, ways: tuple[str, ...]) -> Explanation:
        after = changed(asked.task)
        summed = moment_sum(after.all_parts, after.reference_m)
        said_m, truth_m = number(value), number(asked.truth)
        right = same(said_m, truth_m, within=asked.tolerance or 0.0)
        why = _why(asked)
        went = _went(asked)
        off = msg("Too far right by {miss}") if said_m > truth_m else msg("Too far left by {miss}")
        return Explanation(
            right=right,
            goes="level",
            headline=message(
                msg("It goes as you said") if right else off, miss=shown_miss(asked, said_m, truth_m, "length")
            ),
            going=went,
            happened=went,
            said=message(msg("You said {shift}."), shift=asked.form.shown(said_m)),
            sum=summed,
            quotient=balance_quotient(asked, summed),
            deciding=_deciding(asked, summed),
            idea=why if right else self.idea(asked, fit),
            why=why,
            ways=ways,
            contrast=_contrast(asked),
        )


def _change_faults(table: Mapping[str, Any], build: Build) -> Iterator[Found]:
    whats = [what for what in _WHATS if what in table]
    if len(whats) != 1:
        yield ("change",), "not exactly one change", "write one of move and by, add, take, or reference"
        return
    names = [part.name for part in build.all_parts]
    what = whats[0]
    if (what == "move") != ("by" in table):
        yield ("change", "by"), "`by` says how far `move` moves a part", "write both, or neither"
    named = table["add"]["name"] if what == "add" else table[what]
    if what == "add" and named in names:
        yield ("change", "add", "name"), f'"{named}" is there already', "give it a name of its own"
    if what in ("move", "take") and named not in [part.name for part in build.parts]:
        yield ("change", what), f'"{named}" is no part that could be changed', f"name one of {', '.join(names)}"
    if what == "take" and len(names) < 2:
        yield ("change", "take"), "nothing would be left", "take one part of several"


def _shift(table: Mapping[str, Any], build: Build) -> Shift:
    units = UNITS[build.units]
    parts = {part.name: part for part in build.parts}
    if "move" in table:
        part, by_m = parts[table["move"]], units.to_m(table["by"])
        return Shift(what="move", part=part.name, mass_kg=part.signed_mass_kg, at_m=part.at_m[0] + by_m, by_m=by_m)
    if "add" in table:
        new = table["add"]
        return Shift(what="add", part=new["name"], mass_kg=units.to_kg(new["weight"]), at_m=units.to_m(new["at"]))
    if "take" in table:
        part = parts[table["take"]]
        return Shift(what="take", part=part.name, mass_kg=part.signed_mass_kg)
    at_m = units.to_m(table["reference"])
    return Shift(what="reference", at_m=at_m, by_m=at_m - build.reference_m[0])


def changed(task: Task) -> Build:
    """The scene after the change."""
    build, shift = task.build, task.detail
    if shift.what == "reference":
        return replace(build, reference_m=(shift.at_m, *build.reference_m[1:]))
    if shift.what == "add":
        new = Part(name=shift.part, mass_kg=shift.mass_kg, at_m=(shift.at_m, 0.0, 0.0))
        return replace(build, parts=(*build.parts, new))
    if shift.what == "take":
        return replace(build, parts=tuple(part for part in build.parts if part.name != shift.part))
    return replace(
        build,
        parts=tuple(
            replace(part, at_m=(shift.at_m, *part.at_m[1:])) if part.name == shift.part else part
            for part in build.parts
        ),
    )


def _in_numerals(task: Task) -> Change:
    """The change as a learner reckons with it."""
    units, shift = task.units, task.detail
    whole = units.from_kg(moment_sum(task.parts).mass_kg)
    balance_m = task.balance_m
    weight = units.from_kg(shift.mass_kg)
    if shift.what == "reference":
        return Change(weight=0.0, by=units.from_m(shift.by_m), whole=whole, not_whole=whole)
    if shift.what == "move":
        return Change(weight=weight, by=units.from_m(shift.by_m), whole=whole, not_whole=whole - weight)
    if shift.what == "add":
        by = units.from_m(shift.at_m - balance_m)
        return Change(weight=weight, by=by, whole=whole + weight, not_whole=whole)
    at_m = next(part.at_m[0] for part in task.build.parts if part.name == shift.part)
    return Change(weight=weight, by=units.from_m(balance_m - at_m), whole=whole - weight, not_whole=whole)


_PROMPTS: dict[What, str] = {
    "move": msg("How far does the balance point go when the {part} is moved?"),
    "add": msg("How far does the balance point go when the {part} is added?"),
    "take": msg("How far does the balance point go when the {part} is taken off?"),
    "reference": msg("How far does the balance point go when only the line is moved?"),
}
_CHANGES: dict[What, str] = {
    "move": msg("{part}   moved by {by}, to {place}"),
    "add": msg("{part}   {weight}, added at {place}"),
    "take": msg("{part}   taken off"),
    "reference": msg("the line   moved by {by}, to {place}"),
}
_WHY = msg("{weight} × {by} / {whole} = {shift}. That is as far as the balance point goes.")
_LINE_WHY = msg("Arms and moments change with the line. The body does not: it balances at {place} as before.")


def _why(asked: Asked) -> Message:
    seen, units = _in_numerals(asked.task), asked.units
    if asked.detail.what == "reference":
        balance_m = moment_sum(asked.build.all_parts).balance_point_m[0]
        return message(_LINE_WHY, place=length(balance_m, decimals=asked.decimals))
    return message(
        _WHY,
        weight=mass(units.to_kg(seen.weight)),
        # How far a part was moved is given; how far off one was added is worked out, and shown as the answer is.
        by=length(units.to_m(abs(seen.by)), decimals=None if asked.detail.what == "move" else asked.decimals),
        whole=mass(units.to_kg(seen.whole)),
        shift=length(abs(number(asked.truth)), decimals=asked.decimals),
    )


def _went(asked: Asked) -> Message:
    before, after = (moment_sum(build.all_parts).balance_point_m[0] for build in (asked.build, changed(asked.task)))
    if same(before, after, within=0.0):
        return message(msg("The balance point stays at {place}."), place=length(before, decimals=asked.decimals))
    return message(
        msg("The balance point goes from {before} to {after}."),
        before=length(before, decimals=asked.decimals),
        after=length(after, decimals=asked.decimals),
    )


def _deciding(asked: Asked, summed: MomentSum) -> str:
    """The part that is changed, or the heaviest where it is no longer there or none is."""
    names = [row.name for row in summed.rows]
    if asked.detail.part in names:
        return str(asked.detail.part)
    return max(summed.rows, key=lambda row: abs(row.mass_kg)).name


def _contrast(asked: Asked) -> Contrast:
    task, shift = asked.task, asked.detail
    if shift.what == "reference":
        heaviest = max(task.parts, key=lambda part: part.mass_kg).name
        label, other = (
            message(TWICE_AS_HEAVY, part=heaviest),
            replace(task, build=weighed(task.build, heaviest, times=HEAVY)),
        )
    elif shift.what == "add":
        label, other = (
            message(TWICE_AS_HEAVY, part=shift.part),
            replace(task, detail=replace(shift, mass_kg=HEAVY * shift.mass_kg)),
        )
    else:
        label, other = (
            message(TWICE_AS_HEAVY, part=shift.part),
            replace(task, build=weighed(task.build, shift.part, times=HEAVY)),
        )
    before, after = (moment_sum(build.all_parts).balance_point_m[0] for build in (other.build, changed(other)))
    told = _AS_BEFORE if same(before, after, within=0.0) else _THEN_GOES
    return Contrast(
        label=label,
        build=changed(other),
        balance_point_m=after,
        goes="level",
        happened=message(
            told, shift=asked.form.shown(round(after - before, 12)), place=length(after, decimals=asked.decimals)
        ),
    )


_THEN_GOES = msg("Then it would go {shift}, to {place}.")
_AS_BEFORE = msg("Then it would balance at {place}, wherever the line is.")

KIND = ShiftKind()
