"""A value set by sliding, by − and +, or by keys."""

from dataclasses import dataclass

from lab.outline import Node
from lab.ui.canvas import Canvas
from lab.ui.geometry import Point, Rect
from lab.ui.look import Look
from lab.ui.outcomes import Changed, WidgetEvent
from lab.ui.paragraph import draw_text, least_width, natural_width, text_height
from lab.ui.widgets.button import button_face, draw_body
from lab.ui.widgets.icons import draw_icon
from lab.ui.widgets.stepping import on_step, stepping_keys
from lab.ui.widgets.widget import Mood, Plain, Spot, Widget, facing, states

_TRACK_PX = 10.0
_KNOB_PX = 15.0


@dataclass(frozen=True, slots=True)
class StepButton(Plain):
    """− or + beside a number; Tab passes it by, for the arrow keys do the same on the number itself."""

    key: str
    name: str
    icon: str
    effect: WidgetEvent
    enabled: bool = True

    def least_width(self, look: Look) -> float:
        """A target."""
        return look.sizes.target

    def natural_width(self, look: Look) -> float:
        """A target."""
        return look.sizes.target

    def height(self, look: Look, width: float) -> float:
        """A target."""
        return look.sizes.target

    def draw(self, canvas: Canvas, look: Look, rect: Rect, mood: Mood) -> None:
        """Draws the box and the sign."""
        pressed = self.key in mood.pressed
        face = button_face(look, "plain", selected=False, enabled=self.enabled, pressed=pressed)
        draw_body(canvas, look, rect, face)
        side = float(round(look.sizes.text("body") * 0.7))
        square = Rect(rect.center[0] - side / 2, rect.center[1] - side / 2, side, side)
        draw_icon(canvas, self.icon, square, look.theme.color(face.text), width=max(look.sizes.stroke, side / 7))

    def spots(self, look: Look, rect: Rect) -> tuple[Spot, ...]:
        """One, for pointers."""
        return (Spot(key=self.key, rect=rect, effect=self.effect, stop=False, enabled=self.enabled),)

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> Node:
        """A button."""
        actions = ("press",) if self.enabled else ()
        flags = states(disabled=not self.enabled)
        return Node(self.key, "button", self.name, state=flags, bounds=rect, actions=actions)


