"""What can be typed after `tiltbench`."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from typing import NoReturn

import lab
from lab.app.settings import THEMES, UNITS

MODULES = {
    "start": "lab.app.commands.opening",
    "open": "lab.app.commands.opening",
    "lesson": "lab.app.commands.lessons",
    "probe": "lab.app.commands.probes",
    "sum": "lab.app.commands.sums",
    "check": "lab.app.commands.checks",
    "snap": "lab.app.commands.snaps",
    "record": "lab.app.commands.records",
}
LARGEST_SEED = 2**63 - 1


class _Parser(argparse.ArgumentParser):
    """An argument parser that ends with `SystemExit(2)` and one line that names the way out."""

    def error(self, message: str) -> NoReturn:
        self.exit(2, f"{self.prog}: {message}; `{self.prog} --help` shows what would do\n")


def parse(argv: Sequence[str]) -> argparse.Namespace:
    """What is asked for: `command` names a key of `MODULES`.  Raises SystemExit as argparse does."""
    return _parser().parse_args(_joined(argv))


def _joined(argv: Sequence[str]) -> list[str]:
    """The words with `--from -10,0,0` written as `--from=-10,0,0`, which argparse takes for a value.

    The same with `-inf` or any other slip, so that it is the place that is refused, and by name.
    """
    words: list[str] = []
    for word in argv:
        if words and words[-1] == "--from" and word[:1] == "-" and word[1:2] not in ("", "-", "h"):
            words[-1] = f"--from={word}"
        else:
            words.append(word)
    return words


def _parser() -> _Parser:
    parser = _Parser(
        prog="tiltbench",
        description="A lab for learning where things balance. Without a command it opens at its start screen.",
        allow_abbrev=False,
    )
    parser.add_argument("--version", action="version", version=f"tiltbench {lab.__version__}")
    parser.add_argument("--debug", action="store_true", help="show where in the program something went wrong")
    parser.set_defaults(command="start")
    commands = parser.add_subparsers(dest="command", metavar="COMMAND", required=False, parser_class=_Parser)
    for add in (_add_open, _add_lesson, _add_probe, _add_sum, _add_check, _add_snap, _add_record):
        add(commands)
    return parser


Commands = argparse._SubParsersAction  # argparse names the type of what it hands out in no other way


def _command(commands: Commands[_Parser], name: str, says: str) -> _Parser:
    command = commands.add_parser(name, help=says, description=says, allow_abbrev=False)
    # SUPPRESS keeps a `--debug` before the command from being forgotten after it.
    command.add_argument("--debug", action="store_true", default=argparse.SUPPRESS, help=argparse.SUPPRESS)
    return command


def _add_open(commands: Commands[_Parser]) -> None:
    command = _command(commands, "open", "open a saved build in free build")
    command.add_argument("file", metavar="FILE")


def _add_lesson(commands: Commands[_Parser]) -> None:
    command = _command(commands, "lesson", "list the lessons, or run one")
    command.add_argument("lesson", metavar="NAME or FILE", nargs="?")
    how = command.add_mutually_exclusive_group()
    how.add_argument("--text", action="store_true", help="in the terminal, answers from standard input")
    how.add_argument("--page", action="store_true", help="print the teacher's page, with every answer")
    command.add_argument("--seed", type=_seed, help="the same seed asks with the same numbers")
    _add_learner(command)


def _add_probe(commands: Commands[_Parser]) -> None:
    command = _command(commands, "probe", "find which rule somebody's answers fit")
    command.add_argument("--text", action="store_true", help="in the terminal, answers from standard input")
    command.add_argument("--seed", type=_seed, help="the same seed and answers ask the same")
    _add_learner(command)


def _add_learner(command: _Parser) -> None:
    command.add_argument("--learner", metavar="CODE", help="whose answers they are; with --text, or for what is due")


def _add_sum(commands: Commands[_Parser]) -> None:
    command = _command(commands, "sum", "print the moment table and the balance point of a build file")
    command.add_argument("file", metavar="FILE")
    command.add_argument("--json", action="store_true", help="one JSON object at full precision")
    command.add_argument(
        "--from", dest="reference", type=_place, metavar="X[,Y,Z]", help="measure the arms from here, for this sum"
    )
    command.add_argument("--units", choices=UNITS[1:], help="every number in and out in these units")


def _add_check(commands: Commands[_Parser]) -> None:
    command = _command(commands, "check", "check lesson and build files; folders are walked")
    command.add_argument("paths", metavar="PATH", nargs="+")
    command.add_argument("--json", action="store_true", help="one JSON object")


def _add_snap(commands: Commands[_Parser]) -> None:
    command = _command(commands, "snap", "draw a screen into a picture file, without a display")
    command.add_argument("screen", metavar="SCREEN", nargs="?")
    command.add_argument("-o", "--output", metavar="OUT.png")
    command.add_argument("--list", action="store_true", help="print one screen a line, its name first")
    command.add_argument("--size", type=_size, default=(1280, 720), metavar="WxH")
    command.add_argument("--theme", choices=THEMES, default="paper")
    command.add_argument("--scale", type=_scale, default=1.0, metavar="S", help="of the text: 1 to 3")
    command.add_argument("--lang", default="en", metavar="L")


def _add_record(commands: Commands[_Parser]) -> None:
    command = _command(commands, "record", "export or erase the record of attempts")
    actions = command.add_subparsers(dest="action", metavar="ACTION", required=True, parser_class=_Parser)
    erase = actions.add_parser("erase", help="take out one learner's attempts, or all of them", allow_abbrev=False)
    whom = erase.add_mutually_exclusive_group(required=True)
    whom.add_argument("code", metavar="CODE", nargs="?")
    whom.add_argument("--all", action="store_true", help="every attempt of every learner")
    export = actions.add_parser("export", help="write every attempt as CSV", allow_abbrev=False)
    export.add_argument("-o", "--output", metavar="FILE", help="a file instead of standard output")


def _seed(text: str) -> int:
    value = _number(text, int, "a whole number")
    if not 0 <= value <= LARGEST_SEED:
        raise argparse.ArgumentTypeError(f"{text} is no seed; a whole number from 0 up would do")
    return int(value)


_PLACES = "one number such as 10, or three such as -10,0,0"


def _place(text: str) -> tuple[float, float, float]:
    numbers = [_number(word, float, _PLACES) for word in text.split(",")]
    if len(numbers) not in (1, 3) or not all(abs(number) < float("inf") for number in numbers):
        raise argparse.ArgumentTypeError(f"{text!r} is no place; {_PLACES} would do")
    along, across, up = (*numbers, 0.0, 0.0)[:3]
    return along, across, up


def _size(text: str) -> tuple[int, int]:
    words = text.lower().split("x")
    if len(words) != 2:
        raise argparse.ArgumentTypeError(f"{text!r} is no size; 1280x720 would do")
    width, height = (int(_number(word, int, "a size such as 1280x720")) for word in words)
    if not (200 <= width <= 8192 and 200 <= height <= 8192):
        raise argparse.ArgumentTypeError(f"{text} is out of range; from 200x200 to 8192x8192 would do")
    return width, height


def _scale(text: str) -> float:
    scale = _number(text, float, "a number such as 1.5")
    if not 1.0 <= scale <= 3.0:
        raise argparse.ArgumentTypeError(f"{text} is out of range; from 1 to 3 would do")
    return scale


def _number(text: str, kind: type[int] | type[float], wanted: str) -> float:
    try:
        return kind(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f"{text!r} is no number; {wanted} would do") from None
