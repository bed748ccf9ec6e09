"""What can be done to a body on scales, besides what every bench understands.

All lengths in metres in the body's own coordinates, along and across; masses in kg.
"""

from __future__ import annotations

from dataclasses import KW_ONLY, dataclass


@dataclass(frozen=True, slots=True)
class PutOn:
    """Stand one more weight on the body.

    mass_kg: > 0.  name: left out, a name of its own is made.
    """

    mass_kg: float
    along_m: float
    across_m: float = 0.0
    name: str | None = None


@dataclass(frozen=True, slots=True)
class PutPart:
    """Put something else than brass on the body.

    kind: a key of `tool_parts.LOOSE`.  name: left out, a name of its own is made.
    """

    kind: str
    along_m: float
    across_m: float = 0.0
    name: str | None = None


@dataclass(frozen=True, slots=True)
class Shift:
    """Move a part on the body. It stops at the body's ends. joins: one more place of the same drag."""

    id: int
    along_m: float
    across_m: float
    _: KW_ONLY
    joins: bool = False


@dataclass(frozen=True, slots=True)
class MoveScale:
    """Slide a scale under the body. It stops before the other, and at the body's ends. joins: as in Shift."""

    id: int
    along_m: float
    across_m: float
    _: KW_ONLY
    joins: bool = False


@dataclass(frozen=True, slots=True)
class StandOn:
    """Stand the body on two scales or on three."""

    count: int


@dataclass(frozen=True, slots=True)
class GuessReading:
    """Say what the first scale will read; None takes it back."""

    mass_kg: float | None
