"""What everything is drawn on: about a dozen operations, with two makers behind them."""

from collections.abc import Callable, Hashable, Sequence
from contextlib import AbstractContextManager
from typing import Literal, Protocol

from lab.ui.geometry import Point, Rect

Anchor = Literal[
    "left top", "center top", "right top",
    "left middle", "center middle", "right middle",
    "left baseline", "center baseline", "right baseline",
    "left bottom", "center bottom", "right bottom",
]  # fmt: skip
Draw = Callable[["Canvas", Rect], None]
"""Draws something into a rectangle of a canvas."""


class Canvas(Protocol):
    """A surface in pixels, y downwards. Colours are "#RRGGBB" or "#RRGGBBAA". Boxes snap to whole pixels."""

    @property
    def size(self) -> tuple[int, int]:
        """Width and height in pixels."""
        ...

    def box(
        self,
        rect: Rect,
        *,
        fill: str | None = None,
        outline: str | None = None,
        width: float = 1.0,
        radius: float = 0.0,
    ) -> None:
        """A rectangle with round corners; its outline lies inside it."""
        ...

    def line(self, points: Sequence[Point], color: str, *, width: float = 1.0, dash: Sequence[float] = ()) -> None:
        """A line through two or more points; dash: lengths on, off, on, off..."""
        ...

    def polygon(
        self,
        points: Sequence[Point],
        *,
        fill: str | None = None,
        outline: str | None = None,
        width: float = 1.0,
    ) -> None:
        """A closed shape; its outline straddles the edge."""
        ...

    def circle(
        self,
        center: Point,
        radius: float,
        *,
        fill: str | None = None,
        outline: str | None = None,
        width: float = 1.0,
    ) -> None:
        """A circle; its outline lies inside it."""
        ...

    def arc(
        self,
        center: Point,
        radius: float,
        start_rad: float,
        sweep_rad: float,
        color: str,
        *,
        width: float = 1.0,
    ) -> None:
        """Part of a circle from start_rad (0: right) by sweep_rad, both anticlockwise positive as seen."""
        ...

    def hatch(self, rect: Rect, color: str, *, rising: bool, spacing: float = 8.0, width: float = 1.5) -> None:
        """Slanted lines over a rectangle, rising to the right or falling."""
        ...

    def text(
        self,
        text: str,
        at: Point,
        *,
        size: float,
        color: str,
        bold: bool = False,
        anchor: Anchor = "left top",
    ) -> Rect:
        """One line of text; "middle" centres its capitals and figures on the point.  Returns its line box."""
        ...

    def text_size(self, text: str, *, size: float, bold: bool = False) -> tuple[float, float]:
        """Width and height of the line box of one line of text."""
        ...

    def turned(
        self,
        name: Hashable,
        size: tuple[float, float],
        make: Callable[["Canvas"], None],
        *,
        at: Point,
        grip: Point,
        angle_rad: float,
    ) -> None:
        """A body shown turned, anticlockwise positive as seen, its point `grip` at `at`.

        name: says all that its picture depends on, for `make` draws it only once for one name and size.
        size: of the body in pixels.  make: draws it on a canvas of that size.  grip: in the body's pixels.
        """
        ...

    def kept(self, key: Hashable, draw: Callable[[], None]) -> None:
        """What `draw` draws, for things that stay as they are while others move.

        key: all that it depends on.  Under the same key it may be put down again without another call.
        """
        ...

    def clipped(self, rect: Rect) -> AbstractContextManager[None]:
        """Within the `with` block nothing outside the rectangle is drawn."""
        ...
