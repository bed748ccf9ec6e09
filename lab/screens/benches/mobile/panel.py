"""The panel beside the mobile: the sum of sums, guess, the one action, what happened, the tray, the view."""

from __future__ import annotations

from functools import partial

from lab.scenes.mobile.bodies import draw_load
from lab.scenes.mobile.marks import levels_of
from lab.scenes.mobile.stage import size_of
from lab.scenes.mobile.view import BAR, MobileView
from lab.screens.benches.doubts import doubt_lines, doubt_switch, place_with_doubt
from lab.screens.benches.mobile.keys import LEVELS, SHELF, SHELVES, TRAY, TRAY_THINGS, TrayThing, lying_on
from lab.screens.benches.mobile.words import GOING, YOU_SAID, guess_against_outcome, headline, side_moments_kg_m, why
from lab.screens.benches.panel import GUESS, HOLD, LET_GO, PanelParts, view_choice
from lab.screens.benches.sides import SIDE_NAMES, SIDES
from lab.screens.benches.told import after, told
from lab.simulation.benches import Mobile
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.widgets.arrange import Column, Row
from lab.ui.widgets.button import Button
from lab.ui.widgets.choice import ChoiceRow
from lab.ui.widgets.label import Label
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.table import Table, TableColumn, TableRow
from lab.ui.widgets.tray import Tray, TrayItem
from lab.ui.widgets.widget import Widget


def panel_parts(view: MobileView, *, shelf: str, armed: str) -> PanelParts:
    """All pieces.  shelf: what the tray shows.  armed: key of the tray item that was taken up."""
    return PanelParts(
        sums=_sums(view) if view.told else (),
        result=(_whole(view),) if view.told else (),
        action=_action(view) if view.bench.held else _after(view),
        # While it swings or hangs askew nothing is hung: the room is for what happened.
        tray=_tray(view, shelf, armed) if view.bench.held else (),
        view=(view_choice(view.look, view.bench.view, doubt=doubt_switch(view.look, view.bench.parts)),),
    )


def _sums(view: MobileView) -> tuple[Widget, ...]:
    """A row a bar: the moments about its ring, and what it hands up to the bar above."""
    words, readings, bench = view.look.words, view.readings, view.bench
    say, units = words.say, view.readings.units
    columns = (
        TableColumn(say("bar"), align="start"),
        TableColumn(say("left {unit}", unit=units.moment_word)),
        TableColumn(say("right {unit}", unit=units.moment_word)),
        TableColumn(say("hands up {unit}", unit=units.weight_word)),
    )
    levels = {level.name: level for level in levels_of(bench).levels}
    rows = []
    for beam in bench.beams:
        level, key = levels[beam.name], f"{BAR}{beam.id}"
        left, right = (readings.moment(each) for each in side_moments_kg_m(level))
        cells = (words.content(beam.name), left, right, readings.weight(level.carried_kg))
        rows.append(TableRow(f"row-{key}", cells, picked=view.picked == key))
    title = Panel("moments-title", say("Sum of sums"), say("each bar about its ring"), fill="", pad=0)
    return title, Table(LEVELS, columns, tuple(rows), name=say("Sum of sums"), pickable=True)


def _whole(view: MobileView) -> Widget:
    """Where the whole mobile balances, from the rule's zero and from the reference line.

    As it is held: once let go, what hangs from a bar turns until it acts at the hook alone, and this point moves.
    """
    words, readings, total, parts = view.look.words, view.readings, view.bench.sum, view.bench.parts
    say, at_m, line_m = words.say, total.balance_point_m[0], total.reference_m[0]
    place = say("balances at {place}", place=place_with_doubt(view.look, readings, parts, at_m))
    weight = readings.weight_with_unit(total.mass_kg)
    children: list[Widget] = [
        Row(
            (
                Label("quotient", say("whole: {weight}", weight=weight), middle=True),
                Label("balances", place, style="strong", align="end", middle=True),
            ),
            weights=(0.0, 1.0),
        )
    ]
    text = say("as held level; its cord is at {place}", place=readings.length_with_unit(view.bench.top_at_m))
    if line_m != 0.0:
        arm, line = (readings.length_with_unit(each) for each in (at_m - line_m, line_m))
        text = say("{arm} from the reference line at {line}", arm=arm, line=line)
    children.append(Label("quotient-from", text, style="small", color="soft"))
    children += doubt_lines(view.look, parts)
    return Panel("balance", children=(Column(tuple(children), gap=0),), fill="paper", pad=8, round=True)


