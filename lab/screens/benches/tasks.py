"""What the panel of every bench shows of a task: the button that sets one, what is to be done, that it is done."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, Protocol

from lab.files import View
from lab.simulation.benches.shared_edits import LetsGo
from lab.simulation.benches.tasks import Task, TaskKind, next_task
from lab.ui.look import Look
from lab.ui.widgets.arrange import Column, Row
from lab.ui.widgets.button import Button
from lab.ui.widgets.label import Label
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.widget import Widget

TASK, NO_TASK = "task", "task-end"


class Tasked(LetsGo, Protocol):
    """A bench that can set tasks."""

    @property
    def held(self) -> bool:
        """Whether it is held."""
        ...

    @property
    def view(self) -> View:
        """How much of the numbers is shown."""
        ...


Kinds = Sequence[TaskKind[Any]]


def task_after(kinds: Kinds, bench: Tasked, task: Task[Any] | None, key: str) -> Task[Any] | None:
    """The task that is set after a press on one of the two buttons.  task: the one before."""
    if key != TASK:
        return None
    return next_task(kinds, bench, after=None if task is None else task.kind.name)


def task_widgets(look: Look, kinds: Kinds, bench: Tasked, task: Task[Any] | None) -> tuple[Widget, ...]:
    """The task, or the button that sets one; beside tables there is no room for the button."""
    say = look.words.say
    if task is None:
        offered = bench.held and bench.view == "plain" and next_task(kinds, bench) is not None
        return (Button(TASK, say("Set me a task"), kind="quiet"),) if offered else ()
    done = task.is_done(bench)
    title = say("Done: that is it.") if done else say("Your task")
    another = next_task(kinds, bench, after=task.kind.name) is not None
    buttons = (Button(TASK, say("Another"), enabled=another), Button(NO_TASK, say("No task"), kind="quiet"))
    lines = (Label("task.title", title, style="strong"), Label("task.text", say(task.sentence)), Row(buttons))
    fill = "settled_fill" if done else "held_fill"
    return (Panel("task.panel", children=(Column(lines, gap=4),), fill=fill, pad=12, round=True),)
