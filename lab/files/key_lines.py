"""Finds the line of every key in TOML text; `tomllib` gives places for syntax errors only.

The scanner walks the text once and reads nothing but keys and where values end. It expects valid TOML:
where it loses its way it stops, and `tomllib`, which runs after it, says what is wrong.
"""

from __future__ import annotations

import re
import tomllib

from lab.files.faults import KeyPath

_BLANK = re.compile(r"[ \t]*+")
_GAP = re.compile(r"(?:[ \t\r\n]++|#[^\n]*+)*+")
_BARE = re.compile(r"[A-Za-z0-9_-]++")
_LONG_BASIC = re.compile(r'"""(?:[^"\\]++|\\.|"(?!""))*+"{3,5}', re.DOTALL)
_LONG_LITERAL = re.compile(r"'''(?:[^']++|'(?!''))*+'{3,5}", re.DOTALL)
_BASIC = re.compile(r'"(?:[^"\\\n]++|\\[^\n])*+"')
_LITERAL = re.compile(r"'[^'\n]*+'")
_PLAIN = re.compile(r"[^,\]}#\n]++")
_STRINGS = (_LONG_BASIC, _LONG_LITERAL, _BASIC, _LITERAL)


class Lost(Exception):  # noqa: N818 - not an error of the file's own: tomllib decides that
    """The text is not TOML at this point, as far as the scanner can tell."""


class TooMuch(Exception):  # noqa: N818 - a finding, turned into a fault by the caller
    """The text holds more than is let through. ``what`` says of what, ``line`` from where."""

    def __init__(self, what: str, *, line: int) -> None:
        """line: counted from 1."""
        super().__init__(what, line)
        self.what = what
        self.line = line


class KeyScanner:
    """Walks TOML text and notes the line at which each key path first appears.

    lines: key path → line from 1. Tables made on the way (``a`` in ``a.b = 1``) and the elements of
    arrays have paths of their own.
    """

    def __init__(self, text: str, *, deepest: int, most: int) -> None:
        """text: with or without CRLF.  deepest: the longest key path, most: the number of key paths
        that are let through."""
        self.lines: dict[KeyPath, int] = {}
        self._text = text
        self._deepest = deepest
        self._most = most
        self._at = 0
        self._line = 1
        self._counted = 0
        self._tables: dict[KeyPath, int] = {}

    def scan(self) -> None:
        """Walk to the end, or to the first thing that isn't TOML. Raises TooMuch."""
        table: KeyPath = ()
        try:
            self._pass(_GAP)
            while self._at < len(self._text):
                if self._text[self._at] == "[":
                    table = self._header()
                else:
                    self._assignment(table)
                self._pass(_GAP)
        except Lost:
            return

    # --- places ---

    def _here(self) -> int:
        self._line += self._text.count("\n", self._counted, self._at)
        self._counted = self._at
        return self._line

    def _note(self, path: KeyPath) -> None:
        if len(path) > self._deepest:
            raise self._too_deep()
        if path not in self.lines:
            if len(self.lines) >= self._most:
                raise TooMuch(f"more than {self._most} keys and list items", line=self._here())
            self.lines[path] = self._here()

    def _too_deep(self) -> TooMuch:
        return TooMuch(f"nested more than {self._deepest} deep", line=self._here())

    def _pass(self, pattern: re.Pattern[str]) -> str:
        match = pattern.match(self._text, self._at)
        if match is None:
            raise Lost
        self._at = match.end()
        return match.group()

    def _pass_char(self, char: str) -> None:
        if not self._text.startswith(char, self._at):
            raise Lost
        self._at += len(char)

    def _next(self) -> str:
        return self._text[self._at : self._at + 1]

    # --- keys ---

    def _key(self) -> list[str]:
        """A dotted key; stops before whatever follows it."""
        words = []
        while True:
            self._pass(_BLANK)
            words.append(self._word())
            if len(words) > self._deepest:
                raise self._too_deep()
            self._pass(_BLANK)
            if self._next() != ".":
                return words
            self._at += 1

    def _word(self) -> str:
        quote = self._next()
        if quote == "'":
            return self._pass(_LITERAL)[1:-1]
        if quote != '"':
            return self._pass(_BARE)
        quoted = self._pass(_BASIC)
        if "\\" not in quoted:
            return quoted[1:-1]
        try:
            word = tomllib.loads(f"word = {quoted}")["word"]
        except tomllib.TOMLDecodeError as why:
            raise Lost from why
        return str(word)

    def _header(self) -> KeyPath:
        """``[table]`` or ``[[array of tables]]``: notes it and gives the path its keys go under."""
        is_array = self._text.startswith("[[", self._at)
        brackets = 2 if is_array else 1
        start = self._at
        self._at += brackets
        words = self._key()
        self._pass_char("]" * brackets)
        end, self._at = self._at, start
        path = self._within((), words[:-1])
        last = (*path, words[-1])
        if is_array:
            self._note(last)
            index = self._tables.get(last, 0)
            self._tables[last] = index + 1
            last = (*last, index)
        elif last in self._tables:
            last = (*last, self._tables[last] - 1)
        # `[a]` may come after `[a.b]` has made it on the way; the header is the better place to point at.
        self.lines.pop(last, None)
        self._note(last)
        self._at = end
        return last

    def _within(self, path: KeyPath, words: list[str]) -> KeyPath:
        """The path of a table, its way through arrays of tables leading to the newest of each."""
        for word in words:
            path = (*path, word)
            self._note(path)
            if path in self._tables:
                path = (*path, self._tables[path] - 1)
        return path

    # --- values ---

    def _assignment(self, table: KeyPath) -> None:
        """``key = value``: notes the key, and the keys inside the value."""
        start = self._at
        words = self._key()
        equals, self._at = self._at, start
        path = (*self._within(table, words[:-1]), words[-1])
        self._note(path)
        self._at = equals
        self._pass_char("=")
        self._pass(_BLANK)
        self._value(path)

    def _value(self, path: KeyPath) -> None:
        first = self._next()
        if first == "[":
            self._array(path)
        elif first == "{":
            self._inline_table(path)
        elif first in ('"', "'"):
            self._string()
        else:
            self._pass(_PLAIN)

    def _string(self) -> None:
        for pattern in _STRINGS:
            match = pattern.match(self._text, self._at)
            if match is not None:
                self._at = match.end()
                return
        raise Lost

    def _array(self, path: KeyPath) -> None:
        self._at += 1
        index = 0
        while True:
            self._pass(_GAP)
            if self._next() == "]":
                self._at += 1
                return
            element = (*path, index)
            self._note(element)
            self._value(element)
            index += 1
            self._pass(_GAP)
            if self._next() == ",":
                self._at += 1
            elif self._next() != "]":
                raise Lost

    def _inline_table(self, path: KeyPath) -> None:
        self._at += 1
        while True:
            self._pass(_GAP)
            if self._next() == "}":
                self._at += 1
                return
            self._assignment(path)
            self._pass(_GAP)
            if self._next() == ",":
                self._at += 1
            elif self._next() != "}":
                raise Lost
