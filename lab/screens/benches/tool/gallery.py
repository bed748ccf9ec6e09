"""The states of the tool that are looked over: every one a picture of free build."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace

from lab.outline.words import msg
from lab.screens.benches.gallery_parts import after, pressed_entry, state_entries
from lab.screens.benches.strip_keys import MORE, TIE
from lab.screens.benches.tasks import TASK
from lab.screens.gallery_parts import Entry
from lab.simulation import Guess, Hang, LetGo, MoveFinger, MoveReference
from lab.simulation.benches.tool import BuiltTool
from lab.simulation.benches.tool_builds import workshop_tool
from lab.simulation.commands import Measure
from lab.simulation.part_commands import Tie
from lab.simulation.tool_commands import FitPart


def entries() -> Iterator[tuple[str, Entry]]:
    """Name and entry of each state."""
    yield "build-tool-task", pressed_entry(msg("a task that it has set"), workshop_tool, TASK)
    yield from state_entries("tool", STATES)
    for name, key, says in PRESSED:
        yield f"build-tool-{name}", pressed_entry(says, loaded, key)
    yield "build-tool-more", pressed_entry(msg("what else can be done to a part"), loaded, "part-5", MORE)
    yield "build-tool-shelf-more", pressed_entry(msg("a shelf of the tray"), workshop_tool, "shelf.more")
    yield "build-tool-furnished", pressed_entry(msg("a tin, beads, a rod and a plate on a tool"), furnished)
    yield "build-tool-tied", pressed_entry(msg("two parts tied together"), tied, "part-5", MORE)
    yield "build-tool-tying", pressed_entry(msg("a part to be tied to another"), loaded, "part-5", MORE, TIE)


def furnished() -> BuiltTool:
    """One of each."""
    more = (FitPart("tin", 0.2), FitPart("beads", 0.33), FitPart("rod", 0.62), FitPart("sheet", 0.8))
    return after(workshop_tool(view="numbers"), *more)


def tied() -> BuiltTool:
    """Brass tied to the ring."""
    return after(loaded(), Tie(5, 4))


def falling() -> BuiltTool:
    """Half a second or so after it was let go."""
    bench = after(workshop_tool(view="numbers"), Guess("left")).released()
    for _ in range(90):
        bench = bench.ticked()
    return bench


def loaded() -> BuiltTool:
    """A tool with a ring over its end and brass on both sides."""
    bench = workshop_tool(view="all")
    return after(bench, FitPart("ring", 1.17), Hang(0.2, 0.3), Hang(0.1, 0.05), MoveFinger(0.72), MoveReference(0.5))


def crowded() -> BuiltTool:
    """As many parts as anybody would put on."""
    more = (FitPart("blade", -0.1), FitPart("camera", 0.6), FitPart("nest-box", 0.75), FitPart("grip", 0.4))
    return after(loaded(), *more, Hang(0.5, 0.2), Hang(0.05, 0.5), Hang(0.2, 0.9, "hung"))


def balanced() -> BuiltTool:
    """Let go with the finger right under its balance point."""
    bench = workshop_tool(view="numbers")
    return after(bench, MoveFinger(bench.sum.balance_point_m[0]), Guess("level"), LetGo(at_once=True))


STATES: Mapping[str, tuple[str, Callable[[], BuiltTool]]] = {
    "held": (msg("a tool on a finger, held"), workshop_tool),
    "all": (msg("a tool with a ring and brass, every number shown"), loaded),
    "crowded": (msg("a tool with many parts"), crowded),
    "falling": (msg("a tool on its way down"), falling),
    "fallen": (
        msg("a tool that has slid off"),
        lambda: after(replace(workshop_tool(), view="numbers"), Guess("left"), LetGo(at_once=True)),
    ),
    "stays": (msg("a tool that stays on the finger"), balanced),
    "long": (
        msg("a tool of two poles, its far end heavy"),
        lambda: after(workshop_tool(view="numbers"), FitPart("pole-150", 1.6), FitPart("nest-box", 2.3)),
    ),
    "doubt": (
        msg("a tool whose parts say how they were measured"),
        lambda: after(workshop_tool(view="all"), Measure(0.001, 0.001)),
    ),
}
"""What is shown, by name."""

PRESSED = (
    ("pole-picked", "part-1", msg("the pole picked")),
    ("brass-picked", "part-5", msg("a brass weight picked")),
    ("finger-picked", "finger", msg("the finger picked")),
    ("handles", "shelf.handles", msg("the handles of the tray")),
    ("taken-up", "tray-blade", msg("a part taken up")),
    ("help", "help", msg("what to do here")),
)
"""Name, key that is pressed, and what is then shown."""
