"""Every speed that we claim, each a ratio to a named reference taken in the same run."""

from __future__ import annotations

from collections.abc import Iterator

from lab.figures.rows import Row
from lab.figures.speed_drawing import drawing_rows, rest_rows
from lab.figures.speed_lessons import lesson_rows
from lab.figures.speed_mechanics import speed_rows
from lab.figures.speed_start import start_rows


def rows(*, quick: bool = False) -> Iterator[Row]:
    """All rows, as they are measured.  quick: fewer rounds, for a first look."""
    for measure in (drawing_rows, rest_rows, start_rows, lesson_rows, speed_rows):
        yield from measure(quick=quick)
