"""What the widgets report when something was done to them. They call nobody back."""

from dataclasses import dataclass
from typing import Literal

from lab.ui.geometry import Point

DragSource = Literal["tray", "picture"]


@dataclass(frozen=True, slots=True)
class Pressed:
    """A button, a tray item or a handle was pressed and let go."""

    key: str


@dataclass(frozen=True, slots=True)
class Chosen:
    """One of several was chosen: an option of a choice row, a row of a table (value: its key)."""

    key: str
    value: str


@dataclass(frozen=True, slots=True)
class Changed:
    """A slider or number field has a new value, within its limits and on its step."""

    key: str
    value: float


@dataclass(frozen=True, slots=True)
class DragBegan:
    """Something was taken hold of and moved beyond the threshold; at: where the pointer is now."""

    key: str
    at: Point
    pointer: int
    source: DragSource


@dataclass(frozen=True, slots=True)
class Dragged:
    """It is being moved."""

    key: str
    at: Point
    pointer: int
    source: DragSource


@dataclass(frozen=True, slots=True)
class Dropped:
    """It was let go here."""

    key: str
    at: Point
    pointer: int
    source: DragSource


@dataclass(frozen=True, slots=True)
class DragCancelled:
    """It was let go nowhere (Escape, the pointer was lost): back to where it came from."""

    key: str
    at: Point
    pointer: int
    source: DragSource


@dataclass(frozen=True, slots=True)
class Nudged:
    """A focused handle was moved by key: dx +1 right, −1 left as seen; dy +1 up, −1 down; large: Shift."""

    key: str
    dx: int
    dy: int
    large: bool = False


@dataclass(frozen=True, slots=True)
class Removed:
    """Delete or Backspace on a handle that can be removed."""

    key: str


@dataclass(frozen=True, slots=True)
class Tapped:
    """A bare place of a picture (key: the picture's) was tapped."""

    key: str
    at: Point


@dataclass(frozen=True, slots=True)
class Scrolled:
    """A scroll column stands at a new offset in pixels from its top."""

    key: str
    offset: float


@dataclass(frozen=True, slots=True)
class Escaped:
    """Escape was pressed. key: the dialog's that was open, or "" for the screen itself."""

    key: str


WidgetEvent = (
    Pressed
    | Chosen
    | Changed
    | DragBegan
    | Dragged
    | Dropped
    | DragCancelled
    | Nudged
    | Removed
    | Tapped
    | Scrolled
    | Escaped
)
