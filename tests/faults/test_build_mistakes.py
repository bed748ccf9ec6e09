"""A mistake in a build file is answered with its line, what is wrong and what would be right; all at once."""

import pytest

from lab.files import FileFaults, read_build, read_build_text

HEAD = 'format = 1\ntitle = "T"\nunits = "g-cm"\n'
PART = '[[part]]\nname = "a"\nweight = 100\nat = 5\n'
BAR = "[bar]\nlength = 100\nweight = 150\n"


def faults_in(text):
    with pytest.raises(FileFaults) as caught:
        read_build_text(text, file="b.toml")
    return [(fault.line, fault.key, fault.what, fault.cure) for fault in caught.value.faults]


# What is wrong, as text after the three lines of HEAD; then line, key, what and cure, by their telling words.
SINGLE = {
    "an unknown key": (PART + "wieght = 3\n", 8, "part[1].wieght", "unknown key", "did you mean `weight`?"),
    "an unknown key unlike any": (PART + "zzz = 3\n", 8, "part[1].zzz", "unknown key", "the keys here are name"),
    "an unknown table": (PART + "[pivto]\nat = 3\n", 8, "pivto", "unknown key", "did you mean `pivot`?"),
    "an unknown key in a shape": (
        PART + 'shape = { kind = "rod", length = 3, lenth = 4 }\n', 8, "part[1].shape.lenth", "unknown key", "`length`",
    ),
    "text for a number": (PART.replace("100", '"100"'), 6, "part[1].weight", '"100" is not a number', "without quotes"),
    "words for a number": (PART.replace("100", '"heavy"'), 6, "part[1].weight", '"heavy" is not a number', "12.5"),
    "true for a number": (PART.replace("100", "true"), 6, "part[1].weight", "true is not a number", "12.5"),
    "a date for a number": (PART.replace("100", "1979-05-27"), 6, "part[1].weight", "is not a number", "12.5"),
    "a number for a name": (PART.replace('"a"', "7"), 5, "part[1].name", "7 is not text", "in quotes"),
    "an empty name": (PART.replace('"a"', '" "'), 5, "part[1].name", "empty", "a few words"),
    "a name of two lines": (PART.replace('"a"', '"a\\nb"'), 5, "part[1].name", "line break", "one line"),
    "a very long name": (PART.replace('"a"', f'"{"a" * 61}"'), 5, "part[1].name", "61 characters", "at most 60"),
    "not a number": (PART.replace("100", "nan"), 6, "part[1].weight", "nan is not", "plain number"),
    "infinity": (PART.replace("at = 5", "at = inf"), 7, "part[1].at", "inf is not", "plain number"),
    "infinity in a list": (PART.replace("at = 5", "at = [1, -inf, 2]"), 7, "part[1].at", "-inf is not", "plain"),
    "a negative weight": (PART.replace("100", "-3"), 6, "part[1].weight", "-3 is a negative weight", "cut = true"),
    "no weight": (PART.replace("100", "0"), 6, "part[1].weight", "0 is not above 0", "above 0"),
    "a huge number": (PART.replace("100", "1e300"), 6, "part[1].weight", "too large", "1e9"),
    "a huge whole number": (PART.replace("100", "9" * 400), 6, "part[1].weight", "too large", "1e9"),
    "a tiny weight": (PART.replace("100", "5e-324"), 6, "part[1].weight", "too small", "1e-9"),
    "two numbers for a place": (PART.replace("at = 5", "at = [1, 2]"), 7, "part[1].at", "a list of 2", "or three"),
    "a negative doubt": (PART + "weight_doubt = -1\n", 8, "part[1].weight_doubt", "below 0", "0 or more"),
    "a negative doubt of a place": (PART + "at_doubt = [0, -1, 0]\n", 8, "part[1].at_doubt", "-1 is below 0", "0 or"),
    "an unknown hold": (PART + 'hold = "hangs"\n', 8, "part[1].hold", '"hangs" is not one', 'did you mean "hung"?'),
    "an unknown look": (PART + 'look = "zzz"\n', 8, "part[1].look", "is not one of", '"hook", "pole", "blade"'),
    "text for a yes or no": (PART + 'cut = "yes"\n', 8, "part[1].cut", "neither true nor false", "without quotes"),
    "a shape that is a word": (PART + 'shape = "rod"\n', 8, "part[1].shape", '"rod" is not a table', "kind ="),
    "an unknown shape": (PART + 'shape = { kind = "rodd" }\n', 8, "part[1].shape.kind", '"rodd" is no', 'mean "rod"?'),
    "a shape kind that is a number": (
        PART + "[part.shape]\n\nkind = 3\n", 10, "part[1].shape.kind", "3 is not text", "one of point, rod",
    ),
    "a shape without its kind": (
        PART + "shape = { length = 3 }\n", 8, "part[1].shape.length", "unknown key", 'such as `kind = "rod"`',
    ),
    "a shape without its length": (PART + 'shape = { kind = "rod" }\n', 8, "part[1].shape.length", "missing", "add `"),
    "a flat box": (PART + 'shape = { kind = "box", size = [1, 0, 1] }\n', 8, "part[1].shape.size", "0 is", "above 0"),
    "a bore as wide as the tube": (
        PART + 'shape = { kind = "cylinder", radius = 2, length = 9, inner = 2 }\n',
        8, "part[1].shape.inner", "leaves nothing", "less than 2",
    ),
    "an impossible inertia": (PART + "inertia = [1, 2, 9]\n", 8, "part[1].inertia", "values 1, 2, 9 in", "none over"),
    "an uneven inertia": (
        PART + "inertia = [[2, 1, 0], [0, 2, 0], [0, 0, 2]]\n", 8, "part[1].inertia", "not symmetric", "the same",
    ),
    "a part without a place": (PART.replace("at = 5\n", ""), 4, "part[1].at", "missing", "add `at = 20.0`"),
    "one part where parts belong": ('part = { name = "a" }\n', 4, "part", "a list of tables belongs", "[[part]]"),
    "a part that is a number": ("part = [7]\n", 4, "part[1]", "7 is not a table", "a table of keys"),
    "a bar that is a list": (PART + "[[bar]]\nlength = 3\n", 8, "bar", "not a table", "`[bar]`"),
    "nothing at all": ("", 1, "file", "nothing in it weighs anything", "[[part]] or a [bar]"),
    "a part off its bar": (BAR + PART.replace("at = 5", "at = 105"), 10, "part[1].at", "105 is off", "0 to 100"),
    "a part left of its bar": (BAR + PART.replace("at = 5", "at = -1"), 10, "part[1].at", "off the bar", "0 to 100"),
    "a part a hair off its bar": (
        BAR + PART.replace("at = 5", "at = 100.00002"), 10, "part[1].at", "100.00002 is off", "0 to 100",
    ),
    "a pivot off its bar": (BAR + "[pivot]\nat = 101\n", 8, "pivot.at", "101 is off the bar", "0 to 100"),
    "a name used twice": (PART + PART, 9, "part[2].name", "used twice (first on line 5)", "its own name"),
    "a bar called as a part before it": (
        PART.replace('"a"', '"bar"') + BAR, 8, "bar.name", "used twice (first on line 5)", "its own name",
    ),
    "a part called as the bar": (BAR + PART.replace('"a"', '"bar"'), 8, "part[1].name", "used twice", "its own name"),
    "all cut away": (
        PART + PART.replace('"a"', '"b"') + "cut = true\n", 10, "part[2].weight", "all the weight", "cut less",
    ),
    "a stop beyond upright": (PART + "[pivot]\nat = 5\nstop = 90\n", 10, "pivot.stop", "is no stop", "below 90"),
    "one support": (PART + '[[support]]\nname = "s"\nat = 1\n', 8, "support", "one support alone", "another"),
    "two supports in one place": (
        PART + '[[support]]\nname = "s"\nat = 1\n[[support]]\nname = "t"\nat = [1, 2, 0]\n',
        13, "support[2].at", "at one place", "apart",
    ),
}  # fmt: skip


