"""The strip for what is picked: place, weight, how a finger grips; or what is to be put where."""

from __future__ import annotations

from lab.scenes.two_fingers.view import FINGER_KEYS, MEETING, REFERENCE, TwoFingersView
from lab.screens.benches.two_fingers.keys import (
    CANCEL,
    COPY,
    FORGET,
    GRIP,
    KINETIC,
    MIRROR,
    MORE,
    PLACE,
    REMOVE,
    STATIC,
    STRIP,
    WEIGHT_FIELD,
)
from lab.screens.benches.two_fingers.moves import piece_of
from lab.screens.benches.two_fingers.typed import GRIPS
from lab.simulation.benches.two_fingers_edits import LEAST_FRICTION, MOST_FRICTION
from lab.ui.widgets.arrange import Row
from lab.ui.widgets.button import Button
from lab.ui.widgets.choice import ChoiceRow
from lab.ui.widgets.label import Label
from lab.ui.widgets.number_field import NumberField
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.widget import Widget

LEAST_KG, MOST_KG = 0.001, 5.0


def strip(view: TwoFingersView, *, armed: bool = False, more: bool = False) -> Panel | None:
    """The strip for what is picked, or for a weight taken up from the tray; None where there is neither.

    more: what is less often wanted.
    """
    say = view.look.words.say
    if armed:
        text = say("Tap the place where it should stand.")
        children: tuple[Widget, ...] = (
            Label("stand-where", text, style="body", middle=True),
            Button(CANCEL, say("Put it back")),
        )
    else:
        children = _picked(view, more=more)
    if not children:
        return None
    weights = (1.0,) + (0.0,) * (len(children) - 1)
    row = Row(children, weights=weights, gap=12, align="middle")
    return Panel(STRIP, children=(row,), pad=10, outline=True, round=True)


def _picked(view: TwoFingersView, *, more: bool) -> tuple[Widget, ...]:
    say, bench = view.look.words.say, view.bench
    if view.picked in FINGER_KEYS:
        number = FINGER_KEYS.index(view.picked)
        return _grip_of(view, number) if more and view.numbers else _of_finger(view, number)
    if view.picked == REFERENCE and view.told:
        return (
            _name(say("reference line")),
            _place(view, bench.reference_m, bench.rail_m, say("place of the reference line")),
        )
    if view.picked == MEETING and bench.meeting_guess_m is not None:
        return (
            _name(say("they will meet at")),
            _place(view, bench.meeting_guess_m, bench.span_m, say("where they will meet")),
            Button(FORGET, say("Take it back"), kind="quiet"),
        )
    return _of_piece(view, more=more)


def _of_finger(view: TwoFingersView, number: int) -> tuple[Widget, ...]:
    """Where it is, dry or soapy."""
    say, bench, name = view.look.words.say, view.bench, _finger_name(view, number)
    options = (("dry", say("dry")), ("soapy", say("soapy")))
    grip = bench.right if number else bench.left
    known = next((name for name, friction in GRIPS.items() if friction == grip), None)
    children = (
        _name(name),
        _place(view, bench.places_m[number], bench.rail_m, say("place of the {finger}", finger=name)),
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
    return _name(_finger_name(view, number)), *fields, Button(MORE, say("Back"), kind="quiet")


def _finger_name(view: TwoFingersView, number: int) -> str:
    say = view.look.words.say
    return say("right finger") if number else say("left finger")


def _of_piece(view: TwoFingersView, *, more: bool) -> tuple[Widget, ...]:
    say, piece = view.look.words.say, piece_of(view, view.picked)
    if piece is None:
        return ()
    name = view.look.words.content(piece.part.name)
    if more:
        return (
            _name(name),
            _weight(view, piece.part.mass_kg, say("weight of {name}", name=name)),
            Button(COPY, say("One more"), kind="quiet"),
            Button(MIRROR, say("Mirror it"), kind="quiet"),
            Button(MORE, say("Back"), kind="quiet"),
        )
    return (
        _name(name),
        _place(view, piece.part.at_m[0], view.bench.beam_m, say("place of {name}", name=name)),
        Button(MORE, say("More"), kind="quiet"),
        Button(REMOVE, say("Remove"), kind="quiet"),
    )


def _name(text: str) -> Widget:
    return Label("picked-name", text, style="strong", middle=True)


def _place(view: TwoFingersView, at_m: float, span_m: tuple[float, float], name: str) -> NumberField:
    units, fineness = view.readings.units, view.readings.fineness
    low, high = (round(units.from_m(end), 9) for end in span_m)
    value = min(max(units.from_m(at_m), low), high)
    return NumberField(
        PLACE, name, value, units.length_word, low, high, fineness.step, fineness.length, show_name=False
    )


def _weight(view: TwoFingersView, mass_kg: float, name: str) -> NumberField:
    units, decimals = view.readings.units, view.readings.fineness.weight
    low, high = (round(units.from_kg(end), 9) for end in (LEAST_KG, MOST_KG))
    value = min(max(units.from_kg(mass_kg), low), high)
    step = 5.0 * 10.0**-decimals
    return NumberField(WEIGHT_FIELD, name, value, units.weight_word, low, high, step, decimals, show_name=False)
