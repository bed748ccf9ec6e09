"""Learner codes: short, random, easy to read aloud, and guarded against slips of the pen."""

from __future__ import annotations

import difflib
import itertools
from collections.abc import Iterable, Sequence
from random import SystemRandom
from typing import Protocol

#: No vowels (no words by accident, and no "2E4" that a spreadsheet takes for a number), and nothing
#: that is easily taken for a neighbour: 0 O Q D, 1 I L, 2 Z, 5 S, 8 B, 6 G, U V Y are out.
ALPHABET = "34679CFHJKMNPRTWX"
#: 17 ** 7 is 410 million: among 2 000 codes the chance of any two alike is about 1 in 200.
RANDOM_CHARACTERS = 7

#: What a person may have read or written in place of each character that no code has.
_LOOK_ALIKES = {
    "0": "9C", "O": "9C", "Q": "9C", "D": "9C", "1": "74", "I": "74", "L": "74", "2": "7", "Z": "7", "5": "63",
    "S": "63", "8": "36", "B": "36", "G": "6C", "A": "4R", "E": "F3", "U": "W", "V": "W", "Y": "4X",
}  # fmt: skip
#: A code with more of them than this was not misread: it is something else.
_MOST_MISREAD = 3

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


def shown_code(code: str) -> str:
    """The code in two halves, which are easier to read and to copy: K7M4-9XRC."""
    tidy, half = tidy_code(code), (RANDOM_CHARACTERS + 1) // 2
    return f"{tidy[:half]}-{tidy[half:]}"


def meant_code(text: str, known: Iterable[str] = ()) -> str | None:
    """The code that somebody typed, however it is spaced, in capitals or not, with characters that look alike.

    known: codes in use here: where look-alikes leave several codes, one of these is meant.
    Returns None where no code can be meant, or several.
    """
    tidy = tidy_code(text)
    if valid_code(tidy):
        return tidy
    if len(tidy) != RANDOM_CHARACTERS + 1 or sum(character not in _RANK for character in tidy) > _MOST_MISREAD:
        return None
    readings = ((character,) if character in _RANK else tuple(_LOOK_ALIKES.get(character, "")) for character in tidy)
    # The check character leaves one in seventeen of them.
    found = [code for code in ("".join(each) for each in itertools.product(*readings)) if valid_code(code)]
    used = [code for code in found if code in frozenset(known)]
    fitting = used or found
    return fitting[0] if len(fitting) == 1 else None


def near_code(text: str, known: Iterable[str]) -> str | None:
    """The known code that looks most like what was typed; None where none does."""
    return next(iter(difflib.get_close_matches(tidy_code(text), list(known), n=1)), None)


def _check_character(body: str) -> str:
    total = sum(weight * _RANK[character] for weight, character in enumerate(body, start=1))
    return ALPHABET[total % len(ALPHABET)]
