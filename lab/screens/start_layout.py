"""How the start screen lies in the window."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from lab.outline import Node
from lab.scenes.marks import draw_quartered
from lab.screens.top_bar import HELP, LOOKS
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.widgets.arrange import Row
from lab.ui.widgets.button import Button
from lab.ui.widgets.label import Label
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.scroll import Scroll
from lab.ui.widgets.widget import Mood, Plain, Widget, facing

BELOW_SHARE = 0.42
"""Of the height, at most, for what stands below the picture in a wide window; more, and it stands beside it."""

LEARNER = "learner"
"""Key of the button with the learner's code."""

BESIDE_SHARE = 0.5
PORTRAIT_SHARE = 0.5


@dataclass(frozen=True, slots=True)
class StartSheet(Plain):
    """Header, picture, and what leads on: below the picture, or beside it where the text is large."""

    header: Widget
    picture: Widget
    onward: Widget
    key: str = "start"

    def least_width(self, look: Look) -> float:
        """Of the widest."""
        return max(part.least_width(look) for part in (self.header, self.picture, self.onward))

    def natural_width(self, look: Look) -> float:
        """The window's."""
        return look.sizes.width

    def height(self, look: Look, width: float) -> float:
        """The window's."""
        return look.sizes.height

    def place(self, look: Look, rect: Rect) -> tuple[tuple[Widget, Rect], ...]:
        """The picture gets what the rest leaves."""
        head, below = rect.cut_top(self.header.height(look, rect.w))
        tall = self._ground("top").height(look, rect.w)
        most = PORTRAIT_SHARE if look.sizes.portrait else BELOW_SHARE
        if tall <= most * below.h or look.sizes.portrait:
            onward, picture = below.cut_bottom(min(tall, round(most * below.h)))
            return (self.header, head), (self.picture, picture), (self._ground("top"), onward)
        wide = round(min(BESIDE_SHARE * below.w, max(0.36 * below.w, self._ground("left").least_width(look))))
        onward, picture = below.cut_right(wide)
        ground = self._ground("left")
        return (self.header, head), (self.picture, facing(look, picture, below)), (ground, facing(look, onward, below))

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> None:
        """Only arranges."""

    def _ground(self, edge: Literal["top", "left"]) -> Panel:
        inner = Panel("onward-ground", children=(self.onward,), fill="")
        return Panel("onward-edge", children=(Scroll("onward.scroll", inner),), pad=0, weights=(1.0,), edge=edge)


@dataclass(frozen=True, slots=True)
class Mark(Plain):
    """Our mark before our name: the disc in quarters that marks a balance point."""

    key: str = ""

    def least_width(self, look: Look) -> float:
        """Its disc and the margin of the page."""
        return look.sizes.px(12) + look.sizes.text("heading")

    def natural_width(self, look: Look) -> float:
        """The same."""
        return self.least_width(look)

    def height(self, look: Look, width: float) -> float:
        """Its disc."""
        return look.sizes.text("heading")

    def draw(self, canvas: Canvas, look: Look, rect: Rect, mood: Mood) -> None:
        """Draws the disc at the inner side."""
        side = look.sizes.text("heading")
        disc = facing(look, Rect(rect.right - side, rect.center[1] - side / 2, side, side), rect)
        draw_quartered(canvas, look, disc.center, side / 2)

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> None:
        """Says nothing that the name does not say."""


def has_room(look: Look) -> bool:
    """Whether the masthead has room for the learner's code."""
    return look.sizes.text_scale <= 1.2 and not look.sizes.portrait


def masthead(look: Look, *, code: str) -> Panel:
    """The bar at the top of the start screen.  code: of the learner, "" for none there."""
    say = look.words.say
    name = Label("name", say("Tiltbench"), style="heading", middle=True)
    whose = (Button(LEARNER, code, kind="quiet"),) if code else ()
    shown = (*whose, Button(LOOKS, say("Aa"), kind="quiet"), Button(HELP, say("?"), kind="quiet"))
    buttons = Row(shown, weights=(0.0,) * len(shown))
    row = Row((Mark(), name, buttons), weights=(0.0, 1.0, 0.0), gap=12, align="middle", wraps=False)
    return Panel("header", children=(row,), pad=8, edge="bottom")
