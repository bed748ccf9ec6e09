"""A build: a bar or a tool with its parts, what holds it, and how it likes to be shown. All SI."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from types import MappingProxyType
from typing import TYPE_CHECKING, Literal

from lab import mechanics
from lab.mechanics import Part, Pivot, Rod, Vector

if TYPE_CHECKING:
    # For the annotations alone: what only some builds have is loaded with the first of them.
    from lab.mechanics import Group, Limits, Surface, Tank

View = Literal["plain", "numbers", "all"]
Bench = Literal["bar", "tool", "plate", "scales", "fingers", "mobile", "airframe"]
"""What a build can stand on in free build."""
Tensor = tuple[Vector, Vector, Vector]
Look = Literal[
    "hook", "pole", "blade", "ring", "camera", "box", "weight",
    "fuselage", "wing", "tail", "fin", "motor", "propeller", "battery", "tank", "sail", "plate",
    "gull", "float", "tin", "bead", "rod",
]  # fmt: skip

FORMAT = 1
"""The number of the file format that this version reads and writes."""

ORIGIN_M: Vector = (0.0, 0.0, 0.0)
NO_LOOKS: Mapping[str, str] = MappingProxyType({})


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """The bar that everything else lies on.

    length_m, mass_kg, depth_m: > 0; depth is its height as drawn.  left_m: where its left end is.
    """

    name: str
    length_m: float
    mass_kg: float
    left_m: float
    depth_m: float

    @property
    def right_m(self) -> float:
        """Where its right end is."""
        return self.left_m + self.length_m

    def as_part(self) -> Part:
        """The bar as a part of kind rod, its centre half-way along."""
        centre_m = (self.left_m + self.length_m / 2, 0.0, 0.0)
        return Part(name=self.name, mass_kg=self.mass_kg, at_m=centre_m, shape=Rod(length_m=self.length_m))


@dataclass(frozen=True, slots=True, kw_only=True)
class Support:
    """A place that holds the build up from below. at_m: along, across, up.

    friction: its static and its kinetic coefficient; None where nothing is said.
    """

    name: str
    at_m: Vector
    friction: tuple[float, float] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Build:
    """What a build file says, in SI.

    units: the name of the unit system the file is written in and is shown in (a key of UNITS).
    reference_m: where arms are measured from.  parts: those in no group, without the bar, in the file's order.
    groups: the outermost ones, each with its parts and then its groups in the file's order.
    tanks, surfaces, limits: what only some builds have.  `all_parts` is what weighs.
    bench: what it stands on in free build; None where what it holds tells.
    looks: how to draw a part, by its row's name; a hint only, parts without one are drawn by shape.
    """

    title: str
    units: str = "g-cm"
    reference_m: Vector = ORIGIN_M
    view: View = "plain"
    bench: Bench | None = None
    bar: Bar | None = None
    parts: tuple[Part, ...] = ()
    groups: tuple[Group, ...] = ()
    tanks: tuple[Tank, ...] = ()
    surfaces: tuple[Surface, ...] = ()
    limits: Limits | None = None
    pivot: Pivot | None = None
    supports: tuple[Support, ...] = ()
    looks: Mapping[str, str] = field(default_factory=lambda: NO_LOOKS, hash=False)

    @property
    def all_parts(self) -> tuple[Part, ...]:
        """Every part that weighs something: the bar, lone parts, groups' parts named `group/part`, tanks' contents."""
        loads = self.loads
        return loads if self.bar is None else (self.bar.as_part(), *loads)

    @property
    def loads(self) -> tuple[Part, ...]:
        """Every part that weighs something but the bar."""
        if not self.groups and not self.tanks:
            return self.parts
        return (*self.parts, *mechanics.flattened(self.groups), *mechanics.tank_parts(self.tanks))

    @property
    def is_airframe(self) -> bool:
        """Whether it has what only something that flies has: surfaces, or limits to its balance point."""
        return bool(self.surfaces) or self.limits is not None

    def loose(self) -> Build:
        """The same things with nothing to hold them together: groups and tanks as plain parts, for a bench."""
        if not self.groups and not self.tanks:
            return self
        looks = {tank.name: "tank" for tank in self.tanks} | dict(self.looks)
        return replace(self, parts=self.loads, groups=(), tanks=(), looks=MappingProxyType(looks))
