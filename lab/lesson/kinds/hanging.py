"""Something that is to be hung on a bar so that it stays level: what weight and arm questions have in common."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any, Literal

from lab.files import UNITS, Build
from lab.lesson.contrast import HEAVY, TWICE_AS_HEAVY, WOULD_GO, Contrast, weighed
from lab.lesson.kinds.kind import DetailRefusedError, Found
from lab.lesson.messages import Amount, Message, length, mass, message, msg
from lab.lesson.resting import pivot_of
from lab.lesson.situation import SAME, situation_of
from lab.lesson.task import Task
from lab.lesson.ways.lever import Lever, lever_of
from lab.mechanics import MechanicsError, Part, Turn, moment_sum, turn_about


@dataclass(frozen=True, slots=True, kw_only=True)
class Hung:
    """What is to be hung.  at_m, mass_kg: where and how much; the one that is asked for is None."""

    name: str
    at_m: float | None = None
    mass_kg: float | None = None


def hung_of(keys: Mapping[str, Any], build: Build, *, given: Literal["at", "weight"]) -> Hung:
    """Return what a question says is to be hung.

    given: the key that it must have; the other one is asked for.  Raises DetailRefusedError.
    """
    table, asked_for = keys["hang"], {"at": "weight", "weight": "at"}[given]
    found: list[Found] = []
    if given not in table:
        found.append((("hang", given), "missing", f"say in `hang` {'where' if given == 'at' else 'how much'}"))
    if asked_for in table:
        found.append((("hang", asked_for), f"`{asked_for}` is what is asked for", "leave it out"))
    if table["name"] in [part.name for part in build.all_parts]:
        found.append((("hang", "name"), f'"{table["name"]}" is there already', "give it a name of its own"))
    units = UNITS[build.units]
    hung = Hung(
        name=table["name"],
        at_m=units.to_m(table["at"]) if given == "at" and "at" in table else None,
        mass_kg=units.to_kg(table["weight"]) if given == "weight" and "weight" in table else None,
    )
    found += _off_the_body(hung, build)
    if found:
        raise DetailRefusedError(*found)
    return hung


def _off_the_body(hung: Hung, build: Build) -> Iterator[Found]:
    if hung.at_m is None:
        return
    seen, at = situation_of(build), UNITS[build.units].from_m(hung.at_m)
    slack = SAME * (seen.right - seen.left)
    if not seen.left - slack <= at <= seen.right + slack:
        what = f"{at:g} is off the body, which reaches from {seen.left:g} to {seen.right:g}"
        yield ("hang", "at"), what, "write a place on it"
    elif build.pivot is not None and abs(at - seen.pivot) <= slack:
        yield ("hang", "at"), "what hangs at the pivot turns nothing", "write a place to one side of it"


def scene_faults_of(build: Build) -> Iterator[Found]:
    """What a scene lacks in which something is to be hung."""
    if build.pivot is None:
        yield ("scene",), "nothing to turn about", "add `[question.scene.pivot]` with `at`"


def turn_of(build: Build) -> Turn:
    """How a scene turns about its pivot as it is.  Raises MechanicsError where it is level already."""
    turn = turn_about(build.all_parts, pivot_of(build))
    if abs(turn.moment_kg_m) <= SAME * turn.scale_kg_m:
        raise MechanicsError("it is level as it is; change a weight or a place so that something is missing")
    return turn


def lever(task: Task) -> Lever:
    """The scene in numerals, seen from where the thing is to be hung."""
    hung: Hung = task.detail
    seen, units = task.seen, task.units
    if hung.at_m is not None:
        at = units.from_m(hung.at_m)
        return lever_of(seen, right_of_pivot=at > seen.pivot, arm=abs(at - seen.pivot))
    weight = None if hung.mass_kg is None else units.from_kg(hung.mass_kg)
    # What is missing is missing on the lighter side.
    right = task.balance_m < pivot_of(task.build).at_m
    return lever_of(seen, right_of_pivot=right, weight=weight)


def with_hung(build: Build, hung: Hung) -> Build:
    """The scene with the thing hung on it, by a cord; as it was where it weighs nothing.

    hung: both where and how much.
    """
    if hung.mass_kg is None or hung.at_m is None or hung.mass_kg <= 0:
        return build
    part = Part(name=hung.name, mass_kg=hung.mass_kg, at_m=(hung.at_m, 0.0, 0.0), hold="hung")
    return replace(build, parts=(*build.parts, part))


def hung_amounts(hung: Hung) -> dict[str, Amount]:
    """What a text may name of it: {hang.at} or {hang.weight}."""
    named = {}
    if hung.at_m is not None:
        named["hang.at"] = length(hung.at_m)
    if hung.mass_kg is not None:
        named["hang.weight"] = mass(hung.mass_kg)
    return named


def heavier_bar(build: Build) -> tuple[Build, Message]:
    """The scene with its bar twice as heavy, and the question it asks."""
    beam = situation_of(build).beam
    name = beam.name if beam is not None else build.all_parts[0].name
    return weighed(build, name, times=HEAVY), message(TWICE_AS_HEAVY, part=name)


def contrast_of(*, label: Message, hung: Build, would_do: Message) -> Contrast:
    """What is seen of a changed scene, then what would do in it.

    hung: that scene with the thing hung as the learner had it.
    """
    goes = turn_about(hung.all_parts, pivot_of(hung)).goes
    seen = message(WOULD_GO[goes])
    return Contrast(
        label=label,
        build=hung,
        balance_point_m=moment_sum(hung.all_parts).balance_point_m[0],
        goes=goes,
        happened=seen if goes == "level" else message(msg("{seen} {would_do}"), seen=seen, would_do=would_do),
    )
