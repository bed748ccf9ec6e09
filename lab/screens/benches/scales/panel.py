"""The panel beside the scales bench: moment table, what the readings give back, guess, action, tray, view."""

from __future__ import annotations

from functools import partial

from lab.scenes.rows import HIGH, NECK
from lab.scenes.scales.view import ScalesView, decimals
from lab.scenes.weights import brass_rect, draw_brass
from lab.screens.benches.doubts import doubt_switch, place_with_doubt
from lab.screens.benches.loose_tray import loose_items
from lab.screens.benches.panel import GUESS, HOLD, LET_GO, PanelParts, view_choice
from lab.screens.benches.scales.keys import COUNT, READING, SHELF, SHELVES, TRAY, TRAY_PREFIX, tray_key, tray_kg
from lab.screens.benches.scales.read_back import read_back
from lab.screens.benches.scales.strip import round_down
from lab.screens.benches.scales.words import GOING, SIDE_NAMES, compared, happened, why
from lab.screens.benches.sides import SIDES
from lab.screens.benches.sums import balance_panel, moment_table
from lab.screens.benches.told import after, told
from lab.simulation.benches.scales import ScalesBench
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.widgets.button import Button
from lab.ui.widgets.choice import ChoiceRow
from lab.ui.widgets.number_field import NumberField
from lab.ui.widgets.tray import Tray, TrayItem
from lab.ui.widgets.widget import Widget


def panel_parts(view: ScalesView, *, shelf: str, armed: str) -> PanelParts:
    """All pieces.  shelf: what the tray shows.  armed: key of the tray item that was taken up."""
    bench = view.bench
    doubt = doubt_switch(view.look, bench.parts)
    return PanelParts(
        sums=(*read_back(view), *_sums(view)) if view.told else (),
        result=(_quotient(view),) if view.told else (),
        action=_before(view) if bench.held else _after(view),
        tray=_tray(view, shelf, armed) if bench.held else (),
        view=(view_choice(view.look, bench.view, doubt=doubt),),
    )


def _sums(view: ScalesView) -> tuple[Widget, ...]:
    """The moment table."""
    bench = view.bench
    keys = [*(["bar"] if bench.bar is not None else []), *(f"load-{load.id}" for load in bench.loads)]
    return moment_table(view.look, view.readings, bench.sum, keys, picked=view.picked)


def _quotient(view: ScalesView) -> Widget:
    """Sum of moments ÷ sum of weights, and the balance point that it gives, from the rule's zero."""
    words, readings, bench = view.look.words, view.readings, view.bench
    total, place = bench.sum, ""
    if view.three:
        along = place_with_doubt(view.look, readings, bench.parts, total.balance_point_m[0])
        across = readings.length_with_unit(total.balance_point_m[1])
        place = words.say("{along}, {across} across", along=along, across=across)
    return balance_panel(view.look, readings, total, bench.parts, place=place)


def _before(view: ScalesView) -> tuple[Widget, ...]:
    """Held: what is guessed, on how many scales it stands, and *Let go*."""
    look, bench = view.look, view.bench
    say, found = look.words.say, list[Widget]()
    if not view.three:
        order = tuple(reversed(SIDES)) if look.sizes.mirrored else SIDES
        options = tuple((side, say(SIDE_NAMES[side])) for side in order)
        found.append(ChoiceRow(GUESS, say("Which scale will read more?"), options, bench.guess))
    found.append(_reading_field(view))
    low, high = bench.reach_m[1]
    if high - low > 0.0:
        counts = (("2", say("two scales")), ("3", say("three scales")))
        found.append(ChoiceRow(COUNT, say("It stands on"), counts, str(len(bench.scales)), show_name=False))
    return (*found, Button(LET_GO, say("Let go"), kind="main"))


def _reading_field(view: ScalesView) -> Widget:
    """What the first scale will read, between − and +."""
    bench, units = view.bench, view.readings.units
    total = units.from_kg(bench.sum.mass_kg)
    power = round_down(total)
    step, places = 10.0**power, max(decimals(view) - 1, -power, 0)
    name = view.look.words.say("What will the {scale} read?", scale=view.look.words.content(bench.scales[0].name))
    value = None if bench.guessed_kg is None else units.from_kg(bench.guessed_kg)
    start = round(total / len(bench.scales) / step) * step
    return NumberField(READING, name, value, units.weight_word, 0.0, round(2 * total, 6), step, places, start=start)


def _after(view: ScalesView) -> tuple[Widget, ...]:
    """What happens or happened, and the button that sets it back."""
    say = view.look.words.say
    happens = after(view.look, view.bench, partial(_told, view), going=say(GOING))
    return happens, Button(HOLD, say("Set it back"), kind="main")


def _told(view: ScalesView, bench: ScalesBench) -> Widget:
    """What happened and why, of a body that has come to rest."""
    words = view.look.words
    reasons, beside = why(words, view, bench), compared(words, view, bench)
    return told(happened(words, bench), compared=beside, reasons=reasons, settled=bench.tipping is None)


def _tray(view: ScalesView, shelf: str, armed: str) -> tuple[Widget, ...]:
    say, masses = view.look.words.say, tray_kg(view.bench.sum.mass_kg)
    if shelf == "brass":
        items = tuple(_tray_item(view, mass_kg, masses[-1], picked=tray_key(mass_kg) == armed) for mass_kg in masses)
    else:
        items = tuple(loose_items(view.look, TRAY_PREFIX, armed))
    options = tuple((name, say(title)) for name, title in SHELVES.items())
    tray = Tray(TRAY, say("Put on"), say("drag, or tap it and tap the place"), items)
    return tray, ChoiceRow(SHELF, say("What to put on"), options, shelf, show_name=False)


def _tray_item(view: ScalesView, mass_kg: float, most_kg: float, *, picked: bool) -> TrayItem:
    def draw(canvas: Canvas, rect: Rect) -> None:
        # The heaviest fills the tile; the others keep their true size beside it.
        full = min(rect.w * 0.86, rect.h / (NECK + HIGH) * 0.94)
        side = full * float((mass_kg / most_kg) ** (1 / 3))
        top = (rect.center[0], rect.bottom - side * (NECK + HIGH) - 1)
        draw_brass(canvas, view.look, brass_rect(top, side), "")

    return TrayItem(tray_key(mass_kg), view.readings.weight_with_unit(mass_kg), draw, picked=picked)
