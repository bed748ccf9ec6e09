"""Putting widgets beside and below each other."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from lab.outline import Node
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.widgets.scroll import Scroll
from lab.ui.widgets.widget import Mood, Plain, Widget, facing


def shared(room: float, wants: Sequence[float], weights: Sequence[float]) -> list[float]:
    """Lengths that fill `room`: what is left over (or lacking) is shared by weight; none below its want
    unless room is short; with no weight at all everything keeps its want."""
    total = sum(weights)
    if not total:
        return list(wants)
    lengths = [0.0] * len(wants)
    open_ = [i for i, weight in enumerate(weights) if weight > 0]
    left = room - sum(want for want, weight in zip(wants, weights, strict=True) if weight <= 0)
    for i, weight in enumerate(weights):
        if weight <= 0:
            lengths[i] = wants[i]
    asked = sum(wants[i] for i in open_)
    if asked > left:
        given = max(0.0, left) / asked if asked else 0.0
        for i in open_:
            lengths[i] = wants[i] * given
        return lengths
    while open_:
        share = left / sum(weights[i] for i in open_)
        short = [i for i in open_ if wants[i] > share * weights[i]]
        if not short:
            for i in open_:
                lengths[i] = share * weights[i]
            return lengths
        for i in short:
            lengths[i] = wants[i]
            left -= wants[i]
            open_.remove(i)
    return lengths


@dataclass(frozen=True, slots=True)
class Spacer(Plain):
    """Nothing, of a least size in design pixels; a weight in its row or column makes it grow."""

    width: float = 0.0
    tall: float = 0.0
    key: str = ""

    def least_width(self, look: Look) -> float:
        """Its width."""
        return look.sizes.px(self.width)

    def natural_width(self, look: Look) -> float:
        """Its width."""
        return look.sizes.px(self.width)

    def height(self, look: Look, width: float) -> float:
        """Its height."""
        return look.sizes.px(self.tall)

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> None:
        """Nothing to tell."""


@dataclass(frozen=True, slots=True)
class Sized(Plain):
    """A child with a width or height of its own, in design pixels; with_text: grown by the text scale too."""

    child: Widget
    width: float | None = None
    tall: float | None = None
    with_text: bool = False
    key: str = ""

    def least_width(self, look: Look) -> float:
        """The given width, or the child's."""
        return self.child.least_width(look) if self.width is None else self._scaled(look, self.width)

    def natural_width(self, look: Look) -> float:
        """The given width, or the child's."""
        return self.child.natural_width(look) if self.width is None else self._scaled(look, self.width)

    def height(self, look: Look, width: float) -> float:
        """The given height, or the child's."""
        return self.child.height(look, width) if self.tall is None else self._scaled(look, self.tall)

    def place(self, look: Look, rect: Rect) -> tuple[tuple[Widget, Rect], ...]:
        """The child in all of it."""
        return ((self.child, rect),)

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> None:
        """Only arranges."""

    def _scaled(self, look: Look, design_px: float) -> float:
        return look.sizes.px(design_px * (look.sizes.text_scale if self.with_text else 1.0))


@dataclass(frozen=True, slots=True)
class Steady(Plain):
    """A child with the height of the highest of `others` at least: what stands in its place at another time.

    What lies round it then stays where it is when they take turns.
    """

    child: Widget
    others: tuple[Widget, ...]
    key: str = ""

    def least_width(self, look: Look) -> float:
        """The widest's, for each must have room."""
        return max(each.least_width(look) for each in (self.child, *self.others))

    def natural_width(self, look: Look) -> float:
        """The widest's."""
        return max(each.natural_width(look) for each in (self.child, *self.others))

    def height(self, look: Look, width: float) -> float:
        """The highest's."""
        return max(each.height(look, width) for each in (self.child, *self.others))

    def place(self, look: Look, rect: Rect) -> tuple[tuple[Widget, Rect], ...]:
        """The child at the top."""
        return ((self.child, rect),)

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> None:
        """Only arranges."""


@dataclass(frozen=True, slots=True)
class Column(Plain):
    """Children below each other, as wide as the column.

    gap: between them in design pixels; None for the gap between targets.  weights: how height left over is shared,
    one a child; none leaves it at the bottom.
    """

    children: tuple[Widget, ...]
    gap: float | None = None
    weights: tuple[float, ...] = ()
    key: str = ""

    def least_width(self, look: Look) -> float:
        """The widest child's least."""
        return max((child.least_width(look) for child in self.children), default=0.0)

    def natural_width(self, look: Look) -> float:
        """The widest child's."""
        return max((child.natural_width(look) for child in self.children), default=0.0)

    def height(self, look: Look, width: float) -> float:
        """All heights and gaps."""
        gaps = gap_px(look, self.gap) * max(0, len(self.children) - 1)
        return gaps + sum(child.height(look, width) for child in self.children)

    def place(self, look: Look, rect: Rect) -> tuple[tuple[Widget, Rect], ...]:
        """From the top down."""
        return stacked(look, self.children, rect, gap=gap_px(look, self.gap), weights=self.weights)

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> None:
        """Only arranges."""


