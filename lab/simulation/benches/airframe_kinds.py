"""What can be put on an airframe from the tray."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from lab.files import Look
from lab.mechanics import Box, Cylinder, Shape
from lab.simulation.refused import msg

TANK_M3 = 2e-4
TANK_FILL_M3 = 1e-4
FUEL_KG_M3 = 800.0
"""A tank of 200 mL, half full of fuel of 0.8 g in a millilitre."""

TANK = "tank"


@dataclass(frozen=True, slots=True, kw_only=True)
class AirframeKind:
    """One thing of the tray.  name: on tapes.  called: the name of such a part.  title: as the tray has it."""

    name: str
    called: str
    title: str
    mass_kg: float
    shape: Shape
    look: Look


_KINDS = (
    AirframeKind(
        name="ballast",
        called="ballast",
        title=msg("ballast"),
        mass_kg=0.020,
        shape=Cylinder(radius_m=0.0072, length_m=0.0144, axis="up"),
        look="weight",
    ),
    AirframeKind(
        name="battery",
        called="battery",
        title=msg("battery"),
        mass_kg=0.150,
        shape=Box((0.06, 0.035, 0.03)),
        look="battery",
    ),
    AirframeKind(
        name="camera", called="camera", title=msg("camera"), mass_kg=0.080, shape=Box((0.05, 0.04, 0.04)), look="camera"
    ),
    AirframeKind(
        name="motor",
        called="motor",
        title=msg("motor"),
        mass_kg=0.120,
        shape=Cylinder(radius_m=0.018, length_m=0.045),
        look="motor",
    ),
    AirframeKind(
        name=TANK,
        called="tank",
        title=msg("tank"),
        mass_kg=TANK_FILL_M3 * FUEL_KG_M3,
        shape=Box((0.09, 0.06, 0.037)),
        look="tank",
    ),
)

KINDS: Mapping[str, AirframeKind] = MappingProxyType({kind.name: kind for kind in _KINDS})
"""Everything in the tray by its name."""
