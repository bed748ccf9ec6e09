"""A fault is one line that names the place and the cure."""

from lab.files import Fault, FileFaults, key_text, near, shown


def a_fault(**changed):
    return Fault(**{"file": "b.toml", "line": 3, "key": "part[1].at", "what": "wrong", "cure": "do this", **changed})


def test_a_fault_reads_file_line_key_what_and_cure():
    assert a_fault().as_text() == "b.toml:3: part[1].at: wrong; do this"


def test_a_fault_as_json_holds_the_five_fields_by_name():
    assert a_fault().as_json() == {
        "file": "b.toml", "line": 3, "key": "part[1].at", "what": "wrong", "cure": "do this",
    }  # fmt: skip


def test_a_fault_stays_one_plain_line_whatever_the_file_is_called():
    text = a_fault(file="odd\nname\x1b[2J.toml").as_text()
    assert text.isprintable()
    assert "odd\\nname" in text


def test_faults_come_in_the_order_of_the_file():
    faults = FileFaults([a_fault(line=9), a_fault(line=2), a_fault(line=5)])
    assert [fault.line for fault in faults.faults] == [2, 5, 9]
    assert str(faults).count("\n") == 2


def test_a_key_path_counts_lists_from_1_and_quotes_what_is_no_plain_word():
    assert key_text(("part", 0, "shape", "length")) == "part[1].shape.length"
    assert key_text(("odd key",)) == '"odd key"'
    assert key_text(()) == "file"


def test_a_long_or_many_lined_value_is_shown_short_and_on_one_line():
    assert shown("a\nb") == '"a b"'
    assert len(shown("x" * 10_000)) < 60
    assert shown(True) == "true"
    assert shown(10**5000) == "a whole number of more than 40 digits"
    assert shown([1, 2]) == "a list of 2"
    assert shown({}) == "a table"


def test_the_nearest_known_name_is_offered_and_nothing_where_none_is_near():
    assert near("wieght", ("weight", "at")) == "weight"
    assert near("WEIGHT", ("weight", "at")) == "weight"
    assert near("colour", ("weight", "at")) is None
    assert near("weight" * 1000, ("weight",)) is None
