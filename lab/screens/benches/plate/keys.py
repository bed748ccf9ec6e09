"""The keys of what is taken up and pressed at the hung plate: the tray, the strip, what acts on the lines."""

from __future__ import annotations

TRAY_KG = (0.010, 0.020, 0.050)
TRAY, TRAY_PREFIX, TRAY_HOLE = "tray", "tray-", "tray-hole"
CANCEL = "put-cancel"
ALONG, UP = "picked-along", "picked-up"
SHEET_OF, OUTLINES, SHEETS = "sheet", "outlines", "sheets"
MOMENTS, AXIS = "moments", "moment-axis"
DRAW, RUB_OUT = "draw-line", "rub-out"

SHEETS_KG_M2 = {"card": 0.7, "plywood-4": 2.4, "plywood-8": 4.8, "steel": 7.85}
"""What a square metre of each sheet weighs, kg: card of 1 mm (700 kg/m³), birch plywood of 4 and 8 mm (600 kg/m³),
steel of 1 mm (7850 kg/m³)."""


def tray_key(mass_kg: float) -> str:
    """The key of a weight in the tray."""
    return f"{TRAY_PREFIX}{mass_kg * 1000:.4g}"


def tray_mass_kg(key: str) -> float | None:
    """The mass of a weight of the tray by its key; None for any other key."""
    return next((mass for mass in TRAY_KG if tray_key(mass) == key), None)


def is_of_tray(key: str) -> bool:
    """Whether something of the tray is meant: a weight or a hole."""
    return key == TRAY_HOLE or tray_mass_kg(key) is not None
