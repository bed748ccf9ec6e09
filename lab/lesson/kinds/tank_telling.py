"""What is told of tanks: where the balance point goes, leg by leg or choice by choice."""

from __future__ import annotations

from dataclasses import replace

from lab import mechanics
from lab.files import Build
from lab.lesson.asked import Asked
from lab.lesson.contrast import Contrast
from lab.lesson.forms import same
from lab.lesson.kinds.choices import Told
from lab.lesson.kinds.kind import Kind
from lab.lesson.kinds.tank_flights import Tanks, after_pump, path_of, span_m, whole_plan
from lab.lesson.messages import Message, length, mass, message, msg
from lab.mechanics import MechanicsError, Tank


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
        quotient=message(
            msg("at the start, {weight}: it balances at {balance}"), weight=mass(summed.mass_kg), balance=balance
        ),
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
    "instant": msg(
        "The {tank} is at {place}. As it empties, the balance point goes away from there. It was at {balance} before."
    ),
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
    """The same with half as much in one tank: the first that comes out another way, else the first."""
    contrasts = [_half_as_full(kind, asked, emptied) for emptied in asked.build.tanks]
    for contrast, is_other in contrasts:
        if is_other:
            return contrast
    return contrasts[0][0] if contrasts else None


def _half_as_full(kind: Kind, asked: Asked, emptied: Tank) -> tuple[Contrast, bool]:
    """The same with half as much in one tank, and whether that comes out another way."""
    build = asked.build
    halved = replace(emptied, contents_m3=emptied.contents_m3 / 2)
    changed = replace(build, tanks=tuple(halved if tank is emptied else tank for tank in build.tanks))
    told, is_other = _then(kind, asked, changed)
    contrast = Contrast(
        label=message(msg("What if the {tank} were half as full?"), tank=emptied.name),
        build=changed,
        balance_point_m=mechanics.moment_sum(changed.all_parts).balance_point_m[0],
        goes="level",
        happened=told,
    )
    return contrast, is_other


def _then(kind: Kind, asked: Asked, changed: Build) -> tuple[Message, bool]:
    """What would be right in a changed scene, as a sentence, and whether it is another answer."""
    try:
        answer = kind.truth(replace(asked.task, build=changed))
    except MechanicsError:
        if asked.detail.find == "instant":
            return message(msg("Then it would never reach a limit, or begin beyond one.")), True
        return message(msg("Then none of them would do, or more than one.")), True
    is_other = not same(answer, asked.truth, within=asked.tolerance or 0.0)
    template = msg("Then the answer would be: {answer}.") if is_other else msg("The answer would still be: {answer}.")
    return message(template, answer=asked.form.shown(answer)), is_other
