"""The `[teacher]` table of a lesson file: read whole, or every fault of it with its line and a cure."""

from pathlib import Path

import pytest

from lab.lesson import TeachersPage, check_lesson, read_lesson

TOP = """format = 1
title = "A lesson"
level = "early"
aim = "To see."

"""
TEACHER = """[teacher]
minutes = 20
have = ["A broom.", "A finger."]
do = ["Lay the broom on one finger."]
expect = ["Half of them say the middle."]
cautions = ["Mind the toes."]

"""
QUESTION = """[[question]]
name = "broom"
ask = "place"
title = "Where will it balance?"
say = "A handle of {handle.weight}."
tolerance = 1
ways = []
[question.scene]
[[question.scene.part]]
name = "handle"
weight = 400
at = 60
shape = { kind = "rod", length = 120 }
"""


def put(folder: Path, text: str) -> Path:
    path = folder / "broom.toml"
    path.write_text(text, encoding="utf-8")
    return path


def test_the_teachers_page_is_read_as_written(tmp_path):
    assert read_lesson(put(tmp_path, TOP + TEACHER + QUESTION)).teacher == TeachersPage(
        minutes=20,
        have=("A broom.", "A finger."),
        do=("Lay the broom on one finger.",),
        expect=("Half of them say the middle.",),
        cautions=("Mind the toes.",),
    )


def test_a_lesson_may_have_no_teachers_page(tmp_path):
    assert read_lesson(put(tmp_path, TOP + QUESTION)).teacher is None


# (what is changed into what, the line, the key, part of what is said, part of the cure)
MISTAKES = [
    ("minutes = 20", "minutes = 4", 7, "teacher.minutes", "4 minutes", "from 5 to 120"),
    ("minutes = 20", "minutes = 121", 7, "teacher.minutes", "121 minutes", "split"),
    ("minutes = 20", "minutes = 20.5", 7, "teacher.minutes", "whole number", "whole minutes"),
    ("minutes = 20", 'minutes = "20"', 7, "teacher.minutes", "whole number", "such as 20"),
    ("minutes = 20", "minutes = true", 7, "teacher.minutes", "whole number", "such as 20"),
    ("minutes = 20", "", 6, "teacher.minutes", "missing", "minutes = 20"),
    ('have = ["A broom.", "A finger."]', "", 6, "teacher.have", "missing", "have = ["),
    ('have = ["A broom.", "A finger."]', "have = []", 8, "teacher.have", "without a sentence", "from one to 12"),
    ('have = ["A broom.", "A finger."]', 'have = "A broom."', 8, "teacher.have", "does not belong", "a list of"),
    ('"A finger."', "7", 8, "teacher.have[2]", "7 is not text", "quotes"),
    ('"A finger."', '" "', 8, "teacher.have[2]", "empty", "sentence"),
    ('["Mind the toes."]', "[" + '"x", ' * 13 + "]", 11, "teacher.cautions", "13 sentences", "from one to 12"),
    ("cautions =", "caution =", 11, "teacher.caution", "unknown key", "`cautions`"),
    ("[teacher]", "[teachers]", 6, "teachers", "unknown key", "`teacher`"),
    (TEACHER, 'teacher = "me"\n', 6, "teacher", "does not belong", "[teacher]"),
]


@pytest.mark.parametrize(("old", "new", "line", "key", "what", "cure"), MISTAKES)
def test_a_mistake_is_named_with_its_line_and_a_cure(tmp_path, old, new, line, key, what, cure):
    text = TOP + TEACHER + QUESTION
    assert old in text
    faults, _ = check_lesson(put(tmp_path, text.replace(old, new)))
    assert any(
        fault.line == line and fault.key == key and what in fault.what and cure in fault.cure for fault in faults
    ), [fault.as_text() for fault in faults]


def test_every_mistake_of_the_table_comes_at_once(tmp_path):
    text = TOP + TEACHER + QUESTION
    for old, new in (("= 20", "= 200"), ('["Mind the toes."]', "[]"), ('"A broom."', "1")):
        text = text.replace(old, new)
    faults, _ = check_lesson(put(tmp_path, text))
    assert [fault.key for fault in faults] == ["teacher.minutes", "teacher.have[1]", "teacher.cautions"]
