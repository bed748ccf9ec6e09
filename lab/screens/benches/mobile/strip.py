"""The strip for what is picked: its place, remove; behind *More* its weight and copies of it.

Or what is to be hung where.
"""

from __future__ import annotations

from lab.scenes.mobile.view import HOOK, REFERENCE, MobileView, number_of
from lab.screens.benches.filling_field import filling_field
from lab.screens.benches.mobile.keys import CANCEL, RING
from lab.screens.benches.mobile.moves import hangs_at, picked_bar, thing_of
from lab.screens.benches.part_strip import PartStrip
from lab.screens.benches.strip_fields import (
    armed_line,
    copies_and_back,
    fitted,
    length_field,
    more_and_remove,
    name_field,
    named,
    strip_panel,
)
from lab.screens.benches.strip_keys import WEIGHT_FIELD
from lab.simulation.benches import Beam, Hung
from lab.ui.widgets.number_field import NumberField
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.widget import Widget

MOST_KG = 2.0
"""More than any bar of the tray could carry for real."""


def strip(view: MobileView, parts: PartStrip, *, armed_text: str = "") -> Panel | None:
    """The strip for what is picked, or for a thing taken up from the tray; None where there is neither.

    parts: what is half done with what is picked.
    """
    if armed_text:
        children = armed_line(view.look, "hang-where", armed_text, cancel=CANCEL)
    else:
        children = _picked(view, parts)
    return strip_panel(fitted(view.look, children)) if children else None


def _picked(view: MobileView, parts: PartStrip) -> tuple[Widget, ...]:
    bench, say = view.bench, view.look.words.say
    if view.picked == REFERENCE and view.lines:
        name = say("reference line")
        place = length_field(view.readings, say("place of the reference line"), bench.reference_m, bench.rail_m)
        return named(name), place
    beam = bench.beam(picked_bar(view.picked))
    if beam is not None:
        return _more(view, parts, beam) if parts.more else _of_bar(view, beam)
    return _of_weight(view, parts)


def _of_bar(view: MobileView, beam: Beam) -> tuple[Widget, ...]:
    """By its wood: where its ring is on it; by its hook: where it hangs from the bar above."""
    say, name = view.look.words.say, view.look.words.content(beam.name)
    above = view.bench.beam(beam.above)
    if above is not None and number_of(view.picked, HOOK) is not None:
        title = say("hook of {bar}", bar=name)
        place = length_field(view.readings, say("place of the hook"), beam.hook_m, (0.0, above.length_m))
    else:
        title = say("ring of {bar}", bar=name)
        place = length_field(view.readings, say("place of the ring"), beam.pin_m, (0.0, beam.length_m), key=RING)
    label = named(title)
    more, remove = more_and_remove(view.look)
    return (label, place, more) if above is None else (label, place, more, remove)


def _more(view: MobileView, parts: PartStrip, thing: Beam | Hung) -> tuple[Widget, ...]:
    """The second half: its name, its weight, copies, and back. The topmost bar has no copy beside it."""
    say, called = view.look.words.say, view.look.words.content(thing.name)
    ends = copies_and_back(view.look)
    filled = isinstance(thing, Hung) and filling_field(view.look, thing) is not None
    return (
        name_field(view.look, thing.name, parts.naming.draft),
        *(() if filled else (_weight(view, thing.mass_kg, say("weight of {name}", name=called)),)),
        *(ends[-1:] if isinstance(thing, Beam) and thing.above is None else ends),
    )


def _of_weight(view: MobileView, parts: PartStrip) -> tuple[Widget, ...]:
    hangs, number, say = hangs_at(view.picked, view), thing_of(view.picked), view.look.words.say
    beam = None if hangs is None else view.bench.beam(hangs[0])
    weight = None if beam is None or number is None else beam.weight(number)
    if beam is None or weight is None:
        return ()
    if parts.more:
        return _more(view, parts, weight)
    name = view.look.words.content(weight.name)
    place = length_field(view.readings, say("place of {name}", name=name), weight.at_m, (0.0, beam.length_m))
    filling = filling_field(view.look, weight)
    return named(name), place, *(() if filling is None else (filling,)), *more_and_remove(view.look)


def _weight(view: MobileView, mass_kg: float, name: str) -> NumberField:
    units, decimals = view.readings.units, view.readings.fineness.weight
    value, step = units.from_kg(mass_kg), 5.0 * 10.0**-decimals
    low, high = min(value, step), max(value, round(units.from_kg(MOST_KG), 9))
    return NumberField(WEIGHT_FIELD, name, value, units.weight_word, low, high, step, decimals, show_name=False)
