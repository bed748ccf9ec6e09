"""What every widget is: a frozen value that says how large it is, what it holds, how it looks, what it does."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Protocol

from lab.outline import Node
from lab.ui.canvas import Canvas
from lab.ui.geometry import Point, Rect
from lab.ui.look import Look
from lab.ui.outcomes import DragSource, WidgetEvent

if TYPE_CHECKING:
    from lab.ui.widgets.number_field import NumberField


@dataclass(frozen=True, slots=True)
class Mood:
    """What is going on with the widgets just now: keys that are held down, the key that has the focus."""

    pressed: frozenset[str] = frozenset()
    focused: str | None = None


CALM = Mood()


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """A place on a widget that can be pressed, dragged or focused, with all that doing so means.

    key: its name for focus and capture.  rect: as drawn.  effect: what a press reports.
    stop: whether Tab reaches it.  enabled: whether it does anything.
    keys: what a key reports while it has the focus ("left", "shift+left", "home"...).
    moves: which spot a key moves the focus to.  drag: whether it can be taken along, and from where.
    slide: what a held pointer reports as it moves.  press_at: what a press reports by its place.
    field: the number field whose keypad a press opens.
    """

    key: str
    rect: Rect
    effect: WidgetEvent | None = None
    stop: bool = True
    enabled: bool = True
    keys: Mapping[str, WidgetEvent] = field(default_factory=dict)
    moves: Mapping[str, str] = field(default_factory=dict)
    drag: DragSource | None = None
    slide: Callable[[Point], WidgetEvent] | None = None
    press_at: Callable[[Point], WidgetEvent] | None = None
    field: "NumberField | None" = None


class Widget(Protocol):
    """A frozen value. Sizes are in pixels; `rect` is always what the parent gave it."""

    @property
    def key(self) -> str:
        """Unique in its tree; "" where nobody needs to name it."""
        ...

    def least_width(self, look: Look) -> float:
        """The narrowest that breaks no word."""
        ...

    def natural_width(self, look: Look) -> float:
        """The width it would take if it could."""
        ...

    def height(self, look: Look, width: float) -> float:
        """The height it needs at a width."""
        ...

    def place(self, look: Look, rect: Rect) -> tuple[tuple["Widget", Rect], ...]:
        """What it holds, and where."""
        ...

    def draw(self, canvas: Canvas, look: Look, rect: Rect, mood: Mood) -> None:
        """Draws it, without what it holds."""
        ...

    def spots(self, look: Look, rect: Rect) -> tuple[Spot, ...]:
        """Where it can be pressed or focused, without what it holds."""
        ...

    def node(self, look: Look, rect: Rect, mood: Mood, children: tuple[Node, ...]) -> Node | None:
        """Its outline; None where it only arranges its children, which then stand in its parent."""
        ...


class Plain:
    """What most widgets leave out: no children, no spots."""

    __slots__ = ()

    def place(self, look: Look, rect: Rect) -> tuple[tuple[Widget, Rect], ...]:
        """Holds nothing."""
        return ()

    def spots(self, look: Look, rect: Rect) -> tuple[Spot, ...]:
        """Cannot be pressed."""
        return ()

    def draw(self, canvas: Canvas, look: Look, rect: Rect, mood: Mood) -> None:
        """Has no picture of its own."""


def facing(look: Look, rect: Rect, frame: Rect) -> Rect:
    """A rectangle laid out from the left, as it lies in this reading direction."""
    return rect.mirrored_in(frame) if look.sizes.mirrored else rect


def forwards(look: Look) -> tuple[str, str]:
    """The arrow keys that mean (back, on) along a row in this reading direction."""
    return ("right", "left") if look.sizes.mirrored else ("left", "right")


def states(**flags: bool) -> frozenset[str]:
    """The state words that hold."""
    return frozenset(word for word, holds in flags.items() if holds)
