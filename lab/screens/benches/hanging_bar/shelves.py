"""The shelves of the hanging bar's tray: brass, tins, beads, and a rod and a plate."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from lab.outline.words import msg
from lab.screens.benches.hanging_bar.keys import TRAY_KG, TRAY_PREFIX, tray_key, tray_mass_kg
from lab.simulation import Hang, Hung
from lab.simulation.benches.bar_parts import KINDS
from lab.simulation.tool_commands import FitPart

SHELF = "shelf"
SHELVES: Mapping[str, str] = MappingProxyType(
    {"brass": msg("brass"), "tins": msg("tins"), "beads": msg("beads"), "more": msg("rods")}
)
"""What lies in the tray together, drawn to one scale: its key and what it is called."""

_LYING: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {"tins": ("tin",), "beads": ("beads",), "more": ("rod", "plate")}
)


def shelf_keys(shelf: str) -> tuple[str, ...]:
    """The keys of what lies on a shelf."""
    if shelf not in _LYING:
        return tuple(tray_key(mass_kg) for mass_kg in TRAY_KG)
    return tuple(f"{TRAY_PREFIX}{name}" for name in _LYING[shelf])


def tray_weight(key: str) -> Hung | None:
    """What lies in the tray under a key, as it would hang at 0; None for any other key."""
    mass_kg = tray_mass_kg(key)
    if mass_kg is not None:
        return Hung(id=0, name="", mass_kg=mass_kg, at_m=0.0)
    kind = KINDS.get(key.removeprefix(TRAY_PREFIX)) if key.startswith(TRAY_PREFIX) else None
    return None if kind is None else kind.part(0, kind.title, 0.0)


def hung_on(weight: Hung, at_m: float) -> Hang | FitPart:
    """The command that hangs something of the tray."""
    kind = next((kind for kind in KINDS.values() if weight.look == kind.look), None)
    return Hang(weight.mass_kg, at_m) if kind is None else FitPart(kind.name, at_m)
