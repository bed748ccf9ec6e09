"""Things to take and put into the picture."""

import math
from dataclasses import dataclass, field

from lab.outline import Node
from lab.ui.canvas import Canvas, Draw
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.outcomes import Pressed
from lab.ui.paragraph import draw_middle, least_width, natural_width, text_height
from lab.ui.widgets.button import Face, draw_body
from lab.ui.widgets.panel import draw_heading, heading_height
from lab.ui.widgets.widget import Mood, Plain, Spot, Widget, facing, forwards, states

_PICTURE_PX = 58.0


@dataclass(frozen=True, slots=True)
class TrayItem:
    """One thing: its text below its picture.  picked: taken up, waiting to be put somewhere.

    draw: always the same for one key; it does not count when items are compared.
    """

    key: str
    text: str
    draw: Draw = field(compare=False)
    picked: bool = False
    enabled: bool = True


@dataclass(frozen=True, slots=True)
class Tray(Plain):
    """Things to drag out, or to press and then press the place; as many in a row as fit."""

    key: str
    name: str
    note: str = ""
    items: tuple[TrayItem, ...] = ()

    def least_width(self, look: Look) -> float:
        """One tile."""
        return self._tile_width(look)

    def natural_width(self, look: Look) -> float:
        """All tiles beside each other."""
        return len(self.items) * (self._tile_width(look) + look.sizes.gap) - look.sizes.gap

    def height(self, look: Look, width: float) -> float:
        """Its name and the rows of tiles."""
        rows = math.ceil(len(self.items) / self._columns(look, width)) if self.items else 0
        tiles = rows * (self._tile_height(look, width) + look.sizes.gap) - look.sizes.gap
        return self._head(look, width) + max(0.0, tiles)

    def place(self, look: Look, rect: Rect) -> tuple[tuple[Widget, Rect], ...]:
        """The tiles, row by row."""
        columns, gap = self._columns(look, rect.w), look.sizes.gap
        wide = (rect.w - gap * (columns - 1)) / columns
        tall, top = self._tile_height(look, rect.w), rect.y + self._head(look, rect.w)
        placed = []
        for number, item in enumerate(self.items):
            row, column = divmod(number, columns)
            box = Rect(rect.x + column * (wide + gap), top + row * (tall + gap), wide, tall)
            placed.append((Tile(item.key, self, item), facing(look, box, rect)))
        return tuple(placed)

    def draw(self, canvas: Canvas, look: Look, rect: Rect, mood: Mood) -> None:
        """Draws the name and the note."""
        draw_heading(canvas, look, self.name, self.note, rect)

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> Node:
        """A tray of items."""
        return Node(self.key, "tray", self.name, value=self.note, bounds=rect, children=children)

    def _head(self, look: Look, width: float) -> float:
        tall = heading_height(look, self.name, self.note, width)
        return tall + look.sizes.px(2) if tall else 0.0

    def _tile_width(self, look: Look) -> float:
        words = max((least_width(look, item.text, "small") for item in self.items), default=0.0)
        return max(look.sizes.target, look.sizes.px(_PICTURE_PX), words + look.sizes.px(12))

    def _columns(self, look: Look, width: float) -> int:
        fit = int((width + look.sizes.gap + 0.5) // (self._tile_width(look) + look.sizes.gap))
        return max(1, min(fit, len(self.items)))

    def _tile_height(self, look: Look, width: float) -> float:
        columns = self._columns(look, width)
        wide = (width - look.sizes.gap * (columns - 1)) / columns - look.sizes.px(8)
        words = max((text_height(look, item.text, wide, "small") for item in self.items), default=0.0)
        return max(look.sizes.target, look.sizes.px(_PICTURE_PX) + words + look.sizes.px(4))


@dataclass(frozen=True, slots=True)
class Tile(Plain):
    """One item of a tray as it lies on the screen."""

    key: str
    tray: Tray
    item: TrayItem

    def least_width(self, look: Look) -> float:
        """A target."""
        return max(look.sizes.target, least_width(look, self.item.text, "small"))

    def natural_width(self, look: Look) -> float:
        """Its text on one line."""
        return max(look.sizes.target, natural_width(look, self.item.text, "small"))

    def height(self, look: Look, width: float) -> float:
        """Its picture and its text."""
        return look.sizes.px(_PICTURE_PX) + text_height(look, self.item.text, width, "small")

    def draw(self, canvas: Canvas, look: Look, rect: Rect, mood: Mood) -> None:
        """Draws the box, the picture and the text."""
        if self.item.picked:
            face = Face("held_fill", "ink", "ink", look.sizes.stroke)
        else:
            fill = "wash" if self.key in mood.pressed else "panel"
            outline = "edge" if self.item.enabled else "hair"
            face = Face(fill, outline, "ink" if self.item.enabled else "soft", 1.5 * look.sizes.unit)
        draw_body(canvas, look, rect, face)
        inner = rect.inset(look.sizes.px(4))
        words = text_height(look, self.item.text, inner.w, "small")
        foot, picture = inner.cut_bottom(words)
        draw_middle(canvas, look, self.item.text, foot, style="small", color=face.text)
        self.item.draw(canvas, picture.inset(look.sizes.px(2)))

    def spots(self, look: Look, rect: Rect) -> tuple[Spot, ...]:
        """One: pressing takes it up, dragging takes it along, arrows go to the next."""
        keys = [item.key for item in self.tray.items]
        place = keys.index(self.key)
        back, on = forwards(look)
        near = {back: -1, "up": -1, on: 1, "down": 1}
        moves = {name: keys[(place + step) % len(keys)] for name, step in near.items()}
        return (
            Spot(
                key=self.key,
                rect=rect,
                effect=Pressed(self.key),
                enabled=self.item.enabled,
                moves=moves,
                drag="tray",
            ),
        )

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> Node:
        """An item."""
        flags = states(selected=self.item.picked, disabled=not self.item.enabled, focused=mood.focused == self.key)
        actions = ("press", "move") if self.item.enabled else ()
        return Node(self.key, "item", self.item.text, state=flags, bounds=rect, actions=actions)
