"""The bar at the top of every screen: back, where one is, undo and redo, units, how it looks, help."""

from __future__ import annotations

from lab.files import UnitSystem
from lab.ui.look import Look
from lab.ui.widgets.button import Button
from lab.ui.widgets.headers import header
from lab.ui.widgets.panel import Panel
from lab.ui.widgets.widget import Widget

BACK, UNDO, REDO, BENCHES, BUILDS, UNITS, LOOKS, SOUND, HELP = (
    "back", "undo", "redo", "benches", "builds", "units", "looks", "sound", "help",
)  # fmt: skip
"""Keys of its buttons; each reports `Pressed(key)`."""

UNIT_ORDER = ("g-cm", "kg-m", "N-m", "lb-in")


def top_bar(
    look: Look,
    *,
    title: str,
    trail: str = "",
    back: bool = True,
    changes: tuple[bool, bool] | None = None,
    benches: bool = False,
    builds: bool = False,
    units: UnitSystem | None = None,
    sound: bool | None = None,
    help_there: bool = True,
) -> Panel:
    """The bar as a widget.

    title, trail: where one is and where one came from, in the listener's words.  changes: whether there is
    something to undo and to redo; None for a screen without.  benches: whether there are others to go to.
    builds: whether builds can be saved and opened.
    units: those in force; None where there are none.  sound: whether it is on; None where there is no sound.
    """
    say = look.words.say
    buttons: list[Widget] = []
    if changes is not None:
        buttons += [
            Button(UNDO, say("Undo"), kind="quiet", icon="undo", icon_only=True, enabled=changes[0]),
            Button(REDO, say("Do again"), kind="quiet", icon="redo", icon_only=True, enabled=changes[1]),
        ]
    if benches:
        buttons.append(Button(BENCHES, say("Benches"), kind="quiet"))
    if builds:
        buttons.append(Button(BUILDS, say("Builds"), kind="quiet"))
    if units is not None:
        buttons.append(Button(UNITS, units.moment_word.replace("·", " · "), kind="quiet"))
    buttons.append(Button(LOOKS, say("Aa"), kind="quiet"))
    if sound is not None:
        buttons.append(Button(SOUND, say("Sound on") if sound else say("Sound off"), kind="quiet"))
    if help_there:
        buttons.append(Button(HELP, say("?"), kind="quiet"))
    short_of_room = look.sizes.text_scale > 1.2 or look.sizes.portrait
    return header(
        look,
        title=title,
        trail="" if short_of_room else trail,
        actions=tuple(buttons),
        back=BACK if back else "",
    )


def next_units(now: str) -> str:
    """The name of the unit system that the units button changes to."""
    place = UNIT_ORDER.index(now) if now in UNIT_ORDER else -1
    return UNIT_ORDER[(place + 1) % len(UNIT_ORDER)]
