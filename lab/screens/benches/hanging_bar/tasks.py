"""What the panel shows of a task: the button that sets one, what is to be done, and that it is done."""

from __future__ import annotations

from lab.scenes.hanging_view import HangingView
from lab.simulation.benches.bar_tasks import BarTask, next_task
from lab.ui.widgets.arrange import Column, Row
from lab.ui.widgets.button import Button
from lab.ui.widgets.label import Label
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.widget import Widget

TASK, NO_TASK = "task", "task-end"


def task_widgets(view: HangingView, task: BarTask | None) -> tuple[Widget, ...]:
    """The task, or the button that sets one; beside tables there is no room for the button."""
    say, bench = view.look.words.say, view.bench
    if task is None:
        offered = bench.held and bench.view == "plain" and next_task(bench) is not None
        return (Button(TASK, say("Set me a task"), kind="quiet"),) if offered else ()
    done = task.is_done(bench)
    title = say("Done: that is it.") if done else say("Your task")
    another = next_task(bench, after=task.kind) is not None
    buttons = (Button(TASK, say("Another"), enabled=another), Button(NO_TASK, say("No task"), kind="quiet"))
    lines = (Label("task.title", title, style="strong"), Label("task.text", say(task.sentence)), Row(buttons))
    fill = "settled_fill" if done else "held_fill"
    return (Panel("task.panel", children=(Column(lines, gap=4),), fill=fill, pad=12, round=True),)
