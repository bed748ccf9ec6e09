"""TOML files with the line of every key, refused before anything in them can hang or overflow."""

from __future__ import annotations

import os
import re
import stat
import tomllib
from collections.abc import Iterator, Mapping
from contextlib import suppress
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import Any

from lab.files.faults import WHOLE_FILE, Fault, FileFaults, KeyPath
from lab.files.key_lines import KeyScanner, TooMuch

LARGEST_BYTES = 1024 * 1024
"""The largest file that is read. A lesson of a hundred questions is about a tenth of it."""

DEEPEST = 20
"""The longest key path. The deepest a build or lesson needs is 9 (question, scene, part, shape, outline)."""

MOST_KEYS = 40_000
"""The most keys and list items. A build of a thousand parts has a tenth of it; a file stuffed with more would
keep whoever waits for its faults waiting longer than the 2 s that bad input may take."""

SMALL_CHARS = MOST_KEYS
"""Of a text that cannot hold more than MOST_KEYS keys and list items, since each takes a character at least."""

_BYTE_ORDER_MARK = "\ufeff"
_ERROR_LINE = re.compile(r"\s*\(at (?:line (\d+), column \d+|end of document)\)$")


@dataclass(frozen=True, slots=True, kw_only=True)
class Keyed:
    """What a TOML text holds, and where.

    data: as `tomllib` gives it.  lines: key path → line from 1, for every key and array element.
    """

    data: dict[str, Any]
    lines: Mapping[KeyPath, int]


def line_of(lines: Mapping[KeyPath, int], path: KeyPath) -> int:
    """The line of a key path, or of the nearest table around it that has one; 1 for the file itself."""
    while path:
        if path in lines:
            return lines[path]
        path = path[:-1]
    return 1


def load(path: str | os.PathLike[str]) -> Keyed:
    """Read a TOML file.

    Raises FileFaults where it is missing, a folder, not a plain file, not readable, or as ``parse`` does.
    """
    name = os.fspath(path)
    return _parse_bytes(_read_bytes(name), file=name)


def parse(text: str, *, file: str) -> Keyed:
    """Read TOML text. A byte order mark and CRLF line ends are let through.

    file: named in faults.
    Raises FileFaults with one fault: too large, nested too deep, a NUL in it, not TOML.
    """
    # A text of a quarter of the limit can't be over it in any encoding; the common case skips the copy.
    if len(text) * 4 > LARGEST_BYTES and len(text.encode("utf-8", "surrogatepass")) > LARGEST_BYTES:
        raise _too_large(file)
    text = text.removeprefix(_BYTE_ORDER_MARK)
    if "\0" in text:
        line = text.count("\n", 0, text.index("\0")) + 1
        raise _whole(file, "a NUL byte in the text", "save it as plain UTF-8 text", line=line)
    scanner = KeyScanner(text, deepest=DEEPEST, most=MOST_KEYS)
    if _is_harmless(text):
        # Most files have no fault, and then nobody asks for a line: they are looked for when somebody does.
        with suppress(ValueError, RecursionError):
            data = tomllib.loads(text)
            if _depth(data) < DEEPEST:
                return Keyed(data=data, lines=LinesOnceAsked(scanner))
    try:
        scanner.scan()
        data = tomllib.loads(text)
    except TooMuch as why:
        raise _whole(file, why.what, "leave out or split what isn't needed", line=why.line) from why
    except RecursionError as why:
        raise _whole(file, f"nested more than {DEEPEST} deep", "nest fewer tables and lists") from why
    except ValueError as why:
        # Not TOMLDecodeError alone: a number of more than 4300 digits fails in int().
        raise _not_toml(file, text, str(why)) from why
    return Keyed(data=data, lines=scanner.lines)


class LinesOnceAsked(Mapping[KeyPath, int]):
    """The line of every key of a text that is known to be sound; walked through when the first is asked for."""

    def __init__(self, scanner: KeyScanner) -> None:
        """scanner: of that text, nothing scanned yet."""
        self._scanner = scanner

    @cached_property
    def _lines(self) -> Mapping[KeyPath, int]:
        self._scanner.scan()
        return self._scanner.lines

    def __getitem__(self, path: KeyPath) -> int:
        """The line of a key path.  Raises KeyError."""
        return self._lines[path]

    def __iter__(self) -> Iterator[KeyPath]:
        """Every key path."""
        return iter(self._lines)

    def __len__(self) -> int:
        """How many key paths there are."""
        return len(self._lines)


def _is_harmless(text: str) -> bool:
    """Whether a text is too small and too plain to keep `tomllib` busy: small, with no long dotted key."""
    return len(text) <= SMALL_CHARS and all(line.count(".") < DEEPEST for line in text.split("\n"))


def _depth(value: object) -> int:
    """How long the longest key path in a value is."""
    if isinstance(value, dict):
        return 1 + max(map(_depth, value.values()), default=0)
    if isinstance(value, list):
        return 1 + max(map(_depth, value), default=0)
    return 0


def _read_bytes(name: str) -> bytes:
    try:
        mode = os.stat(name).st_mode
        if stat.S_ISDIR(mode):
            raise _whole(name, "a folder", "name a file in it")
        # Opening a pipe would wait for whoever writes to it, perhaps for ever.
        if not stat.S_ISREG(mode):
            raise _whole(name, "not a plain file", "name a plain file")
        with Path(name).open("rb") as stream:
            content = stream.read(LARGEST_BYTES + 1)
    except FileNotFoundError as why:
        raise _whole(name, "no such file", "check the name and the folder") from why
    except (OSError, ValueError) as why:
        reason = why.strerror if isinstance(why, OSError) and why.strerror else "not a usable name"
        raise _whole(name, f"can't be read ({reason.lower()})", "check the name and who may read it") from why
    if len(content) > LARGEST_BYTES:
        raise _too_large(name)
    return content


def _parse_bytes(content: bytes, *, file: str) -> Keyed:
    if content.startswith((b"\xff\xfe", b"\xfe\xff")):
        raise _whole(file, "the text is UTF-16 or UTF-32", "save it as UTF-8")
    try:
        text = content.decode("utf-8")
    except UnicodeDecodeError as why:
        line = content.count(b"\n", 0, why.start) + 1
        raise _whole(file, "the text is not UTF-8", "save it as UTF-8", line=line) from why
    return parse(text, file=file)


def _not_toml(file: str, text: str, message: str) -> FileFaults:
    place = _ERROR_LINE.search(message)
    line = int(place.group(1)) if place and place.group(1) else 1
    if place and not place.group(1):
        line = text.count("\n") + 1
    reason = _ERROR_LINE.sub("", message)
    if place is None:
        reason = "a number with thousands of digits"
    return _whole(file, f"not TOML: {reason[:1].lower()}{reason[1:]}", "write `key = value` lines", line=line)


def _too_large(file: str) -> FileFaults:
    return _whole(file, "larger than 1 MiB", "split it or leave out what isn't needed")


def _whole(file: str, what: str, cure: str, *, line: int = 1) -> FileFaults:
    return FileFaults([Fault(file=file, line=line, key=WHOLE_FILE, what=what, cure=cure)])
