"""A made-up attempt, and a store in a folder of the test's own."""

from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from lab.attempts import Attempt, AttemptStore, new_attempt_id


def _attempt(**changes: Any) -> Attempt:
    values: dict[str, Any] = {
        "id": new_attempt_id(),
        "learner": "K7MX34TC",
        "lesson": "a-lopsided-tool",
        "question": "boat-hook",
        "kind": "place",
        "seed": 4711,
        "round": 0,
        "scene": 'format = 1\ntitle = "Boat hook"\n',
        "given": "9,6 cm",
        "understood": 9.6,
        "truth": 5.6,
        "tolerance": 0.3,
        "right": False,
        "sure": "fairly",
        "seconds": 12.25,
        "hints": 1,
        "ways": ("far end",),
        "locked": True,
        "version": "0.1.0",
        "made_at": "2031-05-04T10:20:30.000Z",
    }
    return Attempt(**{**values, **changes})


@pytest.fixture
def make_attempt() -> Callable[..., Attempt]:
    return _attempt


@pytest.fixture
def record_path(tmp_path: Path) -> Path:
    return tmp_path / "data" / "attempts.sqlite3"


@pytest.fixture
def store(record_path: Path) -> Iterator[AttemptStore]:
    with AttemptStore.open(record_path) as opened:
        yield opened
