"""Learner codes: short, random, easy to read aloud, and guarded against slips of the pen."""

from __future__ import annotations

from collections.abc import Sequence
from random import SystemRandom
from typing import Protocol

#: No vowels (no words by accident, and no "2E4" that a spreadsheet takes for a number), and nothing
#: that is easily taken for a neighbour: 0 O Q D, 1 I L, 2 Z, 5 S, 8 B, 6 G, U V Y are out.
ALPHABET = "34679CFHJKMNPRTWX"
#: 17 ** 7 is 410 million: among 2 000 codes the chance of any two alike is about 1 in 200.
RANDOM_CHARACTERS = 7

_RANK = {character: rank for rank, character in enumerate(ALPHABET)}


class RandomSource(Protocol):
    """Anything that picks one of several: `random.Random`, `random.SystemRandom`."""

    def choice(self, seq: Sequence[str], /) -> str:
        """One of the given characters."""


def new_code(random_source: RandomSource | None = None) -> str:
    """A fresh code: seven random characters and a check character.

    random_source: for tests; without one the system's own randomness is used, so that a code tells
    nothing about the learner or about any other code.
    """
    source = SystemRandom() if random_source is None else random_source
    body = "".join(source.choice(ALPHABET) for _ in range(RANDOM_CHARACTERS))
    return body + _check_character(body)


def tidy_code(text: str) -> str:
    """The code a person meant: capitals, without the spaces and dashes that help in copying."""
    return "".join(text.split()).replace("-", "").upper()


def valid_code(code: str) -> bool:
    """Whether this is a code as `new_code` makes them.

    The weights 1 to 7 and the check character's own, −1, differ from each other modulo the prime 17,
    so one wrong character, or any two characters exchanged, never gives another valid code.
    """
    if len(code) != RANDOM_CHARACTERS + 1 or any(character not in _RANK for character in code):
        return False
    return code[-1] == _check_character(code[:-1])


def _check_character(body: str) -> str:
    total = sum(weight * _RANK[character] for weight, character in enumerate(body, start=1))
    return ALPHABET[total % len(ALPHABET)]
