"""What is said over a screen: a toast that goes by itself, or a trouble that stays with a way to mend it."""

from __future__ import annotations

from lab.screens.intents import DismissNotice, Intent, RetrySave
from lab.screens.screen import Notice
from lab.ui.look import Look
from lab.ui.outcomes import Pressed, WidgetEvent
from lab.ui.widgets.arrange import Column, Row
from lab.ui.widgets.button import Button
from lab.ui.widgets.dialog import Toast
from lab.ui.widgets.label import Label
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.widget import Widget

RETRY, DISMISS = "notice-retry", "notice-dismiss"


def notice_text(look: Look, notice: Notice) -> str:
    """The sentence of a notice."""
    return look.words.say(notice.template, **notice.values)


def notice_toast(look: Look, notice: Notice | None) -> Toast | None:
    """A notice that only says something."""
    if notice is None or notice.kind == "trouble":
        return None
    return Toast("notice", notice_text(look, notice))


def with_notice(look: Look, head: Widget, notice: Notice | None) -> Widget:
    """A header with the trouble below it, if there is one, and what can be done about it."""
    if notice is None or notice.kind != "trouble":
        return head
    say = look.words.say
    buttons: list[Widget] = []
    if notice.retry:
        buttons.append(Button(RETRY, say("Try to save again")))
    buttons.append(Button(DISMISS, say("Close"), kind="quiet"))
    text = Label("notice-text", notice_text(look, notice), middle=True)
    row = Row((text, Row(tuple(buttons), weights=(0.0,) * len(buttons))), weights=(1.0, 0.0), gap=16)
    return Column((head, Panel("notice", children=(row,), fill="held_fill", pad=16, edge="bottom")), gap=0)


def notice_intents(event: WidgetEvent) -> tuple[Intent, ...]:
    """What a press on a notice's button asks for."""
    if event == Pressed(RETRY):
        return (RetrySave(),)
    return (DismissNotice(),) if event == Pressed(DISMISS) else ()
