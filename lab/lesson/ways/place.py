"""Ways of thinking about where it balances that look at the body as a whole.

Each is a small function from what is seen to the place it would say, a numeral in the scene's own coordinates.
None is no prediction: the rule cannot choose here, or has nothing to choose from.
"""

from __future__ import annotations

from collections.abc import Sequence

from lab.lesson.messages import msg
from lab.lesson.situation import SAME, Load, Situation
from lab.lesson.ways.way import Way


def moment_place(loads: Sequence[Load]) -> float | None:
    """Return the mean of the parts' places, weighted: where they balance."""
    weight = sum(load.weight for load in loads)
    return sum(load.weight * load.place for load in loads) / weight if weight > 0 else None


def balance(seen: Situation) -> float | None:
    """The moment sum divided by all the weight: the truth."""
    return moment_place(seen.everything)


def bar_left_out(seen: Situation) -> float | None:
    """The bar weighs nothing."""
    return None if seen.bar is None else moment_place(seen.loads)


def plain_mean(seen: Situation) -> float | None:
    """The mean of the places, whatever sits there."""
    if len(seen.loads) < 2:
        return None
    return sum(load.place for load in seen.loads) / len(seen.loads)


def equal_weight(seen: Situation) -> float | None:
    """As much weight on the left as on the right, each part spread evenly over its length."""
    if any(load.weight <= 0 for load in seen.everything):
        return None
    half = sum(load.weight for load in seen.everything) / 2
    edges = sorted({edge for load in seen.everything for edge in (load.place - load.half, load.place + load.half)})
    slack = SAME * half
    for here, following in zip(edges, [*edges[1:], None], strict=True):
        upto = _weight_left_of(seen, here, at=True)
        if upto < half - slack and following is not None:
            before_next = _weight_left_of(seen, following, at=False)
            if before_next > half + slack:
                return here + (half - upto) / (before_next - upto) * (following - here)
        elif _weight_left_of(seen, here, at=False) > half + slack or upto > half + slack:
            return here
        elif upto >= half - slack:
            # Exactly half: a gap with nothing in it would do anywhere, so the rule cannot choose.
            flat = following is not None and _weight_left_of(seen, following, at=False) <= half + slack
            return None if flat else here
    return None


def middle(seen: Situation) -> float:
    """The middle of the bar or tool."""
    return seen.middle


def swapped(seen: Situation) -> float | None:
    """Weight and arm change places in the sum."""
    if len(seen.loads) < 2 or any(load.weight <= 0 for load in seen.loads):
        return None
    return sum(load.place / load.weight for load in seen.loads) / sum(1 / load.weight for load in seen.loads)


def adds(seen: Situation) -> float | None:
    """Weight and arm added, not multiplied."""
    weight = sum(load.weight for load in seen.loads)
    if not seen.loads or weight <= 0:
        return None
    return seen.reference + sum(load.weight + load.place - seen.reference for load in seen.loads) / weight


def reference_slip(seen: Situation) -> float | None:
    """Measured from the middle, read off from the reference line."""
    place = balance(seen)
    return None if place is None else place - seen.middle + seen.reference


def all_arms_positive(seen: Situation) -> float | None:
    """Measured from the middle, every arm to the right."""
    weight = sum(load.weight for load in seen.everything)
    if weight <= 0:
        return None
    turning = sum(load.weight * abs(load.place - seen.middle) for load in seen.loads)
    return seen.middle + turning / weight


def bar_on_top_only(seen: Situation) -> float | None:
    """The bar counts among the moments, but not in the weight they are divided by."""
    weight = sum(load.weight for load in seen.loads)
    if seen.bar is None or weight <= 0:
        return None
    return seen.reference + _turning(seen, seen.everything) / weight


def bar_below_only(seen: Situation) -> float | None:
    """The bar counts in the weight, but not among the moments."""
    weight = sum(load.weight for load in seen.everything)
    if seen.bar is None or not seen.loads or weight <= 0:
        return None
    return seen.reference + _turning(seen, seen.loads) / weight


