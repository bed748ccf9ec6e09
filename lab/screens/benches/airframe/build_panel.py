"""The panel beside the airframe that is built: moments by axis, what follows, the guess, the tray."""

from __future__ import annotations

from lab.mechanics import Part
from lab.outline.words import msg
from lab.scenes.readings import Readings
from lab.scenes.views.paint import draw_thing
from lab.scenes.views.things import part_thing
from lab.scenes.weights import brass_rect, draw_brass
from lab.screens.benches.airframe.build_view import AXIS_INDEX, PART, TANK, BuildView
from lab.screens.benches.airframe.build_words import END_NAMES, HAPPENED, compared, follows, margin_said, symmetry_said
from lab.screens.benches.doubts import doubt_lines, doubt_switch, place_with_doubt
from lab.screens.benches.panel import GUESS, HOLD, LET_GO, PanelParts, view_choice
from lab.screens.benches.sides import SIDES
from lab.screens.benches.sums import moment_table
from lab.screens.benches.told import told
from lab.simulation.benches.airframe_balance import drops, neutral_of
from lab.simulation.benches.airframe_kinds import KINDS, AirframeKind
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.look import Look
from lab.ui.widgets.arrange import Column, Row
from lab.ui.widgets.button import Button
from lab.ui.widgets.choice import ChoiceRow
from lab.ui.widgets.label import Label
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.tray import Tray, TrayItem
from lab.ui.widgets.widget import Widget

AXIS, TRAY, FIT = "axis", "tray", "fit-"
AXIS_NAMES = (("along", msg("along")), ("across", msg("across")), ("up", msg("up")))


def build_parts(view: BuildView, *, armed: str) -> PanelParts:
    """All pieces.  armed: key of what was taken up from the tray."""
    bench = view.bench
    doubt = doubt_switch(view.look, bench.parts)
    return PanelParts(
        sums=_sums(view) if view.told else (),
        result=(_balance(view),) if view.told else (),
        action=_before(view) if bench.held else _after(view),
        tray=(_tray(view, armed),) if bench.held else (),
        view=(view_choice(view.look, bench.view, doubt=doubt),),
    )


def _sums(view: BuildView) -> tuple[Widget, ...]:
    """Whose moments, and the table of them."""
    bench, say = view.bench, view.look.words.say
    options = tuple((name, say(text)) for name, text in AXIS_NAMES)
    holding = [number for number, tank in enumerate(bench.tanks_now) if tank.mass_kg > 0.0]
    keys = [*(f"{PART}{each.id}" for each in bench.parts_on), *(f"{TANK}{number}" for number in holding)]
    picked = view.picked.partition("@")[0]
    axis = AXIS_INDEX[bench.axis]
    choice = ChoiceRow(AXIS, say("Moments from the reference line"), options, bench.axis)
    _, table = moment_table(view.look, view.readings, bench.sum, keys, picked=picked, axis=axis, pickable=False)
    return choice, table


def _balance(view: BuildView) -> Widget:
    """Sum of moments ÷ sum of weights, the balance point on that axis, the margin and the plane of symmetry."""
    words, readings, bench = view.look.words, view.readings, view.bench
    axis, total = AXIS_INDEX[bench.axis], bench.sum
    moment, weight = readings.moment(total.moment_kg_m[axis]), readings.weight(total.mass_kg)
    at = place_with_doubt(view.look, readings, bench.parts, total.balance_point_m[axis], axis=axis)
    line = Row(
        (
            Label("quotient", words.say("{moment} ÷ {weight}", moment=moment, weight=weight), middle=True),
            Label("balances", words.say("CG {place}", place=at), style="strong", align="end", middle=True),
        ),
        weights=(0.0, 1.0),
    )
    children: list[Widget] = [line]
    if total.reference_m[axis] != 0.0:
        arm = readings.length(total.balance_point_m[axis] - total.reference_m[axis])
        reference = readings.length_with_unit(total.reference_m[axis])
        text = words.say("{arm} from the reference line at {line}", arm=arm, line=reference)
        children.append(Label("quotient-from", text, style="small", color="soft"))
    said = margin_said(view)
    if said:
        children.append(Label("margin", said, style="small"))
    children.append(Label("symmetry", symmetry_said(view), style="small"))
    children += doubt_lines(view.look, bench.parts)
    return Panel("balance", children=(Column(tuple(children), gap=0),), fill="paper", pad=8, round=True)


def _before(view: BuildView) -> tuple[Widget, ...]:
    """Not yet looked at: which end drops, and the button that shows where it balances."""
    look, bench = view.look, view.bench
    say, found = look.words.say, list[Widget]()
    if bench.view == "all":
        # Nothing is left to be guessed.
        return tuple(Label(f"follows-{number}", text) for number, text in enumerate(follows(view)))
    if drops(bench) is not None:
        order = tuple(reversed(SIDES)) if look.sizes.mirrored else SIDES
        options = tuple((side, say(END_NAMES[side])) for side in order)
        held = neutral_of(bench) is not None
        asked = (
            say("Held up at its neutral point, which end drops?")
            if held
            else say("Held up in the middle of its limits, which end drops?")
        )
        found.append(ChoiceRow(GUESS, asked, options, bench.guess))
    return (*found, Button(LET_GO, say("See where it balances"), kind="main"))


def _after(view: BuildView) -> tuple[Widget, ...]:
    """Looked at: which end drops, and what follows."""
    words, side = view.look.words, drops(view.bench)
    happened = words.say("Here it balances.") if side is None else words.say(HAPPENED[side])
    inside = view.standing is None or view.standing.inside
    steady = view.margin is None or view.margin.goes == "steady"
    hold = Button(HOLD, words.say("Build on"), kind="main")
    return told(happened, compared=(compared(view),), reasons=follows(view), settled=inside and steady), hold


def _tray(view: BuildView, armed: str) -> Tray:
    say = view.look.words.say
    items = tuple(_item(view.look, view.readings, kind, picked=armed == FIT + kind.name) for kind in KINDS.values())
    return Tray(TRAY, say("Put on"), say("drag, or tap it and tap the place"), items)


def _item(look: Look, readings: Readings, kind: AirframeKind, *, picked: bool) -> TrayItem:
    widest = max(max(each.shape.extent_m) for each in KINDS.values())
    part = Part(name=kind.called, mass_kg=kind.mass_kg, at_m=(0.0, 0.0, 0.0), shape=kind.shape)

    def draw(canvas: Canvas, rect: Rect) -> None:
        # All to one scale: the longest fills the tile.
        scale = min(rect.w * 0.9 / widest, rect.h * 1.1 / widest)
        x, y = rect.center
        if kind.look == "weight":
            side = max(scale * kind.shape.extent_m[2], look.sizes.px(9))
            draw_brass(canvas, look, brass_rect((x, y - side / 2), side), "")
            return
        thing = part_thing(part, kind.look, size_m=widest)
        draw_thing(
            canvas, look, thing, "side", lambda at: (x + scale * at[0], y - scale * at[1]), ground=look.theme.panel
        )

    return TrayItem(FIT + kind.name, look.words.say(kind.title), draw, picked=picked)
