"""`tiltbench` by itself and `tiltbench open`: the lab in its window, or in the terminal where there is no display."""

from __future__ import annotations

import argparse
from pathlib import Path

from lab.app.console import Console, Stopped
from lab.app.paths import Paths
from lab.app.window_program import NoDisplayError, open_window, window_or_lines


def run(args: argparse.Namespace, console: Console, paths: Paths) -> int:
    """Open the start screen, or a build file in free build."""
    build = Path(args.file) if args.command == "open" else None
    if build is not None:
        check_it_stands(build)
    if build is None:
        return window_or_lines(
            console,
            window=lambda: open_window(paths, console),
            lines=lambda: _lessons_instead(console, paths),
            from_pipe="tiltbench lesson NAME --text",
        )
    try:
        return open_window(paths, console, build=build)
    except NoDisplayError as error:
        return _sum_instead(build, console, error)


def check_it_stands(build: Path) -> None:
    """Before any window: a file with faults is answered where it was asked for.  Raises Stopped."""
    from lab.files import FileFaults, read_build
    from lab.simulation.benches.catalogue import bench_for
    from lab.simulation.benches.unfit import UnfitBuildError

    try:
        read = read_build(build)
        bench_for(read).take(read)
    except FileFaults as found:
        raise Stopped(*(fault.as_text() for fault in found.faults)) from found
    except UnfitBuildError as unfit:
        why = str(unfit).rstrip(".")
        raise Stopped(f"{build}:1: file: {why}; `tiltbench sum {build}` prints where it balances") from unfit


def _sum_instead(build: Path, console: Console, error: NoDisplayError) -> int:
    from lab.files import read_build
    from lab.terminal.sums import sum_table

    console.talk(console.words.say("There is no display ({why}), so here is its sum.", why=str(error)))
    console.result(sum_table(read_build(build), console.words))
    return 0


def _lessons_instead(console: Console, paths: Paths) -> None:
    from lab.app.terminal_menu import choose_lessons

    choose_lessons(console, paths)
