"""Attempts as a table that spreadsheets read: CSV by RFC 4180."""

from __future__ import annotations

import csv
from collections.abc import Iterable
from typing import TextIO

from lab.attempts.attempt import Attempt
from lab.attempts.schema import COLUMNS

#: A spreadsheet takes a text that starts so for a formula and runs it.
_FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r", "\0")


def write_csv(attempts: Iterable[Attempt], stream: TextIO) -> int:
    """Write a heading and a row an attempt; returns how many attempts.

    Lines end in CR LF, decimals have a point, yes and no are 1 and 0, what is not known is empty.
    stream: opened with `newline=""`, or the line ends are doubled on some systems.
    """
    writer = csv.writer(stream, lineterminator="\r\n")
    writer.writerow(COLUMNS)
    rows = 0
    for attempt in attempts:
        writer.writerow([_cell(getattr(attempt, name)) for name in COLUMNS])
        rows += 1
    return rows


def _cell(value: object) -> str | int | float:
    """The type decides: a number stays as it is (−2.5 is no formula), a text is made harmless."""
    if value is None:
        return ""
    if isinstance(value, bool):
        return int(value)
    if isinstance(value, int | float):
        return value
    text = " ".join(value) if isinstance(value, tuple) else str(value)
    return "'" + text if text.startswith(_FORMULA_STARTS) else text
