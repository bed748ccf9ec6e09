"""How fast lessons are checked, beside parsing the same files and nothing else."""

from __future__ import annotations

import argparse
import io
import itertools
import re
import shutil
import tempfile
import tomllib
from pathlib import Path

from lab.app.commands import checks
from lab.app.console import Console
from lab.app.paths import find_paths
from lab.figures.rows import Row, row
from lab.figures.timing import best_s
from lab.lesson import lesson_files

LESSONS, QUICK_LESSONS = 1000, 100
ROUNDS, QUICK_ROUNDS = 1, 2
"""A thousand lessons take long enough to even out what else the machine does."""

_TITLE = re.compile(r'^title = "', re.MULTILINE)


def lesson_rows(*, quick: bool = False) -> tuple[Row, ...]:
    """`check` of lessons that are the shipped ones under other names, so that each draws numbers of its own."""
    count = QUICK_LESSONS if quick else LESSONS
    paths = find_paths()
    with tempfile.TemporaryDirectory() as folder:
        copies = copied_lessons(paths.shipped_lessons, Path(folder), count=count)
        texts = [path.read_text(encoding="utf-8") for path in copies]
        args = argparse.Namespace(paths=[folder], json=False)

        def check() -> None:
            checks.run(args, Console(stdin=io.StringIO(), stdout=io.StringIO(), stderr=io.StringIO()), paths)

        def parse() -> None:
            for text in texts:
                tomllib.loads(text)

        ours_s, bare_s = best_s((check, parse), rounds=QUICK_ROUNDS if quick else ROUNDS)
    return (row(f"check of {count} lessons", ours_s, bare_s, goal=4.0, beside="tomllib alone"),)


def copied_lessons(shipped: Path, folder: Path, *, count: int) -> tuple[Path, ...]:
    """Copy the shipped lessons over and over, each copy with a name and a title of its own, beside their scenes."""
    lessons = lesson_files((shipped,))
    shutil.copytree(shipped, folder, dirs_exist_ok=True, ignore=lambda _, names: [
        name for name in names if any(name == path.name for path in lessons)
    ])  # fmt: skip
    made = []
    for number, lesson in enumerate(itertools.islice(itertools.cycle(lessons), count)):
        path = folder / lesson.relative_to(shipped).with_name(f"{lesson.stem}-{number}.toml")
        text = _TITLE.sub(f'title = "{number} ', lesson.read_text(encoding="utf-8"), count=1)
        path.write_text(text, encoding="utf-8")
        made.append(path)
    return tuple(made)
