"""The stack of beams: bars that hang from bars by upright cords, to several levels, with weights on them.

What is neglected: cords are upright, weightless and of fixed length, and each pulls with the resting weight of all
that hangs below it. So every bar swings as a damped body on its own pin, what hangs from it acting as points at its
hooks, and the swinging of one bar neither shakes nor carries another: a real mobile trembles longer. Where each bar
comes to rest is exact all the same, for at rest every cord does pull with just that weight.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from lab.files import View
from lab.mechanics import (
    HungBar,
    MobileBar,
    MobileSum,
    MomentSum,
    Part,
    Pivot,
    Rod,
    Swing,
    mobile_sum,
    moment_sum,
)
from lab.simulation.benches.hanging_bar import AT_REST_LEVEL, LEVEL, Hung, Turning, turning_of
from lab.simulation.commands import Side

MOST_LEVELS = 6
"""Bars under each other. More leave no height for the lowest at 600 pixels."""

MOST_BARS = 12
"""Bars in one mobile. More cannot be told apart at any window size."""

MOST_ON_A_BAR = 8
"""Weights and bars that hang from one bar."""

MOST_THINGS = 30
"""Bars and weights in all: so many find room under each other in the smallest window, wherever they hang."""

STOP_RAD = 0.25
"""Where a ring's stop catches its bar, some 14°: farther, and neighbours would reach into each other."""

RING_UP_M = 0.03
"""How far a bar's ring sits above its hooks, m. A bar that is half a centimetre out then tilts by 10° and does not
drop on its stop: in a stack every small fault adds up, and one wants to see which is large."""

CORD_M = 0.10
"""A cord as a build file has it, m. It takes no part in any sum; pictures draw cords as long as room asks."""

RAIL_OVERHANG_M = 0.02


@dataclass(frozen=True, slots=True, kw_only=True)
class Beam:
    """One bar of a mobile. Its places are measured from its own left end, along.

    id: unlike any other ever in this mobile, weights included.  above: the id of the bar that it hangs from, None at
    the top.  hook_m: the place on that bar.  pin_m: where its own ring is.  pin_up_m: how far over its hooks.
    """

    id: int
    name: str
    length_m: float
    mass_kg: float
    pin_m: float
    pin_up_m: float = RING_UP_M
    above: int | None = None
    hook_m: float = 0.0
    cord_m: float = CORD_M
    weights: tuple[Hung, ...] = ()

    @property
    def rod(self) -> Part:
        """The bar itself, without what it carries."""
        centre_m = (self.length_m / 2, 0.0, 0.0)
        return Part(name=self.name, mass_kg=self.mass_kg, at_m=centre_m, shape=Rod(length_m=self.length_m))

    @property
    def pivot(self) -> Pivot:
        """Its ring."""
        return Pivot(at_m=self.pin_m, up_m=self.pin_up_m, stop_rad=STOP_RAD)

    def weight(self, id: int) -> Hung | None:  # noqa: A002 - the field's own name
        """The weight with this id, or None where it does not hang here."""
        return next((weight for weight in self.weights if weight.id == id), None)


