"""Simulated learners at the probe: many at once, in step, from a fixed seed.

A learner has a rule, or draws one of two at every item, and slips; the probe knows neither.  Learners with the same
answers are asked the same, so what to ask is worked out once for each state that comes up.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from lab.lesson.probe.choice import MOST_OF_A_KIND, greedy, most_telling, most_telling_of_groups
from lab.lesson.probe.model import CHOICE_SLIP, Counts, Floats, answer_chances, no_answers, rule_chances
from lab.lesson.probe.probe import KIOSK_ITEMS, MOST_ITEMS, group_table, without_guesses
from lab.lesson.probe.rules import GUESSES, RULES
from lab.lesson.probe.signatures import signatures
from lab.lesson.probe.verdict import verdicts

Choose = Callable[[Floats, NDArray[np.bool_], int], NDArray[np.intp]]
"""From rules' chances (states, rules), what is full (states, signatures) and items left, to signatures (states,)."""


def two_ahead(now: Floats, full: NDArray[np.bool_], left: int) -> NDArray[np.intp]:
    """Choose as the probe does."""
    del left  # it may stop at any item
    return most_telling(now, answer_chances(signatures(), slip=CHOICE_SLIP), full=full)


def one_ahead(now: Floats, full: NDArray[np.bool_], left: int) -> NDArray[np.intp]:
    """Choose greedily, to be measured beside."""
    del left
    return greedy(now, answer_chances(signatures(), slip=CHOICE_SLIP), full=full)


def for_groups(now: Floats, full: NDArray[np.bool_], left: int) -> NDArray[np.intp]:
    """Choose as the probe in the kiosk does."""
    chances = answer_chances(signatures(), slip=CHOICE_SLIP)
    return most_telling_of_groups(without_guesses(now), chances, group_table(), left=left, full=full)


def answers_of(learners: Floats, *, items: int, choose: Choose, seed: int) -> Iterator[Counts]:
    """Yield the counts of the answers so far, after each item: (learners, signatures, answers).

    learners: (learners, signatures, answers), how likely each answers what.
    """
    kinds, draws = signatures(), np.random.default_rng(seed)
    counts = np.repeat(no_answers(kinds)[np.newaxis], len(learners), axis=0)
    here = np.arange(len(learners))
    for asked in range(items):
        states, which = np.unique(counts.reshape(len(counts), -1), axis=0, return_inverse=True)
        state = states.reshape(-1, *counts.shape[1:])
        now = rule_chances(state, kinds, slips=(CHOICE_SLIP,))
        chosen = choose(now, state.sum(axis=-1) >= MOST_OF_A_KIND, items - asked)[which.ravel()]
        reached = np.cumsum(learners[here, chosen], axis=-1)[:, :-1]
        said = (draws.random((len(learners), 1)) >= reached).sum(axis=-1)
        counts[here, chosen, said] += 1
        yield counts


def of_one_rule(each: int, *, slip: float, rules: int = len(RULES)) -> tuple[Floats, NDArray[np.intp]]:
    """Return learners with one rule, `each` of every rule, and their rules."""
    rule = np.repeat(np.arange(rules), each)
    return answer_chances(signatures(), slip=slip)[:, rule].transpose(1, 0, 2), rule


def of_two_rules(count: int, one: int, other: int, *, slip: float) -> Floats:
    """Return learners who draw one of two rules at every item."""
    chances = answer_chances(signatures(), slip=slip)
    mean = (chances[:, one] + chances[:, other]) / 2
    return np.broadcast_to(mean, (count, *mean.shape))


@dataclass(frozen=True, slots=True, kw_only=True)
class Named:
    """How often the rule was named rightly after n items, and what was said at 0.80 or more against what was so."""

    right: dict[int, float]
    said_off: dict[int, float]


def named_rightly(each: int, *, slip: float, at: tuple[int, ...], choose: Choose = two_ahead, seed: int = 1) -> Named:
    """Return shares of learners whose rule is the one named; `each` learners a rule."""
    learners, rule = of_one_rule(each, slip=slip)
    right, off = {}, {}
    for number, counts in enumerate(answers_of(learners, items=max(at), choose=choose, seed=seed), start=1):
        if number in at:
            chances = rule_chances(counts, signatures())
            found = chances.argmax(axis=-1) == rule
            said = chances.max(axis=-1)
            right[number] = float(found.mean())
            off[number] = float(abs(found[said >= 0.8].mean() - said[said >= 0.8].mean()))
    return Named(right=right, said_off=off)


@dataclass(frozen=True, slots=True, kw_only=True)
class Stopped:
    """Learners asked until the probe stops: items on average, shares named rightly, called steady, said too high.

    steady: share, of those who have a rule, that is given a steady one.
    """

    items: float
    right: float
    steady: float
    said_off: float


def stopped(learners: Floats, rule: NDArray[np.intp] | None, *, seed: int = 2) -> Stopped:
    """Return how learners fare who are asked until the probe stops by itself.  rule: theirs, or None for none."""
    going = np.ones(len(learners), dtype=bool)
    items, named = np.zeros(len(learners)), np.zeros(len(learners), dtype=np.intp)
    said, steady = np.zeros(len(learners)), np.zeros(len(learners), dtype=bool)
    for number, counts in enumerate(answers_of(learners, items=MOST_ITEMS, choose=two_ahead, seed=seed), start=1):
        where = np.flatnonzero(going)
        found = verdicts(counts[where], signatures())
        ends = found.sure | (number == MOST_ITEMS)
        ended = where[ends]
        items[ended], named[ended] = number, found.named[ends]
        said[ended], steady[ended] = found.chances.max(axis=-1)[ends], found.steady[ends]
        going[ended] = False
        if not going.any():
            break
    right = np.zeros(len(learners), dtype=bool) if rule is None else named == rule
    with_rule = np.ones(len(learners), dtype=bool) if rule is None else rule < GUESSES
    high = said >= 0.8
    off = abs(right[high].mean() - said[high].mean()) if high.any() else 0.0
    return Stopped(
        items=float(items.mean()),
        right=float(right.mean()),
        steady=float(steady[with_rule].mean()),
        said_off=float(off),
    )


def called_steady(learners: Floats, *, seed: int = 3) -> float:
    """Return the share of learners who are given a steady rule after all items."""
    *_, counts = answers_of(learners, items=MOST_ITEMS, choose=two_ahead, seed=seed)
    return float(verdicts(counts, signatures()).steady.mean())


def groups_named_rightly(each: int, *, slip: float, seed: int = 4) -> float:
    """Return the share of learners whose broad group four items name; nobody guesses at random."""
    learners, rule = of_one_rule(each, slip=slip, rules=GUESSES)
    *_, counts = answers_of(learners, items=KIOSK_ITEMS, choose=for_groups, seed=seed)
    chances = without_guesses(rule_chances(counts, signatures()))
    groups = group_table()
    found = (chances @ groups).argmax(axis=-1)
    return float((found == groups[rule].argmax(axis=-1)).mean())
