"""What tanks do to the balance point: the courses that a question about them asks for, by the mechanics."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Literal

from lab import mechanics
from lab.files import UNITS, Build
from lab.lesson.kinds.kind import DetailRefusedError, Found
from lab.lesson.task import Task
from lab.lesson.ways.tank import PumpSeen, TankSeen, TanksSeen
from lab.mechanics import BalancePath, Burn, Limits, MechanicsError, Part, Pump

Find = Literal["first", "instant", "pump"]
_FINDS: tuple[Find, ...] = ("first", "instant", "pump")
HEAVIEST = 10.0
"""How many times its own weight the limits along reach up to: no weight is out of them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tanks:
    """find: what is asked for.  low_m, high_m: the limits along.  plan: what is burned.  pumps: those that may run."""

    find: Find
    low_m: float
    high_m: float
    plan: tuple[Burn, ...] = ()
    pumps: tuple[Pump, ...] = ()


def tanks_of(keys: Mapping[str, Any], build: Build) -> Tanks:
    """What a question says of its tanks, in SI.  Raises DetailRefusedError."""
    found = list(_key_faults(keys, build))
    if found:
        raise DetailRefusedError(*found)
    units = UNITS[build.units]
    low, high = keys["target"]
    try:
        return Tanks(
            find=keys["find"],
            low_m=units.to_m(low),
            high_m=units.to_m(high),
            plan=tuple(
                Burn(
                    rate_m3_s=units.to_m3(burn["rate"]),
                    tanks=tuple(burn.get("tanks", (tank.name for tank in build.tanks))),
                    order=burn.get("order", "together"),
                    for_s=burn.get("for"),
                )
                for burn in keys.get("plan", ())
            ),
            pumps=tuple(
                Pump(
                    source=pump["from"],
                    target=pump["to"],
                    rate_m3_s=units.to_m3(pump["rate"]),
                    until_s=float(pump["for"]),
                )
                for pump in keys.get("pumps", ())
            ),
        )
    except MechanicsError as unsound:
        what, _, cure = str(unsound).partition("; ")
        raise DetailRefusedError((("plan" if "plan" in keys else "pumps",), what, cure or "write another")) from unsound


def _key_faults(keys: Mapping[str, Any], build: Build) -> Iterator[Found]:
    find = keys["find"]
    if find not in _FINDS:
        yield ("find",), f'"{find}" is nothing to find here', 'write "first", "instant" or "pump"'
    low, high = keys["target"]
    if not low < high:
        yield ("target",), f"{low:g} is not below {high:g}", "write the lower limit first"
    needed, other = ("pumps", "plan") if find == "pump" else ("plan", "pumps")
    if needed not in keys:
        yield (needed,), "missing", f'to find "{find}" a tank question needs `{needed}`'
    if other in keys:
        yield (other,), f'to find "{find}" a tank question has no `{other}`', "leave it out"
    names = [tank.name for tank in build.tanks]
    for key, within in (("plan", ("tanks",)), ("pumps", ("from", "to"))):
        for index, table in enumerate(keys.get(key, ())):
            for inner in within:
                named = table.get(inner, [])
                for name in [named] if isinstance(named, str) else named:
                    if name not in names:
                        yield (key, index, inner), f'there is no tank "{name}"', f"name one of {', '.join(names)}"


def whole_plan(task: Task, *, first: str) -> tuple[Burn, ...]:
    """Burning one tank first and then the others in the scene's order, until nothing is left."""
    rest = [tank.name for tank in task.build.tanks if tank.name != first]
    return (Burn(rate_m3_s=task.detail.plan[0].rate_m3_s, tanks=(first, *rest), order="in order"),)


def path_of(
    task: Task, plan: Sequence[Burn], pumps: Sequence[Pump] = (), *, until_s: float | None = None
) -> BalancePath:
    """How the balance point goes while the tanks burn and pump."""
    course = mechanics.tank_course(task.build.tanks, plan, pumps=pumps, until_s=until_s)
    return mechanics.balance_path(still_parts(task.build), course)


