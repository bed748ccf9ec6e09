"""A body hung by one point: how it comes to rest, and the plumb line through it."""

from collections.abc import Iterable
from dataclasses import dataclass
from math import atan2, hypot

import numpy as np

from lab.mechanics.axes import as_vector
from lab.mechanics.checks import Vector, vector
from lab.mechanics.moments import balance_of
from lab.mechanics.parts import Part, checked
from lab.mechanics.pivots import LEVEL_SHARE
from lab.mechanics.plumb_lines import PlumbLine


@dataclass(frozen=True, slots=True, kw_only=True)
class HangingAttitude:
    """How a hung body rests: its yaw is free.  pitch_rad: nose up positive, from −π/2 to π/2.  roll_rad: right
    wing down positive; None where it hangs nose or tail straight up, and roll means nothing.
    drop_m: from the hook down to the balance point."""

    pitch_rad: float
    roll_rad: float | None
    drop_m: float


def hanging_attitude(parts: Iterable[Part], hook_m: Vector) -> HangingAttitude | None:
    """How a body rests when hung by a point: its balance point straight below the hook.

    hook_m: along, across, up, in the body's own coordinates.  Its own hung parts act at their hooks.
    None where the hook is the balance point itself: it then rests any way.  Raises MechanicsError.  Source: S-44.
    """
    line = plumb_line(parts, hook_m)
    if line is None:
        return None
    down, drop = line
    pitch, roll = attitude_of(down.down)
    return HangingAttitude(pitch_rad=pitch, roll_rad=roll, drop_m=drop)


def attitude_of(down: Vector) -> tuple[float, float | None]:
    """Pitch and roll, rad, of a body in whose own axes down lies so; their senses are those of `HangingAttitude`.

    down: along, across, up, of length one.  Roll is None where the nose looks straight up or down.  Source: S-44.
    """
    along, across, up = down
    sideways = hypot(across, up)
    return atan2(along, sideways), None if sideways <= LEVEL_SHARE else atan2(across, -up)


def plumb_line(parts: Iterable[Part], hook_m: Vector) -> tuple[PlumbLine, float] | None:
    """The plumb line through a hung body, in the body's own axes, and how far down it the balance point lies, m.

    None where the hook is the balance point.  Raises MechanicsError.  Source: S-44.
    """
    build = checked(parts)
    hook = vector("hook", hook_m, "m")
    away = np.subtract(balance_of(build), hook)
    drop = float(np.linalg.norm(away))
    # The balance point is known no nearer than round-off of the largest distance that went into it.
    reach = max(float(np.linalg.norm(np.subtract(part.at_m, hook))) for part in build)
    if drop <= LEVEL_SHARE * reach:
        return None
    return PlumbLine(through_m=hook, down=as_vector(away)), drop
