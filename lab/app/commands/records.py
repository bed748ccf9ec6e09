"""`tiltbench record`: attempts out as CSV, and attempts taken out for good."""

from __future__ import annotations

import argparse
import io
import os
import sys
from contextlib import suppress
from pathlib import Path

from lab.app.console import Console, Stopped
from lab.app.paths import Paths
from lab.attempts import AttemptsError, AttemptStore, tidy_code, valid_code


def run(args: argparse.Namespace, console: Console, paths: Paths) -> int:
    """Export or erase.  Raises Stopped if the record cannot be used, or the code is none."""
    try:
        with AttemptStore.open(paths.record) as store:
            if store.set_aside is not None:
                console.talk(
                    console.words.say("The record was damaged; it is kept aside as {file}", file=str(store.set_aside))
                )
            if args.action == "export":
                return _export(store, console, args.output)
            return _erase_all(store, console) if args.all else _erase(store, console, args.code)
    except AttemptsError as error:
        raise Stopped(f"record: {error}") from error


def _erase(store: AttemptStore, console: Console, typed: str) -> int:
    code = tidy_code(typed)
    words = console.words
    if not valid_code(code):
        raise Stopped(
            words.say(
                "record: {typed} is no learner code; a code has eight characters, as the start screen shows it",
                typed=typed,
            )
        )
    erased = store.erase(code)
    console.result(
        words.plural("Erased {n} attempt of {code}", "Erased {n} attempts of {code}", erased.rows, code=code)
    )
    for path in erased.also_in:
        console.talk(
            words.say(
                "{file}: a damaged record that was set aside still holds this code; remove the file, "
                "or erase everything with `tiltbench record erase --all`",
                file=str(path),
            )
        )
    return 0


def _erase_all(store: AttemptStore, console: Console) -> int:
    erased = store.erase_all()
    console.result(console.words.plural("Erased {n} attempt", "Erased {n} attempts", erased.rows))
    return 0


def _export(store: AttemptStore, console: Console, output: str | None) -> int:
    table = io.StringIO(newline="")
    rows = store.export_csv(table)
    if output is None:
        # The table brings its own line ends; a stream that adds some would double them.
        if console.stdout is sys.stdout and isinstance(sys.stdout, io.TextIOWrapper):
            sys.stdout.reconfigure(newline="", encoding="utf-8")
        console.stdout.write(table.getvalue())
        return 0
    try:
        _write(Path(output), table.getvalue())
    except OSError as error:
        raise Stopped(
            console.words.say(
                "{file}: {what}; name a file in a folder that may be written to",
                file=output,
                what=error.strerror or str(error),
            )
        ) from error
    console.talk(
        console.words.plural("{n} attempt written to {file}", "{n} attempts written to {file}", rows, file=output)
    )
    return 0


def _write(target: Path, text: str) -> None:
    """Write answers for their owner's eyes only; the file is whole or it is not there."""
    # Of a link, what it leads to; a pipe or a device is written to and never replaced by a file.
    target = Path(os.path.realpath(target))
    if target.exists() and not target.is_file():
        with target.open("w", encoding="utf-8", newline="") as stream:
            stream.write(text)
        return
    part = target.with_name(f".{target.name}.part")
    try:
        handle = os.open(part, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600)
        with os.fdopen(handle, "w", encoding="utf-8", newline="") as stream:
            stream.write(text)
            stream.flush()
            os.fsync(stream.fileno())
        part.replace(target)
    except OSError:
        with suppress(OSError):
            part.unlink()
        raise
