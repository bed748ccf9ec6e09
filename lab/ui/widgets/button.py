"""Things to press."""

from dataclasses import dataclass
from typing import Literal, NamedTuple

from lab.outline import Node
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.outcomes import Pressed
from lab.ui.paragraph import draw_middle, least_width, natural_width, text_height
from lab.ui.widgets.icons import draw_icon
from lab.ui.widgets.widget import Mood, Plain, Spot, facing, states

ButtonKind = Literal["plain", "main", "quiet", "bare"]
_PADDING_PX = 16.0
_RISE_PX = 10.0


class Face(NamedTuple):
    """How a control's body is coloured, by theme tokens; None for none."""

    fill: str | None
    outline: str | None
    text: str
    stroke: float


def button_face(look: Look, kind: ButtonKind, *, selected: bool, enabled: bool, pressed: bool) -> Face:
    """The colours of a button in its state: the dark ones are the main action and what is chosen."""
    stroke = look.sizes.stroke
    if not enabled:
        return Face(None, None if kind == "bare" else "hair", "soft", stroke)
    if kind == "main" or selected:
        return Face("soft" if pressed else "ink", "ink", "on_dark", stroke)
    fill = "wash" if pressed else None if kind == "bare" else "panel"
    if kind == "plain":
        return Face(fill, "ink", "ink", stroke)
    return Face(fill, "edge" if kind == "quiet" else None, "ink", 1.5 * look.sizes.unit)


def draw_body(canvas: Canvas, look: Look, rect: Rect, face: Face) -> None:
    """The rounded box of a control."""
    color = look.theme.color
    canvas.box(
        rect,
        fill=color(face.fill) if face.fill else None,
        outline=color(face.outline) if face.outline else None,
        width=face.stroke,
        radius=look.sizes.radius,
    )


@dataclass(frozen=True, slots=True)
class Button(Plain):
    """A button: it grows with its text and wraps where it must.

    kind: "main" for the one dark action of a screen, "plain", "quiet" with a light outline, "bare" with none.
    selected: shown dark, as the one in force.  icon: a name of icons.ICONS.  icon_only: the text is only spoken.
    """

    key: str
    text: str
    kind: ButtonKind = "plain"
    selected: bool = False
    icon: str | None = None
    enabled: bool = True
    icon_only: bool = False

    def least_width(self, look: Look) -> float:
        """Its longest word and sign between its margins; never under a target."""
        return max(look.sizes.target, self._around(look) + self._text_width(look, longest_word=True))

    def natural_width(self, look: Look) -> float:
        """Its text on one line."""
        return max(look.sizes.target, self._around(look) + self._text_width(look, longest_word=False))

    def height(self, look: Look, width: float) -> float:
        """A target, or what its lines take."""
        least = look.sizes.main_target if self.kind == "main" else look.sizes.target
        if self.icon_only:
            return least
        lines = text_height(look, self.text, max(1.0, width - self._around(look)), self._style)
        return max(least, lines + 2 * look.sizes.px(_RISE_PX))

    def draw(self, canvas: Canvas, look: Look, rect: Rect, mood: Mood) -> None:
        """Draws the box, the sign and the text."""
        face = button_face(
            look,
            self.kind,
            selected=self.selected,
            enabled=self.enabled,
            pressed=self.key in mood.pressed,
        )
        if face.fill or face.outline:
            draw_body(canvas, look, rect, face)
        inner = rect.inset(look.sizes.px(_PADDING_PX), 0)
        if self.icon:
            inner = self._draw_icon(canvas, look, rect, inner, face)
        if not self.icon_only:
            draw_middle(canvas, look, self.text, inner, style=self._style, color=face.text)

    def spots(self, look: Look, rect: Rect) -> tuple[Spot, ...]:
        """One: the whole button."""
        return (Spot(key=self.key, rect=rect, effect=Pressed(self.key), enabled=self.enabled),)

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> Node:
        """A button with its text."""
        return Node(
            self.key,
            "button",
            self.text,
            state=states(selected=self.selected, disabled=not self.enabled, focused=mood.focused == self.key),
            bounds=rect,
            actions=("press",) if self.enabled else (),
        )

    @property
    def _style(self) -> str:
        return "figure" if self.kind == "main" else "body"

    def _icon_side(self, look: Look) -> float:
        return float(round(look.sizes.text("body") * 1.1))

    def _around(self, look: Look) -> float:
        room = 2 * look.sizes.px(_PADDING_PX)
        if self.icon and not self.icon_only:
            room += self._icon_side(look) + look.sizes.gap
        return room

    def _text_width(self, look: Look, *, longest_word: bool) -> float:
        if self.icon_only:
            return self._icon_side(look)
        width_of = least_width if longest_word else natural_width
        return width_of(look, self.text, self._style)

    def _draw_icon(self, canvas: Canvas, look: Look, rect: Rect, inner: Rect, face: Face) -> Rect:
        """Draws the sign before the text; returns where the text goes."""
        side = self._icon_side(look)
        taken = self._around(look) - 2 * look.sizes.px(_PADDING_PX)
        text_w = 0.0 if self.icon_only else min(inner.w - taken, natural_width(look, self.text, self._style))
        row = side if self.icon_only else taken + text_w
        start = rect.center[0] - row / 2
        square = facing(look, Rect(start, rect.center[1] - side / 2, side, side), rect)
        draw_icon(
            canvas,
            self.icon or "",
            square,
            look.theme.color(face.text),
            width=max(look.sizes.stroke, side / 10),
            mirrored=look.sizes.mirrored,
        )
        return facing(look, Rect(start + taken, inner.y, max(1.0, text_w), inner.h), rect)
