"""The panel and the strip of the weighed airframe: read back along and across, then up with its nose raised."""

from __future__ import annotations

from math import degrees

from lab.files import View
from lab.mechanics import ScaleReading
from lab.screens.benches.airframe.weigh_view import WeighView, read
from lab.screens.benches.airframe.weigh_words import NOT_YET, compared, going, happened, why
from lab.screens.benches.panel import HOLD, LET_GO, SHOW_END, PanelParts, view_choice
from lab.screens.benches.scales.strip import round_down
from lab.screens.benches.strip_fields import fitted, length_field, named, strip_panel
from lab.simulation.benches.airframe_hanging_edits import RAISES_RAD
from lab.simulation.benches.airframe_weighing import AirframeWeighing
from lab.ui.widgets.arrange import Column, Row, Steady
from lab.ui.widgets.button import Button
from lab.ui.widgets.label import Label
from lab.ui.widgets.number_field import NumberField
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.table import Table, TableColumn, TableRow
from lab.ui.widgets.widget import Widget

READING, ANGLE, RAISE, LOWER = "guess-reading", "raise-angle", "raise-nose", "lower-nose"
ALONG, ACROSS = "scale-along", "scale-across"


def weigh_parts(view: WeighView, shown: View) -> PanelParts:
    """All pieces.  shown: how many of the numbers are."""
    return PanelParts(
        sums=(_read_back(view), *_readings(view)),
        result=(),
        action=_before(view) if view.weighing.held else _after(view),
        tray=_raise(view),
        view=(view_choice(view.look, shown),),
    )


# --- what the scales say ------------------------------------------------------------------------------------


def _readings(view: WeighView) -> tuple[Widget, ...]:
    """Each scale's reading times its place: nothing before the windows can be read."""
    say, readings = view.look.words.say, view.readings
    weighed = view.weighing.weighings
    if not weighed or not view.told:
        return ()
    columns = (
        TableColumn(say("scale"), align="start"),
        TableColumn(say("reads {unit}", unit=readings.units.weight_word)),
        TableColumn(say("along {unit}", unit=readings.units.length_word)),
        TableColumn(say("across {unit}", unit=readings.units.length_word)),
    )
    rows = [_row(view, number, each) for number, each in enumerate(weighed[-1].readings)]
    total = sum(each.mass_kg for each in weighed[-1].readings)
    rows.append(TableRow("row-read-sum", (say("sum"), read(view, total), "", ""), kind="sum"))
    return (Table("readings", columns, tuple(rows), name=say("What the scales read")),)


def _row(view: WeighView, number: int, each: ScaleReading) -> TableRow:
    scale, readings = view.weighing.scales[number], view.readings
    cells = (
        view.look.words.content(scale.name),
        read(view, each.mass_kg),
        readings.length(each.at_m[0]),
        readings.length(each.at_m[1]),
    )
    return TableRow(f"row-scale-{scale.id}", cells, picked=view.picked_scale == scale)


def _read_back(view: WeighView) -> Widget:
    """The balance point by the readings, beside the sum's where numbers are shown."""
    words, readings = view.look.words, view.readings
    say, found = words.say, view.weighing.read_m
    if found is None:
        return Label("read-not-yet", say(NOT_YET))
    unknown = say("–")
    by_scales = [unknown if value is None else readings.length(value) for value in found]
    names = (say("CG along"), say("CG across"), say("CG up"))
    columns = [
        TableColumn(say("in {unit}", unit=readings.units.length_word), align="start"),
        TableColumn(say("the scales")),
    ]
    if view.told:
        columns.append(TableColumn(say("the sum")))
    rows = []
    for number, (name, shown, value) in enumerate(zip(names, by_scales, view.sum.balance_point_m, strict=True)):
        cells = (name, shown, readings.length(value)) if view.told else (name, shown)
        rows.append(TableRow(f"read-row-{number}", cells))
    return Table("read-back", tuple(columns), tuple(rows), name=say("Read back from the scales"))


# --- what acts ----------------------------------------------------------------------------------------------


def _before(view: WeighView) -> tuple[Widget, ...]:
    """Held: what the first scale will read, and *Let it down*."""
    say, weighing, units = view.look.words.say, view.weighing, view.readings.units
    total = units.from_kg(view.sum.mass_kg)
    power = round_down(total)
    step, places = 10.0**power, max(view.readings.fineness.weight, -power, 0)
    name = say("What will the {scale} read?", scale=view.look.words.content(weighing.scales[0].name))
    value = None if weighing.guessed_kg is None else units.from_kg(weighing.guessed_kg)
    start = round(total / 3.0 / step) * step
    field = NumberField(READING, name, value, units.weight_word, 0.0, round(2 * total, 6), step, places, start=start)
    return field, Button(LET_GO, say("Let it down"), kind="main")


def _after(view: WeighView) -> tuple[Widget, ...]:
    """Let down: what happens, then what happened and why. The button below stays where it is."""
    say, weighing = view.look.words.say, view.weighing
    hold = Button(HOLD, say("Lift it off"), kind="main")
    if not weighing.moving:
        return _told(view, weighing), hold
    text = going(view.look.words, weighing)
    waiting = Column((Label("happened", text, style="title"), Button(SHOW_END, say("Show the end"), kind="quiet")))
    # As high as what is told in the end, which nobody sees before.
    return Steady(waiting, (_told(view, weighing.at_end()),)), hold


def _told(view: WeighView, weighing: AirframeWeighing) -> Widget:
    words = view.look.words
    children: list[Widget] = [Label("happened", happened(words, view, weighing), style="title")]
    texts = (compared(words, view, weighing), why(words, view, weighing))
    children += [Label(f"why-{number}", text) for number, text in enumerate(texts) if text]
    fill = "held_fill" if weighing.tipped else "settled_fill"
    return Panel("told", children=(Column(tuple(children), gap=4),), fill=fill, pad=14, round=True)


def _raise(view: WeighView) -> tuple[Widget, ...]:
    """How far the nose is to be raised, and the button that does it; then the one that lowers it again."""
    say, weighing = view.look.words.say, view.weighing
    if weighing.held or weighing.tipped:
        return ()
    if weighing.raise_rad:
        return (Button(LOWER, say("Lower the nose"), enabled=weighing.steady),)
    low, high = (round(degrees(each)) for each in RAISES_RAD)
    degree = NumberField(
        ANGLE, say("Raise it by"), round(degrees(view.raise_rad)), say("°"), low, high, 1.0, 0, show_name=False
    )
    return (Row((degree, Button(RAISE, say("Raise nose"), enabled=weighing.steady)), weights=(0.0, 1.0)),)


def weigh_strip(view: WeighView) -> Panel | None:
    """Where the picked scale stands, to be typed; None where none is picked."""
    scale = view.picked_scale
    if scale is None:
        return None
    words, readings = view.look.words, view.readings
    name = words.content(scale.name)
    along, across, _ = view.spans_m
    fields = (
        length_field(readings, words.say("{name} along", name=name), scale.at_m[0], along, key=ALONG),
        length_field(readings, words.say("{name} across", name=name), scale.at_m[1], across, key=ACROSS),
    )
    return strip_panel(fitted(view.look, (named(name), *fields)))
