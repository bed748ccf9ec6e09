"""The strip for what is picked: its place, remove; behind *More* its weight and copies; or what is to be put where."""

from __future__ import annotations

from math import ceil

from lab.scenes.scales.view import REFERENCE, ScalesView
from lab.screens.benches.panel import panel_width
from lab.screens.benches.scales.keys import ACROSS, CANCEL, COPY, MIRROR, MORE, PLACE, REMOVE, STRIP, WEIGHT
from lab.screens.benches.scales.moves import load_of, scale_of
from lab.simulation.benches.bar_edits import HEAVIEST_KG
from lab.ui.widgets.arrange import Row
from lab.ui.widgets.button import Button
from lab.ui.widgets.label import Label
from lab.ui.widgets.number_field import NumberField
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.widget import Widget

MOST_TIMES = 5.0
"""A part can be typed this many times as heavy as the whole was: more figures leave no room for the field."""


def strip(view: ScalesView, *, armed_text: str = "", more: bool = False) -> Panel | None:
    """The strip for what is picked, or for a weight taken up from the tray; None where there is neither.

    more: whether the second half of what can be done to a part is shown.  Where the strip would take two rows, it does
    without the name, which stands at the part in bold.
    """
    if armed_text:
        return _panel(_armed(view, armed_text))
    picked = _picked(view, more=more)
    if not picked:
        return None
    whole = _panel(picked)
    fits = whole.natural_width(view.look) <= _room(view)
    return whole if fits else _panel(tuple(widget for widget in picked if not isinstance(widget, Label)))


def _panel(children: tuple[Widget, ...]) -> Panel:
    weights = (1.0,) + (0.0,) * (len(children) - 1)
    row = Row(children, weights=weights, gap=10, align="middle")
    return Panel(STRIP, children=(row,), pad=10, outline=True, round=True)


def _room(view: ScalesView) -> float:
    """How wide the strip may be upon the picture."""
    sizes = view.look.sizes
    beside = 0.0 if sizes.portrait else panel_width(view.look)
    return sizes.width - beside - 2 * sizes.px(8)


def _armed(view: ScalesView, text: str) -> tuple[Widget, ...]:
    return Label("put-where", text, style="body", middle=True), Button(CANCEL, view.look.words.say("Put it back"))


def _picked(view: ScalesView, *, more: bool) -> tuple[Widget, ...]:
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
    if more:
        one_more, mirror = Button(COPY, say("One more"), kind="quiet"), Button(MIRROR, say("Mirror it"), kind="quiet")
        return label, _weight(view, load.mass_kg, name), one_more, mirror, Button(MORE, say("Back"), kind="quiet")
    fields = _places(view, name, (load.at_m, load.across_m), (along, across))
    more_, remove = Button(MORE, say("More"), kind="quiet"), Button(REMOVE, say("Remove"), kind="quiet")
    return label, *fields, more_, remove


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
    most = min(HEAVIEST_KG, max(mass_kg, MOST_TIMES * view.bench.sum.mass_kg))
    low, high = round(10.0**-decimals, 9), float(ceil(units.from_kg(most)))
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
