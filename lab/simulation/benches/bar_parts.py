"""What hangs on the bar besides brass: tins of water, beads on a cord, a rod along the bar, a plate."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType

from lab.files import Bar, Look
from lab.mechanics import Cylinder, Point, Rectangle, Rod, Shape, extent_m
from lab.simulation.benches.hanging_bar import Hung
from lab.simulation.commands import Hold
from lab.simulation.refused import msg

TIN_KG, TIN_HOLDS_KG = 0.040, 0.400
"""An empty tin, and the water that fills it: of the litre that a kilogram takes, 400 mL."""

BEAD_KG, MOST_BEADS = 0.020, 10
"""One bead, and how many a cord takes."""

_ROUND_OFF_KG = 1e-9
"""Weights that come out of a file or a sum this near to a bound are at it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BarKind:
    """One thing of the tray.

    name: on tapes.  called: the name of such a part.  title: as it is called in the tray.  mass_kg: as it is taken up.
    least_kg, most_kg: what it can weigh, None where nothing bounds it.
    """

    name: str
    called: str
    title: str
    mass_kg: float
    look: Look
    shape: Shape
    hold: Hold = "hung"
    least_kg: float | None = None
    most_kg: float | None = None

    def part(self, number: int, name: str, at_m: float) -> Hung:
        """One of them on the bar."""
        return Hung(
            id=number, name=name, mass_kg=self.mass_kg, at_m=at_m, hold=self.hold, shape=self.shape, look=self.look
        )

    def can_weigh(self, mass_kg: float) -> bool:
        """Whether one of them can weigh so much: a tin no more than when full, beads by whole beads."""
        if self.least_kg is None or self.most_kg is None:
            return True
        if not self.least_kg - _ROUND_OFF_KG <= mass_kg <= self.most_kg + _ROUND_OFF_KG:
            return False
        return self.look != "bead" or abs(mass_kg - round(mass_kg / BEAD_KG) * BEAD_KG) <= _ROUND_OFF_KG


_KINDS = (
    BarKind(
        name="tin",
        called="tin",
        title=msg("tin"),
        mass_kg=TIN_KG,
        look="tin",
        shape=Cylinder(radius_m=0.0375, length_m=0.1, axis="up"),
        least_kg=TIN_KG,
        most_kg=TIN_KG + TIN_HOLDS_KG,
    ),
    BarKind(
        name="beads",
        called="beads",
        title=msg("beads"),
        mass_kg=BEAD_KG,
        look="bead",
        shape=Point(),
        least_kg=BEAD_KG,
        most_kg=BEAD_KG * MOST_BEADS,
    ),
    BarKind(
        name="rod", called="rod", title=msg("rod"), mass_kg=0.060, look="rod", shape=Rod(length_m=0.2), hold="clamped"
    ),
    BarKind(name="plate", called="plate", title=msg("plate"), mass_kg=0.080, look="plate", shape=Rectangle(0.12, 0.08)),
)

KINDS: Mapping[str, BarKind] = MappingProxyType({kind.name: kind for kind in _KINDS})
"""Every part of the tray by its name."""


def kind_of(weight: Hung) -> BarKind | None:
    """What of the tray it is; None for brass, and for what only a file describes."""
    return next((kind for kind in _KINDS if _is(weight, kind)), None)


def of_look(look: str | None, mass_kg: float) -> Hung | None:
    """A part of the tray by its look, weighing so much; None for brass, and for what none of them can weigh."""
    kind = next((kind for kind in _KINDS if kind.look == look), None)
    return None if kind is None or not kind.can_weigh(mass_kg) else replace(kind.part(0, "", 0.0), mass_kg=mass_kg)


def _is(weight: Hung, kind: BarKind) -> bool:
    alike = (weight.look, weight.shape, weight.hold) == (kind.look, kind.shape, kind.hold)
    return alike and kind.can_weigh(weight.mass_kg)


def water_kg(weight: Hung) -> float | None:
    """The water in a tin; None for anything else."""
    kind = kind_of(weight)
    return max(weight.mass_kg - TIN_KG, 0.0) if kind is not None and kind.look == "tin" else None


def bead_count(weight: Hung) -> int | None:
    """How many beads are on the cord; None for anything else."""
    kind = kind_of(weight)
    return round(weight.mass_kg / BEAD_KG) if kind is not None and kind.look == "bead" else None


def filled_kg(water_ml: float) -> float:
    """What a tin weighs with so much water, 1 g to the millilitre."""
    return round(TIN_KG + water_ml / 1000.0, 9)


def strung_kg(count: int) -> float:
    """What so many beads weigh."""
    return round(count * BEAD_KG, 9)


def span_m(bar: Bar, weight: Hung) -> tuple[float, float]:
    """Between which places on the bar it can be: what lies along the bar stays on it with its whole length."""
    kind = kind_of(weight)
    half_m = extent_m(weight.shape)[0] / 2 if kind is not None and kind.hold == "clamped" else 0.0
    half_m = min(half_m, bar.length_m / 2)
    return bar.left_m + half_m, bar.right_m - half_m
