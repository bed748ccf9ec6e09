"""A lesson of the course as a row: its number, title, how much of it is done."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi

from lab.outline import Node
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.outcomes import Pressed
from lab.ui.paragraph import draw_text, least_width, natural_width, text_height
from lab.ui.widgets.icons import draw_icon
from lab.ui.widgets.widget import Mood, Plain, Spot, Widget, facing, states

PAD_PX, DOWN_PX = 12.0, 6.0


@dataclass(frozen=True, slots=True)
class LessonRow(Plain):
    """A lesson as a wide button.

    aim: said, not shown.  note: what was done.  share: how much of it, 0 to 1.  is_next: the one to go on with.
    """

    key: str
    number: str
    title: str
    aim: str
    note: str
    share: float
    is_next: bool = False

    def least_width(self, look: Look) -> float:
        """Its longest word beside the number."""
        return max(least_width(look, self.title, "strong"), least_width(look, self.note, "small")) + self._beside(look)

    def natural_width(self, look: Look) -> float:
        """Its title on one line."""
        words = max(natural_width(look, self.title, "strong"), natural_width(look, self.note, "small"))
        return words + self._beside(look)

    def height(self, look: Look, width: float) -> float:
        """Title and note."""
        room = max(1.0, width - self._beside(look))
        lines = text_height(look, self.title, room, "strong") + text_height(look, self.note, room, "small")
        return max(look.sizes.target, lines + 2 * look.sizes.px(DOWN_PX))

    def draw(self, canvas: Canvas, look: Look, rect: Rect, mood: Mood) -> None:
        """Draws the card."""
        theme, sizes = look.theme, look.sizes
        fill = theme.wash if self.key in mood.pressed else theme.panel
        edge, width = (theme.ink, sizes.stroke) if self.is_next else (theme.edge, 1.5 * sizes.unit)
        canvas.box(rect, fill=fill, outline=edge, width=width, radius=sizes.px(10))
        pad, side = sizes.px(PAD_PX), self._side(look)
        disc = facing(look, Rect(rect.x + pad, rect.center[1] - side / 2, side, side), rect)
        self._draw_disc(canvas, look, disc)
        room = max(1.0, rect.w - self._beside(look))
        lines = text_height(look, self.title, room, "strong") + text_height(look, self.note, room, "small")
        box = facing(look, Rect(rect.x + 2 * pad + side, rect.center[1] - lines / 2, room, lines), rect)
        used = draw_text(canvas, look, self.title, box, style="strong")
        draw_text(canvas, look, self.note, box.cut_top(used.h)[1], style="small", color="soft")

    def spots(self, look: Look, rect: Rect) -> tuple[Spot, ...]:
        """The whole row."""
        return (Spot(key=self.key, rect=rect, effect=Pressed(self.key)),)

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> Node:
        """A button that says everything."""
        value = f"{self.aim} {self.note}"
        flags = states(focused=mood.focused == self.key)
        return Node(self.key, "button", self.title, value=value, state=flags, bounds=rect, actions=("press",))

    def _draw_disc(self, canvas: Canvas, look: Look, disc: Rect) -> None:
        """The number on a disc; a ring round it fills with what has been answered."""
        theme, sizes = look.theme, look.sizes
        done = self.share >= 1.0
        canvas.circle(disc.center, disc.w / 2, fill=theme.settled if done else theme.wash)
        if done:
            draw_icon(canvas, "check", disc.inset(disc.w * 0.28), theme.on_dark, width=sizes.stroke)
            return
        if self.share > 0:
            ring, wide = disc.w / 2 - sizes.px(2), sizes.px(4)
            canvas.arc(disc.center, ring, pi / 2, -2 * pi * self.share, theme.settled, width=wide)
        size = sizes.text("body")
        canvas.text(self.number, disc.center, size=size, color=theme.ink, bold=True, anchor="center middle")

    def _side(self, look: Look) -> float:
        return max(look.sizes.px(36), look.sizes.text("body") * 2.0)

    def _beside(self, look: Look) -> float:
        return self._side(look) + 3 * look.sizes.px(PAD_PX)


@dataclass(frozen=True, slots=True)
class Columns(Plain):
    """Columns of one width beside each other, each as high as it is."""

    children: tuple[Widget, ...]
    gap: float = 20.0
    key: str = ""

    def least_width(self, look: Look) -> float:
        """Of the widest, as often as there are columns."""
        widest = max((child.least_width(look) for child in self.children), default=0.0)
        return len(self.children) * widest + self._gaps(look)

    def natural_width(self, look: Look) -> float:
        """All beside each other."""
        return sum(child.natural_width(look) for child in self.children) + self._gaps(look)

    def height(self, look: Look, width: float) -> float:
        """The highest."""
        return max((child.height(look, self._wide(look, width)) for child in self.children), default=0.0)

    def place(self, look: Look, rect: Rect) -> tuple[tuple[Widget, Rect], ...]:
        """In reading direction."""
        wide, step = self._wide(look, rect.w), self._wide(look, rect.w) + look.sizes.px(self.gap)
        return tuple(
            (child, facing(look, Rect(rect.x + number * step, rect.y, wide, child.height(look, wide)), rect))
            for number, child in enumerate(self.children)
        )

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> None:
        """Only arranges."""

    def _gaps(self, look: Look) -> float:
        return max(0, len(self.children) - 1) * look.sizes.px(self.gap)

    def _wide(self, look: Look, width: float) -> float:
        return max(1.0, (width - self._gaps(look)) / max(1, len(self.children)))
