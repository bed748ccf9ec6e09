"""The strip for what is picked: its place and weight, remove; or what is to be put where."""

from __future__ import annotations

from lab.scenes.scales.view import REFERENCE, ScalesView
from lab.screens.benches.scales.keys import ACROSS, CANCEL, PLACE, REMOVE, STRIP, WEIGHT
from lab.screens.benches.scales.moves import load_of, scale_of
from lab.simulation.benches.bar_edits import HEAVIEST_KG
from lab.ui.widgets.arrange import Row
from lab.ui.widgets.button import Button
from lab.ui.widgets.label import Label
from lab.ui.widgets.number_field import NumberField
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.widget import Widget


def strip(view: ScalesView, *, armed_text: str = "") -> Panel | None:
    """The strip for what is picked, or for a weight taken up from the tray; None where there is neither."""
    children = _armed(view, armed_text) if armed_text else _picked(view)
    if not children:
        return None
    weights = (1.0,) + (0.0,) * (len(children) - 1)
    return Panel(
        STRIP, children=(Row(children, weights=weights, gap=12, align="middle"),), pad=10, outline=True, round=True
    )


def _armed(view: ScalesView, text: str) -> tuple[Widget, ...]:
    return Label("put-where", text, style="body", middle=True), Button(CANCEL, view.look.words.say("Put it back"))


def _picked(view: ScalesView) -> tuple[Widget, ...]:
    words, bench = view.look.words, view.bench
    say, (along, across) = words.say, bench.reach_m
    if view.tips and view.picked != REFERENCE:
        return ()
    if view.picked == REFERENCE and view.told:
        return (
            Label("picked-name", say("reference line"), style="strong", middle=True),
            _place(view, PLACE, bench.reference_m, bench.rail_m, say("place of the reference line")),
        )
    scale, load = scale_of(view, view.picked), load_of(view, view.picked)
    if scale is not None:
        name = words.content(scale.name)
        fields = _places(view, name, (scale.at_m[0], scale.at_m[1]), (along, across))
        return (Label("picked-name", name, style="strong", middle=True), *fields)
    if load is None:
        return ()
    name = words.content(load.name)
    label = Label("picked-name", name, style="strong", middle=True)
    if load is bench.carrier:
        return label, _weight(view, load.mass_kg, name)
    fields = _places(view, name, (load.at_m, load.across_m), (along, across))
    return label, *fields, _weight(view, load.mass_kg, name), Button(REMOVE, say("Remove"), kind="quiet")


def _places(
    view: ScalesView, name: str, at_m: tuple[float, float], reach_m: tuple[tuple[float, float], tuple[float, float]]
) -> tuple[Widget, ...]:
    say = view.look.words.say
    along = _place(view, PLACE, at_m[0], reach_m[0], say("place of {name}", name=name))
    if not view.three:
        return (along,)
    return along, _place(view, ACROSS, at_m[1], reach_m[1], say("place of {name} across", name=name))


def _place(view: ScalesView, key: str, at_m: float, span_m: tuple[float, float], name: str) -> NumberField:
    units, fineness = view.readings.units, view.readings.fineness
    low, high = (round(units.from_m(end), 9) for end in span_m)
    value = min(max(units.from_m(at_m), low), high)
    return NumberField(key, name, value, units.length_word, low, high, fineness.step, fineness.length, show_name=False)


def _weight(view: ScalesView, mass_kg: float, name: str) -> NumberField:
    units = view.readings.units
    value = units.from_kg(mass_kg)
    step = 10.0 ** round_down(value)
    decimals = max(view.readings.fineness.weight, -round_down(value), 0)
    low, high = round(10.0**-decimals, 9), round(units.from_kg(HEAVIEST_KG), 9)
    text = view.look.words.say("weight of {name}", name=name)
    return NumberField(WEIGHT, text, value, units.weight_word, low, high, step, decimals, show_name=False)


def round_down(value: float) -> int:
    """The power of ten that is about a twentieth of a value."""
    power = 0
    while 10.0 ** (power + 1) * 10.0 <= value:
        power += 1
    while 10.0**power * 10.0 > value and power > -3:
        power -= 1
    return power
