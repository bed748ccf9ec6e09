"""How a bench is brought into a state that the gallery shows: after commands, in free build, with things pressed."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import TypeVar

from lab.screens.gallery_parts import SETTING, Drawn, Entry, press, shown
from lab.screens.screen import Bench, BuildModel, Workpiece
from lab.simulation import Command, Session
from lab.ui.look import Look

B = TypeVar("B", bound=Bench)


def after(bench: B, *commands: Command, ticks: int = 0) -> B:
    """The bench when all that has been done, and so many ticks later."""
    session = Session(bench)
    for command in commands:
        session.do(command)
    state = session.state
    for _ in range(ticks):
        state = state.ticked()
    return state if isinstance(state, type(bench)) else bench


def state_entries(
    bench_name: str, states: Mapping[str, tuple[str, Callable[[], Workpiece]]]
) -> Iterator[tuple[str, Entry]]:
    """Name and entry of each state.  states: by name, what it shows and the bench."""
    for name, (says, made) in states.items():
        yield f"build-{bench_name}-{name}", pressed_entry(says, made)


def pressed_entry(says: str, made: Callable[[], Workpiece], *keys: str) -> Entry:
    """A bench in free build after one press after the other.  says: what is then shown."""

    def make(look: Look) -> Drawn:
        from lab.screens.benches.screen import FreeBuildScreen

        bench = made()
        model = BuildModel(setting=SETTING, bench=bench, previous=bench, can_undo=True)
        return pressed(shown(FreeBuildScreen(look), model), keys)

    return Entry(says, make)


def pressed(screen: Drawn, keys: tuple[str, ...]) -> Drawn:
    """The screen after one press after the other."""
    for key in keys:
        press(screen, key)
    return screen
