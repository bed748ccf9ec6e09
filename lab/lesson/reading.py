"""Lesson files: read whole, every fault at once."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from lab.lesson.lesson import Lesson


def read_lesson(path: Path) -> Lesson:
    """Read a lesson file.  Raises FileFaults with every fault of the file and of the scene files it names."""
    raise NotImplementedError


def lesson_files(folders: Iterable[Path]) -> tuple[Path, ...]:
    """Return every lesson file below the folders, those of `early` first, then `middle`, then `later`, by name."""
    raise NotImplementedError
