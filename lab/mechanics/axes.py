"""The three axes of a body, and how a body is turned against them.

x along (airframes: aft), y across (to the right wing), z up: right-handed.  Nose up, right wing down and nose
right count as positive pitch, roll and yaw.
"""

from math import cos, sin
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from lab.mechanics.checks import MechanicsError, Vector, vector

Axis = Literal["along", "across", "up"]
AXES: tuple[Axis, ...] = ("along", "across", "up")
Tensor = tuple[Vector, Vector, Vector]
"""Three rows of three numbers."""

UPRIGHT: Tensor = ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))
"""The rotation of what is not turned."""


def axis_index(axis: str) -> int:
    """0, 1 or 2.  Raises MechanicsError for a name that is none of the three."""
    if axis not in AXES:
        raise MechanicsError(f"axis is {axis!r}; it must be one of {', '.join(AXES)}")
    return AXES.index(axis)


def on_axis(axis: Axis, on_axis: float, off_axis: float) -> Vector:
    """Three numbers: one value on the axis, the other on the two beside it."""
    first, second, third = (on_axis if name == axis else off_axis for name in AXES)
    return first, second, third


def rotation(turn_rad: Vector) -> NDArray[np.float64]:
    """The (3, 3) matrix that takes a turned body's own coordinates into its surroundings'.

    turn_rad: roll, pitch, yaw.  From upright it is yawed, then pitched, then rolled, each about its own axis
    as it then lies.  Raises MechanicsError.  Source: S-40.
    """
    roll, pitch, yaw = vector("turn", turn_rad, "rad")
    # Nose right and right wing down turn the other way round than the right hand about up and along.
    yawed = np.array([[cos(yaw), sin(yaw), 0.0], [-sin(yaw), cos(yaw), 0.0], [0.0, 0.0, 1.0]])
    pitched = np.array([[cos(pitch), 0.0, sin(pitch)], [0.0, 1.0, 0.0], [-sin(pitch), 0.0, cos(pitch)]])
    rolled = np.array([[1.0, 0.0, 0.0], [0.0, cos(roll), sin(roll)], [0.0, -sin(roll), cos(roll)]])
    turned: NDArray[np.float64] = yawed @ pitched @ rolled
    return turned


def as_vector(array: NDArray[np.float64]) -> Vector:
    """Three plain floats of an array (3,)."""
    return float(array[0]), float(array[1]), float(array[2])


def as_tensor(array: NDArray[np.float64]) -> Tensor:
    """Three rows of plain floats of an array (3, 3)."""
    return as_vector(array[0]), as_vector(array[1]), as_vector(array[2])
