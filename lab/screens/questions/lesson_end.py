"""The end of a lesson: what was done, the ideas that came up, the learner's code."""

from __future__ import annotations

from collections.abc import Sequence

from lab.attempts import shown_code
from lab.lesson import Run
from lab.ui.look import Look
from lab.ui.widgets.arrange import Column, Row
from lab.ui.widgets.button import Button
from lab.ui.widgets.headers import Progress
from lab.ui.widgets.label import Label
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.widget import Widget

TO_LESSONS, TO_BUILD = "to-lessons", "to-build"


def lesson_end(look: Look, run: Run, *, ideas: Sequence[tuple[str, str]], learner: str) -> Widget:
    """The last page.

    ideas: for each answer that was the answer to something else, (question, what it is the answer to).
    learner: the code that the answers are kept under, "" for none.
    """
    say, content = look.words.say, look.words.content
    children: list[Widget] = [
        Label("end-title", say("That was the lesson"), style="heading"),
        Label("end-aim", content(run.lesson.aim)),
        Panel("end-done", children=(_done(look, run),), pad=20, outline=True, round=True),
    ]
    if ideas:
        children.append(_ideas(look, ideas))
    if learner:
        code = say("Your answers are kept under the code {code}, without a name.", code=shown_code(learner))
        children.append(Label("end-code", code, color="soft"))
    return Column(tuple(children), gap=18)


def lesson_end_foot(look: Look) -> Widget:
    """The ways on from the last page."""
    say = look.words.say
    return Row((Button(TO_BUILD, say("Free build")), Button(TO_LESSONS, say("More lessons"), kind="main")))


def _done(look: Look, run: Run) -> Widget:
    words = look.words
    kinds = {"right": "right", "off": "wrong", "skipped": "open", "todo": "open"}
    as_said = sum(mark == "right" for mark in run.marks)
    other = sum(mark == "off" for mark in run.marks)
    left = len(run.marks) - as_said - other
    lines = [
        words.plural("{n} came out as you said.", "{n} came out as you said.", as_said),
        words.plural("{n} came out another way.", "{n} came out another way.", other),
    ]
    if left:
        lines.append(words.plural("{n} was left out.", "{n} were left out.", left))
    text = words.say("question by question")
    progress = Progress("end-marks", tuple(kinds[mark] for mark in run.marks), text)
    labels = tuple(Label(f"end-line-{number}", line) for number, line in enumerate(lines))
    return Column((progress, *labels), gap=6)


def _ideas(look: Look, ideas: Sequence[tuple[str, str]]) -> Widget:
    rows = tuple(
        Column(
            (
                Label(f"end-idea-{number}.of", question, style="small", color="soft"),
                Label(f"end-idea-{number}", idea),
            ),
            gap=0,
        )
        for number, (question, idea) in enumerate(ideas)
    )
    title = look.words.say("Ideas that your other answers fit")
    return Panel("end-ideas", title=title, children=rows, fill="held_fill", pad=20, round=True, gap=10)
