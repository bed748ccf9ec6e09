"""Lesson files: everything that is wrong with them, at once, with its line and a cure."""

import os
from pathlib import Path

import pytest

from lab.files import FileFaults
from lab.lesson import check_lesson, lesson_files, read_lesson
from lab.lesson.reading import holds_lesson

GOOD = """format = 1
title = "A lesson"
level = "early"
aim = "To see."

[[question]]
name = "boat-hook"
ask = "place"
title = "Where will it balance?"
say = "Pole {pole.weight}; hook at {hook.at}."
tolerance = 0.3
[question.scene]
[[question.scene.part]]
name = "hook"
weight = 480
at = 2
[[question.scene.part]]
name = "pole"
weight = 120
at = 20
shape = { kind = "rod", length = 40 }
"""
SCENE_FILE = """format = 1
title = "Boat hook"
units = "g-cm"
[[part]]
name = "pole"
weight = 120
at = 20
shape = { kind = "rod", length = 40 }
[[part]]
name = "hook"
weight = 480
at = 2
"""


def put(folder: Path, text: str, name: str = "a-lesson.toml") -> Path:
    path = folder / name
    path.write_text(text, encoding="utf-8")
    return path


def faults_of(folder: Path, text: str):
    faults, _ = check_lesson(put(folder, text))
    assert len({fault.as_text() for fault in faults}) == len(faults)
    return faults


def is_sound(path: Path) -> bool:
    """Whether nothing stops the lesson, and the only thing to be said is that it says nothing of ways."""
    faults, warnings = check_lesson(path)
    return faults == () and {warning.key for warning in warnings} <= {"question[1].ways"}


def with_scene_file(name: str) -> str:
    return GOOD[: GOOD.index("[question.scene]")] + f'scene = "{name}"\n'


def test_a_sound_lesson_has_no_faults_and_no_warnings(tmp_path):
    assert check_lesson(put(tmp_path, GOOD.replace("tolerance = 0.3", "tolerance = 0.3\nways = []"))) == ((), ())


