"""How a question lies in the window: text beside the picture, or below it where the window is high."""

from __future__ import annotations

from dataclasses import dataclass

from lab.outline import Node
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.scroll import Scroll
from lab.ui.widgets.widget import Mood, Plain, Widget, facing

TEXT_PX = 352.0
"""Width of the text beside the picture; larger text takes more, but the picture keeps at least half."""

PICTURE_SHARE = 0.52
"""Of the height, for the picture above the text in a high window."""


@dataclass(frozen=True, slots=True)
class TextSheet(Plain):
    """The text of a question: what is read scrolls where it must, what is pressed stays at the foot."""

    key: str
    children: tuple[Widget, ...]
    foot: tuple[Widget, ...]
    gap: float = 12.0

    def least_width(self, look: Look) -> float:
        """Of what is in it."""
        return max(self._body.least_width(look), self._foot.least_width(look))

    def natural_width(self, look: Look) -> float:
        """As planned."""
        return text_width_px(look)

    def height(self, look: Look, width: float) -> float:
        """All of it."""
        return self._body.height(look, width) + self._foot.height(look, width)

    def place(self, look: Look, rect: Rect) -> tuple[tuple[Widget, Rect], ...]:
        """The text takes what the foot leaves; where all fits, the foot follows the text."""
        foot_h = min(rect.h, self._foot.height(look, rect.w))
        body_h = min(rect.h - foot_h, self._body.height(look, rect.w))
        body, rest = rect.cut_top(body_h)
        foot = rest.cut_top(foot_h)[0]
        return (Scroll(f"{self.key}.scroll", self._body), body), (self._foot, foot)

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> Node:
        """A panel."""
        return Node(self.key, "panel", "", bounds=rect, children=children)

    @property
    def _body(self) -> Panel:
        return Panel(f"{self.key}.body", children=self.children, fill="", gap=self.gap)

    @property
    def _foot(self) -> Panel:
        return Panel(f"{self.key}.foot", children=self.foot, fill="")


@dataclass(frozen=True, slots=True)
class Spread(Plain):
    """A header over a text and a picture."""

    header: Widget
    text: Widget
    picture: Widget
    key: str = "spread"

    def least_width(self, look: Look) -> float:
        """Of the widest."""
        return max(part.least_width(look) for part in (self.header, self.text, self.picture))

    def natural_width(self, look: Look) -> float:
        """The window's."""
        return look.sizes.width

    def height(self, look: Look, width: float) -> float:
        """The window's."""
        return look.sizes.height

    def place(self, look: Look, rect: Rect) -> tuple[tuple[Widget, Rect], ...]:
        """Beside each other, or the picture above."""
        head, below = rect.cut_top(self.header.height(look, rect.w))
        if look.sizes.portrait:
            picture, text = below.cut_top(round(below.h * PICTURE_SHARE))
            ground = Panel("text-ground", children=(self.text,), pad=0, weights=(1.0,), edge="top")
            return (self.header, head), (ground, text), (self.picture, picture)
        wide = min(max(text_width_px(look), self.text.least_width(look)), round(0.5 * below.w))
        text, picture = below.cut_left(wide)
        ground = Panel("text-ground", children=(self.text,), pad=0, weights=(1.0,), edge="right")
        return (self.header, head), (ground, facing(look, text, below)), (self.picture, facing(look, picture, below))

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> None:
        """Only arranges."""


@dataclass(frozen=True, slots=True)
class Over(Plain):
    """A picture with something over its upper edge, where the picture has nothing."""

    picture: Widget
    strip: Widget
    key: str = ""

    def least_width(self, look: Look) -> float:
        """Of the wider."""
        return max(self.picture.least_width(look), self.strip.least_width(look))

    def natural_width(self, look: Look) -> float:
        """The picture's."""
        return self.picture.natural_width(look)

    def height(self, look: Look, width: float) -> float:
        """The picture's."""
        return self.picture.height(look, width)

    def place(self, look: Look, rect: Rect) -> tuple[tuple[Widget, Rect], ...]:
        """The strip above the picture as seen, after it in reading."""
        return (self.picture, rect), (self.strip, rect.cut_top(self.strip.height(look, rect.w))[0])

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> None:
        """Only arranges."""


def text_width_px(look: Look) -> float:
    """How wide the text is meant to be beside a picture."""
    meant = look.sizes.px(TEXT_PX * (1.0 + 0.6 * (look.sizes.text_scale - 1.0)))
    return min(meant, round(0.5 * look.sizes.width))
