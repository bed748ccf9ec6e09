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


GROUP = '[[group]]\nname = "g"\nat = 0\n'
IN_GROUP = PART + 'group = "g"\n'
TANK = '[[tank]]\nname = "t"\nat = 3\ncapacity = 200\ncontents = 120\ndensity = 0.8\n'
SURFACE = '[[surface]]\nname = "wing"\nroot_chord = 20\ntip_chord = 14\nspan = 120\nat = 30\n'
LIMITS = "[limits]\noutline = [[3, 90], [6, 90], [6, 200]]\n"


def support(name, at):
    return f'[[support]]\nname = "{name}"\nat = {at}\n'


def plate(keys):
    return f'{PART}shape = {{ kind = "polygon", {keys} }}\n'


SQUARE = "[[0, 0], [9, 0], [9, 9], [0, 9]]"
LATER = {
    "a group that isn't there": (IN_GROUP, 8, "part[1].group", 'no group "g"', 'add a [[group]] with `name = "g"`'),
    "a group almost named": (
        GROUP.replace('"g"', '"left wing"') + PART + 'group = "left wind"\n' + PART.replace('"a"', '"b"')
        + 'group = "left wing"\n', 11, "part[1].group", "there is no group", 'did you mean "left wing"?',
    ),
    "a group with nothing in it": (PART + GROUP, 8, "group[1]", "nothing is in this group", 'the key `group = "g"`'),
    "a group in itself": (GROUP + 'group = "g"\n' + IN_GROUP, 7, "group[1].group", "sits in itself", "leave this key"),
    "a group that is a number": (PART + GROUP + "group = 3\n" + IN_GROUP.replace('"a"', '"b"'), 11, "group[1].group",
        "3 is not text", "in quotes"),
    "a turn of two angles": (GROUP + "turn = [0, 90]\n" + IN_GROUP, 7, "group[1].turn", "three angles", "degrees"),
    "a group called twice": (GROUP + GROUP + IN_GROUP, 8, "group[2].name", "used twice (first on line 5)", "its own"),
    "a part called as the group beside it": (
        GROUP + IN_GROUP + PART.replace('"a"', '"g"'), 13, "part[2].name", '"g" is used twice', "its own name",
    ),
    "two parts of one name in one group": (
        GROUP + IN_GROUP + IN_GROUP, 13, "part[2].name", '"g/a" is used twice (first on line 8)', "its own name",
    ),
    "a name that runs into a group's": (
        GROUP + IN_GROUP + PART.replace('"a"', '"g/a"'), 13, "part[2].name", '"g/a" is used twice', "its own name",
    ),
    "a grouped part off its bar": (
        BAR + GROUP.replace("at = 0", "at = 60") + IN_GROUP.replace("at = 5", "at = 45"), 13, "part[1].at",
        "105 is off", "0 to 100",
    ),
    "a turned part off its bar": (
        BAR + GROUP + "turn = [0, 0, 180]\n" + IN_GROUP, 14, "part[1].at", "-5 is off", "from 0 to 100",
    ),
    "a tank off its bar": (BAR + TANK.replace("at = 3", "at = 103"), 9, "tank[1].at", "103 is off", "0 to 100"),
    "a tank that overflows": (
        TANK.replace("120", "200.5"), 8, "tank[1].contents", "200.5 overflow a tank of 200", "at most 200",
    ),
    "a tank of nothing": (TANK.replace("0.8", "0"), 9, "tank[1].density", "not above 0", "above 0"),
    "a tank that owes": (TANK.replace("120", "-1"), 8, "tank[1].contents", "below 0", "0 or more"),
    "a tank called as a part": (
        PART + TANK.replace('"t"', '"a"'), 9, "tank[1].name", "used twice (first on line 5)", "its own name",
    ),
    "a tank without its density": (
        TANK.replace("density = 0.8\n", ""), 4, "tank[1].density", "missing", "add `density = 0.8`",
    ),
    "an empty tank alone": (TANK.replace("120", "0"), 1, "file", "nothing in it weighs anything", "[[part]]"),
    "a surface swept too far": (
        PART + SURFACE + "sweep = 61\n", 14, "surface[1].sweep", "61 degrees is too much", "-60 and 60",
    ),
    "a surface without its span": (
        PART + SURFACE.replace("span = 120\n", ""), 8, "surface[1].span", "missing", "add `span = 120`",
    ),
    "a surface called twice": (PART + SURFACE + SURFACE, 15, "surface[2].name", "used twice", "its own name"),
    "a surface of no chord": (PART + SURFACE.replace("= 20", "= 0"), 10, "surface[1].root_chord", "0 is not", "above"),
    "surfaces without end": (
        PART + "".join(SURFACE.replace("wing", f"w{n}") for n in range(7)), 44, "surface[7]", "7 surfaces", "at most 6",
    ),
    "limits that say nothing": (PART + "[limits]\n", 8, "limits", "say nothing", "`outline`, `across` or both"),
    "limits that cross": (
        PART + LIMITS.replace("[6, 200]]", "[3, 200], [6, 200]]"), 9, "limits.outline", "meets itself", "in order",
    ),
    "limits of two corners": (
        PART + "[limits]\noutline = [[3, 90], [6, 90]]\n", 9, "limits.outline", "2 corners", "three or more",
    ),
    "limits at no weight": (
        PART + LIMITS.replace("[3, 90]", "[3, 0]"), 9, "limits.outline", "corner 1 is 0", "above 0",
    ),
    "limits that fold back": (
        PART + "[limits]\noutline = [[3, 90], [6, 90], [4, 90]]\n", 9, "limits.outline", "meets itself", "in order",
    ),
    "limits the wrong way round": (
        PART + "[limits]\nacross = [1, -1]\n", 9, "limits.across", "1 is not below the right one, -1", "[-1, 1]",
    ),
    "limits across of one number": (PART + "[limits]\nacross = 1\n", 9, "limits.across", "two numbers", "[-1, 1]"),
    "four supports": (
        PART + "".join(support(name, at) for at, name in enumerate("abcd")), 17, "support[4]",
        "on 4 supports statics can't tell", "three that aren't in line",
    ),
    "three supports in line": (
        PART + "".join(support(name, f"[{at}, {at}, 0]") for at, name in enumerate("abc")), 16, "support[3].at",
        "in one line", "out of the line",
    ),
    "an outline that crosses itself": (
        plate("outline = [[0, 0], [9, 9], [9, 0], [0, 9]]"), 8, "part[1].shape.outline", "crosses or touches itself",
        "in order, once round",
    ),
    "an outline of two corners": (
        plate("outline = [[0, 0], [9, 9]]"), 8, "part[1].shape.outline", "2 corners", "three or more",
    ),
    "an outline without area": (
        plate("outline = [[0, 0], [9, 9], [4, 4]]"), 8, "part[1].shape.outline", "itself", "once round",
    ),
    "a corner of three numbers": (
        plate("outline = [[0, 0], [9, 0, 1], [0, 9]]"), 8, "part[1].shape.outline", "corner 2 is a list of 3", "[along",
    ),
    "a corner that is no number": (
        plate('outline = [[0, 0], [9, "x"], [0, 9]]'), 8, "part[1].shape.outline", '"x" is not a number', "12.5",
    ),
    "an outline that is a word": (
        plate('outline = "square"'), 8, "part[1].shape.outline", "where a list of corners belongs", "[[0, 0]",
    ),
    "a plate without its outline": (
        PART + 'shape = { kind = "polygon" }\n', 8, "part[1].shape.outline", "missing", "add `outline = [[0, 0]",
    ),
    "a hole outside its plate": (
        plate(f"outline = {SQUARE}, holes = [[[20, 20], [22, 20], [20, 22]]]"), 8, "part[1].shape.holes",
        "outside the outline", "inside the outline",
    ),
    "a hole that isn't a list of outlines": (
        plate(f"outline = {SQUARE}, holes = [[1, 1], [2, 1], [1, 2]]"), 8, "part[1].shape.holes",
        "an outline of 2 corners", "three or more",
    ),
    "a triangle of four corners": (
        plate(f"outline = {SQUARE}").replace("polygon", "triangle"), 8, "part[1].shape.outline", "4 corners", "have 3",
    ),
    "a disc of no size": (
        PART + 'shape = { kind = "disc", radius = 0 }\n', 8, "part[1].shape.radius", "0 is not above 0", "above 0",
    ),
    "a half disc misspelt": (
        PART + 'shape = { kind = "halfdisc", radius = 3 }\n', 8, "part[1].shape.kind", "no kind", 'mean "half-disc"?',
    ),
}  # fmt: skip


