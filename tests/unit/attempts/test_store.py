import dataclasses
import os
import sqlite3
import stat
from collections.abc import Callable
from pathlib import Path

import pytest

from lab.attempts import Attempt, AttemptsError, AttemptStore
from lab.attempts.schema import COLUMNS, MIGRATIONS

MakeAttempt = Callable[..., Attempt]
needs_modes = pytest.mark.skipif(os.name != "posix", reason="file modes mean little here")


def _pragma(store: AttemptStore, name: str) -> object:
    return store._connection.execute(f"PRAGMA {name}").fetchone()[0]


def test_what_is_kept_is_read_back_as_it_was(store: AttemptStore, make_attempt: MakeAttempt):
    place = make_attempt(made_at="2031-05-04T10:00:00.000Z")
    side = make_attempt(
        kind="side", understood="left", truth="level", tolerance=None, right=True, ways=(), sure="guess",
        given="l", made_at="2031-05-04T10:01:00.000Z",
    )  # fmt: skip
    left_open = make_attempt(locked=False, sure=None, given="9", understood=9.0, made_at="2031-05-04T10:02:00.000Z")
    for attempt in (side, left_open, place):
        store.keep(attempt)
    assert store.attempts() == (place, side, left_open)


def test_a_record_is_still_there_when_opened_again(record_path: Path, make_attempt: MakeAttempt):
    attempt = make_attempt()
    with AttemptStore.open(record_path) as store:
        store.keep(attempt)
    with AttemptStore.open(record_path) as store:
        assert store.attempts() == (attempt,)
        assert store.set_aside is None


def test_keeping_the_same_attempt_again_changes_nothing(store: AttemptStore, make_attempt: MakeAttempt):
    attempt = make_attempt()
    store.keep(attempt)
    store.keep(attempt)
    assert store.attempts() == (attempt,)


def test_another_attempt_under_the_same_id_is_refused(store: AttemptStore, make_attempt: MakeAttempt):
    first = make_attempt()
    store.keep(first)
    with pytest.raises(AttemptsError, match="nothing was changed"):
        store.keep(dataclasses.replace(first, given="5.6"))
    assert store.attempts() == (first,)


def test_an_attempt_asks_only_for_one_learner(store: AttemptStore, make_attempt: MakeAttempt):
    mine, other = make_attempt(), make_attempt(learner="34679CFH")
    store.keep(mine)
    store.keep(other)
    assert store.attempts(learner=mine.learner) == (mine,)


@pytest.mark.parametrize(
    "change",
    [
        {"truth": float("nan")},
        {"understood": float("inf")},
        {"seconds": float("nan")},
        {"seed": -1},
        {"seed": 2**63},
    ],
)
def test_a_number_that_could_not_be_read_back_is_refused(change: dict[str, float], make_attempt: MakeAttempt):
    with pytest.raises(ValueError, match=next(iter(change))):
        make_attempt(**change)


def test_the_settings_that_keep_an_answer_through_a_power_cut_are_on(store: AttemptStore):
    assert _pragma(store, "journal_mode") == "delete"
    assert _pragma(store, "synchronous") == 3  # EXTRA
    assert _pragma(store, "foreign_keys") == 1
    assert _pragma(store, "busy_timeout") == 5000
    assert _pragma(store, "trusted_schema") == 0
    assert _pragma(store, "secure_delete") == 1


@needs_modes
def test_nobody_else_may_read_the_record(record_path: Path):
    AttemptStore.open(record_path).close()
    assert stat.S_IMODE(record_path.stat().st_mode) == 0o600
    assert stat.S_IMODE(record_path.parent.stat().st_mode) == 0o700


@needs_modes
def test_a_record_that_others_could_read_is_closed_to_them(record_path: Path):
    AttemptStore.open(record_path).close()
    record_path.chmod(0o644)
    AttemptStore.open(record_path).close()
    assert stat.S_IMODE(record_path.stat().st_mode) == 0o600


def test_the_table_has_the_columns_of_an_attempt(store: AttemptStore):
    columns = [row[1] for row in store._connection.execute("PRAGMA table_info(attempt)")]
    assert tuple(columns) == COLUMNS
    assert _pragma(store, "user_version") == len(MIGRATIONS)


def test_a_record_of_a_newer_lab_is_left_alone(record_path: Path, make_attempt: MakeAttempt):
    with AttemptStore.open(record_path) as store:
        store.keep(make_attempt())
    with sqlite3.connect(record_path) as raw:
        raw.execute(f"PRAGMA user_version = {len(MIGRATIONS) + 1}")
    raw.close()
    before = record_path.read_bytes()
    with pytest.raises(AttemptsError, match="newer version"):
        AttemptStore.open(record_path)
    assert record_path.read_bytes() == before


