"""The panel beside the hanging bar: moment table, guess, the one action, what happened, the tray, the view."""

from __future__ import annotations

from functools import partial

from lab.scenes.bar_bodies import draw_body, size_px
from lab.scenes.hanging_view import HangingView
from lab.scenes.weights import brass_rect, draw_brass
from lab.screens.benches.doubts import doubt_switch
from lab.screens.benches.hanging_bar.shelves import SHELF, SHELVES, shelf_keys, tray_weight
from lab.screens.benches.hanging_bar.words import (
    GOING,
    HAPPENED,
    YOU_SAID,
    guess_against_outcome,
    why,
)
from lab.screens.benches.panel import HOLD, PanelParts, action, view_choice
from lab.screens.benches.sums import balance_panel, moment_table
from lab.screens.benches.told import after, told
from lab.simulation import HangingBar
from lab.simulation.benches.bar_parts import kind_of
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.widgets.button import Button
from lab.ui.widgets.choice import ChoiceRow
from lab.ui.widgets.tray import Tray, TrayItem
from lab.ui.widgets.widget import Widget

TRAY = "tray"
LARGEST_TIMES = 120.0
"""A kilogram of brass would be no larger than this in the tray, design pixels: one bead fills no tile."""


def panel_parts(
    view: HangingView, *, tables: bool, shelf: str, armed: str, task: tuple[Widget, ...] = ()
) -> PanelParts:
    """All pieces.

    tables: whether the moment table may be seen.  shelf: what the tray shows.
    armed: key of the tray item that was taken up.  task: what is shown of a task.
    """
    return PanelParts(
        sums=_sums(view) if tables else (),
        result=(_quotient(view),) if tables else (),
        action=action(view.look, view.bench.guess) if view.bench.held else _after(view),
        # While it swings or lies tilted nothing is hung: the room is for what happened.
        tray=_tray(view, shelf, armed) if view.bench.held else (),
        task=task,
        view=(view_choice(view.look, view.bench.view, doubt=doubt_switch(view.look, view.bench.parts)),),
    )


def _sums(view: HangingView) -> tuple[Widget, ...]:
    """The moment table."""
    bench = view.bench
    keys = ["bar", *(f"weight-{weight.id}" for weight in bench.weights)]
    return moment_table(view.look, view.readings, bench.sum, keys, picked=view.picked, pickable=False)


def _quotient(view: HangingView) -> Widget:
    """Sum of moments ÷ sum of weights, and the balance point that it gives, from the rule's zero."""
    bench = view.bench
    return balance_panel(view.look, view.readings, bench.sum, bench.parts)


def _after(view: HangingView) -> tuple[Widget, ...]:
    """What happens or happened, and the button that holds the bar."""
    say, bench = view.look.words.say, view.bench
    said = say(YOU_SAID[bench.guess]) if bench.guess else ""
    happens = after(view.look, bench, partial(_told, view), going=say(GOING), said=said)
    return happens, Button(HOLD, say("Hold it level"), kind="main")


def _told(view: HangingView, bench: HangingBar) -> Widget:
    """What happened and why, of a bar that has come to rest."""
    words, outcome = view.look.words, bench.outcome or "level"
    compared = guess_against_outcome(words, bench.guess, outcome)
    reasons = why(words, bench, view.readings, numbers=view.numbers)
    happened = words.say(HAPPENED[outcome])
    return told(happened, compared=(compared,), reasons=reasons, settled=outcome == "level")


def _tray(view: HangingView, shelf: str, armed: str) -> tuple[Widget, ...]:
    say = view.look.words.say
    options = tuple((name, say(title)) for name, title in SHELVES.items())
    keys = shelf_keys(shelf)
    sizes = [size_px(weight, 1.0) for key in keys if (weight := tray_weight(key)) is not None]
    # All of one shelf to one scale: the largest fills its tile.
    largest = max(wide for wide, _ in sizes), max(high for _, high in sizes)
    items = tuple(_tray_item(view, key, largest, picked=key == armed) for key in keys)
    # The moment table needs the room of the heading.
    heading = ("", "") if view.outcome_shown else (say("Hang"), say("drag, or tap it and tap the bar"))
    choice = ChoiceRow(SHELF, say("What to hang"), options, shelf, show_name=False)
    return Tray(TRAY, *heading, items), choice


def _tray_item(view: HangingView, key: str, largest: tuple[float, float], *, picked: bool) -> TrayItem:
    weight = tray_weight(key)

    def draw(canvas: Canvas, rect: Rect) -> None:
        if weight is None:
            return
        most = LARGEST_TIMES * view.look.sizes.unit
        scale = min(rect.w * 0.86 / largest[0], rect.h * 0.94 / largest[1], most)
        wide, high = size_px(weight, scale)
        if kind_of(weight) is None:
            draw_brass(canvas, view.look, brass_rect((rect.center[0], rect.bottom - high - 1), wide), "")
        else:
            draw_body(canvas, view.look, weight, Rect(rect.center[0] - wide / 2, rect.bottom - high - 3, wide, high))

    return TrayItem(key, called(view, key), draw, picked=picked)


def called(view: HangingView, key: str) -> str:
    """Under brass its weight, under anything else its name."""
    weight = tray_weight(key)
    if weight is None:
        return ""
    if kind_of(weight) is None:
        return view.readings.weight_with_unit(weight.mass_kg)
    return view.look.words.say(weight.name)
