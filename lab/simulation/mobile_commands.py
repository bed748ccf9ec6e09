"""What can be done to a mobile, besides what every bench understands.

Bars and weights are named by their ids; places are along a bar from its own left end, in metres; masses in kg.
"""

from __future__ import annotations

from dataclasses import KW_ONLY, dataclass


@dataclass(frozen=True, slots=True)
class HangOn:
    """Hang a new weight on a bar. look: how it is drawn.  name: left out, a name of its own is made."""

    bar: int
    mass_kg: float
    at_m: float
    _: KW_ONLY
    look: str | None = None
    name: str | None = None


@dataclass(frozen=True, slots=True)
class HangBar:
    """Hang a new bar, by its middle, from a place on another bar. name: left out, one is made."""

    bar: int
    length_m: float
    mass_kg: float
    at_m: float
    _: KW_ONLY
    name: str | None = None


@dataclass(frozen=True, slots=True)
class Rehang:
    """Tie a weight, or a bar with all below it, to another place. bar: from which it is then to hang.

    joins: one more place of the same drag, so that one undo takes the drag back whole.
    """

    id: int
    bar: int
    at_m: float
    _: KW_ONLY
    joins: bool = False


@dataclass(frozen=True, slots=True)
class SlideBar:
    """Slide a bar through its ring. at_m: the place on it where the ring then is.  joins: as in Rehang."""

    bar: int
    at_m: float
    _: KW_ONLY
    joins: bool = False
