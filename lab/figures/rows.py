"""One line of what we claim, measured."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Row:
    """A figure beside its reference, taken in the same run.

    ours, reference: in `unit`.  ratio: the one over the other.  goal: the ratio that is wanted, at most.
    beside: what the reference is.
    """

    name: str
    ours: float
    reference: float
    ratio: float
    goal: float
    unit: str = "s"
    beside: str = ""

    @property
    def met(self) -> bool:
        """Whether the ratio is within its goal."""
        return self.ratio <= self.goal


def row(name: str, ours: float, reference: float, *, goal: float, unit: str = "s", beside: str = "") -> Row:
    """A row, its ratio worked out; infinite beside a reference of nothing."""
    ratio = ours / reference if reference else float("inf")
    return Row(name, ours, reference, ratio, goal, unit, beside)
