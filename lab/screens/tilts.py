"""How far what stands on a bench is tilted, once it has been let go: what is seen, as one angle to be heard."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    # For the annotations alone: a bench that nobody has been at yet is not loaded to be listened to.
    from lab.simulation.benches.finger import FingerTool
    from lab.simulation.benches.hanging_bar import HangingBar
    from lab.simulation.benches.mobile import Mobile
    from lab.simulation.benches.plate import HungPlate
    from lab.simulation.benches.scales import ScalesBench
    from lab.simulation.benches.two_fingers import TwoFingers

LEVEL_RAD = math.radians(0.25)
"""Nearer to level than this is level: two pixels at the end of a bar of 1000, about where an eye says so too."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tilt:
    """angle_rad: anticlockwise positive, so the left end is down; from −π to π.  moving: not come to rest yet."""

    angle_rad: float
    moving: bool


def tilt_of(model: object) -> Tilt | None:
    """How what a screen shows is tilted; None while it is held or level, and where there is no bench.

    model: what the screen is shown (`lab/screens/screen.py`).
    """
    bench: Any = getattr(model, "bench", None)
    angle_of = _TILTED.get(type(bench).__name__)
    if angle_of is None or bench.held:
        return None
    angle_rad = math.remainder(angle_of(bench), math.tau)
    return None if abs(angle_rad) < LEVEL_RAD else Tilt(angle_rad=angle_rad, moving=bench.moving)


def _bar_rad(bench: HangingBar) -> float:
    return bench.swing.angle_rad


def _tool_rad(bench: FingerTool) -> float:
    return bench.motion.angle_rad


def _plate_rad(bench: HungPlate) -> float:
    return bench.angle_rad


def _mobile_rad(bench: Mobile) -> float:
    """Of the topmost bar that does not lie level for good: only one can be told at a time."""
    angles = (swing.angle_rad for swing in bench.swings if not swing.settled or abs(swing.angle_rad) >= LEVEL_RAD)
    return next(angles, 0.0)


def _scales_rad(bench: ScalesBench) -> float:
    """Along, as seen from the front, whichever way a frame on three scales tips."""
    if bench.tipping is None:
        return 0.0
    return math.asin(bench.tipping.way[0] * math.sin(bench.motion.angle_rad))


def _two_fingers_rad(bench: TwoFingers) -> float:
    return bench.motion.angle_rad


_TILTED: Mapping[str, Callable[[Any], float]] = MappingProxyType(
    {
        "HangingBar": _bar_rad,
        "FingerTool": _tool_rad,
        "BuiltTool": _tool_rad,
        "Mobile": _mobile_rad,
        "HungPlate": _plate_rad,
        "ScalesBench": _scales_rad,
        "TwoFingers": _two_fingers_rad,
    }
)
"""The tilt of a bench that is let go, by the class of its state."""
