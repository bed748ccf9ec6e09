"""What is on its way: carried by a pointer, or taken up by a press and waiting for a place."""

from __future__ import annotations

from dataclasses import dataclass, replace

from lab.scenes.mobile.view import MobileView
from lab.screens.benches.mobile.keys import TrayThing
from lab.ui.geometry import Point

NOWHERE = -1
"""No bar has this id."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Carried:
    """What a pointer carries. thing: from the tray, None for what hangs already.

    origin: what took it in hand, and where: the bar that it hung from and the place on it, or the place of the ring or
    of the line alone.  offset: from the pointer to its hook.  begun: whether a move was already sent.
    """

    key: str
    thing: TrayThing | None
    origin: tuple[int, float]
    offset: Point
    start: Point
    pointer: Point
    place: tuple[int, float] | None = None
    begun: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Armed:
    """A thing taken up from the tray by a press, waiting for a place. bar, at_m: where it would hang."""

    thing: TrayThing
    bar: int
    at_m: float


def ghost_moved(armed: Armed, step_m: float, down: int, view: MobileView) -> Armed:
    """Along its bar by arrows left and right, to the next or the last bar in reading order by down and up."""
    bars = [beam for beam in view.bench.beams if beam.id != view.coming]
    ids = [beam.id for beam in bars]
    now = ids.index(armed.bar) if armed.bar in ids else 0
    bar = bars[min(max(now + down, 0), len(bars) - 1)]
    at_m = bar.length_m / 2 if down else min(max(armed.at_m + step_m, 0.0), bar.length_m)
    return replace(armed, bar=bar.id, at_m=round(at_m, 9))
