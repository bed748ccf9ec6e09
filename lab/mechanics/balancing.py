"""Ways to bring the balance point to where it should be, side by side: a heavy part moved a little, or a light
one added far out; each with the weight that it adds."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from lab.mechanics.axes import AXES, Axis
from lab.mechanics.ballast import CannotBeDone
from lab.mechanics.ballast_loads import BallastPlace, lightest_ballast
from lab.mechanics.checks import Vector, finite
from lab.mechanics.moments import balance_of
from lab.mechanics.parts import Part, checked, total_mass_kg
from lab.mechanics.shifting import part_named

Room = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class BalancingWay:
    """One way.

    kind: `move` a part, or `add` ballast.  name: of the part, or of the place.  mass_kg: what is moved, or added.
    by_m: how far the part goes, on the axis; 0 for ballast.  at_m: where it then is.
    added_kg: what the whole gains: nothing by a move.
    """

    kind: Literal["move", "add"]
    name: str
    mass_kg: float
    by_m: float
    at_m: Vector
    added_kg: float


def balancing_ways(
    parts: Iterable[Part],
    *,
    target_m: float,
    axis: Axis = "along",
    movable: Mapping[str, Room | None],
    places: Sequence[BallastPlace] = (),
) -> tuple[BalancingWay | CannotBeDone, ...]:
    """Every way that one move, or ballast at one place, brings the balance point to the target on an axis.

    movable: the parts that may be moved, and between which places on the axis; None for anywhere.
    places: where ballast may go.  Those that add least come first, then the shorter moves; those that cannot
    be done come last, with why.  Raises MechanicsError.  Source: S-03.
    """
    build = checked(parts)
    target = finite("target", target_m, "m")
    moves = [_moved(build, part_named(build, name), target, axis, room) for name, room in movable.items()]
    added = [_added(build, place, target, axis) for place in places]
    ways = [way for way in (*moves, *added) if isinstance(way, BalancingWay)]
    ways.sort(key=lambda way: (way.added_kg, abs(way.by_m)))
    return (*ways, *(way for way in (*moves, *added) if isinstance(way, CannotBeDone)))


def _moved(
    parts: tuple[Part, ...], part: Part, target: float, axis: Axis, room: Room | None
) -> BalancingWay | CannotBeDone:
    number = AXES.index(axis)
    whole = total_mass_kg(parts)
    shift = target - balance_of(parts)[number]
    # A cut-out is a hole: moved one way, the balance point goes the other.
    by = (-shift if part.cut else shift) * whole / part.mass_kg
    place = part.at_m[number] + by
    if room is not None and not min(room) <= place <= max(room):
        return CannotBeDone(
            reason="room",
            name=part.name,
            why=f"{part.name} would have to go to {place} m; it can be moved from {min(room)} m to {max(room)} m",
        )
    along, across, up = (place if n == number else each for n, each in enumerate(part.at_m))
    return BalancingWay(
        kind="move", name=part.name, mass_kg=part.mass_kg, by_m=by, at_m=(along, across, up), added_kg=0.0
    )


def _added(parts: tuple[Part, ...], place: BallastPlace, target: float, axis: Axis) -> BalancingWay | CannotBeDone:
    found = lightest_ballast(parts, [place], target_m={axis: target})
    if isinstance(found, CannotBeDone):
        return CannotBeDone(reason=found.reason, name=place.name, why=found.why)
    at = found.loads[0].at_m if found.loads else place.at_m
    return BalancingWay(kind="add", name=place.name, mass_kg=found.mass_kg, by_m=0.0, at_m=at, added_kg=found.mass_kg)
