"""Which item to ask next: the one that is expected to tell most, looked at two answers ahead.

What is told is the mutual information between the rule and two answers, the second item being the best one after each
answer to the first.  One ahead, the plain greedy choice, is kept to be measured beside: from six items on it names
fewer rules rightly.  For the broad group alone it is the chance of naming that rightly.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from lab.lesson.probe.model import Floats

MOST_OF_A_KIND = 8
"""Items of one signature that are asked at most: the fewest in one are ten, and a learner must not see one twice."""

AT_ONCE = 4096
"""States worked on together: more need more memory and are no faster."""

FULL = -np.inf
ALIKE = 1e-12
"""Values closer than this are one, and the first signature is taken: round-off differs between machines."""

Indices = NDArray[np.intp]


def most_telling(chances_now: Floats, chances: Floats, *, full: NDArray[np.bool_]) -> Indices:
    """Return the signature to ask next for each state: (states,).

    chances_now: (states, rules), how likely each rule is.  chances: (signatures, rules, answers).
    full: (states, signatures), what may not be asked any more.
    """
    found = [
        _first_best(_told_in_two(chances_now[low : low + AT_ONCE], chances), full[low : low + AT_ONCE])
        for low in range(0, len(chances_now), AT_ONCE)
    ]
    return np.concatenate(found)


def most_telling_of_groups(
    chances_now: Floats, chances: Floats, groups: Floats, *, left: int, full: NDArray[np.bool_]
) -> Indices:
    """Return the signature to ask next where only the group of the rule is to be named.

    groups: (rules, groups), 1 where a rule belongs to a group.  left: items that may still be asked, 1 or more.
    """
    if left == 1:
        after = _after(chances_now, chances)
        value = (after @ groups).max(axis=-1).sum(axis=-1)
    else:
        value = _told_in_two_of_groups(chances_now, chances, groups)
    return _first_best(value, full)


def greedy(chances_now: Floats, chances: Floats, *, full: NDArray[np.bool_]) -> Indices:
    """Return the signature with the most mutual information between answer and rule, one ahead.  Shapes as above."""
    answers = np.einsum("ur,sra->usa", chances_now, chances)
    inner = chances_now @ _entropy(chances).T
    return _first_best(_entropy(answers) - inner, full)


def _told_in_two(now: Floats, chances: Floats) -> Floats:
    """Return what each first item is expected to tell together with the best second: (states, signatures).

    Of the information in both answers only what differs between items is summed: with h the entropy of an answer
    under a rule, that of the answers themselves less the mean of h.
    """
    signatures, rules, answers = chances.shape
    after = _after(now, chances).reshape(-1, rules)
    both = after @ chances.transpose(1, 0, 2).reshape(rules, -1)
    inner = _entropy(chances)
    second = _entropy(both.reshape(-1, signatures, answers)) - after @ inner.T
    value: Floats = second.max(axis=1).reshape(len(now), signatures, answers).sum(axis=2) - now @ inner.T
    return value


def _told_in_two_of_groups(now: Floats, chances: Floats, groups: Floats) -> Floats:
    after = _after(now, chances)
    then = np.einsum("usar,trb,rg->usatbg", after, chances, groups, optimize=True)
    value: Floats = then.max(axis=-1).sum(axis=-1).max(axis=-1).sum(axis=-1)
    return value


def _after(now: Floats, chances: Floats) -> Floats:
    """Return how likely each answer and rule are together: (states, signatures, answers, rules)."""
    joint: Floats = now[:, np.newaxis, np.newaxis, :] * chances.transpose(0, 2, 1)[np.newaxis]
    return joint


def _first_best(value: Floats, full: NDArray[np.bool_]) -> Indices:
    open_value = np.where(full, FULL, value)
    best: Indices = np.argmax(open_value >= open_value.max(axis=1, keepdims=True) - ALIKE, axis=1)
    return best


def _entropy(chances: Floats) -> Floats:
    logs = np.log(np.maximum(chances, np.finfo(float).tiny))
    summed: Floats = -(chances * logs).sum(axis=-1)
    return summed
