"""Build files and what they are made of: TOML with lines, unit systems, faults with place and cure."""

from lab.files.build import ORIGIN_M, Bar, Build, Look, Support, View
from lab.files.faults import Fault, FileFaults, KeyPath, key_text, near, shown
from lab.files.keyed_toml import Keyed, line_of, load, parse
from lab.files.units import UNITS, UnitSystem

__all__ = [
    "ORIGIN_M",
    "UNITS",
    "Bar",
    "Build",
    "Fault",
    "FileFaults",
    "KeyPath",
    "Keyed",
    "Look",
    "Support",
    "UnitSystem",
    "View",
    "key_text",
    "line_of",
    "load",
    "near",
    "parse",
    "shown",
]
