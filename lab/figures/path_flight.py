"""A toss in other axes, solved adaptively: speed and climb of the path in place of speeds along the body.

The coefficients are the lab's; the equations of motion are written anew, and hold while the flow is attached.
"""

from math import cos, sin
from typing import Any

import numpy as np
from scipy.integrate import solve_ivp  # type: ignore[import-untyped]

from lab.mechanics import STANDARD_GRAVITY_M_S2, Aerodynamics, TossMotion, set_glide
from lab.mechanics.airframes import AIR_KG_M3

NUDGE = 1e-6


def path_rates(air: Aerodynamics, state: Any) -> Any:
    """How (speed, climb, pitch, rate, ahead, up) change, each per second."""
    speed, climb, pitch, rate = state[:4]
    turning = rate * air.chord_m / (2.0 * speed)
    lift = air.lift_slope * (pitch - climb) + air.lift_rate * turning
    moment = air.couple + air.moment_slope * (pitch - climb) + air.moment_rate * turning
    force_n = AIR_KG_M3 * speed**2 * air.area_m2 / 2.0
    return np.array([
        -force_n * air.drag(lift) / air.mass_kg - STANDARD_GRAVITY_M_S2 * sin(climb),
        (force_n * lift / air.mass_kg - STANDARD_GRAVITY_M_S2 * cos(climb)) / speed,
        rate,
        force_n * air.chord_m * moment / air.inertia_kg_m2,
        speed * cos(climb),
        speed * sin(climb),
    ])  # fmt: skip


def solved_place_m(air: Aerodynamics, start: TossMotion, seconds: float) -> tuple[float, float]:
    """Ahead and up after a while by an adaptive eighth-order solution, m; right to some 1e-10."""
    first = (start.speed_m_s, start.climb_rad, start.pitch_rad, start.rate_rad_s, start.ahead_m, start.up_m)
    found = solve_ivp(
        lambda _time, state: path_rates(air, state), (0.0, seconds), first, method="DOP853", rtol=1e-12, atol=1e-12
    )
    return float(found.y[4, -1]), float(found.y[5, -1])


def solved_roots_s(air: Aerodynamics) -> Any:
    """Roots of a small upset about the set glide, 1/s, (4,), the quickest first."""
    glide = set_glide(air)
    middle = np.array([glide.speed_m_s, glide.climb_rad, glide.climb_rad + glide.attack_rad, 0.0, 0.0, 0.0])
    columns = [
        (path_rates(air, middle + nudge) - path_rates(air, middle - nudge))[:4] / (2.0 * NUDGE)
        for nudge in np.eye(6)[:4] * NUDGE
    ]
    roots = np.linalg.eigvals(np.stack(columns, axis=1))
    return roots[np.argsort(-np.abs(roots))]
