"""The plain test that the probe is measured beside: fixed items, and the rule that fits most of them.

Forms and criteria after Siegler (1981): random forms of four blocks of one item a type; of the seven rules that
always answer the single best one, if it fits 20 of 24 (the same share of fewer, rounded up); else muddle, if 10 of 12
answers where weight and distance agree are right; else no rule, which is right for who guesses.
"""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from lab.figures.probe_learners import of_one_rule
from lab.lesson.probe.items import Item, pool
from lab.lesson.probe.rules import GUESSES, RULE_NAMES, RULES
from lab.lesson.probe.signatures import ANSWERS, ANY, says_of, signatures

FORMS = 25
BLOCKS = 4
TYPES = ("balance", "weight", "distance", "conflict-weight", "conflict-distance", "conflict-balance")
FIT_SHARE = 20 / 24
MUDDLE_SHARE = 10 / 12
MUDDLES = RULE_NAMES.index("muddles")
MOMENT = RULE_NAMES.index("moment")
STEADY = tuple(index for index in range(len(RULES)) if index not in (MUDDLES, GUESSES))


def matched_rightly(each: int, *, slip: float, at: tuple[int, ...], seed: int = 6) -> dict[int, float]:
    """Return the share of learners whose rule matching names after n items; `each` learners a rule, over all forms."""
    draws = np.random.default_rng(seed)
    per_form = max(1, each // FORMS)
    right: dict[int, list[float]] = {number: [] for number in at}
    for _ in range(FORMS):
        form = _form(draws)
        learners, rule = of_one_rule(per_form, slip=slip)
        said = _said(learners, form, draws)
        for number in at:
            named = _matched(said[:, :number], form[:number])
            right[number].append(float((named == rule).mean()))
    return {number: float(np.mean(shares)) for number, shares in right.items()}


def _form(draws: np.random.Generator) -> list[Item]:
    by_type = {kind: [item for item in pool() if item.problem_type == kind] for kind in TYPES}
    picked = {kind: draws.choice(len(items), BLOCKS, replace=False) for kind, items in by_type.items()}
    return [
        by_type[TYPES[kind]][picked[TYPES[kind]][block]]
        for block in range(BLOCKS)
        for kind in draws.permutation(len(TYPES))
    ]


def _said(learners: NDArray[np.float64], form: list[Item], draws: np.random.Generator) -> NDArray[np.int8]:
    """Return what each learner answers to each item of a form: (learners, items)."""
    columns = []
    for item in form:
        index, turned = signatures().find(item)
        reached = np.cumsum(learners[:, index], axis=-1)[:, :-1]
        answer = (draws.random((len(learners), 1)) >= reached).sum(axis=-1)
        columns.append(len(ANSWERS) - 1 - answer if turned else answer)
    return np.stack(columns, axis=1).astype(np.int8)


def _matched(said: NDArray[np.int8], form: list[Item]) -> NDArray[np.intp]:
    """Return the rule that matching names for each learner; -1, which is never right, where two fit best alike."""
    says = np.array([says_of(item) for item in form])
    fits = (said[:, :, np.newaxis] == says[np.newaxis]).sum(axis=1)[:, list(STEADY)]
    most = fits.max(axis=1)
    alone = (fits == most[:, np.newaxis]).sum(axis=1) == 1
    enough = most >= math.ceil(FIT_SHARE * len(form) - 1e-9)
    agree = says[:, MUDDLES] != ANY
    within = (said[:, agree] == says[agree, MOMENT]).sum(axis=1)
    muddles = within >= math.ceil(MUDDLE_SHARE * agree.sum() - 1e-9)
    best = np.where(alone, np.array(STEADY)[fits.argmax(axis=1)], -1)
    named: NDArray[np.intp] = np.where(enough, best, np.where(muddles, MUDDLES, GUESSES))
    return named
