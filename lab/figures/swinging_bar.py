"""The bar that the swing is measured on: in the lab's own mechanics, in pymunk, and solved adaptively.

1 m, 150 g, on a pin 2 cm above its middle, with three clamped weights that leave it level, let go at 15°.
"""

from math import cos, radians, sin
from typing import Any

import pymunk
from scipy.integrate import solve_ivp  # type: ignore[import-untyped]

from lab.mechanics import (
    STANDARD_GRAVITY_M_S2,
    TICK_S,
    Part,
    Pivot,
    Pivoted,
    Rod,
    Swing,
    pivoted,
    swing_tick,
)

PARTS = (
    Part("bar", 0.150, (0.0, 0.0, 0.0), Rod(1.0)),
    Part("left weight", 0.100, (-0.30, 0.0, 0.0)),
    Part("right weight", 0.200, (0.20, 0.0, 0.0)),
    Part("small weight", 0.050, (-0.20, 0.0, 0.0)),
)
PIVOT = Pivot(0.0, up_m=0.02)
LET_GO_RAD = radians(15.0)


def body() -> Pivoted:
    """The bar as its pin feels it."""
    return pivoted(PARTS, PIVOT)


def ours_angle_rad(seconds: float) -> float:
    """The angle after a while by the lab's ticks, rad."""
    bar, swing = body(), Swing(LET_GO_RAD)
    for _ in range(round(seconds / TICK_S)):
        swing = swing_tick(bar, PIVOT, swing)
    return swing.angle_rad


def solved_angle_rad(seconds: float) -> float:
    """The same angle by an adaptive eighth-order solution, rad; right to some 1e-11."""
    bar = body()

    def rates(_time_s: float, state: Any) -> tuple[float, float]:
        angle, rate = state
        moment = bar.lever_kg_m * cos(angle) + bar.drop_kg_m * sin(angle)
        return rate, -STANDARD_GRAVITY_M_S2 * moment / bar.inertia_kg_m2

    solution = solve_ivp(rates, (0.0, seconds), (LET_GO_RAD, 0.0), method="DOP853", rtol=1e-12, atol=1e-13)
    return float(solution.y[0, -1])


def pymunk_bar() -> tuple[pymunk.Space, pymunk.Body]:
    """The same bar in pymunk, let go: one body with the same mass and inertia, pinned to the room."""
    bar = body()
    below_m = bar.drop_kg_m / bar.mass_kg
    space = pymunk.Space()
    space.gravity = (0.0, -STANDARD_GRAVITY_M_S2)
    turning = pymunk.Body(bar.mass_kg, bar.inertia_kg_m2 - bar.mass_kg * below_m**2)
    turning.position = (below_m * sin(LET_GO_RAD), -below_m * cos(LET_GO_RAD))
    turning.angle = LET_GO_RAD
    space.add(turning, pymunk.PivotJoint(space.static_body, turning, (0.0, 0.0)))
    return space, turning


def pymunk_angle_rad(seconds: float) -> float:
    """The same angle by pymunk at the lab's tick, rad."""
    space, turning = pymunk_bar()
    for _ in range(round(seconds / TICK_S)):
        space.step(TICK_S)
    return float(turning.angle)
