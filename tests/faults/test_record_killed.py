"""A program killed while it writes: whatever it had acknowledged is there, and the file opens clean."""

import os
import random
import signal
import sqlite3
import subprocess
import sys
import threading
from pathlib import Path

import pytest

from lab.attempts import AttemptStore

WRITER = """
import sys
from pathlib import Path
from lab.attempts import Attempt, AttemptStore
store = AttemptStore.open(Path(sys.argv[1]))
start = int(sys.argv[2])
for number in range(start, start + 100_000):
    store.keep(Attempt(
        id=f"attempt-{number}", learner="K7MX34TC", lesson="oar", question="oar", kind="side", seed=1,
        round=number, scene="s" * 700, given="left", understood="left", truth="left", tolerance=None,
        right=True, sure="certain", seconds=2.0, hints=0, ways=(), locked=True, version="0.1.0",
        made_at="2031-05-04T10:20:30.000Z"))
    sys.stdout.write(f"{number}\\n")
    sys.stdout.flush()
"""


def _kill_while_writing(path: Path, start: int, wait_s: float) -> list[int]:
    """Numbers that the writer said were kept before it was killed."""
    with subprocess.Popen(
        [sys.executable, "-c", WRITER, str(path), str(start)], stdout=subprocess.PIPE, text=True
    ) as writer:
        assert writer.stdout is not None
        acknowledged = [int(writer.stdout.readline())]
        # Only now: the chance is to hit a write, not the interpreter's start.
        timer = threading.Timer(wait_s, writer.send_signal, [signal.SIGKILL])
        timer.start()
        acknowledged += [int(line) for line in writer.stdout if line.endswith("\n")]
        timer.join()
    return acknowledged


def _check(path: Path, times: int) -> None:
    random_source = random.Random(20310504)
    acknowledged: set[int] = set()
    for _ in range(times):
        start = max(acknowledged, default=0) + 1_000
        acknowledged |= set(_kill_while_writing(path, start, random_source.uniform(0.0, 0.05)))
        with AttemptStore.open(path) as store:
            assert store.set_aside is None
            assert acknowledged <= {attempt.round for attempt in store.attempts()}
    with sqlite3.connect(path) as raw:
        assert raw.execute("PRAGMA integrity_check").fetchone() == ("ok",)
    raw.close()


pytestmark = pytest.mark.skipif(os.name != "posix", reason="needs SIGKILL")


def test_a_killed_program_loses_nothing_it_acknowledged(tmp_path: Path):
    _check(tmp_path / "attempts.sqlite3", 24)


@pytest.mark.soak
def test_a_thousand_kills_lose_nothing(tmp_path: Path):
    _check(tmp_path / "attempts.sqlite3", 1000)


INSERT = """
    INSERT INTO attempt
    SELECT 'id-' || value, 'c', 'l', 'q', 'k', 1, value, hex(zeroblob(2000)), 'g', 'u', 't', NULL, 1, '',
           0.0, 0, '[]', 1, 'v', 'm'
    FROM (WITH RECURSIVE n(value) AS (SELECT 1 UNION ALL SELECT value + 1 FROM n WHERE value < 60)
          SELECT value FROM n)
"""


def _files_in_mid_write(path: Path, *, spilled: bool) -> tuple[bytes, bytes]:
    """The record and its journal while a transaction is under way; `spilled`: some pages already written."""
    journal_path = path.with_name(path.name + "-journal")
    with AttemptStore.open(path) as store:
        connection = store._connection
        connection.execute(f"PRAGMA cache_size = {5 if spilled else 2000}").fetchall()
        connection.execute("BEGIN IMMEDIATE")
        connection.execute(INSERT)
        files = path.read_bytes(), journal_path.read_bytes()
        connection.execute("ROLLBACK")
    return files


def test_a_journal_cut_at_any_place_before_the_record_was_touched_opens_clean(tmp_path: Path):
    path = tmp_path / "attempts.sqlite3"
    record, journal = _files_in_mid_write(path, spilled=False)
    for length in range(0, len(journal) + 1, 97):
        path.write_bytes(record)
        path.with_name(path.name + "-journal").write_bytes(journal[:length])
        with AttemptStore.open(path) as store:
            assert store.set_aside is None
            assert store.attempts() == ()


def test_a_record_half_written_is_rolled_back_from_its_journal(tmp_path: Path):
    path = tmp_path / "attempts.sqlite3"
    AttemptStore.open(path).close()
    before = path.read_bytes()
    record, journal = _files_in_mid_write(path, spilled=True)
    assert len(record) > len(before), "some pages must have been written for this to say anything"
    path.write_bytes(record)
    path.with_name(path.name + "-journal").write_bytes(journal)
    with AttemptStore.open(path) as store:
        assert store.set_aside is None
        assert store.attempts() == ()