# (what is changed into what, the line, the key, part of what is said, part of the cure)
MISTAKES = [
    ('title = "A lesson"', "", 1, "title", "missing", 'title = "Where'),
    ('title = "A lesson"', 'titel = "A lesson"', 2, "titel", "unknown key", "`title`"),
    ("tolerance = 0.3", "tolerence = 0.3", 11, "question[1].tolerence", "unknown key", "`tolerance`"),
    ("format = 1", "format = 2", 1, "format", "2", "1"),
    ('level = "early"', 'level = "erly"', 3, "level", "choices", '"early"'),
    ('aim = "To see."', 'aim = ""', 4, "aim", "empty", "sentence"),
    ('aim = "To see."', "aim = 3", 4, "aim", "3 is not text", "quotes"),
    ('ask = "place"', 'ask = "plaice"', 8, "question[1].ask", "choices", '"place"'),
    ('name = "boat-hook"', 'name = "Boat hook"', 7, "question[1].name", "no plain name", "hyphens"),
    ("tolerance = 0.3", "tolerance = -1", 11, "question[1].tolerance", "-1", "above 0"),
    ("tolerance = 0.3", "tolerance = nan", 11, "question[1].tolerance", "nan", "number"),
    ("tolerance = 0.3", 'tolerance = "0.3"', 11, "question[1].tolerance", "not a number", "quotes"),
    ("tolerance = 0.3", "", 6, "question[1].tolerance", "missing", "tolerance = 0.3"),
    ("weight = 480", "weight = -480", 15, "question[1].scene.part[1].weight", "negative", "minus"),
    ("weight = 480", "wieght = 480", 15, "question[1].scene.part[1].wieght", "unknown key", "`weight`"),
    ('name = "hook"', 'name = "pole"', 18, "question[1].scene.part[2].name", "twice", "name"),
    ("{pole.weight}", "{pole.wieght}", 10, "question[1].say", "{pole.wieght}", "pole.weight"),
    ("{pole.weight}", "{}", 10, "question[1].say", "{}", "pole.weight"),
    ("{pole.weight}", "{pole.weight", 10, "question[1].say", "", "brace"),
    ("{hook.at}", "{hook.length}", 10, "question[1].say", "{hook.length}", "pole.length"),
    ("tolerance = 0.3", 'tolerance = 0.3\nways = ["midle"]', 12, "question[1].ways[1]", '"midle"', '"middle"'),
    ("tolerance = 0.3", 'tolerance = 0.3\nways = ["no_bar"]', 12, "question[1].ways[1]", "place", "one of"),
    ("tolerance = 0.3", 'tolerance = 0.3\nways = ["far_end:pol"]', 12, "question[1].ways[1]", '"pol"', '"pole"'),
    ("tolerance = 0.3", 'tolerance = 0.3\nways = ["middle:pole"]', 12, "question[1].ways[1]", "pole", '"middle" alone'),
    ("tolerance = 0.3", "tolerance = 0.3\nways = 3", 12, "question[1].ways", "3", "list"),
    ("tolerance = 0.3", "tolerance = 0.3\nexpect = 9.6", 12, "question[1].expect", "the sum says 5.6", "which"),
    ("tolerance = 0.3", "tolerance = 0.3\nexpect = nan", 12, "question[1].expect", "nan", "plain number"),
    ("tolerance = 0.3", 'tolerance = 0.3\nexpect = "left"', 12, "question[1].expect", "no place", "5.6"),
    ("tolerance = 0.3", 'tolerance = 0.3\nhints = ["Say 5.5."]', 12, "question[1].hints[1]", "5.5", "how to find"),
    ("tolerance = 0.3", "tolerance = 0.3\nas_written_first = true", 12, "question[1].as_written_first", "", "vary"),
    (
        "tolerance = 0.3",
        'tolerance = 0.3\nvary = { "pole.wieght" = { from = 1, to = 2, step = 1 } }',
        12,
        'question[1].vary."pole.wieght"',
        "can vary",
        "pole.weight",
    ),
    (
        "tolerance = 0.3",
        'tolerance = 0.3\nvary = { "pole.weight" = { from = 9, to = 2, step = 1 } }',
        12,
        'question[1].vary."pole.weight".to',
        "below 9",
        "above",
    ),
    (
        "tolerance = 0.3",
        'tolerance = 0.3\nvary = { "pole.weight" = { from = 1, upto = 2, step = 1 } }',
        12,
        'question[1].vary."pole.weight".upto',
        "unknown key",
        "`to`",
    ),
]  # fmt: skip


@pytest.mark.parametrize("mistake", MISTAKES, ids=[f"{old[:20]} -> {new[-30:]}" for old, new, *_ in MISTAKES])
def test_a_mistake_is_named_with_its_line_its_key_and_a_cure(tmp_path, mistake):
    old, new, line, key, what, cure = mistake
    faults = faults_of(tmp_path, GOOD.replace(old, new, 1))
    assert any(
        fault.line == line and fault.key == key and what in fault.what and cure in fault.cure for fault in faults
    ), [fault.as_text() for fault in faults]


def test_all_mistakes_are_told_at_once(tmp_path):
    text = (
        GOOD.replace('level = "early"', 'level = "erly"')
        .replace("tolerance = 0.3", "tolerence = 0.3")
        .replace("weight = 480", "weight = -480")
    )
    second = GOOD[GOOD.index("[[question]]") :].replace("{pole.weight}", "{mast.weight}")
    text += second.replace('"boat-hook"', '"another"')
    faults = faults_of(tmp_path, text)
    keys = [fault.key for fault in faults]
    assert keys == [
        "level",
        "question[1].tolerance",
        "question[1].tolerence",
        "question[1].scene.part[1].weight",
        "question[2].say",
    ]
    assert all(fault.file.endswith("a-lesson.toml") for fault in faults)


