"""Keyed TOML knows the line of every key and refuses what it can't read in words."""

import os
import sys

import pytest

from lab.files import FileFaults, line_of, load, parse

TEXT = """\
title = "x"     # line 1

[pivot]
at = 40
[[part]]
name = "a"
shape.kind = "rod"
shape.length = [
  1,
  2,
]
[[part]]
name = '''
[[part]] not a header
'''
inner = { deep = { x = 1 }, "odd key" = "}" }
[part.more]
y = 1979-05-27 07:32:00
[[part.hole]]
z = 1
[[part.hole]]
z = 2
"""


def only_fault(text):
    with pytest.raises(FileFaults) as caught:
        parse(text, file="f.toml")
    (fault,) = caught.value.faults
    return fault


@pytest.mark.parametrize(
    ("path", "line"),
    [
        (("title",), 1),
        (("pivot",), 3),
        (("pivot", "at"), 4),
        (("part",), 5),
        (("part", 0), 5),
        (("part", 0, "shape"), 7),
        (("part", 0, "shape", "length"), 8),
        (("part", 0, "shape", "length", 1), 10),
        (("part", 1), 12),
        (("part", 1, "name"), 13),
        (("part", 1, "inner", "deep", "x"), 16),
        (("part", 1, "inner", "odd key"), 16),
        (("part", 1, "more", "y"), 18),
        (("part", 1, "hole", 0, "z"), 20),
        (("part", 1, "hole", 1, "z"), 22),
    ],
)
def test_every_key_has_its_line(path, line):
    assert parse(TEXT, file="f.toml").lines[path] == line


def test_a_key_without_a_line_of_its_own_is_found_by_the_table_around_it():
    lines = parse(TEXT, file="f.toml").lines
    assert line_of(lines, ("part", 1, "weight")) == 12
    assert line_of(lines, ("nowhere",)) == 1
    assert line_of(lines, ()) == 1


def test_a_table_made_on_the_way_points_to_its_own_header_once_it_has_one():
    assert parse("[a.b]\nx = 1\n[a]\ny = 1\n", file="f.toml").lines[("a",)] == 3


def test_windows_line_ends_and_a_byte_order_mark_are_let_through(tmp_path):
    path = tmp_path / "b.toml"
    path.write_bytes(b"\xef\xbb\xbfa = 1\r\nb = [\r\n2]\r\n")
    keyed = load(path)
    assert keyed.data == {"a": 1, "b": [2]}
    assert keyed.lines[("b", 0)] == 3


def test_text_that_is_not_toml_is_refused_with_its_line():
    fault = only_fault("a = 1\nb = \n")
    assert (fault.line, fault.key) == (2, "file")
    assert fault.what.startswith("not TOML: ")


def test_text_that_ends_too_soon_is_refused_at_its_last_line():
    assert only_fault("a = 1\nb = [1,\n").line == 3


def test_a_number_of_ten_thousand_digits_is_refused():
    assert "thousands of digits" in only_fault("a = " + "9" * 10_000).what


def test_a_nul_is_refused_with_its_line():
    fault = only_fault("a = 1\n# \0\n")
    assert fault.line == 2
    assert "NUL" in fault.what


def test_one_key_too_many_is_refused_at_its_line():
    fault = only_fault("\n".join(f"k{number} = 1" for number in range(40_001)))
    assert fault.line == 40_001
    assert "more than 40000 keys" in fault.what


def test_twenty_deep_is_let_through_and_twenty_one_is_not():
    parse("a = " + "[" * 19 + "]" * 19, file="f.toml")
    parse("a = " + "[" * 19 + "1" + "]" * 19, file="f.toml")
    assert "nested more than 20 deep" in only_fault("a = " + "[" * 20 + "1" + "]" * 20).what
    assert "nested more than 20 deep" in only_fault(".".join("a" * 21) + " = 1").what
    assert "nested more than 20 deep" in only_fault(f"[{'.'.join('a' * 21)}]").what


def test_exactly_one_mebibyte_is_read_and_one_byte_more_is_not(tmp_path):
    path = tmp_path / "b.toml"
    path.write_bytes(b"#" * 1024 * 1024)
    assert load(path).data == {}
    path.write_bytes(b"#" * (1024 * 1024 + 1))
    with pytest.raises(FileFaults, match="larger than 1 MiB"):
        load(path)


def test_the_limit_counts_bytes_not_letters():
    assert "larger than 1 MiB" in only_fault("#" + "é" * (1024 * 512)).what


@pytest.mark.parametrize(
    ("content", "what", "line"),
    [
        (b"a = 1\nb = '\xe9'\n", "not UTF-8", 2),
        ("a = 1\n".encode("utf-16"), "UTF-16", 1),
        (b"\xfe\xff\x00a", "UTF-16", 1),
    ],
)
def test_another_encoding_is_refused_by_name_and_line(tmp_path, content, what, line):
    path = tmp_path / "b.toml"
    path.write_bytes(content)
    with pytest.raises(FileFaults, match=what) as caught:
        load(path)
    assert caught.value.faults[0].line == line


@pytest.mark.parametrize(
    ("name", "what"),
    [("none.toml", "no such file"), ("", "a folder"), ("bad\0name", "can't be read"), ("x" * 5000, "can't be read")],
)
def test_what_is_no_file_is_refused_in_words(tmp_path, name, what):
    with pytest.raises(FileFaults, match=what):
        load(f"{tmp_path}/{name}")


@pytest.mark.skipif(sys.platform == "win32", reason="no named pipes in the file system")
def test_a_pipe_is_refused_at_once_instead_of_waited_for(tmp_path):
    pipe = tmp_path / "pipe.toml"
    os.mkfifo(pipe)
    with pytest.raises(FileFaults, match="not a plain file"):
        load(pipe)


@pytest.mark.skipif(sys.platform == "win32", reason="links need rights there")
def test_a_link_to_a_file_is_followed(tmp_path):
    (tmp_path / "real.toml").write_text("a = 1\n")
    (tmp_path / "link.toml").symlink_to(tmp_path / "real.toml")
    assert load(tmp_path / "link.toml").data == {"a": 1}
    (tmp_path / "loop.toml").symlink_to(tmp_path / "loop.toml")
    with pytest.raises(FileFaults, match="can't be read"):
        load(tmp_path / "loop.toml")
