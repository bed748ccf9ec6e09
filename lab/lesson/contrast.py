"""One thing changed: the same scene with one part heavier, lighter or elsewhere, and what that does."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from lab.files import Build
from lab.lesson.asked import Side
from lab.lesson.forms import Answer
from lab.lesson.messages import Message, msg
from lab.mechanics import Part

FEATHER_KG = 1e-12
"""What stands for no weight: a nanogram.  The mechanics take no part of 0 kg, and this tips nothing that is level."""

HEAVY = 2.0
"""How many times as heavy a part becomes; enough to move the balance point by more than any tolerance."""

NO_WEIGHT = msg("What if the {part} had no weight?")
TWICE_AS_HEAVY = msg("What if the {part} weighed twice as much?")
HALF_AS_FAR = msg("What if the {part} sat half as far out?")
HALF_AS_HEAVY = msg("What if the {part} weighed half as much?")
NOT_CUT = msg("What if the {part} had not been cut out?")

WOULD_GO: dict[Side, str] = {
    "left": msg("Then the left end would go down."),
    "right": msg("Then the right end would go down."),
    "level": msg("Then it would stay level."),
}
"""What is seen of a changed scene, by the end that goes down in it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Contrast:
    """The same picture with one thing changed.

    label: the question it asks.  build: the changed scene, whole.  balance_point_m: along, in metres.
    goes: which end drops in the changed scene where it rests now.  happened: what that shows, as a sentence.
    outcome: what would be right then, where the changed scene alone does not tell it.
    """

    label: Message
    build: Build
    balance_point_m: float
    goes: Side
    happened: Message
    outcome: Answer | None = None


def weighed(build: Build, name: str, *, times: float) -> Build:
    """Return the build with one part, or the bar, so many times as heavy."""
    return _with_mass(build, name, {part.name: part.mass_kg for part in build.all_parts}[name] * times)


def weightless(build: Build, name: str) -> Build:
    """Return the build with one part, or the bar, of no weight to speak of."""
    return _with_mass(build, name, FEATHER_KG)


def _with_mass(build: Build, name: str, mass_kg: float) -> Build:
    if build.bar is not None and build.bar.name == name:
        return replace(build, bar=replace(build.bar, mass_kg=mass_kg))
    return with_part(build, name, lambda part: replace(part, mass_kg=mass_kg))


def nearer(build: Build, name: str, pivot_m: float) -> Build:
    """Return the build with one part half as far from a pivot."""

    def moved(part: Part) -> Part:
        along, across, up = part.at_m
        return replace(part, at_m=((along + pivot_m) / 2, across, up))

    return with_part(build, name, moved)


def with_part(build: Build, name: str, change: Callable[[Part], Part]) -> Build:
    """Return the build with one part changed."""
    return replace(build, parts=tuple(change(part) if part.name == name else part for part in build.parts))
