"""Ways of thinking about where to hang a weight so that it stays level.

Each is a small function from the lever to the arm it would say, from the pivot outwards on the side where it hangs.
None is no prediction.
"""

from __future__ import annotations

from lab.lesson.messages import msg
from lab.lesson.ways.lever import Lever
from lab.lesson.ways.way import Way


def moment(seen: Lever) -> float | None:
    """Weight times arm on both sides, the bar at its middle: the truth."""
    return _shared(seen, seen.moment)


def equal_arms(seen: Lever) -> float | None:
    """As far out here as there, whatever hangs."""
    return None if seen.other is None else seen.other.arm


def adds(seen: Lever) -> float | None:
    """Weight and arm are added on each side, not multiplied."""
    added = seen.added
    return None if added is None or seen.weight is None else added - seen.weight


def upside_down(seen: Lever) -> float | None:
    """The ratio of the weights the other way round: the heavier, the farther out."""
    other = seen.other
    return None if other is None or seen.weight is None else other.arm * seen.weight / other.weight


def bar_left_out(seen: Lever) -> float | None:
    """The bar weighs nothing."""
    return None if seen.bar is None else _shared(seen, seen.loads_moment)


def bar_on_wrong_side(seen: Lever) -> float | None:
    """The bar's moment counts for the other side."""
    return None if seen.bar_moment == 0 else _shared(seen, seen.loads_moment - seen.bar_moment)


def from_end(seen: Lever) -> float | None:
    """The right arm, measured off from the bar's left end and not from the pivot."""
    arm = moment(seen)
    if arm is None:
        return None
    beyond = arm - seen.pivot_from_end
    return beyond if seen.right_of_pivot else -beyond


def _shared(seen: Lever, turning: float) -> float | None:
    return None if seen.weight is None else turning / seen.weight


ARM_WAYS: tuple[Way[Lever, float], ...] = (
    Way(name="moment", predict=moment, sentence=msg("Weight times arm is alike on both sides.")),
    Way(
        name="equal_arms",
        predict=equal_arms,
        sentence=msg("{given} is as far from the pin as the other one. What each one weighs counts too."),
    ),
    Way(
        name="adds",
        predict=adds,
        sentence=msg("{given} comes out when weight and arm are added. Multiply each weight by its arm."),
    ),
    Way(
        name="upside_down",
        predict=upside_down,
        sentence=msg("{given} comes out when the heavier one hangs farther out. A heavy one needs less arm."),
    ),
    Way(
        name="bar_left_out",
        predict=bar_left_out,
        sentence=msg("{given} would do if the {beam} had no weight. It pulls too, at its middle."),
    ),
    Way(
        name="bar_on_wrong_side",
        predict=bar_on_wrong_side,
        sentence=msg("{given} comes out when the {beam} pulls on the other side. Look where its middle is."),
    ),
    Way(
        name="from_end",
        predict=from_end,
        sentence=msg("{given} is the right arm, but from the left end. Measure it from the pin."),
    ),
)
"""Every way of thinking about an arm; the first one is the truth."""
