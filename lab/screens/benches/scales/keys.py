"""The keys of what is taken up, typed and pressed at the scales bench: the tray's weights, the guess, the strip."""

from __future__ import annotations

from collections.abc import Mapping
from math import floor, log10
from types import MappingProxyType

from lab.outline.words import msg
from lab.simulation.benches.tool_parts import LOOSE, ToolKind

TRAY, TRAY_PREFIX = "tray", "tray-"
ACROSS, CANCEL = "picked-across", "put-cancel"
READING, COUNT = "guess-reading", "scale-count"
SHELF = "shelf"
SHELVES: Mapping[str, str] = MappingProxyType({"brass": msg("brass"), "more": msg("more")})
"""What lies in the tray together, drawn to one scale: its key and what it is called."""
SERIES = (0.050, 0.100, 0.200, 0.500)
"""What a tray holds for a body of some hundred grams, kg; for others ten, a hundred … times that."""


def tray_kg(body_kg: float) -> tuple[float, ...]:
    """The weights of the tray: the largest is somewhat lighter than the body, or as heavy as it."""
    power = floor(log10(body_kg) + 0.35)
    return tuple(round(mass * 10.0**power, 9) for mass in SERIES) if power else SERIES


def tray_key(mass_kg: float) -> str:
    """The key of a tray item."""
    return f"{TRAY_PREFIX}{mass_kg * 1000:.4g}"


def loose_kind(key: str) -> ToolKind | None:
    """What of the shelf of other things a key means; None for brass, and for any other key."""
    return LOOSE.get(key.removeprefix(TRAY_PREFIX)) if key.startswith(TRAY_PREFIX) else None


def tray_mass_kg(key: str, body_kg: float) -> float | None:
    """The mass of a tray item by its key; None for any other key."""
    kind = loose_kind(key)
    if kind is not None:
        return kind.mass_kg
    return next((mass for mass in tray_kg(body_kg) if tray_key(mass) == key), None)
