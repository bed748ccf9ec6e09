"""The dialog behind *Benches*: one tile for each bench, with what one does there."""

from __future__ import annotations

from lab.simulation.benches.catalogue import BENCHES, BenchKind
from lab.ui.look import Look
from lab.ui.widgets.arrange import Column, Row
from lab.ui.widgets.button import Button
from lab.ui.widgets.dialog import Dialog
from lab.ui.widgets.label import Label
from lab.ui.widgets.widget import Widget

BENCHES_DIALOG, BENCHES_DONE = "benches-dialog", "benches-done"
BENCH_PREFIX = "bench-"


def benches_dialog(look: Look, now: BenchKind) -> Dialog:
    """now: the bench that is shown."""
    say = look.words.say
    rows = tuple(_row(look, kind, here=kind is now) for kind in BENCHES.values())
    done = Button(BENCHES_DONE, say("Stay here"), kind="main")
    return Dialog(BENCHES_DIALOG, say("Where to build"), children=(Column(rows),), buttons=(done,), width=620.0)


def bench_chosen(key: str) -> str | None:
    """The bench that a press asks for; None for any other key."""
    name = key.removeprefix(BENCH_PREFIX)
    return name if key.startswith(BENCH_PREFIX) and name in BENCHES else None


def _row(look: Look, kind: BenchKind, *, here: bool) -> Widget:
    say = look.words.say
    button = Button(f"{BENCH_PREFIX}{kind.name}", say(kind.title), selected=here)
    return Row((button, Label(f"{kind.name}.note", say(kind.note), middle=True)), weights=(1.0, 1.0), gap=16)
