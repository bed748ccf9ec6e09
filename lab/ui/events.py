"""What a person does to the window, as values. One pointer model for mouse, pen and fingers."""

from dataclasses import dataclass
from pathlib import Path

MOUSE_POINTER = 0
"""The pointer id of the mouse; fingers have ids from 1."""


@dataclass(frozen=True, slots=True)
class PointerDown:
    """A finger or the mouse button goes down. time_ms: on a steady clock; None where nobody measures."""

    pointer: int
    x: float
    y: float
    time_ms: int | None = None


@dataclass(frozen=True, slots=True)
class PointerMove:
    """A pointer moves, pressed or (mouse only) not."""

    pointer: int
    x: float
    y: float
    time_ms: int | None = None


@dataclass(frozen=True, slots=True)
class PointerUp:
    """A pointer is lifted."""

    pointer: int
    x: float
    y: float
    time_ms: int | None = None


@dataclass(frozen=True, slots=True)
class PointerCancel:
    """A pointer is lost (the window lost it, the system took it): nothing it began counts."""

    pointer: int
    x: float = 0.0
    y: float = 0.0


@dataclass(frozen=True, slots=True)
class Wheel:
    """The wheel over (x, y); dy > 0 asks for what lies above, dx > 0 for what lies to the right."""

    x: float
    y: float
    dy: float
    dx: float = 0.0


@dataclass(frozen=True, slots=True)
class Key:
    """A key goes down. name: "left", "enter", "space", "tab", "escape", "delete", "page down", "a", "5"..."""

    name: str
    shift: bool = False
    ctrl: bool = False
    alt: bool = False
    repeat: bool = False


@dataclass(frozen=True, slots=True)
class Text:
    """Characters typed."""

    text: str


@dataclass(frozen=True, slots=True)
class Resized:
    """The window has a new size in pixels."""

    width: int
    height: int


@dataclass(frozen=True, slots=True)
class Quit:
    """Someone asks the window to close."""


@dataclass(frozen=True, slots=True)
class FocusLost:
    """Another window has the keyboard: whatever was held is let go."""


@dataclass(frozen=True, slots=True)
class Exposed:
    """The window must be shown again from scratch."""


@dataclass(frozen=True, slots=True)
class FileDropped:
    """A file was dropped on the window."""

    path: Path


PointerEvent = PointerDown | PointerMove | PointerUp | PointerCancel
Event = PointerEvent | Wheel | Key | Text | Resized | Quit | FocusLost | Exposed | FileDropped
