"""The main loop: it joins a laboratory with a window, and sleeps whenever nothing happens."""

from __future__ import annotations

import time
from collections.abc import Callable
from typing import Protocol

from lab.app.laboratory import Laboratory
from lab.ui.canvas import Canvas
from lab.ui.events import Event, Exposed, Resized

#: Sixty frames a second while something moves; more would be drawn for nobody.
FRAME_NS = 1_000_000_000 // 60
NS_A_MS = 1_000_000


class Window(Protocol):
    """A window, to the loop."""

    @property
    def canvas(self) -> Canvas:
        """What is drawn on; of the window's present size."""
        ...

    def wait(self, timeout_ms: int | None) -> tuple[Event, ...]:
        """Sleep until something happens, at most so long (None: however long), and return all that has."""
        ...

    def invalidate(self) -> None:
        """Forget what was shown: the next picture is drawn whole."""
        ...

    def present(self) -> None:
        """Show what was drawn since the last time."""
        ...


def run(laboratory: Laboratory, window: Window, *, clock_ns: Callable[[], int] = time.monotonic_ns) -> int:
    """Run until the laboratory is finished; returns how many pictures were drawn.

    The clock is read once a frame.  Where nothing moves and nobody does anything, nothing is drawn.
    """
    laboratory.turn(clock_ns())
    _show(laboratory, window)
    now_ns = clock_ns()
    drawn, shown_at_ns = 1, now_ns
    while not laboratory.finished:
        events = list(window.wait(_sleep_ms(laboratory, now_ns, shown_at_ns)))
        now_ns = clock_ns()
        # A mouse reports a thousand times a second: all that comes within a frame is answered by one picture.
        while not laboratory.finished and now_ns - shown_at_ns < FRAME_NS:
            events += window.wait(_ms_until(shown_at_ns + FRAME_NS, now_ns))
            now_ns = clock_ns()
        changed = laboratory.turn(now_ns)
        for event in events:
            if isinstance(event, Exposed | Resized):
                window.invalidate()
            changed = laboratory.handle(event) or changed
        if changed and not laboratory.finished:
            _show(laboratory, window)
            drawn, shown_at_ns = drawn + 1, now_ns
    return drawn


def _show(laboratory: Laboratory, window: Window) -> None:
    laboratory.draw(window.canvas)
    window.present()


def _sleep_ms(laboratory: Laboratory, now_ns: int, shown_at_ns: int) -> int | None:
    """How long there is nothing to do; None where only an event can change that."""
    if laboratory.moving:
        return _ms_until(shown_at_ns + FRAME_NS, now_ns)
    if laboratory.wake_at_ns is not None:
        return _ms_until(laboratory.wake_at_ns, now_ns)
    return None


def _ms_until(then_ns: int, now_ns: int) -> int:
    # Rounded up: waking a moment too early would mean another round for nothing.
    return max(0, -(-(then_ns - now_ns) // NS_A_MS))
