"""How the record's file is made, checked, opened, and moved aside when it cannot be read."""

from __future__ import annotations

import os
import sqlite3
from datetime import UTC, datetime
from pathlib import Path

from lab.attempts.schema import SELECT, migrate
from lab.attempts.troubles import primary_code

#: How long another program may hold the file before we give up and say so.
_WAIT_MS = 5000
_PRAGMAS = (
    f"PRAGMA busy_timeout = {_WAIT_MS}",
    "PRAGMA trusted_schema = OFF",
    "PRAGMA foreign_keys = ON",
    "PRAGMA journal_mode = DELETE",
    "PRAGMA synchronous = EXTRA",
    # Otherwise macOS lets the drive hold a write back; elsewhere this changes nothing.
    "PRAGMA fullfsync = ON",
    "PRAGMA secure_delete = ON",
)
#: "SQL logic error" while the tables are made or looked at: a database, but not our record.
_DAMAGE_CODES = (sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB, sqlite3.SQLITE_ERROR)


class _DamagedError(sqlite3.DatabaseError):
    """The check found a page that is not as it was written."""


def connected(path: Path) -> sqlite3.Connection:
    """A connection to a file that is checked and up to date; makes the file if there is none.

    Raises sqlite3.Error, OSError, or AttemptsError for a file from a newer lab.
    """
    path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    # Made here and not by SQLite: nobody else on the machine may read it, not for an instant.
    os.close(os.open(path, os.O_RDWR | os.O_CREAT, 0o600))
    if os.name == "posix" and path.stat().st_mode & 0o077:
        path.chmod(0o600)
    connection = sqlite3.connect(path, isolation_level=None, timeout=_WAIT_MS / 1000)
    try:
        for pragma in _PRAGMAS:
            connection.execute(pragma).fetchall()
        (verdict,) = connection.execute("PRAGMA quick_check(1)").fetchone()
        if verdict != "ok":
            raise _DamagedError(verdict)
        migrate(connection)
        connection.execute(f"{SELECT} LIMIT 0")
    except BaseException:
        connection.close()
        raise
    return connection


def is_damage(error: sqlite3.Error) -> bool:
    """Whether the file itself is at fault, so that trying again can never help."""
    return isinstance(error, _DamagedError) or primary_code(error) in _DAMAGE_CODES


def move_aside(path: Path) -> Path:
    """Rename a file that cannot be read, with what belongs to it; returns its new name."""
    stamp = datetime.now(UTC).strftime("%Y%m%dT%H%M%S%f")
    aside = path.with_name(f"{path.stem}.damaged-{stamp}{path.suffix}")
    # A journal that stayed behind would be played into the new file.
    for ending in ("-journal", "-wal", "-shm"):
        companion = path.with_name(path.name + ending)
        if companion.exists():
            companion.replace(aside.with_name(aside.name + ending))
    path.replace(aside)
    return aside


def set_aside_files(path: Path) -> tuple[Path, ...]:
    """Every file that was ever moved aside from here and is still there."""
    return tuple(sorted(path.parent.glob(f"{path.stem}.damaged-*")))
