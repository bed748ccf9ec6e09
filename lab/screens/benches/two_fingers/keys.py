"""The keys of what is taken up and pressed at the two fingers: the tray's weights, the strip, what stops the hands."""

from __future__ import annotations

TRAY_KG = (0.050, 0.100, 0.200, 0.500)
TRAY, TRAY_PREFIX = "tray", "tray-"
CANCEL, FORGET = "stand-cancel", "meeting-forget"
GRIP, STATIC, KINETIC = "picked-grip", "picked-static", "picked-kinetic"
STOP, MOMENTS = "stop-hands", "moments"


def tray_key(mass_kg: float) -> str:
    """The key of a tray item."""
    return f"{TRAY_PREFIX}{mass_kg * 1000:.4g}"


def tray_mass_kg(key: str) -> float | None:
    """The mass of a tray item by its key; None for any other key."""
    return next((mass for mass in TRAY_KG if tray_key(mass) == key), None)
