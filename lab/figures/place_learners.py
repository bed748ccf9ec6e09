"""Simulated learners who are asked where a bar balances: an idea, a hand that is not quite still, and slips."""

from __future__ import annotations

import numpy as np

from lab.lesson.probe.places import IDEA_NAMES, LENGTH, after_place, next_bars, no_idea, place_pool


def ideas_named_rightly(each: int, *, answers: int, hand: float, slip: float, seed: int = 5) -> tuple[float, ...]:
    """Return the share of learners whose idea is the one named after 1, 2, … answers; `each` learners an idea.

    hand: standard deviation of an answer, as a share of the length.  slip: chance that it lies anywhere.
    """
    draws, pool = np.random.default_rng(seed), place_pool()
    idea = np.repeat(np.arange(len(IDEA_NAMES)), each)
    here = np.arange(len(idea))
    chances = no_idea(len(idea))
    used = np.zeros((len(idea), len(pool.items)), dtype=bool)
    right = []
    for _ in range(answers):
        bars = next_bars(chances, used)
        used[here, bars] = True
        meant = pool.places[bars, idea] + draws.normal(0.0, hand * LENGTH, len(idea))
        anywhere = draws.random(len(idea)) < slip
        place = np.where(anywhere, draws.uniform(0.0, LENGTH, len(idea)), np.clip(meant, 0.0, LENGTH))
        chances = after_place(chances, bars, place)
        right.append(float((chances.argmax(axis=1) == idea).mean()))
    return tuple(right)
