"""Ways of thinking about which side goes down, each a small function from what is seen to the side it would say.

None is no prediction: the rule has nothing to go by here.  A rule that cannot choose says `level`.
"""

from __future__ import annotations

from collections.abc import Sequence

from lab.lesson.asked import Side
from lab.lesson.messages import msg
from lab.lesson.situation import Load, Situation
from lab.lesson.ways.way import Way

SAME = 1e-9
"""Left and right closer than this share of what pulls are level; larger would hide a gram on a long bar."""


def moment(seen: Situation) -> Side:
    """Weight times distance, the bar at its middle: what happens."""
    return _by_moment(seen, seen.everything)


def no_bar(seen: Situation) -> Side | None:
    """The bar weighs nothing."""
    return None if seen.beam is None else _by_moment(seen, seen.riders)


def weight_only(seen: Situation) -> Side:
    """The side with more weight goes down."""
    left, right = _sides(seen)
    return _heavier(_weight(left), _weight(right))


def weight_then_distance(seen: Situation) -> Side:
    """The side with more weight goes down; equal weights, the one that reaches farther."""
    by_weight = weight_only(seen)
    return distance_only(seen) if by_weight == "level" else by_weight


def distance_only(seen: Situation) -> Side:
    """The side that reaches farther goes down."""
    left, right = _sides(seen)
    return _heavier(_reach(seen, left), _reach(seen, right))


def nearest_down(seen: Situation) -> Side:
    """The side with more weight goes down; equal weights, the one that hangs nearer to the pivot."""
    by_weight = weight_only(seen)
    return _other(distance_only(seen)) if by_weight == "level" else by_weight


def adds(seen: Situation) -> Side:
    """Weight and distance are added, each side's sum compared."""
    left, right = _sides(seen)
    return _heavier(_added(seen, left), _added(seen, right))


def compensates(seen: Situation) -> Side:
    """Where weight says one side and distance the other, they make up for each other."""
    if {weight_only(seen), distance_only(seen)} == {"left", "right"}:
        return "level"
    return moment(seen)


def counts_pieces(seen: Situation) -> Side:
    """The side with more weights on it goes down, whatever they weigh."""
    left, right = _sides(seen)
    return _heavier(len(left), len(right))


def heaviest_wins(seen: Situation) -> Side | None:
    """The side of the heaviest single weight goes down; two as heavy, one each side, are level."""
    if not seen.riders:
        return None
    most = max(load.weight for load in seen.riders)
    where = {_side_of(seen, load) for load in seen.riders if load.weight == most}
    return where.pop() if len(where) == 1 else "level"


def longer_side_down(seen: Situation) -> Side | None:
    """The longer side of the bar goes down, whatever hangs on it."""
    return None if seen.beam is None else _heavier(seen.pivot - seen.left, seen.right - seen.pivot)


def swapped(seen: Situation) -> Side:
    """The right sizes, the other way round."""
    return _other(moment(seen))


def _by_moment(seen: Situation, loads: Sequence[Load]) -> Side:
    moments = [load.weight * (seen.pivot - load.place) for load in loads]
    turning = sum(moments)
    # A flat rest holds as long as the balance point lies over it.
    held = seen.pad * sum(load.weight for load in loads)
    if abs(turning) <= held + SAME * sum(abs(each) for each in moments):
        return "level"
    return "left" if turning > 0 else "right"


def _sides(seen: Situation) -> tuple[list[Load], list[Load]]:
    left = [load for load in seen.riders if load.place < seen.pivot]
    return left, [load for load in seen.riders if load.place > seen.pivot]


def _side_of(seen: Situation, load: Load) -> Side:
    return _heavier(seen.pivot, load.place)


def _weight(loads: Sequence[Load]) -> float:
    return sum(load.weight for load in loads)


def _reach(seen: Situation, loads: Sequence[Load]) -> float:
    return max((abs(load.place - seen.pivot) for load in loads), default=0.0)


def _added(seen: Situation, loads: Sequence[Load]) -> float:
    return sum(load.weight + abs(load.place - seen.pivot) for load in loads)


def _heavier(left: float, right: float) -> Side:
    if abs(left - right) <= SAME * (abs(left) + abs(right)):
        return "level"
    return "left" if left > right else "right"


def _other(side: Side) -> Side:
    return {"left": "right", "right": "left"}.get(side, "level")  # type: ignore[return-value]


SIDE_WAYS: tuple[Way[Situation, Side], ...] = (
    Way(name="moment", predict=moment, sentence=msg("Weight times arm decides.")),
    Way(
        name="no_bar",
        predict=no_bar,
        sentence=msg("That is what a {beam} with no weight would do. This one pulls too, at its middle."),
    ),
    Way(
        name="weight_only",
        predict=weight_only,
        sentence=msg("That is what the weights alone would say. How far out they sit counts as much."),
    ),
    Way(
        name="weight_then_distance",
        predict=weight_then_distance,
        sentence=msg("That asks the weights first, and distance only on a tie. Both count every time."),
    ),
    Way(
        name="distance_only",
        predict=distance_only,
        sentence=msg("That asks only how far out they sit. What they weigh counts as much."),
    ),
    Way(
        name="nearest_down",
        predict=nearest_down,
        sentence=msg("That is the side that sits nearer. A push near the hinge of a door does less, not more."),
    ),
    Way(
        name="adds",
        predict=adds,
        sentence=msg("That adds weight and distance. Twice as far out pulls twice as hard, so multiply them."),
    ),
    Way(
        name="compensates",
        predict=compensates,
        sentence=msg("More weight and more distance do pull against each other. Here they are not alike."),
    ),
    Way(
        name="counts_pieces",
        predict=counts_pieces,
        sentence=msg("That counts the pieces. What each one weighs and how far out it sits counts too."),
    ),
    Way(
        name="heaviest_wins",
        predict=heaviest_wins,
        sentence=msg("That looks at the heaviest piece alone. Add up what the others do, too."),
    ),
    Way(
        name="longer_side_down",
        predict=longer_side_down,
        sentence=msg("That asks which side of the {beam} is longer. What sits on it pulls too."),
    ),
    Way(
        name="swapped",
        predict=swapped,
        sentence=msg("That is the other way round: the side with the larger sum goes down."),
    ),
)
"""Every way of thinking about a side; the first one is what happens."""
