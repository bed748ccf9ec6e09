"""The record when the disk is full, the file locked, damaged or read-only, or a write fails."""

import os
import resource
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import pytest

from lab.attempts import Attempt, AttemptsError, AttemptStore

CODE = "K7MX34TC"


def _attempt(number: int, *, scene: str = "x") -> Attempt:
    return Attempt(
        id=f"00000000-0000-4000-8000-{number:012d}", learner=CODE, lesson="a-lopsided-tool", question="oar",
        kind="side", seed=1, round=number, scene=scene, given="left", understood="left", truth="right",
        tolerance=None, right=False, sure="guess", seconds=1.0, hints=0, ways=("distance only",), locked=True,
        version="0.1.0", made_at=f"2031-05-04T10:20:{number:02d}.000Z",
    )  # fmt: skip


class FaultyConnection:
    """A connection that fails at the n-th statement: before it is carried out, or after."""

    def __init__(self, connection: sqlite3.Connection, fail_at: int, *, after: bool) -> None:
        self._connection = connection
        self._left = fail_at
        self._after = after

    def __getattr__(self, name: str) -> Any:
        return getattr(self._connection, name)

    def execute(self, *args: Any) -> sqlite3.Cursor:
        self._left -= 1
        if self._left == 0 and not self._after:
            raise sqlite3.OperationalError("disk I/O error")
        cursor = self._connection.execute(*args)
        if self._left == 0:
            raise sqlite3.OperationalError("disk I/O error")
        return cursor


@pytest.mark.parametrize("after", [False, True])
@pytest.mark.parametrize("fail_at", [1, 2, 3])
def test_whichever_statement_fails_a_retry_keeps_the_attempt_once(tmp_path: Path, fail_at: int, after: bool):
    path = tmp_path / "attempts.sqlite3"
    good = AttemptStore.open(path)
    faulty = AttemptStore(FaultyConnection(good._connection, fail_at, after=after), path)  # type: ignore[arg-type]
    attempt = _attempt(1)
    with pytest.raises(AttemptsError, match="try again"):
        faulty.keep(attempt)
    faulty.keep(attempt)
    assert good.attempts() == (attempt,)
    good.close()


@contextmanager
def files_no_larger_than(size: int) -> Iterator[None]:
    """Make the system refuse the write that would pass this many bytes, as a full disk does."""
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (size, hard))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))


@pytest.mark.skipif(os.name != "posix", reason="needs a limit on file size")
def test_the_nth_write_fails_and_everything_acknowledged_is_still_there(tmp_path: Path):
    # Each limit lets a few more bytes through, so that each write of the journal and of the file
    # is the failing one at some limit.
    for limit in range(0, 40_000, 1_300):
        path = tmp_path / f"record-{limit}.sqlite3"
        AttemptStore.open(path).close()
        kept = []
        refused = None
        with AttemptStore.open(path) as store:
            with files_no_larger_than(limit):
                for number in range(1, 20):
                    try:
                        store.keep(_attempt(number, scene="y" * 1500))
                    except AttemptsError:
                        refused = _attempt(number, scene="y" * 1500)
                        break
                    kept.append(number)
            assert refused is not None
            store.keep(refused)  # room again: the same attempt goes in
        with AttemptStore.open(path) as store:
            assert store.set_aside is None
            assert [attempt.round for attempt in store.attempts()] == [*kept, refused.round]


def test_a_full_disk_says_so_and_the_attempt_goes_in_once_there_is_room(tmp_path: Path):
    with AttemptStore.open(tmp_path / "attempts.sqlite3") as store:
        (pages,) = store._connection.execute("PRAGMA page_count").fetchone()
        store._connection.execute(f"PRAGMA max_page_count = {pages}").fetchall()
        large = _attempt(1, scene="z" * 20_000)
        with pytest.raises(AttemptsError, match="disk is full; make room"):
            store.keep(large)
        store._connection.execute("PRAGMA max_page_count = 100000").fetchall()
        store.keep(large)
        assert store.attempts() == (large,)


def test_a_record_locked_by_another_program_says_so_and_can_be_tried_again(tmp_path: Path):
    path = tmp_path / "attempts.sqlite3"
    with AttemptStore.open(path) as store:
        store._connection.execute("PRAGMA busy_timeout = 20").fetchall()
        other = sqlite3.connect(path, isolation_level=None)
        other.execute("BEGIN EXCLUSIVE")
        with pytest.raises(AttemptsError, match="another program is writing"):
            store.keep(_attempt(1))
        other.execute("ROLLBACK")
        other.close()
        store.keep(_attempt(1))
        assert len(store.attempts()) == 1


def test_a_record_that_may_not_be_written_says_so(tmp_path: Path):
    path = tmp_path / "attempts.sqlite3"
    AttemptStore.open(path).close()
    # Root may write to any file, so the connection itself is opened read-only.
    connection = sqlite3.connect(f"file:{path}?mode=ro", uri=True, isolation_level=None)
    with AttemptStore(connection, path) as store, pytest.raises(AttemptsError, match="may not be written"):
        store.keep(_attempt(1))


def test_a_record_below_a_file_instead_of_a_folder_says_so(tmp_path: Path):
    (tmp_path / "data").write_text("in the way")
    with pytest.raises(AttemptsError, match="folder"):
        AttemptStore.open(tmp_path / "data" / "attempts.sqlite3")


@pytest.mark.parametrize(
    "content",
    [b"not a database at all" * 100, b"SQLite format 3\0" + b"\xff" * 5000, b"\0" * 4096],
    ids=["text", "header only", "zeros"],
)
def test_a_damaged_file_is_set_aside_whole_and_a_new_one_begun(tmp_path: Path, content: bytes):
    path = tmp_path / "attempts.sqlite3"
    path.write_bytes(content)
    with AttemptStore.open(path) as store:
        assert store.set_aside is not None
        assert store.set_aside.read_bytes() == content
        store.keep(_attempt(1))
        assert len(store.attempts()) == 1


def test_a_page_overwritten_in_the_middle_is_found_at_the_start(tmp_path: Path):
    path = tmp_path / "attempts.sqlite3"
    with AttemptStore.open(path) as store:
        for number in range(1, 30):
            store.keep(_attempt(number, scene="y" * 1500))
    held = bytearray(path.read_bytes())
    held[4096:8192] = b"\x55" * 4096
    path.write_bytes(held)
    with AttemptStore.open(path) as store:
        assert store.set_aside is not None
        assert store.attempts() == ()


def test_another_programs_database_in_its_place_is_set_aside(tmp_path: Path):
    path = tmp_path / "attempts.sqlite3"
    with sqlite3.connect(path) as raw:
        raw.execute("CREATE TABLE attempt (something TEXT)")
    raw.close()
    with AttemptStore.open(path) as store:
        assert store.set_aside is not None


def test_an_empty_file_becomes_a_record(tmp_path: Path):
    path = tmp_path / "attempts.sqlite3"
    path.touch()
    with AttemptStore.open(path) as store:
        assert store.set_aside is None
        assert store.attempts() == ()


def test_two_programs_on_one_record_lose_and_double_nothing(tmp_path: Path):
    path = tmp_path / "attempts.sqlite3"
    with AttemptStore.open(path) as first, AttemptStore.open(path) as second:
        for number in range(1, 11):
            (first if number % 2 else second).keep(_attempt(number))
            (second if number % 2 else first).keep(_attempt(number))
        assert len(first.attempts()) == 10
