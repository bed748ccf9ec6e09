"""The keys of what is taken up and pressed at the hanging bar: the tray's weights, the strip for what is picked."""

from __future__ import annotations

TRAY_KG = (0.050, 0.100, 0.200, 0.500)
TRAY_PREFIX = "tray-"
HOLDING = "picked-hold"
CANCEL = "hang-cancel"


def tray_key(mass_kg: float) -> str:
    """The key of a tray item."""
    return f"{TRAY_PREFIX}{mass_kg * 1000:.4g}"


def tray_mass_kg(key: str) -> float | None:
    """The mass of a tray item by its key; None for any other key."""
    return next((mass for mass in TRAY_KG if tray_key(mass) == key), None)
