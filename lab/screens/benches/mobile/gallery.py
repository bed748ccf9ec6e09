"""The states of the mobile that are looked over: every one a picture of free build."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace

from lab.outline.words import msg
from lab.screens.benches.gallery_parts import after, pressed_entry, state_entries
from lab.screens.benches.mobile.keys import SHELF
from lab.screens.benches.strip_keys import MORE
from lab.screens.benches.tasks import TASK
from lab.screens.gallery_parts import Entry
from lab.simulation import LetGo
from lab.simulation.benches import Mobile
from lab.simulation.benches.mobile_builds import workshop_mobile
from lab.simulation.commands import Measure
from lab.simulation.mobile_commands import HangBar, HangOn, Rehang

LOOSE = (
    HangOn(2, 0.19, 0.15, look="tin", name="tin"), HangOn(3, 0.14, 0.14, look="bead", name="beads"),
    HangOn(1, 0.06, 0.15, look="rod", name="rod"), HangOn(1, 0.08, 0.38, look="plate", name="plate"),
)  # fmt: skip
"""One of everything that lies on the other shelf of the tray."""

LEVEL = (Rehang(6, 2, 0.21), Rehang(4, 1, 0.16))
"""What balances the starting mobile."""

DEEPER = (
    Rehang(3, 2, 0.31), HangBar(3, 0.26, 0.02, 0.05), HangBar(9, 0.22, 0.015, 0.21), HangBar(10, 0.2, 0.015, 0.04),
    HangOn(11, 0.02, 0.02, look="gull", name="gull 3"), HangOn(11, 0.05, 0.18), HangOn(10, 0.04, 0.2, look="float"),
    HangOn(9, 0.05, 0.02),
)  # fmt: skip
"""As many levels as there may be."""

CROWDED = (
    HangBar(1, 0.36, 0.03, 0.32), HangBar(2, 0.2, 0.015, 0.30), HangBar(2, 0.2, 0.015, 0.12),
    HangBar(3, 0.2, 0.015, 0.1),
    HangBar(9, 0.2, 0.015, 0.02), HangBar(9, 0.2, 0.015, 0.33), HangOn(10, 0.02, 0.02), HangOn(10, 0.2, 0.03),
    HangOn(11, 0.03, 0.18, look="gull"), HangOn(12, 0.04, 0.1, look="float"), HangOn(13, 0.05, 0.01),
    HangOn(14, 0.5, 0.2), HangOn(1, 0.03, 0.58, look="gull"), HangOn(1, 0.05, 0.59), HangOn(1, 0.05, 0.6),
)  # fmt: skip
"""Bars that hang wider than they stand apart, and weights upon one another."""


def entries() -> Iterator[tuple[str, Entry]]:
    """Name and entry of each state."""
    yield "build-mobile-task", pressed_entry(msg("a task that it has set"), workshop_mobile, TASK)
    yield from state_entries("mobile", STATES)
    for name, key, says in PRESSED:
        yield f"build-mobile-{name}", pressed_entry(says, workshop_mobile, key)
    more = msg("what else can be done to a bar that is picked")
    yield "build-mobile-more", pressed_entry(more, workshop_mobile, "bar-2", MORE)
    yield "build-mobile-shelf", pressed_entry(msg("tins and beads to hang"), loose, f"{SHELF}.more")
    yield "build-mobile-tin-picked", pressed_entry(msg("a tin picked"), loose, "weight-9")
    yield "build-mobile-tin-more", pressed_entry(msg("what else can be done to a tin"), loose, "weight-9", MORE)
    yield "build-mobile-beads-picked", pressed_entry(msg("beads picked"), loose, "weight-10")


def loose() -> Mobile:
    """Tin, beads, rod and plate hung too."""
    return after(workshop_mobile(), *LOOSE)


def swinging() -> Mobile:
    """Half a second after it was let go."""
    bench = replace(workshop_mobile(), view="numbers", guess="left").released()
    for _ in range(100):
        bench = bench.ticked()
    return bench


STATES: Mapping[str, tuple[str, Callable[[], Mobile]]] = {
    "held": (msg("a mobile, held"), workshop_mobile),
    "all": (msg("a mobile, every number shown"), lambda: replace(workshop_mobile(), view="all", reference_m=0.1)),
    "swinging": (msg("a mobile on its way"), swinging),
    "plain-settled": (msg("a mobile at rest, in words"), lambda: workshop_mobile().released().at_end()),
    "settled": (
        msg("a mobile at rest, askew"),
        lambda: after(replace(workshop_mobile(), view="numbers", guess="level"), LetGo(at_once=True)),
    ),
    "level": (
        msg("a mobile that is level"),
        lambda: after(replace(workshop_mobile(), view="numbers"), *LEVEL, LetGo(at_once=True)),
    ),
    "doubt": (
        msg("a mobile whose weights are doubtful"),
        lambda: after(replace(workshop_mobile(), view="all"), Measure(0.001, 0.001)),
    ),
    "deep": (msg("a mobile of six levels"), lambda: after(replace(workshop_mobile(), view="numbers"), *DEEPER)),
    "deep-settled": (
        msg("a mobile of six levels, let go"),
        lambda: after(replace(workshop_mobile(), view="numbers"), *DEEPER, LetGo(at_once=True)),
    ),
    "crowded": (msg("a crowded mobile"), lambda: after(replace(workshop_mobile(), view="all"), *CROWDED)),
}
"""What is shown, by name."""

PRESSED = (
    ("bar-picked", "bar-2", msg("a bar picked")),
    ("weight-picked", "weight-6", msg("a weight picked")),
    ("hook-picked", "hook-2", msg("the hook of a bar picked")),
    ("taken-up", "tray-float", msg("a float taken up")),
    ("bar-taken-up", "tray-bar-20", msg("a bar taken up")),
    ("help", "help", msg("what to do here")),
)
"""Name, key that is pressed, and what is then shown."""