def test_one_mistake_of_a_question_hides_no_other(tmp_path):
    text = GOOD.replace(
        "tolerance = 0.3",
        'tolerance = 0.3\nexpect = 9.6\nways = ["midle", "far_end:pol", "middle:pole"]\nhints = ["At 5.6.", 3]\n'
        'vary = { "pole.wieght" = { from = 9, to = 2, step = 1 }, "hook.at" = { from = 1, to = 2, step = -1 },'
        ' "hook.weight" = { from = 1, to = 2, step = 1 }, "hook.weight, pole.at" = { from = 1, to = 2, step = 1 } }',
    ).replace("{pole.weight}", "{mast.weight}")
    told = [(fault.key, fault.what) for fault in faults_of(tmp_path, text)]
    for key, what in (
        ("say", "{mast.weight} names nothing"),
        ("ways[1]", '"midle" is no way'),
        ("ways[2]", '"pol" is no part'),
        ("ways[3]", '"pole" is no part'),
        ("hints[2]", "3 is not text"),
        ('vary."hook.at".step', "-1 is not above 0"),
        ('vary."pole.wieght"', "nothing that can vary"),
        ('vary."pole.wieght".to', "2 is below 9"),
        ('vary."hook.weight"', '"hook.weight" varies twice'),
        ("expect", "9.6 is expected"),
    ):
        assert any(k == f"question[1].{key}" and what in w for k, w in told), (key, told)


def test_a_scene_that_cannot_be_read_hides_no_mistake_beside_it(tmp_path):
    text = with_scene_file("gone.toml").replace("tolerance = 0.3", 'ways = ["midle", "far_end:any", "middle:any"]')
    assert [fault.key for fault in faults_of(tmp_path, text)] == [
        "question[1].tolerance",
        "question[1].ways[1]",
        "question[1].ways[3]",
        "file",
    ]
    text = GOOD.replace("weight = 480", "weight = nan").replace("tolerance = 0.3", 'ways = ["midle"]')
    assert [fault.key for fault in faults_of(tmp_path, text)] == [
        "question[1].tolerance",
        "question[1].ways[1]",
        "question[1].scene.part[1].weight",
    ]


def test_what_is_not_known_to_be_asked_is_not_judged_by_a_guess(tmp_path):
    (fault,) = faults_of(tmp_path, GOOD.replace('ask = "place"', 'ask = "plaice"'))
    assert fault.key == "question[1].ask"


@pytest.mark.parametrize(("tolerance", "what"), [(0.05, "finer than a screen can show"), (9, "nearly every place")])
def test_a_tolerance_is_neither_finer_than_a_screen_nor_as_wide_as_the_tool(tmp_path, tolerance, what):
    (fault,) = faults_of(tmp_path, GOOD.replace("tolerance = 0.3", f"tolerance = {tolerance}"))
    assert (fault.key, fault.line) == ("question[1].tolerance", 11)
    assert what in fault.what


def test_a_name_used_twice_is_told_even_where_its_questions_cannot_be_read(tmp_path):
    broken = GOOD.replace('ask = "place"', 'ask = "plaice"')
    faults = faults_of(tmp_path, broken + broken[broken.index("[[question]]") :])
    assert ("question[2].name", 23) in [(fault.key, fault.line) for fault in faults]


def test_a_question_name_used_twice_is_a_fault(tmp_path):
    faults = faults_of(tmp_path, GOOD + GOOD[GOOD.index("[[question]]") :])
    assert [(fault.key, fault.line) for fault in faults] == [("question[2].name", 23)]


def test_a_side_question_needs_a_pivot_and_takes_no_tolerance(tmp_path):
    faults = faults_of(tmp_path, GOOD.replace('ask = "place"', 'ask = "side"'))
    assert {fault.key for fault in faults} == {"question[1].tolerance", "question[1].scene"}


