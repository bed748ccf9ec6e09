"""A probe under way: what has been answered, what is asked next, and what the answers fit.  Pure; its seed draws."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from random import Random
from typing import Literal

import numpy as np

from lab.lesson.asked import Side
from lab.lesson.probe.choice import MOST_OF_A_KIND, most_telling, most_telling_of_groups
from lab.lesson.probe.items import Item
from lab.lesson.probe.model import CHOICE_SLIP, Counts, Floats, answer_chances, no_answers, rule_chances
from lab.lesson.probe.rules import GROUPS, GUESSES, RULES, Group, Rule
from lab.lesson.probe.signatures import ANSWERS, signatures, turned_answer
from lab.lesson.probe.verdict import verdicts

MOST_ITEMS = 24
KIOSK_ITEMS = 4
"""A minute at an exhibit has room for four; they tell the broad group only."""

TIDY_DIFFERENCE = (2, 4)
"""Products that differ by this much are preferred: alike in all types, so that no type is easier to see."""

Form = Literal["full", "kiosk"]
Given = tuple[Item, Side]


@dataclass(frozen=True, slots=True, kw_only=True)
class Probe:
    """Where a learner is.

    given: what was asked and answered, in order.  item: what is asked now, None when there is nothing more to ask.
    to_the_end: asks all items, even where a rule is already sure.
    """

    seed: int
    form: Form = "full"
    given: tuple[Given, ...] = ()
    item: Item | None = None
    to_the_end: bool = False

    @property
    def most(self) -> int:
        """How many items there are at most."""
        return KIOSK_ITEMS if self.form == "kiosk" else MOST_ITEMS

    @property
    def finished(self) -> bool:
        """Whether there is nothing more to ask."""
        return self.item is None

    @property
    def can_go_on(self) -> bool:
        """Whether it stopped early, so that more answers would make it surer."""
        return self.finished and self.form == "full" and len(self.given) < self.most


@dataclass(frozen=True, slots=True, kw_only=True)
class RuleFit:
    """A rule and how likely it is after the answers."""

    rule: Rule
    chance: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """What some answers fit.

    fit: the steady rule, None for *mixed*.  ranked: every rule, the likeliest first; it begins with `fit` if there is
    one.  group: the likeliest broad group, and how likely.  answers: how many there were.
    """

    fit: RuleFit | None
    ranked: tuple[RuleFit, ...]
    group: Group
    group_chance: float
    answers: int

    @property
    def runner_up(self) -> RuleFit:
        """The likeliest rule beside the one that fits; answering at random is none."""
        return next(
            each
            for each in self.ranked
            if each.rule is not RULES[GUESSES] and (self.fit is None or each.rule is not self.fit.rule)
        )

    @property
    def ways(self) -> tuple[str, ...]:
        """Every rule with its chance as kept in the record, the likeliest first: "adds:0.9312"."""
        return tuple(f"{each.rule.name}:{each.chance:.4f}" for each in self.ranked)


def start_probe(*, seed: int, form: Form = "full") -> Probe:
    """Return a probe at its first item."""
    return _asking(Probe(seed=seed, form=form))


def answered(probe: Probe, answer: Side) -> Probe:
    """Return the probe after an answer to its item, which leads to the next item or to the end.

    Raises ValueError where nothing is asked any more.
    """
    if probe.item is None:
        raise ValueError("this probe is over; go_on asks more")
    return _asking(replace(probe, given=(*probe.given, (probe.item, answer)), item=None))


def go_on(probe: Probe) -> Probe:
    """Return a probe that stopped early at its next item; it then asks all of them."""
    return _asking(replace(probe, to_the_end=True)) if probe.can_go_on else probe


def finding(given: Sequence[Given]) -> Finding:
    """Return what some answers fit: those of a probe, or items and answers read from a record."""
    counts = counts_of(given)
    found = verdicts(counts[np.newaxis], signatures())
    chances, named = found.chances[0], int(found.named[0])
    order = np.argsort(-chances, kind="stable")
    ranked = tuple(RuleFit(rule=RULES[index], chance=float(chances[index])) for index in order)
    by_group = group_chances(chances[np.newaxis])[0]
    best = int(by_group.argmax())
    return Finding(
        fit=RuleFit(rule=RULES[named], chance=float(chances[named])) if found.steady[0] else None,
        ranked=ranked,
        group=GROUPS[best],
        group_chance=float(by_group[best]),
        answers=len(given),
    )


def is_over(given: Sequence[Given]) -> bool:
    """Whether a full probe had come to its end by then: one rule sure, or nothing left to ask."""
    return len(given) >= MOST_ITEMS or bool(verdicts(counts_of(given)[np.newaxis], signatures()).sure[0])


def counts_of(given: Sequence[Given]) -> Counts:
    """Return how often each answer was given to each signature."""
    kinds = signatures()
    counts = no_answers(kinds)
    for item, answer in given:
        index, turned = kinds.find(item)
        said = ANSWERS.index(answer)
        counts[index, turned_answer(said) if turned else said] += 1
    return counts


def group_table() -> Floats:
    """Return which rule belongs to which group: (rules, groups), of 0 and 1; who guesses belongs to none."""
    return np.array([[float(rule.group == group) for group in GROUPS] for rule in RULES])


def group_chances(chances: Floats) -> Floats:
    """Return how likely each broad group is, of learners who do not guess: (…, groups)."""
    by_group = chances @ group_table()
    summed: Floats = by_group / np.maximum(by_group.sum(axis=-1, keepdims=True), np.finfo(float).tiny)
    return summed


def without_guesses(chances: Floats) -> Floats:
    """Return the rules' chances where nobody guesses at random: that rule at 0."""
    kept = chances.copy()
    kept[..., GUESSES] = 0.0
    summed: Floats = kept / kept.sum(axis=-1, keepdims=True)
    return summed


def _asking(probe: Probe) -> Probe:
    """Return the probe with its next item, or with none where it ends."""
    kinds, asked = signatures(), len(probe.given)
    counts = counts_of(probe.given)[np.newaxis]
    if asked >= probe.most or (probe.form == "full" and not probe.to_the_end and verdicts(counts, kinds).sure[0]):
        return replace(probe, item=None)
    full = counts.sum(axis=-1) >= MOST_OF_A_KIND
    chances = answer_chances(kinds, slip=CHOICE_SLIP)
    now = rule_chances(counts, kinds, slips=(CHOICE_SLIP,))
    if probe.form == "kiosk":
        chosen = most_telling_of_groups(
            without_guesses(now), chances, group_table(), left=probe.most - asked, full=full
        )
    else:
        chosen = most_telling(now, chances, full=full)
    return replace(probe, item=_drawn(probe, int(chosen[0])))


def _drawn(probe: Probe, signature: int) -> Item:
    """Return one of a signature's items that was not asked yet, nor its mirror image, a tidy one if there is one."""
    seen = {each for item, _ in probe.given for each in (item, item.mirrored)}
    every = [item for item, _ in signatures().items[signature]]
    # Where all pairs were asked, a mirror image is still another picture.
    fresh = [item for item in every if item not in seen] or [
        item for item in every if item not in {each for each, _ in probe.given}
    ]
    low, high = TIDY_DIFFERENCE
    tidy = [item for item in fresh if low <= item.difference <= high]
    return Random(f"{probe.seed}/{len(probe.given)}").choice(tidy or fresh)
