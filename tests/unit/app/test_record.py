import sqlite3
from pathlib import Path
from typing import Any

import pytest

from lab.app.record import Record
from lab.attempts import Attempt, AttemptStore, attempt_of

ANSWER: dict[str, Any] = {
    "lesson": "oar", "question": "first", "kind": "side", "seed": 1, "round": 0, "scene": "", "given": "l",
    "understood": "left", "truth": "left", "tolerance": None, "right": True, "sure": "guess", "seconds": 1.0,
    "hints": 0, "ways": (), "locked": True,
}  # fmt: skip


def _attempt(**changes: Any) -> Attempt:
    return attempt_of({**ANSWER, **changes}, learner="34679CF7", version="0.1.0")


def _kept(path: Path) -> set[str]:
    with AttemptStore.open(path) as store:
        return {attempt.id for attempt in store.attempts()}


def test_an_attempt_is_kept_at_once(tmp_path: Path):
    path, attempt = tmp_path / "record.sqlite3", _attempt()
    record = Record(path)
    assert record.keep(attempt)
    assert _kept(path) == {attempt.id}
    assert (record.trouble, record.waiting) == (None, 0)
    record.close()


def test_attempts_wait_while_the_folder_is_not_there_and_all_go_in_later(tmp_path: Path):
    home = tmp_path / "home"
    home.write_text("a file where the folder should be")
    record = Record(home / "record.sqlite3")
    first, second = _attempt(), _attempt(question="second")
    assert not record.keep(first)
    assert "folder" in (record.trouble or "")
    assert record.waiting == 1
    home.unlink()
    assert record.keep(second)
    assert _kept(home / "record.sqlite3") == {first.id, second.id}
    record.close()


def test_a_locked_record_is_tried_again_when_the_program_ends(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    monkeypatch.setattr("lab.attempts.opening._WAIT_MS", 20)
    monkeypatch.setattr("lab.attempts.opening._PRAGMAS", ("PRAGMA busy_timeout = 20",))
    path, attempt = tmp_path / "record.sqlite3", _attempt()
    record = Record(path)
    assert record.of("34679CF7") == ()
    other = sqlite3.connect(path, isolation_level=None)
    other.execute("BEGIN EXCLUSIVE")
    assert not record.keep(attempt)
    other.execute("ROLLBACK")
    other.close()
    record.close()
    assert _kept(path) == {attempt.id}


def test_one_learners_attempts_and_the_codes_in_use_are_read_back(tmp_path: Path):
    record = Record(tmp_path / "record.sqlite3")
    record.keep(_attempt())
    record.keep(_attempt(round=1))
    assert [attempt.round for attempt in record.of("34679CF7")] == [0, 1]
    assert record.of("K7MX34TC") == ()
    assert [(used.code, used.answers) for used in record.codes()] == [("34679CF7", 2)]
    record.close()


def test_a_record_that_cannot_be_read_has_no_attempts_and_no_codes(tmp_path: Path):
    folder = tmp_path / "record.sqlite3"
    folder.mkdir()
    record = Record(folder)
    assert record.of("34679CF7") == ()
    assert record.codes() == ()
    record.close()


def test_a_damaged_record_is_reported(tmp_path: Path):
    path = tmp_path / "record.sqlite3"
    path.write_bytes(b"not a record" * 400)
    record = Record(path)
    assert record.keep(_attempt())
    assert record.set_aside is not None
    record.close()
