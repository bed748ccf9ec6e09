"""The three answers to which end will drop."""

from __future__ import annotations

from collections.abc import Mapping

from lab.outline.words import msg
from lab.simulation import Side

SIDES: tuple[Side, ...] = ("left", "level", "right")
SIDE_NAMES: Mapping[str, str] = {"left": msg("left"), "level": msg("level"), "right": msg("right")}
