"""Every screen in every state, by name: what `tiltbench snap` draws and the picture tests look over."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace

from lab.outline.words import msg
from lab.screens.benches.airframe.gallery import entries as airframe_entries
from lab.screens.benches.gallery_parts import pressed_entry
from lab.screens.benches.hanging_bar.gallery import entries as bar_entries
from lab.screens.benches.mobile.gallery import entries as mobile_entries
from lab.screens.benches.plate.gallery import entries as plate_entries
from lab.screens.benches.scales.gallery import entries as scales_entries
from lab.screens.benches.tool.gallery import entries as tool_entries
from lab.screens.benches.two_fingers.gallery import entries as two_finger_entries
from lab.screens.gallery_course import course_entries
from lab.screens.gallery_pages import page_entries
from lab.screens.gallery_parts import SETTING, Drawn, Entry, press, shown
from lab.screens.gallery_probe import probe_entries
from lab.screens.questions.gallery import lesson_entries, shipped_lessons
from lab.screens.screen import BuildModel, Notice, StartModel
from lab.screens.start import StartScreen
from lab.simulation import HangingBar
from lab.simulation.benches.bar_builds import empty_bar, workshop_bar
from lab.ui.look import Look

LEARNER = "K7M4T9X3"
SAVED = Notice(template=msg("Everything is saved."))
NOT_SAVED = Notice(
    template=msg("Your answer is not saved yet: {why}"),
    values={"why": "No space left on device"},
    kind="trouble",
    retry=True,
)


def _start(look: Look, bench: HangingBar, notice: Notice | None = None) -> Drawn:
    model = StartModel(setting=SETTING, learner=LEARNER, first_lesson="", bench=bench, previous=bench, notice=notice)
    return shown(StartScreen(look), model)


def _build(look: Look, bench: HangingBar, notice: Notice | None = None) -> Drawn:
    from lab.screens.benches.screen import FreeBuildScreen

    model = BuildModel(setting=SETTING, bench=bench, previous=bench, can_undo=True, notice=notice)
    return shown(FreeBuildScreen(look), model)


def _swinging(bench: HangingBar, ticks: int) -> HangingBar:
    bench = bench.released()
    for _ in range(ticks):
        bench = bench.ticked()
    return bench


def _benches() -> Iterator[tuple[str, str, Callable[[], HangingBar]]]:
    """Name, what it shows, and the bar of each state of free build."""
    yield "empty", msg("free build: an empty bar"), empty_bar
    for view in ("plain", "numbers", "all"):
        for state, says, made in (
            ("held", msg("held, a guess given"), lambda bar: replace(bar, guess="right")),
            ("swinging", msg("let go, on its way"), lambda bar: _swinging(bar, 50)),
            ("settled", msg("let go and come to rest"), lambda bar: bar.released().at_end()),
        ):
            name = f"{view}-{state}"
            yield name, says, lambda view=view, made=made: made(workshop_bar(view=view))  # type: ignore[misc]


_OTHERS = (
    bar_entries,
    tool_entries,
    mobile_entries,
    plate_entries,
    scales_entries,
    two_finger_entries,
    airframe_entries,
    probe_entries,
    page_entries,
)
"""What keeps its entries by itself: every bench, and pages."""


OVER_IT = (
    ("looks", msg("free build: text size and colours"), ("looks",)),
    ("builds", msg("free build: open and save"), ("builds",)),
    ("benches", msg("free build: where to build"), ("benches",)),
    ("benches-along", msg("free build: to another bench with what is built"), ("benches", "bench-load.comes")),
    ("help", msg("free build: what to do here"), ("help",)),
)
"""What lies over a bench after presses: name, what it shows, what is pressed."""


def _entries() -> Iterator[tuple[str, Entry]]:
    yield "start", Entry(msg("the start screen"), lambda look: _start(look, workshop_bar()))
    loose = workshop_bar().released().at_end()
    yield "start-let-go", Entry(msg("the start screen, its bar let go"), lambda look: _start(look, loose))
    yield (
        "start-looks",
        Entry(msg("the dialog for text size and colours"), lambda look: press(_start(look, workshop_bar()), "looks")),
    )
    yield "start-help", Entry(msg("what to do here"), lambda look: press(_start(look, workshop_bar()), "help"))
    yield "start-saved", Entry(msg("a toast"), lambda look: _start(look, workshop_bar(), SAVED))
    yield "start-trouble", Entry(msg("what could not be saved"), lambda look: _start(look, workshop_bar(), NOT_SAVED))
    yield from course_entries(NOT_SAVED)
    for name, says, bench in _benches():
        yield f"build-{name}", Entry(says, lambda look, bench=bench: _build(look, bench()))  # type: ignore[misc]
    for name, says, keys in OVER_IT:
        yield f"build-{name}", pressed_entry(says, workshop_bar, *keys)
    yield "build-saved", Entry(msg("free build: a toast"), lambda look: _build(look, workshop_bar(), SAVED))
    for entries in _OTHERS:
        yield from entries()
    for lesson in shipped_lessons():
        yield from lesson_entries(lesson)


GALLERY: Mapping[str, Entry] = dict(_entries())
"""Every screen and state, by the name that `snap` takes."""
