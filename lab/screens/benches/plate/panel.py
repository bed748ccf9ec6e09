"""The panel beside the hung plate: the sum over triangles, guess, action, what happened, the lines, the tray."""

from __future__ import annotations

from functools import partial

from lab.scenes.plate_scene import draw_disc_weight
from lab.scenes.plate_view import PlateView, settled_sum
from lab.screens.benches.doubts import doubt_lines, doubt_switch, place_with_doubt
from lab.screens.benches.hanging_bar.words import YOU_SAID, guess_against_outcome
from lab.screens.benches.panel import GUESS, HOLD, LET_GO, PanelParts, view_choice
from lab.screens.benches.plate.keys import (
    AXIS,
    DRAW,
    MOMENTS,
    RUB_OUT,
    SHEET_OF,
    TRAY,
    TRAY_HOLE,
    TRAY_KG,
    tray_key,
)
from lab.screens.benches.plate.words import (
    ASK,
    GOING,
    HAPPENED,
    piece_name,
    why,
)
from lab.screens.benches.sides import SIDE_NAMES, SIDES
from lab.screens.benches.told import after, told
from lab.simulation.benches import HungPlate
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

MOST_TRAY_KG = TRAY_KG[-1]


def panel_parts(view: PlateView, *, axis: str, armed: str) -> PanelParts:
    """All pieces.  axis: whose moments the table shows.  armed: key of the tray item that was taken up."""
    tables, held = view.outcome_shown, view.bench.held
    return PanelParts(
        sums=_sums(view, axis) if tables else (),
        result=(_quotient(view, axis),) if tables else (),
        action=_before(view) if held else _after(view),
        tray=_tray(view, armed) if held else (),
        view=(view_choice(view.look, view.bench.view, doubt=doubt_switch(view.look, view.bench.parts)),),
    )


def _before(view: PlateView) -> tuple[Widget, ...]:
    """Held: the guess and *Let go*."""
    say = view.look.words.say
    # The picture is never turned round, so "left" stays at the left in a language that is read from the right.
    order = tuple(reversed(SIDES)) if view.look.sizes.mirrored else SIDES
    options = tuple((side, say(SIDE_NAMES[side])) for side in order)
    guess = ChoiceRow(GUESS, say(ASK), options, view.bench.guess)
    return *_crossing(view), guess, Button(LET_GO, say("Let go"), kind="main")


def _after(view: PlateView) -> tuple[Widget, ...]:
    """What happens or happened, where the lines cross, and the buttons for the plumb line and to hold the plate."""
    say, bench = view.look.words.say, view.bench
    said = say(YOU_SAID[bench.guess]) if bench.guess else ""
    happens = after(view.look, bench, partial(_told, view), going=say(GOING), said=said)
    draw = Button(DRAW, say("Draw the plumb line"), kind="main", enabled=bench.outcome is not None)
    return happens, *_crossing(view), draw, Button(HOLD, say("Hold it again"), kind="plain")


def _told(view: PlateView, bench: HungPlate) -> Widget:
    """What happened and why, of a plate that hangs still."""
    words, outcome = view.look.words, bench.outcome or "level"
    compared = guess_against_outcome(words, bench.guess, outcome)
    reasons = why(words, bench, view.readings, numbers=view.numbers)
    happened = words.say(HAPPENED[outcome])
    return told(happened, compared=(compared,), reasons=reasons, settled=outcome == "level")


def _sums(view: PlateView, axis: str) -> tuple[Widget, ...]:
    """The moment table: a row for each triangle, hole and weight."""
    words, readings, bench = view.look.words, view.readings, view.bench
    say, units, total = words.say, view.readings.units, settled_sum(view.bench)
    index = 2 if axis == "up" else 0
    columns = (
        TableColumn(say("piece"), align="start"),
        TableColumn(say("weight {unit}", unit=units.weight_word)),
        TableColumn(say("arm {unit}", unit=units.length_word)),
        TableColumn(say("moment {unit}", unit=units.moment_word)),
    )
    rows = [
        TableRow(
            f"row-{piece.key}",
            (
                piece_name(words, bench, piece.kind, piece.number),
                _weight(view, row.mass_kg),
                readings.length(row.arm_m[index]),
                readings.moment(row.moment_kg_m[index]),
            ),
            picked=piece.key in (view.row, view.picked),
        )
        for piece, row in zip(bench.pieces, total.rows, strict=True)
    ]
    sums = (say("sum"), _weight(view, total.mass_kg), "", readings.moment(total.moment_kg_m[index]))
    rows.append(TableRow("row-sum", sums, kind="sum"))
    options = (("along", say("along")), ("up", say("up")))
    return (
        ChoiceRow(AXIS, say("Moments"), options, axis),
        Table(MOMENTS, columns, tuple(rows), name=say("Moment table"), pickable=True),
    )


def _weight(view: PlateView, mass_kg: float) -> str:
    """With one more decimal than brass needs: what an outline weighs is seldom round."""
    return view.readings.words.number(view.readings.units.from_kg(mass_kg), view.readings.fineness.weight + 1)


