"""How mass and balance point move in time, leg by leg: on each, mass and moment are linear."""

from bisect import bisect_right
from collections.abc import Iterable
from dataclasses import dataclass

from lab.mechanics.checks import MechanicsError, Vector, finite
from lab.mechanics.parts import Part, added, checked
from lab.mechanics.tank_courses import TankCourse, TankLeg


@dataclass(frozen=True, slots=True, kw_only=True)
class PathLeg:
    """One leg: mass and moment at its start, and what they gain a second; moments from zero, per axis."""

    start_s: float
    end_s: float
    mass_kg: float
    mass_rate_kg_s: float
    moment_kg_m: Vector
    moment_rate_kg_m_s: Vector

    def point_at(self, at_s: float) -> "PathPoint":
        """Mass and balance point at an instant of the leg.  Source: S-03."""
        since = at_s - self.start_s
        mass = self.mass_kg + self.mass_rate_kg_s * since
        along, across, up = (
            (self.moment_kg_m[axis] + self.moment_rate_kg_m_s[axis] * since) / mass for axis in range(3)
        )
        return PathPoint(at_s=at_s, mass_kg=mass, balance_point_m=(along, across, up))


@dataclass(frozen=True, slots=True, kw_only=True)
class PathPoint:
    """Mass and balance point at one instant."""

    at_s: float
    mass_kg: float
    balance_point_m: Vector


@dataclass(frozen=True, slots=True, kw_only=True)
class BalancePath:
    """Legs that follow each other without a gap, at least one."""

    legs: tuple[PathLeg, ...]

    def point_at(self, at_s: float) -> PathPoint:
        """Mass and balance point at an instant, exact.  Raises MechanicsError outside the path.  Source: S-03."""
        first, last = self.legs[0].start_s, self.legs[-1].end_s
        if not first <= finite("instant", at_s, "s") <= last:
            raise MechanicsError(f"instant is {at_s} s; the path runs from {first} s to {last} s")
        number = bisect_right([leg.start_s for leg in self.legs], at_s) - 1
        return self.legs[number].point_at(at_s)

    def points(self, *, each_leg: int = 16) -> tuple[PathPoint, ...]:
        """Points to draw the path through: every leg's ends, and evenly between them in time."""
        drawn = [self.legs[0].point_at(self.legs[0].start_s)]
        for leg in self.legs:
            length = leg.end_s - leg.start_s
            drawn += [leg.point_at(leg.start_s + length * step / each_leg) for step in range(1, each_leg)]
            drawn.append(leg.point_at(leg.end_s))
        return tuple(drawn)


def balance_path(parts: Iterable[Part], course: TankCourse) -> BalancePath:
    """How the balance point moves while the tanks burn and pump.

    parts: everything but the tanks' contents, at least one.  Raises MechanicsError where a part and a tank
    share a name.  Source: S-03.
    """
    build = checked(parts)
    shared = {part.name for part in build} & {tank.name for tank in course.tanks}
    if shared:
        raise MechanicsError(f"the name {min(shared)!r} is a part's and a tank's; each needs its own")
    return BalancePath(legs=tuple(_leg(build, course, leg) for leg in course.legs))


def _leg(parts: tuple[Part, ...], course: TankCourse, leg: TankLeg) -> PathLeg:
    held = [
        (tank.at_m, tank.density_kg_m3 * contents, tank.density_kg_m3 * flow)
        for tank, contents, flow in zip(course.tanks, leg.contents_m3, leg.flow_m3_s, strict=True)
    ]
    still = [(part.at_m, part.signed_mass_kg) for part in parts]
    loads = [*still, *((at, mass) for at, mass, _ in held)]
    along, across, up = (added(mass * at[axis] for at, mass in loads) for axis in range(3))
    on_along, on_across, on_up = (added(rate * at[axis] for at, _, rate in held) for axis in range(3))
    return PathLeg(
        start_s=leg.start_s,
        end_s=leg.end_s,
        mass_kg=added(mass for _, mass in loads),
        mass_rate_kg_s=added(rate for _, _, rate in held),
        moment_kg_m=(along, across, up),
        moment_rate_kg_m_s=(on_along, on_across, on_up),
    )
