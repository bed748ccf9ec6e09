"""Items that no rule tells apart are one: their signature is what the nine rules say about them.

An item and its mirror image tell equally much, so both belong to one signature and an answer is turned round with it.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from lab.lesson.asked import Side
from lab.lesson.probe.items import Item, pool, situation_of_item
from lab.lesson.probe.rules import RULES

ANSWERS: tuple[Side, ...] = ("left", "level", "right")
"""In the order of the last axis of every array of answers."""

ANY = -1
"""In place of an answer: the rule says any of the three alike."""

Says = tuple[int, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Signatures:
    """Every signature of the pool.

    says: (signatures, rules) int, the index into `ANSWERS` that each rule gives, or `ANY`.
    items: for each signature its items, each with whether the signature is that of its mirror image.
    """

    says: NDArray[np.int8]
    items: tuple[tuple[tuple[Item, bool], ...], ...]

    def __len__(self) -> int:
        """How many there are."""
        return len(self.items)

    def find(self, item: Item) -> tuple[int, bool]:
        """Return an item's signature, and whether an answer to it must be turned round.

        Raises ValueError for an item that is not in the pool.
        """
        found = _places().get(item)
        if found is None:
            raise ValueError(f"item {item.name} is not one that the probe asks")
        return found


@lru_cache(maxsize=1)
def signatures() -> Signatures:
    """Return the signatures of the whole pool, worked out once."""
    listed: dict[Says, list[tuple[Item, bool]]] = {}
    for item in pool():
        says = says_of(item)
        turned = tuple(turned_answer(each) for each in says)
        # Of a signature and its mirror image the one that sorts first stands for both.
        listed.setdefault(min(says, turned), []).append((item, turned < says))
    keys = sorted(listed)
    return Signatures(says=np.array(keys, dtype=np.int8), items=tuple(tuple(listed[key]) for key in keys))


def says_of(item: Item) -> Says:
    """Return what each rule answers to an item, as an index into `ANSWERS` or `ANY`."""
    seen = situation_of_item(item)
    said = (rule.predict(seen) for rule in RULES)
    return tuple(ANY if each is None else ANSWERS.index(each) for each in said)


def turned_answer(answer: int) -> int:
    """Return the answer that means the same on the mirrored item."""
    return answer if answer == ANY else len(ANSWERS) - 1 - answer


@lru_cache(maxsize=1)
def _places() -> dict[Item, tuple[int, bool]]:
    return {item: (index, turned) for index, items in enumerate(signatures().items) for item, turned in items}
