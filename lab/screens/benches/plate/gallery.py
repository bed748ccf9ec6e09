"""The states of the hung plate that are looked over: every one a picture of free build."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace

from lab.outline.words import msg
from lab.screens.benches.gallery_parts import after, pressed_entry, state_entries
from lab.screens.benches.strip_keys import MORE, TIE
from lab.screens.benches.tasks import TASK
from lab.screens.gallery_parts import Entry
from lab.simulation import LetGo
from lab.simulation.benches import HungPlate
from lab.simulation.benches.plate_builds import BLANKS, workshop_plate
from lab.simulation.part_commands import Tie
from lab.simulation.plate_commands import ClipOn, CutHole, DrawPlumbLine, MovePin


def entries() -> Iterator[tuple[str, Entry]]:
    """Name and entry of each state."""
    yield "build-plate-task", pressed_entry(msg("a task that it has set"), workshop_plate, TASK)
    yield from state_entries("plate", STATES)
    for name, key, says in PRESSED:
        yield f"build-plate-{name}", pressed_entry(says, loaded, key)
    yield "build-plate-clip-more", pressed_entry(msg("what else can be done to a weight"), loaded, "clip-1", MORE)
    yield "build-plate-tying", pressed_entry(msg("a weight to be tied to another"), loaded, "clip-1", MORE, TIE)
    yield "build-plate-tied", pressed_entry(msg("two weights tied together"), tied, "clip-1", MORE)


def swinging() -> HungPlate:
    """A second or so after it was let go."""
    bench = workshop_plate(view="numbers").released()
    for _ in range(60):
        bench = bench.ticked()
    return bench


def crossed(name: str = "corner") -> HungPlate:
    """Hung by two pins, with the line of each drawn."""
    bench = replace(BLANKS[name], view="numbers", guess="right")
    far = min(bench.outline_m, key=lambda corner: (corner[1] - corner[0], corner[1]))
    pin = far[0] - 0.02, far[1] + 0.02
    end = LetGo(at_once=True)
    return after(bench, end, DrawPlumbLine(), MovePin(*pin), end, DrawPlumbLine())


def loaded() -> HungPlate:
    """A plate with a window, one more hole and two weights."""
    window = replace(BLANKS["window"], view="all")
    return after(window, CutHole(0.07, 0.08, 0.03), ClipOn(0.05, 0.23, 0.30), ClipOn(0.02, 0.20, 0.04))


def tied() -> HungPlate:
    """The two weights tied together."""
    return after(loaded(), Tie(1, 2))


STATES: Mapping[str, tuple[str, Callable[[], HungPlate]]] = {
    "held": (msg("a plate, held"), workshop_plate),
    "all": (msg("a plate with window, hole and weights, every number shown"), loaded),
    "swinging": (msg("a plate on its way"), swinging),
    "settled": (msg("a plate that hangs still"), lambda: workshop_plate().released().at_end()),
    "one-line": (
        msg("a plate with one plumb line"),
        lambda: after(replace(BLANKS["crescent"], view="numbers"), LetGo(at_once=True), DrawPlumbLine()),
    ),
    "crossed": (msg("a plate with two plumb lines"), crossed),
    "in-air": (msg("a crescent whose lines cross in the air"), lambda: crossed("crescent")),
    "crossed-held": (msg("two plumb lines, held again"), lambda: crossed().stilled()),
}
"""What is shown, by name."""

PRESSED = (
    ("hole-picked", "hole-2", msg("a hole picked")),
    ("corner-picked", "corner-0-2", msg("a corner picked")),
    ("pin-picked", "pin", msg("the pin picked")),
    ("clip-picked", "clip-1", msg("a weight picked")),
    ("taken-up", "tray-20", msg("a weight taken up")),
    ("sheet", "sheet", msg("outlines to begin with, and sheets")),
    ("help", "help", msg("what to do here")),
)
"""Name, key that is pressed, and what is then shown."""
