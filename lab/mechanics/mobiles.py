"""Mobiles: bars hung from bars by upright cords, to any depth.

Each bar is a bar on its own pin whose hung weight is the whole below it; the mobile is level when each bar is.
A bar's places are in its own coordinates.
"""

from dataclasses import KW_ONLY, dataclass
from math import copysign, cos, sin

from lab.mechanics.checks import MechanicsError, Vector, not_negative, vector
from lab.mechanics.moments import MomentSum, moment_sum
from lab.mechanics.parts import Part, added, checked
from lab.mechanics.pivots import Pivot, Turn, turn_about

DEFAULT_CORD_M = 0.1


@dataclass(frozen=True, slots=True, eq=False)
class MobileBar:
    """A bar of a mobile, with all that hangs below it.

    name: of this bar, its own in the whole mobile.  parts: the bar itself and what it carries directly.
    pivot: where its own cord holds it.  below: other bars, each by a cord.  Raises MechanicsError.
    """

    name: str
    parts: tuple[Part, ...]
    pivot: Pivot
    _: KW_ONLY
    below: tuple["HungBar", ...] = ()

    def __post_init__(self) -> None:
        for part in self.parts:
            if part.cut:
                raise MechanicsError(f"part {part.name!r} of bar {self.name!r} is a cut-out; a mobile's parts weigh")


@dataclass(frozen=True, slots=True, eq=False)
class HungBar:
    """A bar and where its cord is tied.  at_m: the hook, in the coordinates of the bar above.  cord_m: from the
    hook to the pin of the bar below.  Raises MechanicsError."""

    bar: MobileBar
    at_m: Vector
    cord_m: float = DEFAULT_CORD_M

    def __post_init__(self) -> None:
        object.__setattr__(self, "at_m", vector(f"hook of bar {self.bar.name!r}", self.at_m, "m"))
        object.__setattr__(self, "cord_m", not_negative(f"cord of bar {self.bar.name!r}", self.cord_m, "m"))


@dataclass(frozen=True, slots=True, kw_only=True)
class MobileLevel:
    """One bar of a mobile as its pin feels it.

    name, above: this bar and the one it hangs from, None at the top.  depth: 0 at the top.
    sum: its moment table from its own pin, each bar below it one row.  turn: what it does when let go.
    carried_kg: all that its cord holds, itself included.
    pin_m: along and up from the topmost pin, where it comes to rest with every bar above at its own tilt.
    tilt_rad: that of this bar, at its stop where nothing holds it before.
    """

    name: str
    above: str | None
    depth: int
    sum: MomentSum
    turn: Turn
    carried_kg: float
    pin_m: tuple[float, float]
    tilt_rad: float


@dataclass(frozen=True, slots=True, kw_only=True)
class MobileSum:
    """A mobile summed bar by bar.  levels: the topmost bar first, every bar before those that hang from it."""

    levels: tuple[MobileLevel, ...]

    @property
    def mass_kg(self) -> float:
        """The whole mobile's mass: what the topmost cord holds."""
        return self.levels[0].carried_kg

    @property
    def is_level(self) -> bool:
        """Whether every bar is."""
        return not self.askew

    @property
    def askew(self) -> tuple[str, ...]:
        """The bars that are not level, from the top down."""
        return tuple(level.name for level in self.levels if level.turn.goes != "level")


@dataclass(frozen=True, slots=True)
class _Place:
    bar: MobileBar
    above: int | None
    hook_m: Vector
    cord_m: float
    depth: int


def mobile_sum(top: MobileBar) -> MobileSum:
    """The sum of sums of a mobile, bar by bar, and whether each is level.

    Raises MechanicsError where a name is used twice or a bar has no part.  Source: S-03.
    """
    places = _from_the_top(top)
    carried = _carried_kg(places)
    hung = _hung(places, carried)
    levels: list[MobileLevel] = []
    for number, place in enumerate(places):
        parts = (*place.bar.parts, *hung[number])
        turn = turn_about(parts, place.bar.pivot)
        pin = (0.0, 0.0) if place.above is None else _below(levels[place.above], places[place.above].bar, place)
        levels.append(
            MobileLevel(
                name=place.bar.name,
                above=None if place.above is None else places[place.above].bar.name,
                depth=place.depth,
                sum=moment_sum(parts, (place.bar.pivot.at_m, 0.0, place.bar.pivot.up_m)),
                turn=turn,
                carried_kg=carried[number],
                pin_m=pin,
                tilt_rad=_rest_rad(turn, place.bar.pivot),
            )
        )
    return MobileSum(levels=tuple(levels))


def _from_the_top(top: MobileBar) -> list[_Place]:
    """Every bar, level by level.  A list and no recursion: a mobile may be deeper than the interpreter's stack."""
    places = [_Place(top, None, (0.0, 0.0, 0.0), 0.0, 0)]
    names = {top.name}
    for number, place in enumerate(places):  # grows as it is walked
        checked(place.bar.parts)
        for hung in place.bar.below:
            if hung.bar.name in names:
                raise MechanicsError(f"the name {hung.bar.name!r} is used twice in the mobile; each bar needs its own")
            names.add(hung.bar.name)
            places.append(_Place(hung.bar, number, hung.at_m, hung.cord_m, place.depth + 1))
    return places


def _carried_kg(places: list[_Place]) -> list[float]:
    """What each bar's cord holds, from the bottom up."""
    loads: list[list[float]] = [[part.mass_kg for part in place.bar.parts] for place in places]
    carried = [0.0] * len(places)
    for number in reversed(range(len(places))):
        carried[number] = added(loads[number])
        above = places[number].above
        if above is not None:
            loads[above].append(carried[number])
    return carried


def _hung(places: list[_Place], carried: list[float]) -> list[list[Part]]:
    """The bars below each bar, each as one part at its hook."""
    hung: list[list[Part]] = [[] for _ in places]
    for place, mass in zip(places, carried, strict=True):
        if place.above is not None:
            hung[place.above].append(Part(place.bar.name, mass, place.hook_m, hold="hung"))
    return hung


def _rest_rad(turn: Turn, pivot: Pivot) -> float:
    if turn.tilt_rad is not None:
        return turn.tilt_rad
    return copysign(pivot.stop_rad, turn.moment_kg_m)


def _below(level: MobileLevel, bar: MobileBar, place: _Place) -> tuple[float, float]:
    """Where a bar's pin hangs: a cord's length below its hook, the bar above turned about its pin."""
    along, up = place.hook_m[0] - bar.pivot.at_m, place.hook_m[2] - bar.pivot.up_m
    turned, raised = cos(level.tilt_rad), sin(level.tilt_rad)
    return (
        level.pin_m[0] + along * turned - up * raised,
        level.pin_m[1] + along * raised + up * turned - place.cord_m,
    )