def still_parts(build: Build) -> tuple[Part, ...]:
    """Everything that weighs something but what is in the tanks."""
    tanks = {tank.name for tank in build.tanks}
    return tuple(part for part in build.all_parts if part.name not in tanks)


def limits_of(task: Task) -> Limits:
    """The limits along, at any weight."""
    tanks: Tanks = task.detail
    most_kg = HEAVIEST * sum(part.mass_kg for part in task.parts)
    least_kg = min(part.mass_kg for part in task.parts) / HEAVIEST**6
    low, high = tanks.low_m, tanks.high_m
    return Limits(outline=((low, least_kg), (high, least_kg), (high, most_kg), (low, most_kg)))


def stays_inside(task: Task, plan: Sequence[Burn]) -> bool:
    """Whether the balance point stays within the limits all along a plan."""
    return mechanics.limit_crossings(path_of(task, plan), limits_of(task)).stays_inside


def first_exit_s(task: Task) -> float:
    """When the balance point first leaves the limits, s.  Raises MechanicsError where it never does, or begins out."""
    course = mechanics.limit_crossings(path_of(task, task.detail.plan), limits_of(task))
    if not course.stretches[0].inside:
        raise MechanicsError("it begins outside the limits; change `target`")
    if not course.crossings:
        raise MechanicsError("it never reaches a limit; change `target` or the plan")
    return course.crossings[0].at_s


def after_pump(task: Task, pump: Pump) -> tuple[float, bool]:
    """Where it balances when a pump has run, m, and whether that is within the limits."""
    path = path_of(task, (Burn(rate_m3_s=0.0),), (pump,), until_s=pump.until_s)
    last = path.legs[-1]
    place_m = last.point_at(last.end_s).balance_point_m[0]
    return place_m, task.detail.low_m <= place_m <= task.detail.high_m


def span_m(path: BalancePath) -> tuple[float, float]:
    """From where to where the balance point goes along a path, m."""
    # On a leg it is a linear function over another, so that its ends are its extremes.
    places = [leg.point_at(at).balance_point_m[0] for leg in path.legs for at in (leg.start_s, leg.end_s)]
    return min(places), max(places)


def as_seen(task: Task) -> TanksSeen:
    """The tanks in numerals."""
    units, build, tanks = task.units, task.build, task.detail
    summed = mechanics.moment_sum(build.all_parts)
    drawn, all_burned = _burning(task)
    at = {tank.name: units.from_m(tank.at_m[0]) for tank in build.tanks}
    weight = {tank.name: units.from_kg(tank.mass_kg) for tank in build.tanks}
    return TanksSeen(
        weight=units.from_kg(summed.mass_kg),
        balance=units.from_m(summed.balance_point_m[0]),
        low=units.from_m(tanks.low_m),
        high=units.from_m(tanks.high_m),
        tanks=tuple(TankSeen(name=name, at=at[name], weight=weight[name], drawn=drawn.get(name, 0.0)) for name in at),
        pumps=tuple(
            PumpSeen(
                name=f"{pump.source} to {pump.target}",
                source=at[pump.source],
                target=at[pump.target],
                source_weight=weight[pump.source],
            )
            for pump in tanks.pumps
        ),
        all_burned=all_burned,
    )


def _burning(task: Task) -> tuple[dict[str, float], float | None]:
    """What each tank loses a second at the start, as numerals of weight, and when the plan is over, s."""
    if task.detail.find != "instant":
        return {}, None
    course = mechanics.tank_course(task.build.tanks, task.detail.plan)
    flows = zip(task.build.tanks, course.legs[0].flow_m3_s, strict=True)
    drawn = {tank.name: task.units.from_kg(-flow * tank.density_kg_m3) for tank, flow in flows}
    return drawn, course.legs[-1].end_s
