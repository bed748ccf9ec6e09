"""The course of a burn plan: legs of constant rates between exact events."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import inf, isfinite
from typing import Literal

from lab.mechanics.checks import MechanicsError, finite, positive
from lab.mechanics.parts import added
from lab.mechanics.tank_flows import Draw, Flows, Line, flows_at
from lab.mechanics.tanks import Burn, Pump, Tank, tank_indices

EventKind = Literal["empty", "full", "next burn", "pump starts", "pump stops", "runs dry", "end"]

ROUND_OFF = 4e-16
"""Share of a capacity within which contents at a leg's end count as none, or as full: what the leg's own sum
rounds by.  Larger, volume would go missing; smaller, two tanks that empty together would do so one by one."""

SHORT = 1e-12
"""Share of a wanted rate that may be missing before the burn has run dry: above round-off of the shares."""

MOST_LEGS = 10_000
"""Legs after which a plan is refused: each pump and burn begins and ends once, and each tank empties or fills
between; a plan that needs more does not settle."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TankEvent:
    """Something that changes the rates.  name: the tank, or `source to target` of a pump; "" for the burn."""

    at_s: float
    kind: EventKind
    name: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class TankLeg:
    """A time of constant rates.

    contents_m3: each tank's at the start.  flow_m3_s: what each gains a second, burn and pumps together.
    burn_m3_s: burned a second, from all.  pump_m3_s: what each pump moves.
    """

    start_s: float
    end_s: float
    contents_m3: tuple[float, ...]
    flow_m3_s: tuple[float, ...]
    burn_m3_s: float
    pump_m3_s: tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TankCourse:
    """What a plan does to the tanks.

    legs: following each other, at least one.  events: in order.  contents_m3: each tank's at the end.
    burned_m3: in all.  dry_s: when the burn could not be fed any more, which ends the course; None where it
    always could.
    """

    tanks: tuple[Tank, ...]
    legs: tuple[TankLeg, ...]
    events: tuple[TankEvent, ...]
    contents_m3: tuple[float, ...]
    burned_m3: float
    dry_s: float | None

    def contents_at(self, at_s: float) -> tuple[float, ...]:
        """Each tank's contents at an instant of the course, m³.  Raises MechanicsError outside it."""
        first, last = self.legs[0].start_s, self.legs[-1].end_s
        if not first <= finite("instant", at_s, "s") <= last:
            raise MechanicsError(f"instant is {at_s} s; the course runs from {first} s to {last} s")
        if at_s == last:
            return self.contents_m3
        leg = next(leg for leg in reversed(self.legs) if leg.start_s <= at_s)
        since = at_s - leg.start_s
        return tuple(
            min(max(contents + flow * since, 0.0), tank.capacity_m3)
            for tank, contents, flow in zip(self.tanks, leg.contents_m3, leg.flow_m3_s, strict=True)
        )


def tank_course(
    tanks: Iterable[Tank], plan: Sequence[Burn], *, pumps: Sequence[Pump] = (), until_s: float | None = None
) -> TankCourse:
    """What a burn plan and pumps do to the tanks, event by event, exact in time.

    plan: burns one after the other; only the last may go on to the end.  pumps: each with its own times.
    until_s: when to stop; None runs to the plan's end, or until it runs dry.  Volume is neither made nor lost:
    what is burned and what is left add up to what there was.
    Raises MechanicsError where a name is unknown or used twice, or nothing would ever end the plan.
    """
    built = tuple(tanks)
    names = [tank.name for tank in built]
    for name in names:
        if names.count(name) > 1:
            raise MechanicsError(f"the name {name!r} is used twice; each tank needs its own")
    if until_s is not None:
        positive("end of the course", until_s, "s")
    return _Running(built, tuple(plan), tuple(pumps), until_s).course()


