import csv
import io
from collections.abc import Callable
from pathlib import Path

import pytest

from lab.attempts import Attempt, AttemptStore
from lab.attempts.schema import COLUMNS

MakeAttempt = Callable[..., Attempt]


def _exported(store: AttemptStore) -> str:
    stream = io.StringIO(newline="")
    store.export_csv(stream)
    return stream.getvalue()


def _rows(store: AttemptStore) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(_exported(store), newline="")))


def test_an_empty_record_gives_the_heading_alone(store: AttemptStore):
    assert _exported(store) == ",".join(COLUMNS) + "\r\n"


def test_numbers_text_and_unknowns_come_out_as_what_they_are(store: AttemptStore, make_attempt: MakeAttempt):
    store.keep(make_attempt(tolerance=None, ways=("far end", "median")))
    (row,) = _rows(store)
    assert row["understood"] == "9.6"
    assert row["right"] == "0"
    assert row["locked"] == "1"
    assert row["tolerance"] == ""
    assert row["ways"] == "far end median"
    assert row["seconds"] == "12.25"


@pytest.mark.parametrize("start", ["=", "+", "-", "@", "\t", "\r", "\0"])
def test_a_text_that_a_spreadsheet_would_run_is_made_harmless(
    start: str, store: AttemptStore, make_attempt: MakeAttempt
):
    store.keep(make_attempt(given=f"{start}1+2"))
    (row,) = _rows(store)
    assert row["given"] == f"'{start}1+2"


def test_a_negative_number_stays_a_number(store: AttemptStore, make_attempt: MakeAttempt):
    store.keep(make_attempt(understood=-2.5, truth=-0.25, given="-2.5"))
    (row,) = _rows(store)
    assert row["understood"] == "-2.5"
    assert row["truth"] == "-0.25"
    assert row["given"] == "'-2.5"  # typed by a person: text, whatever it looks like


def test_commas_quotes_and_line_ends_stay_inside_their_cell(store: AttemptStore, make_attempt: MakeAttempt):
    given = 'about 9,6 "or so"\nsecond line'
    store.keep(make_attempt(given=given))
    assert _rows(store)[0]["given"] == given
    assert '"about 9,6 ""or so""\nsecond line"' in _exported(store)


def test_every_line_ends_as_the_standard_says(store: AttemptStore, make_attempt: MakeAttempt, tmp_path: Path):
    store.keep(make_attempt(scene="one line"))
    target = tmp_path / "out.csv"
    with target.open("w", encoding="utf-8", newline="") as stream:
        assert store.export_csv(stream) == 1
    assert target.read_bytes().count(b"\r\n") == 2
    assert target.read_bytes().count(b"\n") == 2
