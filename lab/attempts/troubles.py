"""What SQLite and the system report, as sentences with a way out."""

from __future__ import annotations

import sqlite3
from pathlib import Path

from lab.attempts.attempt import AttemptsError

_BUSY = "another program is writing to it; close that program, then try again"
_DAMAGED = "it is damaged; start the lab again, which sets it aside and begins a new one"
_CURES = {
    sqlite3.SQLITE_BUSY: _BUSY,
    sqlite3.SQLITE_LOCKED: _BUSY,
    sqlite3.SQLITE_READONLY: "it may not be written to; get permission to write there, then try again",
    sqlite3.SQLITE_FULL: "the disk is full; make room on it, then try again",
    sqlite3.SQLITE_IOERR: "the disk did not take the data; see that it is there and has room, then try again",
    sqlite3.SQLITE_CANTOPEN: "it cannot be opened; see that its folder may be written to, then try again",
    sqlite3.SQLITE_CORRUPT: _DAMAGED,
    sqlite3.SQLITE_NOTADB: _DAMAGED,
}


def sentence(error: sqlite3.Error | OSError, path: Path) -> AttemptsError:
    """The error to raise for one that came from below."""
    if isinstance(error, OSError):
        return AttemptsError(
            f"the record {path} cannot be used: {error.strerror or error}; "
            "see that its folder is there and may be written to, then try again"
        )
    code = primary_code(error)
    cure = None if code is None else _CURES.get(code)
    return AttemptsError(f"the record {path} cannot be used: {cure or f'{error}; try again'}")


def primary_code(error: sqlite3.Error) -> int | None:
    """SQLite's result code without the detail in its higher bytes; None where it did not come from SQLite."""
    code: int | None = getattr(error, "sqlite_errorcode", None)
    return None if code is None else code & 0xFF
