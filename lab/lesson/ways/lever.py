"""What turns a bar about its pivot, as a learner sees it who is to hang something on its other side."""

from __future__ import annotations

from dataclasses import dataclass

from lab.lesson.situation import Situation


@dataclass(frozen=True, slots=True, kw_only=True)
class Weighed:
    """A weight.  arm: from the pivot, positive away from what is to be hung.  from_end: from the left end."""

    weight: float
    arm: float
    from_end: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Lever:
    """A bar on a pivot, in numerals.

    loads: all but the bar.  bar: the bar, or the longest part of a tool; None where there is none such.
    right_of_pivot: whether what is to be hung hangs there.  pivot_from_end: the pivot's place from the left end.
    arm, weight: of what is to be hung, above 0; the one that is asked for is None.
    """

    loads: tuple[Weighed, ...]
    bar: Weighed | None
    right_of_pivot: bool
    pivot_from_end: float
    arm: float | None = None
    weight: float | None = None

    @property
    def moment(self) -> float:
        """Everything's weight times arm about the pivot."""
        return self.loads_moment + self.bar_moment

    @property
    def loads_moment(self) -> float:
        """The loads' weight times arm."""
        return sum(load.weight * load.arm for load in self.loads)

    @property
    def bar_moment(self) -> float:
        """The bar's weight times its middle's arm."""
        return 0.0 if self.bar is None else self.bar.weight * self.bar.arm

    @property
    def added(self) -> float | None:
        """What the loads come to where weight and arm are added, as some do; None without loads."""
        if not self.loads:
            return None
        return sum((load.weight + abs(load.arm)) * (1.0 if load.arm > 0 else -1.0) for load in self.loads)

    @property
    def other(self) -> Weighed | None:
        """The one load, where there is but one and it is on the other side."""
        return self.loads[0] if len(self.loads) == 1 and self.loads[0].arm > 0 else None


def lever_of(seen: Situation, *, right_of_pivot: bool, arm: float | None = None, weight: float | None = None) -> Lever:
    """Return a scene as a lever, seen from the side where something is to be hung."""
    sense = 1.0 if right_of_pivot else -1.0

    def weighed(weight: float, place: float) -> Weighed:
        return Weighed(weight=weight, arm=sense * (seen.pivot - place), from_end=place - seen.left)

    beam = seen.beam
    return Lever(
        loads=tuple(weighed(load.weight, load.place) for load in seen.riders),
        bar=None if beam is None else weighed(beam.weight, beam.place),
        right_of_pivot=right_of_pivot,
        pivot_from_end=seen.pivot - seen.left,
        arm=arm,
        weight=weight,
    )
