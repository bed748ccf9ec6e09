"""How a small upset of a steady glide dies away or grows: the quick nodding and the slow swoop."""

from dataclasses import dataclass
from math import log, pi

import numpy as np
from numpy.typing import NDArray

from lab.mechanics.airframes import Aerodynamics
from lab.mechanics.checks import MechanicsError
from lab.mechanics.tosses import Glide, State, motion_rates, set_glide

Floats = NDArray[np.float64]

NUDGE = 1e-5
"""Step of the central differences, in glide speeds and radians: truncation and round-off are then both some
1e-10 of a rate."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FlightMode:
    """One way an upset goes.  growth_s: 1/s, below 0 where it dies away.  pace_s: of its swing, rad/s, 0 where it
    does not swing."""

    growth_s: float
    pace_s: float

    @property
    def period_s(self) -> float | None:
        """Of one swing, s; None where it does not swing."""
        return 2.0 * pi / self.pace_s if self.pace_s > 0.0 else None

    @property
    def half_s(self) -> float | None:
        """Time in which it halves, s; None where it does not die away."""
        return log(2.0) / -self.growth_s if self.growth_s < 0.0 else None


@dataclass(frozen=True, slots=True, kw_only=True)
class FlightModes:
    """glide: what they are about.  modes: the quickest first, swinging pairs as one; most airframes have two, a
    quick nod and a slow swoop.  spring_s4: product of the four roots, 1/s⁴: below 0 exactly where one upset
    grows without a swing, which is where the margin is below 0."""

    glide: Glide
    modes: tuple[FlightMode, ...]
    spring_s4: float

    @property
    def returns(self) -> bool:
        """Whether every small upset dies away."""
        return all(mode.growth_s < 0.0 for mode in self.modes)


def flight_modes(air: Aerodynamics) -> FlightModes:
    """The modes about the steady glide at which the couple holds the airframe.

    Raises MechanicsError where it is held nowhere short of the stall.  Source: S-65.
    """
    if air.held_lift is None:
        raise MechanicsError(
            f"the couple of {air.couple:.4g} holds this airframe at no lift short of the stall; its margin is "
            f"{air.margin:.4g}, so a couple between 0 and as much would"
        )
    matrix = rate_matrix(air)
    roots = np.linalg.eigvals(matrix)
    kept = sorted((root for root in roots if root.imag >= 0.0), key=abs, reverse=True)
    return FlightModes(
        glide=set_glide(air),
        modes=tuple(FlightMode(growth_s=float(root.real), pace_s=float(root.imag)) for root in kept),
        spring_s4=float(np.linalg.det(matrix)),
    )


def rate_matrix(air: Aerodynamics) -> Floats:
    """How fast u, w (in glide speeds), turning and pitch change for each of them, at the set glide: (4, 4), 1/s.

    Turning is in radians a second.  Source: S-65.
    """
    glide = set_glide(air)
    speed = glide.speed_m_s
    scale = np.array([speed, speed, 1.0, 1.0])
    middle = np.array([np.cos(glide.attack_rad), np.sin(glide.attack_rad), 0.0, glide.climb_rad + glide.attack_rad])
    columns = []
    for nudge in np.eye(4) * NUDGE:
        ahead, behind = (_rates(air, (middle + each) * scale) / scale for each in (nudge, -nudge))
        columns.append((ahead - behind) / (2.0 * NUDGE))
    return np.stack(columns, axis=1)


def _rates(air: Aerodynamics, four: Floats) -> Floats:
    u, w, rate, pitch = (float(each) for each in four)
    state: State = (u, w, rate, pitch, 0.0, 0.0)
    return np.array(motion_rates(air, state)[:4])
