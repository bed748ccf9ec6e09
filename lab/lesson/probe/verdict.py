"""What the answers say of a learner: the rule that they fit, the runner-up, or that no steady rule fits.

A rule is *steady* where it is likely whatever the slips, where the slips it needs are few, and where it explains the
answers better than two rules taken in turns do: a learner who changes between two has no steady rule.
"""

from __future__ import annotations

import itertools
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from lab.lesson.probe.model import Counts, Floats, answer_chances, log_likelihood, rule_chances, shares
from lab.lesson.probe.rules import GUESSES, RULE_NAMES
from lab.lesson.probe.signatures import Signatures

SLIP_GRID = (0.02, 0.05, 0.10, 0.20, 0.30, 0.45)
SLIP_PRIOR = (0.25, 0.25, 0.20, 0.15, 0.10, 0.05)
FEW_SLIPS = 0.10
"""A steady learner slips no more often than this.  Source: two latent classes in the open answers
of 779 people (Jansen and van der Maas 2002) slip in 5 % of the items."""

SURE_OF_RULE = 0.90
SURE_OF_FEW_SLIPS = 0.70
"""How likely the rule, and few slips given the rule, must be.  Higher, and learners of 10 % are called mixed."""

IN_TURNS_SLIP = 0.05
IN_TURNS_ODDS = 1.0
"""How much better two rules in turns may explain the answers than the rule does.  At 3, one in seven learners who
change between the first two rules is still given one of them; at 1, one in ten, and steady ones lose next to none."""

STOP = 0.95
"""One rule is named when it is this likely."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Verdicts:
    """What is said of many learners at once.

    chances: (learners, rules).  named: (learners,) the likeliest rule.  steady: (learners,) whether it is steady.
    """

    chances: Floats
    named: NDArray[np.intp]
    steady: NDArray[np.bool_]

    @property
    def sure(self) -> NDArray[np.bool_]:
        """Whether one rule is likely enough to stop: a steady one, or that of answering at random."""
        likely = self.chances.max(axis=-1) >= STOP
        sure: NDArray[np.bool_] = likely & (self.steady | (self.named == GUESSES))
        return sure


def verdicts(counts: Counts, kinds: Signatures) -> Verdicts:
    """Return what is said after some answers.  counts: (learners, signatures, answers)."""
    chances = rule_chances(counts, kinds)
    named = chances.argmax(axis=-1)
    return Verdicts(chances=chances, named=named, steady=_steady(counts, kinds, named))


def _steady(counts: Counts, kinds: Signatures, named: NDArray[np.intp]) -> NDArray[np.bool_]:
    by_slip = np.stack([log_likelihood(counts, answer_chances(kinds, slip=slip)) for slip in SLIP_GRID], axis=-2)
    prior = np.log(np.array(SLIP_PRIOR) / len(RULE_NAMES))[:, np.newaxis]
    logs = by_slip + prior
    joint = shares(logs.reshape(*logs.shape[:-2], -1)).reshape(logs.shape)
    here = np.arange(len(counts))
    rule = joint.sum(axis=-2)[here, named]
    few = np.array(SLIP_GRID) <= FEW_SLIPS
    slips_few = joint[:, few].sum(axis=-2)[here, named] / np.maximum(rule, np.finfo(float).tiny)
    # How likely the answers are under all rules and slips together, beside two rules in turns.
    alone = np.logaddexp.reduce(logs.reshape(len(counts), -1), axis=-1)
    turns = _log_likelihood_in_turns(counts, kinds)
    steady: NDArray[np.bool_] = (
        (named != GUESSES)
        & (rule >= SURE_OF_RULE)
        & (slips_few >= SURE_OF_FEW_SLIPS)
        & (turns - alone <= np.log(IN_TURNS_ODDS))
    )
    return steady


def _log_likelihood_in_turns(counts: Counts, kinds: Signatures) -> Floats:
    """Return the log of how likely the answers are if two rules are drawn from at every item, over all pairs."""
    chances = answer_chances(kinds, slip=IN_TURNS_SLIP)
    steady = [index for index in range(len(RULE_NAMES)) if index != GUESSES]
    pairs = [(chances[:, one] + chances[:, other]) / 2 for one, other in itertools.combinations(steady, 2)]
    logs = log_likelihood(counts, np.stack(pairs, axis=1))
    over_all: Floats = np.logaddexp.reduce(logs, axis=-1) - np.log(len(pairs))
    return over_all
