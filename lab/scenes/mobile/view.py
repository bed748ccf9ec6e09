"""What a picture of a mobile is made from."""

from __future__ import annotations

from dataclasses import dataclass, replace

from lab.scenes.readings import Readings
from lab.simulation.benches import Mobile
from lab.ui.geometry import Point
from lab.ui.look import Look

REFERENCE, BAR, HOOK, WEIGHT = "reference", "bar-", "hook-", "weight-"
"""Keys of what can be grabbed: a bar by its wood, a bar by its hook on the bar above, a weight; with their ids."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ghost:
    """A thing on its way from the tray.

    length_m: of a bar, None for a weight.  bar, at_m: where it would hang; None while it is over no bar.
    pointer: where it is held, None where the keyboard moves it.
    """

    mass_kg: float
    look: str | None = None
    length_m: float | None = None
    bar: int | None = None
    at_m: float = 0.0
    pointer: Point | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class MobileView:
    """A moment of the mobile as it is to be drawn.

    bench: with what is on its way hung already, under the id `coming`.  angles_rad: of each bar now, empty for level.
    picked: key of what is picked; carried: of what a pointer carries along the bars.
    ghost: a thing from the tray that is over no bar.  numbers: whether names and weights are written.
    told: whether it may be seen which bar is out.  lines: whether the reference line is there.
    foot_px: height at the lower edge that something else covers.
    laid_for: the mobile that the picture is laid out for, None for the one that is drawn.
    """

    bench: Mobile
    look: Look
    readings: Readings
    angles_rad: tuple[float, ...] = ()
    picked: str = ""
    carried: str = ""
    coming: int | None = None
    ghost: Ghost | None = None
    numbers: bool = False
    told: bool = False
    lines: bool = False
    foot_px: float = 0.0
    laid_for: Mobile | None = None


def still(bench: Mobile) -> Mobile:
    """A mobile without what changes while it moves: what a picture is laid out by."""
    return replace(bench, held=True, swings=(), turnings=(), guess=None)


def angles_between(previous: Mobile, bench: Mobile, fraction: float) -> tuple[float, ...]:
    """The angles to draw at a fraction of the way between two ticks."""
    now = tuple(swing.angle_rad for swing in bench.swings)
    if bench.held or previous.held or len(previous.swings) != len(now):
        return now
    before = (swing.angle_rad for swing in previous.swings)
    return tuple(was + fraction * (angle - was) for was, angle in zip(before, now, strict=True))


def number_of(key: str, prefix: str) -> int | None:
    """The id in a key, where it begins so."""
    number = key.removeprefix(prefix)
    return int(number) if key.startswith(prefix) and number.isdigit() else None
