"""Where every widget lies, worked out once from the tree; drawing, hit tests and the outline all use it."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace

from lab.outline import Node
from lab.ui.canvas import Canvas
from lab.ui.draw_memory import DrawMemory
from lab.ui.geometry import Point, Rect
from lab.ui.look import Look
from lab.ui.widgets.arrange import Column, Row, Sized
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.picture import Picture
from lab.ui.widgets.scroll import Scroll
from lab.ui.widgets.widget import Mood, Spot, Widget


@dataclass(frozen=True, slots=True)
class Placed:
    """A widget, where it lies, what it is clipped to (None: the window), and what it holds."""

    widget: Widget
    rect: Rect
    clip: Rect | None
    scrolls: tuple[str, ...]
    children: tuple["Placed", ...]


@dataclass(frozen=True, slots=True)
class Target:
    """A spot, what it is clipped to, the scroll columns that it lies in (outermost first), the widget it is on."""

    spot: Spot
    clip: Rect | None
    scrolls: tuple[str, ...]
    layer: int
    owner: Widget

    @property
    def key(self) -> str:
        """The spot's."""
        return self.spot.key

    def reach(self, least: float) -> Rect:
        """Where a pointer hits it: at least `least` on a side unless it is a bare ground, within its clip."""
        rect = self.spot.rect if self.spot.press_at else self.spot.rect.at_least(least, least)
        return rect if self.clip is None else rect.common(self.clip)


@dataclass(frozen=True, slots=True)
class ScrollPlace:
    """A scroll column: its place, the height of what is in it, how far it is moved."""

    rect: Rect
    content: float
    offset: float

    @property
    def furthest(self) -> float:
        """The largest offset."""
        return max(0.0, self.content - self.rect.h)


@dataclass(slots=True)
class _Plan:
    look: Look
    offsets: Mapping[str, float]
    scrolls: dict[str, ScrollPlace] = field(default_factory=dict)

    def place(self, widget: Widget, rect: Rect, clip: Rect | None, within: tuple[str, ...]) -> Placed:
        held = widget.place(self.look, rect)
        inner, shift = clip, 0.0
        if isinstance(widget, Scroll):
            whole = held[0][1].h
            at = min(max(0.0, self.offsets.get(widget.key, 0.0)), max(0.0, whole - rect.h))
            self.scrolls[widget.key] = ScrollPlace(rect, whole, at)
            inner = rect if clip is None else rect.common(clip)
            within, shift = (*within, widget.key), -at
        children = tuple(self.place(child, box.moved(0.0, shift), inner, within) for child, box in held)
        return Placed(widget, rect, clip, within, children)


@dataclass(frozen=True, slots=True)
class Arrangement:
    """All layers of a window, the lowest first, with their spots in reading order and their scroll columns."""

    look: Look
    layers: tuple[Placed, ...]
    targets: tuple[Target, ...]
    scrolls: Mapping[str, ScrollPlace]

    def draw(self, canvas: Canvas, mood: Mood, memory: DrawMemory) -> None:
        """Draws every layer."""
        for layer in self.layers:
            self._draw(canvas, layer, mood, memory)

    def outline(self, mood: Mood) -> Node:
        """The whole window as one tree."""
        whole = Rect(0.0, 0.0, self.look.sizes.width, self.look.sizes.height)
        nodes = [node for layer in self.layers for node in self._nodes(layer, mood)]
        return Node("screen", "screen", "", bounds=whole, children=tuple(nodes))

    def hit(self, point: Point, *, layer: int) -> Target | None:
        """What a pointer hits: what was drawn under it, topmost first, else the nearest that is close enough."""
        least = self.look.sizes.target
        near = [t for t in self.targets if t.layer >= layer and t.reach(least).contains(point)]
        drawn = [t for t in near if t.spot.rect.contains(point) and not t.spot.press_at]
        if drawn:
            return max(enumerate(drawn), key=lambda pair: (pair[1].layer, -pair[1].spot.rect.area, pair[0]))[1]
        close = [t for t in near if not t.spot.press_at]
        if close:
            return min(close, key=lambda t: distance(point, t.spot.rect))
        return near[-1] if near else None

    def scroll_at(self, point: Point) -> str | None:
        """The innermost scroll column under a point that has somewhere to go."""
        under = [key for key, place in self.scrolls.items() if place.furthest > 0 and place.rect.contains(point)]
        return under[-1] if under else None

    def rect(self, key: str) -> Rect | None:
        """Where the spot or widget of a key lies."""
        for target in self.targets:
            if target.key == key:
                return target.spot.rect
        return next((placed.rect for layer in self.layers for placed in _walk(layer) if placed.widget.key == key), None)

    def _draw(self, canvas: Canvas, placed: Placed, mood: Mood, memory: DrawMemory) -> None:
        clip = placed.clip
        if clip is None:
            memory.draw(canvas, self.look, placed.widget, placed.rect, mood)
        elif placed.rect.grown(self.look.sizes.px(12)).intersects(clip):
            with canvas.clipped(clip):
                memory.draw(canvas, self.look, placed.widget, placed.rect, mood, clip=clip)
        for child in placed.children:
            self._draw(canvas, child, mood, memory)
        if isinstance(placed.widget, Scroll):
            self._draw_bar(canvas, self.scrolls[placed.widget.key])

    def _draw_bar(self, canvas: Canvas, place: ScrollPlace) -> None:
        """The bar beside a scroll column: how much there is, where one is."""
        if place.furthest <= 0.5:
            return
        sizes, theme, rect = self.look.sizes, self.look.theme, place.rect
        wide, room = sizes.px(6), rect.h - 2 * sizes.px(4)
        tall = max(sizes.px(24), room * rect.h / place.content)
        y = rect.y + sizes.px(4) + (room - tall) * place.offset / place.furthest
        x = rect.x + sizes.px(3) if sizes.mirrored else rect.right - wide - sizes.px(3)
        canvas.box(Rect(x, y, wide, tall), fill=theme.edge, radius=wide / 2)

    def _nodes(self, placed: Placed, mood: Mood) -> list[Node]:
        children = [node for child in placed.children for node in self._nodes(child, mood)]
        own = placed.widget.node(self.look, placed.rect, mood, tuple(children))
        return [own] if own is not None else children


