"""The states of the two fingers that are looked over: every one a picture of free build."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from functools import partial

from lab.files import read_build
from lab.outline.words import msg
from lab.screens.benches.gallery_parts import after, pressed_entry, state_entries
from lab.screens.benches.tasks import TASK
from lab.screens.gallery_parts import Entry
from lab.simulation import Guess, Hang, LetGo
from lab.simulation.benches.two_fingers import TwoFingers
from lab.simulation.benches.two_fingers_builds import two_fingers_from_build, workshop_pole
from lab.simulation.commands import Measure
from lab.simulation.part_commands import Tie
from lab.simulation.two_finger_commands import GuessMeeting, MoveFingers, SetFriction, StopFingers
from lab.ui.assets import asset_folder

CROWDED = (
    Hang(0.5, 0.31), Hang(0.05, 0.33), Hang(0.2, 0.72), Hang(0.1, 0.0), Hang(0.5, 1.0), Hang(0.1, 0.52),
)  # fmt: skip
"""Weights upon one another, and at both ends."""


def entries() -> Iterator[tuple[str, Entry]]:
    """Name and entry of each state."""
    yield "build-fingers-task", pressed_entry(msg("a task that it has set"), workshop_pole, TASK)
    yield from state_entries("fingers", STATES)
    for name, keys, view, says in PRESSED:
        yield f"build-fingers-{name}", pressed_entry(says, partial(_in, view), *keys)


def _in(view: str) -> TwoFingers:
    bench = workshop_pole()
    return replace(bench, view="numbers") if view == "numbers" else bench


def numbered() -> TwoFingers:
    """The starting pole, figures shown."""
    return _in("numbers")


def everything() -> TwoFingers:
    """The starting pole, all shown."""
    return replace(workshop_pole(), view="all")


def tool(name: str) -> TwoFingers:
    """One of the tools that ship."""
    return two_fingers_from_build(read_build(asset_folder() / "builds" / f"{name}.toml"))


SAID = (Guess("left"), GuessMeeting(0.5))
SOAPED = (SetFriction("left", 0.2, 0.12),)
END = LetGo(at_once=True)
STATES: Mapping[str, tuple[str, Callable[[], TwoFingers]]] = {
    "held": (msg("two fingers, a body held over them"), workshop_pole),
    "said": (msg("two fingers, guesses given"), lambda: after(workshop_pole(), *SAID)),
    "sliding": (msg("two fingers on their way"), lambda: after(workshop_pole(), *SAID, LetGo(), ticks=520)),
    "plain-met": (msg("two fingers that have met, in words"), lambda: after(workshop_pole(), *SAID, END)),
    "numbers-sliding": (msg("two fingers on their way, in figures"), lambda: after(numbered(), LetGo(), ticks=700)),
    "met": (msg("two fingers that have met"), lambda: after(numbered(), *SAID, END)),
    "soapy": (msg("a soapy finger and a dry one"), lambda: after(numbered(), *SOAPED, LetGo(), ticks=800)),
    "soapy-met": (msg("a soapy finger and a dry one that have met"), lambda: after(numbered(), *SOAPED, END)),
    "stopped": (
        msg("two fingers stopped on their way"),
        lambda: after(after(numbered(), Guess("right"), LetGo(), ticks=500), StopFingers()),
    ),
    "all": (msg("two fingers, every number shown"), lambda: replace(everything(), reference_m=0.2)),
    "all-met": (msg("two fingers that have met, every number shown"), lambda: after(everything(), *SAID, END)),
    "doubt": (msg("two fingers, doubtful weights"), lambda: after(everything(), Measure(0.001, 0.001), END)),
    "tipping": (
        msg("a body that tips off a finger"),
        lambda: after(numbered(), MoveFingers(0.55, 0.9), LetGo(), ticks=45),
    ),
    "tipped": (msg("a body that has tipped off"), lambda: after(numbered(), MoveFingers(0.55, 0.9), END)),
    "crowded": (msg("two fingers under many weights"), lambda: after(everything(), *CROWDED)),
    "tied": (msg("two fingers under weights that are tied together"), lambda: after(numbered(), Tie(1, 2))),
    "oar": (msg("two fingers under an oar"), lambda: tool("oar")),
    "oar-met": (
        msg("two fingers that have met under an oar"),
        lambda: after(replace(tool("oar"), view="numbers"), END),
    ),
    "net": (msg("two fingers under a landing net"), lambda: after(tool("landing-net"), LetGo(), ticks=600)),
}
"""What is shown, by name."""

PRESSED = (
    ("finger-picked", ("finger-left",), "plain", msg("a finger picked")),
    ("finger-in-figures", ("finger-right",), "numbers", msg("a finger picked, in figures")),
    ("frictions", ("finger-right", "picked-more"), "numbers", msg("a finger picked, its frictions shown")),
    ("weight-picked", ("piece-1",), "plain", msg("a weight picked")),
    ("weight-more", ("piece-1", "picked-more"), "plain", msg("a weight picked, to be copied")),
    ("taken-up", ("tray-200",), "plain", msg("a weight taken up")),
    ("help", ("help",), "plain", msg("what to do here")),
)
"""Name, keys that are pressed, the view, and what is then shown."""
