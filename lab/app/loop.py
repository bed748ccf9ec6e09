"""The main loop: it joins a laboratory with a window, and sleeps whenever nothing happens."""

from __future__ import annotations

import time
from collections.abc import Callable, Mapping, Sequence
from typing import Protocol

from lab.app.laboratory import Laboratory
from lab.screens.sound_cues import Cue
from lab.ui.canvas import Canvas
from lab.ui.events import Event
from lab.ui.geometry import Rect

#: Sixty frames a second while something moves; more would be drawn for nobody.
FRAME_NS = 1_000_000_000 // 60
#: How often a resting window asks for events.  The system's own waiting looks a thousand times a second on
#: some systems, which costs 2 % of a core; this costs a fifth of that and answers within a frame.
LOOK_NS = 15_000_000
NS_A_S = 1_000_000_000


class DrawnCanvas(Canvas, Protocol):
    """A canvas that remembers what it showed."""

    def clear(self) -> None:
        """Begin a new picture."""
        ...

    def paint(self) -> list[Rect]:
        """Bring the pixels up to date; returns the rectangles that changed."""
        ...


class Window(Protocol):
    """A window, to the loop."""

    @property
    def canvas(self) -> DrawnCanvas:
        """What is drawn on; of the window's present size."""
        ...

    def events(self) -> Sequence[Event]:
        """What has happened since the last time; does not wait."""
        ...

    def present(self, rects: Sequence[Rect]) -> None:
        """Show these rectangles of the canvas."""
        ...


class Speaker(Protocol):
    """What plays sounds, to the loop."""

    def play(self, name: Cue) -> None:
        """Play one, or be silent where that cannot be."""
        ...

    def lean(self, angle_rad: float | None, *, resting: bool = False) -> None:
        """Let a tilt be heard as it is now, or be silent where it is None."""
        ...

    @property
    def wanting(self) -> bool:
        """Whether a tilt is not told to its end yet, so that `lean` must be called in the next frame."""
        ...

    def news(self) -> Mapping[str, str] | None:
        """Once, after the device has failed: why."""
        ...


class Loop:
    """Runs a laboratory in a window until it is finished.

    drawn: how many pictures have been drawn.  The clock is read once a frame, and in between only to know
    when to stop sleeping; where nothing moves and nobody does anything, nothing is drawn.
    """

    def __init__(
        self,
        laboratory: Laboratory,
        window: Window,
        *,
        clock_ns: Callable[[], int] = time.monotonic_ns,
        sleep: Callable[[float], None] = time.sleep,
        speaker: Speaker | None = None,
    ) -> None:
        """clock_ns: a monotonic clock.  sleep: for so many seconds.  speaker: None for a silent lab."""
        self._speaker = speaker
        self.drawn = 0
        self._laboratory = laboratory
        self._window = window
        self._clock_ns = clock_ns
        self._sleep = sleep
        self._now_ns = clock_ns()
        self._shown_at_ns = self._now_ns

    def run(self) -> None:
        """Draw the first picture, then go on until somebody leaves."""
        self.show()
        while not self._laboratory.finished:
            self.frame()

    def show(self) -> None:
        """Draw the laboratory as it is."""
        canvas = self._window.canvas
        canvas.clear()
        self._laboratory.draw(canvas)
        self._window.present(canvas.paint())
        self.drawn += 1
        self._shown_at_ns = self._now_ns

    def frame(self) -> None:
        """Wait for something to do, do it, and draw if that changed anything."""
        laboratory = self._laboratory
        events = self._wait()
        self._now_ns = self._clock_ns()
        changed = laboratory.turn(self._now_ns)
        for event in events:
            changed = laboratory.handle(event) or changed
            if laboratory.finished:
                return
        self._let_hear()
        if changed:
            self.show()

    def _let_hear(self) -> None:
        """Play what is to be heard; a device that fails is told of once."""
        laboratory, settings = self._laboratory, self._laboratory.house.settings
        cues = laboratory.hearing.take(wanted=settings.sound)
        tilt = laboratory.hearing.tilt(wanted=settings.sound and settings.balance_by_ear)
        if self._speaker is None:
            return
        for cue in cues:
            self._speaker.play(cue)
        if tilt is None:
            self._speaker.lean(None)
        else:
            self._speaker.lean(tilt.angle_rad, resting=not tilt.moving)
        if (cues or tilt) and self._speaker.news() is not None:
            laboratory.say_no_sound()

    def _wait(self) -> list[Event]:
        """Sleep until there is something to do; returns what has happened meanwhile."""
        next_frame_ns = self._shown_at_ns + FRAME_NS
        wake_ns = next_frame_ns if self._laboratory.moving else self._laboratory.wake_at_ns
        if self._speaker is not None and self._speaker.wanting:
            soon_ns = self._now_ns + FRAME_NS
            wake_ns = soon_ns if wake_ns is None else min(wake_ns, soon_ns)
        events: list[Event] = []
        while True:
            events += self._window.events()
            now_ns = self._clock_ns()
            # A mouse reports a thousand times a second: all that comes within a frame is answered by one picture.
            until_ns = next_frame_ns if events else wake_ns
            if until_ns is not None and now_ns >= until_ns:
                return events
            rest_ns = LOOK_NS if until_ns is None else min(LOOK_NS, until_ns - now_ns)
            self._sleep(rest_ns / NS_A_S)
