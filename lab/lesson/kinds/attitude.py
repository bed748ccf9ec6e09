"""How does it hang: nose up or down, a wing low, or level?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from math import degrees, radians
from typing import Any, ClassVar, Literal

from lab.files import UNITS, Build
from lab.lesson.asked import Asked
from lab.lesson.explanation import Explanation
from lab.lesson.forms import Answer, Choice, Option
from lab.lesson.kinds.choices import Told, choice_fits, choice_of, chosen_explanation, other_weight
from lab.lesson.kinds.kind import DetailRefusedError, Fit, Found, Kind
from lab.lesson.kinds.side import LEVEL_WORDS
from lab.lesson.kinds.sums import short_moment
from lab.lesson.messages import Amount, Message, length, mass, message, msg, number
from lab.lesson.task import Task
from lab.lesson.ways.attitude import ATTITUDE_WAYS, End, FromHook, HungLoad
from lab.lesson.ways.way import Way
from lab.mechanics import MechanicsError, MomentSum, Vector, hanging_attitude, moment_sum

LEVEL_RAD = radians(0.5)
"""Less than this looks level to anybody."""

CLEAR_RAD = radians(3.0)
"""Varied numbers must tilt it at least so far, or it is level by accident."""

Find = Literal["pitch", "roll", "ends"]
"""An airframe's nose or its wings; the ends of anything else."""

