"""Shades between two colours, for grain and shine: opaque, so that they look the same on any ground."""

from __future__ import annotations


def between(first: str, second: str, share: float) -> str:
    """The colour that lies `share` of the way from one "#RRGGBB" to another."""
    pairs = ((int(first[i : i + 2], 16), int(second[i : i + 2], 16)) for i in (1, 3, 5))
    return "#" + "".join(f"{round(a + share * (b - a)):02X}" for a, b in pairs)
