"""`tiltbench check`: every fault of every lesson and build file at once."""

from __future__ import annotations

import argparse
import os
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from lab.app.console import Console
from lab.app.paths import Paths
from lab.files import Fault, FileFaults, build_from_table, load
from lab.lesson import check_lesson

#: What only a lesson has at its top level; a build has parts, a bar or a pivot there.
_LESSON_KEYS = frozenset({"question", "level", "aim"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Checked:
    """One file and what is to be said about it."""

    path: str
    kind: Literal["lesson", "build", "file"]
    faults: tuple[Fault, ...] = ()
    warnings: tuple[Fault, ...] = ()


def run(args: argparse.Namespace, console: Console, paths: Paths) -> int:
    """Check the files and folders named; 1 if there is any fault, warnings alone are 0."""
    checked = [result for path in args.paths for result in _checked_all(path)]
    faults = [fault for result in checked for fault in result.faults]
    warnings = [fault for result in checked for fault in result.warnings]
    if args.json and not faults:
        console.json({"files": len(checked), "faults": [], "warnings": [warning.as_json() for warning in warnings]})
        return 0
    if not args.json:
        _list(checked, console)
    console.faults(faults, as_json=args.json)
    return 1 if faults else 0


def _list(checked: list[Checked], console: Console) -> None:
    say = console.words.say
    kinds = {"lesson": say("a lesson, no faults"), "build": say("a build, no faults")}
    for result in checked:
        if not result.faults:
            console.result(f"{result.path}: {kinds[result.kind]}")
        for warning in result.warnings:
            console.talk(say("warning: {fault}", fault=warning.as_text()))


def _checked_all(path: str) -> list[Checked]:
    if not Path(path).is_dir():
        return [_checked(path)]
    found = [str(Path(folder, name)) for folder, _, names in os.walk(path) for name in names if name.endswith(".toml")]
    if not found:
        nothing = Fault(file=path, line=1, key="file", what="no .toml files in this folder", cure="name another folder")
        return [Checked(path=path, kind="file", faults=(nothing,))]
    return [_checked(name) for name in sorted(found)]


def _checked(path: str) -> Checked:
    try:
        keyed = load(path)
        if _LESSON_KEYS & keyed.data.keys():
            faults, warnings = check_lesson(Path(path))
            return Checked(path=path, kind="lesson", faults=faults, warnings=warnings)
        build_from_table(keyed.data, keyed.lines, path)
    except FileFaults as found:
        return Checked(path=path, kind="file", faults=found.faults)
    return Checked(path=path, kind="build")
