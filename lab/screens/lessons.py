"""The course: the next best thing to do, what has changed, and all lessons in their groups."""

from __future__ import annotations

from collections.abc import Sequence

from lab.attempts import shown_code
from lab.files import UNITS
from lab.lesson import render
from lab.lesson.course_mixed import NAME as MIXED
from lab.lesson.course_telling import ALL_DONE, BACK, BEGIN, FIRST_PROBE, LAST_PROBE, ONWARD
from lab.lesson.probe.items import UNIT_NAME
from lab.lesson.probe.telling import AIM, TITLE
from lab.outline.words import msg
from lab.screens.intents import Go, Intent
from lab.screens.lesson_row import Columns, LessonRow
from lab.screens.notices import with_notice
from lab.screens.page import PageScreen
from lab.screens.reading_page import ReadingPage
from lab.screens.screen import LessonEntry, LessonsModel
from lab.screens.top_bar import top_bar
from lab.ui.look import Look
from lab.ui.outcomes import Pressed, WidgetEvent
from lab.ui.widgets.arrange import Column, Row
from lab.ui.widgets.button import Button
from lab.ui.widgets.label import Label
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.widget import Widget

ROW, PAGE, PROBE, OFFER, LEARNER = "lesson-", "page-", "probe", "offer", "learner"
HELP_LINES = (
    msg("Each lesson asks you to say what will happen, and then shows it."),
    msg("Choose any; the first ones are the easiest. After a day or two a few questions come back."),
    msg("The sheet beside a lesson is for the teacher: what to have on the table, what to expect."),
)
LEVELS = {
    "early": msg("To begin with"),
    "middle": msg("Further on"),
    "later": msg("For those who know moments"),
}
OTHERS = msg("Others")
THREE_COLUMNS = 1000.0
"""Design pixels at the text's size from which the three groups stand beside each other."""


class LessonsScreen(PageScreen[LessonsModel]):
    """Shows the course."""

    def __init__(self, look: Look) -> None:
        super().__init__(look, help_lines=HELP_LINES)

    def _answer(self, event: WidgetEvent, model: LessonsModel) -> list[Intent]:
        match event:
            case Pressed(key=key) if key == OFFER:
                return _offered(model)
            case Pressed(key=key) if key == PROBE:
                return [Go(place="probe")]
            case Pressed(key=key) if key == LEARNER:
                return [Go(place="learner", name="lessons")]
            case Pressed(key=key) if key.startswith(ROW):
                return [Go(place="lesson", name=key.removeprefix(ROW))]
            case Pressed(key=key) if key.startswith(PAGE):
                return [Go(place="page", name=key.removeprefix(PAGE))]
        return []

    def _root(self, model: LessonsModel) -> Widget:
        look = self._page.look
        bar = with_notice(
            look,
            top_bar(look, title=look.words.say("Lessons"), sound=self._page.sound_shown(model.setting)),
            model.notice,
        )
        groups = _groups(look, model.lessons)
        wide = look.sizes.width / look.sizes.px(1.0) / look.sizes.text_scale >= THREE_COLUMNS
        beside = wide and not look.sizes.portrait and len(groups) > 1
        lessons = Columns(groups) if beside else Column(groups, gap=20)
        if not groups:
            lessons = Column((Label("none", look.words.say("There are no lessons here yet.")),))
        children = (_offer(look, model), *_gain(look, model), lessons, _foot(look, model))
        return ReadingPage(bar, Column(children, gap=16), key="lessons", width=1216.0 if beside else 760.0)


def _offered(model: LessonsModel) -> list[Intent]:
    if model.offer == "again":
        return [Go(place="lesson", name=MIXED)]
    if model.offer in ("first probe", "last probe"):
        return [Go(place="probe")]
    return [Go(place="lesson", name=each.name) for each in model.lessons if each.is_next]


def _offer(look: Look, model: LessonsModel) -> Widget:
    """The one dark action, and why."""
    words = look.words
    begun = any(entry.answered for entry in model.lessons)
    following = next((words.content(entry.title) for entry in model.lessons if entry.is_next), None)
    why, button = {
        "first probe": (FIRST_PROBE, words.say("How do you think?")),
        "last probe": (LAST_PROBE, words.say("How do you think now?")),
        "again": (BACK, words.plural("{n} question from before", "{n} questions from before", model.again)),
        "next": (ONWARD if begun else BEGIN, following),
        "nothing": (ALL_DONE, None),
    }[model.offer]
    label = Label("offer-why", words.say(why), middle=True)
    if button is None:
        return Panel("offer-panel", children=(label,), fill="held_fill", pad=16, round=True)
    row = Row((label, Button(OFFER, button, kind="main")), weights=(1.0, 0.0), gap=16, align="middle")
    return Panel("offer-panel", children=(row,), fill="held_fill", pad=16, round=True)


def _gain(look: Look, model: LessonsModel) -> tuple[Widget, ...]:
    """What has changed; nothing where there is nothing to compare yet."""
    if not model.gain:
        return ()
    lines = tuple(
        Label(f"gain-{number}", render(line, look.words, UNITS[UNIT_NAME])) for number, line in enumerate(model.gain)
    )
    title = look.words.say("What has changed")
    return (Panel("gain", title=title, children=lines, fill="settled_fill", pad=16, round=True, gap=4),)


def _groups(look: Look, entries: Sequence[LessonEntry]) -> tuple[Widget, ...]:
    """The lessons under the names of their groups; numbered through."""
    say = look.words.say
    groups: dict[str, list[Widget]] = {}
    for number, entry in enumerate(entries, start=1):
        groups.setdefault(LEVELS.get(entry.level, OTHERS), []).append(_row(look, number, entry))
    return tuple(
        Column((Label(f"group-{number}", say(title), style="title"), *rows), gap=8)
        for number, (title, rows) in enumerate(groups.items())
    )


def _row(look: Look, number: int, entry: LessonEntry) -> Widget:
    words = look.words
    row = LessonRow(
        ROW + entry.name,
        words.number(number, 0),
        words.content(entry.title),
        words.content(entry.aim),
        _note(look, entry),
        entry.answered / entry.questions if entry.questions else 0.0,
        entry.is_next,
    )
    if not entry.has_page:
        return row
    says = words.say("For the teacher: {lesson}", lesson=words.content(entry.title))
    page = Button(PAGE + entry.name, says, kind="quiet", icon="page", icon_only=True)
    return Row((row, page), weights=(1.0, 0.0), gap=6, wraps=False)


def _note(look: Look, entry: LessonEntry) -> str:
    """How much was answered, and how much of that was right at the first try."""
    words = look.words
    if not entry.answered:
        return words.plural("{n} question", "{n} questions", entry.questions)
    answered, count, right = (words.number(each, 0) for each in (entry.answered, entry.questions, entry.right_first))
    if entry.answered >= entry.questions:
        return words.say("all {count} answered, {right} right at once", count=count, right=right)
    return words.say(
        "{answered} of {count} answered, {right} right at once", answered=answered, count=count, right=right
    )


def _foot(look: Look, model: LessonsModel) -> Widget:
    """The probe at any time, and the code."""
    say = look.words.say
    buttons: list[Widget] = [Button(PROBE, say(TITLE), kind="quiet")]
    if model.learner:
        buttons.append(Button(LEARNER, say("Code {code}", code=shown_code(model.learner)), kind="quiet"))
    return Column((Label("probe-aim", say(AIM), style="small", color="soft"), Row(tuple(buttons))), gap=6)
