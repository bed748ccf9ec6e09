"""Two or three supports under a build: what each carries."""

from collections.abc import Iterable, Sequence

from lab.mechanics.checks import STANDARD_GRAVITY_M_S2, MechanicsError, Vector, finite, vector
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


def support_reactions_n(parts: Iterable[Part], supports_at_m: Sequence[Vector]) -> tuple[float, ...] | None:
    """What two or three supports push up with, N, in their order; None where the build tips off them.

    supports_at_m: along, across, up of each; how high they are does not matter.  Two are taken as edges that
    run across, so that only their places along count.  No support can pull.  Raises MechanicsError for one,
    for more than three (statics cannot tell), for two at one place along, and for three in one line.
    Source: S-08, S-46.
    """
    places = [vector(f"place of support {number}", at, "m") for number, at in enumerate(supports_at_m, start=1)]
    if len(places) > 3:
        raise MechanicsError(
            f"there are {len(places)} supports; statics can tell what two carry, or three not in line. "
            "With more, it hangs on how each gives"
        )
    if len(places) < 2:
        raise MechanicsError(f"the number of supports is {len(places)}; it must be two, or three not in line")
    if len(places) == 2:
        return two_support_reactions_n(parts, places[0][0], places[1][0])
    return _three_reactions_n(checked(parts), places)


def _three_reactions_n(build: tuple[Part, ...], places: list[Vector]) -> tuple[float, ...] | None:
    """Each support's share is the area that the balance point and the other two enclose, over the whole."""
    sides = [_side_m(places[(n + 1) % 3], places[(n + 2) % 3]) for n in range(3)]
    whole = _doubled_area_m2(places[0], places[1], places[2])
    longest = max(abs(value) for side in sides for value in side)
    if abs(whole) <= LEVEL_SHARE * longest * longest:
        raise MechanicsError("the three supports are in one line; move one of them out of it")
    carried = []
    for (along, across), start in zip(sides, [places[(n + 1) % 3] for n in range(3)], strict=True):
        terms = [
            part.signed_mass_kg * (along * (part.at_m[1] - start[1]) - across * (part.at_m[0] - start[0])) / whole
            for part in build
        ]
        share = added(terms)
        # The same slack as for two: a corner that carries nothing but round-off carries nothing.
        if share < -LEVEL_SHARE * added(abs(term) for term in terms):
            return None
        carried.append(max(0.0, share) * STANDARD_GRAVITY_M_S2)
    return tuple(carried)


def _side_m(start: Vector, end: Vector) -> tuple[float, float]:
    return end[0] - start[0], end[1] - start[1]


def _doubled_area_m2(first: Vector, second: Vector, third: Vector) -> float:
    one, two = _side_m(first, second), _side_m(first, third)
    return one[0] * two[1] - one[1] * two[0]