_OPTIONS: dict[Find, dict[End, Option]] = {
    "pitch": {
        "far": Option(key="nose up", text=msg("nose up"), spoken=frozenset(("tail down", "tail low", "high"))),
        "level": Option(key="level", text=msg("level"), spoken=LEVEL_WORDS),
        "near": Option(key="nose down", text=msg("nose down"), spoken=frozenset(("tail up", "tail high", "low"))),
    },
    "roll": {
        "near": Option(key="left wing low", text=msg("left wing low"), spoken=frozenset(("left down", "l"))),
        "level": Option(key="level", text=msg("level"), spoken=LEVEL_WORDS),
        "far": Option(key="right wing low", text=msg("right wing low"), spoken=frozenset(("right down",))),
    },
    "ends": {
        "near": Option(key="left end low", text=msg("left end low"), spoken=frozenset(("left down", "l"))),
        "level": Option(key="level", text=msg("level"), spoken=LEVEL_WORDS),
        "far": Option(key="right end low", text=msg("right end low"), spoken=frozenset(("right down",))),
    },
}
_FORMS: dict[Find, Choice] = {
    "pitch": choice_of(tuple(_OPTIONS["pitch"].values()), fillers=frozenset(("nose",))),
    "roll": choice_of(tuple(_OPTIONS["roll"].values()), fillers=frozenset(("wing", "low", "down"))),
    "ends": choice_of(tuple(_OPTIONS["ends"].values()), fillers=frozenset(("end", "low", "down", "drops"))),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Hook:
    """Where it hangs, m, and about which axis is asked."""

    at_m: Vector
    find: Find

    @property
    def axis(self) -> int:
        """0 along, for the pitch and for ends; 1 across, for the roll."""
        return 1 if self.find == "roll" else 0


class AttitudeKind(Kind):
    """How a body comes to rest that hangs by one point: along, or across."""

    name = "attitude"
    needs: ClassVar = ("hung_at", "find")
    ways: ClassVar = tuple(way.name for way in ATTITUDE_WAYS[1:])
    mute: ClassVar = frozenset(("swapped",))
    is_along: ClassVar = False

    def detail(self, keys: Mapping[str, Any], build: Build) -> Hook:
        find = keys["find"]
        if find not in _OPTIONS:
            cure = 'write "pitch", "roll" or "ends"'
            raise DetailRefusedError((("find",), f'"{find}" is nothing to find here', cure))
        to_m = UNITS[build.units].to_m
        given = keys["hung_at"]
        along, across, up = given if isinstance(given, list) else (given, 0.0, 0.0)
        return Hook(at_m=(to_m(along), to_m(across), to_m(up)), find=find)

    def amounts(self, task: Task) -> Mapping[str, Amount]:
        return {} if task.detail is None else {"hung.at": length(task.detail.at_m[0])}

    def task_faults(self, task: Task, truth: Answer) -> Iterator[Found]:
        up_m = moment_sum(task.parts).balance_point_m[2]
        if task.detail.at_m[2] <= up_m:
            at = task.units.from_m(up_m)
            yield ("hung_at",), f"the hook is not above the balance point, which is {at:.6g} up", "hang it higher up"

    def truth(self, task: Task) -> Answer:
        angle = _angle_rad(task)
        end: End = "level" if abs(angle) <= LEVEL_RAD else "far" if angle > 0 else "near"
        return _OPTIONS[task.detail.find][end].key

    def predictions(self, task: Task) -> tuple[Fit, ...]:
        hook: Hook = task.detail
        options = _OPTIONS[hook.find]

        def as_option(way: Way[FromHook, End]) -> Way[FromHook, str]:
            def choose(seen: FromHook) -> str | None:
                end = way.predict(seen)
                return None if end is None else options[end].key

            return Way(name=way.name, predict=choose, sentence=way.sentence)

        return choice_fits([as_option(way) for way in ATTITUDE_WAYS[1:]], _from_hook(task), self.form(task))

    def is_sound(self, task: Task, truth: Answer, *, written: Answer) -> bool:
        if written == "level":
            return truth == "level"
        return abs(_angle_rad(task)) >= CLEAR_RAD

    def form(self, task: Task) -> Choice:
        find: Find = task.detail.find
        return _FORMS[find]

    def prompt(self, task: Task) -> Message:
        return message(_PROMPTS[task.detail.find])

    def what_to_type(self, asked: Asked) -> Message:
        return message(_TYPE[asked.detail.find])

    def given(self, asked: Asked) -> tuple[Message, ...]:
        along, across, up = (length(each) for each in asked.detail.at_m)
        return (message(msg("cord   at {along} along, {across} across, {up} up"), along=along, across=across, up=up),)

    def explain(self, asked: Asked, value: Answer, fit: Fit | None, ways: tuple[str, ...]) -> Explanation:
        return chosen_explanation(asked, value, _told(self, asked), idea=self.idea(asked, fit), ways=ways)


_PROMPTS: dict[Find, str] = {
    "pitch": msg("It hangs by a cord. Is its nose up, down or level?"),
    "roll": msg("It hangs by a cord. Is a wing low, or does it hang level?"),
    "ends": msg("Which end hangs low, or does it hang level?"),
}
_TYPE: dict[Find, str] = {
    "pitch": msg("Type up, down or level."),
    "roll": msg("Type left, right or level: which wing is low."),
    "ends": msg("Type left, right or level: which end is low."),
}


def _angle_rad(task: Task) -> float:
    """How far it tilts about the axis that is asked for: the far end down positive."""
    hook: Hook = task.detail
    attitude = hanging_attitude(task.parts, hook.at_m)
    if attitude is None:
        raise MechanicsError("it hangs by its balance point and rests any way; put the hook above it")
    angle = attitude.roll_rad if hook.find == "roll" else attitude.pitch_rad
    if angle is None:
        raise MechanicsError("it hangs straight up and down; put the hook nearer over the balance point")
    return angle


def _from_hook(task: Task) -> FromHook:
    units, hook = task.units, task.detail
    return FromHook(
        loads=tuple(
            HungLoad(
                weight=units.from_kg(part.signed_mass_kg),
                offset=round(units.from_m(part.at_m[hook.axis] - hook.at_m[hook.axis]), 9),
            )
            for part in task.parts
        )
    )


def _told(kind: AttitudeKind, asked: Asked) -> Told:
    hook: Hook = asked.detail
    summed = moment_sum(asked.build.all_parts, hook.at_m)
    total = summed.moment_kg_m[hook.axis]
    sense = 1.0 if total > 0 else -1.0
    deciding = max(summed.rows, key=lambda row: sense * row.moment_kg_m[hook.axis]).name
    return Told(
        happened=message(
            _HANGS[asked.truth == "level"],
            how=asked.form.shown(asked.truth),
            angle=number(abs(degrees(_angle_rad(asked.task)))),
        ),
        why=_why(asked, total, summed.mass_kg),
        sum=summed,
        quotient=_quotient(summed, hook),
        deciding=deciding,
        working=(*_working(asked, summed), _quotient(summed, hook)),
        contrast=other_weight(
            asked,
            deciding,
            truth=lambda build: kind.truth(replace(asked.task, build=build)),
            then=msg("Then it would hang {answer}."),
            still=msg("It would still hang {answer}."),
        ),
    )


_WHY_SIDEWAYS: dict[End, str] = {
    "near": msg("Its balance point lies {away} left of the cord. It turns until that is right below the cord."),
    "far": msg("Its balance point lies {away} right of the cord. It turns until that is right below the cord."),
}
_WHY: dict[Find, dict[End, str]] = {
    "pitch": {
        "near": msg("Its balance point lies {away} ahead of the cord. It turns until that is right below the cord."),
        "far": msg("Its balance point lies {away} behind the cord. It turns until that is right below the cord."),
    },
    "roll": _WHY_SIDEWAYS,
    "ends": _WHY_SIDEWAYS,
}
_HANGS = {True: msg("It hangs level."), False: msg("It hangs {how}, tilted by {angle} degrees.")}
_STAYS = msg("Its balance point is right below the cord already. So nothing turns it, however high the parts are.")


def _why(asked: Asked, total_kg_m: float, whole_kg: float) -> Message:
    """Which side of the hook its balance point is on.  total_kg_m: all the moments about the hook."""
    options = _OPTIONS[asked.detail.find]
    if asked.truth == options["level"].key:
        return message(_STAYS)
    end: End = "far" if total_kg_m > 0 else "near"
    return message(_WHY[asked.detail.find][end], away=length(abs(total_kg_m) / whole_kg, decimals=1))


def _working(asked: Asked, summed: MomentSum) -> Iterator[Message]:
    axis = asked.detail.axis
    for row in summed.rows:
        yield message(
            msg("{part}: {weight} × {arm} from the cord = {moment}"),
            part=row.name,
            weight=mass(row.mass_kg),
            arm=length(row.arm_m[axis]),
            moment=short_moment(row.moment_kg_m[axis], asked.units),
        )


def _quotient(summed: MomentSum, hook: Hook) -> Message:
    away_m = summed.moment_kg_m[hook.axis] / summed.mass_kg
    return message(
        msg("all the moments / {weight}: the balance point is {away} from the cord"),
        weight=mass(summed.mass_kg),
        away=length(away_m, decimals=1),
    )


KIND = AttitudeKind()
