"""Text that is only read."""

from dataclasses import dataclass

from lab.outline import Node, Role
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.paragraph import Align, draw_middle, draw_text, least_width, natural_width, text_height
from lab.ui.widgets.widget import Mood, Plain


@dataclass(frozen=True, slots=True)
class Label(Plain):
    """Text that wraps to its width.

    style: "body", "small", "strong", "number", "figure", "title" or "heading".  color: a theme token.
    align: "start", "center" or "end" in reading direction.  middle: centred in the height it is given.
    """

    key: str
    text: str
    style: str = "body"
    color: str = "ink"
    align: Align = "start"
    middle: bool = False

    def least_width(self, look: Look) -> float:
        """Its longest word."""
        return least_width(look, self.text, self.style)

    def natural_width(self, look: Look) -> float:
        """Its text on one line."""
        return natural_width(look, self.text, self.style)

    def height(self, look: Look, width: float) -> float:
        """As many lines as it takes."""
        return text_height(look, self.text, width, self.style)

    def draw(self, canvas: Canvas, look: Look, rect: Rect, mood: Mood) -> None:
        """Draws the text from the top, or in the middle."""
        draw = draw_middle if self.middle else draw_text
        draw(canvas, look, self.text, rect, style=self.style, color=self.color, align=self.align)

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> Node:
        """A text; titles are headings."""
        role: Role = "heading" if self.style in ("title", "heading") else "text"
        return Node(self.key, role, self.text, bounds=rect)
