"""`tiltbench probe`: which rule a learner's answers fit, in a window or in the terminal."""

from __future__ import annotations

import argparse
from dataclasses import asdict

import lab
from lab.app.console import Console, Stopped
from lab.app.kept import kept_settings, say_what_is_left
from lab.app.paths import Paths
from lab.app.record import Record
from lab.app.seeds import drawn_seed
from lab.app.window_program import NoDisplayError, open_window
from lab.attempts import AttemptsError, attempt_of


def run(args: argparse.Namespace, console: Console, paths: Paths) -> int:
    """Open the probe, or ask it in plain lines."""
    if args.text:
        probe_text(args.seed, console, paths)
        return 0
    try:
        return open_window(paths, console, probe=True, seed=args.seed)
    except NoDisplayError as error:
        why = str(error)
    if not console.has_terminal:
        raise Stopped(
            console.words.say(
                "tiltbench: there is no display ({why}) and no terminal; with --text answers come from a pipe", why=why
            ),
            code=2,
        )
    console.talk(console.words.say("There is no display ({why}), so this runs in the terminal.", why=why))
    probe_text(args.seed, console, paths)
    return 0


def probe_text(seed: int | None, console: Console, paths: Paths) -> None:
    """Take a learner through the probe in plain lines; every answer is kept, or it is said that it is not."""
    from lab.lesson import Answered
    from lab.terminal.probe_text import play_probe

    settings = kept_settings(console, paths)
    record = Record(paths.record)

    def keep(answer: Answered) -> None:
        if not record.keep(attempt_of(asdict(answer), learner=settings.learner, version=lab.__version__)):
            raise AttemptsError(record.trouble or "")

    try:
        play_probe(
            seed=drawn_seed() if seed is None else seed,
            stdin=console.stdin,
            stdout=console.stdout,
            words=console.words,
            keep=keep,
            code=settings.learner,
        )
    finally:
        record.close()
        say_what_is_left(record, console)
