"""Lesson files that were damaged at random: faults with a place, never a traceback, never a hang."""

import random
import re
from pathlib import Path

import pytest

from lab.lesson import check_lesson, lesson_files, read_lesson
from lab.lesson.kinds import KINDS

LESSONS = lesson_files([Path(__file__).parents[2] / "lessons"])
SCRAPS = [
    "nan", "-inf", "1e308", "-1", "0", '""', "[]", "{}", "true", "'x'", "[[question]]", "\n\n", '"', "=", "\x00",
    "\ufeff", "{pole.weight}", "{", "../x", "1979-05-27", "[[[[", "9" * 400, "é😀", "part", "question", "\r\n", "\\",
]  # fmt: skip

NUMBERS = [
    "0",
    "-1",
    "1e308",
    "nan",
    "inf",
    "-inf",
    "1e-300",
    "1e12",
    "999999",
    "-0.0",
    "true",
    '"x"',
    "[]",
    "1979-05-27",
]


def damaged(text: str, chance: random.Random) -> str:
    for _ in range(chance.randint(1, 4)):
        at = chance.randrange(len(text))
        length = chance.choice((0, 1, 3, 20))
        piece = chance.choice([*SCRAPS, text[at : at + length] * 2, ""])
        text = text[:at] + piece + text[at + length :]
    return text


def swapped_value(text: str, chance: random.Random) -> str:
    """Put a scrap where a whole value stood, so that the file is more often still TOML."""
    lines = text.splitlines()
    at = chance.choice([index for index, line in enumerate(lines) if " = " in line])
    lines[at] = lines[at].split(" = ")[0] + " = " + chance.choice(SCRAPS[:10])
    return "\n".join(lines)


def without_lines(text: str, chance: random.Random) -> str:
    """Leave lines out: keys that are missing, tables that end up in others."""
    lines = text.splitlines()
    for _ in range(chance.randint(1, 3)):
        del lines[chance.randrange(len(lines))]
    return "\n".join(lines)


def other_number(text: str, chance: random.Random) -> str:
    """Put another number, or what is none, where a number stood, so that nearly every file is still TOML."""
    found = chance.choice(list(re.finditer(r"-?\d+(\.\d+)?", text)))
    return text[: found.start()] + chance.choice(NUMBERS) + text[found.end() :]


def renamed(text: str, chance: random.Random) -> str:
    """Put one word of the file where another stood: another kind, another name, another key."""
    words = list(re.finditer(r"[a-z_-]{3,}", text))
    found, other = chance.choice(words), chance.choice(words)
    return text[: found.start()] + other[0] + text[found.end() :]


CHANGES = (damaged, swapped_value, without_lines, other_number, renamed)


def check_damaged(tmp_path: Path, *, seed: int) -> None:
    chance = random.Random(seed)
    # One lesson after the other, each in every way: so every kind of question comes up, whatever the seeds.
    text = LESSONS[seed % len(LESSONS)].read_text(encoding="utf-8")
    change = CHANGES[seed // len(LESSONS) % len(CHANGES)]
    path = tmp_path / "damaged.toml"
    path.write_text(change(text, chance), encoding="utf-8", newline="")
    faults, warnings = check_lesson(path)
    for fault in (*faults, *warnings):
        assert fault.line >= 1
        assert fault.key
        assert fault.what
        assert fault.cure
        assert "\n" not in fault.as_text()


def test_damaged_lessons_are_faults_and_nothing_worse(tmp_path):
    for seed in range(2 * len(LESSONS) * len(CHANGES)):
        check_damaged(tmp_path, seed=seed)


def test_the_lessons_that_are_damaged_ask_every_kind_of_question():
    assert {question.ask for path in LESSONS for question in read_lesson(path).questions} == set(KINDS)


@pytest.mark.fuzz
def test_many_damaged_lessons_are_faults_and_nothing_worse(tmp_path):
    for seed in range(1000, 21_000):
        check_damaged(tmp_path, seed=seed)


@pytest.mark.parametrize(
    "text",
    [
        "x" * 10_000_000,
        "a = " + "[" * 100_000,
        'title = "' + "\n" * 3,
        "format = 1\nquestion = " + "[{}," * 5_000 + "]",
        "[[question]]\n" * 5_000,
        "".join(f'[[question]]\nscene = "s{index}.toml"\n' for index in range(3_000)),
    ],
    ids=[
        "one long line",
        "a nesting bomb",
        "an open string",
        "nested lists",
        "many empty questions",
        "many scene files",
    ],
)
def test_bombs_are_faults(tmp_path, text):
    path = tmp_path / "bomb.toml"
    path.write_text(text, encoding="utf-8")
    faults, _ = check_lesson(path)
    assert faults


@pytest.mark.parametrize("content", [b"\xff\xfe\x00", "title = 'é'".encode("latin-1"), b"\x00" * 50])
def test_another_encoding_is_one_fault(tmp_path, content):
    path = tmp_path / "odd.toml"
    path.write_bytes(content)
    faults, _ = check_lesson(path)
    assert len(faults) == 1


def test_a_folder_is_a_fault(tmp_path):
    faults, _ = check_lesson(tmp_path)
    assert [fault.what for fault in faults] == ["a folder"]


def test_a_range_as_long_as_a_number_can_be_is_a_fault(tmp_path):
    text = LESSONS[0].read_text(encoding="utf-8")
    path = tmp_path / "long.toml"
    path.write_text(text.replace("step = 2 }", "step = 1e-9 }", 1).replace("to = 90", "to = 1e9"), encoding="utf-8")
    faults, _ = check_lesson(path)
    assert any("a range of" in fault.what for fault in faults)
