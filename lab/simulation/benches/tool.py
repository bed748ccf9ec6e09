"""A tool that is built on a finger: a tool that lies on one, and whose parts can be told apart and changed."""

from __future__ import annotations

from dataclasses import dataclass, replace
from types import MappingProxyType

from lab.mechanics import Part, extent_m
from lab.simulation.benches.finger import FingerTool

MOST_PARTS = 40
"""Parts of one tool. More cannot be told apart or grabbed at any window size."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BuiltTool(FingerTool):
    """The whole state of the bench.

    ids: one for each part, in order, unlike any other ever on this tool.  next_id: the id of the next part.
    """

    ids: tuple[int, ...]
    next_id: int

    @property
    def handle(self) -> Part:
        """What everything else sits on, and the finger slides along: the longest part."""
        return self.parts[handle_index(self.parts)]

    @property
    def names(self) -> tuple[str, ...]:
        """What the parts are called, in order."""
        return tuple(part.name for part in self.parts)

    def called(self, names: tuple[str, ...]) -> BuiltTool:
        """The same with other names of the parts."""
        after = dict(zip(self.names, names, strict=True))
        looks = {after.get(name, name): look for name, look in self.looks.items()}
        parts = tuple(replace(part, name=after[part.name]) for part in self.parts)
        return replace(self, parts=parts, looks=MappingProxyType(looks))

    def part(self, id: int) -> Part | None:  # noqa: A002 - the field's own name
        """The part with this id, or None where it is not on the tool any more."""
        return self.parts[self.ids.index(id)] if id in self.ids else None


def handle_index(parts: tuple[Part, ...]) -> int:
    """Which part is the handle: the longest, the first of several as long."""
    return max(range(len(parts)), key=lambda index: 0.0 if parts[index].cut else extent_m(parts[index].shape)[0])