@dataclass(frozen=True, slots=True)
class Row(Plain):
    """Children beside each other in reading direction; below each other where it is too narrow for them.

    gap: in design pixels; None for the gap between targets.  weights: how width is shared, one a child, 0 for those
    that keep their natural width; none at all shares it evenly.  align: "fill" gives each the row's height,
    "middle" centres each in it.  wraps: False where going below each other is never wanted.
    """

    children: tuple[Widget, ...]
    gap: float | None = None
    weights: tuple[float, ...] = ()
    align: Literal["fill", "middle"] = "fill"
    wraps: bool = True
    key: str = ""

    def least_width(self, look: Look) -> float:
        """Of the widest child if it may wrap, of all of them if not."""
        wide = [child.least_width(look) for child in self.children]
        return max(wide, default=0.0) if self.wraps else sum(wide) + self._gaps(look)

    def natural_width(self, look: Look) -> float:
        """All of them beside each other."""
        return sum(child.natural_width(look) for child in self.children) + self._gaps(look)

    def height(self, look: Look, width: float) -> float:
        """The highest child, or all of them where they do not fit beside each other."""
        if self.too_narrow(look, width):
            gaps = gap_px(look, self.gap) * max(0, len(self.children) - 1)
            return gaps + sum(child.height(look, width) for child in self.children)
        widths = self._widths(look, width)
        pairs = zip(self.children, widths, strict=True)
        return max((child.height(look, wide) for child, wide in pairs), default=0.0)

    def place(self, look: Look, rect: Rect) -> tuple[tuple[Widget, Rect], ...]:
        """Beside each other, or below."""
        if self.too_narrow(look, rect.w):
            return stacked(look, self.children, rect, gap=gap_px(look, self.gap))
        placed, x = [], rect.x
        for child, wide in zip(self.children, self._widths(look, rect.w), strict=True):
            tall = rect.h if self.align == "fill" else min(rect.h, child.height(look, wide))
            box = Rect(x, rect.y + (rect.h - tall) / 2, wide, tall)
            placed.append((child, facing(look, box, rect)))
            x += wide + gap_px(look, self.gap)
        return tuple(placed)

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> None:
        """Only arranges."""

    def too_narrow(self, look: Look, width: float) -> bool:
        """Whether the children must go below each other."""
        least = sum(child.least_width(look) for child in self.children) + self._gaps(look)
        return self.wraps and len(self.children) > 1 and least > width + 0.5

    def _gaps(self, look: Look) -> float:
        return gap_px(look, self.gap) * max(0, len(self.children) - 1)

    def _widths(self, look: Look, width: float) -> list[float]:
        weights = self.weights or (1.0,) * len(self.children)
        least = [child.least_width(look) for child in self.children]
        wants = [
            small if weight > 0 else child.natural_width(look)
            for child, small, weight in zip(self.children, least, weights, strict=True)
        ]
        room = width - self._gaps(look)
        # Natural widths may ask for more than there is: then everybody gives way, down to its least.
        over = sum(wants) - room
        slack = sum(want - small for want, small in zip(wants, least, strict=True))
        if over > 0 and slack > 0:
            give = min(1.0, over / slack)
            wants = [want - (want - small) * give for want, small in zip(wants, least, strict=True)]
        return shared(room, wants, weights)


def gap_px(look: Look, gap: float | None) -> float:
    """A gap in pixels."""
    return look.sizes.gap if gap is None else look.sizes.px(gap)


def stacked(
    look: Look,
    children: Sequence[Widget],
    rect: Rect,
    *,
    gap: float,
    weights: Sequence[float] = (),
) -> tuple[tuple[Widget, Rect], ...]:
    """Children from the top of a rectangle down, all as wide as it."""
    heights = [child.height(look, rect.w) for child in children]
    if any(weights):
        flexible = zip(children, heights, weights, strict=True)
        heights = [_least_height(look, child, tall) if weight > 0 else tall for child, tall, weight in flexible]
        heights = shared(rect.h - gap * max(0, len(children) - 1), heights, weights)
    placed, y = [], rect.y
    for child, tall in zip(children, heights, strict=True):
        placed.append((child, Rect(rect.x, y, rect.w, tall)))
        y += tall + gap
    return tuple(placed)


def _least_height(look: Look, child: Widget, tall: float) -> float:
    """The height below which a child is no use: for a scroll column a few targets, for others all they need."""
    if isinstance(child, Sized) and child.tall is None:
        return _least_height(look, child.child, tall)
    return min(tall, 4 * look.sizes.target) if isinstance(child, Scroll) else tall
