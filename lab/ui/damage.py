"""Which rectangles of a window two display lists draw differently."""

import math
from collections import defaultdict
from collections.abc import Iterator, Sequence

from lab.ui.geometry import Rect
from lab.ui.ops import BoxOp, Op, visible_part

TILE_PX = 32
"""Damage is counted in squares of this side: a window is some thousand bits, one whole number a row of squares."""
MOST_RECTS = 12


def changed_rects(before: Sequence[Op], after: Sequence[Op], window: Rect) -> list[Rect]:
    """Few rectangles on whole pixels that hold all that differs; empty where nothing does."""
    first = _common_start(before, after)
    last = _common_end(before, after, first)
    old, new = before[first : len(before) - last], after[first : len(after) - last]
    loose = _unmatched(old, new)
    return _rects(_touched_rows(loose, window), window) if loose else []


def _common_start(before: Sequence[Op], after: Sequence[Op]) -> int:
    least = min(len(before), len(after))
    return next((i for i in range(least) if not _same(before[i], after[i])), least)


def _common_end(before: Sequence[Op], after: Sequence[Op], first: int) -> int:
    most = min(len(before), len(after)) - first
    return next((i for i in range(most) if not _same(before[-1 - i], after[-1 - i])), most)


def _same(one: Op, other: Op) -> bool:
    return one is other or (type(one) is type(other) and one == other)


def _unmatched(old: Sequence[Op], new: Sequence[Op]) -> list[Op]:
    """Operations of either list that the other does not have in the same order."""
    places: dict[Op, list[int]] = defaultdict(list)
    for place in range(len(old) - 1, -1, -1):
        places[old[place]].append(place)
    kept: set[int] = set()
    loose: list[Op] = []
    reached = -1
    for op in new:
        waiting = places.get(op)
        while waiting and waiting[-1] <= reached:
            waiting.pop()
        if waiting and type(old[waiting[-1]]) is type(op):
            reached = waiting.pop()
            kept.add(reached)
        else:
            loose.append(op)
    return loose + [op for place, op in enumerate(old) if place not in kept]


def _touched_rows(ops: Sequence[Op], window: Rect) -> list[int]:
    """For each row of squares, a number whose bit n says that square n is touched."""
    width, height = math.ceil(window.w), math.ceil(window.h)
    rows = [0] * (-(-height // TILE_PX))
    for op in ops:
        x, y, w, h = op.bounds if op.clip is None else op.bounds.common(op.clip)
        # Two pixels more on every side: smooth edges reach over. This runs for every changed operation of every
        # frame, so it is spelled out.
        left, right = int(x) - 2, int(x + w) + 2
        top, bottom = int(y) - 2, int(y + h) + 2
        if right <= 0 or bottom <= 0 or left >= width or top >= height or w <= 0 or h <= 0:
            continue
        first = left // TILE_PX if left > 0 else 0
        last = (right if right < width else width) - 1
        mask = (2 << last // TILE_PX) - (1 << first)
        lowest = (bottom if bottom < height else height) - 1
        for row in range(top // TILE_PX if top > 0 else 0, lowest // TILE_PX + 1):
            rows[row] |= mask
    return rows


def _runs(mask: int) -> Iterator[tuple[int, int]]:
    """(first, end) of each run of set bits."""
    place = 0
    while mask:
        skip = (mask & -mask).bit_length() - 1
        mask >>= skip
        place += skip
        length = (~mask & (mask + 1)).bit_length() - 1
        yield place, place + length
        mask >>= length
        place += length


def _rects(rows: Sequence[int], window: Rect) -> list[Rect]:
    """The touched squares as rectangles: bands of rows that touch, each cut into runs."""
    rects: list[Rect] = []
    row = 0
    while row < len(rows):
        if not rows[row]:
            row += 1
            continue
        top, mask = row, 0
        while row < len(rows) and rows[row]:
            mask |= rows[row]
            row += 1
        rects.extend(_square(first, end, top, row, window) for first, end in _runs(mask))
    if len(rects) > MOST_RECTS:
        whole = rects[0]
        for rect in rects:
            whole = whole.union(rect)
        return [whole]
    return rects


def _square(first: int, end: int, top: int, bottom: int, window: Rect) -> Rect:
    return Rect(first * TILE_PX, top * TILE_PX, (end - first) * TILE_PX, (bottom - top) * TILE_PX).common(window)


def first_needed(ops: Sequence[Op], rect: Rect) -> int:
    """Where to start drawing a rectangle: at the last plain box that hides all before it; 0 if there is none."""
    for place in range(len(ops) - 1, -1, -1):
        op = ops[place]
        if isinstance(op, BoxOp) and op.fill and len(op.fill) == 7 and not op.radius and visible_part(op).holds(rect):
            return place
    return 0
