"""Mobiles out of saved builds and into them, and the one that the bench starts with.

In a file each bar is a group named as the bar, whose own zero is the bar's ring: so the place of the group is where
the bar hangs. Its first clamped rod is the bar itself; the groups in it are the bars that hang from it.
"""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType
from typing import TYPE_CHECKING

from lab import mechanics
from lab.files import Build
from lab.mechanics import MechanicsError, Part, Rod, Vector
from lab.simulation.benches.hanging_bar import Hung
from lab.simulation.benches.mobile import (
    MOST_BARS,
    MOST_LEVELS,
    MOST_ON_A_BAR,
    MOST_THINGS,
    Beam,
    Mobile,
    ways_of,
)
from lab.simulation.benches.unfit import UnfitBuildError
from lab.simulation.refused import Refused, msg

if TYPE_CHECKING:
    # Groups are loaded with the first mobile that is opened or saved.
    from lab.mechanics import Group, Member

ROD = "bar"
"""What the bar itself is called in the group that is named as the bar."""

DECIMALS = 12
"""Places of a mobile are kept to so many decimals of a metre: a ring's place taken off another place and added again
is then the same to the last bit, in the file and out of it."""

LONGEST_M = 100.0

_ORIGIN: Vector = (0.0, 0.0, 0.0)

NO_MOBILE = Refused(template=msg("This build is no mobile: it needs one group that all others hang from."))
PIVOT_ELSEWHERE = Refused(template=msg("The pivot of this build is not where its topmost bar hangs."))
TOO_MANY_BARS = Refused(template=msg("This mobile has more bars than there is room for."))
TOO_MANY = Refused(template=msg("This mobile has more weights than there is room for."))
TOO_DEEP = Refused(template=msg("This mobile has more levels than there is room for."))


def tidy(place_m: float) -> float:
    """A place to the last decimal that is kept; no −0.0."""
    return round(place_m, DECIMALS) + 0.0


def mobile_from_build(build: Build) -> Mobile:
    """The bench as the build says, held, with nothing guessed. Ids are 1, 2, … bar by bar, a bar before its weights.
    A pivot may say where the topmost bar hangs; the bar's own ring is what counts.

    Raises UnfitBuildError where there is anything but bars that hang from one another, and what hangs from them.
    """
    others = build.parts or build.tanks or build.surfaces or build.bar or build.supports
    if others or len(build.groups) != 1:
        raise UnfitBuildError(NO_MOBILE)
    reader, top = _Reader(build), build.groups[0]
    if build.pivot is not None and build.pivot.at_m != top.at_m[0]:
        raise UnfitBuildError(PIVOT_ELSEWHERE)
    reader.take(top, None, 0.0, 1)
    if reader.next_id - 1 > MOST_THINGS:
        raise UnfitBuildError(TOO_MANY)
    state = Mobile(
        beams=tuple(reader.beams),
        top_at_m=tidy(top.at_m[0]),
        reference_m=build.reference_m[0],
        title=build.title,
        units=build.units,
        view=build.view,
        next_id=reader.next_id,
    )
    _check_sums(state)
    return state


def build_from_mobile(state: Mobile) -> Build:
    """The build to be saved. Reading it back gives the same bench, held, with nothing guessed."""
    ways = ways_of(state.beams)
    looks = {
        f"{ways[beam.id]}/{weight.name}": weight.look
        for beam in state.beams
        for weight in beam.weights
        if weight.look is not None
    }
    return Build(
        title=state.title,
        units=state.units,
        reference_m=(state.reference_m, 0.0, 0.0),
        view=state.view,
        bench="mobile",
        groups=(_group(state),),
        looks=MappingProxyType(looks),
    )


def workshop_mobile() -> Mobile:
    """The mobile that the bench starts with: three bars, two gulls, a float, two brass weights.

    The low bar is level; the others are half a centimetre out.
    """
    long, short, low = (
        Beam(id=1, name="long bar", length_m=0.60, mass_kg=0.060, pin_m=0.26),
        Beam(id=2, name="short bar", length_m=0.36, mass_kg=0.030, pin_m=0.15, above=1, hook_m=0.06),
        Beam(id=3, name="low bar", length_m=0.26, mass_kg=0.020, pin_m=0.13, above=1, hook_m=0.50),
    )
    hung = {
        1: (_hung(4, "brass 20", 0.020, 0.22),),
        2: (_hung(5, "gull", 0.030, 0.02, "gull"), _hung(6, "brass 50", 0.050, 0.22)),
        3: (_hung(7, "gull 2", 0.030, 0.03, "gull"), _hung(8, "float", 0.040, 0.205, "float")),
    }
    beams = tuple(replace(beam, weights=hung[beam.id]) for beam in (long, short, low))
    return Mobile(beams=beams, top_at_m=0.30, title="Gulls and floats", next_id=9)


def _hung(id: int, name: str, mass_kg: float, at_m: float, look: str | None = None) -> Hung:  # noqa: A002
    return Hung(id=id, name=name, mass_kg=mass_kg, at_m=at_m, look=look)


