"""What the probe can ask: one weight on each side of a bar that hangs by its middle.

Weights and arms are small whole numbers, so that every rule, adding too, works on the numerals that are seen.
"""

from __future__ import annotations

import itertools
from dataclasses import dataclass
from functools import lru_cache
from types import MappingProxyType
from typing import Literal

from lab.files import UNITS, Bar, Build
from lab.lesson.asked import Side
from lab.lesson.situation import Load, Situation
from lab.mechanics import Part, Pivot, turn_about

MOST = 6
"""Weights and arms go from 1 to this.  Fewer, and too few items tell adding from multiplying; more is harder to see."""

ARM_CM = 1.0
WEIGHT_G = 1.0
HALF_BAR_CM = 7.0
"""The bar reaches one arm beyond the farthest weight."""

BAR_WEIGHT_G = 10.0
PIN_UP_M = 0.002
"""The bar hangs by its middle, so its own weight turns nothing; the pin is a little above it, as on a real one."""

UNIT_NAME = "g-cm"

ProblemType = Literal[
    "balance", "weight", "distance", "conflict-weight", "conflict-distance", "conflict-balance", "concordant"
]


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """A weight and its arm on the left, and on the right: whole numbers, each from 1 to `MOST`."""

    left_weight: int
    left_arm: int
    right_weight: int
    right_arm: int

    @property
    def name(self) -> str:
        """Such as 4x2-3x5: the left weight and arm, then the right ones."""
        return f"{self.left_weight}x{self.left_arm}-{self.right_weight}x{self.right_arm}"

    @property
    def mirrored(self) -> Item:
        """The same item seen from behind."""
        return Item(
            left_weight=self.right_weight,
            left_arm=self.right_arm,
            right_weight=self.left_weight,
            right_arm=self.left_arm,
        )

    @property
    def is_mirror_product(self) -> bool:
        """Whether one side is the other with weight and arm exchanged: it cannot tell adding from multiplying."""
        exchanged = (self.left_arm, self.left_weight) == (self.right_weight, self.right_arm)
        return exchanged and self.left_weight != self.left_arm

    @property
    def difference(self) -> int:
        """By how much the products differ: the larger, the easier an item looks."""
        return abs(self.left_weight * self.left_arm - self.right_weight * self.right_arm)

    @property
    def problem_type(self) -> ProblemType:
        """Which of the six types it is, or concordant: heavier and farther on one side.  Source: Siegler 1976."""
        heavier = _sign(self.left_weight - self.right_weight)
        farther = _sign(self.left_arm - self.right_arm)
        if heavier == 0:
            return "balance" if farther == 0 else "distance"
        if farther in (0, heavier):
            return "weight" if farther == 0 else "concordant"
        down = _sign(self.left_weight * self.left_arm - self.right_weight * self.right_arm)
        if down == 0:
            return "conflict-balance"
        return "conflict-weight" if down == heavier else "conflict-distance"


def item_named(name: str) -> Item:
    """Return the item of a name such as 4x2-3x5.  Raises ValueError where it is none, or out of range."""
    words = name.replace("x", "-").split("-")
    if len(words) != 4 or not all(word.isascii() and word.isdecimal() and 1 <= int(word) <= MOST for word in words):
        raise ValueError(f"{name!r} names no item; 4x2-3x5 would do, each number from 1 to {MOST}")
    numbers = [int(word) for word in words]
    return Item(left_weight=numbers[0], left_arm=numbers[1], right_weight=numbers[2], right_arm=numbers[3])


@lru_cache(maxsize=1)
def pool() -> tuple[Item, ...]:
    """Return every item that may be asked, in a fixed order."""
    numbers = range(1, MOST + 1)
    every = (
        Item(left_weight=a, left_arm=b, right_weight=c, right_arm=d)
        for a, b, c, d in itertools.product(numbers, repeat=4)
    )
    return tuple(item for item in every if not item.is_mirror_product)


def situation_of_item(item: Item) -> Situation:
    """Return the item as ways of thinking see it: the numerals, the pivot at 0, a bar that turns nothing."""
    return Situation(
        loads=(
            Load(name="left", weight=item.left_weight, place=-item.left_arm),
            Load(name="right", weight=item.right_weight, place=item.right_arm),
        ),
        bar=None,
        left=-HALF_BAR_CM,
        right=HALF_BAR_CM,
    )


def build_of_item(item: Item) -> Build:
    """Return the item as a build: brass weights on a wooden bar, its zero at the pivot."""
    units = UNITS[UNIT_NAME]
    sides = (
        ("left brass", item.left_weight, -item.left_arm, "left"),
        ("right brass", item.right_weight, item.right_arm, "right"),
    )
    half_m = units.to_m(HALF_BAR_CM)
    return Build(
        title="Little bar",
        units=UNIT_NAME,
        reference_m=(0.0, 0.0, 0.0),
        view="numbers",
        bar=Bar(
            name="bar",
            length_m=2 * half_m,
            mass_kg=units.to_kg(BAR_WEIGHT_G),
            left_m=-half_m,
            depth_m=0.035 * 2 * half_m,
        ),
        parts=tuple(
            Part(
                name=name,
                mass_kg=units.to_kg(weight * WEIGHT_G),
                at_m=(units.to_m(arm * ARM_CM), 0.0, 0.0),
                hold="hung",
            )
            for name, weight, arm, _ in sides
        ),
        pivot=Pivot(at_m=0.0, up_m=PIN_UP_M),
        supports=(),
        looks=MappingProxyType({}),
    )


def truth_of_item(item: Item) -> Side:
    """Return the end that drops, by the mechanics."""
    build = build_of_item(item)
    return turn_about(build.all_parts, build.pivot or Pivot(at_m=0.0)).goes


def _sign(value: int) -> int:
    return (value > 0) - (value < 0)
