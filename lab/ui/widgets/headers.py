"""The bar at the top of every screen, and where one is in a lesson."""

from dataclasses import dataclass

from lab.outline import Node
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.metrics import text_width
from lab.ui.paragraph import draw_middle, least_width, natural_width, text_height
from lab.ui.widgets.arrange import Column, Row
from lab.ui.widgets.button import Button
from lab.ui.widgets.icons import draw_icon
from lab.ui.widgets.label import Label
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.widget import Mood, Plain, Widget, facing, states


def header(
    look: Look,
    *,
    title: str,
    trail: str = "",
    actions: tuple[Widget, ...] = (),
    key: str = "header",
    back: str = "back",
) -> Panel:
    """The bar at the top: an arrow back, where one came from, where one is, a few quiet buttons.

    back: the key that the arrow reports, "" for no arrow.  trail: the place one came from, "" for none.
    """
    arrow: tuple[Widget, ...] = ()
    if back:
        arrow = (Button(back, look.words.say("Back"), kind="bare", icon="back", icon_only=True),)
    came = (
        (Label(f"{key}.trail", look.words.say("{place} /", place=trail), color="soft", middle=True),) if trail else ()
    )
    here = Label(f"{key}.title", title, style="title", middle=True)
    place = Row((*arrow, *came, here), gap=8, weights=(*(0.0,) * (len(arrow) + len(came)), 1.0), wraps=False)
    if not actions:
        return Panel(key, children=(place,), pad=8, edge="bottom")
    buttons = Row(actions, weights=(0.0,) * len(actions))
    room = look.sizes.width - look.sizes.px(16 + 2 * 8)
    if place.least_width(look) + buttons.natural_width(look) > room:
        # Where one is, and under it what can be done: beside each other the buttons would stand in a column.
        return Panel(key, children=(Column((place, buttons), gap=4),), pad=8, edge="bottom")
    row = Row((place, buttons), weights=(1.0, 0.0), gap=16, align="middle")
    return Panel(key, children=(row,), pad=8, edge="bottom")


@dataclass(frozen=True, slots=True)
class Steps(Plain):
    """The steps of one question: those done with a check, the present one dark.  at: counted from 0."""

    key: str
    names: tuple[str, ...]
    at: int

    def least_width(self, look: Look) -> float:
        """The widest step."""
        return max(self._disc(look) + look.sizes.px(6) + least_width(look, name, "body") for name in self.names)

    def natural_width(self, look: Look) -> float:
        """All beside each other."""
        return sum(self._wants(look)) + look.sizes.px(14) * (len(self.names) - 1)

    def height(self, look: Look, width: float) -> float:
        """One line, or one a step where it is too narrow."""
        rows = len(self.names) if self.natural_width(look) > width else 1
        return rows * (self._disc(look) + look.sizes.px(6))

    def draw(self, canvas: Canvas, look: Look, rect: Rect, mood: Mood) -> None:
        """Draws discs and names."""
        for number, box in enumerate(self._boxes(look, rect)):
            self._draw_step(canvas, look, number, box)

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> Node:
        """The steps as marks; the present one is selected."""
        say = look.words.say
        marks = tuple(
            Node(
                f"{self.key}.{number}",
                "mark",
                say("step {number}: {name}", number=look.words.number(number + 1), name=name),
                state=states(selected=number == self.at, done=number < self.at),
                bounds=box,
            )
            for number, (name, box) in enumerate(zip(self.names, self._boxes(look, rect), strict=True))
        )
        return Node(self.key, "panel", "", bounds=rect, children=marks)

    def _disc(self, look: Look) -> float:
        return float(round(look.sizes.text("body") * 1.55))

    def _wants(self, look: Look) -> list[float]:
        return [self._disc(look) + look.sizes.px(6) + natural_width(look, name, "body") for name in self.names]

    def _boxes(self, look: Look, rect: Rect) -> list[Rect]:
        disc, wants = self._disc(look), self._wants(look)
        if self.natural_width(look) > rect.w:
            step = disc + look.sizes.px(6)
            return [Rect(rect.x, rect.y + number * step, rect.w, disc) for number in range(len(wants))]
        gap = min(look.sizes.px(18), (rect.w - sum(wants)) / max(1, len(wants) - 1))
        boxes, x = [], rect.x
        for want in wants:
            boxes.append(facing(look, Rect(x, rect.y, want, disc), rect))
            x += want + gap
        return boxes

    def _draw_step(self, canvas: Canvas, look: Look, number: int, box: Rect) -> None:
        theme, disc = look.theme, self._disc(look)
        here, done = number == self.at, number < self.at
        spot, rest = (box.cut_right if look.sizes.mirrored else box.cut_left)(disc)
        fill = theme.ink if here else theme.panel
        canvas.circle(spot.center, disc / 2, fill=fill, outline=theme.ink, width=look.sizes.stroke)
        if done:
            mark = spot.inset(disc * 0.27)
            draw_icon(canvas, "check", mark, theme.ink, width=max(look.sizes.stroke, disc / 12))
        else:
            text = look.words.number(number + 1)
            size = look.sizes.text("body") * 0.92
            color = theme.on_dark if here else theme.ink
            canvas.text(text, spot.center, size=size, color=color, anchor="center middle")
        gap = look.sizes.px(6)
        words = (rest.cut_right if look.sizes.mirrored else rest.cut_left)(gap)[1]
        color = "ink" if here else "soft"
        draw_middle(canvas, look, self.names[number], words.grown(0.6), color=color, align="start")


@dataclass(frozen=True, slots=True)
class Progress(Plain):
    """How far one is: one bar a question.  marks: "right", "wrong", "now" or "open" each.  text: said below."""

    key: str
    marks: tuple[str, ...]
    text: str

    def least_width(self, look: Look) -> float:
        """Short bars, or the longest word."""
        bars = len(self.marks) * (look.sizes.px(8) + look.sizes.px(6))
        return max(bars, least_width(look, self.text, "body"))

    def natural_width(self, look: Look) -> float:
        """Bars as in the plan."""
        return max(len(self.marks) * look.sizes.px(44), text_width(self.text, size=look.sizes.text("body")))

    def height(self, look: Look, width: float) -> float:
        """Bars and text."""
        return look.sizes.px(12) + look.sizes.px(10) + text_height(look, self.text, width, "body")

    def draw(self, canvas: Canvas, look: Look, rect: Rect, mood: Mood) -> None:
        """Draws the bars and the text."""
        theme, pitch = look.theme, min(look.sizes.px(44), rect.w / max(1, len(self.marks)))
        fills = {"right": theme.settled, "wrong": theme.held, "now": theme.ink, "open": theme.track}
        for number, mark in enumerate(self.marks):
            bar = Rect(rect.x + number * pitch, rect.y, pitch - min(look.sizes.px(8), pitch / 4), look.sizes.px(12))
            edge = None if mark in ("right", "now") else theme.edge
            placed = facing(look, bar, rect)
            canvas.box(placed, fill=fills[mark], outline=edge, width=1.0, radius=bar.h / 2)
        foot = rect.cut_top(look.sizes.px(22))[1]
        draw_middle(canvas, look, self.text, foot, color="soft", align="start")

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> Node:
        """The text says it all."""
        return Node(self.key, "text", self.text, bounds=rect)
