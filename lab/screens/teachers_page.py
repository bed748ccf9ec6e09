"""The teacher's page on screen: what to do with real things, and every answer of the lesson."""

from __future__ import annotations

from lab.files import UnitSystem
from lab.lesson.messages import Message, render
from lab.lesson.teaching import KeyedQuestion, Section, Thought
from lab.outline.words import msg
from lab.screens.intents import Go, Intent
from lab.screens.notices import with_notice
from lab.screens.page import PageScreen
from lab.screens.reading_page import ReadingPage
from lab.screens.screen import TeachersPageModel
from lab.screens.top_bar import top_bar
from lab.ui.look import Look
from lab.ui.outcomes import Pressed, WidgetEvent
from lab.ui.widgets.arrange import Column, Row
from lab.ui.widgets.button import Button
from lab.ui.widgets.label import Label
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.widget import Widget

BEGIN = "begin"
HELP_LINES = (
    msg("This page is for whoever teaches the lesson. It holds every answer."),
    msg("In a terminal, `tiltbench lesson NAME --page` prints it."),
)


class TeachersPageScreen(PageScreen[TeachersPageModel]):
    """Shows the page; the lesson can be begun from it."""

    def __init__(self, look: Look) -> None:
        super().__init__(look, help_lines=HELP_LINES)

    def _answer(self, event: WidgetEvent, model: TeachersPageModel) -> list[Intent]:
        if isinstance(event, Pressed) and event.key == BEGIN:
            return [Go(place="lesson", name=model.name)]
        return []

    def _root(self, model: TeachersPageModel) -> Widget:
        look, sheet = self._page.look, model.sheet
        say = look.words.say
        title = render(sheet.title, look.words, sheet.units)
        bar = top_bar(
            look, title=say("Teacher's page"), trail=say("Lessons"), sound=self._page.sound_shown(model.setting)
        )
        questions: list[Widget] = [Label("questions", say("The questions and their answers"), style="title")]
        if sheet.note is not None:
            questions.append(Label("note", render(sheet.note, look.words, sheet.units), color="soft"))
        questions += [_question(look, place, each) for place, each in enumerate(sheet.questions, start=1)]
        children: list[Widget] = [
            Label("lesson-title", title, style="heading"),
            *(_section(look, each, sheet.units) for each in sheet.before),
            Column(tuple(questions), gap=14),
            *(_section(look, each, sheet.units) for each in sheet.after),
        ]
        foot = Row((Button(BEGIN, say("Begin the lesson"), kind="main"),))
        return ReadingPage(
            with_notice(look, bar, model.notice),
            Column(tuple(children), gap=26),
            key="teachers",
            foot=foot,
            width=860.0,
        )


def _section(look: Look, section: Section, units: UnitSystem) -> Widget:
    texts = [render(line, look.words, units) for line in section.lines]
    if len(texts) == 1:
        body: list[Widget] = [Label(f"{section.key}-1", texts[0])]
    else:
        body = [
            _item(f"{section.key}-{place}", look.words.number(place, 0) + "." if section.numbered else "–", text)
            for place, text in enumerate(texts, start=1)
        ]
    return Column((Label(section.key, look.words.say(section.heading), style="title"), *body), gap=6)


def _item(key: str, sign: str, text: str) -> Widget:
    """A line after its sign; the sign keeps its width, and the lines of the text stand below each other."""
    return Row((Label(f"{key}-sign", sign, color="soft"), Label(key, text)), gap=10, weights=(0.0, 1.0), wraps=False)


def _question(look: Look, place: int, question: KeyedQuestion) -> Widget:
    key, say = f"question-{place}", look.words.say

    def text(sentence: Message) -> str:
        return render(sentence, look.words, question.units)

    title = say("{number}. {title}", number=look.words.number(place, 0), title=text(question.title))
    children: list[Widget] = [Label(f"{key}-title", title, style="strong")]
    children += [
        Label(f"{key}-line-{number}", " ".join(text(line).split())) for number, line in enumerate(question.lines, 1)
    ]
    answer = say("The sum says {answer}.", answer=text(question.answer))
    right = Column((Label(f"{key}-answer", answer, style="strong"), Label(f"{key}-why", text(question.why))), gap=2)
    children.append(Panel(f"{key}-right", children=(right,), fill="settled_fill", pad=12, round=True))
    children += [_thought(look, f"{key}-way-{number}", each, text(each.answer), text(each.told))
                 for number, each in enumerate(question.thoughts, 1)]  # fmt: skip
    return Panel(key, children=(Column(tuple(children), gap=8),), pad=20, outline=True, round=True)


def _thought(look: Look, key: str, thought: Thought, answer: str, told: str) -> Widget:
    """An answer, the sentence that a learner gets for it, and the name of the way of thinking."""
    says = look.words.say("Who says {answer} ({way}) is told:", answer=answer, way=thought.way)
    return Column((Label(key, says, color="soft"), Label(f"{key}-told", told)), gap=0)
