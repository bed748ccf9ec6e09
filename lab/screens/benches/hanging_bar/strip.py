"""The strip for what is picked: its place, hung or clamped, remove; behind *More* its weight and copies of it.

Or what is to be hung where.
"""

from __future__ import annotations

from collections.abc import Mapping

from lab.scenes.hanging_view import PIVOT, REFERENCE, HangingView
from lab.screens.benches.hanging_bar.keys import CANCEL, COPY, HOLDING, MIRROR, MORE, PLACE, REMOVE, STRIP, WEIGHT
from lab.screens.benches.hanging_bar.moves import weight_of
from lab.simulation.benches.bar_edits import HEAVIEST_KG
from lab.ui.widgets.arrange import Row
from lab.ui.widgets.button import Button
from lab.ui.widgets.choice import ChoiceRow
from lab.ui.widgets.label import Label
from lab.ui.widgets.number_field import NumberField
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.widget import Widget

WEIGHT_STEP: Mapping[str, float] = {"g-cm": 10.0, "kg-m": 0.01, "N-m": 0.1, "lb-in": 0.02}
"""Of − and +, in the units that are shown: about what a hand can tell."""


def strip(view: HangingView, *, armed_text: str = "", more: bool = False) -> Panel | None:
    """The strip for what is picked, or for a weight taken up from the tray; None where there is neither.

    more: whether the second half of what can be done to a weight is shown.
    """
    children = _armed(view, armed_text) if armed_text else _picked(view, more=more)
    if not children:
        return None
    weights = (1.0,) + (0.0,) * (len(children) - 1)
    row = Row(children, weights=weights, gap=12, align="middle")
    return Panel(STRIP, children=(row,), pad=10, outline=True, round=True)


def _armed(view: HangingView, text: str) -> tuple[Widget, ...]:
    return Label("hang-where", text, style="body", middle=True), Button(CANCEL, view.look.words.say("Put it back"))


def _picked(view: HangingView, *, more: bool) -> tuple[Widget, ...]:
    say, bench = view.look.words.say, view.bench
    if view.picked == PIVOT:
        return (
            Label("picked-name", say("pivot"), style="strong", middle=True),
            _place(view, bench.pivot.at_m, (bench.bar.left_m, bench.bar.right_m), say("place of the pivot")),
        )
    if view.picked == REFERENCE and view.lines:
        return (
            Label("picked-name", say("reference line"), style="strong", middle=True),
            _place(view, bench.reference_m, bench.rail_m, say("place of the reference line")),
        )
    weight = weight_of(view, view.picked)
    if weight is None:
        return ()
    name = view.look.words.content(weight.name)
    if more:
        return (
            Label("picked-name", name, style="strong", middle=True),
            _weight(view, weight.mass_kg, say("weight of {name}", name=name)),
            Button(COPY, say("One more"), kind="quiet"),
            Button(MIRROR, say("Mirror it"), kind="quiet"),
            Button(MORE, say("Back"), kind="quiet"),
        )
    options = (("hung", say("hung")), ("clamped", say("clamped")))
    return (
        Label("picked-name", name, style="strong", middle=True),
        _place(view, weight.at_m, (bench.bar.left_m, bench.bar.right_m), say("place of {name}", name=name)),
        ChoiceRow(HOLDING, say("How it is held"), options, weight.hold, show_name=False),
        Button(MORE, say("More"), kind="quiet"),
        Button(REMOVE, say("Remove"), kind="quiet"),
    )


def _weight(view: HangingView, mass_kg: float, name: str) -> NumberField:
    units, fineness = view.readings.units, view.readings.fineness
    low, high = 10.0**-fineness.weight, units.from_kg(HEAVIEST_KG)
    value, step = units.from_kg(mass_kg), WEIGHT_STEP[units.name]
    return NumberField(
        WEIGHT, name, value, units.weight_word, min(low, value), high, step, fineness.weight, show_name=False
    )


def _place(view: HangingView, at_m: float, span_m: tuple[float, float], name: str) -> NumberField:
    units, fineness = view.readings.units, view.readings.fineness
    low, high = (round(units.from_m(end), 9) for end in span_m)
    return NumberField(
        PLACE,
        name,
        min(max(units.from_m(at_m), low), high),
        units.length_word,
        low,
        high,
        fineness.step,
        fineness.length,
        show_name=False,
    )
