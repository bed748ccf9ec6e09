"""The strip for what is picked: its place in numbers, its weight, remove; or what is to be put where."""

from __future__ import annotations

from lab.scenes.plate_view import PIN, REFERENCE, PlateView
from lab.screens.benches.part_strip import PartStrip
from lab.screens.benches.plate.keys import ALONG, CANCEL, OUTLINES, SHEET_OF, SHEETS, SHEETS_KG_M2, UP
from lab.screens.benches.plate.moves import clip_of, where_is
from lab.screens.benches.plate.picture import handle_name
from lab.screens.benches.plate.words import OUTLINE_NAMES, SHEET_NAMES
from lab.screens.benches.strip_fields import (
    armed_line,
    copies_and_back,
    length_field,
    more_and_remove,
    name_field,
    named,
    strip_panel,
    strip_row,
    tie_button,
    tie_line,
)
from lab.screens.benches.strip_keys import REMOVE, WEIGHT_FIELD
from lab.simulation import Hung
from lab.simulation.benches.plate_builds import BLANKS
from lab.simulation.benches.plate_rings import FARTHEST_M
from lab.ui.widgets.arrange import Column, Row
from lab.ui.widgets.button import Button
from lab.ui.widgets.choice import ChoiceRow
from lab.ui.widgets.label import Label
from lab.ui.widgets.number_field import NumberField
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.widget import Widget

HEAVIEST_TYPED_KG = 5.0


def strip(view: PlateView, parts: PartStrip, *, armed_text: str = "") -> Panel | None:
    """The strip for what is picked, or for what is taken up from the tray; None where there is neither.

    parts: what is half done with what is picked.
    """
    clip = clip_of(view, view.picked)
    if armed_text:
        children = armed_line(view.look, "put-where", armed_text, cancel=CANCEL)
    elif view.picked == SHEET_OF:
        return strip_panel(_sheet(view))
    elif clip is not None:
        return strip_panel(_clip(view, clip, parts))
    else:
        children = _picked(view)
    if not children:
        return None
    return strip_panel(strip_row(children))


def is_high(view: PlateView) -> bool:
    """Whether the strip takes more than one row."""
    return view.picked == SHEET_OF or clip_of(view, view.picked) is not None


def _sheet(view: PlateView) -> Widget:
    """Which outline to begin with, and from which sheet it is cut."""
    say, bench = view.look.words.say, view.bench
    now = next((name for name, blank in BLANKS.items() if blank.rings_m == bench.rings_m), None)
    sheet = next((name for name, area in SHEETS_KG_M2.items() if area == bench.area_kg_m2), None)
    outlines = tuple((name, say(OUTLINE_NAMES[name])) for name in BLANKS)
    sheets = tuple((name, say(SHEET_NAMES[name])) for name in SHEETS_KG_M2)
    return Column(
        (
            ChoiceRow(OUTLINES, say("Begin with"), outlines, now),
            ChoiceRow(SHEETS, say("Cut from"), sheets, sheet),
        )
    )


def _picked(view: PlateView) -> tuple[Widget, ...]:
    say = view.look.words.say
    place = where_is(view, view.picked)
    if place is None or (view.picked == REFERENCE and not view.outcome_shown):
        return ()
    name = handle_name(view, view.picked)
    fields: list[Widget] = [
        named(name),
        _length(view, ALONG, say("{name}, along", name=name), place[0]),
    ]
    if view.picked != REFERENCE:
        fields.append(_length(view, UP, say("{name}, up", name=name), place[1]))
    if view.picked not in (PIN, REFERENCE):
        fields.append(Button(REMOVE, say("Remove"), kind="quiet"))
    return tuple(fields)


def _clip(view: PlateView, clip: Hung, parts: PartStrip) -> Widget:
    """A weight: its name and what it weighs, and below that its place; behind *More* what else can be done to it.

    Always of two rows, so that the picture keeps its place.
    """
    look = view.look
    name, along, up, remove = _picked(view)
    weight = _weight(view, look.words.say("weight of {name}", name=handle_name(view, view.picked)), clip.mass_kg)
    if parts.tying:
        return Column((strip_row(tie_line(look, clip.name)), strip_row((name, weight))), gap=8)
    if parts.more:
        upper = strip_row((name_field(look, clip.name, parts.naming.draft), weight))
        return Column((upper, strip_row((tie_button(look, clip.name), *copies_and_back(look)))), gap=8)
    more, _ = more_and_remove(look)
    return Column((strip_row((name, weight, more, remove)), Row((along, up), gap=12, align="middle")), gap=8)


def _length(view: PlateView, key: str, name: str, at_m: float) -> Widget:
    """A number with its axis before it."""
    say = view.look.words.say
    field = length_field(view.readings, name, at_m, (-FARTHEST_M, FARTHEST_M), key=key)
    axis = Label(f"{key}.axis", say("along") if key == ALONG else say("up"), style="small", middle=True)
    return Row((axis, field), weights=(0.0, 1.0), gap=6, align="middle")


def _weight(view: PlateView, name: str, mass_kg: float) -> NumberField:
    units, fineness = view.readings.units, view.readings.fineness
    step = round(units.from_kg(0.001), fineness.weight) or 10.0**-fineness.weight
    high = max(units.from_kg(HEAVIEST_TYPED_KG), units.from_kg(mass_kg))
    value = units.from_kg(mass_kg)
    low = min(step, value)
    return NumberField(WEIGHT_FIELD, name, value, units.weight_word, low, high, step, fineness.weight, show_name=False)
