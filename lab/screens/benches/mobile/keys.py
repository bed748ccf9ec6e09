"""What the tray of the mobile holds, and the keys of what is pressed there and in the strip for what is picked."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from lab.outline.words import msg
from lab.simulation.benches.bar_parts import KINDS

TRAY, LEVELS = "tray", "levels"
RING = "picked-ring"
CANCEL = "hang-cancel"


@dataclass(frozen=True, slots=True, kw_only=True)
class TrayThing:
    """Something to hang. name: as it is then called, None for brass, which is called by its weight.

    shown: its name in the tray.  length_m: of a bar, None for a weight.
    """

    key: str
    mass_kg: float
    shown: str = ""
    name: str | None = None
    look: str | None = None
    length_m: float | None = None


TRAY_THINGS = (
    TrayThing(key="tray-bar-20", mass_kg=0.015, length_m=0.20),
    TrayThing(key="tray-bar-36", mass_kg=0.030, length_m=0.36),
    TrayThing(key="tray-gull", mass_kg=0.030, shown=msg("gull"), name="gull", look="gull"),
    TrayThing(key="tray-float", mass_kg=0.040, shown=msg("float"), name="float", look="float"),
    TrayThing(key="tray-20", mass_kg=0.020),
)
"""What can be hung: two bars, a gull, a float, brass. What a thing weighs can be typed once it hangs."""

LOOSE_THINGS = tuple(
    TrayThing(key=f"tray-{kind.name}", mass_kg=kind.mass_kg, shown=kind.title, name=kind.called, look=kind.look)
    for kind in KINDS.values()
)
"""The other shelf: a tin, beads, a rod and a plate."""

SHELF = "shelf"
SHELVES: Mapping[str, str] = MappingProxyType({"things": msg("bars"), "more": msg("more")})
"""What lies in the tray together: its key and what it is called."""


def lying_on(shelf: str) -> tuple[TrayThing, ...]:
    """What lies on a shelf."""
    return TRAY_THINGS if shelf == "things" else LOOSE_THINGS


def tray_thing(key: str) -> TrayThing | None:
    """The thing of a key; None for any other key."""
    return next((thing for thing in (*TRAY_THINGS, *LOOSE_THINGS) if thing.key == key), None)