@pytest.mark.parametrize(("text", "line", "key", "what", "cure"), SINGLE.values(), ids=list(SINGLE))
def test_one_mistake_makes_one_fault_at_its_line(text, line, key, what, cure):
    (fault,) = faults_in(HEAD + text)
    assert fault[:2] == (line, key)
    assert what in fault[2]
    assert cure in fault[3]


NOT_YET = {
    "group": ('[[group]]\nname = "g"\nat = 0\n', "group"),
    "tank": ('[[tank]]\nname = "t"\nat = 0\n', "tank"),
    "surface": ('[[surface]]\nname = "wing"\n', "surface"),
    "limits": ("[limits]\nacross = [0, 1]\n", "limits"),
}


@pytest.mark.parametrize(("text", "key"), NOT_YET.values(), ids=list(NOT_YET))
def test_a_table_whose_mechanics_come_later_is_no_unknown_key(text, key):
    ((line, found, what, _),) = faults_in(HEAD + PART + text)
    assert (line, found, what) == (8, key, "not in this version yet")


def test_a_part_in_a_group_is_not_in_this_version_yet():
    ((line, key, what, _),) = faults_in(HEAD + PART + 'group = "g"\n')
    assert (line, key, what) == (8, "part[1].group", "not in this version yet")


@pytest.mark.parametrize("kind", ["triangle", "polygon", "disc", "half-disc", "cone", "sphere", "hemisphere"])
def test_a_shape_whose_mechanics_come_later_is_no_unknown_kind(kind):
    ((line, key, what, cure),) = faults_in(f'{HEAD}{PART}shape = {{ kind = "{kind}", radius = 3 }}\n')
    assert (line, key) == (8, "part[1].shape.kind")
    assert what == f'"{kind}" is not in this version yet'
    assert "point, rod, rectangle, box, cylinder" in cure


