"""How right the swing is: `python -m lab.figures accuracy`."""

from lab.figures import swinging_bar
from lab.figures.rows import Row, row
from lab.mechanics import TICK_S, Swing, swing_energy_j, swing_tick

SWING_S = 10.0
ENERGY_S = 60.0
FLOOR = 1e-6


def angle_beside_pymunk() -> Row:
    """Error of the angle after ten seconds, ours and pymunk's, both against an adaptive solution."""
    right = swinging_bar.solved_angle_rad(SWING_S)
    return row(
        "swing: error in angle after 10 s",
        abs(swinging_bar.ours_angle_rad(SWING_S) - right),
        abs(swinging_bar.pymunk_angle_rad(SWING_S) - right),
        goal=1.0 / 1000.0,
        unit="rad",
        beside="pymunk at the same step",
    )


def angle_beside_floor() -> Row:
    """The same error beside the floor that we promise."""
    error = abs(swinging_bar.ours_angle_rad(SWING_S) - swinging_bar.solved_angle_rad(SWING_S))
    return row("swing: error in angle after 10 s", error, FLOOR, goal=1.0, unit="rad", beside="floor promised")


def energy_beside_floor() -> Row:
    """How far the energy strays in a minute, beside a millionth of its range."""
    bar, swing = swinging_bar.body(), Swing(swinging_bar.LET_GO_RAD)
    start_j = swing_energy_j(bar, swing)
    range_j = start_j - swing_energy_j(bar, Swing(0.0))
    strayed_j = 0.0
    for _ in range(round(ENERGY_S / TICK_S)):
        swing = swing_tick(bar, swinging_bar.PIVOT, swing)
        strayed_j = max(strayed_j, abs(swing_energy_j(bar, swing) - start_j))
    return row(
        "swing: energy astray in 60 s",
        strayed_j,
        FLOOR * range_j,
        goal=1.0,
        unit="J",
        beside="1e-6 of its range",
    )


def accuracy_rows() -> tuple[Row, ...]:
    """Every accuracy that is measured here."""
    return angle_beside_pymunk(), angle_beside_floor(), energy_beside_floor()
