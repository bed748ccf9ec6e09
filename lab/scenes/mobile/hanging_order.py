"""How long each cord is drawn, so that nothing in a mobile covers anything.

Cords take no part in any sum, so a picture gives them the length that room asks for: along, all is to scale; down,
what hangs beside something wider hangs higher, and all that would cover it hangs lower.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from lab.simulation.benches import Beam, Mobile
from lab.ui.geometry import Rect

MOST_SHIFTS = 400


@dataclass(frozen=True, slots=True, kw_only=True)
class Sizing:
    """Sizes in pixels. px_per_m: along.  gap: kept between things.  cord: the shortest.  half_bar: half a bar's depth.

    bodies: width and height of each weight by its id.
    """

    px_per_m: float
    gap: float
    cord: float
    half_bar: float
    bodies: Mapping[int, tuple[float, float]]

    def ring(self, beam: Beam) -> float:
        """From a bar's ring down to its hooks."""
        return beam.pin_up_m * self.px_per_m


@dataclass(frozen=True, slots=True)
class _Block:
    """Something with all below it: boxes from its own top, and how far to either side it reaches."""

    id: int
    boxes: tuple[Rect, ...]

    @property
    def left(self) -> float:
        return min(box.x for box in self.boxes)

    @property
    def right(self) -> float:
        return max(box.right for box in self.boxes)


@dataclass(frozen=True, slots=True, kw_only=True)
class Arrangement:
    """drops_px: from the bar above down to each thing's top, by its id.  boxes: all it takes, from the topmost ring."""

    drops_px: Mapping[int, float]
    boxes: tuple[Rect, ...]

    @property
    def height(self) -> float:
        """From the topmost ring to the lowest edge."""
        return max(box.bottom for box in self.boxes)


def arranged(bench: Mobile, sizing: Sizing) -> Arrangement:
    """The length of every cord while all bars are level."""
    drops: dict[int, float] = {}
    blocks: dict[int, _Block] = {}
    # The lowest first: what hangs from a bar is whole when the bar is.
    for beam in reversed(bench.beams):
        hooks = {weight.id: weight.at_m for weight in beam.weights}
        items = [_weight(weight.id, sizing) for weight in beam.weights]
        for each in bench.beams:
            if each.above == beam.id:
                hooks[each.id] = each.hook_m
                items.append(blocks[each.id])
        blocks[beam.id] = _hung(beam, items, hooks, sizing, drops)
    return Arrangement(drops_px=drops, boxes=blocks[bench.beams[0].id].boxes)


def _weight(number: int, sizing: Sizing) -> _Block:
    wide, high = sizing.bodies[number]
    return _Block(number, (Rect(-wide / 2, 0.0, wide, high),))


def _hung(
    beam: Beam, items: list[_Block], hooks: Mapping[int, float], sizing: Sizing, drops: dict[int, float]
) -> _Block:
    """A bar with what hangs from it, the drops of which it adds."""
    ring, half = sizing.ring(beam), sizing.half_bar
    places = {number: (at_m - beam.pin_m) * sizing.px_per_m for number, at_m in hooks.items()}
    wood = Rect(-beam.pin_m * sizing.px_per_m, ring - half, beam.length_m * sizing.px_per_m, 2 * half)
    bail = Rect(-sizing.gap, min(0.0, ring), 2 * sizing.gap, abs(ring))
    taken = [wood]
    for item in _in_order(items, places):
        x = places[item.id]
        drop = _drop(item, x, ring, taken, sizing)
        drops[item.id] = drop
        taken.append(Rect(x - 2, ring + half, 4, drop - half))
        taken += [Rect(box.x + x, box.y + ring + drop, box.w, box.h) for box in item.boxes]
    return _Block(beam.id, (bail, *taken))


def _in_order(items: list[_Block], places: Mapping[int, float]) -> list[_Block]:
    """First what comes under no other's cord, and of these the narrowest: it can hang high."""
    left, order = list(items), []
    while left:

        def in_the_way(item: _Block) -> tuple[int, float, int]:
            x = places[item.id]
            reach = (x + item.left, x + item.right)
            over = sum(reach[0] < places[each.id] < reach[1] for each in left if each is not item)
            return over, item.right - item.left, item.id

        first = min(left, key=in_the_way)
        left.remove(first)
        order.append(first)
    return order


def _drop(item: _Block, x: float, ring: float, taken: list[Rect], sizing: Sizing) -> float:
    """The shortest cord on which a thing covers nothing that hangs already."""
    drop = sizing.half_bar + sizing.cord
    for _ in range(MOST_SHIFTS):
        lower = [
            drop + other.bottom + sizing.gap - (box.y + ring + drop)
            for box in item.boxes
            for other in taken
            if _meet(box, x, ring + drop, other, sizing.gap)
        ]
        if not lower:
            break
        drop = max(lower)
    return drop


def _meet(box: Rect, x: float, y: float, other: Rect, gap: float) -> bool:
    return (
        box.x + x < other.right + gap
        and other.x - gap < box.right + x
        and box.y + y < other.bottom + gap - 0.01
        and other.y - gap < box.bottom + y
    )
