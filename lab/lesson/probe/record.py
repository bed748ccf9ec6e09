"""An answer of the probe as the record keeps it, and what a record tells of a probe again."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Protocol

from lab.files import build_text
from lab.lesson.asked import SIDES, Side
from lab.lesson.happenings import Answered
from lab.lesson.probe.items import build_of_item, item_named, truth_of_item
from lab.lesson.probe.probe import Given, Probe, answered, finding

LESSON = "probe"
KIND = "probe"
"""Kept in the record in place of a lesson's name and a question's kind."""


class Kept(Protocol):
    """What an attempt in the record has, as far as it matters here."""

    @property
    def question(self) -> str:
        """The item's name."""

    @property
    def kind(self) -> str:
        """`KIND` where it is one of these."""

    @property
    def understood(self) -> str | float | tuple[float, ...]:
        """The side."""


def recorded(probe: Probe, answer: Side, *, given: str, seconds: float) -> Answered:
    """Return the row for an answer to what a probe asks now.

    given: as it was typed or chosen.  seconds: from being asked.  Its `ways` are all rules with their chances after
    this answer, the likeliest first.  Raises ValueError where nothing is asked.
    """
    item = probe.item
    after = answered(probe, answer)
    if item is None:
        raise ValueError("this probe asks nothing now")
    truth = truth_of_item(item)
    return Answered(
        lesson=LESSON,
        question=item.name,
        kind=KIND,
        seed=probe.seed,
        round=len(probe.given),
        scene=build_text(build_of_item(item)),
        given=given,
        understood=answer,
        truth=truth,
        tolerance=None,
        right=answer == truth,
        sure=None,
        seconds=seconds,
        hints=0,
        ways=finding(after.given).ways,
        locked=True,
    )


def given_in(rows: Iterable[Kept]) -> tuple[Given, ...]:
    """Return items and answers of rows of the record, in order; other kinds and spoilt rows are passed over."""
    found = []
    for row in rows:
        side = next((side for side in SIDES if side == row.understood), None)
        if row.kind != KIND or side is None:
            continue
        try:
            item = item_named(row.question)
        except ValueError:
            continue
        if not item.is_mirror_product:
            found.append((item, side))
    return tuple(found)
