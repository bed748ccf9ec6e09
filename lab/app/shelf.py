"""The lessons that can be taken: those that ship, then a teacher's own."""

from __future__ import annotations

import os
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from lab.app.paths import Paths
from lab.files import FileFaults, near
from lab.lesson import Lesson, lesson_files, read_lesson


class UnknownLessonError(Exception):
    """No lesson has this name.  near: the name that looks most like it, or None."""

    def __init__(self, name: str, near_name: str | None) -> None:
        super().__init__(name)
        self.name = name
        self.near = near_name


@dataclass(frozen=True, slots=True, kw_only=True)
class Shelf:
    """Lessons by their names, which are the stems of their files.  folders: searched in this order."""

    folders: tuple[Path, ...]

    def files(self) -> tuple[Path, ...]:
        """Every lesson file, in the order in which the lessons are best taken."""
        return lesson_files(folder for folder in self.folders if folder.is_dir())

    def file(self, name: str) -> Path:
        """The file of a lesson, by name or by path.  Raises UnknownLessonError."""
        if name.endswith(".toml") or os.sep in name or "/" in name:
            return Path(name)
        files = self.files()
        for path in files:
            if path.stem == name:
                return path
        raise UnknownLessonError(name, near(name, (path.stem for path in files)))

    def read_all(self) -> tuple[tuple[Lesson, ...], tuple[FileFaults, ...]]:
        """Every lesson that can be taken, and what is wrong with each of the others."""
        return _read(self.files(), tuple(_stamps(self.folders)))

    @property
    def first_name(self) -> str:
        """The lesson to begin with; "" where there is none."""
        return next(iter(names(self.files())), "")


@lru_cache(maxsize=1)
def _read(
    files: tuple[Path, ...], stamps: tuple[tuple[str, int, int], ...]
) -> tuple[tuple[Lesson, ...], tuple[FileFaults, ...]]:
    """Read lessons; once more only when a file has changed, for a learner comes back to their list after each of them.

    stamps: name, time and size of every file that a lesson could be made from.
    """
    lessons, faults = [], []
    for path in files:
        try:
            lessons.append(read_lesson(path))
        except FileFaults as found:
            faults.append(found)
    return tuple(lessons), tuple(faults)


def _stamps(folders: Iterable[Path]) -> Iterator[tuple[str, int, int]]:
    for folder in folders:
        for path in sorted(folder.rglob("*.toml")):
            try:
                status = path.stat()
            except OSError:
                continue  # gone since, or not to be read: reading it says so
            yield str(path), status.st_mtime_ns, status.st_size


def names(files: Iterable[Path]) -> tuple[str, ...]:
    """The names of lessons by their files."""
    return tuple(path.stem for path in files)


def shelf_of(paths: Paths) -> Shelf:
    """The lessons of an installation."""
    return Shelf(folders=(paths.shipped_lessons, paths.lessons))
