"""The field of what fills a part that is picked: the water of a tin, the beads on a cord."""

from __future__ import annotations

from lab.screens.benches.strip_keys import BEADS, WATER
from lab.simulation import Hung
from lab.simulation.benches.bar_parts import MOST_BEADS, TIN_HOLDS_KG, bead_count, water_kg
from lab.ui.look import Look
from lab.ui.widgets.number_field import NumberField

WATER_STEP_ML = 10.0


def filling_field(look: Look, weight: Hung) -> NumberField | None:
    """Of a tin its water, of beads how many; None for anything else."""
    say, name = look.words.say, look.words.content(weight.name)
    water, beads = water_kg(weight), bead_count(weight)
    if water is not None:
        spoken, most_ml = say("water in {name}", name=name), TIN_HOLDS_KG * 1000.0
        now_ml = min(max(round(water * 1000.0, 6), 0.0), most_ml)
        return NumberField(WATER, spoken, now_ml, "mL", 0.0, most_ml, WATER_STEP_ML, 0, show_name=False)
    if beads is None:
        return None
    spoken, unit = say("beads on {name}", name=name), look.words.plural("bead", "beads", beads)
    return NumberField(BEADS, spoken, float(beads), unit, 1.0, float(MOST_BEADS), 1.0, 0, show_name=False)
