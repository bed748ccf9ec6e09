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
from lab.lesson import ToldApart, lesson_report
from lab.outline.words import Words, msg

#: What only a lesson has at its top level; a build has parts, a bar or a pivot there.
_LESSON_KEYS = frozenset({"question", "level", "aim"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Checked:
    """One file and what is to be said about it.  apart: of a lesson, what its questions tell about thinking."""

    path: str
    kind: Literal["lesson", "build", "file"]
    faults: tuple[Fault, ...] = ()
    warnings: tuple[Fault, ...] = ()
    apart: tuple[ToldApart, ...] = ()


def run(args: argparse.Namespace, console: Console, paths: Paths) -> int:
    """Check the files and folders named; 1 if there is any fault, warnings alone are 0."""
    checked = [result for path in args.paths for result in _checked_all(path)]
    faults = [fault for result in checked for fault in result.faults]
    warnings = [fault for result in checked for fault in result.warnings]
    if args.json and not faults:
        report = {result.path: [_as_json(each) for each in result.apart] for result in checked if result.apart}
        said = [warning.as_json() for warning in warnings]
        console.json({"files": len(checked), "faults": [], "warnings": said, "apart": report})
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
            for each in result.apart:
                console.result("  " + _apart(each, console.words))
        for warning in result.warnings:
            console.talk(say("warning: {fault}", fault=warning.as_text()))


def _apart(apart: ToldApart, words: Words) -> str:
    """One line about one question."""
    say = words.say
    said = [
        say(template, ways=", ".join(ways))
        for template, ways in (
            (msg("tells apart: {ways}"), apart.always),
            (msg("with some numbers: {ways}"), apart.sometimes),
            (msg("never apart: {ways}"), [" = ".join(group) for group in apart.never]),
            (msg("always like one or another: {ways}"), apart.mixed),
        )
        if ways
    ]
    return f"{apart.question}: {'; '.join(said) or say('tells nothing apart')}"


def _as_json(apart: ToldApart) -> dict[str, object]:
    return {
        "question": apart.question,
        "always": list(apart.always),
        "sometimes": list(apart.sometimes),
        "never": [list(group) for group in apart.never],
        "mixed": list(apart.mixed),
    }


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
            report = lesson_report(Path(path), keyed)
            return Checked(path=path, kind="lesson", faults=report.faults, warnings=report.warnings, apart=report.apart)
        build_from_table(keyed.data, keyed.lines, path)
    except FileFaults as found:
        return Checked(path=path, kind="file", faults=found.faults)
    return Checked(path=path, kind="build")
