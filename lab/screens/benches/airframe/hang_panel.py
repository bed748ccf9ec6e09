"""The panel and the strip of the hung airframe: guess, let go, draw the line; the lines' crossing beside the sum."""

from __future__ import annotations

from lab.files import View
from lab.mechanics import hanging_attitude
from lab.screens.benches.airframe.hang_view import HOOK, HangView
from lab.screens.benches.airframe.hang_words import (
    GOING,
    NOSE_NAMES,
    NOSES,
    WING_NAMES,
    angle_said,
    compared,
    happened,
    lines_said,
    why,
)
from lab.screens.benches.panel import HOLD, LET_GO, PanelParts, view_choice
from lab.screens.benches.sides import SIDES
from lab.screens.benches.strip_fields import fitted, length_field, named, strip_panel
from lab.screens.benches.told import waiting
from lab.simulation.benches.airframe_hanging import AirframeHanging
from lab.ui.widgets.arrange import Column, Row
from lab.ui.widgets.button import Button
from lab.ui.widgets.choice import ChoiceRow
from lab.ui.widgets.label import Label
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.table import Table, TableColumn, TableRow
from lab.ui.widgets.widget import Widget

NOSE, WING = "guess-nose", "guess-wing"
DRAW, RUB_OUT = "draw-line", "rub-out"
ALONG, ACROSS, UP = "hook-along", "hook-across", "hook-up"


def hang_parts(view: HangView, shown: View) -> PanelParts:
    """All pieces.  shown: how many of the numbers are."""
    return PanelParts(
        sums=(_table(view),) if view.told else (),
        result=(Label("lines-said", lines_said(view.look.words, view.readings, view.hanging)),),
        action=_before(view) if view.hanging.held else _after(view),
        tray=_lines(view),
        view=(view_choice(view.look, shown),),
    )


def _before(view: HangView) -> tuple[Widget, ...]:
    """Held: what is guessed of its nose and of its wings, and *Let go*."""
    look, hanging = view.look, view.hanging
    say = look.words.say
    # In the picture the nose is at the left, and is so in a language that is read from the right.
    noses = tuple(reversed(NOSES)) if look.sizes.mirrored else NOSES
    sides = tuple(reversed(SIDES)) if look.sizes.mirrored else SIDES
    return (
        ChoiceRow(NOSE, say("How will it hang?"), tuple((n, say(NOSE_NAMES[n])) for n in noses), hanging.guess_nose),
        ChoiceRow(WING, say("And its wings?"), tuple((s, say(WING_NAMES[s])) for s in sides), hanging.guess_wing),
        Button(LET_GO, say("Let go"), kind="main"),
    )


def _after(view: HangView) -> tuple[Widget, ...]:
    """Let go: what happens, then what happened and why. The button below stays where it is."""
    say, hanging = view.look.words.say, view.hanging
    hold = Button(HOLD, say("Hold it level"), kind="main")
    if not hanging.moving:
        return _told(view, hanging), hold
    return waiting(view.look, say(GOING), "", _told(view, hanging.at_end())), hold


def _told(view: HangView, hanging: AirframeHanging) -> Widget:
    words = view.look.words
    texts = (compared(words, hanging), why(words, hanging))
    children: list[Widget] = [Label("happened", happened(words, hanging), style="title")]
    children += [Label(f"why-{number}", text) for number, text in enumerate(texts) if text]
    return Panel("told", children=(Column(tuple(children), gap=4),), fill="settled_fill", pad=14, round=True)


def _lines(view: HangView) -> tuple[Widget, ...]:
    """Draw the line while it hangs still; rub out what is drawn."""
    say, hanging = view.look.words.say, view.hanging
    line = hanging.line
    draw = Button(DRAW, say("Draw the line"), enabled=line is not None and line not in hanging.lines)
    rub = Button(RUB_OUT, say("Rub out"), kind="quiet", enabled=bool(hanging.lines))
    return (Row((draw, rub), weights=(1.0, 0.0)),)


def _table(view: HangView) -> Widget:
    """What hanging shows beside what the sum says."""
    words, readings, hanging = view.look.words, view.readings, view.hanging
    say = words.say
    rest = hanging_attitude(view.parts, hanging.hook_m)
    swing = hanging.swing if hanging.at_rest and not hanging.hangs_any_way else None
    unknown = say("–")
    crossing = hanging.crossing
    summed = view.sum.balance_point_m
    crossed = [unknown] * 3 if crossing is None else [readings.length(each) for each in crossing.at_m]
    names = (say("CG along"), say("CG across"), say("CG up"))
    rows = [
        (
            say("pitch"),
            unknown if swing is None else angle_said(words, swing.pitch_rad),
            unknown if rest is None else angle_said(words, rest.pitch_rad),
        ),
        (
            say("roll"),
            unknown if swing is None else angle_said(words, swing.roll_rad),
            unknown if rest is None else angle_said(words, rest.roll_rad),
        ),
        *((name, found, readings.length(value)) for name, found, value in zip(names, crossed, summed, strict=True)),
    ]
    columns = (
        TableColumn(say("degrees, {unit}", unit=readings.units.length_word), align="start"),
        TableColumn(say("it hangs")),
        TableColumn(say("the sum")),
    )
    table = tuple(TableRow(f"hang-row-{number}", row) for number, row in enumerate(rows))
    return Table("hang-table", columns, table, name=say("What hanging shows, and what the sum says"))


def hang_strip(view: HangView) -> Panel | None:
    """Where the hook is, to be typed; None where it is not picked."""
    if not view.picked.startswith(HOOK):
        return None
    say, readings, hook_m = view.look.words.say, view.readings, view.hanging.hook_m
    along, across, up = view.spans_m
    up = (up[0], max(up[1], hook_m[2]))
    fields = (
        length_field(readings, say("hook along"), hook_m[0], along, key=ALONG),
        length_field(readings, say("hook across"), hook_m[1], across, key=ACROSS),
        length_field(readings, say("hook up"), hook_m[2], up, key=UP),
    )
    return strip_panel(fitted(view.look, (named(say("hook")), *fields)))
