"""A card that leads to a place: a picture of it, its name, what one does there."""

from __future__ import annotations

from dataclasses import dataclass

from lab.outline import Node
from lab.ui.canvas import Canvas, Draw
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.outcomes import Pressed
from lab.ui.paragraph import draw_text, least_width, natural_width, text_height
from lab.ui.widgets.widget import Mood, Plain, Spot, facing, states

_HERE_EDGE = 2.5
"""How many times as thick the edge of the place is where one already is."""


@dataclass(frozen=True, slots=True)
class PlaceCard(Plain):
    """A place that one can go to: a picture, its name, what is there. The whole card is the target.

    side: of the picture, in design pixels.  here: what is said under the text of the place where one already is, ""
    for any other: its edge is thick besides.
    """

    key: str
    title: str
    text: str
    draw_in: Draw
    side: float = 124.0
    here: str = ""

    def least_width(self, look: Look) -> float:
        """Its longest word beside the picture."""
        words = max(least_width(look, text, style) for text, style in self._lines)
        return words + self._picture(look) + 3 * look.sizes.px(16)

    def natural_width(self, look: Look) -> float:
        """Its title on one line, its text on two or three."""
        text = max(natural_width(look, self.title, "title"), natural_width(look, self.text, "body") / 2)
        return text + self._picture(look) + 3 * look.sizes.px(16)

    def height(self, look: Look, width: float) -> float:
        """Its text, or its picture."""
        words = self._words_height(look, self._room(look, width))
        return max(look.sizes.main_target, self._picture(look), words) + 2 * look.sizes.px(14)

    def draw(self, canvas: Canvas, look: Look, rect: Rect, mood: Mood) -> None:
        """Draws the card."""
        theme, sizes = look.theme, look.sizes
        stroke = sizes.stroke * (_HERE_EDGE if self.here else 1.0)
        fill = theme.wash if self.key in mood.pressed else theme.panel
        canvas.box(rect.inset(stroke / 2), fill=fill, outline=theme.ink, width=stroke, radius=sizes.px(12))
        pad, side = sizes.px(16), self._picture(look)
        square = facing(look, Rect(rect.x + pad, rect.center[1] - side / 2, side, side), rect)
        canvas.box(square, fill=theme.paper, radius=sizes.px(8))
        with canvas.clipped(square):
            self.draw_in(canvas, square)
        room = self._room(look, rect.w)
        tall = self._words_height(look, room)
        box = facing(look, Rect(rect.x + 2 * pad + side, rect.center[1] - tall / 2, room, tall), rect)
        for number, (text, style) in enumerate(self._lines):
            used = draw_text(canvas, look, text, box, style=style, color="soft" if number == 1 else "ink")
            box = box.cut_top(used.h)[1]

    def spots(self, look: Look, rect: Rect) -> tuple[Spot, ...]:
        """All of it."""
        return (Spot(key=self.key, rect=rect, effect=Pressed(self.key)),)

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> Node:
        """A button; where one already is, it counts as selected."""
        flags = states(selected=bool(self.here), focused=mood.focused == self.key)
        return Node(self.key, "button", self.title, value=self.text, state=flags, bounds=rect, actions=("press",))

    @property
    def _lines(self) -> tuple[tuple[str, str], ...]:
        lines = ((self.title, "title"), (self.text, "body"))
        return (*lines, (self.here, "strong")) if self.here else lines

    def _words_height(self, look: Look, room: float) -> float:
        return sum(text_height(look, text, room, style) for text, style in self._lines)

    def _picture(self, look: Look) -> float:
        return look.sizes.px(self.side)

    def _room(self, look: Look, width: float) -> float:
        return max(1.0, width - self._picture(look) - 3 * look.sizes.px(16))
