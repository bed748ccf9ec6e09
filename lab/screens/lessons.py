"""The list of lessons: each row is one target."""

from __future__ import annotations

from dataclasses import dataclass

from lab.lesson.probe.telling import AIM, TITLE
from lab.outline import Node
from lab.outline.words import msg
from lab.screens.intents import Go, Intent
from lab.screens.notices import with_notice
from lab.screens.page import PageScreen
from lab.screens.reading_page import ReadingPage
from lab.screens.screen import LessonEntry, LessonsModel
from lab.screens.top_bar import top_bar
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.outcomes import Pressed, WidgetEvent
from lab.ui.paragraph import draw_text, least_width, natural_width, text_height
from lab.ui.widgets.arrange import Column
from lab.ui.widgets.icons import draw_icon
from lab.ui.widgets.label import Label
from lab.ui.widgets.widget import Mood, Plain, Spot, Widget, facing, states

ROW, PROBE = "lesson-", "probe"
HELP_LINES = (
    msg("Each lesson asks you to say what will happen, and then shows it."),
    msg("Choose any; the first ones are the easiest."),
)
LEVELS = {
    "early": msg("to begin with"),
    "middle": msg("further on"),
    "later": msg("for those who know moments"),
}


@dataclass(frozen=True, slots=True)
class LessonRow(Plain):
    """A lesson as a wide button: its number, title, aim, how much of it has been answered."""

    key: str
    number: str
    title: str
    aim: str
    note: str
    share: float

    def least_width(self, look: Look) -> float:
        """Its longest word beside the number."""
        words = max(least_width(look, self.title, "title"), least_width(look, self.aim, "body"))
        return words + self._side(look) + 3 * look.sizes.px(20) + self._chevron(look)

    def natural_width(self, look: Look) -> float:
        """Its aim on one line."""
        return natural_width(look, self.aim, "body") + self._side(look) + 3 * look.sizes.px(20) + self._chevron(look)

    def height(self, look: Look, width: float) -> float:
        """Title, aim, note."""
        room = self._text_width(look, width)
        lines = (
            text_height(look, self.title, room, "title")
            + text_height(look, self.aim, room, "body")
            + text_height(look, self.note, room, "small")
        )
        return max(look.sizes.main_target, lines + 2 * look.sizes.px(14))

    def draw(self, canvas: Canvas, look: Look, rect: Rect, mood: Mood) -> None:
        """Draws the card."""
        theme, sizes = look.theme, look.sizes
        fill = theme.wash if self.key in mood.pressed else theme.panel
        canvas.box(rect, fill=fill, outline=theme.edge, width=sizes.stroke, radius=sizes.px(12))
        pad, side = sizes.px(20), self._side(look)
        disc = facing(look, Rect(rect.x + pad, rect.center[1] - side / 2, side, side), rect)
        self._draw_disc(canvas, look, disc)
        room = self._text_width(look, rect.w)
        box = facing(look, Rect(rect.x + 2 * pad + side, rect.y + sizes.px(14), room, rect.h), rect)
        used = draw_text(canvas, look, self.title, box, style="title")
        box = box.cut_top(used.h)[1]
        used = draw_text(canvas, look, self.aim, box)
        draw_text(canvas, look, self.note, box.cut_top(used.h)[1], style="small", color="soft")
        chevron = self._chevron(look)
        sign = facing(look, Rect(rect.right - pad - chevron, rect.center[1] - chevron / 2, chevron, chevron), rect)
        draw_icon(canvas, "on", sign, theme.ink, width=sizes.stroke, mirrored=sizes.mirrored)

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
        if not done and self.share > 0:
            turn = 6.283185307179586 * self.share
            canvas.arc(
                disc.center, disc.w / 2 - sizes.px(2), 1.5707963267948966, -turn, theme.settled, width=sizes.px(4)
            )
        if done:
            draw_icon(canvas, "check", disc.inset(disc.w * 0.28), theme.on_dark, width=sizes.stroke)
        else:
            size = sizes.text("title")
            canvas.text(self.number, disc.center, size=size, color=theme.ink, bold=True, anchor="center middle")

    def _side(self, look: Look) -> float:
        return max(look.sizes.target, look.sizes.text("title") * 1.9)

    def _chevron(self, look: Look) -> float:
        return float(round(look.sizes.text("body") * 1.1))

    def _text_width(self, look: Look, width: float) -> float:
        return max(1.0, width - self._side(look) - 4 * look.sizes.px(20) - self._chevron(look))


class LessonsScreen(PageScreen[LessonsModel]):
    """Shows the lessons, the easiest first."""

    def __init__(self, look: Look) -> None:
        super().__init__(look, help_lines=HELP_LINES)

    def _answer(self, event: WidgetEvent, model: LessonsModel) -> list[Intent]:
        match event:
            case Pressed(key=key) if key == PROBE:
                return [Go(place="probe")]
            case Pressed(key=key) if key.startswith(ROW):
                return [Go(place="lesson", name=key.removeprefix(ROW))]
        return []

    def _root(self, model: LessonsModel) -> Widget:
        look = self._page.look
        bar = with_notice(
            look,
            top_bar(look, title=look.words.say("Lessons"), sound=self._page.sound_shown(model.setting)),
            model.notice,
        )
        rows = tuple(_row(look, number, entry) for number, entry in enumerate(model.lessons, start=1))
        children: tuple[Widget, ...] = (*rows, _probe_row(look))
        if not rows:
            children = (Label("none", look.words.say("There are no lessons here yet.")), _probe_row(look))
        return ReadingPage(bar, Column(children, gap=14), key="lessons", width=860.0)


def _probe_row(look: Look) -> LessonRow:
    say = look.words.say
    return LessonRow(PROBE, "?", say(TITLE), say(AIM), say("a few minutes"), 0.0)


def _row(look: Look, number: int, entry: LessonEntry) -> LessonRow:
    words = look.words
    level = words.say(LEVELS[entry.level]) if entry.level in LEVELS else entry.level
    count = words.plural("{n} question", "{n} questions", entry.questions)
    if entry.answered >= entry.questions > 0:
        note = words.say("{level} · {count} · all answered", level=level, count=count)
    elif entry.answered:
        answered = words.number(entry.answered, 0)
        note = words.say("{level} · {count} · {answered} answered", level=level, count=count, answered=answered)
    else:
        note = words.say("{level} · {count}", level=level, count=count)
    return LessonRow(
        ROW + entry.name,
        words.number(number, 0),
        words.content(entry.title),
        words.content(entry.aim),
        note,
        entry.answered / entry.questions if entry.questions else 0.0,
    )
