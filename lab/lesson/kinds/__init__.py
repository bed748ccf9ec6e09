"""The kinds of question, one module each, and the one table that knows them all."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from lab.lesson.kinds import arm, attitude, ballast, doubt, place, reading, shift, side, steady, tank, weight
from lab.lesson.kinds.kind import DetailRefusedError, Fit, Found, Kind
from lab.lesson.task import Task

__all__ = ["KINDS", "DetailRefusedError", "Fit", "Found", "Kind", "kind_of"]

_ALL: tuple[Kind, ...] = (
    side.KIND, place.KIND, weight.KIND, arm.KIND, reading.KIND, shift.KIND, doubt.KIND, attitude.KIND,
    steady.KIND, ballast.KIND, tank.KIND,
)  # fmt: skip

KINDS: Mapping[str, Kind] = MappingProxyType({kind.name: kind for kind in _ALL})
"""Every kind by the name that `ask` has for it."""


def kind_of(task: Task) -> Kind:
    """The kind of a task."""
    return KINDS[task.kind]
