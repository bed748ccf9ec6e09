"""The JSON Schemas (draft 2020-12) of lesson and build files, by which an editor helps a writer."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from lab.files import build_schema, save_text
from lab.lesson.kinds import KINDS, Kind

DRAFT = "https://json-schema.org/draft/2020-12/schema"


def lesson_schema() -> dict[str, Any]:
    """The JSON Schema of a lesson file: its keys, those of each kind of question, and scenes written in it."""
    # Imported here for pydantic's sake, which no lesson needs that has been read.
    from lab.lesson.schema import KEYS_BY_KIND, LessonTable, QuestionTable

    lesson = LessonTable.model_json_schema(by_alias=True, mode="validation")
    question = QuestionTable.model_json_schema(by_alias=True, mode="validation")
    scene = build_schema()
    definitions = {**scene.pop("$defs", {}), **question.pop("$defs", {}), **lesson.pop("$defs", {})}
    del scene["$schema"]
    # Inside a lesson a scene may leave its format, title and units to the lesson.
    scene["required"] = [key for key in scene.get("required", []) if key not in ("format", "title", "units")]
    if not scene["required"]:
        del scene["required"]
    question["properties"]["scene"] = {
        "description": "A build, as in a file of its own, or the name of such a file beside this one.",
        "anyOf": [{"$ref": "#/$defs/Scene"}, {"type": "string", "pattern": r"\.toml$"}],
    }
    question["allOf"] = list(_by_kind(KEYS_BY_KIND))
    lesson["properties"]["question"]["items"] = {"$ref": "#/$defs/Question"}
    return {"$schema": DRAFT, **lesson, "$defs": {**definitions, "Scene": scene, "Question": question}}


def _by_kind(keys: tuple[str, ...]) -> Iterator[Mapping[str, Any]]:
    """What each kind needs and refuses."""
    for kind in KINDS.values():
        refused = [{"required": [key]} for key in keys if key not in (*kind.needs, *kind.takes)]
        rule: dict[str, Any] = {"not": {"anyOf": refused}} if refused else {}
        if kind.needs or kind.quantity:
            rule["required"] = [*kind.needs, *(["tolerance"] if kind.quantity else [])]
        rule["properties"] = {"ways": {"items": _claims(kind)}}
        yield {"if": {"properties": {"ask": {"const": kind.name}}}, "then": rule}


def _claims(kind: Kind) -> dict[str, Any]:
    """A way of thinking, or one about one part: `way` or `way:part`."""
    ways = "|".join(kind.ways)
    by_part = f"|({'|'.join(kind.part_ways)}):.+" if kind.part_ways else ""
    return {"type": "string", "pattern": f"^({ways}{by_part})$"}


def schema_texts() -> dict[str, str]:
    """The text of each schema file by its name."""
    schemas = {"lesson.schema.json": lesson_schema(), "build.schema.json": build_schema()}
    return {name: json.dumps(schema, indent=1, ensure_ascii=False) + "\n" for name, schema in schemas.items()}


def write_schemas(folder: Path) -> None:
    """Write the schema files into a folder.  Raises OSError where that cannot be done."""
    for name, text in schema_texts().items():
        save_text(folder / name, text)
