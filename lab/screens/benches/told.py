"""What the panel of every bench says after letting go: what happens, then what happened and why."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Protocol, Self, TypeVar

from lab.screens.benches.panel import SHOW_END
from lab.ui.look import Look
from lab.ui.widgets.arrange import Column, Steady
from lab.ui.widgets.button import Button
from lab.ui.widgets.label import Label
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.widget import Widget


class LetGoBench(Protocol):
    """A bench that moves once it is let go."""

    @property
    def moving(self) -> bool:
        """Whether time changes anything now."""

    def at_end(self) -> Self:
        """What it comes to in the end."""


B = TypeVar("B", bound=LetGoBench)


def told(happened: str, *, compared: Iterable[str] = (), reasons: Iterable[str] = (), settled: bool) -> Panel:
    """What happened and why.  compared: what was guessed beside it, "" for nothing.  settled: whether it balances."""
    lines = [Label("happened", happened, style="title")]
    lines += [
        Label(f"compared-{number}" if number else "compared", text) for number, text in enumerate(compared) if text
    ]
    lines += [Label(f"why-{number}", text) for number, text in enumerate(reasons)]
    fill = "settled_fill" if settled else "held_fill"
    return Panel("told", children=(Column(tuple(lines), gap=4),), fill=fill, pad=14, round=True)


def after(look: Look, bench: B, tell: Callable[[B], Widget], *, going: str, said: str = "") -> Widget:
    """Let go: what happens, then what happened and why.

    tell: what is said of a bench at rest.  going, said: what happens on the way, and what was guessed, "" for nothing.
    """
    return waiting(look, going, said, tell(bench.at_end())) if bench.moving else tell(bench)


def waiting(look: Look, going: str, said: str, end: Widget, *buttons: Widget) -> Widget:
    """While it moves: what happens, and what was guessed, "" for nothing.

    end: what will be told.  It is as high as that, which nobody sees before: so the button below stays where it is.
    buttons: what else can be done meanwhile; left out, the end can be shown at once.
    """
    lines: list[Widget] = [Label("happened", going, style="title")]
    if said:
        lines.append(Label("said", said))
    lines += buttons or (Button(SHOW_END, look.words.say("Show the end"), kind="quiet"),)
    return Steady(Column(tuple(lines)), (end,))
