"""Where the parts of a tool can sit: each touches the handle, or something that does."""

from __future__ import annotations

from dataclasses import replace

from lab.mechanics import Part, extent_m
from lab.simulation.benches.finger_builds import span_m
from lab.simulation.benches.shared_edits import clamped
from lab.simulation.benches.tool import handle_index

GRIP_M = 0.02
"""How much of a part that reaches over an end stays on the tool, m; half of a smaller one."""

_EDGE_M = 1e-9
"""Parts this far apart touch: lengths that come out of a file miss by round-off."""


def touches(part: Part, parts: tuple[Part, ...]) -> bool:
    """Whether a part, where it is, would sit on the tool that the others make."""
    left_m, right_m = span_m(part)
    low_m, high_m = _reach_m(parts)
    return left_m <= high_m + _EDGE_M and right_m >= low_m - _EDGE_M


def places_m(parts: tuple[Part, ...], index: int, *, tied: tuple[int, ...] = ()) -> tuple[float, float]:
    """Between which places along the centre of a part can be: where it still has a grip on the others.

    One that a file puts farther out may stay there.  tied: the parts that move with it, which hold it nowhere.
    """
    part = parts[index]
    others = tuple(other for number, other in enumerate(parts) if number != index and number not in tied)
    at_m = part.at_m[0]
    if not any(extent_m(other.shape)[0] > 0 for other in others):
        return at_m, at_m
    low_m, high_m = _reach_m(others)
    left_m, right_m = _held_between_m(part, low_m, high_m)
    return min(left_m, at_m), max(right_m, at_m)


def held_together(parts: tuple[Part, ...]) -> tuple[Part, ...]:
    """The parts, those that would hang in the air brought to the nearest place where they touch the tool."""
    handle = handle_index(parts)
    low_m, high_m = span_m(parts[handle])
    placed = {handle: parts[handle]}
    waiting = {index: part for index, part in enumerate(parts) if index != handle}
    while waiting:
        nearest = min(waiting, key=lambda index: (abs(_gap_m(waiting[index], low_m, high_m)), index))
        part = waiting.pop(nearest)
        if not part.cut:
            if _gap_m(part, low_m, high_m):
                at_m = clamped(part.at_m[0], _held_between_m(part, low_m, high_m))
                part = replace(part, at_m=(at_m, *part.at_m[1:]))
            left_m, right_m = span_m(part)
            low_m, high_m = min(low_m, left_m), max(high_m, right_m)
        placed[nearest] = part
    return tuple(placed[index] for index in range(len(parts)))


def _reach_m(parts: tuple[Part, ...]) -> tuple[float, float]:
    spans_m = [span_m(part) for part in parts if not part.cut] or [span_m(part) for part in parts]
    return min(left for left, _ in spans_m), max(right for _, right in spans_m)


def _held_between_m(part: Part, low_m: float, high_m: float) -> tuple[float, float]:
    half_m = extent_m(part.shape)[0] / 2
    over_m = half_m - min(half_m, GRIP_M)
    return low_m - over_m, high_m + over_m


def _gap_m(part: Part, low_m: float, high_m: float) -> float:
    """How far a part is off what reaches from low to high: below 0 to the left of it, 0 where they touch."""
    left_m, right_m = span_m(part)
    if left_m > high_m + _EDGE_M:
        return left_m - high_m
    if right_m < low_m - _EDGE_M:
        return right_m - low_m
    return 0.0
