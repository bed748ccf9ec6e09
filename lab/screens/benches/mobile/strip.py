"""The strip for what is picked: its place, remove; behind *More* its weight and copies of it.

Or what is to be hung where.
"""

from __future__ import annotations

from lab.scenes.mobile.view import HOOK, REFERENCE, MobileView, number_of
from lab.screens.benches.mobile.keys import CANCEL, COPY, MIRROR, MORE, PLACE, REMOVE, RING, STRIP, WEIGHT_FIELD
from lab.screens.benches.mobile.moves import hangs_at, picked_bar, thing_of
from lab.simulation.benches import Beam
from lab.ui.widgets.arrange import Row
from lab.ui.widgets.button import Button
from lab.ui.widgets.label import Label
from lab.ui.widgets.number_field import NumberField
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.widget import Widget

MOST_KG = 2.0
"""More than any bar of the tray could carry for real."""


def strip(view: MobileView, *, armed_text: str = "", more: bool = False) -> Panel | None:
    """The strip for what is picked, or for a thing taken up from the tray; None where there is neither.

    more: whether the second half of what can be done is shown.
    """
    if armed_text:
        cancel = Button(CANCEL, view.look.words.say("Put it back"))
        children: tuple[Widget, ...] = (Label("hang-where", armed_text, style="body", middle=True), cancel)
    else:
        children = _picked(view, more=more)
    if not children:
        return None
    weights = (1.0,) + (0.0,) * (len(children) - 1)
    row = Row(children, weights=weights, gap=12, align="middle")
    return Panel(STRIP, children=(row,), pad=10, outline=True, round=True)


def _picked(view: MobileView, *, more: bool) -> tuple[Widget, ...]:
    bench, say = view.bench, view.look.words.say
    if view.picked == REFERENCE and view.lines:
        name = say("reference line")
        place = _place(view, PLACE, say("place of the reference line"), bench.reference_m, bench.rail_m)
        return Label("picked-name", name, style="strong", middle=True), place
    beam = bench.beam(picked_bar(view.picked))
    if beam is not None:
        return _more(view, beam.name, beam.mass_kg) if more and beam.above is not None else _of_bar(view, beam)
    return _of_weight(view, more=more)


def _of_bar(view: MobileView, beam: Beam) -> tuple[Widget, ...]:
    """By its wood: where its ring is on it; by its hook: where it hangs from the bar above."""
    say, name = view.look.words.say, view.look.words.content(beam.name)
    above = view.bench.beam(beam.above)
    if above is not None and number_of(view.picked, HOOK) is not None:
        title = say("hook of {bar}", bar=name)
        place = _place(view, PLACE, say("place of the hook"), beam.hook_m, (0.0, above.length_m))
    else:
        title = say("ring of {bar}", bar=name)
        place = _place(view, RING, say("place of the ring"), beam.pin_m, (0.0, beam.length_m))
    label = Label("picked-name", title, style="strong", middle=True)
    return (label, place) if above is None else (label, place, *_buttons(view))


def _buttons(view: MobileView) -> tuple[Widget, ...]:
    say = view.look.words.say
    return Button(MORE, say("More"), kind="quiet"), Button(REMOVE, say("Remove"), kind="quiet")


def _more(view: MobileView, name: str, mass_kg: float) -> tuple[Widget, ...]:
    """The second half: its weight, copies, and back."""
    say, called = view.look.words.say, view.look.words.content(name)
    return (
        Label("picked-name", called, style="strong", middle=True),
        _weight(view, mass_kg, say("weight of {name}", name=called)),
        Button(COPY, say("One more"), kind="quiet"),
        Button(MIRROR, say("Mirror it"), kind="quiet"),
        Button(MORE, say("Back"), kind="quiet"),
    )


def _of_weight(view: MobileView, *, more: bool) -> tuple[Widget, ...]:
    hangs, number, say = hangs_at(view.picked, view), thing_of(view.picked), view.look.words.say
    beam = None if hangs is None else view.bench.beam(hangs[0])
    weight = None if beam is None or number is None else beam.weight(number)
    if beam is None or weight is None:
        return ()
    if more:
        return _more(view, weight.name, weight.mass_kg)
    name = view.look.words.content(weight.name)
    place = _place(view, PLACE, say("place of {name}", name=name), weight.at_m, (0.0, beam.length_m))
    return Label("picked-name", name, style="strong", middle=True), place, *_buttons(view)


def _place(view: MobileView, key: str, name: str, at_m: float, span_m: tuple[float, float]) -> NumberField:
    units, fineness = view.readings.units, view.readings.fineness
    low, high = (round(units.from_m(end), 9) for end in span_m)
    value = min(max(units.from_m(at_m), low), high)
    return NumberField(key, name, value, units.length_word, low, high, fineness.step, fineness.length, show_name=False)


def _weight(view: MobileView, mass_kg: float, name: str) -> NumberField:
    units, decimals = view.readings.units, view.readings.fineness.weight
    value, step = units.from_kg(mass_kg), 5.0 * 10.0**-decimals
    low, high = min(value, step), max(value, round(units.from_kg(MOST_KG), 9))
    return NumberField(WEIGHT_FIELD, name, value, units.weight_word, low, high, step, decimals, show_name=False)