def _quotient(view: PlateView, axis: str) -> Widget:
    """Sum of moments ÷ sum of weights, and the place that it gives; with its doubt where parts state any."""
    words, readings, total = view.look.words, view.readings, settled_sum(view.bench)
    index = 2 if axis == "up" else 0
    sum_ = words.say(
        "{moment} ÷ {weight}",
        moment=readings.moment(total.moment_kg_m[index]),
        weight=_weight(view, total.mass_kg),
    )
    parts = view.bench.parts
    place = place_with_doubt(view.look, readings, parts, total.balance_point_m[index], axis=index)
    said = words.say("balances at {place} up", place=place)
    if index == 0:
        said = words.say("balances at {place} along", place=place)
    children: list[Widget] = [
        Label("quotient", sum_, middle=True),
        Label("balances", said, style="strong", middle=True),
    ]
    if index == 0 and total.reference_m[0] != 0.0:
        arm = readings.length(total.balance_point_m[0] - total.reference_m[0])
        line = readings.length_with_unit(total.reference_m[0])
        text = words.say("{arm} from the reference line at {line}", arm=arm, line=line)
        children.append(Label("quotient-from", text, style="small", color="soft"))
    children += doubt_lines(view.look, parts)
    return Panel("balance", children=(Column(tuple(children), gap=0),), fill="paper", pad=8, round=True)


def _crossing(view: PlateView) -> tuple[Widget, ...]:
    """The lines drawn so far: what is still wanted, or where they cross, above where the sum says."""
    say, bench = view.look.words.say, view.bench
    if not bench.lines:
        return ()
    crossing = bench.crossing_m
    if crossing is None:
        found: Widget = Label(
            "crossing", say("One plumb line is drawn. Hang it by a pin beside the line, and draw again.")
        )
    elif not view.numbers:
        found = Label("crossing", say("The lines cross at the balance point."))
    else:
        found = _both_places(view, crossing)
    rub = Button(RUB_OUT, say("Rub out"), kind="quiet")
    row = Row((found, rub), weights=(1.0, 0.0), gap=8, align="middle")
    return (Panel("lines", children=(row,), fill="paper", pad=8, round=True),)


def _both_places(view: PlateView, crossing_m: tuple[float, float]) -> Table:
    """Where the lines cross and what the sum says, figure below figure, so that they are compared at a glance."""
    say, readings = view.look.words.say, view.readings
    along_m, _, up_m = settled_sum(view.bench).balance_point_m
    unit = readings.units.length_word
    columns = (
        TableColumn(say("balance point"), align="start"),
        TableColumn(say("along {unit}", unit=unit)),
        TableColumn(say("up {unit}", unit=unit)),
    )
    places = (("lines", say("lines cross"), crossing_m), ("pieces", say("sum of pieces"), (along_m, up_m)))
    rows = tuple(
        TableRow(f"crossing-{key}", (name, readings.length(place_m[0]), readings.length(place_m[1])))
        for key, name, place_m in places
    )
    return Table("crossing", columns, rows, name=say("Where it balances, found in two ways"))


def _tray(view: PlateView, armed: str) -> tuple[Widget, ...]:
    say = view.look.words.say
    items = [_clip_item(view, mass_kg, picked=tray_key(mass_kg) == armed) for mass_kg in TRAY_KG]
    items.append(TrayItem(TRAY_HOLE, say("hole"), lambda canvas, rect: _draw_hole(canvas, view, rect),
                          picked=armed == TRAY_HOLE))  # fmt: skip
    tray = Tray(TRAY, say("Put on or cut"), say("drag, or tap it and tap the plate"), tuple(items))
    other = Button(SHEET_OF, say("Outline and sheet"), kind="quiet", selected=view.picked == SHEET_OF)
    return tray, other


def _clip_item(view: PlateView, mass_kg: float, *, picked: bool) -> TrayItem:
    def draw(canvas: Canvas, rect: Rect) -> None:
        # The heaviest fills the tile; the others keep their true size beside it.
        full = min(rect.w, rect.h) * 0.46
        radius = full * float((mass_kg / MOST_TRAY_KG) ** (1 / 3))
        draw_disc_weight(canvas, view.look, rect.center, radius, "")

    return TrayItem(tray_key(mass_kg), view.readings.weight_with_unit(mass_kg), draw, picked=picked)


def _draw_hole(canvas: Canvas, view: PlateView, rect: Rect) -> None:
    theme, sizes = view.look.theme, view.look.sizes
    side = min(rect.w, rect.h) * 0.92
    tile = Rect(rect.center[0] - side / 2, rect.center[1] - side / 2, side, side)
    canvas.box(tile, fill=theme.wood, outline=theme.wood_edge, width=sizes.px(2), radius=sizes.px(3))
    canvas.circle(rect.center, side * 0.3, fill=theme.panel, outline=theme.wood_edge, width=sizes.px(2))