@pytest.mark.parametrize(("text", "line", "key", "what", "cure"), LATER.values(), ids=list(LATER))
def test_one_mistake_about_groups_tanks_surfaces_limits_or_plates_makes_one_fault(text, line, key, what, cure):
    (fault,) = faults_in(HEAD + text)
    assert fault[:2] == (line, key)
    assert what in fault[2]
    assert cure in fault[3]


def test_groups_that_sit_in_each_other_are_one_fault_that_names_them():
    ring = "".join(
        f'[[group]]\nname = "{name}"\nat = 0\ngroup = "{outer}"\n' for name, outer in ("xy", "yz", "zx", "dx")
    )
    ((line, key, what, _),) = faults_in(HEAD + PART + 'group = "d"\n' + ring)
    assert (line, key) == (12, "group[1].group")
    assert what == 'the group sits in itself, by way of "y", "z"'


def test_groups_may_nest_twenty_deep_and_no_deeper():
    def nested(depth):
        groups = "".join(
            f'[[group]]\nname = "g{n}"\nat = 1\n' + (f'group = "g{n - 1}"\n' if n else "") for n in range(depth)
        )
        return f'{HEAD}{groups}{PART}group = "g{depth - 1}"\n'

    (part,) = read_build_text(nested(20), file="b.toml").all_parts
    assert part.at_m[0] == pytest.approx(0.25, rel=1e-14)
    ((_, key, what, cure),) = faults_in(nested(30))
    assert (key, what, cure) == ("group[21].group", '"g20" sits 21 groups deep', "nest at most 20")


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