def _group(state: Mobile) -> Group:
    """The topmost bar with all that hangs from it."""
    inner: dict[int | None, list[Member]] = {}
    pins = {beam.id: (beam.pin_m, beam.pin_up_m) for beam in state.beams}
    # The lowest first, so that each is whole when the one above takes it in.
    for beam in reversed(state.beams):
        pin_m, up_m = pins[beam.id]
        rod = Part(ROD, beam.mass_kg, (tidy(beam.length_m / 2 - pin_m), 0.0, -up_m), Rod(length_m=beam.length_m))
        loads = [_off_the_ring(weight.part, pin_m, up_m) for weight in beam.weights]
        members = (rod, *loads, *reversed(inner.get(beam.id, [])))
        at_m: Vector = (state.top_at_m, 0.0, 0.0)
        if beam.above is not None:
            above_m, above_up_m = pins[beam.above]
            at_m = (tidy(beam.hook_m - above_m), 0.0, tidy(-above_up_m - beam.cord_m))
        inner.setdefault(beam.above, []).append(mechanics.Group(name=beam.name, members=members, at_m=at_m))
    top = inner[None][0]
    if not isinstance(top, mechanics.Group):
        raise TypeError(f"{top.name} is no group")
    return top


def _off_the_ring(part: Part, pin_m: float, up_m: float) -> Part:
    along_m, across_m, height_m = part.at_m
    return replace(part, at_m=(tidy(along_m - pin_m), across_m, tidy(height_m - up_m)))


class _Reader:
    """Takes the groups of a build for bars, from the topmost down."""

    def __init__(self, build: Build) -> None:
        self._looks = build.looks
        self.beams: list[Beam] = []
        self.next_id = 1
        self._names: set[str] = set()

    def take(self, group: Group, above: Beam | None, above_pin_m: float, level: int, way: str = "") -> None:
        """One bar and all that hangs from it."""
        if level > MOST_LEVELS:
            raise UnfitBuildError(TOO_DEEP)
        if len(self.beams) >= MOST_BARS:
            raise UnfitBuildError(TOO_MANY_BARS)
        rod = next((each for each in group.members if _is_bar(each)), None)
        hung = [each for each in group.members if each is not rod]
        if not isinstance(rod, Part) or not isinstance(rod.shape, Rod) or group.turn_rad != _ORIGIN:
            raise _unfit(msg("{name} is no bar: a bar of a mobile has a rod along, and is not turned."), group.name)
        if group.name in self._names:
            raise _unfit(msg("Two bars are called {name}; each needs a name of its own."), group.name)
        if len(hung) > MOST_ON_A_BAR:
            raise _unfit(msg("More hangs from {name} than there is room for."), group.name)
        self._names.add(group.name)
        beam = self._bar(group, rod, rod.shape.length_m, above, above_pin_m)
        way = f"{way}/{group.name}" if way else group.name
        weights = tuple(self._weight(each, beam, f"{way}/{each.name}") for each in hung if isinstance(each, Part))
        beam = replace(beam, weights=weights)
        self.beams.append(beam)
        for each in hung:
            if isinstance(each, mechanics.Group):
                self.take(each, beam, beam.pin_m, level + 1, way)

    def _bar(self, group: Group, rod: Part, length_m: float, above: Beam | None, above_pin_m: float) -> Beam:
        length_m = tidy(length_m)
        pin_m, up_m = tidy(length_m / 2 - rod.at_m[0]), tidy(-rod.at_m[2])
        if not (0.0 < length_m <= LONGEST_M and 0.0 <= pin_m <= length_m):
            raise _unfit(msg("{name} hangs from a place that is not on it."), group.name)
        hook_m = cord_m = 0.0
        if above is not None:
            hook_m, cord_m = tidy(group.at_m[0] + above_pin_m), tidy(-group.at_m[2] - above.pin_up_m)
            if not (0.0 <= hook_m <= above.length_m and cord_m >= 0.0):
                raise _unfit(msg("{name} hangs from a place that is not on the bar above."), group.name)
        return Beam(
            id=self._new_id(),
            name=group.name,
            length_m=length_m,
            mass_kg=rod.mass_kg,
            pin_m=pin_m,
            pin_up_m=up_m,
            above=None if above is None else above.id,
            hook_m=hook_m,
            cord_m=cord_m,
        )

    def _weight(self, part: Part, beam: Beam, row: str) -> Hung:
        along_m = tidy(part.at_m[0] + beam.pin_m)
        if part.cut:
            raise _unfit(msg("{name} is a hole, and a hole can't hang."), part.name)
        if not 0.0 <= along_m <= beam.length_m:
            raise _unfit(msg("{name} is off the bar."), part.name)
        return Hung(
            id=self._new_id(),
            name=part.name,
            mass_kg=part.mass_kg,
            at_m=along_m,
            hold=part.hold,
            across_m=part.at_m[1],
            up_m=tidy(part.at_m[2] + beam.pin_up_m),
            shape=part.shape,
            inertia_kg_m2=part.inertia_kg_m2,
            mass_doubt_kg=part.mass_doubt_kg,
            at_doubt_m=part.at_doubt_m,
            set_name=part.set_name,
            look=self._looks.get(row),
        )

    def _new_id(self) -> int:
        self.next_id += 1
        return self.next_id - 1


def _is_bar(member: Member) -> bool:
    return (
        isinstance(member, Part)
        and isinstance(member.shape, Rod)
        and member.shape.axis == "along"
        and member.hold == "clamped"
        and not member.cut
    )


def _unfit(template: str, name: str) -> UnfitBuildError:
    return UnfitBuildError(Refused(template=template, values={"name": name}))


def _check_sums(state: Mobile) -> None:
    """Whatever the bench will be asked for later must have an answer now."""
    try:
        _ = state.sum, state.levels, state.released()
    except MechanicsError as error:
        raise UnfitBuildError(
            Refused(template=msg("This mobile can't hang: {why}."), values={"why": str(error)})
        ) from error