@dataclass(frozen=True, slots=True, kw_only=True)
class Mobile:
    """The whole state of the bench.

    beams: the topmost first, each before all that hangs from it, and that before the next beside it.
    top_at_m: where the topmost cord hangs, along.  guess: which end of the topmost bar will drop.
    swings, turnings: of each bar in their order, empty while held.
    """

    beams: tuple[Beam, ...]
    top_at_m: float = 0.0
    reference_m: float = 0.0
    guess: Side | None = None
    held: bool = True
    swings: tuple[Swing, ...] = ()
    turnings: tuple[Turning, ...] = ()
    title: str = "Mobile"
    units: str = "g-cm"
    view: View = "plain"
    next_id: int = 1

    @property
    def levels(self) -> MobileSum:
        """The sum of sums: each bar about its own ring, every bar before those that hang from it."""
        return mobile_sum(_hung_tree(self))

    @property
    def carried_kg(self) -> Mapping[str, float]:
        """What the cord of each bar holds, itself and all below, by the bar's name."""
        return {level.name: level.carried_kg for level in self.levels.levels}

    @property
    def parts(self) -> tuple[Part, ...]:
        """Everything that weighs something, where it is while all bars are held level; named `bar/part`."""
        ways = ways_of(self.beams)
        pins_m = self.pins_m
        placed: list[Part] = []
        for beam in self.beams:
            off_m, way = pins_m[beam.id] - beam.pin_m, ways[beam.id]
            for name, part in (("bar", beam.rod), *((weight.name, weight.part) for weight in beam.weights)):
                along_m, across_m, up_m = part.at_m
                placed.append(replace(part, name=f"{way}/{name}", at_m=(along_m + off_m, across_m, up_m)))
        return tuple(placed)

    @property
    def sum(self) -> MomentSum:
        """The moment sum of the whole about the reference line."""
        return moment_sum(self.parts, (self.reference_m, 0.0, 0.0))

    @property
    def outcome(self) -> Side | None:
        """Which end of the topmost bar dropped, or ``level``; None until all has been let go and come to rest."""
        return None if self.held or self.moving else self.levels.levels[0].turn.goes

    @property
    def moving(self) -> bool:
        """Whether the next tick changes anything."""
        return not all(swing.settled for swing in self.swings)

    @property
    def pins_m(self) -> Mapping[int, float]:
        """Where each bar's ring is along while all bars are held level, by the bar's id."""
        pins: dict[int, float] = {}
        by_id = {beam.id: beam for beam in self.beams}
        for beam in self.beams:
            above = None if beam.above is None else by_id[beam.above]
            pins[beam.id] = self.top_at_m if above is None else pins[above.id] + beam.hook_m - above.pin_m
        return pins

    @property
    def reach_m(self) -> tuple[float, float]:
        """The outermost ends of its bars, along, all held level."""
        pins = self.pins_m
        lefts = [pins[beam.id] - beam.pin_m for beam in self.beams]
        return min(lefts), max(left + beam.length_m for left, beam in zip(lefts, self.beams, strict=True))

    @property
    def rail_m(self) -> tuple[float, float]:
        """Where the reference line may be, along."""
        left_m, right_m = self.reach_m
        return left_m - RAIL_OVERHANG_M, right_m + RAIL_OVERHANG_M

    @property
    def things(self) -> int:
        """How many bars and weights there are."""
        return len(self.beams) + sum(len(beam.weights) for beam in self.beams)

    def beam(self, id: int | None) -> Beam | None:  # noqa: A002 - the field's own name
        """The bar with this id, or None where there is none."""
        return next((beam for beam in self.beams if beam.id == id), None)

    def carrier(self, id: int) -> Beam | None:  # noqa: A002 - the field's own name
        """The bar from which the weight with this id hangs, or None where no bar carries it."""
        return next((beam for beam in self.beams if beam.weight(id) is not None), None)

    def stilled(self) -> Mobile:
        """Every bar held level again."""
        return self if self.held else replace(self, held=True, swings=(), turnings=())

    def released(self) -> Mobile:
        """All bars just let go. Those that balance are at rest already."""
        if not self.held:
            return self
        carried = self.carried_kg
        turnings = tuple(turning_of(_felt(self, beam, carried), beam.pivot) for beam in self.beams)
        swings = tuple(turning.end if turning.end == AT_REST_LEVEL else LEVEL for turning in turnings)
        return replace(self, held=False, swings=swings, turnings=turnings)

    def ticked(self) -> Mobile:
        """One tick later."""
        if not self.moving:
            return self
        pairs = zip(self.turnings, self.swings, strict=True)
        return replace(self, swings=tuple(swing if swing.settled else turn.swung(swing) for turn, swing in pairs))

    def at_end(self) -> Mobile:
        """Where every bar comes to rest in the end."""
        return replace(self, swings=tuple(turning.end for turning in self.turnings)) if self.moving else self


def ways_of(beams: tuple[Beam, ...]) -> Mapping[int, str]:
    """The names from the topmost bar down to each, as `top/middle/low`, by the bar's id."""
    ways: dict[int, str] = {}
    for beam in beams:
        ways[beam.id] = beam.name if beam.above is None else f"{ways[beam.above]}/{beam.name}"
    return ways


def below(beams: tuple[Beam, ...], id: int) -> tuple[Beam, ...]:  # noqa: A002 - the field's own name
    """The bar with this id and all bars that hang from it, in their order."""
    found = {id}
    for beam in beams:
        if beam.above in found:
            found.add(beam.id)
    return tuple(beam for beam in beams if beam.id in found)


def _felt(mobile: Mobile, beam: Beam, carried_kg: Mapping[str, float]) -> tuple[Part, ...]:
    """What a bar feels: itself, its weights, and each bar below as one weight at its hook."""
    hung = (
        Part(each.name, carried_kg[each.name], (each.hook_m, 0.0, 0.0), hold="hung")
        for each in mobile.beams
        if each.above == beam.id
    )
    return beam.rod, *(weight.part for weight in beam.weights), *hung


def _hung_tree(mobile: Mobile) -> MobileBar:
    below_: dict[int | None, list[HungBar]] = {}
    # The lowest first, so that each is whole when the one above takes it in.
    for beam in reversed(mobile.beams):
        parts = (beam.rod, *(weight.part for weight in beam.weights))
        under = tuple(reversed(below_.get(beam.id, ())))
        whole = MobileBar(beam.name, parts, beam.pivot, below=under)
        below_.setdefault(beam.above, []).append(HungBar(whole, (beam.hook_m, 0.0, 0.0), beam.cord_m))
    return below_[None][0].bar
