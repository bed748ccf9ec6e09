"""One of a few."""

from dataclasses import dataclass

from lab.outline import Node
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.outcomes import Chosen
from lab.ui.paragraph import draw_text, least_width, natural_width, text_height
from lab.ui.widgets.arrange import Column, Row
from lab.ui.widgets.button import Button
from lab.ui.widgets.widget import Mood, Plain, Spot, Widget, forwards, states

FEW = 4
"""So many options are set in pairs where one row has no room for them."""


@dataclass(frozen=True, slots=True)
class Option(Plain):
    """One choice of a row; looks like a button, is reached by the arrow keys of its row."""

    key: str
    row: "ChoiceRow"
    value: str
    text: str

    def least_width(self, look: Look) -> float:
        """As a button's."""
        return self._button.least_width(look)

    def natural_width(self, look: Look) -> float:
        """As a button's."""
        return self._button.natural_width(look)

    def height(self, look: Look, width: float) -> float:
        """As a button's."""
        return self._button.height(look, width)

    def draw(self, canvas: Canvas, look: Look, rect: Rect, mood: Mood) -> None:
        """Draws a button, dark where it is chosen."""
        self._button.draw(canvas, look, rect, mood)

    def spots(self, look: Look, rect: Rect) -> tuple[Spot, ...]:
        """Pressing chooses; arrows choose a neighbour and go there."""
        values = [value for value, _ in self.row.options]
        place = values.index(self.value)
        back, on = forwards(look)
        keys, moves = {}, {}
        for name, step in ((back, -1), ("up", -1), (on, 1), ("down", 1)):
            near = values[(place + step) % len(values)]
            keys[name], moves[name] = Chosen(self.row.key, near), option_key(self.row.key, near)
        first = self.row.value if self.row.value in values else values[0]
        return (
            Spot(
                key=self.key,
                rect=rect,
                effect=Chosen(self.row.key, self.value),
                stop=self.value == first,
                enabled=self.row.enabled,
                keys=keys,
                moves=moves,
            ),
        )

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> Node:
        """An option, selected or not."""
        flags = states(
            selected=self.value == self.row.value,
            disabled=not self.row.enabled,
            focused=mood.focused == self.key,
        )
        actions = ("press",) if self.row.enabled else ()
        return Node(self.key, "option", self.text, state=flags, bounds=rect, actions=actions)

    @property
    def _button(self) -> Button:
        chosen = self.value == self.row.value
        return Button(self.key, self.text, selected=chosen, enabled=self.row.enabled)


@dataclass(frozen=True, slots=True)
class ChoiceRow(Plain):
    """A question with a few answers beside each other, one of them chosen or none (value None).

    options: (value, label) each.  show_name: whether the question is drawn above; it is always spoken.
    """

    key: str
    name: str
    options: tuple[tuple[str, str], ...]
    value: str | None = None
    show_name: bool = True
    enabled: bool = True

    def least_width(self, look: Look) -> float:
        """The widest option's."""
        return max(self._row.least_width(look), least_width(look, self.name, "strong") if self.show_name else 0)

    def natural_width(self, look: Look) -> float:
        """All options beside each other."""
        named = natural_width(look, self.name, "strong") if self.show_name else 0.0
        return max(self._row.natural_width(look), named)

    def height(self, look: Look, width: float) -> float:
        """The question and the options."""
        return self._name_height(look, width) + self._laid(look, width).height(look, width)

    def place(self, look: Look, rect: Rect) -> tuple[tuple[Widget, Rect], ...]:
        """The options, beside each other or below."""
        return self._laid(look, rect.w).place(look, rect.cut_top(self._name_height(look, rect.w))[1])

    def draw(self, canvas: Canvas, look: Look, rect: Rect, mood: Mood) -> None:
        """Draws the question."""
        if self.show_name:
            draw_text(canvas, look, self.name, rect, style="strong")

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> Node:
        """The question, its answer as its value."""
        chosen = dict(self.options).get(self.value or "", "")
        return Node(self.key, "choice", self.name, value=chosen, bounds=rect, children=children)

    def _name_height(self, look: Look, width: float) -> float:
        if not self.show_name:
            return 0.0
        return text_height(look, self.name, width, "strong") + look.sizes.px(4)

    @property
    def _row(self) -> Row:
        return Row(tuple(Option(option_key(self.key, v), self, v, text) for v, text in self.options))

    def _laid(self, look: Look, width: float) -> Row | Column:
        """In one row; many that are too wide for it in rows of two; else below each other."""
        row = self._row
        if len(row.children) < FEW or not row.too_narrow(look, width):
            return row
        pairs = tuple(Row(row.children[at : at + 2]) for at in range(0, len(row.children), 2))
        return Column(pairs, gap=None)


def option_key(row_key: str, value: str) -> str:
    """The key of one option of a choice row."""
    return f"{row_key}.{value}"
