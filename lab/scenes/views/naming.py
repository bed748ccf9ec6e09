"""Names of parts with their weights: each as near to its part as it finds a free place, the same one every time."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from lab.scenes.labels import LabelBoard, Spot
from lab.scenes.views.changes import label_face
from lab.scenes.views.paint import LEAST_PX, solid_px
from lab.scenes.views.stage import Panel
from lab.scenes.views.things import Thing, called, surface_of, things_of
from lab.scenes.views.view import BodyView
from lab.ui.canvas import Canvas
from lab.ui.geometry import Point, Rect, bounding

SLICES = 14
ROWS = 5
ABOVE_PX = 10.0
"""So much nearer a name over a part must be to be better than one under it."""

NEAR = 4.5
"""Of the small text: from a part to its name; a short name there is better than a long one farther off."""

SLENDER_SHARE = 0.5
"""Of its box: what covers less of it lies askew, and its name goes to its middle."""

SMALLER = 0.87
"""Of the small text: a name that finds no room is set a little smaller before it is shortened."""


@dataclass(frozen=True, slots=True)
class Named:
    """What is named: at which box, with which words, longer ones first."""

    key: str
    box: Rect
    texts: tuple[str, ...]
    strong: bool


def thing_rings_px(view: BodyView, panel: Panel, thing: Thing) -> list[list[Point]]:
    """The outlines of a thing in a face in pixels, as the body lies now."""
    least = view.look.sizes.px(LEAST_PX)
    if thing.hung:
        x, y = panel.px(thing.at_m)
        scale = panel.camera.px_per_m
        return [solid_px([(x + scale * a, y - scale * b) for a, b in rings[0]], least)
                for rings in thing.patches[panel.face]]  # fmt: skip
    return [solid_px([panel.flat_px(place) for place in rings[0]], least) for rings in thing.patches[panel.face]]


def thing_box(view: BodyView, panel: Panel, thing: Thing) -> Rect | None:
    """The bounds of a thing in a face; None where it shows nothing there."""
    points = [point for ring in thing_rings_px(view, panel, thing) for point in ring]
    return bounding(points) if points else None


def obstacles(view: BodyView, panel: Panel) -> list[Rect]:
    """The body as slices that names keep clear of."""
    found: list[Rect] = []
    for thing in things_of(view.body):
        for ring in thing_rings_px(view, panel, thing):
            found += _slices(tuple(ring))
    return found


@lru_cache(maxsize=512)
def _slices(ring: tuple[Point, ...]) -> tuple[Rect, ...]:
    """An outline cut upright into pieces, each the box of what lies in it."""
    box = bounding(ring)
    wide = box.w / SLICES
    if wide <= 2.0:
        return (box,)
    found = []
    edges = list(zip(ring, (*ring[1:], ring[0]), strict=True))
    for number in range(SLICES):
        left, right = box.x + number * wide, box.x + (number + 1) * wide
        ys = [y for x, y in ring if left <= x <= right]
        for (x0, y0), (x1, y1) in edges:
            for x in (left, right):
                if x0 != x1 and min(x0, x1) <= x <= max(x0, x1):
                    ys.append(y0 + (x - x0) / (x1 - x0) * (y1 - y0))
        if ys:
            found.append(Rect(left, min(ys), wide, max(ys) - min(ys)))
    return tuple(found)


def short_name(view: BodyView, name: str) -> str:
    """What a part is called in the picture: by itself, unless another one is called the same."""
    alone = called(name)
    others = [part.name for part in view.body.parts if part.name != name]
    return name.replace("/", " ") if any(called(other) == alone for other in others) else alone


def named_things(view: BodyView, panel: Panel) -> list[Named]:
    """What is named in a face, from the left to the right; the deciding parts first."""
    if view.labels == "none":
        return []
    found = []
    for thing in things_of(view.body):
        if thing.mass_kg > 0 and label_face(view, thing.at_m) == panel.face:
            box = _named_box(view, panel, thing)
            if box is not None:
                found.append(_named(view, thing.key, thing.name, thing.mass_kg, box))
    keys = {thing.key for thing in things_of(view.body)}
    for part in view.body.parts:
        surface = surface_of(view.body, part)
        if f"part:{part.name}" in keys or f"tank:{part.name}" in keys or surface is None:
            continue
        if label_face(view, part.at_m) == panel.face:
            x, y = panel.px(part.at_m)
            found.append(_named(view, f"surface:{surface.name}", part.name, part.mass_kg, Rect(x - 2, y - 2, 4, 4)))
    return sorted(found, key=lambda one: (not one.strong, one.box.center[0], one.key))


def _named_box(view: BodyView, panel: Panel, thing: Thing) -> Rect | None:
    """Where a thing is named: at all of it, or at its middle where it lies askew."""
    rings = thing_rings_px(view, panel, thing)
    if not rings:
        return None
    box = bounding(point for ring in rings for point in ring)
    pieces = [piece for ring in rings for piece in _slices(tuple(ring))]
    if len(pieces) < SLICES or sum(piece.area for piece in pieces) > SLENDER_SHARE * box.area:
        return box
    return min(pieces, key=lambda piece: abs(piece.center[0] - box.center[0]))


def _named(view: BodyView, key: str, name: str, mass_kg: float, box: Rect) -> Named:
    words = view.look.words
    text = words.content(short_name(view, name))
    strong = name in view.highlighted
    if view.labels == "names":
        return Named(key, box, (text,), strong)
    weight = view.readings.weight_with_unit(mass_kg)
    return Named(key, box, (words.say("{part} {weight}", part=text, weight=weight), weight), strong)


def draw_names(canvas: Canvas, view: BodyView, panel: Panel, board: LabelBoard) -> None:
    """Write the names; a line leads to those that lie off their part."""
    solid = obstacles(view, panel)
    board.keep_clear(solid)
    theme, sizes = view.look.theme, view.look.sizes
    rows = [panel.row(name) for name in ("scales", "ruler", "turning")]
    # Under a scale or a ruler a name would be taken for its.
    lowest = min((row.y for row in rows if row.h), default=panel.frame.bottom) - sizes.text("small")
    usual = (sizes.text("small"), round(SMALLER * sizes.text("small")))
    for named in named_things(view, panel):
        color = theme.ink if named.strong else theme.soft
        spots = [spot for spot in _spots(view, named.box, solid, aside=panel.face != "side") if spot[0][1] < lowest]
        near = [spot for spot in spots if _off(named.box, spot[0]) <= NEAR * usual[0]]
        placed = board.place_one_of(named.texts, near, sizes=usual, color=color, bold=named.strong)
        placed = placed or board.place_one_of(named.texts, spots, sizes=usual, color=color, bold=named.strong)
        if placed is not None:
            _draw_leader(canvas, view, named.box, placed)


def _spots(view: BodyView, box: Rect, solid: list[Rect], *, aside: bool) -> list[Spot]:
    """Places for a name: under the body below its part, over it, beside the part; then farther off.

    aside: beside the body at the height of the part before all else.
    """
    sizes = view.look.sizes
    gap, line = sizes.px(6), 1.32 * sizes.text("small")
    (x, y), size = box.center, sizes.text("small")
    over = [each for each in solid if each.x - gap < x < each.right + gap]
    low = max([box.bottom, *(each.bottom for each in over)])
    high = min([box.y, *(each.y for each in over)])
    level = [each for each in solid if each.y < y < each.bottom]
    spots: list[Spot] = []
    for row in range(ROWS):
        down, up = low + gap + row * line, high - gap - row * line
        for shift in (0.0, 1.25 * size, -1.25 * size, 3.0 * size, -3.0 * size):
            spots.append(((x + shift, down), "center top"))
            spots.append(((x + shift, up), "center bottom"))
        spots += [((x - gap, down), "left top"), ((x + gap, down), "right top")]
        spots += [((x - gap, up), "left bottom"), ((x + gap, up), "right bottom")]
    spots += [((box.right + gap, y), "left middle"), ((box.x - gap, y), "right middle")]
    # The nearest place is the best one; of two, the lower: there a name stands like a caption.
    spots.sort(key=lambda spot: _off(box, spot[0]) + (0.0 if spot[0][1] > y else ABOVE_PX))
    beside: list[Spot] = [
        ((max([box.right, *(each.right for each in level)]) + gap, y), "left middle"),
        ((min([box.x, *(each.x for each in level)]) - gap, y), "right middle"),
    ]
    return beside + spots if aside else spots + beside


def _off(box: Rect, point: Point) -> float:
    """How far a point lies from a box."""
    return _away(box.x, box.right, point[0]) + _away(box.y, box.bottom, point[1])


def _away(low: float, high: float, value: float) -> float:
    return max(low - value, 0.0, value - high)


def _draw_leader(canvas: Canvas, view: BodyView, box: Rect, text: Rect) -> None:
    """From a part to its name, where that is not right beside it."""
    sizes, theme = view.look.sizes, view.look.theme
    if text.grown(sizes.px(9)).intersects(box):
        return
    start_x = min(max(box.center[0], text.x + 4), text.right - 4)
    inside = min(max(start_x, box.x), box.right)
    if text.y >= box.bottom:
        ends = ((inside, box.bottom), (start_x, text.y + 1))
    elif text.bottom <= box.y:
        ends = ((inside, box.y), (start_x, text.bottom - 1))
    elif text.x >= box.right:
        ends = ((box.right, box.center[1]), (text.x - 2, text.center[1]))
    else:
        ends = ((box.x, box.center[1]), (text.right + 2, text.center[1]))
    canvas.line(ends, theme.edge, width=max(1.0, sizes.px(1)))
    canvas.circle(ends[0], max(2.0, sizes.px(2)), fill=theme.edge)
