"""How the columns and numbers of a sum are laid out as plain text."""

from __future__ import annotations

import math
import unicodedata
from collections.abc import Iterable, Sequence

_GAP = "   "

# Rulers and kitchen scales give three or four figures; a fifth shows what a conversion of units made of them.
_FIGURES = 5
_MOST_DECIMALS = 6


def decimals_for(values: Iterable[float], *, least: int) -> int:
    """How many decimals show every value of a column exactly, or else the largest to five figures."""
    column = [abs(value) for value in values]
    largest = max(column, default=0.0)
    if largest == 0:
        return least
    most = max(least, min(_MOST_DECIMALS, _FIGURES - 1 - math.floor(math.log10(largest))))
    for decimals in range(least, most):
        if all(abs(round(value, decimals) - value) <= 1e-9 * largest for value in column):
            return decimals
    return most


def doubt_decimals(doubt: float) -> int:
    """Decimals at which a standard uncertainty, or another small number, has one figure, or two where the first is a 1.

    Rounding 0.14 to 0.1 would take nearly a third of it away; rounding 0.84 to 0.8 takes a twentieth.
    """
    exponent = math.floor(math.log10(doubt))
    first = math.floor(doubt / 10.0**exponent)
    return max(0, min(_MOST_DECIMALS, -exponent + (1 if first == 1 else 0)))


def aligned(rows: Sequence[Sequence[str]]) -> list[str]:
    """The rows as lines: the first column to the left, the others to the right, each as wide as its widest."""
    widths = [max(map(text_width, column)) for column in zip(*rows, strict=True)]
    lines = []
    for first, *others in rows:
        cells = [first + " " * (widths[0] - text_width(first))]
        cells += [" " * (width - text_width(cell)) + cell for cell, width in zip(others, widths[1:], strict=True)]
        lines.append(_GAP.join(cells).rstrip())
    return lines


def text_width(text: str) -> int:
    """How many columns of a terminal a text takes: wide letters two, marks set over a letter none."""
    return sum(
        0 if unicodedata.combining(char) else 2 if unicodedata.east_asian_width(char) in "WF" else 1 for char in text
    )
