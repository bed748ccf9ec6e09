"""Reads build files into builds, with every fault at once.

What needs pydantic is imported when the first file is read: it takes longer to import than all the rest of the
lab that the start screen needs.
"""

from __future__ import annotations

import os
from collections.abc import Mapping
from typing import Any

from lab.files.build import FORMAT, Build
from lab.files.faults import KeyPath
from lab.files.keyed_toml import load, parse


def read_build(path: str | os.PathLike[str]) -> Build:
    """Read a build file.

    Raises FileFaults with everything that is wrong with it.
    """
    keyed = load(path)
    return build_from_table(keyed.data, keyed.lines, os.fspath(path))


def read_build_text(text: str, *, file: str) -> Build:
    """Read the text of a build file.

    file: named in faults.  Raises FileFaults with everything that is wrong with it.
    """
    keyed = parse(text, file=file)
    return build_from_table(keyed.data, keyed.lines, file)


def build_from_table(
    table: dict[str, Any],
    lines: Mapping[KeyPath, int],
    file: str,
    *,
    at: KeyPath = (),
    title: str | None = None,
    units: str | None = None,
) -> Build:
    """The build that a parsed table describes: a whole file, or a scene inside another file.

    at: the table's own key path in the file; () for a whole file, which must state its format.
    title, units: stand in where the table has none; None makes the key a required one.
    Raises FileFaults with everything that is wrong with it.
    """
    from lab.files.build_faults import FaultPlaces
    from lab.files.build_making import made_build

    stand_ins = {"format": FORMAT if at else None, "title": title, "units": units}
    data = {key: value for key, value in stand_ins.items() if value is not None} | table
    return made_build(data, FaultPlaces(file, lines, at))


def build_schema() -> dict[str, Any]:
    """The JSON Schema (draft 2020-12) of a build file, for editors."""
    from lab.files.build_tables import schema

    return schema()
