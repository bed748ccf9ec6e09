"""Lesson files: read whole, every fault at once.

What needs pydantic is imported when the first lesson is read: it takes longer to import than the rest of a lesson.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from pathlib import Path

from lab.files import FileFaults
from lab.lesson.lesson import Lesson

LEVELS = ("early", "middle", "later")

_MARK = re.compile(r"^\s*(\[\[\s*question\s*\]\]|(question|aim|level)\s*=)", re.MULTILINE)
_ORDER = re.compile(r"^order\s*=\s*(-?\d{1,9})\b", re.MULTILINE)
# The marks of a lesson stand at its top; a book under the name of a lesson is not read through.
_PEEK_CHARS = 4000


def read_lesson(path: Path) -> Lesson:
    """Read a lesson file.  Raises FileFaults with every fault of the file and of the scene files it names."""
    from lab.lesson.making import lesson_or_faults

    lesson, faults, _ = lesson_or_faults(Path(path))
    if lesson is None or faults:
        raise FileFaults(faults)
    return lesson


def lesson_files(folders: Iterable[Path]) -> tuple[Path, ...]:
    """Return every lesson file below the folders, those of `early` first, then `middle`, then `later`.

    Within a level by the file's `order`, then by name.  Build files beside them are left out.
    """
    found = {path for folder in folders for path in Path(folder).rglob("*.toml") if holds_lesson(path)}
    return tuple(sorted(found, key=_course_order))


def holds_lesson(path: Path) -> bool:
    """Whether a file holds a lesson rather than a build, as far as its first lines say."""
    return _MARK.search(_first_lines(path)) is not None


def _course_order(path: Path) -> tuple[int, int, str, str]:
    level = next((LEVELS.index(step) for step in reversed(path.parts[:-1]) if step in LEVELS), len(LEVELS))
    order = _ORDER.search(_first_lines(path))
    return level, int(order.group(1)) if order else 0, path.stem, str(path)


def _first_lines(path: Path) -> str:
    try:
        if not path.is_file():
            return ""
        with path.open(encoding="utf-8", errors="replace") as stream:
            return stream.read(_PEEK_CHARS)
    except OSError:
        # It cannot be opened now; `read_lesson` says so to whoever asks for it by name.
        return ""