@pytest.mark.parametrize("text", ["", "question = 3", "[question]\nname = 'x'", "[[question]]", "question = [1, 'x']"])
def test_a_file_of_the_wrong_make_is_faults_and_no_traceback(tmp_path, text):
    assert faults_of(tmp_path, text)


def test_a_missing_file_is_a_fault(tmp_path):
    with pytest.raises(FileFaults) as told:
        read_lesson(tmp_path / "nothing.toml")
    assert "no such file" in told.value.faults[0].what


def test_a_scene_may_stand_in_a_file_beside_the_lesson(tmp_path):
    (tmp_path / "scenes").mkdir()
    put(tmp_path, SCENE_FILE, "boat-hook.toml")
    put(tmp_path / "scenes", SCENE_FILE, "boat-hook.toml")
    for name in ("boat-hook.toml", "scenes/boat-hook.toml"):
        assert is_sound(put(tmp_path, with_scene_file(name)))


def test_faults_of_a_scene_file_name_that_file_and_its_line(tmp_path):
    put(tmp_path, SCENE_FILE.replace("weight = 120", "weight = 0"), "boat-hook.toml")
    (fault,) = faults_of(tmp_path, with_scene_file("boat-hook.toml"))
    assert (Path(fault.file).name, fault.line, fault.key) == ("boat-hook.toml", 6, "part[1].weight")


@pytest.mark.parametrize(
    "name", ["../boat-hook.toml", "scenes/../../boat-hook.toml", "/etc/hosts", "C:/boat-hook.toml", "..", "", "a.txt"]
)
def test_a_scene_file_outside_the_lessons_folder_is_refused_unread(tmp_path, name):
    inside = tmp_path / "course"
    inside.mkdir()
    put(tmp_path, "this would be a fault of its own if it were read", "boat-hook.toml")
    (fault,) = faults_of(inside, with_scene_file(name))
    assert fault.key == "question[1].scene"
    assert fault.file.endswith("a-lesson.toml")


@pytest.mark.parametrize("linked", ["boat-hook.toml", "scenes"])
def test_a_link_is_refused_even_where_it_stays_inside(tmp_path, linked):
    (tmp_path / "real").mkdir()
    put(tmp_path / "real", SCENE_FILE, "boat-hook.toml")
    target = tmp_path / "real" / "boat-hook.toml" if linked.endswith(".toml") else tmp_path / "real"
    (tmp_path / linked).symlink_to(target)
    name = linked if linked.endswith(".toml") else "scenes/boat-hook.toml"
    (fault,) = faults_of(tmp_path, with_scene_file(name))
    assert "a link" in fault.what


def test_a_scene_with_more_parts_than_one_can_weigh_up_is_a_fault(tmp_path):
    many = "".join(f'[[question.scene.part]]\nname = "p{index}"\nweight = 1\nat = 3\n' for index in range(30))
    (fault,) = faults_of(tmp_path, GOOD + many)
    assert (fault.key, fault.what) == ("question[1].scene", "a scene of 32 parts")


def test_too_many_words_before_acting_are_warned_of(tmp_path):
    faults, warnings = check_lesson(put(tmp_path, GOOD.replace("Pole {pole.weight};", "Word " * 40)))
    assert faults == ()
    assert warnings[0].key == "question[1].say"


def test_claims_that_cannot_be_told_apart_are_warned_of(tmp_path):
    text = GOOD.replace("tolerance = 0.3", 'tolerance = 0.3\nways = ["plain_mean", "bar_left_out", "near_end:pole"]')
    faults, warnings = check_lesson(put(tmp_path, text))
    assert faults == ()
    told = [warning.what for warning in warnings]
    assert '"plain_mean" cannot be told apart from outer_middle' in told
    assert '"bar_left_out" has no answer here, so it cannot show' in told


