"""The schema for editors says the same as the reader."""

import json

from lab.files import build_schema

PART_KEYS = {
    "name", "weight", "at", "shape", "inertia", "hold", "cut", "weight_doubt", "at_doubt", "set", "look",
    "group",
}  # fmt: skip


def test_the_schema_is_plain_json_that_names_its_draft():
    schema = json.loads(json.dumps(build_schema()))
    assert schema["$schema"] == "https://json-schema.org/draft/2020-12/schema"


def test_the_schema_requires_what_the_reader_requires_and_lets_nothing_else_in():
    schema = build_schema()
    assert set(schema["required"]) == {"format", "title", "units"}
    assert schema["additionalProperties"] is False
    assert schema["properties"]["units"]["enum"] == ["g-cm", "kg-m", "N-m", "lb-in"]


def test_a_part_in_the_schema_has_the_keys_of_the_file():
    part = build_schema()["$defs"]["PartTable"]
    assert set(part["properties"]) == PART_KEYS
    assert set(part["required"]) == {"name", "weight", "at"}
    assert part["properties"]["weight"]["exclusiveMinimum"] == 0


def test_a_place_in_the_schema_is_one_number_or_three():
    one, three = build_schema()["$defs"]["PartTable"]["properties"]["at"]["anyOf"]
    assert one == {"type": "number"}
    assert (three["minItems"], three["maxItems"]) == (3, 3)


def test_every_table_and_every_shape_of_the_file_stands_in_the_schema():
    schema = build_schema()
    assert set(schema["properties"]) == {
        "format", "title", "units", "reference", "view", "bench", "bar", "part", "group", "tank", "surface", "limits",
        "pivot", "support",
    }  # fmt: skip
    kinds = {
        table["properties"]["kind"]["const"]
        for table in schema["$defs"].values()
        if "kind" in table.get("properties", {})
    }
    assert kinds == {
        "point", "rod", "rectangle", "triangle", "polygon", "disc", "half-disc", "box", "cylinder", "cone", "sphere",
        "hemisphere",
    }  # fmt: skip


def test_an_outline_in_the_schema_is_three_corners_of_two_numbers_or_more():
    outline = build_schema()["$defs"]["PolygonTable"]["properties"]["outline"]
    assert outline["minItems"] == 3
    assert outline["items"] == {"type": "array", "items": {"type": "number"}, "minItems": 2, "maxItems": 2}
