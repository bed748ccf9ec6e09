"""Where the faults of a lesson file lie, and which known word a mistaken one was meant to be."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from lab.files import Fault, KeyPath, key_text, line_of, near


class FaultPlaces:
    """Where the faults of one file lie."""

    def __init__(self, file: str, lines: Mapping[KeyPath, int]) -> None:
        """lines: key path → line from 1."""
        self._file = file
        self._lines = lines

    def fault(self, path: KeyPath, what: str, cure: str) -> Fault:
        """Return the fault of the key at a path."""
        return Fault(file=self._file, line=line_of(self._lines, path), key=key_text(path), what=what, cure=cure)


def nearest_of(value: object, choices: Iterable[str]) -> str:
    """Return a cure that offers the nearest choice, or all of them."""
    known = list(choices)
    nearest = near(value, known) if isinstance(value, str) else None
    return f'did you mean "{nearest}"?' if nearest else "write one of " + ", ".join(f'"{each}"' for each in known)