def distance(point: Point, rect: Rect) -> float:
    """From a point to the nearest place of a rectangle; 0 inside."""
    dx = max(rect.x - point[0], 0.0, point[0] - rect.right)
    dy = max(rect.y - point[1], 0.0, point[1] - rect.bottom)
    return float((dx * dx + dy * dy) ** 0.5)


def _walk(placed: Placed) -> Iterator[Placed]:
    yield placed
    for child in placed.children:
        yield from _walk(child)


def arrange(look: Look, layers: tuple[Widget, ...], offsets: Mapping[str, float]) -> Arrangement:
    """Lays out the layers of a window, each over the whole of it."""
    plan = _Plan(look, offsets)
    whole = Rect(0.0, 0.0, look.sizes.width, look.sizes.height)
    placed = tuple(plan.place(widget, whole, None, ()) for widget in layers)
    targets = tuple(
        target
        for number, layer in enumerate(placed)
        for part in _walk(layer)
        for target in _targets(look, part, number)
    )
    return Arrangement(look, placed, targets, plan.scrolls)


def _targets(look: Look, part: Placed, layer: int) -> Iterator[Target]:
    for spot in part.widget.spots(look, part.rect):
        yield Target(spot, part.clip, part.scrolls, layer, part.widget)


def pictures_in(widget: object) -> Iterator[Picture]:
    """The pictures in a tree, as far as it is made of the arranging widgets."""
    if isinstance(widget, Picture):
        yield widget
    elif isinstance(widget, Sized | Scroll):
        yield from pictures_in(widget.child)
    elif isinstance(widget, Column | Row | Panel):
        for child in widget.children:
            yield from pictures_in(child)


def renewed(scene: Arrangement, root: Widget) -> Arrangement | None:
    """The same arrangement with the pictures of an equal tree; None where not all of them are found in it."""
    fresh = {picture.key: picture for picture in pictures_in(root)}
    held = {part.widget.key for part in _walk(scene.layers[0]) if isinstance(part.widget, Picture)}
    if held != set(fresh):
        return None
    bottom = _with_pictures(scene.layers[0], fresh)
    parts = {part.widget.key: part for part in _walk(bottom) if isinstance(part.widget, Picture)}
    targets: list[Target] = []
    for target in scene.targets:
        if not isinstance(target.owner, Picture):
            targets.append(target)
        elif target.owner.key in parts:
            targets.extend(_targets(scene.look, parts.pop(target.owner.key), target.layer))
    return Arrangement(scene.look, (bottom, *scene.layers[1:]), tuple(targets), scene.scrolls)


def _with_pictures(placed: Placed, fresh: Mapping[str, Picture]) -> Placed:
    if isinstance(placed.widget, Picture):
        return replace(placed, widget=fresh[placed.widget.key])
    children = tuple(_with_pictures(child, fresh) for child in placed.children)
    if all(new is old for new, old in zip(children, placed.children, strict=True)):
        return placed
    return replace(placed, children=children)
