"""Where a command reads and writes: results to one stream, talk to the other, never mixed."""

from __future__ import annotations

import io
import json
import sys
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, TextIO

from lab.outline.words import Words

if TYPE_CHECKING:
    from lab.files import Fault


class Stopped(Exception):  # noqa: N818 - it carries what stopped a command, not an error of ours
    """A command cannot go on.  code: what the program exits with.  lines: what to say, a line each."""

    def __init__(self, *lines: str, code: int = 1) -> None:
        super().__init__("\n".join(lines))
        self.lines = lines
        self.code = code


@dataclass(frozen=True, slots=True, kw_only=True)
class Console:
    """The streams of one run of a command.  words: the language that it speaks."""

    stdin: TextIO
    stdout: TextIO
    stderr: TextIO
    words: Words = field(default_factory=Words)

    def result(self, text: str) -> None:
        """Write a line of what was asked for."""
        self.stdout.write(text + "\n")

    def talk(self, text: str) -> None:
        """Write a line about what goes on."""
        self.stderr.write(text + "\n")

    def json(self, value: object) -> None:
        """Write one JSON object and nothing else; what is no number in JSON is refused, not invented."""
        self.result(json.dumps(value, ensure_ascii=False, allow_nan=False))

    def faults(self, faults: Sequence[Fault], *, as_json: bool) -> None:
        """Say what is wrong: a line each, or as the JSON object that stands for a result."""
        if as_json:
            self.json({"faults": [fault.as_json() for fault in faults]})
            return
        for fault in faults:
            self.talk(fault.as_text())

    @property
    def has_terminal(self) -> bool:
        """Whether somebody can type answers here."""
        try:
            return self.stdin.isatty()
        except ValueError:  # closed before we began
            return False


def system_console(words: Words) -> Console:
    """The streams that the program was started with."""
    return Console(
        stdin=_stream(sys.stdin, "r"), stdout=_stream(sys.stdout, "w"), stderr=_stream(sys.stderr, "w"), words=words
    )


def prepare_streams(streams: Iterable[object]) -> None:
    """Make streams take and give any character: one that the terminal lacks must not end the lesson."""
    for stream in streams:
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")


def _stream(stream: TextIO | None, mode: str) -> TextIO:
    # Started without a console (a launcher icon on Windows), Python gives None.
    return io.StringIO() if stream is None else stream
