"""The keypad that a number field opens."""

from dataclasses import dataclass, replace
from typing import NamedTuple

from lab.outline import Node
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.outcomes import Changed
from lab.ui.paragraph import draw_middle, natural_width
from lab.ui.widgets.arrange import Column, Row
from lab.ui.widgets.button import Button, Face, draw_body
from lab.ui.widgets.dialog import Dialog
from lab.ui.widgets.label import Label
from lab.ui.widgets.number_field import NumberField
from lab.ui.widgets.widget import Mood, Plain, Widget

KEYPAD = "keypad"
KEYPAD_DONE = "keypad.done"
CLOSE = "keypad.close"
RUB_OUT = "keypad.rub out"
SIGN = "keypad.sign"
_LONGEST = 12
_MINUS = "\N{MINUS SIGN}"


@dataclass(frozen=True, slots=True)
class Keypad:
    """What has been typed for a field so far.  unclear: the last try gave no number within the limits."""

    field: NumberField
    text: str = ""
    unclear: bool = False

    def entered(self, text: str) -> "Keypad":
        """With more characters typed; those that make no number are left out."""
        keypad = self
        for character in text:
            keypad = keypad.signed() if character in f"-{_MINUS}" else keypad._with(character)
        return keypad

    def signed(self) -> "Keypad":
        """With the other sign, where the field goes below nought."""
        if self.field.low >= 0:
            return self
        text = self.text[1:] if self.text.startswith(_MINUS) else _MINUS + self.text
        return replace(self, text=text, unclear=False)

    def rubbed_out(self) -> "Keypad":
        """With one character less."""
        return replace(self, text=self.text[:-1], unclear=False)

    def _with(self, character: str) -> "Keypad":
        mark = "." if character == "," else character
        digit = mark.isdecimal() and mark.isascii()
        point = mark == "." and "." not in self.text and self.field.decimals > 0
        if not (digit or point) or len(self.text) >= _LONGEST:
            return self
        return replace(self, text=self.text + mark, unclear=False)


class KeypadAnswer(NamedTuple):
    """What a key of the keypad led to: the keypad as it then stands (None: closed), and the new value if any."""

    keypad: Keypad | None
    changed: Changed | None = None


def press_keypad(keypad: Keypad, key: str) -> KeypadAnswer:
    """What pressing one of the keypad's buttons does."""
    if key == CLOSE:
        return KeypadAnswer(None)
    if key == RUB_OUT:
        return KeypadAnswer(keypad.rubbed_out())
    if key == SIGN:
        return KeypadAnswer(keypad.signed())
    if key != KEYPAD_DONE:
        return KeypadAnswer(keypad.entered(key.removeprefix(f"{KEYPAD}.")))
    value = keypad.field.typed(keypad.text)
    if value is None:
        return KeypadAnswer(replace(keypad, unclear=True))
    return KeypadAnswer(None, Changed(keypad.field.key, value))


@dataclass(frozen=True, slots=True)
class Typed(Plain):
    """The box with what has been typed."""

    key: str
    text: str
    unit: str

    def least_width(self, look: Look) -> float:
        """Its text."""
        return natural_width(look, f"{self.text} {self.unit}", "heading") + look.sizes.px(32)

    def natural_width(self, look: Look) -> float:
        """Its text."""
        return self.least_width(look)

    def height(self, look: Look, width: float) -> float:
        """A main target."""
        return max(look.sizes.main_target, look.sizes.text("heading") * 1.6)

    def draw(self, canvas: Canvas, look: Look, rect: Rect, mood: Mood) -> None:
        """Draws the box and the text."""
        draw_body(canvas, look, rect, Face("paper", "edge", "ink", 1.5 * look.sizes.unit))
        draw_middle(canvas, look, f"{self.text or '…'} {self.unit}".rstrip(), rect, style="heading")

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> Node:
        """What has been typed."""
        return Node(self.key, "text", f"{self.text} {self.unit}", bounds=rect)


def _key(name: str, text: str, *, icon: str | None = None, kind_main: bool = False) -> Button:
    return Button(name, text, icon=icon, icon_only=icon is not None, kind="main" if kind_main else "plain")


def keypad_dialog(look: Look, keypad: Keypad) -> Dialog:
    """The keypad as it stands: digits, a mark for decimals, a sign where the field goes below nought."""
    say, field = look.words.say, keypad.field
    low, high = (look.words.number(end, field.decimals) for end in (field.low, field.high))
    limits = say("from {low} to {high} {unit}", low=low, high=high, unit=field.unit)
    digits = [Row(tuple(_key(f"keypad.{d}", d) for d in line)) for line in ("789", "456", "123")]
    last: tuple[Widget, ...] = (_key("keypad.0", "0"),)
    if field.decimals > 0:
        last = (*last, _key("keypad..", "."))
    if field.low < 0:
        last = (*last, _key(SIGN, "±"))
    last = (*last, _key(RUB_OUT, say("Rub out"), icon="rub out"))
    note = Label(
        "keypad.limits",
        limits,
        style="strong" if keypad.unclear else "small",
        color="ink" if keypad.unclear else "soft",
    )
    typed = Typed("keypad.typed", keypad.text, field.unit)
    children = (Column((typed, note), gap=2), Column((*digits, Row(last))))
    buttons = (Button(CLOSE, say("Cancel")), Button(KEYPAD_DONE, say("Done"), kind="main"))
    return Dialog(KEYPAD, field.name, children=children, buttons=buttons, width=360.0)
