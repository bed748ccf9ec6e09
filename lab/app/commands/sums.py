"""`tiltbench sum`: the moment table and the balance point of a build file."""

from __future__ import annotations

import argparse

from lab.app.console import Console
from lab.app.paths import Paths
from lab.files import Fault, FileFaults, read_build
from lab.mechanics import MechanicsError
from lab.terminal.sums import sum_document, sum_table


def run(args: argparse.Namespace, console: Console, paths: Paths) -> int:
    """Print the sum; 1 and what is wrong where the file has none."""
    try:
        build = read_build(args.file)
        if args.json:
            console.json(sum_document(build, reference=args.reference, units=args.units))
        else:
            console.result(sum_table(build, console.words, reference=args.reference, units=args.units))
    except FileFaults as found:
        console.faults(found.faults, as_json=args.json)
        return 1
    except MechanicsError as error:
        what, _, cure = str(error).partition("; ")
        fault = Fault(file=args.file, line=1, key="part", what=what, cure=cure or "change the parts so that it has")
        console.faults([fault], as_json=args.json)
        return 1
    return 0
