"""The states of the scales bench that are looked over: every one a picture of free build."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace

from lab.files import View, read_build_text
from lab.outline.words import msg
from lab.screens.benches.gallery_parts import after, pressed_entry, state_entries
from lab.screens.benches.strip_keys import MORE
from lab.screens.benches.tasks import TASK
from lab.screens.gallery_parts import Entry
from lab.simulation import Command, LetGo
from lab.simulation.benches.scales import ScalesBench
from lab.simulation.benches.scales_builds import scales_from_build, workshop_scales
from lab.simulation.part_commands import Tie
from lab.simulation.scales_commands import MoveScale, PutOn, PutPart

FRAME = """
format = 1
title = "Kite frame"
units = "kg-m"
[[part]]
name = "frame"
weight = 3.2
at = [0.6, 0, 0.02]
shape = { kind = "box", size = [1.2, 0.8, 0.04] }
[[part]]
name = "reel"
weight = 1.1
at = [0.45, 0.15, 0.1]
shape = { kind = "cylinder", radius = 0.09, length = 0.12, axis = "up" }
[[part]]
name = "battery"
weight = 0.7
at = [0.85, -0.2, 0.08]
shape = { kind = "box", size = [0.16, 0.09, 0.08] }
look = "battery"
[[support]]
name = "bow scale"
at = [0.12, 0, 0]
[[support]]
name = "left stern scale"
at = [1.08, -0.32, 0]
[[support]]
name = "right stern scale"
at = [1.08, 0.32, 0]
"""

OVER = (MoveScale(2, 0.55, 0.0), PutOn(0.5, 0.95))
"""What tips the bar."""


def entries() -> Iterator[tuple[str, Entry]]:
    """Name and entry of each state."""
    yield "build-scales-task", pressed_entry(msg("a task that it has set"), _two, TASK)
    yield from state_entries("scales", STATES)
    for name, key, says in PRESSED:
        yield f"build-scales-{name}", pressed_entry(says, lambda: _two("all"), key)
    yield "build-scales-part-more", pressed_entry(msg("what else can be done to a part"), _two, "load-1", MORE)
    yield "build-scales-shelf-more", pressed_entry(msg("a shelf of the tray"), _furnished, "shelf.more")
    yield "build-scales-tied", pressed_entry(msg("two parts tied together"), _tied, "load-1", MORE)
    yield "build-scales-three-tied", pressed_entry(msg("two parts of a frame, tied"), _three_tied, "load-3")


def _two(view: View = "plain") -> ScalesBench:
    return workshop_scales(view=view)


def _three(view: View = "plain") -> ScalesBench:
    return replace(scales_from_build(read_build_text(FRAME, file="frame.toml")), view=view)


def _furnished() -> ScalesBench:
    """A tin, beads, a rod and a plate beside what it starts with."""
    more = (("tin", 0.1), ("beads", 0.45), ("rod", 0.55), ("sheet", 0.9))
    return after(_two(), *(PutPart(kind, at_m) for kind, at_m in more))


def _tied() -> ScalesBench:
    return after(_two("numbers"), Tie(1, 2))


def _three_tied() -> ScalesBench:
    return after(_three(), Tie(2, 3))


def _guessed(bench: ScalesBench) -> ScalesBench:
    return replace(bench, guess="left", guessed_kg=0.6)


def _let_down(bench: ScalesBench, *commands: Command, ticks: int = 400) -> ScalesBench:
    return after(bench, *commands, LetGo(), ticks=ticks)


STATES: Mapping[str, tuple[str, Callable[[], ScalesBench]]] = {
    "held": (msg("a bar held over two scales"), _two),
    "guessed": (msg("held, both guesses given"), lambda: _guessed(_two())),
    "settling": (msg("just let down"), lambda: _let_down(_two(), ticks=85)),
    "stands": (msg("let down, plain"), lambda: _let_down(_guessed(_two()))),
    "numbers": (msg("let down, with numbers"), lambda: _let_down(_guessed(_two("numbers")))),
    "all": (msg("held, every number shown"), lambda: _two("all")),
    "tipping": (msg("a bar that tips"), lambda: _let_down(_two("numbers"), *OVER, ticks=110)),
    "tipped": (msg("a bar that has tipped"), lambda: _let_down(_two("numbers"), *OVER)),
    "three": (msg("a frame over three scales"), _three),
    "three-stands": (msg("a frame on three scales"), lambda: _let_down(_three("numbers"))),
    "three-tipping": (
        msg("a frame that tips over an edge"),
        lambda: _let_down(_three("numbers"), PutOn(5.0, 0.35, -0.35), ticks=105),
    ),
    "three-tipped": (
        msg("a frame that has tipped over an edge"),
        lambda: _let_down(_three("numbers"), PutOn(5.0, 0.35, -0.35)),
    ),
}
"""What is shown, by name."""

PRESSED = (
    ("part-picked", "load-1", msg("a part picked")),
    ("scale-picked", "scale-2", msg("a scale picked")),
    ("taken-up", "tray-200", msg("a weight taken up")),
    ("help", "help", msg("what to do here")),
)
"""Name, key that is pressed, and what is then shown."""
