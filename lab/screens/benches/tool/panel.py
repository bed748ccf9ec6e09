"""The panel beside the tool: moment table, guess, the one action, what happened, the tray with its shelves."""

from __future__ import annotations

from functools import partial

from lab.mechanics import extent_m
from lab.scenes.tool.shelf import draw_alone, drawn_size_m
from lab.scenes.tool.view import ToolView, part_key
from lab.screens.benches.doubts import doubt_switch
from lab.screens.benches.hanging_bar.words import YOU_SAID, guess_against_outcome
from lab.screens.benches.panel import HOLD, PanelParts, action, view_choice
from lab.screens.benches.sums import balance_panel, moment_table
from lab.screens.benches.told import after, told
from lab.screens.benches.tool.keys import SHELF, SHELVES, TRAY_PREFIX, tray_keys, tray_part
from lab.screens.benches.tool.words import GOING, HAPPENED, why
from lab.simulation.benches.tool import BuiltTool
from lab.simulation.benches.tool_parts import KINDS
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.widgets.button import Button
from lab.ui.widgets.choice import ChoiceRow
from lab.ui.widgets.tray import Tray, TrayItem
from lab.ui.widgets.widget import Widget

TRAY = "tray"


def panel_parts(view: ToolView, *, shelf: str, armed: str) -> PanelParts:
    """All pieces.  shelf: which parts the tray shows.  armed: key of the tray item that was taken up."""
    told, held = view.outcome_shown, view.bench.held
    return PanelParts(
        sums=_sums(view) if told else (),
        result=(_quotient(view),) if told else (),
        action=action(view.look, view.bench.guess) if held else _after(view),
        # While it falls or lies on the floor nothing is built: the room is for what happened.
        tray=_tray(view, shelf, armed) if held else (),
        view=(view_choice(view.look, view.bench.view, doubt=doubt_switch(view.look, view.bench.parts)),),
    )


def _sums(view: ToolView) -> tuple[Widget, ...]:
    """The moment table."""
    keys = [part_key(id_) for id_ in view.bench.ids]
    return moment_table(view.look, view.readings, view.bench.sum, keys, picked=view.picked)


def _quotient(view: ToolView) -> Widget:
    """Sum of moments ÷ sum of weights, and the balance point that it gives, from the rule's zero."""
    return balance_panel(view.look, view.readings, view.bench.sum, view.bench.parts)


def _after(view: ToolView) -> tuple[Widget, ...]:
    """What happens or happened, and the button that lays the tool on the finger again."""
    say, bench = view.look.words.say, view.bench
    said = say(YOU_SAID[bench.guess]) if bench.guess else ""
    happens = after(view.look, bench, partial(_told, view), going=say(GOING), said=said)
    return happens, Button(HOLD, say("Lay it on the finger"), kind="main")


def _told(view: ToolView, bench: BuiltTool) -> Widget:
    """What happened and why, of a tool that has come to rest."""
    words, outcome = view.look.words, bench.outcome or "level"
    compared = guess_against_outcome(words, bench.guess, outcome)
    reasons = why(words, bench, view.readings, numbers=view.numbers)
    happened = words.say(HAPPENED[outcome])
    return told(happened, compared=(compared,), reasons=reasons, settled=outcome == "level")


def _tray(view: ToolView, shelf: str, armed: str) -> tuple[Widget, ...]:
    say = view.look.words.say
    options = tuple((name, say(title)) for name, title in SHELVES.items())
    keys = tray_keys(shelf)
    # All of one shelf to one scale: the longest fills its tile.
    lying = [found for key in keys if (found := tray_part(key)) is not None]
    size_m = tuple(max(drawn_size_m(part, look)[way] for part, look in lying) for way in (0, 1))
    items = tuple(_item(view, key, (size_m[0], size_m[1]), picked=key == armed) for key in keys)
    # The moment table needs the room of the heading.
    heading = ("", "") if view.outcome_shown else (say("Put on"), say("drag, or tap it and tap the tool"))
    return (
        Tray(TRAY, *heading, items),
        ChoiceRow(SHELF, say("What to put on"), options, shelf, show_name=False),
    )


def _item(view: ToolView, key: str, size_m: tuple[float, float], *, picked: bool) -> TrayItem:
    part, look = tray_part(key) or (None, "")

    def draw(canvas: Canvas, rect: Rect) -> None:
        if part is not None:
            scale = min(0.92 * rect.w / size_m[0], 0.92 * rect.h / size_m[1])
            draw_alone(canvas, view.look, part, look, rect.center, px_per_m=scale)

    return TrayItem(key, _called(view, key), draw, picked=picked)


def _called(view: ToolView, key: str) -> str:
    """Under a pole its length, under brass its weight, under anything else its name."""
    kind = KINDS.get(key.removeprefix(TRAY_PREFIX))
    lying = tray_part(key)
    if lying is None:
        return ""
    if kind is None:
        return view.readings.weight_with_unit(lying[0].mass_kg)
    if kind.look == "pole":
        return view.readings.length_with_unit(extent_m(kind.shape)[0])
    return view.look.words.say(kind.title)