def test_a_question_that_says_nothing_of_ways_is_told_what_it_cannot_tell_apart(tmp_path):
    # By hand, hook 480 at 2, pole 120 at 20 of 40: the mean of the places and the middle of the outer ones are both 11,
    # and so is half-way from the middle at 20 to the hook.  Half of all the weight, 300 g, lies in the hook at 2.
    _, warnings = check_lesson(put(tmp_path, GOOD))
    assert [(warning.key, warning.what) for warning in warnings] == [
        ("question[1].ways", "no answer tells apart: plain_mean, half_way_to_heaviest, outer_middle"),
        ("question[1].ways", "no answer tells apart: equal_weight, at_heaviest"),
    ]


def test_a_question_that_shows_nothing_of_how_a_learner_thinks_is_warned_of(tmp_path):
    # A bare bar: its middle is right for whoever looks at the bar at all.
    bare = SIDE[: SIDE.index("[question.scene.pivot]")].replace('ask = "side"', 'ask = "place"\ntolerance = 1')
    _, warnings = check_lesson(put(tmp_path, bare))
    assert [warning.what for warning in warnings] == [
        "no answer tells apart: the right answer, equal_weight, middle, all_arms_positive"
    ]


def test_a_claim_near_the_truth_is_warned_of(tmp_path):
    # The hook's weight against the pole's: with the pole heavy and the hook light the middle is nearly right.
    text = GOOD.replace("weight = 480", "weight = 5").replace("tolerance = 0.3", 'tolerance = 0.3\nways = ["middle"]')
    _, warnings = check_lesson(put(tmp_path, text))
    assert '"middle" cannot be told apart from the right answer' in [warning.what for warning in warnings]


def test_an_expected_value_is_compared_as_finely_as_it_is_written(tmp_path):
    for expected in ("5.6", "5.60", "6"):
        faults, _ = check_lesson(
            put(tmp_path, GOOD.replace("tolerance = 0.3", f"tolerance = 0.5\nexpect = {expected}"))
        )
        assert faults == ()
    faults, _ = check_lesson(put(tmp_path, GOOD.replace("tolerance = 0.3", "tolerance = 0.5\nexpect = 5.7")))
    assert [fault.key for fault in faults] == ["question[1].expect"]


def test_lessons_are_found_by_level_then_order_then_name_and_builds_left_out(tmp_path):
    for name, order in (("middle/b", 1), ("early/z", 1), ("early/a", 2), ("early/b", 2), ("later/a", 0)):
        folder = tmp_path / name.split("/")[0]
        folder.mkdir(exist_ok=True)
        put(folder, GOOD.replace("format = 1", f"format = 1\norder = {order}"), name.split("/")[1] + ".toml")
    build = put(tmp_path / "early", SCENE_FILE, "boat-hook.toml")
    found = [path.relative_to(tmp_path).as_posix() for path in lesson_files([tmp_path])]
    assert found == ["early/z.toml", "early/a.toml", "early/b.toml", "middle/b.toml", "later/a.toml"]
    assert not holds_lesson(build)
    assert not holds_lesson(tmp_path)


SIDE = """format = 1
title = "A lesson"
level = "early"
aim = "To see."
[[question]]
name = "bar"
ask = "side"
title = "Which end drops?"
say = "A bar."
[question.scene.bar]
length = 60
weight = 300
[question.scene.pivot]
at = 20
"""


def test_an_expected_side_is_compared(tmp_path):
    (fault,) = faults_of(tmp_path, SIDE.replace('say = "A bar."', 'say = "A bar."\nexpect = "left"'))
    assert (fault.key, fault.what) == ("question[1].expect", '"left" is expected, but the sum says right')
    assert is_sound(put(tmp_path, SIDE.replace('say = "A bar."', 'say = "A bar."\nexpect = "right"')))


