"""The keys of what is taken up and pressed at the tool: the tray's parts on their shelves, the strip."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from lab.mechanics import Part
from lab.outline.words import msg
from lab.simulation import Hang
from lab.simulation.benches.tool_parts import BRASS_KG, KINDS
from lab.simulation.tool_commands import FitPart

TRAY_PREFIX = "tray-"
LENGTH = "picked-length"
HOLDING, CANCEL, SHELF = "picked-hold", "fit-cancel", "shelf"

SHELVES: Mapping[str, str] = MappingProxyType(
    {"handles": msg("handles"), "heads": msg("heads"), "brass": msg("brass"), "more": msg("more")}
)
"""What lies in the tray together, drawn to one scale: its key and what it is called."""


def tray_keys(shelf: str) -> tuple[str, ...]:
    """The keys of what lies on a shelf."""
    if shelf == "brass":
        return tuple(f"{TRAY_PREFIX}{mass_kg * 1000:.4g}" for mass_kg in BRASS_KG)
    return tuple(f"{TRAY_PREFIX}{kind.name}" for kind in KINDS.values() if kind.shelf == shelf)


def tray_part(key: str) -> tuple[Part, str] | None:
    """A part of the tray by its key, and how it is drawn; None for any other key."""
    name = key.removeprefix(TRAY_PREFIX)
    if not key.startswith(TRAY_PREFIX):
        return None
    if name in KINDS:
        kind = KINDS[name]
        return kind.part(kind.called, 0.0), kind.look or "sleeve"
    mass_kg = _brass_kg(key)
    return None if mass_kg is None else (Part("brass", mass_kg, (0.0, 0.0, 0.0)), "weight")


def put_on(key: str, at_m: float) -> FitPart | Hang:
    """The command that puts a part of the tray on the tool."""
    mass_kg = _brass_kg(key)
    return FitPart(key.removeprefix(TRAY_PREFIX), at_m) if mass_kg is None else Hang(mass_kg, at_m, "clamped")


def _brass_kg(key: str) -> float | None:
    return next((mass_kg for mass_kg in BRASS_KG if key == f"{TRAY_PREFIX}{mass_kg * 1000:.4g}"), None)
