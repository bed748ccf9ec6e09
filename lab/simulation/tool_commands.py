"""What can be done to a tool that is built on a finger, besides what every bench understands.

Lengths in metres along, masses in kg. A part is meant by its id.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class FitPart:
    """Put a new part on the tool. kind: a key of ``tool_parts.KINDS``.  at_m: where its centre goes.

    name: left out, one of its own is made.
    """

    kind: str
    at_m: float
    name: str | None = None


@dataclass(frozen=True, slots=True)
class SetLength:
    """Make a part longer or shorter. Its left end stays, and so does what a metre of it weighs. length_m: > 0."""

    id: int
    length_m: float


ToolEdit = FitPart | SetLength
"""Everything that only a tool is asked."""
