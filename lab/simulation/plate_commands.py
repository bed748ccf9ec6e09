"""What can be done to a plate that hangs by a pin, besides what every bench understands.

All lengths in metres in the plate's own coordinates, along and up; masses in kg. Rings are counted from 0: the
outline first, then the holes. Corners of a ring are counted from 0 too.
"""

from __future__ import annotations

from dataclasses import KW_ONLY, dataclass


@dataclass(frozen=True, slots=True)
class TakeBlank:
    """Take another plate to begin with. name: a key of ``plate_builds.BLANKS``."""

    name: str


@dataclass(frozen=True, slots=True)
class MovePin:
    """Hang the plate by another place. joins: one more place of the same drag, so that one undo takes it back."""

    at_m: float
    up_m: float
    _: KW_ONLY
    joins: bool = False


@dataclass(frozen=True, slots=True)
class AddCorner:
    """Put a new corner on an edge. after: the corner at which the edge begins."""

    ring: int
    after: int
    at_m: float
    up_m: float


@dataclass(frozen=True, slots=True)
class MoveCorner:
    """Move a corner of the outline or of a hole. joins: as in MovePin."""

    ring: int
    corner: int
    at_m: float
    up_m: float
    _: KW_ONLY
    joins: bool = False


@dataclass(frozen=True, slots=True)
class RemoveCorner:
    """Take a corner away: its neighbours are joined by one edge."""

    ring: int
    corner: int


@dataclass(frozen=True, slots=True)
class CutHole:
    """Cut a round hole, as a ring of ``plate_edits.HOLE_CORNERS`` corners. radius_m: of the circle, > 0."""

    at_m: float
    up_m: float
    radius_m: float


@dataclass(frozen=True, slots=True)
class MoveHole:
    """Move a whole hole. ring: 1 is the first hole.  at_m, up_m: where its centre goes.  joins: as in MovePin."""

    ring: int
    at_m: float
    up_m: float
    _: KW_ONLY
    joins: bool = False


@dataclass(frozen=True, slots=True)
class FillHole:
    """Take a hole away: there is wood again. ring: 1 is the first hole."""

    ring: int


@dataclass(frozen=True, slots=True)
class SetAreaWeight:
    """Cut the plate from another sheet. area_kg_m2: what a square metre of it weighs, > 0."""

    area_kg_m2: float


@dataclass(frozen=True, slots=True)
class ClipOn:
    """Clip a small weight on the plate. name: left out, one of its own is made."""

    mass_kg: float
    at_m: float
    up_m: float
    name: str | None = None


@dataclass(frozen=True, slots=True)
class MoveClip:
    """Move a clipped weight. joins: as in MovePin."""

    id: int
    at_m: float
    up_m: float
    _: KW_ONLY
    joins: bool = False


@dataclass(frozen=True, slots=True)
class DrawPlumbLine:
    """Draw the plumb line through the pin on the plate that hangs still."""


@dataclass(frozen=True, slots=True)
class RubOutLines:
    """Rub out the plumb lines that were drawn."""


PlateEdit = (
    TakeBlank | MovePin | AddCorner | MoveCorner | RemoveCorner | CutHole | MoveHole | FillHole | SetAreaWeight
    | ClipOn | MoveClip | DrawPlumbLine | RubOutLines
)  # fmt: skip
"""Everything that only a plate is asked."""
