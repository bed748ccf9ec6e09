"""The kinds of question, one module each, and the one table that knows them all."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from lab.lesson.kinds import place, side
from lab.lesson.kinds.kind import DetailRefusedError, Fit, Found, Kind
from lab.lesson.task import Task

__all__ = ["KINDS", "DetailRefusedError", "Fit", "Found", "Kind", "kind_of"]

KINDS: Mapping[str, Kind] = MappingProxyType({kind.name: kind for kind in (side.KIND, place.KIND)})
"""Every kind by the name that `ask` has for it."""


def kind_of(task: Task) -> Kind:
    """The kind of a task."""
    return KINDS[task.kind]
