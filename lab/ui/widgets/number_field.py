"""A number set by − and +, by keys, or typed on a keypad."""

from dataclasses import dataclass

from lab.outline import Node
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.outcomes import Changed
from lab.ui.paragraph import draw_middle, draw_text, least_width, natural_width, text_height
from lab.ui.widgets.button import button_face, draw_body
from lab.ui.widgets.slider import StepButton
from lab.ui.widgets.stepping import on_step, stepping_keys
from lab.ui.widgets.widget import Mood, Plain, Spot, Widget, facing, states


@dataclass(frozen=True, slots=True)
class NumberField(Plain):
    """A number with its unit between − and +; pressing it opens a keypad.

    value: None where nothing is chosen yet, then it shows a question mark, and − and + begin at `start`.
    step: of − and + and the arrow keys; a typed number may lie between.
    decimals: how many are shown.  show_name: whether its name is drawn above; it is always spoken.
    """

    key: str
    name: str
    value: float | None
    unit: str
    low: float
    high: float
    step: float
    decimals: int = 0
    show_name: bool = True
    enabled: bool = True
    start: float | None = None

    def shown(self, look: Look) -> str:
        """The number as written, with its unit."""
        if self.value is None:
            return look.words.say("? {unit}", unit=self.unit) if self.unit else "?"
        number = look.words.number(self.value, self.decimals)
        return look.words.say("{number} {unit}", number=number, unit=self.unit) if self.unit else number

    def least_width(self, look: Look) -> float:
        """Two buttons and the widest number on one line."""
        name = least_width(look, self.name, "strong") if self.show_name else 0.0
        return max(name, 2 * (look.sizes.target + look.sizes.gap) + self._box_width(look))

    def natural_width(self, look: Look) -> float:
        """The same, its name on one line."""
        name = natural_width(look, self.name, "strong") if self.show_name else 0.0
        return max(name, self.least_width(look))

    def height(self, look: Look, width: float) -> float:
        """Its name and a target."""
        return self._name_height(look, width) + self._tall(look)

    def place(self, look: Look, rect: Rect) -> tuple[tuple[Widget, Rect], ...]:
        """The two buttons."""
        row, side = self._row(look, rect), look.sizes.target
        return (
            (self._button(look, "less", -1), facing(look, row.cut_left(side)[0], rect)),
            (self._button(look, "more", 1), facing(look, row.cut_right(side)[0], rect)),
        )

    def draw(self, canvas: Canvas, look: Look, rect: Rect, mood: Mood) -> None:
        """Draws the name and the number in its box."""
        if self.show_name:
            draw_text(canvas, look, self.name, rect, style="strong")
        box = self._box(look, rect)
        pressed = self.key in mood.pressed
        face = button_face(look, "plain", selected=False, enabled=self.enabled, pressed=pressed)
        draw_body(canvas, look, box, face)
        draw_middle(canvas, look, self.shown(look), box, style="figure", color=face.text)

    def spots(self, look: Look, rect: Rect) -> tuple[Spot, ...]:
        """The box: keys step, a press opens the keypad."""
        keys = stepping_keys(look, self.key, self._from, self.low, self.high, self.step)
        box = self._box(look, rect)
        return (Spot(key=self.key, rect=box, keys=keys, field=self, enabled=self.enabled),)

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> Node:
        """A number with its value and unit."""
        return Node(
            self.key,
            "number",
            self.name,
            value=self.shown(look),
            state=states(focused=mood.focused == self.key, disabled=not self.enabled),
            bounds=self._box(look, rect),
            actions=("press", "increase", "decrease") if self.enabled else (),
            children=children,
        )

    def typed(self, text: str) -> float | None:
        """The number in a text, by comma or point, within the limits; None where there is none."""
        cleaned = text.strip().replace(",", ".").replace("\N{MINUS SIGN}", "-")
        try:
            value = float(cleaned)
        except ValueError:
            return None
        if not self.low <= value <= self.high:
            return None
        return on_step(value, self.low, self.high, 0.0)

    @property
    def _from(self) -> float:
        """What a step starts from."""
        if self.value is not None:
            return self.value
        return self.low if self.start is None else self.start

    def _name_height(self, look: Look, width: float) -> float:
        if not self.show_name:
            return 0.0
        return text_height(look, self.name, width, "strong") + look.sizes.px(4)

    def _tall(self, look: Look) -> float:
        return max(look.sizes.target, look.sizes.text("figure") * 1.5 + look.sizes.px(8))

    def _box_width(self, look: Look) -> float:
        numbers = [look.words.number(end, self.decimals) for end in (self.low, self.high)]
        widest = max(natural_width(look, f"{number} {self.unit}", "figure") for number in numbers)
        widest = max(widest, natural_width(look, self.shown(look), "figure"))
        return max(look.sizes.px(96), widest + 2 * look.sizes.px(14))

    def _row(self, look: Look, rect: Rect) -> Rect:
        return rect.cut_top(self._name_height(look, rect.w))[1].cut_top(self._tall(look))[0]

    def _box(self, look: Look, rect: Rect) -> Rect:
        return self._row(look, rect).inset(look.sizes.target + look.sizes.gap, 0)

    def _button(self, look: Look, icon: str, way: int) -> StepButton:
        say = look.words.say
        name = say("{name}: less", name=self.name) if way < 0 else say("{name}: more", name=self.name)
        goal = on_step(self._from + way * self.step, self.low, self.high, self.step)
        free = self.value is None or (self.value > self.low if way < 0 else self.value < self.high)
        effect = Changed(self.key, goal)
        return StepButton(f"{self.key}.{icon}", name, icon, effect, enabled=self.enabled and free)
