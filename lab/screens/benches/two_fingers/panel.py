"""The panel beside the two fingers: moment table, guess, the one action, what happened, the tray, the view."""

from __future__ import annotations

from lab.scenes.rows import HIGH, NECK
from lab.scenes.two_fingers.view import TwoFingersView
from lab.scenes.weights import brass_rect, draw_brass
from lab.screens.benches.doubts import doubt_switch
from lab.screens.benches.panel import GUESS, HOLD, LET_GO, SHOW_END, PanelParts, view_choice
from lab.screens.benches.sides import SIDES
from lab.screens.benches.sums import balance_panel, moment_table
from lab.screens.benches.told import told, waiting
from lab.screens.benches.two_fingers.keys import STOP, TRAY, TRAY_KG, tray_key
from lab.screens.benches.two_fingers.words import (
    BEYOND,
    CHOICES,
    GOING,
    MEET,
    STOPPED,
    TIPPING,
    TIPS,
    WHICH,
    WHY_TIPS,
    YOU_SAID,
    first_against_guess,
    meeting_against_guess,
    why_they_meet,
)
from lab.simulation.benches.two_fingers import Tipping, TwoFingers
from lab.ui.canvas import Canvas
from lab.ui.geometry import Rect
from lab.ui.widgets.arrange import Row
from lab.ui.widgets.button import Button
from lab.ui.widgets.choice import ChoiceRow
from lab.ui.widgets.tray import Tray, TrayItem
from lab.ui.widgets.widget import Widget


def panel_parts(view: TwoFingersView, *, armed: str) -> PanelParts:
    """All pieces.  armed: key of the tray item that was taken up."""
    bench = view.bench
    doubt = doubt_switch(view.look, bench.parts)
    return PanelParts(
        sums=_sums(view) if view.told else (),
        result=(_quotient(view),) if view.told else (),
        action=_action(view) if bench.held else _after(view),
        # While they slide nothing is added: the room is for what happens.
        tray=(_tray(view, armed),) if bench.held else (),
        view=(view_choice(view.look, bench.view, doubt=doubt),),
    )


def _sums(view: TwoFingersView) -> tuple[Widget, ...]:
    """The moment table; a row picks its piece."""
    bench = view.bench
    keys = [*(["bar"] if bench.bar is not None else []), *(f"piece-{piece.id}" for piece in bench.pieces)]
    return moment_table(view.look, view.readings, bench.sum, keys, picked=view.picked)


def _quotient(view: TwoFingersView) -> Widget:
    """Sum of moments ÷ sum of weights, and the balance point that it gives."""
    return balance_panel(view.look, view.readings, view.bench.sum, view.bench.parts)


def _action(view: TwoFingersView) -> tuple[Widget, ...]:
    """Held: the guess and *Slide them in*."""
    look, say = view.look, view.look.words.say
    order = tuple(reversed(SIDES)) if look.sizes.mirrored else SIDES
    options = tuple((side, say(CHOICES[side])) for side in order)
    return ChoiceRow(GUESS, say(WHICH), options, view.bench.guess), Button(LET_GO, say("Slide them in"), kind="main")


def _after(view: TwoFingersView) -> tuple[Widget, ...]:
    """Let go: what happens, then what happened and why. The button below stays where it is."""
    words, bench = view.look.words, view.bench
    if not bench.moving and not bench.stopped:
        return _told(view, bench), Button(HOLD, words.say("Put them back apart"), kind="main")
    going = GOING if bench.tipping is None else TIPPING
    happens = words.say(STOPPED if bench.stopped else going)
    said = words.say(YOU_SAID[bench.guess]) if bench.guess else ""
    end = bench.released().at_end() if bench.stopped else bench.at_end()
    back = Button(HOLD, words.say("Put them back apart"), kind="main")
    return waiting(view.look, happens, said, _told(view, end), _hands(view)), back


def _hands(view: TwoFingersView) -> Widget:
    """Stop or go on, and to the end at once."""
    say, bench = view.look.words.say, view.bench
    end = Button(SHOW_END, say("Show the end"), kind="quiet")
    if bench.tipping is not None:
        return end
    return Row((Button(LET_GO, say("Slide on")) if bench.stopped else Button(STOP, say("Stop")), end), gap=12)


def _told(view: TwoFingersView, bench: TwoFingers) -> Widget:
    """What happened and why, of fingers that have met or a body that tipped off."""
    words = view.look.words
    if bench.tipping is not None:
        return _told_of_tipping(view, bench.tipping)
    outcome = bench.outcome or "level"
    compared = first_against_guess(words, bench.guess, outcome), meeting_against_guess(words, bench, view.readings)
    return told(words.say(MEET), compared=compared, reasons=why_they_meet(words, bench, view), settled=True)


def _told_of_tipping(view: TwoFingersView, tipping: Tipping) -> Widget:
    words = view.look.words
    reasons = [words.say(WHY_TIPS[tipping.over])]
    if view.numbers:
        distance = view.readings.length_with_unit(tipping.beyond_m)
        reasons.append(words.say(BEYOND[tipping.over], distance=distance))
    return told(words.say(TIPS[tipping.over]), reasons=reasons, settled=False)


def _tray(view: TwoFingersView, armed: str) -> Tray:
    say = view.look.words.say
    items = tuple(_tray_item(view, mass_kg, picked=tray_key(mass_kg) == armed) for mass_kg in TRAY_KG)
    return Tray(TRAY, say("Add"), say("drag, or tap it and tap the place"), items)


def _tray_item(view: TwoFingersView, mass_kg: float, *, picked: bool) -> TrayItem:
    def draw(canvas: Canvas, rect: Rect) -> None:
        # The heaviest fills the tile; the others keep their true size beside it.
        full = min(rect.w * 0.86, rect.h / (NECK + HIGH) * 0.94)
        side = full * float((mass_kg / TRAY_KG[-1]) ** (1 / 3))
        top = (rect.center[0], rect.bottom - side * (NECK + HIGH) - 1)
        draw_brass(canvas, view.look, brass_rect(top, side), "")

    return TrayItem(tray_key(mass_kg), view.readings.weight_with_unit(mass_kg), draw, picked=picked)