@dataclass(frozen=True, slots=True)
class Slider(Plain):
    """A value between two limits.

    shown: the value as it is written and spoken.  low_text, high_text: below the ends of the track, if given.
    """

    key: str
    name: str
    low: float
    high: float
    step: float
    value: float
    shown: str
    low_text: str = ""
    high_text: str = ""

    def least_width(self, look: Look) -> float:
        """Two buttons and a track long enough to aim at."""
        words = max(least_width(look, text, "body") for text in (self.name, self.shown))
        return max(words, 2 * (look.sizes.target + look.sizes.gap) + look.sizes.px(96))

    def natural_width(self, look: Look) -> float:
        """Twice the least, or its name and value beside each other."""
        return max(1.5 * self.least_width(look), self._head_width(look))

    def height(self, look: Look, width: float) -> float:
        """Name and value, the track, and what stands at its ends."""
        ends = text_height(look, self.low_text or self.high_text, width, "small") if self._ends else 0.0
        return self._head_height(look, width) + look.sizes.target + ends

    def place(self, look: Look, rect: Rect) -> tuple[tuple[Widget, Rect], ...]:
        """The two buttons."""
        row, side = self._row(look, rect), look.sizes.target
        less, more = row.cut_left(side)[0], row.cut_right(side)[0]
        return (
            (self._button(look, "less", -1), facing(look, less, rect)),
            (self._button(look, "more", 1), facing(look, more, rect)),
        )

    def draw(self, canvas: Canvas, look: Look, rect: Rect, mood: Mood) -> None:
        """Draws name, value, track and knob."""
        self._draw_head(canvas, look, rect)
        track, color = self._track(look, rect), look.theme.color
        bar = Rect(track.x, track.center[1] - look.sizes.px(_TRACK_PX) / 2, track.w, look.sizes.px(_TRACK_PX))
        canvas.box(bar, fill=color("track"), outline=color("edge"), radius=bar.h / 2)
        reached = self._share() * track.w
        canvas.box(facing(look, bar.cut_left(reached)[0], bar), fill=color("ink"), radius=bar.h / 2)
        knob = facing(look, Rect(track.x + reached, track.center[1], 0, 0), track)
        fill = color("wash" if self.key in mood.pressed else "panel")
        radius = look.sizes.px(_KNOB_PX)
        canvas.circle((knob.x, knob.y), radius, fill=fill, outline=color("ink"), width=look.sizes.stroke)
        if self._ends:
            foot = rect.cut_bottom(text_height(look, self.low_text or self.high_text, rect.w, "small"))[0]
            foot = Rect(track.x, foot.y, track.w, foot.h)
            draw_text(canvas, look, self.low_text, foot, style="small", color="soft")
            draw_text(canvas, look, self.high_text, foot, style="small", color="soft", align="end")

    def spots(self, look: Look, rect: Rect) -> tuple[Spot, ...]:
        """The track: follows the pointer, steps by keys."""
        row, around = self._row(look, rect), look.sizes.target + look.sizes.gap
        zone = row.inset(around, 0)
        track = self._track(look, rect)

        def at(point: Point) -> WidgetEvent:
            share = (point[0] - track.x) / track.w if track.w else 0.0
            share = 1.0 - share if look.sizes.mirrored else share
            goal = self.low + share * (self.high - self.low)
            return Changed(self.key, on_step(goal, self.low, self.high, self.step))

        keys = stepping_keys(look, self.key, self.value, self.low, self.high, self.step)
        return (Spot(key=self.key, rect=zone, keys=keys, slide=at),)

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> Node:
        """A slider with its value."""
        flags = states(focused=mood.focused == self.key)
        return Node(
            self.key,
            "slider",
            self.name,
            value=self.shown,
            state=flags,
            bounds=self._row(look, rect).inset(look.sizes.target + look.sizes.gap, 0),
            actions=("increase", "decrease"),
            children=children,
        )

    @property
    def _ends(self) -> bool:
        return bool(self.low_text or self.high_text)

    def _share(self) -> float:
        span = self.high - self.low
        return min(1.0, max(0.0, (self.value - self.low) / span)) if span > 0 else 0.0

    def _head_width(self, look: Look) -> float:
        return natural_width(look, self.name, "body") + look.sizes.gap * 2 + natural_width(look, self.shown, "strong")

    def _head_height(self, look: Look, width: float) -> float:
        name = text_height(look, self.name, width, "body")
        return name if self._head_width(look) <= width else name + text_height(look, self.shown, width, "strong")

    def _draw_head(self, canvas: Canvas, look: Look, rect: Rect) -> None:
        taken = draw_text(canvas, look, self.name, rect)
        beside = self._head_width(look) <= rect.w
        place = rect if beside else rect.cut_top(taken.h)[1]
        draw_text(canvas, look, self.shown, place, style="strong", align="end" if beside else "start")

    def _row(self, look: Look, rect: Rect) -> Rect:
        return rect.cut_top(self._head_height(look, rect.w))[1].cut_top(look.sizes.target)[0]

    def _track(self, look: Look, rect: Rect) -> Rect:
        around = look.sizes.target + look.sizes.gap + look.sizes.px(_KNOB_PX)
        return self._row(look, rect).inset(around, 0)

    def _button(self, look: Look, icon: str, way: int) -> StepButton:
        say = look.words.say
        name = say("{name}: less", name=self.name) if way < 0 else say("{name}: more", name=self.name)
        goal = on_step(self.value + way * self.step, self.low, self.high, self.step)
        free = self.value > self.low if way < 0 else self.value < self.high
        return StepButton(f"{self.key}.{icon}", name, icon, Changed(self.key, goal), enabled=free)
