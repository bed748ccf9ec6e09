"""The record's tables, and the numbered steps that bring an older file up to date."""

from __future__ import annotations

import sqlite3
from dataclasses import fields

from lab.attempts.attempt import Attempt, AttemptsError

#: The columns are the fields of an attempt, by the same names and in the same order.
COLUMNS = tuple(field.name for field in fields(Attempt))
SELECT = f"SELECT {', '.join(COLUMNS)} FROM attempt"

#: Step n takes a file from `user_version` n to n + 1.  A step that has shipped is never edited.
MIGRATIONS: tuple[tuple[str, ...], ...] = (
    (
        """
        CREATE TABLE attempt (
            id         TEXT PRIMARY KEY NOT NULL,
            learner    TEXT NOT NULL,
            lesson     TEXT NOT NULL,
            question   TEXT NOT NULL,
            kind       TEXT NOT NULL,
            seed       INTEGER NOT NULL CHECK (seed >= 0),
            round      INTEGER NOT NULL CHECK (round >= 0),
            scene      TEXT NOT NULL,
            given      TEXT NOT NULL,
            understood NOT NULL,
            truth      NOT NULL,
            tolerance  REAL,
            right      INTEGER NOT NULL CHECK (right IN (0, 1)),
            sure       TEXT,
            seconds    REAL NOT NULL,
            hints      INTEGER NOT NULL CHECK (hints >= 0),
            ways       TEXT NOT NULL,
            locked     INTEGER NOT NULL CHECK (locked IN (0, 1)),
            version    TEXT NOT NULL,
            made_at    TEXT NOT NULL
        )
        """,
        "CREATE INDEX attempt_by_learner ON attempt (learner, lesson)",
    ),
)


def migrate(connection: sqlite3.Connection) -> None:
    """Bring the file up to the newest version, all steps in one transaction or none.

    connection: in autocommit mode (`isolation_level=None`).
    Raises AttemptsError if the file was written by a newer lab, and sqlite3.Error as it comes.
    """
    # Taken before the version is read: two programs that start together must not both take a step.
    connection.execute("BEGIN IMMEDIATE")
    try:
        (version,) = connection.execute("PRAGMA user_version").fetchone()
        if version > len(MIGRATIONS):
            raise AttemptsError(
                f"the record has format {version} and this version of the lab knows {len(MIGRATIONS)}; "
                "nothing was changed: use the newer version"
            )
        for step in MIGRATIONS[version:]:
            for statement in step:
                connection.execute(statement)
        connection.execute(f"PRAGMA user_version = {len(MIGRATIONS)}")
        connection.execute("COMMIT")
    finally:
        if connection.in_transaction:
            connection.execute("ROLLBACK")
