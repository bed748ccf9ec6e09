"""Talking in plain lines: what is written to one stream and read from another."""

from __future__ import annotations

import io
from collections.abc import Sequence
from typing import TextIO

from lab.lesson import Wording


class PlainLines:
    """Two streams and the words that are used on them.  words: whatever a person reads passes them."""

    def __init__(self, stdin: TextIO, stdout: TextIO, words: Wording) -> None:
        """Take the streams; nothing is written or read yet."""
        # A byte that is no text is an answer that is not understood, and a sign that a terminal lacks becomes a `?`.
        for stream in (stdin, stdout):
            # A stream that has been read from cannot be changed any more.
            if isinstance(stream, io.TextIOWrapper) and stream.errors != "replace":
                stream.reconfigure(errors="replace")
        self.words = words
        self._stdin = stdin
        self._stdout = stdout
        # A terminal shows what is typed; from a pipe the answer is written out, so that the whole can be read again.
        self._echoes = not stdin.isatty()

    def read(self, prompt: str) -> str | None:
        """Return the next line of input without the blanks around it; None at the end of input or an interrupt."""
        self._stdout.write(f"{prompt} ")
        self._stdout.flush()
        try:
            line = self._stdin.readline()
        except KeyboardInterrupt:
            line = ""
        if not line:
            self._stdout.write("\n")
            return None
        said = line.strip()
        if self._echoes:
            self.line(said)
        return said

    def line(self, text: str) -> None:
        """Write a line that is finished text."""
        self._stdout.write(f"{text}\n")

    def say(self, template: str, **values: str) -> None:
        """Write one of our own sentences, its values finished text."""
        self.line(self.words.say(template, **values))


def whole_word(said: str, known: Sequence[str]) -> str | None:
    """Return the one known word that was said, whole or shortened; None where it is none of them, or several."""
    word = said.strip().casefold()
    if not word:
        return None
    found = [each for each in known if each.startswith(word)]
    return found[0] if len(found) == 1 or word in found else None