def _action(view: MobileView) -> tuple[Widget, ...]:
    """Held: the guess about the topmost bar, and *Let go*."""
    look, say = view.look, view.look.words.say
    order = tuple(reversed(SIDES)) if look.sizes.mirrored else SIDES
    options = tuple((side, say(SIDE_NAMES[side])) for side in order)
    question = say("Which end of the top bar will drop?")
    return ChoiceRow(GUESS, question, options, view.bench.guess), Button(LET_GO, say("Let go"), kind="main")


def _after(view: MobileView) -> tuple[Widget, ...]:
    """What happens or happened, and the button that holds all bars level."""
    say, bench = view.look.words.say, view.bench
    said = say(YOU_SAID[bench.guess]) if bench.guess else ""
    happens = after(view.look, bench, partial(_told, view), going=say(GOING), said=said)
    return happens, Button(HOLD, say("Hold it level"), kind="main")


def _told(view: MobileView, bench: Mobile) -> Widget:
    """What happened and why, of a mobile that has come to rest."""
    words, outcome = view.look.words, bench.outcome or "level"
    compared = guess_against_outcome(words, bench.guess, outcome)
    reasons = why(words, bench, view.readings, numbers=view.numbers)
    settled = not levels_of(bench).askew
    return told(headline(words, bench), compared=(compared,), reasons=reasons, settled=settled)


def _tray(view: MobileView, shelf: str, armed: str) -> tuple[Widget, ...]:
    say = view.look.words.say
    items = tuple(_tray_item(view, thing, shelf, picked=thing.key == armed) for thing in lying_on(shelf))
    options = tuple((name, say(title)) for name, title in SHELVES.items())
    tray = Tray(TRAY, say("Hang"), say("drag, or tap it and tap a bar"), items)
    return tray, ChoiceRow(SHELF, say("What to hang"), options, shelf, show_name=False)


def _tray_item(view: MobileView, thing: TrayThing, shelf: str, *, picked: bool) -> TrayItem:
    say, readings = view.look.words.say, view.readings
    text = readings.weight_with_unit(thing.mass_kg)
    if thing.length_m is not None:
        length = say("{number} {unit}", number=readings.short_length(thing.length_m), unit=readings.units.length_word)
        text = say("bar {length}", length=length)
    elif thing.shown:
        text = say("{thing} {weight}", thing=say(thing.shown), weight=text)
    return TrayItem(thing.key, text, lambda canvas, rect: _draw_thing(canvas, view, thing, shelf, rect), picked=picked)


def _draw_thing(canvas: Canvas, view: MobileView, thing: TrayThing, shelf: str, rect: Rect) -> None:
    """Things to one scale among their like: the longest bar, or the widest body, fills the tile."""
    look, theme = view.look, view.look.theme
    if thing.length_m is not None:
        longest = max(each.length_m or 0.0 for each in TRAY_THINGS)
        wide, high = rect.w * 0.92 * thing.length_m / longest, look.sizes.px(11)
        x, y = rect.center
        plank = Rect(x - wide / 2, y - high / 2, wide, high)
        canvas.box(plank, fill=theme.wood, outline=theme.wood_edge, width=look.sizes.stroke, radius=look.sizes.px(3))
        return
    sizes = {each.key: size_of(look, each.mass_kg, each.look, 1.0) for each in lying_on(shelf) if each.length_m is None}
    widest, highest = (max(sides) for sides in zip(*sizes.values(), strict=True))
    scale = min(rect.w / widest, rect.h / highest) * 0.9
    wide, high = (side * scale for side in sizes[thing.key])
    box = Rect(rect.center[0] - wide / 2, rect.bottom - high - 1, wide, high)
    draw_load(canvas, look, (thing.look, thing.mass_kg), box, "")
