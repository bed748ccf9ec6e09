"""What is told of tanks: where the balance point goes, leg by leg or choice by choice."""

from __future__ import annotations

from dataclasses import replace

from lab import mechanics
from lab.files import Build
from lab.lesson.asked import Asked
from lab.lesson.contrast import Contrast
from lab.lesson.kinds.choices import Told
from lab.lesson.kinds.kind import Kind
from lab.lesson.kinds.tank_flights import Tanks, after_pump, path_of, span_m, whole_plan
from lab.lesson.messages import Message, length, mass, message, msg
from lab.mechanics import MechanicsError


def told_of(kind: Kind, asked: Asked) -> Told:
    """What is so of a question about tanks."""
    build = asked.build
    summed = mechanics.moment_sum(build.all_parts, build.reference_m)
    balance = length(summed.balance_point_m[0], decimals=1)
    heaviest = max(build.tanks, key=lambda tank: tank.mass_kg * abs(tank.at_m[0] - summed.balance_point_m[0]))
    rows = [row.name for row in summed.rows]
    find = asked.detail.find
    truth = asked.form.shown(asked.truth)
    return Told(
        happened=message(_HAPPENED[find], truth=truth),
        why=message(_WHY[find], truth=truth, tank=heaviest.name, place=length(heaviest.at_m[0]), balance=balance),
        sum=summed,
        quotient=message(msg("full, {weight}: it balances at {balance}"), weight=mass(summed.mass_kg), balance=balance),
        deciding=heaviest.name if heaviest.name in rows else rows[0],
        working=_WORKINGS[find](asked),
        contrast=_contrast(kind, asked),
    )


_HAPPENED = {
    "first": msg("With the {truth} burned first it stays within its limits."),
    "pump": msg("Pumped from {truth}, it comes within its limits."),
    "instant": msg("It reaches a limit after {truth}."),
}
_WHY = {
    "first": msg("Burning a tank moves the balance point away from it. What is burned last is left alone at the end."),
    "pump": msg("The balance point goes to where the weight is pumped. It was at {balance} before."),
    "instant": msg("The {tank} is at {place}, the balance point at {balance}. As it empties, that goes away from it."),
}


def _first(asked: Asked) -> tuple[Message, ...]:
    lines = []
    for tank in asked.build.tanks:
        low_m, high_m = span_m(path_of(asked.task, whole_plan(asked.task, first=tank.name)))
        lines.append(
            message(
                msg("{tank} first: it goes between {low} and {high}"),
                tank=tank.name,
                low=length(low_m, decimals=1),
                high=length(high_m, decimals=1),
            )
        )
    return (*lines, _limits(asked.detail))


def _pump(asked: Asked) -> tuple[Message, ...]:
    lines = [
        message(
            msg("{source} to {target}: then it balances at {place}"),
            source=pump.source,
            target=pump.target,
            place=length(after_pump(asked.task, pump)[0], decimals=1),
        )
        for pump in asked.detail.pumps
    ]
    return (*lines, _limits(asked.detail))


def _instant(asked: Asked) -> tuple[Message, ...]:
    path = path_of(asked.task, asked.detail.plan)
    truth = asked.truth if isinstance(asked.truth, float) else 0.0
    lines = []
    for at_s in (0.0, truth):
        point = path.point_at(at_s)
        lines.append(
            message(
                msg("after {time}: {weight}, balance point at {place}"),
                time=asked.form.shown(at_s),
                weight=mass(point.mass_kg, decimals=0),
                place=length(point.balance_point_m[0], decimals=1),
            )
        )
    return (*lines, _limits(asked.detail))


_WORKINGS = {"first": _first, "pump": _pump, "instant": _instant}


def _limits(tanks: Tanks) -> Message:
    return message(msg("limits: {low} to {high}"), low=length(tanks.low_m), high=length(tanks.high_m))


def _contrast(kind: Kind, asked: Asked) -> Contrast | None:
    """The same with less in one tank: what then would be right."""
    build = asked.build
    for emptied in build.tanks:
        tanks = tuple(
            replace(tank, contents_m3=tank.contents_m3 / 2) if tank is emptied else tank for tank in build.tanks
        )
        changed = replace(build, tanks=tanks)
        told = _then(kind, asked, changed)
        if told is not None:
            return Contrast(
                label=message(msg("What if the {tank} were half as full?"), tank=emptied.name),
                build=changed,
                balance_point_m=mechanics.moment_sum(changed.all_parts).balance_point_m[0],
                goes="level",
                happened=told,
            )
    return None


def _then(kind: Kind, asked: Asked, changed: Build) -> Message | None:
    try:
        answer = kind.truth(replace(asked.task, build=changed))
    except MechanicsError:
        if asked.detail.find == "instant":
            return message(msg("Then it would never reach a limit, or begin beyond one."))
        return message(msg("Then not just one of them would do."))
    return message(msg("Then the answer would be: {answer}."), answer=asked.form.shown(answer))
