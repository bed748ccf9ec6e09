"""What is asked about: a scene, what else the question says of it, and how exact an answer must be."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cached_property
from typing import Any

from lab.files import UNITS, Build, UnitSystem
from lab.lesson.forms import Quantity, decimals_for, from_si, to_si
from lab.lesson.situation import Situation, situation_of
from lab.mechanics import Part
from lab.mechanics.moments import balance_of


@dataclass(frozen=True, kw_only=True)
class Task:
    """A question's numbers: everything that its truth, and every way of thinking about it, depends on.

    kind: the question's kind by name.  build: the scene.
    detail: what its kind needs beside the scene, in SI (where it hangs, what is moved); None where the scene is all.
    tolerance: half the width that counts, in SI; None where one chooses.
    worked_out: what `matching` has worked out of it, by name.

    It has no slots, so that what follows from it is worked out once only: a question is tried with many numbers.
    """

    kind: str
    build: Build
    detail: Any = None
    tolerance: float | None = None
    worked_out: dict[str, Any] = field(default_factory=dict, init=False, repr=False, compare=False)

    @property
    def units(self) -> UnitSystem:
        """The units that the scene is written in."""
        return UNITS[self.build.units]

    @cached_property
    def parts(self) -> tuple[Part, ...]:
        """Every part that weighs something."""
        return self.build.all_parts

    @cached_property
    def balance_m(self) -> float:
        """Where it balances, along, m.  Raises MechanicsError where the parts are no body."""
        return balance_of(self.parts)[0]

    @cached_property
    def seen(self) -> Situation:
        """The scene as a learner sees it, in numerals."""
        return situation_of(self.build, parts=self.parts)

    @property
    def within(self) -> float:
        """The tolerance in SI, 0 where one chooses."""
        return self.tolerance or 0.0

    def decimals(self, quantity: Quantity, *, least: int = 1) -> int:
        """Figures after the point that show a number well enough for the tolerance, in the scene's own unit."""
        if not self.tolerance:
            return 1
        return decimals_for(round(from_si(quantity, self.tolerance, self.units), 12), least=least)


def tolerance_si(quantity: Quantity | None, written: float | None, units: UnitSystem) -> float | None:
    """A tolerance as written, in SI; None where there is none."""
    return None if written is None or quantity is None else to_si(quantity, written, units)
