"""How likely each answer is under each rule, and each rule after some answers.

A learner with a rule gives its answer but for slips; a slip is one of the two other answers alike.
Arrays: counts (…, signatures, answers) of the answers so far; chances (signatures, rules, answers).
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from lab.lesson.probe.signatures import ANSWERS, ANY, Signatures

Floats = NDArray[np.float64]
Counts = NDArray[np.int8]

CHOICE_SLIP = 0.06
"""Slips assumed in choosing what to ask.  With fewer, 5.5 %, learners who slip in 10 % fall below 95 % at twelve items;
with more, those who slip in 5 % are named less surely at ten."""

SAID_SLIPS = (0.05, 0.10)
"""Slips assumed in what is said of a rule, each as likely: between them it stays within 0.03 of what comes true."""


def answer_chances(kinds: Signatures, *, slip: float) -> Floats:
    """Return how likely each answer is: (signatures, rules, answers).  slip: the chance of one, 0 to 2/3."""
    says = kinds.says[..., np.newaxis]
    told = says == np.arange(len(ANSWERS))
    return np.where(says == ANY, 1.0 / len(ANSWERS), np.where(told, 1.0 - slip, slip / (len(ANSWERS) - 1)))


def log_likelihood(counts: Counts, chances: Floats) -> Floats:
    """Return the log of how likely the answers so far are under each rule: (…, rules).

    counts: (…, signatures, answers).  chances: (signatures, rules, answers).
    """
    flat = counts.reshape(*counts.shape[:-2], -1).astype(np.float64)
    logs = np.log(chances).transpose(0, 2, 1).reshape(flat.shape[-1], -1)
    return flat @ logs


def shares(logs: Floats) -> Floats:
    """Return weights that sum to 1 over the last axis, from their logs."""
    weights = np.exp(logs - logs.max(axis=-1, keepdims=True))
    summed: Floats = weights / weights.sum(axis=-1, keepdims=True)
    return summed


def rule_chances(counts: Counts, kinds: Signatures, *, slips: Sequence[float] = SAID_SLIPS) -> Floats:
    """Return how likely each rule is after the answers so far, all rules alike before them: (…, rules).

    slips: each as likely as the others.
    """
    logs = np.stack([log_likelihood(counts, answer_chances(kinds, slip=slip)) for slip in slips], axis=-2)
    joint = shares(logs.reshape(*logs.shape[:-2], -1)).reshape(logs.shape)
    summed: Floats = joint.sum(axis=-2)
    return summed


def no_answers(kinds: Signatures) -> Counts:
    """Return the counts before the first answer."""
    return np.zeros((len(kinds), len(ANSWERS)), dtype=np.int8)
