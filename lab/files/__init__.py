"""Build files and what they are made of: TOML with lines, unit systems, faults with place and cure."""

from typing import TYPE_CHECKING

from lab.late_names import late_names

if TYPE_CHECKING:
    from lab.files.build import FORMAT, ORIGIN_M, Bar, Bench, Build, Look, Support, View
    from lab.files.build_reading import build_from_table, build_schema, read_build, read_build_text
    from lab.files.build_writing import build_text
    from lab.files.faults import Fault, FileFaults, KeyPath, key_text, near, shown
    from lab.files.keyed_toml import Keyed, line_of, load, parse
    from lab.files.saving import save_text
    from lab.files.units import UNITS, UnitSystem
else:
    _MODULES = {
        "build": "FORMAT ORIGIN_M Bar Bench Build Look Support View",
        "build_reading": "build_from_table build_schema read_build read_build_text",
        "build_writing": "build_text",
        "faults": "Fault FileFaults KeyPath key_text near shown",
        "keyed_toml": "Keyed line_of load parse",
        "saving": "save_text",
        "units": "UNITS UnitSystem",
    }
    __getattr__ = late_names(__name__, _MODULES)

__all__ = [
    "FORMAT",
    "ORIGIN_M",
    "UNITS",
    "Bar",
    "Bench",
    "Build",
    "Fault",
    "FileFaults",
    "KeyPath",
    "Keyed",
    "Look",
    "Support",
    "UnitSystem",
    "View",
    "build_from_table",
    "build_schema",
    "build_text",
    "key_text",
    "line_of",
    "load",
    "near",
    "parse",
    "read_build",
    "read_build_text",
    "save_text",
    "shown",
]
