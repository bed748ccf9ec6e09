"""A note for whoever looks into it when something went wrong that nobody foresaw."""

from __future__ import annotations

import platform
import sys
import traceback
from datetime import UTC, datetime
from pathlib import Path

import lab

#: Older notes are removed: a kiosk that fails every minute must not fill its disk.
MOST_NOTES = 10


def write_crash_note(folder: Path, error: BaseException) -> Path | None:
    """Write down what happened and where; returns the note, or None where even that was not possible.

    Of the values in the program only the error's own text is written, so no answers and no codes.
    """
    stamp = datetime.now(UTC).strftime("%Y%m%dT%H%M%S%f")
    note = folder / f"crash-{stamp}.txt"
    lines = [
        f"tiltbench {lab.__version__}, Python {platform.python_version()}, {platform.platform()}",
        f"command: {' '.join(Path(word).name for word in sys.argv[:2])}",
        "",
        *traceback.format_exception(error),
    ]
    try:
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        note.write_text("\n".join(lines), encoding="utf-8")
        for old in sorted(folder.glob("crash-*.txt"))[:-MOST_NOTES]:
            old.unlink()
    except OSError:
        return None
    return note
