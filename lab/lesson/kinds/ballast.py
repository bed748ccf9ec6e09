"""Where does ballast go so that least of it does, and how much is that?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any, ClassVar, Literal

from lab.files import UNITS, Build
from lab.lesson.asked import Asked
from lab.lesson.contrast import Contrast
from lab.lesson.explanation import Explanation
from lab.lesson.forms import Answer, Choice, Number, Quantity, same
from lab.lesson.kinds.choices import Told, choice_fits, choice_of, chosen_explanation, named_options
from lab.lesson.kinds.kind import DetailRefusedError, Fit, Found, Kind
from lab.lesson.kinds.numbers import clear_of, fits_of, is_sizeable, number, shown_miss, type_a_number, weight_form
from lab.lesson.kinds.place import balance_quotient
from lab.lesson.messages import Amount, Message, length, mass, message, msg
from lab.lesson.task import Task
from lab.lesson.ways.ballast import BALLAST_PLACE_WAYS, BALLAST_WEIGHT_WAYS, OutOfLimits, Spot
from lab.mechanics import (
    BallastLoad,
    BallastPlace,
    CannotBeDone,
    MechanicsError,
    Part,
    ballast_kg,
    lightest_ballast,
    moment_sum,
)

Find = Literal["place", "weight"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Ballast:
    """low_m, high_m: where it must balance, along.  places: where ballast may go.  find: what is asked for."""

    low_m: float
    high_m: float
    places: tuple[BallastPlace, ...]
    find: Find


class BallastKind(Kind):
    """The lightest ballast that brings the balance point inside its limits: its place, or its weight."""

    name = "ballast"
    needs: ClassVar = ("target", "places", "find")
    ways: ClassVar = tuple(way.name for way in (*BALLAST_PLACE_WAYS, *BALLAST_WEIGHT_WAYS[1:]))
    is_along: ClassVar = False

    def quantity_of(self, keys: Mapping[str, Any]) -> Quantity | None:
        return "weight" if keys.get("find") == "weight" else None

    def detail(self, keys: Mapping[str, Any], build: Build) -> Ballast:
        found = list(_key_faults(keys))
        if found:
            raise DetailRefusedError(*found)
        units = UNITS[build.units]
        low, high = keys["target"]

        def place(table: Mapping[str, Any]) -> BallastPlace:
            start = (units.to_m(table["at" if "at" in table else "from"]), 0.0, 0.0)
            end = (units.to_m(table["to"]), 0.0, 0.0) if "to" in table else None
            most = units.to_kg(table["most"]) if "most" in table else None
            return BallastPlace(table["name"], start, end, most_kg=most)

        places = tuple(place(table) for table in keys["places"])
        return Ballast(low_m=units.to_m(low), high_m=units.to_m(high), places=places, find=keys["find"])

    def amounts(self, task: Task) -> Mapping[str, Amount]:
        ballast: Ballast | None = task.detail
        if ballast is None:
            return {}
        places = {f"{place.name}.at": length(place.at_m[0]) for place in ballast.places}
        now = {"balance.at": length(task.balance_m, decimals=1)}
        return {**places, **now, "target.low": length(ballast.low_m), "target.high": length(ballast.high_m)}

    def truth(self, task: Task) -> Answer:
        load = lightest(task)
        return load.mass_kg if task.detail.find == "weight" else load.place

    def predictions(self, task: Task) -> tuple[Fit, ...]:
        form = self.form(task)
        if isinstance(form, Choice):
            return choice_fits(BALLAST_PLACE_WAYS, _in_numerals(task, None), form)
        seen = _in_numerals(task, lightest(task))
        return fits_of(BALLAST_WEIGHT_WAYS[1:], seen, form, to_si=task.units.to_kg, values={})

    def clear(self, task: Task, truth: Answer) -> float:
        return 0.0 if isinstance(truth, str) else clear_of(task, truth)

    def size(self, task: Task, truth: Answer) -> tuple[float, str] | None:
        return None if isinstance(truth, str) else (number(truth), "a weight")

    def is_sound(self, task: Task, truth: Answer, *, written: Answer) -> bool:
        return isinstance(truth, str) or is_sizeable(task, truth)

    def form(self, task: Task) -> Choice | Number:
        ballast: Ballast = task.detail
        if ballast.find == "place":
            return choice_of(named_options(place.name for place in ballast.places))
        return weight_form(task)

    def prompt(self, task: Task) -> Message:
        if task.detail.find == "place":
            return message(msg("Where does ballast go, so that the least of it will do?"))
        return message(msg("What is the least ballast that will do?"))

    def what_to_type(self, asked: Asked) -> Message:
        if isinstance(asked.form, Choice):
            return message(msg("Type a place by its name."))
        return type_a_number(asked, unit=asked.units.weight_word)

    def given(self, asked: Asked) -> tuple[Message, ...]:
        ballast: Ballast = asked.detail
        limits = message(
            msg("it must balance between {low} and {high}"), low=length(ballast.low_m), high=length(ballast.high_m)
        )
        places = [
            message(msg("{place}   may hold ballast, at {at}"), place=place.name, at=length(_best_m(asked.task, place)))
            for place in ballast.places
        ]
        return (limits, *places)

    def scene_with(self, asked: Asked, value: Answer) -> Build:
        load = lightest(asked.task)
        if isinstance(value, float):
            return _with_ballast(asked.build, load.at_m[0], value)
        place = next(place for place in asked.detail.places if place.name == value)
        return _with_ballast(asked.build, _best_m(asked.task, place), load.mass_kg)

    def explain(self, asked: Asked, value: Answer, fit: Fit | None, ways: tuple[str, ...]) -> Explanation:
        told, idea = _told(asked), self.idea(asked, fit)
        if isinstance(value, str):
            return chosen_explanation(asked, value, told, idea=idea, ways=ways)
        said_kg, truth_kg = number(value), number(asked.truth)
        right = same(said_kg, truth_kg, within=asked.tolerance or 0.0)
        off = msg("Too much by {miss}") if said_kg > truth_kg else msg("Too little by {miss}")
        miss = shown_miss(asked, said_kg, truth_kg, "weight")
        explained = chosen_explanation(asked, value, told, idea=idea, ways=ways)
        return replace(
            explained,
            right=right,
            idea=told.why if right else idea,
            headline=message(msg("That much will do") if right else off, miss=miss),
        )


def _key_faults(keys: Mapping[str, Any]) -> Iterator[Found]:
    if keys["find"] not in ("place", "weight"):
        yield ("find",), f'"{keys["find"]}" is nothing to find here', 'write "place" or "weight"'
    low, high = keys["target"]
    if not low <= high:
        yield ("target",), f"{low:g} is above {high:g}", "write the lower limit first"
    seen: set[str] = set()
    for index, table in enumerate(keys["places"]):
        if table["name"] in seen:
            yield ("places", index, "name"), f'the name "{table["name"]}" is used twice', "give each its own name"
        seen.add(table["name"])
        if ("at" in table) == ("from" in table) or ("from" in table) != ("to" in table):
            yield ("places", index), "neither one place nor a strip", "write `at`, or `from` and `to`"


def lightest(task: Task) -> BallastLoad:
    """The one load that is lightest.  Raises MechanicsError where there is none, or more than one."""
    ballast: Ballast = task.detail
    found = lightest_ballast(task.parts, ballast.places, target_m={"along": (ballast.low_m, ballast.high_m)})
    if isinstance(found, CannotBeDone):
        raise MechanicsError(f"{found.why}; change `places` or `target`")
    if not found.loads:
        raise MechanicsError("it balances within the limits as it is; change `target`")
    if len(found.loads) > 1:
        raise MechanicsError("the lightest ballast needs two places; let one of them hold more")
    if found.tied:
        raise MechanicsError("two places would do with as little; move one of them")
    return found.loads[0]


def _best_m(task: Task, place: BallastPlace) -> float:
    """The end of a strip that is farthest from where it balances now on the light side, m; else the place."""
    now_m = task.balance_m
    ends = [end[0] for end in place.ends_m]
    return min(ends) if now_m > task.detail.high_m else max(ends)


def _in_numerals(task: Task, load: BallastLoad | None) -> OutOfLimits:
    units, ballast, summed = task.units, task.detail, moment_sum(task.parts)
    return OutOfLimits(
        weight=units.from_kg(summed.mass_kg),
        balance=units.from_m(summed.balance_point_m[0]),
        low=units.from_m(ballast.low_m),
        high=units.from_m(ballast.high_m),
        reference=units.from_m(task.build.reference_m[0]),
        spots=tuple(Spot(name=each.name, at=units.from_m(_best_m(task, each))) for each in ballast.places),
        chosen=None if load is None else Spot(name=load.place, at=units.from_m(load.at_m[0])),
    )


def _with_ballast(build: Build, at_m: float, mass_kg: float) -> Build:
    name = "ballast" if all(part.name != "ballast" for part in build.all_parts) else "more ballast"
    if mass_kg <= 0:
        return build
    return replace(build, parts=(*build.parts, Part(name=name, mass_kg=mass_kg, at_m=(at_m, 0.0, 0.0))))


def _told(asked: Asked) -> Told:
    load, ballast = lightest(asked.task), asked.detail
    before = moment_sum(asked.build.all_parts)
    after = _with_ballast(asked.build, load.at_m[0], load.mass_kg)
    summed = moment_sum(after.all_parts, after.reference_m)
    edge_m = ballast.low_m if before.balance_point_m[0] < ballast.low_m else ballast.high_m
    fine = max(1, asked.decimals)
    words: dict[str, Amount | str] = {
        "weight": mass(load.mass_kg, decimals=fine),
        "place": load.place,
        "whole": mass(before.mass_kg),
        "miss": length(abs(before.balance_point_m[0] - edge_m), decimals=2),
        "arm": length(abs(edge_m - load.at_m[0])),
        "limit": length(edge_m),
        "now": length(before.balance_point_m[0], decimals=2),
    }
    return Told(
        happened=message(msg("{weight} in the {place} brings it from {now} to {limit}."), **words),
        why=message(_WHY, **words),
        sum=summed,
        quotient=balance_quotient(asked, summed),
        deciding=summed.rows[-1].name if asked.build.tanks == () else summed.rows[0].name,
        working=(
            message(msg("it must come {miss}, from {now} to {limit}"), **words),
            message(msg("the {place} is {arm} from {limit}"), **words),
            message(msg("{whole} × {miss} / {arm} = {weight}"), **words),
        ),
        contrast=_contrast(asked, load, edge_m=edge_m, now_m=before.balance_point_m[0], whole_kg=before.mass_kg),
    )


_WHY = msg("The {place} has the longest arm on the light side: {whole} × {miss} / {arm} = {weight}.")


def _contrast(asked: Asked, load: BallastLoad, *, edge_m: float, now_m: float, whole_kg: float) -> Contrast:
    """The same ballast half as far out, where it takes twice as much."""
    at_m = (load.at_m[0] + edge_m) / 2
    needed = ballast_kg(whole_kg=whole_kg, now_m=now_m, target_m=edge_m, at_m=at_m)
    if isinstance(needed, CannotBeDone):
        raise MechanicsError(needed.why)
    changed = _with_ballast(asked.build, at_m, needed)
    return Contrast(
        label=message(msg("What if the {place} were half as far from the limit?"), place=load.place),
        build=changed,
        balance_point_m=moment_sum(changed.all_parts).balance_point_m[0],
        goes="level",
        happened=message(msg("Then it would take {weight}."), weight=mass(needed, decimals=max(1, asked.decimals))),
        outcome=needed,
    )


KIND = BallastKind()
