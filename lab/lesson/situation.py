"""A scene as a learner sees it: the numerals on the screen, and nothing else.

Ways of thinking work on these numerals and not on SI values: adding a weight to an arm gives another answer in grams
and centimetres than in kilograms and metres, and the learner only ever saw the former.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from lab.files import UNITS, Build
from lab.mechanics import Part, extent_m

SAME = 1e-9
"""Relative: two weights or sums closer than this are one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Load:
    """One part.  weight, place, half: its weight, its middle, half its length along, as numerals."""

    name: str
    weight: float
    place: float
    half: float = 0.0


@dataclass(frozen=True, kw_only=True)
class Situation:
    """A scene in numerals.

    loads: the parts without the bar.  bar: the bar, or None for a tool.
    left, right: the ends of the body.  reference: the line that arms are measured from.
    pivot, pad: where it rests and half the width of that rest (side questions).

    It has no slots, so that what many ways of thinking look for is looked for once.
    """

    loads: tuple[Load, ...]
    bar: Load | None
    left: float
    right: float
    reference: float = 0.0
    pivot: float = 0.0
    pad: float = 0.0

    @cached_property
    def everything(self) -> tuple[Load, ...]:
        """Every part that weighs something."""
        return self.loads if self.bar is None else (*self.loads, self.bar)

    @property
    def middle(self) -> float:
        """Half-way between the ends of the body."""
        return (self.left + self.right) / 2

    @cached_property
    def beam(self) -> Load | None:
        """What everything else sits on: the bar, or the longest part of a tool; None where two are as long."""
        return self.bar if self.bar is not None else longest(self.loads)

    @cached_property
    def heaviest(self) -> Load | None:
        """The heaviest part beside the bar; None where two are as heavy."""
        ranked = sorted(self.loads, key=lambda load: load.weight, reverse=True)
        if not ranked or (len(ranked) > 1 and ranked[0].weight - ranked[1].weight <= SAME * abs(ranked[0].weight)):
            return None
        return ranked[0]

    @cached_property
    def riders(self) -> tuple[Load, ...]:
        """Everything that sits on the beam."""
        beam = self.beam
        return tuple(load for load in self.loads if load is not beam)


def longest(loads: tuple[Load, ...]) -> Load | None:
    """Return the one part that reaches farther along than every other, or None where there is no such part."""
    ranked = sorted(loads, key=lambda load: load.half, reverse=True)
    if not ranked or ranked[0].half == 0 or (len(ranked) > 1 and ranked[1].half == ranked[0].half):
        return None
    return ranked[0]


def situation_of(build: Build, *, parts: tuple[Part, ...] | None = None) -> Situation:
    """Return a build as numerals in its own units.  A build has at least one part or a bar.

    parts: everything in it that weighs something, where that is known already.
    """
    units = UNITS[build.units]
    loads = tuple(
        Load(
            name=part.name,
            weight=units.from_kg(part.signed_mass_kg),
            place=units.from_m(part.at_m[0]),
            half=units.from_m(extent_m(part.shape)[0] / 2),
        )
        for part in (build.all_parts if parts is None else parts)
    )
    bar, loads = (None, loads) if build.bar is None else (loads[0], loads[1:])
    body = loads if bar is None else (bar,)
    return Situation(
        loads=loads,
        bar=bar,
        left=min(load.place - load.half for load in body),
        right=max(load.place + load.half for load in body),
        reference=units.from_m(build.reference_m[0]),
        pivot=0.0 if build.pivot is None else units.from_m(build.pivot.at_m),
        pad=0.0 if build.pivot is None else units.from_m(build.pivot.pad_m),
    )