@pytest.mark.parametrize(
    ("old", "new", "what"),
    [
        ("[question.scene.bar]\nlength = 60\nweight = 300\n", "", "weighs anything"),
        (
            "[question.scene.bar]\nlength = 60\nweight = 300\n",
            '[[question.scene.part]]\nname = "lead"\nweight = 3\nat = 2\n',
            "the scene has no length",
        ),
        (
            "[question.scene.bar]\nlength = 60\nweight = 300\n",
            '[[question.scene.part]]\nname = "hole"\nweight = 3\nat = 2\ncut = true\n'
            '[[question.scene.part]]\nname = "lead"\nweight = 3\nat = 2\n',
            "take away all the weight",
        ),
        ('say = "A bar."', 'say = "A bar."\nvary = { "pivot.at" = { from = 1, to = 2, step = 5 } }', "one number only"),
        ('say = "A bar."', 'say = "A bar."\nvary = { "pivot.at" = 3 }', "does not belong here"),
        ('say = "A bar."', 'say = "A bar."\nas_written_first = 1', "neither true nor false"),
        ('say = "A bar."', 'say = "A bar."\nways = [1]', "not text"),
        ('say = "A bar."', 'say = "A\\nbar."', "control character"),
        ('say = "A bar."', 'say = "' + "A bar. " * 100 + '"', "700 characters"),
        ('aim = "To see."', 'aim = "To see."\norder = "first"', "not a whole number"),
    ],
)
def test_a_scene_or_value_that_cannot_be_used_is_a_fault(tmp_path, old, new, what):
    faults = faults_of(tmp_path, SIDE.replace(old, new, 1))
    assert any(what in fault.what for fault in faults), [fault.as_text() for fault in faults]


def test_a_lesson_without_questions_is_a_fault(tmp_path):
    (fault,) = faults_of(tmp_path, SIDE[: SIDE.index("[[question]]")] + "question = []\n")
    assert (fault.key, fault.what) == ("question", "a lesson without questions")


def test_more_questions_than_a_lesson_holds_are_a_fault(tmp_path):
    question = SIDE[SIDE.index("[[question]]") :]
    text = SIDE + "".join(question.replace('"bar"', f'"bar-{index}"', 1) for index in range(41))
    (fault,) = faults_of(tmp_path, text)
    assert (fault.key, fault.what) == ("question", "42 questions")


def test_the_lessons_units_hold_even_where_another_of_its_keys_is_faulty(tmp_path):
    # 0.056 m on a pole of 0.4 m, in kilograms and metres: a tolerance of 0.003 is fit for that and not for 40 cm.
    metres = (
        GOOD.replace("format = 1", 'format = 1\nunits = "kg-m"')
        .replace("tolerance = 0.3", "tolerance = 0.003\nexpect = 0.056")
        .replace("480\nat = 2", "0.48\nat = 0.02")
        .replace("120\nat = 20", "0.12\nat = 0.2")
        .replace("length = 40", "length = 0.4")
    )
    assert is_sound(put(tmp_path, metres))
    (fault,) = faults_of(tmp_path, metres.replace('level = "early"', 'level = "erly"'))
    assert fault.key == "level"


def test_a_scene_that_is_neither_a_table_nor_a_file_name_is_a_fault(tmp_path):
    (fault,) = faults_of(tmp_path, GOOD[: GOOD.index("[question.scene]")] + "scene = 3\n")
    assert (fault.key, fault.line, fault.what) == ("question[1].scene", 12, "3 is no scene")


def test_a_backslash_in_a_scenes_file_name_is_refused(tmp_path):
    (fault,) = faults_of(tmp_path, GOOD[: GOOD.index("[question.scene]")] + "scene = 'scenes\\boat-hook.toml'\n")
    assert "a backslash" in fault.what


@pytest.mark.skipif(not hasattr(os, "geteuid") or os.geteuid() == 0, reason="nothing is unreadable to this user")
def test_a_file_that_may_not_be_read_is_passed_over_in_the_list(tmp_path):
    put(tmp_path, GOOD).chmod(0)
    assert lesson_files([tmp_path]) == ()
