"""What a number must be before the mechanics will use it."""

from math import isfinite

STANDARD_GRAVITY_M_S2 = 9.80665
"""Standard gravity, exact by convention.  It scales every force and the pace of every swing; a balance
point does not depend on it.  Source: S-01."""

Vector = tuple[float, float, float]
"""A place or a size: along, across, up, in metres."""


class MechanicsError(ValueError):
    """A value that the mechanics cannot use; the message names it, its unit, and what would do."""


def finite(what: str, value: float, unit: str) -> float:
    """The value as a float.  Raises MechanicsError if it is not a finite number."""
    if not isfinite(value):
        raise MechanicsError(f"{what} is {value} {unit}; it must be a finite number")
    return float(value)


def positive(what: str, value: float, unit: str) -> float:
    """The value as a float.  Raises MechanicsError if it is not finite and above 0."""
    if not (isfinite(value) and value > 0.0):
        raise MechanicsError(f"{what} is {value} {unit}; it must be a finite number above 0")
    return float(value)


def not_negative(what: str, value: float, unit: str) -> float:
    """The value as a float.  Raises MechanicsError if it is not finite, or below 0."""
    if not (isfinite(value) and value >= 0.0):
        raise MechanicsError(f"{what} is {value} {unit}; it must be a finite number, 0 or above")
    return float(value)


def vector(what: str, value: Vector, unit: str) -> Vector:
    """Three finite floats.  Raises MechanicsError if there are not three, or one is not finite."""
    if len(value) != 3:
        raise MechanicsError(f"{what} has {len(value)} numbers; it must have three: along, across, up")
    along, across, up = value
    return finite(what, along, unit), finite(what, across, unit), finite(what, up, unit)
