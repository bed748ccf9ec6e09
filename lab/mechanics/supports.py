"""Two supports under a build: what each carries."""

from collections.abc import Iterable

from lab.mechanics.checks import STANDARD_GRAVITY_M_S2, MechanicsError, finite
from lab.mechanics.parts import Part, added, checked
from lab.mechanics.pivots import LEVEL_SHARE


def two_support_reactions_n(parts: Iterable[Part], first_at_m: float, second_at_m: float) -> tuple[float, float] | None:
    """What two supports push up with, N, first and second; None where the build tips over one of them.

    first_at_m, second_at_m: places along, in either order.  No support can pull.
    Raises MechanicsError if both are at one place.  Source: S-08.
    """
    build = checked(parts)
    first = finite("place of the first support", first_at_m, "m")
    second = finite("place of the second support", second_at_m, "m")
    gap = second - first
    if gap == 0.0:
        raise MechanicsError(f"both supports are at {first} m; they must be apart")
    on_second = _moment_about(build, first) / gap
    on_first = -_moment_about(build, second) / gap
    # The same slack as a pivot's level: an end that carries nothing but round-off carries nothing.
    slack = LEVEL_SHARE * (_scale_about(build, first) + _scale_about(build, second)) / abs(gap)
    if min(on_first, on_second) < -slack:
        return None
    return (
        max(0.0, on_first) * STANDARD_GRAVITY_M_S2,  # in this order, so that −0.0 becomes 0.0
        max(0.0, on_second) * STANDARD_GRAVITY_M_S2,
    )


def _moment_about(parts: tuple[Part, ...], at: float) -> float:
    return added(part.signed_mass_kg * (part.at_m[0] - at) for part in parts)


def _scale_about(parts: tuple[Part, ...], at: float) -> float:
    return added(part.mass_kg * abs(part.at_m[0] - at) for part in parts)