def test_a_step_that_fails_halfway_leaves_the_older_file_as_it_was(
    record_path: Path, make_attempt: MakeAttempt, monkeypatch: pytest.MonkeyPatch
):
    attempt = make_attempt()
    with AttemptStore.open(record_path) as store:
        store.keep(attempt)
    broken = (*MIGRATIONS, ("CREATE TABLE extra (id TEXT)", "INSERT INTO extra VALUES (no_such_function())"))
    with sqlite3.connect(record_path, isolation_level=None) as raw:
        monkeypatch.setattr("lab.attempts.schema.MIGRATIONS", broken)
        from lab.attempts.schema import migrate

        with pytest.raises(sqlite3.OperationalError):
            migrate(raw)
        assert raw.execute("PRAGMA user_version").fetchone() == (len(MIGRATIONS),)
    raw.close()
    monkeypatch.undo()
    with AttemptStore.open(record_path) as store:
        assert store.attempts() == (attempt,)


def test_a_later_step_is_taken_once_and_keeps_what_is_there(
    record_path: Path, make_attempt: MakeAttempt, monkeypatch: pytest.MonkeyPatch
):
    attempt = make_attempt()
    with AttemptStore.open(record_path) as store:
        store.keep(attempt)
    longer = (*MIGRATIONS, ("CREATE TABLE extra (id TEXT)",))
    monkeypatch.setattr("lab.attempts.schema.MIGRATIONS", longer)
    for _ in range(2):
        with AttemptStore.open(record_path) as store:
            assert store.attempts() == (attempt,)
            assert _pragma(store, "user_version") == len(longer)


def test_erasing_a_code_leaves_nothing_of_it_in_the_file(
    store: AttemptStore, record_path: Path, make_attempt: MakeAttempt
):
    other = make_attempt(learner="34679CFH")
    store.keep(other)
    for round_number in range(40):
        store.keep(make_attempt(round=round_number, given="a sentence that only this learner typed"))
    erased = store.erase("K7MX34TC")
    assert erased.rows == 40
    assert erased.also_in == ()
    assert store.attempts() == (other,)
    held = record_path.read_bytes()
    assert b"K7MX34TC" not in held
    assert b"only this learner typed" not in held


def test_erasing_an_unknown_code_takes_nothing(store: AttemptStore, make_attempt: MakeAttempt):
    store.keep(make_attempt())
    assert store.erase("34679CFH").rows == 0
    assert len(store.attempts()) == 1


def test_erasing_everything_also_removes_damaged_files_set_aside(record_path: Path, make_attempt: MakeAttempt):
    record_path.parent.mkdir()
    record_path.write_bytes(b"not a database: K7MX34TC" * 50)
    with AttemptStore.open(record_path) as store:
        assert store.set_aside is not None
        store.keep(make_attempt())
        assert store.erase("K7MX34TC").also_in == (store.set_aside,)
        store.keep(make_attempt())
        assert store.erase_all().rows == 1
        assert not store.set_aside.exists()
        assert store.attempts() == ()


def test_a_record_that_shrinks_no_more_says_that_the_answers_are_out(
    record_path: Path, make_attempt: MakeAttempt, monkeypatch: pytest.MonkeyPatch
):
    # The disk has no room for the copy that VACUUM makes.
    class Full:
        def __init__(self, connection: sqlite3.Connection) -> None:
            self._connection = connection

        def __getattr__(self, name: str) -> object:
            return getattr(self._connection, name)

        def execute(self, sql: str, *values: object) -> sqlite3.Cursor:
            if sql == "VACUUM":
                raise sqlite3.OperationalError("database or disk is full")
            return self._connection.execute(sql, *values)

    with AttemptStore.open(record_path) as store:
        store.keep(make_attempt())
        monkeypatch.setattr(store, "_connection", Full(store._connection))
        with pytest.raises(AttemptsError, match="are erased, but the file could not be made smaller"):
            store.erase_all()
        assert store.attempts() == ()


def test_a_broken_journal_goes_aside_with_its_file(record_path: Path, make_attempt: MakeAttempt):
    record_path.parent.mkdir(parents=True, exist_ok=True)
    record_path.write_bytes(b"no record at all" * 300)
    journal = record_path.with_name(record_path.name + "-shm")
    journal.write_bytes(b"left over")
    with AttemptStore.open(record_path) as store:
        store.keep(make_attempt())
        assert store.set_aside is not None
        assert store.set_aside.with_name(store.set_aside.name + "-shm").read_bytes() == b"left over"
        assert not journal.exists()
