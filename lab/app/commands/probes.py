"""`tiltbench probe`: which rule a learner's answers fit, in a window or in the terminal."""

from __future__ import annotations

import argparse

from lab.app.console import Console
from lab.app.kept import answers_kept
from lab.app.paths import Paths
from lab.app.seeds import drawn_seed
from lab.app.window_program import open_window, window_or_lines


def run(args: argparse.Namespace, console: Console, paths: Paths) -> int:
    """Open the probe, or ask it in plain lines."""
    if args.text:
        probe_text(args.seed, console, paths)
        return 0
    return window_or_lines(
        console,
        window=lambda: open_window(paths, console, probe=True, seed=args.seed),
        lines=lambda: probe_text(args.seed, console, paths),
        from_pipe="tiltbench probe --text",
    )


def probe_text(seed: int | None, console: Console, paths: Paths) -> None:
    """Take a learner through the probe in plain lines; every answer is kept, or it is said that it is not."""
    from lab.terminal.probe_text import play_probe

    with answers_kept(console, paths) as (learner, keep):
        play_probe(
            seed=drawn_seed() if seed is None else seed,
            stdin=console.stdin,
            stdout=console.stdout,
            words=console.words,
            keep=keep,
            code=learner,
        )
