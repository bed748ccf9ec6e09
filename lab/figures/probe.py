"""How well the probe names how learners think: `python -m lab.figures probe`.

Simulated learners, seeds fixed.  The same nine rules make the answers and judge them, slips are independent and nobody
learns on the way, so these are ceilings: real learners do worse, and the plain test beside them does, too.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator

from lab.figures.floors import Floor
from lab.figures.matching_learners import matched_rightly
from lab.figures.place_learners import ideas_named_rightly
from lab.figures.probe_learners import (
    called_steady,
    groups_named_rightly,
    named_rightly,
    of_one_rule,
    of_two_rules,
    one_ahead,
    stopped,
)
from lab.figures.score_figures import kr_20, kr_20_of_mixed_variances, sides_of_small_items, teaching_scores
from lab.lesson.asked import SIDES
from lab.lesson.probe.rules import GUESSES, RULE_NAMES

LEARNERS, LEARNERS_QUICK = 5000, 400
"""A rule: with 5,000 the sampling error of a share of all nine is 0.1 points at most, with 400 0.5."""

AT = (4, 6, 8, 10, 12)
NAMED_FLOORS = {(0.05, 6): 91.0, (0.05, 10): 96.0, (0.10, 8): 89.0, (0.10, 12): 95.0}
SLIPS = (0.022, 0.05, 0.10)
FLOORED_PAIR = ("weight_only", "weight_then_distance")
SHOWN_PAIRS = (
    FLOORED_PAIR,
    ("weight_then_distance", "moment"),
    ("adds", "moment"),
)


def floors(*, quick: bool) -> Iterator[Floor]:
    """Measure, and yield each figure as soon as it is there.  quick: fewer learners."""
    each = LEARNERS_QUICK if quick else LEARNERS
    yield from _named(each)
    yield from _stopped(each)
    yield from _changing(each, quick=quick)
    kiosk = 100 * groups_named_rightly(each, slip=0.05)
    yield Floor(name="kiosk, 4 items, broad group, 5 % slips", ours=kiosk, bound=93.0)
    yield from _numbers(rounds=1 if quick else 7)
    yield from known_values()


def _named(each: int) -> Iterator[Floor]:
    for slip in SLIPS:
        ours = named_rightly(each, slip=slip, at=AT)
        plain = named_rightly(each, slip=slip, at=AT, choose=one_ahead)
        matched = matched_rightly(each, slip=slip, at=(*AT, 24))
        for number in AT:
            beside = {
                "greedy choice": 100 * plain.right[number],
                "matching on as many": 100 * matched[number],
                "matching on 24": 100 * matched[24],
            }
            yield Floor(
                name=f"rule named rightly, {slip:.1%} slips, {number} items",
                ours=100 * ours.right[number],
                bound=NAMED_FLOORS.get((slip, number)),
                beside=beside,
            )
        if slip >= 0.05:
            worst = max(ours.said_off.values())
            yield _said_off(f"said at 0.80 or more and so, {slip:.1%} slips, worst of {AT} items", worst)


def _stopped(each: int) -> Iterator[Floor]:
    for slip in SLIPS:
        found = stopped(*of_one_rule(each, slip=slip))
        held = slip == 0.05
        yield Floor(
            name=f"stop at 0.95, {slip:.1%} slips: items",
            ours=found.items,
            bound=7.0 if held else None,
            sense="at most",
            unit="",
            decimals=2,
        )
        yield Floor(
            name=f"stop at 0.95, {slip:.1%} slips: named rightly", ours=100 * found.right, bound=96.0 if held else None
        )
        yield Floor(
            name=f"stop at 0.95, {slip:.1%} slips: of learners with a rule, given a steady one",
            ours=100 * found.steady,
        )
        if slip >= 0.05:
            yield _said_off(f"said at the stop and so, {slip:.1%} slips", found.said_off)


def _said_off(name: str, off: float) -> Floor:
    return Floor(name=name, ours=off, bound=0.03, sense="at most", unit="apart", decimals=3)


def _changing(each: int, *, quick: bool) -> Iterator[Floor]:
    """Learners who change between two rules at every item."""
    every = [pair for pair in itertools.combinations(RULE_NAMES[:GUESSES], 2) if pair not in SHOWN_PAIRS]
    for pair in (*SHOWN_PAIRS, *(() if quick else every)):
        learners = of_two_rules(each, *(RULE_NAMES.index(name) for name in pair), slip=0.05)
        beside = {}
        if pair in SHOWN_PAIRS:
            beside = {"where the probe stops by itself": 100 * stopped(learners[: each // 2], None).steady}
        yield Floor(
            name=f"changes between {pair[0]} and {pair[1]}, 24 items, given a steady rule",
            ours=100 * called_steady(learners),
            bound=18.0 if pair == FLOORED_PAIR else None,
            sense="at most",
            beside=beside,
        )


def _numbers(*, rounds: int) -> Iterator[Floor]:
    """Places: 300 learners an idea in each round."""
    found = [ideas_named_rightly(300, answers=3, hand=0.02, slip=0.05, seed=5 + each) for each in range(rounds)]
    for answers, bound in ((1, None), (2, 95.0), (3, 99.0)):
        share = 100 * sum(each[answers - 1] for each in found) / rounds
        yield Floor(name=f"place, {answers} answers, hand 2 %, 5 % slips", ours=share, bound=bound)


def known_values() -> Iterator[Floor]:
    """Yield counts and coefficients whose value is known: how far ours is off."""
    sides = sides_of_small_items()
    known = {"left": 288, "level": 49, "right": 288}
    for side in SIDES:
        yield Floor(
            name=f"625 cases of 1 to 5: {side}",
            ours=float(sides[side]),
            bound=float(known[side]),
            sense="exactly",
            unit="",
            decimals=0,
        )
    right, wrong = kr_20(teaching_scores()), kr_20_of_mixed_variances(teaching_scores())
    if right is not None and wrong is not None:
        beside = {"the trap, with variances mixed": wrong}
        yield Floor(
            name="KR-20 of the worked example",
            ours=right,
            bound=0.6963,
            sense="exactly",
            unit="",
            decimals=4,
            beside=beside,
        )
