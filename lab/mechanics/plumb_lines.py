"""Lines through a body that its balance point lies on, where they cross, and how far they scatter."""

from collections.abc import Iterable
from dataclasses import dataclass
from math import sqrt

import numpy as np
from numpy.typing import NDArray

from lab.mechanics.axes import as_vector
from lab.mechanics.checks import MechanicsError, Vector, vector

Floats = NDArray[np.float64]

LEAST_CROSSING_SHARE = 1e-6
"""Lines whose spread of directions is less than this are taken as one: of two, those within 0.08 degrees.
A choice: no hand draws plumb lines nearer alike and means two."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlumbLine:
    """A straight line in a body's own axes.

    through_m: a place on it, such as the hook.  down: its direction, of any length above 0; kept as length 1.
    Raises MechanicsError.
    """

    through_m: Vector
    down: Vector

    def __post_init__(self) -> None:
        through = vector("place of the plumb line", self.through_m, "m")
        down = np.array(vector("direction of the plumb line", self.down, "(no unit)"))
        # Scaled first, so that very short and very long ones keep their direction.
        size = float(np.abs(down).max())
        if size == 0.0:
            raise MechanicsError("direction of the plumb line is (0, 0, 0); it must point somewhere")
        down = down / size
        object.__setattr__(self, "through_m", through)
        object.__setattr__(self, "down", as_vector(down / np.linalg.norm(down)))

    def distance_m(self, place_m: Vector) -> float:
        """How far a place lies off the line, m."""
        away = np.subtract(place_m, self.through_m)
        return float(np.linalg.norm(away - away @ np.array(self.down) * np.array(self.down)))


@dataclass(frozen=True, slots=True, kw_only=True)
class PlumbCrossing:
    """Where lines cross as nearly as they do.

    at_m: the place with the least sum of squared distances to the lines.  distances_m: to each.
    scatter_m: their root mean square.  doubt_m: one standard uncertainty of the place, per axis, as the
    scatter itself shows it; of two lines it stands on a single number and is a hint only.
    """

    at_m: Vector
    distances_m: tuple[float, ...]
    scatter_m: float
    doubt_m: Vector


def plumb_crossing(lines: Iterable[PlumbLine]) -> PlumbCrossing:
    """The crossing of two or more plumb lines by least squares.

    Raises MechanicsError for fewer than two, or where all run the same way.  Source: S-44.
    """
    drawn = tuple(lines)
    if len(drawn) < 2:
        raise MechanicsError(
            f"there is {len(drawn)} plumb line; a crossing needs two or more"
            if drawn
            else "there is no plumb line; a crossing needs two or more"
        )
    across = [np.eye(3) - np.outer(line.down, line.down) for line in drawn]
    normal: Floats = np.sum(across, axis=0)
    if np.linalg.eigvalsh(normal)[0] < LEAST_CROSSING_SHARE:
        raise MechanicsError("the plumb lines all run the same way; hang the body from a place off the first line")
    # About the first line's place: far from zero, the difference of two large numbers is noise.
    zero = np.array(drawn[0].through_m)
    pull = np.sum([flat @ np.subtract(line.through_m, zero) for flat, line in zip(across, drawn, strict=True)], axis=0)
    at = as_vector(zero + np.linalg.solve(normal, pull))
    distances = tuple(line.distance_m(at) for line in drawn)
    squares = float(np.sum(np.square(distances)))
    # Each line says two things about a place of three numbers.
    variance = squares / (2 * len(drawn) - 3) * np.diag(np.linalg.inv(normal))
    return PlumbCrossing(
        at_m=at,
        distances_m=distances,
        scatter_m=sqrt(squares / len(drawn)),
        doubt_m=as_vector(np.sqrt(variance)),
    )
