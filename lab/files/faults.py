"""What is wrong with a file, where, and what would be right."""

from __future__ import annotations

import difflib
import json
import re
from collections.abc import Iterable
from dataclasses import asdict, dataclass

KeyPath = tuple[str | int, ...]

WHOLE_FILE = "file"
"""The key of a fault that belongs to no key: the file is missing, too large, not TOML."""

_BARE_KEY = re.compile(r"[A-Za-z0-9_-]+")
# Long enough to recognise what was written, short enough that a fault stays one line on a terminal.
_LONGEST_SHOWN = 40
_SPAN = re.compile(r"\s+")


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault:
    """One thing wrong with a file.

    file: the path as it was given.  line: counted from 1.  key: dotted, arrays counted from 1.
    what: what is wrong.  cure: what would be right.
    """

    file: str
    line: int
    key: str
    what: str
    cure: str

    def as_text(self) -> str:
        """The fault as one line, ``file:line: key: what; cure``."""
        return printable(f"{self.file}:{self.line}: {self.key}: {self.what}; {self.cure}")

    def as_json(self) -> dict[str, str | int]:
        """The fault as the JSON object that ``--json`` prints."""
        return asdict(self)


class FileFaults(Exception):  # noqa: N818 - it carries faults, and is named for what it carries
    """A file can't be used. ``faults`` holds everything that is wrong with it, in the file's order."""

    def __init__(self, faults: Iterable[Fault]) -> None:
        """faults: at least one."""
        self.faults: tuple[Fault, ...] = tuple(sorted(faults, key=lambda fault: fault.line))
        super().__init__("\n".join(fault.as_text() for fault in self.faults))


def key_text(path: KeyPath) -> str:
    """A key path as a person reads it: ``part[2].weight``; arrays count from 1 as people do."""
    text = ""
    for step in path:
        if isinstance(step, int):
            text += f"[{step + 1}]"
        else:
            word = step if _BARE_KEY.fullmatch(step) and len(step) <= _LONGEST_SHOWN else shown(step)
            text += f".{word}" if text else word
    return text or WHOLE_FILE


def shown(value: object) -> str:
    """A value from a file, short and on one line, fit to be quoted in a fault."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        text = _SPAN.sub(" ", value)
        if len(text) > _LONGEST_SHOWN:
            text = text[:_LONGEST_SHOWN] + "…"
        return json.dumps(text, ensure_ascii=False)
    if isinstance(value, dict):
        return "a table"
    if isinstance(value, list):
        return f"a list of {len(value)}"
    if isinstance(value, int) and abs(value) >= 10**_LONGEST_SHOWN:
        return "a whole number of more than 40 digits"
    return str(value)


def printable(text: str) -> str:
    """The text with every control character and stray surrogate spelled out, so that it stays one plain line."""
    if text.isprintable():
        return text
    return "".join(char if char.isprintable() else char.encode("unicode_escape").decode("ascii") for char in text)


def near(name: str, known: Iterable[str]) -> str | None:
    """The known name that looks most like this one, or None where none is close enough to offer."""
    # Comparing costs the product of the lengths, and no known name is anywhere near this long.
    if len(name) > _LONGEST_SHOWN:
        return None
    written = {each.casefold(): each for each in known}
    # At 0.6 `pin` would be taken for `damping`.
    matches = difflib.get_close_matches(name.casefold(), written, n=1, cutoff=0.65)
    return written[matches[0]] if matches else None
