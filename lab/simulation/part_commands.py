"""What can be done to a single part on several benches. A part is meant by its id; masses in kg."""

from __future__ import annotations

from dataclasses import KW_ONLY, dataclass


@dataclass(frozen=True, slots=True)
class Reweigh:
    """Say what a part weighs. mass_kg: > 0."""

    id: int
    mass_kg: float


@dataclass(frozen=True, slots=True)
class Rename:
    """Give a part another name; one that is taken gets a number after it."""

    id: int
    name: str


@dataclass(frozen=True, slots=True)
class Copy:
    """One more part like this one, beside it. mirrored: as far on the other side of the pivot instead."""

    id: int
    _: KW_ONLY
    mirrored: bool = False


@dataclass(frozen=True, slots=True)
class Tie:
    """Tie a part, and all that is tied to it, to another: from then on they move and are copied as one."""

    id: int
    to: int


@dataclass(frozen=True, slots=True)
class Untie:
    """Loosen a part from those that it is tied to."""

    id: int
