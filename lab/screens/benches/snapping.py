"""To which place a pointer pulls what it drags."""

from __future__ import annotations

from lab.scenes.readings import Readings

MARK_PULL_PX = 2.5
"""Within so many design pixels of a mark of the rule a dragged thing takes the mark: a little less than half the
distance of two marks of a usual bar, so that places between them can still be reached by dragging."""


def snapped_m(along_m: float, readings: Readings, *, pull_m: float) -> float:
    """The place that a pointer means: a mark of the rule that is no farther than pull_m, else to the last decimal."""
    units, fineness = readings.units, readings.fineness
    value = units.from_m(along_m)
    mark = round(value / fineness.mark) * fineness.mark
    goal = mark if abs(value - mark) <= units.from_m(pull_m) else round(value, fineness.length)
    return units.to_m(round(goal, 9))
