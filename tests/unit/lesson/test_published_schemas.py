"""The JSON Schemas that ship: current, valid, and of one mind with what is read."""

import json
import tomllib
from pathlib import Path

import jsonschema
import pytest

from lab.lesson import check_lesson, lesson_files, lesson_schema
from lab.lesson.editors import schema_texts, write_schemas

ROOT = Path(__file__).parents[3]
SHIPPED = ROOT / "assets" / "schema"
LESSONS = [*sorted((Path(__file__).parent / "kinds").glob("*.toml")), *lesson_files([ROOT / "lessons"])]
BUILDS = sorted((ROOT / "assets" / "builds").glob("*.toml"))


@pytest.fixture(scope="module")
def valid_lesson():
    schema = json.loads((SHIPPED / "lesson.schema.json").read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema).is_valid


@pytest.fixture(scope="module")
def valid_build():
    schema = json.loads((SHIPPED / "build.schema.json").read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema).is_valid


@pytest.mark.parametrize("name", ["lesson.schema.json", "build.schema.json"])
def test_what_ships_is_what_is_read(name):
    # Written again with lab.lesson.editors.write_schemas.
    assert (SHIPPED / name).read_text(encoding="utf-8") == schema_texts()[name]


def test_they_are_written_where_one_says(tmp_path):
    write_schemas(tmp_path)
    assert json.loads((tmp_path / "lesson.schema.json").read_text(encoding="utf-8")) == lesson_schema()


@pytest.mark.parametrize("path", LESSONS, ids=[path.stem for path in LESSONS])
def test_every_lesson_is_valid(path, valid_lesson):
    assert valid_lesson(tomllib.loads(path.read_text(encoding="utf-8")))


@pytest.mark.parametrize("path", BUILDS, ids=[path.stem for path in BUILDS])
def test_every_build_is_valid(path, valid_build):
    assert valid_build(tomllib.loads(path.read_text(encoding="utf-8")))


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ('ask = "weight"', 'ask = "wieght"'),
        ('hang = { name = "float", at = 90 }\n', ""),
        ('hang = { name = "float", at = 90 }', 'hang = { nam = "float", at = 90 }'),
        ("tolerance = 1\n", ""),
        ("tolerance = 1\n", 'tolerance = 1\nfind = "place"\n'),
        ('"equal_weights", ', '"middle", '),
        ("format = 1", "format = 2"),
        ("weight = 60", "weight = -60"),
        ("up = 1", "upp = 1"),
    ],
)
def test_what_an_editor_marks_is_a_fault_when_it_is_checked(tmp_path, valid_lesson, old, new):
    text = (Path(__file__).parent / "kinds" / "float-weight.toml").read_text(encoding="utf-8")
    assert old in text
    path = tmp_path / "changed.toml"
    path.write_text(text.replace(old, new), encoding="utf-8")
    assert not valid_lesson(tomllib.loads(path.read_text(encoding="utf-8")))
    assert check_lesson(path)[0]
