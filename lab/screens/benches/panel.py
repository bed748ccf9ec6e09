"""What the panel beside every bench is made of: sums, result, the one action, the tray, the view."""

from __future__ import annotations

from dataclasses import dataclass

from lab.files import View
from lab.screens.benches.sides import SIDE_NAMES, SIDES
from lab.simulation import Side
from lab.ui.look import Look
from lab.ui.paragraph import natural_width
from lab.ui.widgets.arrange import Row
from lab.ui.widgets.button import Button
from lab.ui.widgets.choice import ChoiceRow
from lab.ui.widgets.widget import Widget

GUESS, LET_GO, HOLD, SHOW_END, VIEW = "guess", "let-go", "hold", "show-end", "view"
VIEWS: tuple[View, ...] = ("plain", "numbers", "all")


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelParts:
    """The pieces of the panel, for whoever arranges them.

    task: what the bench has set to be done; see `tasks`.  head: what stays above all others.
    """

    sums: tuple[Widget, ...]
    result: tuple[Widget, ...]
    action: tuple[Widget, ...]
    tray: tuple[Widget, ...]
    view: tuple[Widget, ...]
    task: tuple[Widget, ...] = ()
    head: tuple[Widget, ...] = ()


def action(look: Look, guess: Side | None) -> tuple[Widget, ...]:
    """Held: the guess and *Let go*."""
    say = look.words.say
    # The picture is never turned round, so "left" stays at the left in a language that is read from the right.
    order = tuple(reversed(SIDES)) if look.sizes.mirrored else SIDES
    options = tuple((side, say(SIDE_NAMES[side])) for side in order)
    return (
        ChoiceRow(GUESS, say("Which end will drop?"), options, guess),
        Button(LET_GO, say("Let go"), kind="main"),
    )


def view_choice(look: Look, view: View, *, doubt: Widget | None = None) -> Widget:
    """How many of the numbers are shown.  doubt: the switch beside it, where the bench has one."""
    say = look.words.say
    options = (("plain", say("plain")), ("numbers", say("numbers")), ("all", say("all")))
    choice = ChoiceRow(VIEW, say("Show"), options, view, show_name=False)
    return choice if doubt is None else Row((choice, doubt), weights=(1.0, 0.0))


def panel_width(look: Look) -> float:
    """How wide the panel is beside the picture: as in the plan, wider with the text, never half the window."""
    sizes = look.sizes
    wanted = sizes.px(400) * (1.0 + 0.45 * (sizes.text_scale - 1.0))
    words = natural_width(look, look.words.say("Which end will drop?"), "strong") + 2 * sizes.margin
    return min(max(wanted, words), sizes.width * (0.4 if sizes.text_scale < 1.2 else 0.48))
