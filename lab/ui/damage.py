"""Which rectangles of a window two display lists draw differently."""

from collections import defaultdict
from collections.abc import Sequence

from lab.ui.geometry import Rect
from lab.ui.ops import BoxOp, Op, visible_part

MOST_RECTS = 12
_SLACK_PX = 24.0 * 24.0


def changed_rects(before: Sequence[Op], after: Sequence[Op], window: Rect) -> list[Rect]:
    """Few rectangles on whole pixels that hold all that differs; empty where nothing does."""
    first = _common_start(before, after)
    last = _common_end(before, after, first)
    old, new = before[first : len(before) - last], after[first : len(after) - last]
    return merged([rect for op in _unmatched(old, new) if (rect := _whole(visible_part(op), window)) is not None])


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


def _whole(rect: Rect, window: Rect) -> Rect | None:
    """Grown to whole pixels, within the window; None where nothing is left."""
    seen = rect.grown(1.0).common(window)
    if seen.w <= 0 or seen.h <= 0:
        return None
    x, y = float(seen.x // 1), float(seen.y // 1)
    return Rect(x, y, -((x - seen.right) // 1), -((y - seen.bottom) // 1))


def merged(rects: Sequence[Rect]) -> list[Rect]:
    """Fewer rectangles that hold the same area: those are joined that touch or waste little."""
    joined: list[Rect] = []
    for rect in rects:
        current, grew = rect, True
        while grew:
            grew = False
            for place, other in enumerate(joined):
                both = current.union(other)
                if both.area <= current.area + other.area + _SLACK_PX or current.intersects(other):
                    current, grew = both, True
                    del joined[place]
                    break
        joined.append(current)
    while len(joined) > MOST_RECTS:
        joined = _closest_joined(joined)
    return joined


def _closest_joined(rects: list[Rect]) -> list[Rect]:
    """The two whose union wastes least made one; then what that touches is joined too."""
    pairs = [(i, j) for i in range(len(rects)) for j in range(i)]
    i, j = min(
        pairs, key=lambda pair: rects[pair[0]].union(rects[pair[1]]).area - rects[pair[0]].area - rects[pair[1]].area
    )
    return merged([rects[i].union(rects[j]), *(rect for n, rect in enumerate(rects) if n not in (i, j))])


def first_needed(ops: Sequence[Op], rect: Rect) -> int:
    """Where to start drawing a rectangle: at the last plain box that hides all before it; 0 if there is none."""
    for place in range(len(ops) - 1, -1, -1):
        op = ops[place]
        if isinstance(op, BoxOp) and op.fill and len(op.fill) == 7 and not op.radius and visible_part(op).holds(rect):
            return place
    return 0
