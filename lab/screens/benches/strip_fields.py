"""What the strip for what is picked is made of at every bench: its row, names, places, weights, copies."""

from __future__ import annotations

from collections.abc import Mapping

from lab.scenes.readings import Readings
from lab.screens.benches.builds import NameField
from lab.screens.benches.panel import panel_width
from lab.screens.benches.strip_keys import (
    COPY,
    MIRROR,
    MORE,
    NAME,
    PLACE,
    REMOVE,
    STRIP,
    TIE,
    TIE_CANCEL,
    UNTIE,
    WEIGHT_FIELD,
)
from lab.simulation.benches.bar_edits import HEAVIEST_KG
from lab.simulation.benches.groups import group_of, in_group
from lab.ui.look import Look
from lab.ui.widgets.arrange import Column, Row
from lab.ui.widgets.button import Button
from lab.ui.widgets.label import Label
from lab.ui.widgets.number_field import NumberField
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.widget import Widget

WEIGHT_STEP: Mapping[str, float] = {"g-cm": 10.0, "kg-m": 0.01, "N-m": 0.1, "lb-in": 0.02}
"""Of − and +, in the units that are shown: about what a hand can tell."""


def strip_panel(child: Widget) -> Panel:
    """The strip itself."""
    return Panel(STRIP, children=(child,), pad=10, outline=True, round=True)


def strip_row(children: tuple[Widget, ...]) -> Row:
    """What stands beside one another in the strip: the first takes the room that is left."""
    return Row(children, weights=(1.0,) + (0.0,) * (len(children) - 1), gap=10, align="middle")


def fitted(look: Look, children: tuple[Widget, ...]) -> Widget:
    """Beside one another; where that is too wide what it is like stands over what can be done, in rows that fit."""
    beside = 0.0 if look.sizes.portrait else panel_width(look)
    room = look.sizes.width - beside - look.sizes.px(40)
    if strip_row(children).natural_width(look) <= room:
        return strip_row(children)
    buttons = tuple(child for child in children if isinstance(child, Button))
    others = tuple(child for child in children if child not in buttons)
    rows = [strip_row(row) for row in _rows(look, others, room)]
    rows += [Row(row, gap=10, align="middle") for row in _rows(look, buttons, room)]
    return Column(tuple(rows), gap=8)


def _rows(look: Look, children: tuple[Widget, ...], room: float) -> list[tuple[Widget, ...]]:
    """As many in each row as fit."""
    rows: list[tuple[Widget, ...]] = []
    for child in children:
        if rows and strip_row((*rows[-1], child)).natural_width(look) <= room:
            rows[-1] = (*rows[-1], child)
        else:
            rows.append((child,))
    return rows


def armed_line(look: Look, key: str, text: str, *, cancel: str) -> tuple[Widget, ...]:
    """What is to be put where, and the button that puts it back.  key, cancel: of the two."""
    return Label(key, text, style="body", middle=True), Button(cancel, look.words.say("Put it back"))


def named(text: str) -> Label:
    """What is picked."""
    return Label("picked-name", text, style="strong", middle=True)


def more_and_remove(look: Look) -> tuple[Widget, ...]:
    """What ends the first half of the strip."""
    say = look.words.say
    return Button(MORE, say("More"), kind="quiet"), Button(REMOVE, say("Remove"), kind="quiet")


def tie_line(look: Look, name: str) -> tuple[Widget, ...]:
    """What the strip says while the next press ties a part to another.  name: of the part."""
    say = look.words.say
    text = say("Press what to tie {name} to.", name=look.words.content(name))
    return Label("tie-to-what", text, style="body", middle=True), Button(TIE_CANCEL, say("Let it be"))


def name_field(look: Look, name: str, typed: str | None) -> NameField:
    """The name of a part within its group.  typed: what was typed of another one; None where nothing was."""
    return NameField(NAME, look.words.say("name"), in_group(name) if typed is None else typed)


def tie_button(look: Look, name: str) -> Button:
    """What ties a part of this name to another, or loosens it."""
    say = look.words.say
    if group_of(name) is None:
        return Button(TIE, say("Tie to…"), kind="quiet")
    return Button(UNTIE, say("Untie"), kind="quiet")


def copies_and_back(look: Look) -> tuple[Widget, ...]:
    """What ends the second half of the strip."""
    say = look.words.say
    return (
        Button(COPY, say("One more"), kind="quiet"),
        Button(MIRROR, say("Mirror it"), kind="quiet"),
        Button(MORE, say("Back"), kind="quiet"),
    )


def length_field(
    readings: Readings, name: str, length_m: float, ends_m: tuple[float, float], *, key: str = PLACE
) -> NumberField:
    """A place or a length as a number, within its ends.  name: as it is spoken."""
    units, fineness = readings.units, readings.fineness
    low, high = (round(units.from_m(end), 9) for end in ends_m)
    value = min(max(units.from_m(length_m), low), high)
    return NumberField(key, name, value, units.length_word, low, high, fineness.step, fineness.length, show_name=False)


def weight_field(readings: Readings, name: str, mass_kg: float) -> NumberField:
    """A weight as a number, from the last shown decimal to the heaviest.  name: as it is spoken."""
    units, decimals = readings.units, readings.fineness.weight
    value, high, step = units.from_kg(mass_kg), units.from_kg(HEAVIEST_KG), WEIGHT_STEP[units.name]
    low = min(10.0**-decimals, value)
    return NumberField(WEIGHT_FIELD, name, value, units.weight_word, low, high, step, decimals, show_name=False)
