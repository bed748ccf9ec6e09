"""The command `tiltbench`."""

from __future__ import annotations

import errno
import importlib
import os
import sys
import traceback
from collections.abc import Callable, Sequence
from contextlib import suppress
from typing import cast

from lab.app.command_line import MODULES, parse
from lab.app.console import Console, Stopped, prepare_streams, system_console
from lab.app.paths import Paths, find_paths
from lab.app.settings import load_settings
from lab.outline.words import Words

UNWRITABLE = frozenset({errno.ENOSPC, errno.EDQUOT, errno.EFBIG, errno.EIO, errno.EBADF})
"""What a stream says that takes no more.  A file that we open ourselves is named in its error; a stream is not."""


def main(argv: Sequence[str] | None = None) -> int:
    """Do what the words after the command ask for.

    argv: without the program's own name; None takes those of this process.
    Returns 0 done, 1 bad input, 2 wrong usage, 130 interrupted.  Never raises, and never shows a
    traceback unless `--debug` asks for it.
    """
    words = list(sys.argv[1:] if argv is None else argv)
    # The lab's systems of equations are small.  Shared among threads that wait for each other they take ten times as
    # long on a machine that is busy; numpy reads this when it is first loaded.
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    prepare_streams((sys.stdin, sys.stdout, sys.stderr))
    paths = find_paths()
    console = system_console(Words(load_settings(paths.settings).settings.language))
    debug = "--debug" in words
    try:
        code = _done(words, console, paths)
        # What is still held back may find the disk full, or nobody there to read it.
        console.stdout.flush()
        return code
    except KeyboardInterrupt:
        return 130
    except Exception as error:  # noqa: BLE001 - the last place that can keep a traceback from a learner
        # Whoever cannot be told what went wrong must not be shown a traceback instead.
        with suppress(OSError):
            return _failed(error, console, paths, debug=debug)
        return 1


def _done(words: Sequence[str], console: Console, paths: Paths) -> int:
    """Find the command, run it; what it ends with."""
    try:
        args = parse(words)
        run = cast("Callable[..., int]", importlib.import_module(MODULES[args.command or "start"]).run)
        return run(args, console, paths)
    except SystemExit as ended:
        return ended.code if isinstance(ended.code, int) else 2


def _failed(error: Exception, console: Console, paths: Paths, *, debug: bool) -> int:
    if isinstance(error, BrokenPipeError):
        # The other end of a pipe has seen enough.
        _drop_output()
        return 0
    if debug:
        traceback.print_exception(error, file=console.stderr)
    if isinstance(error, Stopped):
        for line in error.lines:
            console.talk(line)
        return error.code
    if isinstance(error, OSError) and error.errno in UNWRITABLE and error.filename is None:
        _drop_output()
        what = error.strerror or str(error)
        console.talk(console.words.say("The output ends here: {what}; make room, or send it elsewhere", what=what))
        return 1
    from lab.app.crash_notes import write_crash_note

    note = write_crash_note(paths.crash_notes, error)
    if note is None:
        console.talk(console.words.say("Something went wrong that nobody foresaw; `--debug` shows where."))
    else:
        console.talk(
            console.words.say("Something went wrong that nobody foresaw; what is known is in {note}", note=str(note))
        )
    return 1


def _drop_output() -> None:
    """What standard output still holds back goes nowhere: Python must not complain while it closes."""
    with suppress(OSError):
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
