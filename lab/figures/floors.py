"""A figure with a floor, or a ceiling, beside what the plain way of doing it gives."""

from __future__ import annotations

from dataclasses import asdict, dataclass, field
from typing import Literal


@dataclass(frozen=True, slots=True, kw_only=True)
class Floor:
    """One line of what the probe is held to.

    ours: in `unit`.  bound: what it must not be below or, by `sense`, not above or must be as shown; None where nothing
    is asked of it.  beside: what else was measured on the same footing, by name.
    """

    name: str
    ours: float
    bound: float | None = None
    sense: Literal["at least", "at most", "exactly"] = "at least"
    unit: str = "%"
    decimals: int = 1
    beside: dict[str, float] = field(default_factory=dict)

    @property
    def met(self) -> bool | None:
        """Whether it holds; None where nothing is asked."""
        if self.bound is None:
            return None
        if self.sense == "exactly":
            return abs(self.ours - self.bound) < 0.5 * 10.0**-self.decimals
        return self.ours <= self.bound if self.sense == "at most" else self.ours >= self.bound

    def as_line(self) -> str:
        """The figure to read, its floor after it."""
        asked = "no floor"
        if self.bound is not None:
            asked = f"{self.sense} {self.bound:g}, {'met' if self.met else 'missed'}"
        others = "".join(f"; {name} {value:.{self.decimals}f}" for name, value in self.beside.items())
        unit = f" {self.unit}" if self.unit else ""
        return f"{self.name}: {self.ours:.{self.decimals}f}{unit} ({asked}{others})"

    def as_json(self) -> dict[str, object]:
        """The same as JSON."""
        return {**asdict(self), "met": self.met}
