"""Turns what the schema refuses into faults that a writer can act on."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from pydantic import ValidationError

from lab.files.build_tables import (
    TABLES,
    keys_of,
)
from lab.files.faults import Fault, KeyPath, key_text, near, shown
from lab.files.keyed_toml import line_of
from lab.files.shape_tables import SHAPES, PointTable, Table

_EXAMPLES: Mapping[str, str] = {
    "format": "format = 1",
    "title": 'title = "Boat hook"',
    "units": 'units = "g-cm"',
    "name": 'name = "pole"',
    "weight": "weight = 120",
    "at": "at = 20.0",
    "length": "length = 40",
    "width": "width = 6",
    "radius": "radius = 1.5",
    "size": "size = [30, 20, 10]",
    "outline": "outline = [[0, 0], [30, 0], [0, 20]]",
    "capacity": "capacity = 200",
    "contents": "contents = 120",
    "density": "density = 0.8",
    "root_chord": "root_chord = 20",
    "tip_chord": "tip_chord = 14",
    "span": "span = 120",
}
_ALWAYS_LISTS = ("part", "group", "tank", "surface", "support")


class FaultPlaces:
    """Where faults of one build lie: its file, its lines, and where in the file the build is."""

    def __init__(self, file: str, lines: Mapping[KeyPath, int], at: KeyPath) -> None:
        """at: the key path of the build's own table; empty where the build is the whole file."""
        self._file = file
        self._lines = lines
        self._at = at

    def line(self, path: KeyPath) -> int:
        """The line of a key of the build."""
        return line_of(self._lines, self._at + path)

    def fault(self, path: KeyPath, what: str, cure: str) -> Fault:
        """The fault of the key at this path within the build."""
        key = key_text(self._at + path)
        return Fault(file=self._file, line=self.line(path), key=key, what=what, cure=cure)


def schema_faults(refused: ValidationError, places: FaultPlaces) -> list[Fault]:
    """One fault for everything that the schema refused."""
    faults = []
    for error in refused.errors(include_url=False):
        path = _path_in_file(error["loc"])
        if error["type"] == "union_tag_invalid":
            path = (*path, "kind")
        what, cure = _what_and_cure(error["type"], path, error["input"], error.get("ctx", {}), error["loc"])
        faults.append(places.fault(path, what, cure))
    return faults


def _path_in_file(location: tuple[int | str, ...]) -> KeyPath:
    """The key path, without the shape's kind that pydantic puts after `shape`."""
    if len(location) > 3 and location[2] == "shape":
        return (*location[:3], *location[4:])
    return location


def _what_and_cure(
    error: str, path: KeyPath, value: Any, context: Mapping[str, Any], location: tuple[int | str, ...]
) -> tuple[str, str]:
    match error:
        case "refused":
            return context["what"], context["cure"]
        case "missing":
            key = str(path[-1])
            return "missing", f"add `{_EXAMPLES.get(key, key + ' = …')}`"
        case "extra_forbidden":
            return _unknown_key(str(path[-1]), _table_at(location[:-1]))
        case "literal_error":
            return _wrong_choice(value, str(context["expected"]))
        case "bool_type":
            return f"{shown(value)} is neither true nor false", "write true or false, without quotes"
        case "union_tag_invalid":
            return _unknown_shape(value["kind"])
        case _:
            # What is left are values of another build: text for a table, one table for a list of them.
            return _wrong_build(path, value)


def _table_at(location: tuple[int | str, ...]) -> type[Table]:
    """The schema of the table at a location of pydantic's."""
    words = [step for step in location if isinstance(step, str)]
    return TABLES[words[-1] if words else ""]


def _unknown_key(key: str, table: type[Table]) -> tuple[str, str]:
    known = keys_of(table)
    if table is PointTable:
        return "unknown key", 'a point has only `kind`; another shape names its own, such as `kind = "rod"`'
    nearest = near(key, known)
    if nearest:
        return "unknown key", f"did you mean `{nearest}`?"
    return "unknown key", f"the keys here are {', '.join(known)}"


def _wrong_choice(value: Any, expected: str) -> tuple[str, str]:
    choices = [choice.strip("' ") for choice in expected.replace(" or ", ", ").split(", ")]
    nearest = near(value, choices) if isinstance(value, str) else None
    listed = ", ".join(f'"{choice}"' for choice in choices)
    cure = f'did you mean "{nearest}"?' if nearest else f"write one of {listed}"
    return f"{shown(value)} is not one of the choices", cure


def _unknown_shape(kind: Any) -> tuple[str, str]:
    listed = ", ".join(SHAPES)
    if not isinstance(kind, str):
        return f"{shown(kind)} is not text", f"write one of {listed}, in quotes"
    nearest = near(kind, SHAPES)
    cure = f'did you mean "{nearest}"?' if nearest else f"the kinds are {listed}"
    return f"{shown(kind)} is no kind of shape", cure


def _wrong_build(path: KeyPath, value: Any) -> tuple[str, str]:
    key = str(path[-1]) if path else ""
    if key in _ALWAYS_LISTS:
        return f"{shown(value)} where a list of tables belongs", f"write `[[{key}]]` and its keys below it"
    if key == "shape":
        return f"{shown(value)} is not a table", 'write `shape = { kind = "rod", length = 40 }`'
    if key and len(path) == 1:
        return f"{shown(value)} is not a table", f"write `[{key}]` and its keys below it"
    return f"{shown(value)} is not a table", "write a table of keys and values"