def test_more_than_two_supports_are_not_in_this_version_yet():
    three = "".join(f'[[support]]\nname = "{name}"\nat = {at}\n' for at, name in enumerate("abc"))
    ((line, key, what, _),) = faults_in(HEAD + PART + three)
    assert (line, key) == (14, "support[3]")
    assert "not in this version yet" in what


@pytest.mark.parametrize("value", ["2", "0", "-1"])
def test_another_format_is_refused_with_a_sentence_and_nothing_else_is_judged(value):
    ((line, key, what, cure),) = faults_in(f"format = {value}\nsomething_new = 3\n")
    assert (line, key) == (1, "format")
    assert "not one this version reads" in what
    assert "newer version" in cure if value == "2" else "write `format = 1`" in cure


@pytest.mark.parametrize("value", ["true", "1.0", '"1"', "[]"])
def test_a_format_that_is_no_whole_number_hides_no_other_fault(value):
    first, second = faults_in(f'format = {value}\ntitle = "T"\nunits = "g-cm"\n{PART}inertia = [1, 2, 9]\n')
    assert first[:2] == (1, "format")
    assert "not one this version reads" in first[2]
    assert first[3] == "write `format = 1`"
    assert second[:2] == (8, "part[1].inertia")


def test_missing_keys_of_the_top_are_all_named_with_what_to_add():
    assert faults_in(PART) == [
        (1, "format", "missing", "add `format = 1`"),
        (1, "title", "missing", 'add `title = "Boat hook"`'),
        (1, "units", "missing", 'add `units = "g-cm"`'),
    ]


def test_all_mistakes_are_told_at_once_each_with_its_line():
    text = """\
format = 1
titel = "Boat hook"
units = "gcm"

[bar]
length = 10
weight = nan

[[part]]
name = "pole"
weight = -120
at = 20

[[part]]
name = "pole"
weight = true
at = 2
shape = { kind = "rod", lenght = 40 }
"""
    assert [(line, key) for line, key, _, _ in faults_in(text)] == [
        (1, "title"),
        (2, "titel"),
        (3, "units"),
        (7, "bar.weight"),
        (11, "part[1].weight"),
        (12, "part[1].at"),
        (15, "part[2].name"),
        (16, "part[2].weight"),
        (18, "part[2].shape.length"),
        (18, "part[2].shape.lenght"),
    ]


def test_every_fault_has_a_cure_and_stays_on_one_line():
    text = HEAD + '[[part]]\n"odd\\nkey" = "a\\nb"\nweight = "\\u001b[2J"\n' + f'name = "{"n" * 100_000}"\n'
    for line, key, what, cure in faults_in(text):
        assert all([line, key, what, cure])
        assert "\n" not in key + what + cure
        assert "\x1b" not in key + what + cure
        assert len(key + what + cure) < 300


def test_a_missing_file_and_a_folder_are_faults_of_the_whole_file(tmp_path):
    for path, what in ((tmp_path / "none.toml", "no such file"), (tmp_path, "a folder")):
        with pytest.raises(FileFaults) as caught:
            read_build(path)
        (fault,) = caught.value.faults
        assert (fault.file, fault.line, fault.key, fault.what) == (str(path), 1, "file", what)


def test_a_file_without_end_of_line_or_with_comments_only_is_read_or_refused_in_words(tmp_path):
    path = tmp_path / "b.toml"
    path.write_text((HEAD + PART).rstrip())
    assert read_build(path).parts[0].name == "a"
    path.write_text("# nothing yet")
    with pytest.raises(FileFaults, match="add `format = 1`"):
        read_build(path)