def at_heaviest(seen: Situation) -> float | None:
    """At the heaviest part; no prediction where two are as heavy."""
    heaviest = seen.heaviest
    return None if heaviest is None or len(seen.loads) == 1 else heaviest.place


def half_way_to_heaviest(seen: Situation) -> float | None:
    """Half-way from the middle to the heaviest part."""
    return None if seen.heaviest is None else (seen.heaviest.place + seen.middle) / 2


def outer_middle(seen: Situation) -> float | None:
    """Half-way between the outermost weights."""
    if len(seen.loads) < 2:
        return None
    places = [load.place for load in seen.loads]
    return (min(places) + max(places)) / 2


def _turning(seen: Situation, loads: Sequence[Load]) -> float:
    return sum(load.weight * (load.place - seen.reference) for load in loads)


def _weight_left_of(seen: Situation, place: float, *, at: bool) -> float:
    """Return the weight left of a place; at: what sits on the very spot counts too."""
    return sum(load.weight * _share_left_of(load, place, at=at) for load in seen.everything)


def _share_left_of(load: Load, place: float, *, at: bool) -> float:
    if load.half == 0:
        return 1.0 if load.place < place or (at and load.place == place) else 0.0
    return min(1.0, max(0.0, (place - load.place + load.half) / (2 * load.half)))


PLACE_WAYS: tuple[Way[Situation, float], ...] = (
    Way(name="moment", predict=balance, sentence=msg("All the moments, shared by all the weight.")),
    Way(
        name="bar_left_out",
        predict=bar_left_out,
        sentence=msg("{place} is where it would balance if the {beam} had no weight. It pulls too, at its middle."),
    ),
    Way(
        name="plain_mean",
        predict=plain_mean,
        sentence=msg("{place} is the mean of the places. A heavy part counts for more than a light one."),
    ),
    Way(
        name="equal_weight",
        predict=equal_weight,
        sentence=msg("{place} has as much weight on the left as on the right. How far out it sits counts too."),
    ),
    Way(
        name="middle",
        predict=middle,
        sentence=msg("{place} is the middle of its length. That would do if both sides were alike."),
    ),
    Way(
        name="swapped",
        predict=swapped,
        sentence=msg("{place} comes out when the light part counts for more. The heavy part counts for more."),
    ),
    Way(
        name="adds",
        predict=adds,
        sentence=msg("{place} comes out when weight and arm are added. Multiply each weight by its arm."),
    ),
    Way(
        name="reference_slip",
        predict=reference_slip,
        sentence=msg("{place} is right if you measure from the middle. Here it is read on the rule."),
    ),
    Way(
        name="all_arms_positive",
        predict=all_arms_positive,
        sentence=msg(
            "{place} comes out when you start at the middle and count every arm to the right. Left ones take away."
        ),
    ),
    Way(
        name="bar_on_top_only",
        predict=bar_on_top_only,
        sentence=msg("{place} comes out when you divide without the {beam}'s weight. Divide by all the weight."),
    ),
    Way(
        name="bar_below_only",
        predict=bar_below_only,
        sentence=msg("{place} comes out when the {beam} has no moment. It has one: its weight times its middle."),
    ),
    Way(
        name="at_heaviest",
        predict=at_heaviest,
        sentence=msg("{place} is where the {heaviest} sits. The other parts pull it away from there."),
    ),
    Way(
        name="half_way_to_heaviest",
        predict=half_way_to_heaviest,
        sentence=msg("{place} is half-way from the middle to the {heaviest}. How far it goes depends on the weights."),
    ),
    Way(
        name="outer_middle",
        predict=outer_middle,
        sentence=msg("{place} is half-way between the outer parts. What each part weighs counts too."),
    ),
)
"""Ways about the whole body; the first one is the truth."""
