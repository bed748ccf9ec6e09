"""pygame's queue as our events: one pointer model, each touch told once."""

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pygame

from lab.ui.events import (
    MOUSE_POINTER,
    Event,
    Exposed,
    FileDropped,
    FocusLost,
    Key,
    PointerDown,
    PointerMove,
    PointerUp,
    Quit,
    Resized,
    Text,
    Wheel,
)
from lab.ui.geometry import Point

# Systems that make a mouse out of a finger do so within this time and distance, some only after the lift.
ECHO_MS = 700
ECHO_MM = 12.0
# Where nobody told: 96 pixels an inch.
USUAL_PX_PER_MM = 3.78
_NAMES = {
    "return": "enter",
    "[4]": "left",
    "[6]": "right",
    "[8]": "up",
    "[2]": "down",
}
_FINGERS = (pygame.FINGERDOWN, pygame.FINGERMOTION, pygame.FINGERUP)


@dataclass(slots=True)
class _Touch:
    at: Point
    time_ms: int


class EventReader:
    """Turns pygame's events into ours; remembers fingers, so that their echoes as mouse events are left out."""

    def __init__(self, *, px_per_mm: float | None = None) -> None:
        """px_per_mm: of the screen, for how near an echo is."""
        self._echo_px = ECHO_MM * (px_per_mm or USUAL_PX_PER_MM)
        self._pointers: dict[tuple[int, int], int] = {}
        self._touches: list[_Touch] = []
        self._mouse_held = False
        self._keys: set[int] = set()

    def read(self, event: pygame.event.Event, *, size: tuple[int, int], now_ms: int) -> Iterator[Event]:
        """Our event for one of pygame's; none for those that say nothing new.

        size: of the window in pixels.  now_ms: on a steady clock.
        """
        kind = event.type
        if kind in _FINGERS:
            yield from self._finger(event, size, now_ms)
        elif kind in (pygame.MOUSEBUTTONDOWN, pygame.MOUSEBUTTONUP, pygame.MOUSEMOTION):
            yield from self._mouse(event, now_ms)
        elif kind == pygame.MOUSEWHEEL:
            x, y = pygame.mouse.get_pos()
            yield Wheel(x, y, getattr(event, "precise_y", event.y), getattr(event, "precise_x", event.x))
        elif kind in (pygame.KEYDOWN, pygame.KEYUP):
            yield from self._key(event)
        elif kind == pygame.TEXTINPUT:
            yield Text(event.text)
        else:
            yield from self._window(event)

    def _finger(self, event: pygame.event.Event, size: tuple[int, int], now_ms: int) -> Iterator[Event]:
        x, y = event.x * size[0], event.y * size[1]
        self._touches = [touch for touch in self._touches if now_ms - touch.time_ms <= ECHO_MS]
        self._touches.append(_Touch((x, y), now_ms))
        finger = (getattr(event, "touch_id", 0), event.finger_id)
        if event.type == pygame.FINGERDOWN:
            free = next(n for n in range(1, len(self._pointers) + 2) if n not in self._pointers.values())
            self._pointers[finger] = free
            yield PointerDown(free, x, y, now_ms)
        elif finger in self._pointers:
            if event.type == pygame.FINGERUP:
                yield PointerUp(self._pointers.pop(finger), x, y, now_ms)
            else:
                yield PointerMove(self._pointers[finger], x, y, now_ms)

    def _mouse(self, event: pygame.event.Event, now_ms: int) -> Iterator[Event]:
        if getattr(event, "touch", False) or (not self._mouse_held and self._is_echo(event.pos, now_ms)):
            return
        x, y = event.pos
        if event.type == pygame.MOUSEMOTION:
            yield PointerMove(MOUSE_POINTER, x, y, now_ms)
        elif event.button == pygame.BUTTON_LEFT and event.type == pygame.MOUSEBUTTONDOWN:
            self._mouse_held = True
            yield PointerDown(MOUSE_POINTER, x, y, now_ms)
        elif event.button == pygame.BUTTON_LEFT and self._mouse_held:
            self._mouse_held = False
            yield PointerUp(MOUSE_POINTER, x, y, now_ms)

    def _is_echo(self, at: tuple[int, int], now_ms: int) -> bool:
        return any(
            now_ms - touch.time_ms <= ECHO_MS
            and (at[0] - touch.at[0]) ** 2 + (at[1] - touch.at[1]) ** 2 <= self._echo_px**2
            for touch in self._touches
        )

    def _key(self, event: pygame.event.Event) -> Iterator[Event]:
        if event.type == pygame.KEYUP:
            self._keys.discard(event.key)
            return
        repeat = event.key in self._keys
        self._keys.add(event.key)
        name = pygame.key.name(event.key)
        if name in _NAMES and name.startswith("[") and event.mod & pygame.KMOD_NUM:
            return  # with Num Lock it types a figure, which comes as text
        yield Key(
            _NAMES.get(name, name),
            shift=bool(event.mod & pygame.KMOD_SHIFT),
            ctrl=bool(event.mod & (pygame.KMOD_CTRL | pygame.KMOD_META)),
            alt=bool(event.mod & pygame.KMOD_ALT),
            repeat=repeat,
        )

    def _window(self, event: pygame.event.Event) -> Iterator[Event]:
        if event.type == pygame.QUIT:
            yield Quit()
        elif event.type == pygame.WINDOWSIZECHANGED:
            yield Resized(event.x, event.y)
        elif event.type == pygame.WINDOWEXPOSED:
            yield Exposed()
        elif event.type == pygame.WINDOWFOCUSLOST:
            self._keys.clear()
            self._pointers.clear()
            self._mouse_held = False
            yield FocusLost()
        elif event.type == pygame.DROPFILE:
            yield FileDropped(Path(event.file))
