"""What the picture of a kind of question is to the screen."""

from __future__ import annotations

from abc import ABC, abstractmethod

from lab.outline import Node
from lab.screens.questions.scope import Scope
from lab.ui.canvas import Canvas
from lab.ui.geometry import Point, Rect
from lab.ui.widgets.picture import Handle

PICTURE = "picture"
"""Key of the picture, and the beginning of the keys of what is in it."""


class Pictured(ABC):
    """How one kind of question is drawn, and what of it can be taken hold of.  Reads only."""

    @abstractmethod
    def draw(self, canvas: Canvas, rect: Rect, scope: Scope, *, covered_px: float = 0.0) -> None:
        """Draw the question as it stands.  covered_px: how much of the top lies under something else."""

    @abstractmethod
    def spoken(self, scope: Scope) -> tuple[str, ...]:
        """Everything that the picture shows, a sentence each, for those who listen."""

    def handles(self, scope: Scope, rect: Rect) -> tuple[Handle, ...]:
        """What can be taken hold of while an answer is being given."""
        return ()

    def tappable(self, scope: Scope) -> bool:
        """Whether a tap in the picture means a place."""
        return False

    def tapped_m(self, scope: Scope, rect: Rect, point: Point) -> float | None:
        """The place along that a tap means, m; None elsewhere."""
        return None

    def dragged_m(self, scope: Scope, rect: Rect, point: Point) -> float | None:
        """The place along that something carried means, m, however high the pointer is."""
        return None

    def carried_m(self, scope: Scope, key: str) -> float | None:
        """Where the thing with a key is now, m; None where it cannot be carried."""
        return None

    def covers(self, scope: Scope) -> bool:
        """Whether the picture has nothing at its upper edge once it is explained, so that a strip may lie over it."""
        return False


def marks(rect: Rect, said: tuple[str, ...]) -> tuple[Node, ...]:
    """What a picture shows as marks of the outline."""
    return tuple(Node(f"{PICTURE}.mark-{number}", "mark", text, bounds=rect) for number, text in enumerate(said))
