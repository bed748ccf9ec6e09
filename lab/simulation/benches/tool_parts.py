"""What a tool can be built from: poles of ash, heads that go on them, and a tin, beads, a rod or a plate."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

from lab.files import Look
from lab.mechanics import Box, Cylinder, Part, Rectangle, Shape
from lab.simulation.refused import msg

POLE_RADIUS_M = 0.0125
POLE_KG_M = 0.32
"""What a metre of such a pole weighs: ash of 650 kg/m³."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ToolKind:
    """One thing of the tray.

    name: on tapes.  called: the name of such a part.  title: as it is called in the tray.
    look: how it is drawn, None for by its shape.  shelf: with what it lies in the tray.
    """

    name: str
    called: str
    title: str
    mass_kg: float
    shape: Shape
    look: Look | None = None
    shelf: Literal["handles", "heads", "more"] = "heads"

    def part(self, name: str, at_m: float) -> Part:
        """One of them, its centre on the pole's middle line.  Raises MechanicsError."""
        return Part(name=name, mass_kg=self.mass_kg, at_m=(at_m, 0.0, 0.0), shape=self.shape)


def _pole(length_m: float, title: str) -> ToolKind:
    shape = Cylinder(radius_m=POLE_RADIUS_M, length_m=length_m)
    mass_kg = round(POLE_KG_M * length_m, 3)
    return ToolKind(
        name=f"pole-{length_m * 100:.0f}",
        called="pole",
        title=title,
        mass_kg=mass_kg,
        shape=shape,
        look="pole",
        shelf="handles",
    )


_KINDS = (
    _pole(0.5, msg("short pole")),
    _pole(1.0, msg("pole")),
    _pole(1.5, msg("long pole")),
    ToolKind(name="hook", called="hook", title=msg("hook"), mass_kg=0.42, shape=Box((0.08, 0.02, 0.11)), look="hook"),
    ToolKind(name="blade", called="blade", title=msg("blade"), mass_kg=0.36, shape=Rectangle(0.36, 0.14), look="blade"),
    ToolKind(
        name="ring",
        called="ring",
        title=msg("net ring"),
        mass_kg=0.18,
        shape=Cylinder(radius_m=0.17, length_m=0.01, inner_m=0.163, axis="up"),
        look="ring",
    ),
    ToolKind(
        name="camera", called="camera", title=msg("camera"), mass_kg=0.31, shape=Box((0.09, 0.06, 0.08)), look="camera"
    ),
    ToolKind(
        name="nest-box",
        called="nest box",
        title=msg("nest box"),
        mass_kg=0.65,
        shape=Box((0.16, 0.14, 0.2)),
        look="box",
    ),
    ToolKind(
        name="grip",
        called="grip",
        title=msg("grip"),
        mass_kg=0.09,
        shape=Cylinder(radius_m=0.017, length_m=0.16, inner_m=0.0125),
        shelf="handles",
    ),
    ToolKind(
        name="tin",
        called="tin",
        title=msg("tin"),
        mass_kg=0.2,
        shape=Cylinder(radius_m=0.0375, length_m=0.1, axis="up"),
        look="tin",
        shelf="more",
    ),
    ToolKind(
        name="beads",
        called="beads",
        title=msg("beads"),
        mass_kg=0.1,
        shape=Cylinder(radius_m=0.0105, length_m=0.105, axis="up"),
        look="bead",
        shelf="more",
    ),
    ToolKind(
        name="rod",
        called="rod",
        title=msg("rod"),
        mass_kg=0.06,
        shape=Cylinder(radius_m=0.004, length_m=0.2),
        look="rod",
        shelf="more",
    ),
    ToolKind(
        name="sheet",
        called="plate",
        title=msg("plate"),
        mass_kg=0.08,
        shape=Rectangle(0.12, 0.08),
        look="plate",
        shelf="more",
    ),
)

KINDS: Mapping[str, ToolKind] = MappingProxyType({kind.name: kind for kind in _KINDS})
"""Every part of the tray by its name."""

LOOSE: Mapping[str, ToolKind] = MappingProxyType({kind.name: kind for kind in _KINDS if kind.shelf == "more"})
"""What stands by itself on anything: a tin, beads, a rod, a plate."""

BRASS_KG = (0.05, 0.1, 0.2, 0.5)
"""The brass weights that can be clipped on."""
