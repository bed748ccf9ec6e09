"""`tiltbench probe`: which rule a learner's answers fit, in a window or in the terminal."""

from __future__ import annotations

import argparse

from lab.app.console import Console
from lab.app.course import gain_of
from lab.app.kept import answers_kept, refuse_in_window
from lab.app.paths import Paths
from lab.app.record import Record
from lab.app.seeds import drawn_seed
from lab.app.window_program import open_window, window_or_lines
from lab.attempts import shown_code
from lab.files import UNITS
from lab.lesson import render
from lab.lesson.course_gain import Gain
from lab.lesson.course_telling import gain_lines
from lab.lesson.probe.items import UNIT_NAME


def run(args: argparse.Namespace, console: Console, paths: Paths) -> int:
    """Open the probe, or ask it in plain lines."""
    if args.text:
        probe_text(args.seed, console, paths, code=args.learner)
        return 0
    refuse_in_window(args.learner, console)
    return window_or_lines(
        console,
        window=lambda: open_window(paths, console, probe=True, seed=args.seed),
        lines=lambda: probe_text(args.seed, console, paths, code=args.learner),
        from_pipe="tiltbench probe --text",
    )


def probe_text(seed: int | None, console: Console, paths: Paths, *, code: str | None = None) -> None:
    """Take a learner through the probe in plain lines; every answer is kept, or it is said that it is not.

    code: whose answers they are, as typed; None for the present learner's.
    """
    from lab.terminal.probe_text import play_probe

    with answers_kept(console, paths, code=code) as (learner, keep):
        probe = play_probe(
            seed=drawn_seed() if seed is None else seed,
            stdin=console.stdin,
            stdout=console.stdout,
            words=console.words,
            keep=keep,
            code=shown_code(learner),
        )
    if probe.finished:
        _say_gain(learner, console, paths)


def _say_gain(learner: str, console: Console, paths: Paths) -> None:
    """Say what has changed since the first time, and how sure that is."""
    record = Record(paths.record)
    try:
        found = gain_of(record, learner)
    finally:
        record.close()
    for line in gain_lines(Gain(rule=found.rule, share=None)):
        console.result(render(line, console.words, UNITS[UNIT_NAME]))
