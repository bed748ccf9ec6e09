"""The strip for what is picked: its place, remove; behind *More* its weight and copies; or what is to be put where."""

from __future__ import annotations

from math import ceil

from lab.scenes.scales.view import REFERENCE, ScalesView
from lab.screens.benches.part_strip import PartStrip
from lab.screens.benches.scales.keys import ACROSS, CANCEL
from lab.screens.benches.scales.moves import load_of, scale_of
from lab.screens.benches.strip_fields import (
    armed_line,
    copies_and_back,
    fitted,
    length_field,
    more_and_remove,
    name_field,
    named,
    strip_panel,
    tie_button,
    tie_line,
)
from lab.screens.benches.strip_keys import WEIGHT_FIELD
from lab.simulation.benches.bar_edits import HEAVIEST_KG
from lab.simulation.benches.groups import in_group
from lab.ui.widgets.number_field import NumberField
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.widget import Widget

MOST_TIMES = 5.0
"""A part can be typed this many times as heavy as the whole was: more figures leave no room for the field."""


def strip(view: ScalesView, parts: PartStrip, *, armed_text: str = "") -> Panel | None:
    """The strip for what is picked, or for a weight taken up from the tray; None where there is neither.

    parts: what is half done with what is picked.
    """
    if armed_text:
        children = armed_line(view.look, "put-where", armed_text, cancel=CANCEL)
    else:
        children = _picked(view, parts)
    return strip_panel(fitted(view.look, children)) if children else None


def _picked(view: ScalesView, parts: PartStrip) -> tuple[Widget, ...]:
    words, bench = view.look.words, view.bench
    say, (along, across) = words.say, bench.reach_m
    if view.tips and view.picked != REFERENCE:
        return ()
    if view.picked == REFERENCE and view.told:
        return (
            named(say("reference line")),
            length_field(view.readings, say("place of the reference line"), bench.reference_m, bench.rail_m),
        )
    scale, load = scale_of(view, view.picked), load_of(view, view.picked)
    if scale is not None:
        name = words.content(scale.name)
        fields = _places(view, name, (scale.at_m[0], scale.at_m[1]), (along, across))
        return (named(name), *fields)
    if load is None:
        return ()
    name = words.content(in_group(load.name))
    label = named(name)
    if load is bench.carrier:
        return label, _weight(view, load.mass_kg, name)
    if parts.tying:
        return tie_line(view.look, load.name)
    if parts.more:
        field = name_field(view.look, load.name, parts.naming.draft)
        weight = _weight(view, load.mass_kg, name)
        return field, weight, tie_button(view.look, load.name), *copies_and_back(view.look)
    fields = _places(view, name, (load.at_m, load.across_m), (along, across))
    return label, *fields, *more_and_remove(view.look)


def _places(
    view: ScalesView, name: str, at_m: tuple[float, float], reach_m: tuple[tuple[float, float], tuple[float, float]]
) -> tuple[Widget, ...]:
    say = view.look.words.say
    along = length_field(view.readings, say("place of {name}", name=name), at_m[0], reach_m[0])
    if not view.three:
        return (along,)
    across = say("place of {name} across", name=name)
    return along, length_field(view.readings, across, at_m[1], reach_m[1], key=ACROSS)


def _weight(view: ScalesView, mass_kg: float, name: str) -> NumberField:
    units = view.readings.units
    value = units.from_kg(mass_kg)
    step = 10.0 ** round_down(value)
    decimals = max(view.readings.fineness.weight, -round_down(value), 0)
    most = min(HEAVIEST_KG, max(mass_kg, MOST_TIMES * view.bench.sum.mass_kg))
    low, high = round(10.0**-decimals, 9), float(ceil(units.from_kg(most)))
    text = view.look.words.say("weight of {name}", name=name)
    return NumberField(WEIGHT_FIELD, text, value, units.weight_word, low, high, step, decimals, show_name=False)


def round_down(value: float) -> int:
    """The power of ten that is about a twentieth of a value."""
    power = 0
    while 10.0 ** (power + 1) * 10.0 <= value:
        power += 1
    while 10.0**power * 10.0 > value and power > -3:
        power -= 1
    return power
