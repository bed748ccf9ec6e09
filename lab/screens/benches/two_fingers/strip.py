"""The strip for what is picked: place, weight, how a finger grips; or what is to be put where."""

from __future__ import annotations

from lab.scenes.two_fingers.view import FINGER_KEYS, MEETING, REFERENCE, TwoFingersView
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
    tie_button,
    tie_line,
)
from lab.screens.benches.strip_keys import MORE, WEIGHT_FIELD
from lab.screens.benches.two_fingers.keys import CANCEL, FORGET, GRIP, KINETIC, STATIC
from lab.screens.benches.two_fingers.moves import piece_of
from lab.screens.benches.two_fingers.typed import GRIPS
from lab.simulation.benches.groups import in_group
from lab.simulation.benches.two_fingers_edits import LEAST_FRICTION, MOST_FRICTION
from lab.ui.widgets.button import Button
from lab.ui.widgets.choice import ChoiceRow
from lab.ui.widgets.number_field import NumberField
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.widget import Widget

LEAST_KG, MOST_KG = 0.001, 5.0


def strip(view: TwoFingersView, parts: PartStrip, *, armed: bool = False) -> Panel | None:
    """The strip for what is picked, or for a weight taken up from the tray; None where there is neither.

    parts: what is half done with what is picked.
    """
    say = view.look.words.say
    if armed:
        text = say("Tap the place where it should stand.")
        children = armed_line(view.look, "stand-where", text, cancel=CANCEL)
    else:
        children = _picked(view, parts)
    return strip_panel(fitted(view.look, children)) if children else None


def _picked(view: TwoFingersView, parts: PartStrip) -> tuple[Widget, ...]:
    say, bench = view.look.words.say, view.bench
    if view.picked in FINGER_KEYS:
        number = FINGER_KEYS.index(view.picked)
        return _grip_of(view, number) if parts.more and view.numbers else _of_finger(view, number)
    if view.picked == REFERENCE and view.told:
        return (
            named(say("reference line")),
            length_field(view.readings, say("place of the reference line"), bench.reference_m, bench.rail_m),
        )
    if view.picked == MEETING and bench.meeting_guess_m is not None:
        return (
            named(say("they will meet at")),
            length_field(view.readings, say("where they will meet"), bench.meeting_guess_m, bench.span_m),
            Button(FORGET, say("Take it back"), kind="quiet"),
        )
    return _of_piece(view, parts)


def _of_finger(view: TwoFingersView, number: int) -> tuple[Widget, ...]:
    """Where it is, dry or soapy."""
    say, bench, name = view.look.words.say, view.bench, _finger_name(view, number)
    options = (("dry", say("dry")), ("soapy", say("soapy")))
    grip = bench.right if number else bench.left
    known = next((name for name, friction in GRIPS.items() if friction == grip), None)
    children = (
        named(name),
        length_field(view.readings, say("place of the {finger}", finger=name), bench.places_m[number], bench.rail_m),
        ChoiceRow(GRIP, say("How it grips"), options, known, show_name=False),
    )
    return (*children, Button(MORE, say("More"), kind="quiet")) if view.numbers else children


def _grip_of(view: TwoFingersView, number: int) -> tuple[Widget, ...]:
    """The two frictions of a finger, as numbers."""
    say, grip = view.look.words.say, view.bench.right if number else view.bench.left
    pairs = ((STATIC, say("sticks by"), grip.static), (KINETIC, say("slides by"), grip.kinetic))
    fields = (
        NumberField(key, text, round(value, 9), "", LEAST_FRICTION, MOST_FRICTION, 0.05, 2)
        for key, text, value in pairs
    )
    return named(_finger_name(view, number)), *fields, Button(MORE, say("Back"), kind="quiet")


def _finger_name(view: TwoFingersView, number: int) -> str:
    say = view.look.words.say
    return say("right finger") if number else say("left finger")


def _of_piece(view: TwoFingersView, parts: PartStrip) -> tuple[Widget, ...]:
    say, piece = view.look.words.say, piece_of(view, view.picked)
    if piece is None:
        return ()
    name = view.look.words.content(in_group(piece.part.name))
    if parts.tying:
        return tie_line(view.look, piece.part.name)
    if parts.more:
        return (
            name_field(view.look, piece.part.name, parts.naming.draft),
            _weight(view, piece.part.mass_kg, say("weight of {name}", name=name)),
            tie_button(view.look, piece.part.name),
            *copies_and_back(view.look),
        )
    return (
        named(name),
        length_field(view.readings, say("place of {name}", name=name), piece.part.at_m[0], view.bench.beam_m),
        *more_and_remove(view.look),
    )


def _weight(view: TwoFingersView, mass_kg: float, name: str) -> NumberField:
    units, decimals = view.readings.units, view.readings.fineness.weight
    low, high = (round(units.from_kg(end), 9) for end in (LEAST_KG, MOST_KG))
    value = min(max(units.from_kg(mass_kg), low), high)
    step = 5.0 * 10.0**-decimals
    return NumberField(WEIGHT_FIELD, name, value, units.weight_word, low, high, step, decimals, show_name=False)
