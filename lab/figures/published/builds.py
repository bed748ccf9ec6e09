"""Builds in a book's own units, and the few questions that books ask of them.

Weights and arms keep the numbers that are printed: a balance point is in the unit of its arms, a force in the
unit of its weights.
"""

from math import sqrt

from lab.mechanics import (
    STANDARD_GRAVITY_M_S2,
    MomentSum,
    Part,
    Pivot,
    Rod,
    inertia_about_kg_m2,
    moment_sum,
    pivoted,
    small_swing_period_s,
    turn_about,
    two_support_reactions_n,
)

LB_KG, IN_M = 0.45359237, 0.0254
GALLON_M3 = 231 * IN_M**3
LB_GALLON = LB_KG / GALLON_M3
"""One pound in a US gallon, kg/m³."""

Pair = tuple[float, float]
"""Weight and arm; a negative weight is one taken away."""


def weights(*pairs: Pair) -> tuple[Part, ...]:
    """Parts from weights and arms."""
    return tuple(
        Part(f"part {number}", abs(weight), (arm, 0.0, 0.0), cut=weight < 0.0)
        for number, (weight, arm) in enumerate(pairs)
    )


def totals_lb_in(*pairs: Pair) -> tuple[float, float, float]:
    """Weight lb, moment lb in and balance point in, by way of kilograms and metres."""
    total = moment_sum(
        Part(f"part {number}", abs(weight) * LB_KG, (arm * IN_M, 0.0, 0.0), cut=weight < 0.0)
        for number, (weight, arm) in enumerate(pairs)
    )
    return total.mass_kg / LB_KG, total.moment_kg_m[0] / (LB_KG * IN_M), total.balance_point_m[0] / IN_M


def moment_sum_of(*pairs: Pair) -> MomentSum:
    """Their moment sum about zero, masses in the unit of the weights."""
    return moment_sum(weights(*pairs))


def balance(*pairs: Pair) -> float:
    """Where they balance, in the unit of the arms."""
    return moment_sum_of(*pairs).balance_point_m[0]


def height(*pairs: Pair) -> float:
    """How high they balance, the arms being heights."""
    parts = [Part(f"load {n}", abs(weight), (0.0, 0.0, up), cut=weight < 0.0) for n, (weight, up) in enumerate(pairs)]
    return moment_sum(parts).balance_point_m[2]


def moment(*pairs: Pair) -> float:
    """The moment about zero, clockwise, in the units of weight and arm."""
    return -turn_about(weights(*pairs), Pivot(0.0)).moment_kg_m


def effort(*pairs: Pair, arm: float) -> float:
    """What must press at the other side of zero, so far out, to hold loads level.  Raises ArithmeticError."""
    answer = moment(*pairs) / arm
    if turn_about(weights(*pairs, (answer, -arm)), Pivot(0.0)).goes != "level":
        raise ArithmeticError(f"{answer} at {-arm} does not hold {pairs} level")
    return answer


def reactions(*pairs: Pair, first: float, second: float) -> Pair:
    """What two supports carry, in the unit of the weights.  Raises ArithmeticError where it tips."""
    found = two_support_reactions_n(weights(*pairs), first, second)
    if found is None:
        raise ArithmeticError(f"{pairs} tip off {first} and {second}")
    return found[0] / STANDARD_GRAVITY_M_S2, found[1] / STANDARD_GRAVITY_M_S2


def about_across(*parts: Part, at_m: float = 0.0) -> float:
    """Inertia about an axis that runs across at a place along, kg m²."""
    return float(inertia_about_kg_m2(parts, (at_m, 0.0, 0.0))[1, 1])


def period_s(*parts: Part, gravity_m_s2: float) -> float:
    """The time of a small swing about zero where gravity is not the standard.  Raises ArithmeticError."""
    found = small_swing_period_s(pivoted(parts, Pivot(0.0)))
    if found is None:
        raise ArithmeticError("what does not hang below its pin does not swing")
    return found * sqrt(STANDARD_GRAVITY_M_S2 / gravity_m_s2)


def bob(length_m: float) -> Part:
    """A simple pendulum on a pin at zero."""
    return Part("bob", 1.0, (0.0, 0.0, -length_m))


def hanging_rod(length_m: float, pin_m: float) -> Part:
    """A uniform rod that hangs from a pin so far below its upper end."""
    return Part("rod", 1.0, (0.0, 0.0, pin_m - length_m / 2.0), Rod(length_m, "up"))
