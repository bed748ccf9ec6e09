"""Whose answers they are: the code in force, a new one, one to pick again, one to type."""

from __future__ import annotations

from lab.attempts import meant_code, near_code, shown_code, tidy_code
from lab.attempts.codes import ALPHABET, RANDOM_CHARACTERS
from lab.outline.words import msg
from lab.screens.intents import ChangeSetting, Intent, NewLearner
from lab.screens.lesson_row import Columns
from lab.screens.notices import with_notice
from lab.screens.page import PageScreen
from lab.screens.reading_page import ReadingPage
from lab.screens.screen import LearnerModel, Outcome
from lab.screens.top_bar import top_bar
from lab.ui.events import Event, Key, Text
from lab.ui.look import Look
from lab.ui.outcomes import Pressed, WidgetEvent
from lab.ui.widgets.arrange import Column, Row
from lab.ui.widgets.button import Button
from lab.ui.widgets.keypad import Typed
from lab.ui.widgets.label import Label
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.widget import Widget

NEW, USE, RUB_OUT, NEAR, ANYWAY = "new-code", "use-code", "code.rub-out", "near-code", "use-anyway"
PICK, LETTER = "pick-", "code."
IN_A_ROW = 6
LONGEST = 12
"""Characters that can be typed: a code with spaces, and a few slips."""

HELP_LINES = (
    msg("A code stands for you, so that what you learned is found again. Nobody asks for your name."),
    msg("Copy yours. When you come back, pick it from the list, or type it: small letters and spaces do no harm."),
)


class LearnerScreen(PageScreen[LearnerModel]):
    """Shows the code; keeps what is being typed and what was said of it."""

    def __init__(self, look: Look) -> None:
        super().__init__(look, help_lines=HELP_LINES)
        self._typed = ""
        self._unread = False
        self._unknown: str | None = None

    def handle(self, event: Event) -> Outcome:
        """Answer an event; letters go into the code wherever the focus is."""
        if self._page.opened == "" and isinstance(event, Text) and self.write(event.text):
            return Outcome(consumed=True)
        if self._page.opened == "" and isinstance(event, Key) and event.name in ("backspace", "delete"):
            self._put(self._typed[:-1])
            return Outcome(consumed=True)
        return super().handle(event)

    def write(self, text: str) -> bool:
        """Put what was typed after what stands there; returns whether any of it can be in a code."""
        letters = "".join(each for each in tidy_code(text) if each.isascii() and each.isalnum())
        if letters:
            self._put((self._typed + letters)[:LONGEST])
        return bool(letters)

    def _put(self, text: str) -> None:
        self._typed, self._unread, self._unknown = text, False, None
        self._refresh()

    def _answer(self, event: WidgetEvent, model: LearnerModel) -> list[Intent]:
        if not isinstance(event, Pressed):
            return []
        key = event.key
        near = near_code(self._typed, model.known)
        if key == NEW:
            self._put("")
            return [NewLearner()]
        if key == USE:
            return self._use(model)
        if key.startswith(PICK):
            return self._take(key.removeprefix(PICK))
        if key == NEAR and near is not None:
            return self._take(near)
        if key == ANYWAY and self._unknown is not None:
            return self._take(self._unknown)
        if key == RUB_OUT:
            self._put(self._typed[:-1])
        elif key.startswith(LETTER):
            self.write(key.removeprefix(LETTER))
        return []

    def _use(self, model: LearnerModel) -> list[Intent]:
        meant = meant_code(self._typed, model.known)
        if meant is None:
            self._unread = True
        elif meant not in (*model.known, model.learner):
            self._unknown = meant
        else:
            return self._take(meant)
        return []

    def _take(self, code: str) -> list[Intent]:
        self._put("")
        return [ChangeSetting(name="learner", value=code)]

    # --- showing ----------------------------------------------------------------------------------------------

    def _root(self, model: LearnerModel) -> Widget:
        look = self._page.look
        bar = top_bar(look, title=look.words.say("Your code"), sound=self._page.sound_shown(model.setting))
        mine = Column((_in_force(look, model), *_used(look, model)), gap=16)
        typing = self._typing(model)
        wide = look.sizes.text_scale <= 1.2 and not look.sizes.portrait
        both: Widget = Columns((mine, typing), gap=24) if wide else Column((mine, typing), gap=16)
        return ReadingPage(with_notice(look, bar, model.notice), both, key="learner", width=1040.0 if wide else 640.0)

    def _typing(self, model: LearnerModel) -> Widget:
        look = self._page.look
        say = look.words.say
        letters = [Button(LETTER + each, each) for each in ALPHABET]
        keys: list[Widget] = [*letters, Button(RUB_OUT, say("Rub out"), icon="rub out", icon_only=True)]
        rows = tuple(Row(tuple(keys[at : at + IN_A_ROW]), wraps=False) for at in range(0, len(keys), IN_A_ROW))
        children: list[Widget] = [
            Label("typing-title", say("Type a code"), style="title"),
            Typed("typed-code", _grouped(self._typed), ""),
            *self._said(model),
            Column(rows),
            Button(USE, say("Use this code"), kind="main" if self._typed else "plain", enabled=bool(self._typed)),
        ]
        return Panel("typing", children=tuple(children), pad=20, outline=True, round=True)

    def _said(self, model: LearnerModel) -> tuple[Widget, ...]:
        """What is wrong with what was typed, and the nearest way out."""
        say = self._page.look.words.say
        if self._unknown is not None:
            text = say(
                "Nothing is kept here under {code}: it may be of another machine.", code=shown_code(self._unknown)
            )
            anyway = Button(ANYWAY, say("Use it all the same"), kind="quiet")
            return (Label("unread", text), anyway, *self._nearest(model))
        if not self._unread:
            return ()
        length = RANDOM_CHARACTERS + 1
        if len(self._typed) != length:
            count = self._page.look.words.number(length, 0)
            text = say("A code has {count} letters and figures. Look at it once more.", count=count)
        else:
            text = say("One letter of it must be another: that is no code as it stands.")
        return (Label("unread", text), *self._nearest(model))

    def _nearest(self, model: LearnerModel) -> tuple[Widget, ...]:
        near = near_code(self._typed, model.known)
        if near is None:
            return ()
        return (Button(NEAR, self._page.look.words.say("Was it {code}?", code=shown_code(near)), kind="quiet"),)


def _grouped(typed: str) -> str:
    half = (RANDOM_CHARACTERS + 1) // 2
    return typed if len(typed) <= half else f"{typed[:half]}-{typed[half:]}"


def _in_force(look: Look, model: LearnerModel) -> Widget:
    say = look.words.say
    children = (
        Label("code-title", say("Your answers are kept under this code:")),
        Label("code", shown_code(model.learner), style="heading"),
        Label("code-note", say("Nobody asks for your name. Copy the code and come back with it."), color="soft"),
        Button(NEW, say("I am new here: another code")),
    )
    return Panel("code-panel", children=children, fill="held_fill", pad=20, round=True)


def _used(look: Look, model: LearnerModel) -> tuple[Widget, ...]:
    """The codes that can be picked again, the latest first."""
    say = look.words.say
    others = [each for each in model.used if each.code != model.learner]
    if not others:
        return ()
    rows = tuple(
        Button(PICK + each.code, say("{code} · {when}", code=shown_code(each.code), when=say(each.when)), kind="quiet")
        for each in others
    )
    return (Column((Label("used-title", say("Used here before"), style="title"), *rows), gap=8),)
