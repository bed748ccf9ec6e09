"""What the strip shows of a part by what it is: hung or clamped, the water in a tin, the beads on a cord; its name."""

from __future__ import annotations

from lab.scenes.hanging_view import HangingView
from lab.screens.benches.hanging_bar.keys import BEADS, HOLDING, WATER
from lab.screens.benches.strip_fields import copies_and_back, name_field, tie_button, weight_field
from lab.simulation import Hung
from lab.simulation.benches.bar_parts import (
    MOST_BEADS,
    TIN_HOLDS_KG,
    bead_count,
    kind_of,
    water_kg,
)
from lab.ui.widgets.choice import ChoiceRow
from lab.ui.widgets.number_field import NumberField
from lab.ui.widgets.widget import Widget

WATER_STEP_ML = 10.0


def like(view: HangingView, weight: Hung) -> tuple[Widget, ...]:
    """What it is like: of brass how it is held, of a tin its water, of beads how many."""
    say, name = view.look.words.say, view.look.words.content(weight.name)
    water, beads = water_kg(weight), bead_count(weight)
    if water is not None:
        spoken, most_ml = say("water in {name}", name=name), TIN_HOLDS_KG * 1000.0
        now_ml = min(max(round(water * 1000.0, 6), 0.0), most_ml)
        return (NumberField(WATER, spoken, now_ml, "mL", 0.0, most_ml, WATER_STEP_ML, 0, show_name=False),)
    if beads is not None:
        spoken, unit = say("beads on {name}", name=name), view.look.words.plural("bead", "beads", beads)
        return (NumberField(BEADS, spoken, float(beads), unit, 1.0, float(MOST_BEADS), 1.0, 0, show_name=False),)
    if kind_of(weight) is not None:
        return ()
    options = (("hung", say("hung")), ("clamped", say("clamped")))
    return (ChoiceRow(HOLDING, say("How it is held"), options, weight.hold, show_name=False),)


def more_of(view: HangingView, weight: Hung, *, typed: str | None) -> tuple[Widget, ...]:
    """What else can be done to it.  typed: its name while one is typed."""
    say, name = view.look.words.say, view.look.words.content(weight.name)
    children: list[Widget] = [name_field(view.look, weight.name, typed)]
    if water_kg(weight) is None and bead_count(weight) is None:
        children.append(weight_field(view.readings, say("weight of {name}", name=name), weight.mass_kg))
    return (*children, tie_button(view.look, weight.name), *copies_and_back(view.look))
