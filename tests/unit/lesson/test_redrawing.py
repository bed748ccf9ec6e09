"""A scene with other numbers in it: the same as if its table had been read again, and refused where that would be."""

import copy
from pathlib import Path
from random import Random

import pytest

from lab.files import FileFaults, build_from_table
from lab.lesson import lesson_files, read_lesson
from lab.lesson.kinds import KINDS
from lab.lesson.redrawing import Redrawing
from lab.lesson.variation import Drawing
from lab.lesson.varied_values import put_in_scene, scene_names

ROOT = Path(__file__).parents[3]
PATHS = [*lesson_files([ROOT / "lessons"]), *sorted((Path(__file__).parent / "kinds").glob("*.toml"))]


def questions(path):
    lesson = read_lesson(path)
    return [(question, lesson.units) for question in lesson.questions]


def read_again(question, units, values):
    table = copy.deepcopy(dict(question.scene.table))
    for name, value in values.items():
        put_in_scene(table, name, value)
    source = question.scene
    try:
        build = build_from_table(table, source.lines, source.file, at=source.at, title=question.title, units=units)
    except FileFaults:
        return None
    return build.loose() if KINDS[question.ask].holds_loose else build


@pytest.mark.parametrize("path", PATHS, ids=[path.stem for path in PATHS])
def test_it_is_the_build_that_reading_gives(path):
    chance = Random(7)
    for question, units in questions(path):
        written = Drawing(question, lesson="any", units=units).written.build
        table = question.scene.table
        names = tuple(
            name for name in scene_names(table) if not name.startswith(("bar.length", "front", "back", "nose s"))
        )
        names = tuple(name for name in names if Redrawing.suits(table, written, frozenset((name,))))
        redrawing = Redrawing(table, written)
        for _ in range(12):
            values = {name: round(chance.uniform(0.5, 60), 2) for name in names if chance.random() < 0.5}
            assert redrawing.build(values) == read_again(question, units, values)


@pytest.mark.parametrize("value", [0, -3, 1e-10, 2e9, float("inf"), float("nan")])
def test_a_weight_that_no_file_may_hold_is_refused(value):
    question, units = questions(PATHS[0])[0]
    written = Drawing(question, lesson="any", units=units).written.build
    assert Redrawing(question.scene.table, written).build({"bar.weight": value}) is None


BAR = """
[[question]]
name = "bar"
ask = "place"
title = "Where?"
say = "A bar."
tolerance = 1
[question.scene]
[question.scene.bar]
length = 100
weight = 200
[[question.scene.part]]
name = "lead"
weight = 50
at = 90
"""


@pytest.mark.parametrize(
    ("values", "stays"),
    [
        ({"bar.length": 120.0}, True),
        ({"bar.length": 80.0}, False),
        ({"bar.length": 80.0, "lead.at": 70.0}, True),
        ({"lead.at": 100.0}, True),
        ({"lead.at": 101.0}, False),
        ({"lead.at": -1.0}, False),
    ],
)
def test_what_lies_off_the_bar_is_refused(write, values, stays):
    ((question, units),) = questions(write(BAR))
    written = Drawing(question, lesson="any", units=units).written.build
    built = Redrawing(question.scene.table, written).build(values)
    assert (built is not None) is stays
    assert built == read_again(question, units, values)


@pytest.mark.parametrize(
    "extra",
    [
        'group = "wing"\n[[question.scene.group]]\nname = "wing"\nat = 1\n',
        "cut = true\n",
        '[[question.scene.tank]]\nname = "tank"\nat = 5\ncapacity = 9\ncontents = 5\ndensity = 1\n',
    ],
)
def test_scenes_in_which_one_number_reaches_far_are_read_again(write, extra):
    ((question, units),) = questions(write(BAR + '[[question.scene.part]]\nname = "x"\nweight = 5\nat = 9\n' + extra))
    written = Drawing(question, lesson="any", units=units).written.build
    assert not Redrawing.suits(question.scene.table, written, frozenset(("lead.at",)))
