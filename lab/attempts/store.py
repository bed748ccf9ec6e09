"""The record of attempts: one SQLite file, one connection, each attempt its own transaction.

The rollback journal with `synchronous=EXTRA` is used with every SQLite version: an attempt that was
reported as kept survives a power cut, and no version of it is known to lose a page, as some do with
write-ahead logging and several connections.  One answer costs a few synchronised writes, which is
nothing beside the time a learner takes.
"""

from __future__ import annotations

import contextlib
import json
import sqlite3
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any, TextIO

from lab.attempts.attempt import Attempt, AttemptsError
from lab.attempts.export import write_csv
from lab.attempts.opening import connected, is_damage, move_aside, set_aside_files
from lab.attempts.schema import COLUMNS, SELECT
from lab.attempts.troubles import sentence

_INSERT = (
    f"INSERT INTO attempt ({', '.join(COLUMNS)}) VALUES ({', '.join('?' * len(COLUMNS))}) ON CONFLICT (id) DO NOTHING"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Erased:
    """What erasing did: rows taken out, and damaged files set aside earlier that still hold the code."""

    rows: int
    also_in: tuple[Path, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Used:
    """A code that answers are kept under.  last_at: of the latest, UTC, ISO 8601.  answers: how many."""

    code: str
    last_at: str
    answers: int


class AttemptStore:
    """The attempts of one data folder.

    path: of the file.  set_aside: where a damaged file was moved when this store was opened, or None.
    """

    def __init__(self, connection: sqlite3.Connection, path: Path, *, set_aside: Path | None = None) -> None:
        self._connection = connection
        self.path = path
        self.set_aside = set_aside

    @classmethod
    def open(cls, path: Path) -> AttemptStore:
        """Open the record, make it if there is none, and bring it up to date.

        A file that is damaged beyond reading is moved aside and a new one begun.
        Raises AttemptsError if the file cannot be opened now, or was written by a newer lab.
        """
        set_aside = None
        try:
            try:
                connection = connected(path)
            except sqlite3.Error as error:
                if not is_damage(error):
                    raise
                set_aside = move_aside(path)
                connection = connected(path)
        except (sqlite3.Error, OSError) as error:
            raise sentence(error, path) from error
        return cls(connection, path, set_aside=set_aside)

    def close(self) -> None:
        """Let go of the file."""
        self._connection.close()

    def __enter__(self) -> AttemptStore:
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    def keep(self, attempt: Attempt) -> None:
        """Keep an attempt; once this returns it survives a power cut.  Keeping it again changes nothing.

        Raises AttemptsError if it could not be written (try again later, with the same attempt), or if
        another attempt has its id.
        """
        row = _row(attempt)
        with self._transaction():
            if self._connection.execute(_INSERT, row).rowcount == 0:
                kept = self._connection.execute(f"{SELECT} WHERE id = ?", (attempt.id,)).fetchone()
                if tuple(kept) != row:
                    raise AttemptsError(f"another attempt has the id {attempt.id}; nothing was changed")

    def attempts(self, *, learner: str | None = None) -> tuple[Attempt, ...]:
        """Every attempt, or one learner's, oldest first.  Raises AttemptsError if it cannot be read."""
        where, values = ("", ()) if learner is None else (" WHERE learner = ?", (learner,))
        with self._speaking_plainly():
            rows = self._connection.execute(f"{SELECT}{where} ORDER BY made_at, id", values).fetchall()
        return tuple(_attempt(row) for row in rows)

    def codes(self) -> tuple[Used, ...]:
        """Every code that answers are kept under, the latest used first.  Raises AttemptsError if it cannot be read."""
        with self._speaking_plainly():
            rows = self._connection.execute(
                "SELECT learner, MAX(made_at) AS last_at, COUNT(*) FROM attempt GROUP BY learner ORDER BY last_at DESC"
            ).fetchall()
        return tuple(Used(code=code, last_at=last_at, answers=answers) for code, last_at, answers in rows)

    def export_csv(self, stream: TextIO) -> int:
        """Write every attempt as CSV; returns how many.  Raises AttemptsError if it cannot be read."""
        return write_csv(self.attempts(), stream)

    def erase(self, learner: str) -> Erased:
        """Take out everything kept under one code, and wipe the room it took.

        Raises AttemptsError if it could not be done; then nothing was taken out, or the sentence says
        what is left to do.
        """
        with self._transaction():
            rows = self._connection.execute("DELETE FROM attempt WHERE learner = ?", (learner,)).rowcount
        self._wipe()
        with self._speaking_plainly():
            held = [path for path in set_aside_files(self.path) if learner.encode() in path.read_bytes()]
        return Erased(rows=rows, also_in=tuple(held))

    def erase_all(self) -> Erased:
        """Take out every attempt, damaged files set aside earlier included.  Raises as `erase`."""
        with self._transaction():
            rows = self._connection.execute("DELETE FROM attempt").rowcount
        self._wipe()
        with self._speaking_plainly():
            for path in set_aside_files(self.path):
                path.unlink()
        return Erased(rows=rows)

    def _wipe(self) -> None:
        try:
            self._connection.execute("VACUUM")
        except sqlite3.Error as error:
            raise AttemptsError(
                f"the attempts are erased, but the file could not be made smaller ({error}); "
                "erase again when there is room on the disk"
            ) from error

    @contextlib.contextmanager
    def _transaction(self) -> Iterator[None]:
        with self._speaking_plainly():
            try:
                self._connection.execute("BEGIN IMMEDIATE")
                yield
                self._connection.execute("COMMIT")
            finally:
                # After a failed write SQLite may have rolled back by itself already.
                if self._connection.in_transaction:
                    self._connection.execute("ROLLBACK")

    @contextlib.contextmanager
    def _speaking_plainly(self) -> Iterator[None]:
        try:
            yield
        except (sqlite3.Error, OSError) as error:
            raise sentence(error, self.path) from error


def _row(attempt: Attempt) -> tuple[Any, ...]:
    values = {name: getattr(attempt, name) for name in COLUMNS}
    values["ways"] = json.dumps(attempt.ways)
    values["locked"] = int(attempt.locked)
    values["right"] = int(attempt.right)
    return tuple(values.values())


def _attempt(row: tuple[Any, ...]) -> Attempt:
    values = dict(zip(COLUMNS, row, strict=True))
    values["ways"] = tuple(json.loads(values["ways"]))
    values["locked"] = bool(values["locked"])
    values["right"] = bool(values["right"])
    return Attempt(**values)