class _Running:
    """A plan while it runs: the contents, the time, and what has been noted so far."""

    def __init__(
        self, tanks: tuple[Tank, ...], plan: tuple[Burn, ...], pumps: tuple[Pump, ...], until_s: float | None
    ) -> None:
        self.tanks, self.pumps = tanks, pumps
        self.ends_of = tuple(tank_indices(tanks, (pump.source, pump.target)) for pump in pumps)
        self.burns = [
            (end, Draw(rate_m3_s=burn.rate_m3_s, tanks=tank_indices(tanks, burn.tanks), order=burn.order))
            for burn, end in zip(plan, _ends_s(plan), strict=True)
        ]
        self.stop_s = min(self.burns[-1][0], inf if until_s is None else float(until_s))
        self.contents = [tank.contents_m3 for tank in tanks]
        self.legs: list[TankLeg] = []
        self.events: list[TankEvent] = []
        self.dry_s: float | None = None

    def course(self) -> TankCourse:
        now = 0.0
        while now < self.stop_s and self.dry_s is None:
            if len(self.legs) >= MOST_LEGS:
                raise MechanicsError(
                    f"the burn plan has not settled after {MOST_LEGS} legs; give fewer burns and pumps"
                )
            now = self._run_leg(now)
        if not self.legs:
            none = (0.0,) * len(self.tanks)
            still = Flows(drawn_m3_s=none, pumped_m3_s=(), gained_m3_s=none)
            self.legs.append(self._leg(now, now, still, (0.0,) * len(self.pumps)))
        self.events.append(TankEvent(at_s=now, kind="end"))
        return TankCourse(
            tanks=self.tanks,
            legs=tuple(self.legs),
            events=tuple(self.events),
            contents_m3=tuple(self.contents),
            burned_m3=added(leg.burn_m3_s * (leg.end_s - leg.start_s) for leg in self.legs),
            dry_s=self.dry_s,
        )

    def _run_leg(self, now: float) -> float:
        """One leg further, to the next event; or none, where the burn cannot be fed."""
        draw = next(draw for end, draw in self.burns if now < end)
        running = [number for number, pump in enumerate(self.pumps) if pump.from_s <= now < pump.until_s]
        lines = [
            Line(source=self.ends_of[n][0], target=self.ends_of[n][1], rate_m3_s=self.pumps[n].rate_m3_s)
            for n in running
        ]
        both = tuple(zip(self.contents, self.tanks, strict=True))
        flows = flows_at(
            draw,
            lines,
            empty=[held <= 0.0 for held, _ in both],
            full=[held >= tank.capacity_m3 for held, tank in both],
        )
        if added(flows.drawn_m3_s) < draw.rate_m3_s * (1.0 - SHORT):
            self.dry_s = now
            self.events.append(TankEvent(at_s=now, kind="runs dry"))
            return now
        end = self._next_event_s(now, flows)
        if end > now:
            moved = dict(zip(running, flows.pumped_m3_s, strict=True))
            self.legs.append(self._leg(now, end, flows, tuple(moved.get(n, 0.0) for n in range(len(self.pumps)))))
        self._pour(now, end, flows)
        return end

    def _next_event_s(self, now: float, flows: Flows) -> float:
        times = [end for end, _ in self.burns]
        times += [time for pump in self.pumps for time in (pump.from_s, pump.until_s)]
        ends = [time for time in (*times, self.stop_s) if time > now]
        ends += [now + wait for wait in self._waits_s(flows) if wait < inf]
        end = min(ends, default=inf)
        if not isfinite(end):
            raise MechanicsError("nothing ends the burn plan; give its last burn a duration, or say until when")
        return end

    def _waits_s(self, flows: Flows) -> list[float]:
        """How long each tank takes, from now, to empty or to fill; never for one that does neither."""
        waits = []
        for tank, held, gain in zip(self.tanks, self.contents, flows.gained_m3_s, strict=True):
            room = held if gain < 0.0 else tank.capacity_m3 - held
            waits.append(room / abs(gain) if gain != 0.0 else inf)
        return waits

    def _pour(self, start: float, end: float, flows: Flows) -> None:
        """Contents at the leg's end, exact at the limits, and what happens there."""
        waits = self._waits_s(flows)
        for number, (tank, gain) in enumerate(zip(self.tanks, flows.gained_m3_s, strict=True)):
            if gain == 0.0:
                continue
            held = self.contents[number] + gain * (end - start)
            limit = 0.0 if gain < 0.0 else tank.capacity_m3
            there = start + waits[number] <= end or abs(held - limit) <= ROUND_OFF * tank.capacity_m3
            self.contents[number] = limit if there else held
            if there:
                self.events.append(TankEvent(at_s=end, kind="empty" if gain < 0.0 else "full", name=tank.name))
        if end < self.stop_s and any(end == burn_end for burn_end, _ in self.burns):
            self.events.append(TankEvent(at_s=end, kind="next burn"))
        for pump in self.pumps:
            called = f"{pump.source} to {pump.target}"
            if end == pump.from_s:
                self.events.append(TankEvent(at_s=end, kind="pump starts", name=called))
            if end == pump.until_s:
                self.events.append(TankEvent(at_s=end, kind="pump stops", name=called))

    def _leg(self, start: float, end: float, flows: Flows, pumped: tuple[float, ...]) -> TankLeg:
        return TankLeg(
            start_s=start,
            end_s=end,
            contents_m3=tuple(self.contents),
            flow_m3_s=flows.gained_m3_s,
            burn_m3_s=added(flows.drawn_m3_s),
            pump_m3_s=pumped,
        )


def _ends_s(plan: Sequence[Burn]) -> list[float]:
    """When each burn of the plan ends.  Raises MechanicsError where one without end is not the last."""
    if not plan:
        raise MechanicsError("the burn plan is empty; it needs one burn, of 0 m³/s where nothing burns")
    if any(burn.for_s is None for burn in plan[:-1]):
        raise MechanicsError("a burn without a duration is followed by another; only the last may go on to the end")
    ends, now = [], 0.0
    for burn in plan:
        now = inf if burn.for_s is None else now + burn.for_s
        ends.append(now)
    return ends
