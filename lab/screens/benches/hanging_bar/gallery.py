"""The states of the hanging bar with other parts than brass: every one a picture of free build."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from lab.outline.words import msg
from lab.screens.benches.gallery_parts import after, pressed_entry
from lab.screens.benches.strip_keys import MORE, TIE
from lab.screens.benches.tasks import TASK
from lab.screens.gallery_parts import Entry
from lab.simulation import HangingBar, LetGo
from lab.simulation.benches.bar_builds import empty_bar, workshop_bar
from lab.simulation.benches.bar_parts import filled_kg, strung_kg
from lab.simulation.part_commands import Reweigh, Tie
from lab.simulation.tool_commands import FitPart


def entries() -> Iterator[tuple[str, Entry]]:
    """Name and entry of each state."""
    yield "build-bar-task", pressed_entry(msg("a task that it has set"), workshop_bar, TASK)
    yield "build-bar-parts", pressed_entry(msg("tins, beads, a rod and a plate on the bar"), furnished)
    yield (
        "build-bar-parts-all",
        pressed_entry(msg("the same with all numbers"), lambda: replace(furnished(), view="all")),
    )
    yield "build-bar-parts-settled", pressed_entry(msg("the same, let go"), settled)
    yield "build-bar-tin", pressed_entry(msg("a tin picked"), furnished, "weight-1")
    yield "build-bar-tin-more", pressed_entry(msg("a tin renamed"), furnished, "weight-1", "picked-more")
    yield "build-bar-tied", pressed_entry(msg("three of them tied together"), tied, "weight-2", MORE)
    yield "build-bar-tying", pressed_entry(msg("one to be tied to another"), furnished, "weight-2", MORE, TIE)
    yield "build-bar-beads", pressed_entry(msg("beads picked"), furnished, "weight-2")
    yield "build-bar-rod", pressed_entry(msg("a rod picked"), furnished, "weight-3")
    for shelf in ("tins", "beads", "more"):
        yield f"build-bar-shelf-{shelf}", pressed_entry(msg("a shelf of the tray"), furnished, f"shelf.{shelf}")
    yield "build-bar-rod-taken-up", pressed_entry(msg("a rod taken up"), empty_bar, "shelf.more", "tray-rod")


def furnished() -> HangingBar:
    """One of each: a tin of 250 mL, three beads, a rod, a plate."""
    return after(
        empty_bar(), FitPart("tin", 0.2), FitPart("beads", 0.36), FitPart("rod", 0.62), FitPart("plate", 0.86),
        Reweigh(1, filled_kg(250.0)), Reweigh(2, strung_kg(3)),
    )  # fmt: skip


def tied() -> HangingBar:
    """The beads, the rod and the plate tied together."""
    return after(furnished(), Tie(2, 3), Tie(4, 3))


def settled() -> HangingBar:
    """At rest on its stop."""
    return after(furnished(), LetGo(at_once=True))
