"""Which tank to burn first, which way to pump, and when is a limit reached?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Any, ClassVar

from lab.files import Build
from lab.lesson.asked import Asked
from lab.lesson.explanation import Explanation
from lab.lesson.forms import Answer, Choice, Number, Option, Quantity, same
from lab.lesson.kinds.choices import choice_fits, choice_of, chosen_explanation, named_options
from lab.lesson.kinds.kind import Fit, Found, Kind
from lab.lesson.kinds.numbers import clear_of, fits_of, is_sizeable, number, shown_miss, type_a_number
from lab.lesson.kinds.tank_flights import Tanks, after_pump, as_seen, first_exit_s, stays_inside, tanks_of, whole_plan
from lab.lesson.kinds.tank_telling import told_of
from lab.lesson.messages import Amount, Message, length, message, msg, seconds, volume
from lab.lesson.task import Task
from lab.lesson.ways.tank import TANK_FIRST_WAYS, TANK_INSTANT_WAYS, TANK_PUMP_WAYS
from lab.mechanics import MechanicsError


class TankKind(Kind):
    """What burning and pumping do to the balance point between its limits along."""

    name = "tank"
    needs: ClassVar = ("find", "target")
    takes: ClassVar = ("plan", "pumps")
    ways: ClassVar = tuple(way.name for way in (*TANK_FIRST_WAYS, *TANK_PUMP_WAYS, *TANK_INSTANT_WAYS))
    is_along: ClassVar = False
    holds_loose: ClassVar = False

    def quantity_of(self, keys: Mapping[str, Any]) -> Quantity | None:
        return "time" if keys.get("find") == "instant" else None

    def detail(self, keys: Mapping[str, Any], build: Build) -> Tanks:
        return tanks_of(keys, build)

    def scene_faults(self, build: Build) -> Iterator[Found]:
        if not build.tanks:
            yield ("scene",), "no tank", "add `[[question.scene.tank]]`"

    def amounts(self, task: Task) -> Mapping[str, Amount]:
        tanks: Tanks | None = task.detail
        if tanks is None:
            return {}
        named = {
            "target.low": length(tanks.low_m),
            "target.high": length(tanks.high_m),
            "balance.at": length(task.balance_m, decimals=1),
        }
        if tanks.plan:
            named["plan.rate"] = volume(tanks.plan[0].rate_m3_s)
        if tanks.pumps:
            named["pumps.rate"] = volume(tanks.pumps[0].rate_m3_s)
        return named

    def truth(self, task: Task) -> Answer:
        tanks: Tanks = task.detail
        if tanks.find == "instant":
            return first_exit_s(task)
        names = [option.key for option in _options(task)]
        if tanks.find == "first":
            good = [name for name in names if stays_inside(task, whole_plan(task, first=name))]
            what = "stay within the limits when burned first"
        else:
            good = [name for name, pump in zip(names, tanks.pumps, strict=True) if after_pump(task, pump)[1]]
            what = "bring it within the limits"
        if len(good) != 1:
            raise MechanicsError(f"{len(good)} of {len(names)} {what}; change `target` or the scene so that one does")
        return good[0]

    def predictions(self, task: Task) -> tuple[Fit, ...]:
        form, seen = self.form(task), as_seen(task)
        if isinstance(form, Number):
            return fits_of(TANK_INSTANT_WAYS, seen, form, to_si=float, values={})
        return choice_fits(TANK_FIRST_WAYS if task.detail.find == "first" else TANK_PUMP_WAYS, seen, form)

    def clear(self, task: Task, truth: Answer) -> float:
        return 0.0 if isinstance(truth, str) else clear_of(task, truth)

    def size(self, task: Task, truth: Answer) -> tuple[float, str] | None:
        return None if isinstance(truth, str) else (number(truth), "a time")

    def is_sound(self, task: Task, truth: Answer, *, written: Answer) -> bool:
        return isinstance(truth, str) or is_sizeable(task, truth)

    def form(self, task: Task) -> Choice | Number:
        tanks: Tanks = task.detail
        if tanks.find != "instant":
            return choice_of(_options(task))
        return Number(
            quantity="time",
            tolerance=task.within,
            decimals=task.decimals("time", least=0),
            low=0.0,
            high=3600.0,
            least=0.0,
            most=1e6,
            example=3600.0,
            again=msg("I could not read that as a time. Type seconds or minutes, for example {example}."),
            too_far=msg("Nobody flies as long as that. Type seconds or minutes, for example {example}."),
        )

    def prompt(self, task: Task) -> Message:
        return message(_PROMPTS[task.detail.find])

    def what_to_type(self, asked: Asked) -> Message:
        if isinstance(asked.form, Choice):
            return message(msg("Type its name."))
        return type_a_number(asked, unit=msg("seconds"))

    def given(self, asked: Asked) -> tuple[Message, ...]:
        tanks: Tanks = asked.detail
        lines = [
            message(msg("{tank}   {contents} in it"), tank=tank.name, contents=volume(tank.contents_m3))
            for tank in asked.build.tanks
        ]
        lines += [message(msg("{rate} burned a second"), rate=volume(burn.rate_m3_s)) for burn in tanks.plan]
        lines += [
            message(
                msg("pump   {source} to {target}, {rate} a second for {time}"),
                source=pump.source,
                target=pump.target,
                rate=volume(pump.rate_m3_s),
                time=seconds(pump.until_s),
            )
            for pump in tanks.pumps
        ]
        limits = msg("it must balance between {low} and {high}")
        return (*lines, message(limits, low=length(tanks.low_m), high=length(tanks.high_m)))

    def explain(self, asked: Asked, value: Answer, fit: Fit | None, ways: tuple[str, ...]) -> Explanation:
        told, idea = told_of(self, asked), self.idea(asked, fit)
        explained = chosen_explanation(asked, value, told, idea=idea, ways=ways)
        if isinstance(value, str):
            return explained
        return _timed(asked, number(value), explained, idea)


def _options(task: Task) -> tuple[Option, ...]:
    """What there is to choose from: tanks, or ways to pump."""
    if task.detail.find == "first":
        return named_options(tank.name for tank in task.build.tanks)
    return tuple(
        Option(
            key=f"{pump.source} to {pump.target}",
            text=msg("{source} to {target}"),
            values=(("source", pump.source), ("target", pump.target)),
        )
        for pump in task.detail.pumps
    )


def _timed(asked: Asked, said_s: float, explained: Explanation, idea: Message | None) -> Explanation:
    truth_s = number(asked.truth)
    right = same(said_s, truth_s, within=asked.tolerance or 0.0)
    off = msg("Too late by {miss}") if said_s > truth_s else msg("Too early by {miss}")
    miss = shown_miss(asked, said_s, truth_s, "time")
    headline = message(msg("That is when it reaches the limit") if right else off, miss=miss)
    return replace(explained, right=right, headline=headline, idea=explained.why if right else idea)


_PROMPTS = {
    "first": msg("Which tank must be burned first, so that it stays within its limits?"),
    "pump": msg("Which way must be pumped, so that it comes within its limits?"),
    "instant": msg("When does the balance point reach a limit?"),
}

KIND = TankKind()
