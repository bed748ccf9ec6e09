"""The strip for what is picked: its place or length and its weight between − and +, remove; or what goes where."""

from __future__ import annotations

from collections.abc import Mapping

from lab.mechanics import Part, extent_m
from lab.scenes.tool.view import FINGER, REFERENCE, ToolView
from lab.screens.benches.builds import NameField
from lab.screens.benches.panel import panel_width
from lab.screens.benches.tool.keys import (
    CANCEL,
    COPY,
    HOLDING,
    LENGTH,
    MIRROR,
    MORE,
    NAME,
    PLACE,
    REMOVE,
    STRIP,
    WEIGHT,
)
from lab.screens.benches.tool.moves import id_of, part_of
from lab.simulation.benches.bar_edits import HEAVIEST_KG
from lab.simulation.benches.poles import is_pole
from lab.simulation.benches.tool_edits import LONGEST_M, SHORTEST_M
from lab.simulation.benches.tool_places import places_m
from lab.ui.widgets.arrange import Column, Row
from lab.ui.widgets.button import Button
from lab.ui.widgets.choice import ChoiceRow
from lab.ui.widgets.label import Label
from lab.ui.widgets.number_field import NumberField
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.widget import Widget

WEIGHT_STEP: Mapping[str, float] = {"g-cm": 10.0, "kg-m": 0.01, "N-m": 0.1, "lb-in": 0.02}
"""Of − and +, in the units that are shown: about what a hand can tell."""


def strip(view: ToolView, *, armed_text: str = "", more: bool = False, typed: str | None = None) -> Panel | None:
    """The strip for what is picked, or for a part taken up from the tray; None where there is neither.

    more: whether the second half of what can be done to a part is shown.  typed: its name while one is typed.
    """
    children = _armed(view, armed_text) if armed_text else _picked(view, more=more, typed=typed)
    if not children:
        return None
    row: Widget = _row(children)
    look = view.look
    beside = 0.0 if look.sizes.portrait else panel_width(look)
    if len(children) > 2 and row.natural_width(look) > look.sizes.width - beside - look.sizes.px(40):
        # What it is and what else can be done with it; below it what it is like.
        like = tuple(child for child in children if isinstance(child, NumberField | ChoiceRow)) or children[1:]
        row = Column((_row(tuple(child for child in children if child not in like)), _row(like)), gap=8)
    return Panel(STRIP, children=(row,), pad=10, outline=True, round=True)


def _row(children: tuple[Widget, ...]) -> Row:
    weights = (1.0,) + (0.0,) * (len(children) - 1)
    return Row(children, weights=weights, gap=10, align="middle")


def _armed(view: ToolView, text: str) -> tuple[Widget, ...]:
    return Label("fit-where", text, style="body", middle=True), Button(CANCEL, view.look.words.say("Put it back"))


def _picked(view: ToolView, *, more: bool, typed: str | None) -> tuple[Widget, ...]:
    say, tool = view.look.words.say, view.bench
    if view.picked == FINGER:
        name, place = say("finger"), say("place of the finger")
        return _named(name), _length(view, PLACE, place, tool.finger_at_m, tool.rail_m)
    if view.picked == REFERENCE and view.lines:
        name, place = say("reference line"), say("place of the reference line")
        return _named(name), _length(view, PLACE, place, tool.reference_m, tool.rail_m)
    part = part_of(view, view.picked)
    if part is None:
        return ()
    return _more_of_part(view, part, typed) if more else _of_part(view, part)


def _of_part(view: ToolView, part: Part) -> tuple[Widget, ...]:
    say = view.look.words.say
    name = view.look.words.content(part.name)
    children: list[Widget] = [_named(name)]
    if is_pole(part):
        long_m, ends_m = extent_m(part.shape)[0], (SHORTEST_M, LONGEST_M)
        children.append(_length(view, LENGTH, say("length of {name}", name=name), long_m, ends_m))
    else:
        ends_m = places_m(view.bench.parts, view.bench.ids.index(id_of(view.picked) or 0))
        children.append(_length(view, PLACE, say("place of {name}", name=name), part.at_m[0], ends_m))
    children.append(_weight(view, say("weight of {name}", name=name), part.mass_kg))
    more, remove = Button(MORE, say("More"), kind="quiet"), Button(REMOVE, say("Remove"), kind="quiet")
    return (*children, more, remove)


def _more_of_part(view: ToolView, part: Part, typed: str | None) -> tuple[Widget, ...]:
    say = view.look.words.say
    children: list[Widget] = [NameField(NAME, say("name"), part.name if typed is None else typed)]
    if not any(extent_m(part.shape)):
        options = (("clamped", say("clipped on")), ("hung", say("on a cord")))
        children.append(ChoiceRow(HOLDING, say("How it is held"), options, part.hold, show_name=False))
    copies = Button(COPY, say("One more"), kind="quiet"), Button(MIRROR, say("Mirror it"), kind="quiet")
    return (*children, *copies, Button(MORE, say("Back"), kind="quiet"))


def _named(text: str) -> Widget:
    return Label("picked-name", text, style="strong", middle=True)


def _length(view: ToolView, key: str, name: str, length_m: float, ends_m: tuple[float, float]) -> NumberField:
    units, fineness = view.readings.units, view.readings.fineness
    low, high = (round(units.from_m(end), 9) for end in ends_m)
    value = min(max(units.from_m(length_m), low), high)
    return NumberField(key, name, value, units.length_word, low, high, fineness.step, fineness.length, show_name=False)


def _weight(view: ToolView, name: str, mass_kg: float) -> NumberField:
    units, fineness = view.readings.units, view.readings.fineness
    step, high = WEIGHT_STEP[units.name], units.from_kg(HEAVIEST_KG)
    low = min(10.0**-fineness.weight, units.from_kg(mass_kg))
    return NumberField(
        WEIGHT, name, units.from_kg(mass_kg), units.weight_word, low, high, step, fineness.weight, show_name=False
    )
