"""The record as the program uses it: opened when first needed, and never losing what it could not yet write."""

from __future__ import annotations

from pathlib import Path

from lab import attempts


class Record:
    """Keeps attempts; those that cannot be written now wait, and go in before any later one.

    trouble: the sentence of the last failure, or None while everything given is safely kept.
    set_aside: where a damaged record was moved when it was opened, or None.
    """

    def __init__(self, path: Path) -> None:
        self._path = path
        self._store: attempts.AttemptStore | None = None
        self._waiting: list[attempts.Attempt] = []
        self.trouble: str | None = None
        self.set_aside: Path | None = None

    @property
    def waiting(self) -> int:
        """How many attempts are not yet kept."""
        return len(self._waiting)

    def keep(self, attempt: attempts.Attempt) -> bool:
        """Take an attempt and try to write all that wait; True if everything is kept now."""
        self._waiting.append(attempt)
        return self.retry()

    def retry(self) -> bool:
        """Try again to write what waits; True if everything is kept now."""
        try:
            store = self._opened()
            while self._waiting:
                store.keep(self._waiting[0])
                del self._waiting[0]
        except attempts.AttemptsError as error:
            self.trouble = str(error)
            return False
        self.trouble = None
        return True

    def of(self, learner: str) -> tuple[attempts.Attempt, ...]:
        """One learner's attempts, oldest first; none where the record cannot be read."""
        try:
            return self._opened().attempts(learner=learner)
        except attempts.AttemptsError:
            return ()

    def codes(self) -> tuple[attempts.Used, ...]:
        """The codes that answers are kept under, the latest used first; none where the record cannot be read."""
        try:
            return self._opened().codes()
        except attempts.AttemptsError:
            return ()

    def close(self) -> None:
        """Try once more to write what waits, then let go of the file."""
        if self._waiting:
            self.retry()
        if self._store is not None:
            self._store.close()
            self._store = None

    def _opened(self) -> attempts.AttemptStore:
        if self._store is None:
            self._store = attempts.AttemptStore.open(self._path)
            self.set_aside = self._store.set_aside or self.set_aside
        return self._store
