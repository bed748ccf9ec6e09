"""`python -m lab.figures speed | probe | accuracy`: what we claim, measured here and now."""

from __future__ import annotations

import argparse
import json
import math
import sys
from collections.abc import Callable, Iterable, Sequence
from dataclasses import asdict
from typing import TextIO

from lab.figures.floors import Floor
from lab.figures.published.table import PublishedRow
from lab.figures.rows import Row


def main(argv: Sequence[str] | None = None, *, stdout: TextIO | None = None, stderr: TextIO | None = None) -> int:
    """Measure, and print a row as soon as it is there.  Returns 0: a goal that is missed is a figure too."""
    parser = argparse.ArgumentParser(prog="python -m lab.figures", description=main.__doc__)
    parser.add_argument("what", choices=tuple(_MEASURES))
    parser.add_argument("--json", action="store_true", help="one JSON object with all rows")
    parser.add_argument("--quick", action="store_true", help="fewer rounds, for a first look")
    args = parser.parse_args(argv)
    out, talk = stdout or sys.stdout, stderr or sys.stderr
    rows: list[Row | PublishedRow | Floor] = []
    for row in _MEASURES[args.what](args.quick):
        rows.append(row)
        if not args.json:
            out.write(as_line(row) + "\n")
            out.flush()
        elif talk.isatty():
            talk.write(f"{row.name}\n")
    if args.json:
        out.write(json.dumps({"what": args.what, "rows": [as_json(row) for row in rows]}, ensure_ascii=False) + "\n")
    return 0


def as_line(row: Row | PublishedRow | Floor) -> str:
    """A row to read: the ratio first, since that is what carries over to another machine."""
    if isinstance(row, PublishedRow | Floor):
        return row.as_line()
    goal = f"goal {row.goal:g}" if math.isfinite(row.goal) else "no goal"
    verdict = "" if not math.isfinite(row.goal) else ", met" if row.met else ", missed"
    return (
        f"{row.name}: {row.ratio:.4g} x {row.beside} ({goal}{verdict}; "
        f"{row.ours:.4g} {row.unit} beside {row.reference:.4g} {row.unit})"
    )


def as_json(row: Row | PublishedRow | Floor) -> dict[str, object]:
    """A row as JSON; what is not finite there is null."""
    if isinstance(row, PublishedRow | Floor):
        return row.as_json()
    values = {**asdict(row), "met": bool(row.met)}
    return {
        name: None if isinstance(value, float) and not math.isfinite(value) else value for name, value in values.items()
    }


def _speed(quick: bool) -> Iterable[Row]:  # noqa: FBT001 - both measures are called alike
    from lab.figures.speed import rows

    return rows(quick=quick)


def _accuracy(quick: bool) -> Iterable[Row | PublishedRow]:  # noqa: FBT001
    from lab.figures.accuracy import accuracy_rows
    from lab.figures.accuracy_change import change_rows
    from lab.figures.accuracy_flight import flight_rows
    from lab.figures.published.table import published_rows

    yield from published_rows()
    yield from accuracy_rows()
    yield from change_rows()
    yield from flight_rows(quick=quick)


def _probe(quick: bool) -> Iterable[Floor]:  # noqa: FBT001
    from lab.figures.probe import floors

    return floors(quick=quick)


_MEASURES: dict[str, Callable[[bool], Iterable[Row | PublishedRow | Floor]]] = {
    "speed": _speed,
    "probe": _probe,
    "accuracy": _accuracy,
}

if __name__ == "__main__":
    sys.exit(main())
