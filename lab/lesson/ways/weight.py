"""Ways of thinking about how much to hang at a place so that it stays level.

Each is a small function from the lever to the weight it would say.  None is no prediction.
"""

from __future__ import annotations

from lab.lesson.messages import msg
from lab.lesson.ways.lever import Lever
from lab.lesson.ways.way import Way


def moment(seen: Lever) -> float | None:
    """Weight times arm on both sides, the bar at its middle: the truth."""
    return _shared(seen, seen.moment)


def equal_weights(seen: Lever) -> float | None:
    """As much weight here as there, wherever it hangs."""
    return _above_0(sum(load.weight if load.arm > 0 else -load.weight for load in seen.loads))


def adds(seen: Lever) -> float | None:
    """Weight and arm are added on each side, not multiplied."""
    added = seen.added
    return None if added is None or seen.arm is None else _above_0(added - seen.arm)


def upside_down(seen: Lever) -> float | None:
    """The ratio of the arms the other way round: more weight the farther out."""
    other = seen.other
    return None if other is None or seen.arm is None else _above_0(other.weight * seen.arm / other.arm)


def bar_left_out(seen: Lever) -> float | None:
    """The bar weighs nothing."""
    return None if seen.bar is None else _shared(seen, seen.loads_moment)


def bar_on_wrong_side(seen: Lever) -> float | None:
    """The bar's moment counts for the other side."""
    return None if seen.bar_moment == 0 else _shared(seen, seen.loads_moment - seen.bar_moment)


def bar_at_load(seen: Lever) -> float | None:
    """All of the bar's weight sits where the load is."""
    other = seen.other
    return None if other is None or seen.bar is None else _shared(seen, (other.weight + seen.bar.weight) * other.arm)


def equal_weights_and_bar(seen: Lever) -> float | None:
    """As much weight here as there, and the bar's moment, where it has any, shared out over both arms."""
    other = seen.other
    if other is None or seen.arm is None or seen.bar_moment == 0:
        return None
    return _above_0(other.weight + 2 * seen.bar_moment / (other.arm + seen.arm))


def from_end(seen: Lever) -> float | None:
    """Every arm measured from the bar's left end, not from the pivot; what sits at the pivot still does not count."""
    other = seen.other
    if other is None or seen.arm is None:
        return None
    arm = seen.pivot_from_end + (seen.arm if seen.right_of_pivot else -seen.arm)
    bar = seen.bar
    counted = 0.0 if bar is None or bar.arm == 0 else bar.weight * bar.from_end * (1.0 if bar.arm > 0 else -1.0)
    return None if arm <= 0 else _above_0((other.weight * other.from_end + counted) / arm)


def _shared(seen: Lever, turning: float) -> float | None:
    return None if seen.arm is None else _above_0(turning / seen.arm)


def _above_0(weight: float) -> float | None:
    """No idea hangs a weight below nothing."""
    return weight if weight > 0 else None


WEIGHT_WAYS: tuple[Way[Lever, float], ...] = (
    Way(name="moment", predict=moment, sentence=msg("Weight times arm is alike on both sides.")),
    Way(
        name="equal_weights",
        predict=equal_weights,
        sentence=msg("{given} is as much as hangs on the other side. How far out each one hangs counts too."),
    ),
    Way(
        name="adds",
        predict=adds,
        sentence=msg("{given} comes out when weight and arm are added. Multiply each weight by its arm."),
    ),
    Way(
        name="upside_down",
        predict=upside_down,
        sentence=msg("{given} comes out when more weight goes on the longer arm. A longer arm needs less weight."),
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
        name="bar_at_load",
        predict=bar_at_load,
        sentence=msg("{given} comes out when the whole {beam} hangs with the load. Its weight sits at its middle."),
    ),
    Way(
        name="equal_weights_and_bar",
        predict=equal_weights_and_bar,
        sentence=msg(
            "{given} is as much as on the other side, and a bit for the {beam}. How far out each one hangs counts too."
        ),
    ),
    Way(
        name="from_end",
        predict=from_end,
        sentence=msg("{given} comes out when arms start at the left end. An arm starts at the pin."),
    ),
)
"""Every way of thinking about a weight; the first one is the truth."""
