"""The last page of the probe: which rule the answers fit, how sure that is, the next nearest, where to go on."""

from __future__ import annotations

from collections.abc import Sequence

from lab.attempts import shown_code
from lab.files import UNITS
from lab.lesson import Message, render
from lab.lesson.probe.items import UNIT_NAME
from lab.lesson.probe.probe import Probe, finding
from lab.lesson.probe.telling import told
from lab.ui.look import Look
from lab.ui.widgets.arrange import Column, Row
from lab.ui.widgets.button import Button
from lab.ui.widgets.label import Label
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.widget import Widget

MORE, TO_LESSONS, TO_BUILD = "more", "to-lessons", "to-build"


def probe_end(look: Look, probe: Probe, *, learner: str, gain: Sequence[Message] = ()) -> Widget:
    """The page.

    learner: the code that the answers are kept under, "" for none.  gain: what has changed since the first time.
    """
    say, end = look.words.say, told(finding(probe.given), form=probe.form)

    def text(sentence: Message) -> str:
        return render(sentence, look.words, UNITS[UNIT_NAME])

    fits = [Label("fits", text(end.fits), style="title")]
    if end.sure is not None:
        fits.append(Label("sure", text(end.sure), color="soft"))
    count = look.words.plural("From {n} answer.", "From {n} answers.", len(probe.given))
    fits.append(Label("from", count, style="small", color="soft"))
    children: list[Widget] = [
        Label("end-title", say("Your answers fit:"), style="heading"),
        Panel("fits-panel", children=(Column(tuple(fits), gap=6),), fill="held_fill", pad=20, round=True),
    ]
    if end.runner_up is not None:
        children.append(Label("runner-up", text(end.runner_up)))
    if end.leads is not None:
        children.append(
            Panel("leads-panel", children=(Label("leads", text(end.leads)),), pad=20, outline=True, round=True)
        )
    if gain:
        lines = tuple(Label(f"gain-{number}", text(line)) for number, line in enumerate(gain))
        title = say("What has changed")
        children.append(Panel("gain", title=title, children=lines, fill="settled_fill", pad=20, round=True, gap=4))
    if probe.can_go_on:
        children.append(Label("surer", say("More questions would make it surer."), color="soft"))
    if learner:
        code = say("Your answers are kept under the code {code}, without a name.", code=shown_code(learner))
        children.append(Label("end-code", code, color="soft"))
    return Column(tuple(children), gap=18)


def probe_end_foot(look: Look, probe: Probe) -> Widget:
    """The ways on."""
    say = look.words.say
    first = Button(MORE, say("More questions")) if probe.can_go_on else Button(TO_BUILD, say("Free build"))
    return Row((first, Button(TO_LESSONS, say("To the lessons"), kind="main")))
