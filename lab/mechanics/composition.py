"""One step of a body turning about a fixed axis under its weight: a sixth-order symplectic composition."""

from itertools import pairwise
from math import cos, expm1, sin

# Nine kick-and-drift steps of these shares of the whole step, the same forwards and backwards, cancel every
# error below the seventh power.  They add up to 1; a changed digit costs the order.  Source: S-06.
SHARES = (
    0.39216144400731413928,
    0.33259913678935943860,
    -0.70624617255763935981,
    0.082213596293550800230,
    0.79854399093482996340,
    0.082213596293550800230,
    -0.70624617255763935981,
    0.33259913678935943860,
    0.39216144400731413928,
)
FIRST_DRIFT = SHARES[0] / 2.0
# Each kick with the drift that follows it: the half drifts of neighbours joined.
KICKS_AND_DRIFTS = tuple((kick, (kick + after) / 2.0) for kick, after in pairwise((*SHARES, 0.0)))


def turned(
    angle_rad: float, rate_rad_s: float, *, lever_s2: float, drop_s2: float, drag_s: float, step_s: float
) -> tuple[float, float]:
    """Angle and rate one step later, where θ̈ = −lever cos θ − drop sin θ − drag θ̇.

    lever_s2, drop_s2: 1/s².  drag_s: 1/s.  step_s: s, either sign.  Times the pace of small swings, and times
    the drag, a step wants to be under about an eighth: the caller divides longer ones.  Source: S-06.
    """
    angle_rad += FIRST_DRIFT * step_s * rate_rad_s
    if drag_s * abs(step_s) < 1e-16:  # takes less than round-off from the rate
        for kick, drift in KICKS_AND_DRIFTS:
            rate_rad_s -= kick * step_s * (lever_s2 * cos(angle_rad) + drop_s2 * sin(angle_rad))
            angle_rad += drift * step_s * rate_rad_s
        return angle_rad, rate_rad_s
    for kick, drift in KICKS_AND_DRIFTS:
        # The exact flow of a constant push against the drag, so that the order stays what it was.
        lost = -expm1(-drag_s * kick * step_s)
        push = -(lever_s2 * cos(angle_rad) + drop_s2 * sin(angle_rad))
        rate_rad_s += (push / drag_s - rate_rad_s) * lost
        angle_rad += drift * step_s * rate_rad_s
    return angle_rad, rate_rad_s
