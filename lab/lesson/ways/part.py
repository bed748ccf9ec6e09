"""Ways of thinking about where it balances that treat one part amiss: its arm, its sign, or whether it counts."""

from __future__ import annotations

from collections.abc import Mapping

from lab.lesson.messages import msg
from lab.lesson.situation import Load, Situation
from lab.lesson.ways.place import moment_place
from lab.lesson.ways.way import PartWay

NO_ARM = 1e-9
"""Numerals closer than this are one place; a ruler's smallest step is a hundred thousand times as much."""


def far_end(seen: Situation, part: Load) -> float | None:
    """The part's arm measured to its far end, not to its middle."""
    return _with_arm_changed(seen, part, _to_end(seen, part, outward=1.0))


def near_end(seen: Situation, part: Load) -> float | None:
    """The part's arm measured to its near end, not to its middle."""
    by = _to_end(seen, part, outward=-1.0)
    if by is not None and part is seen.bar and abs(part.place + by - seen.reference) <= NO_ARM:
        # A bar that starts at the line then has no moment at all: that is the way `bar_below_only`.
        return None
    return _with_arm_changed(seen, part, by)


def part_left_out(seen: Situation, part: Load) -> float | None:
    """One part of a tool left out of the sum; what stays must still be a sum of two."""
    if seen.bar is not None or len(seen.loads) < 3:
        return None
    return moment_place([load for load in seen.loads if load is not part])


def not_all_weight(seen: Situation, part: Load) -> float | None:
    """The moments of all parts, not divided by all the weight: one part's is missing."""
    weight = sum(load.weight for load in seen.everything) - part.weight
    if part is seen.bar or len(seen.everything) < 2 or weight <= 0:
        return None
    if abs(part.place - seen.reference) <= NO_ARM and part_left_out(seen, part) is not None:
        # At the line it has no moment either: that is the way `part_left_out`.
        return None
    turning = sum(load.weight * (load.place - seen.reference) for load in seen.everything)
    return seen.reference + turning / weight


def arm_not_moved(seen: Situation, part: Load) -> float | None:
    """The reference line was moved, and one arm still counts from the old one."""
    return _with_arm_changed(seen, part, seen.reference) if abs(seen.reference) > NO_ARM else None


def sign_dropped(seen: Situation, part: Load) -> float | None:
    """One arm to the left of the reference line counted as if it were to the right."""
    arm = part.place - seen.reference
    return _with_arm_changed(seen, part, -2 * arm) if arm < -NO_ARM else None


def _to_end(seen: Situation, part: Load, *, outward: float) -> float | None:
    """Return the way from a part's middle to its end; None where it has no length or lies across the line."""
    arm = part.place - seen.reference
    if part.half == 0 or abs(arm) <= NO_ARM:
        return None
    return outward * (part.half if arm > 0 else -part.half)


def _with_arm_changed(seen: Situation, part: Load, by: float | None) -> float | None:
    place = moment_place(seen.everything)
    if by is None or place is None:
        return None
    return place + part.weight * by / sum(load.weight for load in seen.everything)


PART_WAYS: tuple[PartWay, ...] = (
    PartWay(
        name="far_end",
        predict=far_end,
        sentence=msg(
            "{place} is where it would balance if the {part}'s weight sat at its far end; it sits at its middle."
        ),
    ),
    PartWay(
        name="near_end",
        predict=near_end,
        sentence=msg(
            "{place} is where it would balance if the {part}'s weight sat at its near end; it sits at its middle."
        ),
    ),
    PartWay(
        name="part_left_out",
        predict=part_left_out,
        sentence=msg("{place} is where it would balance without the {part}. The {part} pulls too, at its middle."),
    ),
    PartWay(
        name="not_all_weight",
        predict=not_all_weight,
        sentence=msg("{place} comes out when you divide without the {part}'s weight. Divide by all the weight."),
    ),
    PartWay(
        name="arm_not_moved",
        predict=arm_not_moved,
        sentence=msg("{place} comes out when the {part}'s arm starts at the old line. All arms start at one line."),
    ),
    PartWay(
        name="sign_dropped",
        predict=sign_dropped,
        sentence=msg("{place} comes out when the {part}'s arm counts to the right. It lies to the left."),
    ),
)
"""Ways about one part at a time."""

CUT_SENTENCES: Mapping[str, str] = {
    "part_left_out": msg("{place} is where it balanced before the {part} was cut out. Now that side has less weight."),
    "not_all_weight": msg("{place} comes out when you divide by the weight from before. Divide by what is left."),
}
"""What is said instead where the part is cut out, so that its weight is taken away."""
