"""The command `tiltbench`."""

from __future__ import annotations

import importlib
import os
import sys
import traceback
from collections.abc import Callable, Sequence
from typing import cast

from lab.app.command_line import MODULES, parse
from lab.app.console import Console, Stopped, prepare_streams, system_console
from lab.app.paths import Paths, find_paths
from lab.app.settings import load_settings
from lab.outline.words import Words


def main(argv: Sequence[str] | None = None) -> int:
    """Do what the words after the command ask for.

    argv: without the program's own name; None takes those of this process.
    Returns 0 done, 1 bad input, 2 wrong usage, 130 interrupted.  Never raises, and never shows a
    traceback unless `--debug` asks for it.
    """
    words = list(sys.argv[1:] if argv is None else argv)
    prepare_streams((sys.stdin, sys.stdout, sys.stderr))
    paths = find_paths()
    console = system_console(Words(load_settings(paths.settings).settings.language))
    debug = "--debug" in words
    try:
        args = parse(words)
        run = cast("Callable[..., int]", importlib.import_module(MODULES[args.command or "start"]).run)
        code = run(args, console, paths)
        console.stdout.flush()
        return code
    except SystemExit as ended:
        return ended.code if isinstance(ended.code, int) else 2
    except BrokenPipeError:
        return _reader_gone()
    except KeyboardInterrupt:
        return 130
    except Exception as error:  # noqa: BLE001 - the last place that can keep a traceback from a learner
        return _failed(error, console, paths, debug=debug)


def _reader_gone() -> int:
    """The other end of a pipe has seen enough; Python must not complain while it closes."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    return 0


def _failed(error: Exception, console: Console, paths: Paths, *, debug: bool) -> int:
    if debug:
        traceback.print_exception(error, file=console.stderr)
    if isinstance(error, Stopped):
        for line in error.lines:
            console.talk(line)
        return error.code
    from lab.app.crash_notes import write_crash_note

    note = write_crash_note(paths.crash_notes, error)
    if note is None:
        console.talk(console.words.say("Something went wrong that nobody foresaw; `--debug` shows where."))
    else:
        console.talk(
            console.words.say("Something went wrong that nobody foresaw; what is known is in {note}", note=str(note))
        )
    return 1
